import type { UseStore } from 'idb-keyval';
import { FORMAT, type ActRecord } from '../notebook/index.ts';
import type { Snapshot } from './parcel.ts';
import { readActs } from './append.ts';
import { allOf, request, type ShelfEntry } from './record.ts';

/** Everything that is kept of one notebook. */
export interface Kept {
  readonly entry: ShelfEntry | undefined;
  readonly base: Snapshot | undefined;
  /** Earlier snapshots, the oldest first; the acts since the oldest are kept too. */
  readonly past: readonly Snapshot[];
  readonly acts: readonly ActRecord[];
}

/** Everything kept of a notebook, as it was at one moment. */
export function readKept(store: UseStore, id: string): Promise<Kept> {
  return store('readonly', async (objects) => {
    const [entry, base, past, acts] = await Promise.all([
      request<ShelfEntry | undefined>(objects.get(['entry', id])),
      request<Snapshot | undefined>(objects.get(['base', id])),
      request<Snapshot[]>(objects.getAll(allOf('past', id))),
      readActs(objects, id, 0),
    ]);
    return { entry, base, past, acts };
  });
}

/** Puts a newer snapshot in the place of the one that lies there, and drops what no longer leads to the day before. */
export function fold(
  store: UseStore,
  id: string,
  snapshot: Snapshot,
  dayAgo: number,
): Promise<boolean> {
  return store('readwrite', async (objects) => {
    const [entry, base, past] = await Promise.all([
      request<ShelfEntry | undefined>(objects.get(['entry', id])),
      request<Snapshot | undefined>(objects.get(['base', id])),
      request<Snapshot[]>(objects.getAll(allOf('past', id))),
    ]);
    if (!entry || entry.number < snapshot.number) return false;
    if (entry.format > FORMAT || (base && base.number > snapshot.number)) return false;
    // The first and the last before this one: the day's beginning, and the earlier copy.
    const [first] = past;
    const later = base && base.number < snapshot.number ? base : past.at(-1);
    const begin = later && later.at <= dayAgo ? later : (first ?? later);
    const kept = new Set([begin?.number, later?.number].filter((number) => number !== undefined));
    for (const { number } of past) if (!kept.has(number)) objects.delete(['past', id, number]);
    if (later) objects.put(later, ['past', id, later.number]);
    if (begin && begin.number > 0)
      objects.delete(IDBKeyRange.bound(['act', id, 0], ['act', id, begin.number]));
    objects.put(snapshot, ['base', id]);
    if (entry.format < FORMAT) objects.put({ ...entry, format: FORMAT } satisfies ShelfEntry, ['entry', id]); // prettier-ignore
    return true;
  });
}

/** A notebook that is put on the shelf whole. */
export interface Shelving {
  readonly entry: ShelfEntry;
  readonly base: Snapshot;
}

/** Puts notebooks on the shelf, all of them or none, where nothing of the same id lies. */
export function shelve(store: UseStore, notebooks: readonly Shelving[]): Promise<void> {
  return store('readwrite', (objects) => {
    for (const { entry, base } of notebooks) {
      objects.add(entry, ['entry', entry.id]);
      objects.add(base, ['base', entry.id]);
    }
  });
}

/** A notebook as builds before the journal kept it: whole. */
interface KeptWhole {
  readonly revision: number;
  readonly json: unknown;
}

/** Turns a notebook that was kept whole into a snapshot with a journal; nothing happens where it is one already. */
export function upgradeKept(
  store: UseStore,
  id: string,
  repack: (json: unknown, number: number) => Snapshot | undefined,
): Promise<void> {
  return store('readwrite', async (objects) => {
    const [base, now, earlier, entry] = await Promise.all([
      // Not the snapshot itself, which may be long.
      request<IDBValidKey | undefined>(objects.getKey(['base', id])),
      request<KeptWhole | undefined>(objects.get(['now', id])),
      request<KeptWhole | undefined>(objects.get(['earlier', id])),
      request<ShelfEntry | undefined>(objects.get(['entry', id])),
    ]);
    if (base || !now || !entry) return;
    const latest = repack(now.json, 1);
    const before = earlier && repack(earlier.json, 0);
    // What can't be read stays as it lies, and is said when it is opened.
    const standing = latest ?? before;
    if (!standing) return;
    objects.put(standing, ['base', id]);
    if (latest && before) objects.put(before, ['past', id, 0]);
    objects.put({ ...entry, number: standing.number, format: FORMAT } satisfies ShelfEntry, ['entry', id]); // prettier-ignore
    if (!latest) return;
    objects.delete(['now', id]);
    objects.delete(['earlier', id]);
  });
}
