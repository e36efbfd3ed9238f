import { delMany, get, promisifyRequest, type UseStore } from 'idb-keyval';
import { fromJson } from '../notebook/index.ts';
import { isProblem } from '../units/index.ts';

/** What the shelf knows of a notebook without opening it. */
export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  /** Raised by one with every save, in whichever window. */
  readonly revision: number;
  /** When it was last saved, in milliseconds since 1970. */
  readonly savedAt: number;
}

/** A notebook as it lies in the store. */
export interface Kept {
  readonly revision: number;
  readonly json: unknown;
}

/** Every notebook's entry, the last saved first. */
export async function readEntries(store: UseStore): Promise<ShelfEntry[]> {
  const entries = await store('readonly', (objects) =>
    promisifyRequest(
      objects.getAll(IDBKeyRange.bound(['entry'], ['entry', []])) as IDBRequest<ShelfEntry[]>,
    ),
  );
  return entries.sort((a, b) => b.savedAt - a.savedAt);
}

/** The notebook as last saved. */
export function readKept(store: UseStore, id: string): Promise<Kept | undefined> {
  return get<Kept>(['now', id], store);
}

/** The notebook as it was before this session's first save. */
export function readEarlier(store: UseStore, id: string): Promise<Kept | undefined> {
  return get<Kept>(['earlier', id], store);
}

/** What to write, and what has to lie there for it to be written. */
export interface Writing {
  readonly entry: Omit<ShelfEntry, 'revision'>;
  readonly json: unknown;
  /** The revision this window last read or wrote. */
  readonly known: number | undefined;
  /** Whether what lies there now is to be kept as the earlier copy. */
  readonly keepEarlier: boolean;
}

/** Saves a notebook whole or not at all; its new revision, or undefined where another window saved since. */
export function writeKept(store: UseStore, writing: Writing): Promise<number | undefined> {
  const { entry, json, known, keepEarlier } = writing;
  return store('readwrite', async (objects) => {
    const lying = await promisifyRequest(
      objects.get(['now', entry.id]) as IDBRequest<Kept | undefined>,
    );
    if (lying && lying.revision !== known) return undefined;
    const revision = (known ?? 0) + 1;
    // A damaged state never takes the place of an earlier good one.
    if (lying && keepEarlier && !isProblem(fromJson(lying.json)))
      objects.put(lying, ['earlier', entry.id]);
    objects.put({ revision, json } satisfies Kept, ['now', entry.id]);
    objects.put({ ...entry, revision } satisfies ShelfEntry, ['entry', entry.id]);
    return revision;
  });
}

/** Takes a notebook and its earlier copy out of the store. */
export function erase(store: UseStore, id: string): Promise<void> {
  return delMany(
    ['entry', 'now', 'earlier'].map((part) => [part, id]),
    store,
  );
}
