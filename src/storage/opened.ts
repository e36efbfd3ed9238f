import { readNotebook, type NotebookDocument } from '../notebook/index.ts';
import { isProblem } from '../units/index.ts';
import { pack, type Snapshot } from './parcel.ts';

export { Notebook } from '../notebook/index.ts';
export { readKept, shelve, upgradeKept } from './journal-record.ts';
export { LiveNotebook } from './live.ts';
export { reopen } from './opening.ts';

/** A document as a snapshot of its own, as it was after act `number`. */
export function packed(document: NotebookDocument, number: number): Snapshot {
  return { number, at: Date.now(), pieces: [...pack(document, [])] };
}

/** A notebook that an earlier build kept whole, as a snapshot; undefined where any of it can't be read. */
export function repacked(json: unknown, number: number): Snapshot | undefined {
  const read = readNotebook(json);
  if (isProblem(read) || read.newer || read.setAside.length > 0) return undefined;
  return packed(read.document, number);
}
