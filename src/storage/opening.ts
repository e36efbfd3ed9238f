import {
  FORMAT,
  Notebook,
  actFromBytes,
  replay,
  type Act,
  type Clash,
  type Steps,
} from '../notebook/index.ts';
import { isProblem, problem, type Problem } from '../units/index.ts';
import { unpack, type Snapshot, type Unpacked } from './parcel.ts';
import type { Kept } from './journal-record.ts';

/** A notebook read back from what is kept of it. */
export interface Reopened {
  readonly notebook: Notebook;
  /** The number of the last act in it. */
  readonly number: number;
  readonly acts: readonly Act[];
  readonly clashes: readonly Clash[];
  /** What could not be read, in words; everything else is there. */
  readonly setAside: readonly string[];
  /** Why it may only be looked at. */
  readonly newer: Problem | undefined;
}

/**
 * A notebook, a step at a time, from its last whole snapshot and the acts since, or as it was after act `until`. Where
 * the last snapshot is damaged, an earlier whole one and the acts since it give the same notebook.
 */
export function* reopen(kept: Kept, until = Infinity): Steps<Reopened | Problem> {
  const snapshots = [...(kept.base ? [kept.base] : []), ...[...kept.past].reverse()];
  const fitting = snapshots.filter(({ number }) => number <= until);
  const [latest] = fitting;
  if (!latest) return GONE;
  const tried: { readonly snapshot: Snapshot; readonly unpacked: Unpacked | Problem }[] = [];
  const isWhole = ({ unpacked }: (typeof tried)[number]): boolean =>
    !isProblem(unpacked) && unpacked.setAside.length === 0;
  for (const snapshot of fitting) {
    tried.push({ snapshot, unpacked: yield* unpack(snapshot) });
    if (tried.some(isWhole)) break;
  }
  const chosen = tried.find(isWhole) ?? tried.find(({ unpacked }) => !isProblem(unpacked));
  const [first] = tried;
  if (!chosen || isProblem(chosen.unpacked))
    return first && isProblem(first.unpacked) ? first.unpacked : GONE;
  const { snapshot, unpacked } = chosen;
  const notebook = new Notebook(unpacked.document);
  notebook.clashes.reset(unpacked.clashes);
  // Undo goes on where it was, as far back as these acts.
  if (until === Infinity)
    notebook.recall(kept.acts.slice(-RECALLED).flatMap(({ bytes }) => actFromBytes(bytes) ?? []));
  const { last, acts, setAside } = replay(notebook, snapshot.number, kept.acts, until);
  return {
    notebook,
    number: Math.max(last, Math.min(until, kept.entry?.number ?? 0)),
    acts,
    clashes: notebook.clashes.all(),
    setAside: [...damage(snapshot, latest), ...unpacked.setAside, ...setAside],
    newer: unpacked.newer ?? ((kept.entry?.format ?? FORMAT) > FORMAT ? NEWER : undefined),
  };
}

/** How many acts can be taken back after a reload. */
const RECALLED = 100;

function damage(used: Snapshot, latest: Snapshot): readonly string[] {
  if (used === latest) return [];
  return ['The last whole copy was damaged; an earlier one and the journal were put together instead.']; // prettier-ignore
}

const GONE = problem('Kept notebooks', 'this notebook is no longer here.', 'Choose another one.');
const NEWER = problem(
  'This notebook',
  'it was written by a newer version.',
  'It can be looked at; reload this page to get the newer version and go on.',
);
