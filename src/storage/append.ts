import type { UseStore } from 'idb-keyval';
import type { ActRecord } from '../notebook/index.ts';
import type { Snapshot } from './parcel.ts';
import { request, type ShelfEntry } from './record.ts';

// Alone in its file: the thread that writes needs this much and no more.

/** What to add to a journal. */
export interface Appending {
  readonly entry: Omit<ShelfEntry, 'number' | 'format' | 'archivedAt' | 'removedAt' | 'backedUp'>;
  /** The last act this window knows. */
  readonly known: number;
  readonly acts: readonly Uint8Array[];
  /** The notebook before these acts, for when nothing of it is kept. */
  readonly start: Snapshot | undefined;
  /** The format of this build. */
  readonly format: number;
}

/** What came of adding: done; or nothing written, as other acts came first, all is gone, or a newer build wrote. */
export type Appended =
  | { readonly came: 'written' }
  | { readonly came: 'late'; readonly missed: readonly ActRecord[] }
  | { readonly came: 'gone' }
  | { readonly came: 'newer' };

/** Adds acts to a notebook's journal: all of them in one transaction, or none. */
export function append(store: UseStore, appending: Appending): Promise<Appended> {
  const { entry, known, acts, start, format } = appending;
  return store('readwrite', async (objects): Promise<Appended> => {
    const lying = await request<ShelfEntry | undefined>(objects.get(['entry', entry.id]));
    if (lying && lying.format > format) return { came: 'newer' };
    if (lying && lying.number > known)
      return { came: 'late', missed: await readActs(objects, entry.id, known) };
    if (!lying || lying.number < known) {
      if (!start) return { came: 'gone' };
      objects.put(start, ['base', entry.id]);
    }
    for (const [index, act] of acts.entries())
      objects.put(act, ['act', entry.id, known + 1 + index]);
    objects.put({ ...lying, ...entry, number: known + acts.length, format } satisfies ShelfEntry, [
      'entry',
      entry.id,
    ]);
    return { came: 'written' };
  });
}

/** The acts after one, the first of them first. */
export async function readActs(
  objects: IDBObjectStore,
  id: string,
  after: number,
): Promise<ActRecord[]> {
  const range = IDBKeyRange.bound(['act', id, after], ['act', id, Infinity], true);
  const [keys, values] = await Promise.all([
    request<IDBValidKey[]>(objects.getAllKeys(range)),
    request<unknown[]>(objects.getAll(range)),
  ]);
  return keys.map((key, index) => ({
    number: (key as [string, string, number])[2],
    bytes: values[index],
  }));
}
