import { readNotebook, type NotebookDocument } from '../notebook/index.ts';
import { isProblem } from '../units/index.ts';
import type { UseStore } from 'idb-keyval';
import { readKept, upgradeKept, type Kept } from './journal-record.ts';
import { pack, type Snapshot } from './parcel.ts';

export { Notebook } from '../notebook/index.ts';
export { LiveNotebook } from './live.ts';
export { reopen } from './opening.ts';

/** A document as a snapshot of its own, as it was after act `number`. */
export function packed(document: NotebookDocument, number: number): Snapshot {
  return { number, at: Date.now(), pieces: [...pack(document, [])] };
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
  return packed(read.document, number);
}
