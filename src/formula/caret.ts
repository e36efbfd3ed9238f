import type { Span } from './problem.ts';

/** The name that is being typed: its letters up to the caret, and all of it. */
export interface WordAtCaret extends Span {
  /** The sheet before the point; blank where there is none. */
  readonly sheet: string;
  /** What stands before the caret, without the sheet. */
  readonly begun: string;
  /** Whether a number stands before it, so that a unit is wanted. */
  readonly afterNumber: boolean;
}

/** The call that is being filled in. */
export interface CallAtCaret {
  readonly name: string;
  /** Which of its arguments the caret stands in, from 0. */
  readonly argument: number;
}

/** The name at the caret of a formula that may be half written; undefined inside a text or behind a sign. */
export function wordAtCaret(text: string, caret: number): WordAtCaret | undefined {
  const before = withoutTexts(text.slice(0, caret));
  if (before === undefined) return undefined;
  const [, number = '', sheet = '', begun = ''] =
    /((?:\d|\.)\s*)?(?:([A-Za-z_]\w*)\.)?([A-Za-z_]\w*)?$/.exec(before) ?? [];
  if (begun === '' && sheet === '') return undefined;
  const [rest = ''] = /^\w*/.exec(text.slice(caret)) ?? [];
  return {
    start: caret - begun.length,
    end: caret + rest.length,
    sheet,
    begun,
    afterNumber: number !== '',
  };
}

/** The innermost call that is open at the caret. */
export function callAtCaret(text: string, caret: number): CallAtCaret | undefined {
  const before = withoutTexts(text.slice(0, caret)) ?? '';
  const open: { name: string; argument: number }[] = [];
  for (const [sign, name] of before.matchAll(/([A-Za-z_]\w*)?\s*\(|[[\]),]/g)) {
    const last = open.at(-1);
    if (sign === ')' || sign === ']') open.pop();
    else if (sign === ',') {
      if (last) last.argument += 1;
    } else open.push({ name: name ?? '', argument: 0 });
  }
  return open.findLast(({ name }) => name !== '');
}

// Texts become blanks of the same length; undefined where the caret stands in one.
function withoutTexts(before: string): string | undefined {
  const blanked = before.replaceAll(/"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/g, (whole) =>
    ' '.repeat(whole.length),
  );
  return /["']/.test(blanked) ? undefined : blanked;
}
