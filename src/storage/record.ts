import { promisifyRequest, type UseStore } from 'idb-keyval';

/** What the shelf knows of a notebook without opening it. */
export interface ShelfEntry {
  readonly id: string;
  readonly name: string;
  /** When it was last saved, in milliseconds since 1970. */
  readonly savedAt: number;
  /** The number of its last act. */
  readonly number: number;
  /** The format of the build that wrote last. */
  readonly format: number;
  /** When it was put with the finished jobs. */
  readonly archivedAt?: number;
  /** When it was removed; until it is erased it can be put back. */
  readonly removedAt?: number;
  /** How far it had come when it last left in a backup, and when that was. */
  readonly backedUp?: { readonly number: number; readonly at: number };
}

/** Every notebook's entry, the last saved first. */
export async function readEntries(store: UseStore): Promise<ShelfEntry[]> {
  const entries = await store('readonly', (objects) =>
    request<ShelfEntry[]>(objects.getAll(IDBKeyRange.bound(['entry'], ['entry', []]))),
  );
  return entries.sort((a, b) => b.savedAt - a.savedAt);
}

/** Changes what the shelf knows of a notebook; undefined where it is not there. */
export function changeEntry(
  store: UseStore,
  id: string,
  change: (entry: ShelfEntry) => ShelfEntry,
): Promise<ShelfEntry | undefined> {
  return store('readwrite', async (objects) => {
    const entry = await request<ShelfEntry | undefined>(objects.get(['entry', id]));
    if (!entry) return undefined;
    const changed = change(entry);
    objects.put(changed, ['entry', id]);
    return changed;
  });
}

/** Takes everything of a notebook out of the store. */
export function erase(store: UseStore, id: string): Promise<void> {
  return store('readwrite', (objects) => {
    for (const part of ['entry', 'base', 'now', 'earlier']) objects.delete([part, id]);
    objects.delete(allOf('past', id));
    objects.delete(allOf('act', id));
  });
}

/** Every key of one part of a notebook. */
export function allOf(part: 'past' | 'act', id: string): IDBKeyRange {
  return IDBKeyRange.bound([part, id], [part, id, []]);
}

/** What a request comes to. */
export function request<T>(asked: IDBRequest): Promise<T> {
  return promisifyRequest(asked as IDBRequest<T>);
}
