import { atOnce, readNotebook } from '../notebook/index.ts';
import { isProblem, type Problem } from '../units/index.ts';
import type { UseStore } from 'idb-keyval';
import { readKept, upgradeKept, type Kept } from './journal-record.ts';
import { reopen, type Reopened } from './opening.ts';
import { snapshotOf, type Snapshot } from './parcel.ts';
import { inSlices } from './slices.ts';

export { Notebook } from '../notebook/index.ts';
export { LiveNotebook } from './live.ts';

/** A kept notebook, opened while the page goes on; as it was after act `until`. */
export function reopened(kept: Kept, until?: number): Promise<Reopened | Problem> {
  return inSlices(reopen(kept, until));
}

/** Everything kept of a notebook, in the way of this build. */
export async function readNow(store: UseStore, id: string): Promise<Kept> {
  await upgradeKept(store, id, repacked);
  return readKept(store, id);
}

/** A notebook that an earlier build kept whole, as a snapshot; undefined where any of it can't be read. */
function repacked(json: unknown, number: number): Snapshot | undefined {
  const read = readNotebook(json);
  if (isProblem(read) || read.newer || read.setAside.length > 0) return undefined;
  return atOnce(snapshotOf(read.document, [], number));
}
