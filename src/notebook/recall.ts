import { isNothing, type Step } from './change.ts';
import { changeToJson } from './change-json.ts';

/** How the name of an act begins that took another back. */
export const TAKE_BACK = 'take back: ';

/** What can be taken back and done again after some acts, the last of them on top. */
export interface Recalled {
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
}

/**
 * Goes through acts as a journal kept them and finds which are still done and which were taken back,
 * so that undo goes on where it was after a reload.
 */
export function recall(acts: readonly Step[]): Recalled {
  const done: Step[] = [];
  const undone: Step[] = [];
  for (const { label, changes } of acts) {
    if (changes.every(isNothing)) continue;
    const act = { label, changes };
    const taken = label.startsWith(TAKE_BACK) ? label.slice(TAKE_BACK.length) : undefined;
    if (taken !== undefined) {
      const at = done.findLastIndex((step) => step.label === taken);
      // What it took back may be older than the journal goes.
      if (at >= 0) undone.push(...done.splice(at, 1));
    } else if (isAgain(undone.at(-1), act)) {
      undone.pop();
      done.push(act);
    } else {
      done.push(act);
      undone.length = 0;
    }
  }
  return { done, undone };
}

function isAgain(step: Step | undefined, act: Step): boolean {
  if (step?.label !== act.label || step.changes.length !== act.changes.length) return false;
  return textOf(step) === textOf(act);
}

function textOf({ changes }: Step): string {
  return JSON.stringify(changes.map(changeToJson));
}
