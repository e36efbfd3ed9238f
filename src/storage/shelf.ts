import { fromJson, toJson, type NotebookDocument } from '../notebook/index.ts';
import { problem, type Problem } from '../units/index.ts';
import { keepLatest } from './latest.ts';
import {
  erase,
  readEarlier,
  readEntries,
  readKept,
  writeKept,
  type Kept,
  type ShelfEntry,
} from './record.ts';
import { openStore } from './store.ts';
import { notKept, notRead } from './trouble.ts';

export type { ShelfEntry } from './record.ts';

/** The notebooks kept in this browser. Nothing here throws: trouble is told through `onTrouble`. */
export interface Shelf {
  /** Every kept notebook, the last saved first. */
  list(): Promise<ShelfEntry[]>;
  /** A notebook as last saved, in whichever window; from then on this window goes on from that state. */
  load(id: string): Promise<NotebookDocument | Problem>;
  /** The notebook as it was before this session's first save, for when the latest is damaged. */
  loadEarlier(id: string): Promise<NotebookDocument | Problem>;
  /**
   * Keeps the document as it is within 50 ms; the promise is kept once it, or a newer state, is on
   * the disk or was refused. Where another window saved a state that this one has not loaded,
   * nothing is overwritten: this window's state becomes a notebook of its own, and `onTrouble` says so.
   */
  save(id: string, document: NotebookDocument): Promise<void>;
  /** Takes a notebook off the shelf for good. */
  remove(id: string): Promise<void>;
  /** Writes at once what still waits. The shelf does so by itself when the page is left. */
  flush(): Promise<void>;
  /** Writes what waits and stops listening to other windows. */
  close(): Promise<void>;
}

/** How the shelf speaks up. */
export interface ShelfListeners {
  /** What keeps a notebook from being saved or read; undefined once saving works again. */
  readonly onTrouble?: (trouble: Problem | undefined) => void;
  /** Another window saved or removed this notebook; load it to go on from there. */
  readonly onElsewhere?: (id: string) => void;
}

/** What one window tells the others. */
interface Announcement {
  readonly id: string;
  readonly revision: number;
}

const DATABASE = 'backplumb';
const DELAY = 25;

/** Opens the shelf; it is there even where the browser keeps nothing, and then says so. */
export async function openShelf(
  { onTrouble, onElsewhere }: ShelfListeners = {},
  database = DATABASE,
): Promise<Shelf> {
  const store = openStore(database);
  const windows = new BroadcastChannel(database);
  /** The revision this window goes on from. */
  const known = new Map<string, number>();
  /** Notebooks another window changed under this one, and where this one's state is kept instead. */
  const aside = new Map<string, string>();
  const saved = new Set<string>();
  const refused = new Map<string, NotebookDocument>();

  windows.onmessage = ({ data }: MessageEvent<Announcement>) => {
    if (data.revision !== known.get(data.id)) onElsewhere?.(data.id);
  };

  const announce = (announcement: Announcement): void => {
    windows.postMessage(announcement);
  };

  const write = async (id: string, document: NotebookDocument): Promise<void> => {
    const revision = await writeKept(store, {
      entry: { id, name: document.name, savedAt: Date.now() },
      json: toJson(document),
      known: known.get(id),
      keepEarlier: !saved.has(id),
    });
    if (revision === undefined) {
      await writeAside(id, document);
      return;
    }
    known.set(id, revision);
    saved.add(id);
    announce({ id, revision });
  };

  const writeAside = async (id: string, document: NotebookDocument): Promise<void> => {
    const copy = crypto.randomUUID();
    const name = `${document.name} (other window)`;
    await write(copy, { ...document, name });
    aside.set(id, copy);
    onTrouble?.(
      problem(
        `Notebook “${document.name}”`,
        'it was changed in another window before this one had read the change.',
        `What is on screen here is kept as “${name}”. Open the one you want to go on with.`,
      ),
    );
  };

  const latest = keepLatest(DELAY, async (id, document: NotebookDocument) => {
    try {
      const copy = aside.get(id);
      if (copy === undefined) await write(id, document);
      else await write(copy, { ...document, name: `${document.name} (other window)` });
      if (refused.delete(id) && refused.size === 0) onTrouble?.(undefined);
    } catch (error) {
      refused.set(id, document);
      onTrouble?.(notKept(document.name, error));
    }
  });

  const read = async <T>(act: () => Promise<T>): Promise<T | Problem> => {
    try {
      return await act();
    } catch (error) {
      return notRead(error);
    }
  };

  const flush = (): Promise<void> => latest.flush();
  const flushOnLeaving = (): void => void flush();
  addEventListener('pagehide', flushOnLeaving);

  const shelf: Shelf = {
    async list() {
      const entries = await read(() => readEntries(store));
      if (Array.isArray(entries)) return entries;
      onTrouble?.(entries);
      return [];
    },
    async load(id) {
      // An edit that still waits belongs to the state before the one about to be read.
      await latest.flush();
      const kept = await read(() => readKept(store, id));
      aside.delete(id);
      return opened(kept, (revision) => known.set(id, revision));
    },
    async loadEarlier(id) {
      return opened(await read(() => readEarlier(store, id)));
    },
    save: (id, document) => latest.put(id, document),
    async remove(id) {
      latest.drop(id);
      refused.delete(id);
      await latest.flush();
      const trouble = await read(() => erase(store, id));
      if (trouble) {
        onTrouble?.(trouble);
        return;
      }
      known.delete(id);
      announce({ id, revision: 0 });
      // There may be room now for what had none.
      await Promise.all([...refused].map(([waiting, document]) => latest.put(waiting, document)));
    },
    flush,
    async close() {
      removeEventListener('pagehide', flushOnLeaving);
      await latest.flush();
      windows.close();
    },
  };
  // Asked once now, so that a browser which keeps nothing says so before anything is typed.
  await shelf.list();
  return shelf;
}

function opened(
  kept: Kept | Problem | undefined,
  remember?: (revision: number) => void,
): NotebookDocument | Problem {
  if (kept === undefined)
    return problem('Kept notebooks', 'this notebook is no longer here.', 'Choose another one.');
  if (!('json' in kept)) return kept;
  remember?.(kept.revision);
  return fromJson(kept.json);
}
