import { FORMAT, type Act, type Notebook, type NotebookDocument } from '../notebook/index.ts';
import { isProblem, type Problem } from '../units/index.ts';
import type { LiveListeners, LiveNotebook } from './live.ts';
import type { Keeping } from './keeping.ts';
import { changeEntry, erase, readEntries, type ShelfEntry } from './record.ts';
import { openStore } from './store.ts';
import { notRead } from './trouble.ts';
import { joinWindows } from './windows.ts';
import { Writer } from './writer.ts';

export type { ShelfEntry } from './record.ts';

/** A notebook on the screen; every act in it is kept from now on, and acts of other windows come in. */
export interface OpenedNotebook {
  readonly id: string;
  readonly notebook: Notebook;
  /** What of it could not be read, in words. */
  readonly setAside: readonly string[];
  /** Why it may only be looked at. */
  readonly newer: Problem | undefined;
}

/** One act of a notebook's last day, as a person looks for it. */
export type PastAct = Pick<Act, 'number' | 'at' | 'label' | 'by'>;

/** The notebooks kept in this browser. Nothing here throws: trouble is told through `onTrouble`. */
export interface Shelf {
  /** Every kept notebook, archived and removed ones too, the last saved first. */
  list(): Promise<readonly ShelfEntry[]>;
  /** Opens a notebook, in the place of the one that was open. */
  open(id: string): Promise<OpenedNotebook | Problem>;
  /** Opens a new notebook; it is kept at once, or from its first act on. */
  create(id: string, document: NotebookDocument, isKeptNow: boolean): Promise<OpenedNotebook>;
  /** A document to look at: nothing in it can be changed, and nothing of it is kept. */
  show(document: NotebookDocument): Promise<OpenedNotebook>;
  /** Backups, copies and the room they take; fetched once somebody asks for it. */
  keeping(): Promise<Keeping>;
  /** A notebook as it is kept, without opening it. */
  read(id: string): Promise<NotebookDocument | Problem>;
  /** The acts since the beginning of the last day, the latest first. */
  history(id: string): Promise<readonly PastAct[]>;
  /** A notebook as it was after one of those acts. */
  readAfter(id: string, act: number): Promise<NotebookDocument | Problem>;
  /** Marks a notebook as removed or finished, or takes the mark off. */
  mark(id: string, mark: 'archivedAt' | 'removedAt', isOn: boolean): Promise<void>;
  /** Takes a notebook off the shelf for good. */
  erase(id: string): Promise<void>;
  /** Writes at once what still waits. The shelf does so by itself when the page is left. */
  flush(): Promise<void>;
  /** Writes what waits and stops listening to other windows. */
  close(): Promise<void>;
}

/** How the shelf speaks up. */
export interface ShelfListeners {
  /** What keeps a notebook from being saved or read; undefined once saving works again. */
  readonly onTrouble?: (trouble: Problem | undefined) => void;
  /** An act waits to be written, or everything is on the disk. */
  readonly onSaving?: (isSaving: boolean) => void;
  /** Another window has a newer build: nothing is written from here any more. */
  readonly onNewer?: () => void;
  /** The browser cleared what it kept; the notebook on the screen is kept again, the others are not. */
  readonly onCleared?: () => void;
  /** What is on the shelf changed in another window. */
  readonly onShelfChanged?: () => void;
}

/** Where the shelf is, and who writes; tests put something else in the place of the usual. */
export interface ShelfPlace {
  readonly database?: string;
  readonly format?: number;
  /** Starts the thread that writes; without one the page does it. */
  readonly startWriting?: () => Worker;
}

// The list of jobs does without what opens one; that is fetched beside the first screen.
const loadOpening = () => import('./opened.ts');

const REMOVED_FOR_MS = 7 * 24 * 60 * 60 * 1000;

/** Opens the shelf; it is there even where the browser keeps nothing, and then says so. */
export async function openShelf(
  { onTrouble, onSaving, onNewer, onCleared, onShelfChanged }: ShelfListeners = {},
  { database = 'backplumb', format = FORMAT, startWriting }: ShelfPlace = {},
): Promise<Shelf> {
  // Looked at once it is cleared, and kept again before anybody types.
  const store = openStore(database, () => {
    writer.doubt();
    void live?.notebook.write(true);
  });
  const writer = new Writer(store, database, startWriting);
  const by = crypto.randomUUID().slice(0, 4);
  let live: { readonly id: string; readonly notebook: LiveNotebook } | undefined;
  // Left with acts that the browser refused; they stay here, and are offered to it again and again.
  const behind = new Map<string, LiveNotebook>();

  const windows = joinWindows(database, format, {
    acts(id, first, acts) {
      if (live?.id === id) void live.notebook.hear(first, acts);
    },
    shelf: () => onShelfChanged?.(),
    newer: () => lock(),
  });

  const lock = (): void => {
    live?.notebook.notebook.lock(() => onNewer?.());
    onNewer?.();
  };

  const listenersFor = (id: string): LiveListeners => ({
    saving: (isSaving) => onSaving?.(isSaving),
    trouble: (trouble) => onTrouble?.(trouble),
    wrote: (first, acts) => windows.tellActs(id, first, acts),
    newer: lock,
    cleared: () => onCleared?.(),
  });

  const attempt = async <T>(act: () => Promise<T>): Promise<T | Problem> => {
    try {
      return await act();
    } catch (error) {
      return notRead(error);
    }
  };

  const tried = async (act: () => Promise<unknown>): Promise<void> => {
    const came = await attempt(act);
    if (isProblem(came)) onTrouble?.(came);
    else shelfChanged();
  };

  const shelfChanged = (): void => {
    windows.tellShelf();
    onShelfChanged?.();
  };

  const leave = async (): Promise<void> => {
    const left = live;
    live = undefined;
    await left?.notebook.write();
    if (left?.notebook.isBehind) behind.set(left.id, left.notebook);
    else await left?.notebook.close();
  };

  /** A notebook that only this window has, or has more of than the store. */
  const goOn = async (id: string): Promise<OpenedNotebook | undefined> => {
    if (live?.id === id && live.notebook.isBehind) await leave();
    const notebook = behind.get(id);
    if (!notebook) return undefined;
    behind.delete(id);
    if (notebook.isBehind) await notebook.write();
    await leave();
    live = { id, notebook };
    return { id, notebook: notebook.notebook, setAside: [], newer: undefined };
  };

  const goLive = async (
    id: string,
    notebook: Notebook,
    number: number,
    folded: number,
  ): Promise<LiveNotebook> => {
    await leave();
    notebook.rowMark = `-${by}`;
    const { LiveNotebook } = await loadOpening();
    const opened = new LiveNotebook(notebook, number, folded, {
      store,
      writer,
      id,
      by,
      format,
      listeners: listenersFor(id),
    });
    live = { id, notebook: opened };
    return opened;
  };

  const kept = (id: string) =>
    attempt(async () => {
      const { readNow } = await loadOpening();
      return readNow(store, id);
    });

  const flush = async (): Promise<void> => {
    const open = [...behind.values(), ...(live ? [live.notebook] : [])];
    await Promise.all(open.map((notebook) => notebook.write()));
  };
  const flushOnLeaving = (): void => void flush();
  addEventListener('pagehide', flushOnLeaving);

  const shelf: Shelf = {
    async list() {
      const entries = await attempt(() => readEntries(store));
      const here = [...behind, ...(live?.notebook.isBehind ? [[live.id, live.notebook] as const] : [])].map(([id, { notebook }]) => ({ id, name: notebook.document.name, savedAt: Date.now(), number: 0, format })); // prettier-ignore
      if (isProblem(entries)) onTrouble?.(entries);
      const kept = isProblem(entries) ? [] : entries;
      return [...here.filter(({ id }) => !kept.some((entry) => entry.id === id)), ...kept];
    },
    async open(id) {
      await flush();
      const going = await goOn(id);
      if (going) return going;
      const lying = await kept(id);
      if (isProblem(lying)) return lying;
      const { reopened } = await loadOpening();
      const opened = await reopened(lying);
      if (isProblem(opened)) return opened;
      const { notebook, number, setAside, newer } = opened;
      const folded = setAside.length > 0 ? number : (lying.base?.number ?? 0);
      if (newer) notebook.lock(() => onTrouble?.(newer));
      else {
        const living = await goLive(id, notebook, number, folded);
        living.foldWhenLong(true, (lying.entry?.format ?? format) < format);
      }
      return { id, notebook, setAside, newer };
    },
    async create(id, document, isKeptNow) {
      const { Notebook } = await loadOpening();
      const notebook = new Notebook(document);
      const living = await goLive(id, notebook, 0, 0);
      await living.begin(isKeptNow);
      return { id, notebook, setAside: [], newer: undefined };
    },
    async show(document) {
      const { Notebook } = await loadOpening();
      const notebook = new Notebook(document);
      notebook.lock(() => undefined);
      return { id: crypto.randomUUID(), notebook, setAside: [], newer: undefined };
    },
    async keeping() {
      const { Keeping } = await import('./keeping.ts');
      return new Keeping({
        store,
        onScreen: () => live && { id: live.id, notebook: live.notebook.notebook },
        format,
        wrote(id, first, acts) {
          windows.tellActs(id, first, acts);
          if (live?.id === id) void live.notebook.hear(first, acts);
        },
        changed: shelfChanged,
      });
    },
    async read(id) {
      return this.readAfter(id, Infinity);
    },
    async history(id) {
      await flush();
      const lying = await kept(id);
      if (isProblem(lying)) return [];
      const { reopened } = await loadOpening();
      const [begin] = [...lying.past, ...(lying.base ? [lying.base] : [])];
      const first = begin && (await reopened({ ...lying, base: begin, past: [] }));
      if (!first || isProblem(first)) return [];
      return first.acts.map(({ number, at, label, by: who }) => ({ number, at, label, by: who })).reverse(); // prettier-ignore
    },
    async readAfter(id, act) {
      await flush();
      const lying = await kept(id);
      const { reopened } = await loadOpening();
      const opened = isProblem(lying) ? lying : await reopened(lying, act);
      return isProblem(opened) ? opened : opened.notebook.document;
    },
    mark: (id, mark, isOn) =>
      tried(() => changeEntry(store, id, (entry) => marked(entry, mark, isOn))),
    async erase(id) {
      await behind.get(id)?.drop();
      behind.delete(id);
      await tried(() => erase(store, id));
      // There may be room now for what had none.
      await flush();
    },
    flush,
    async close() {
      removeEventListener('pagehide', flushOnLeaving);
      await live?.notebook.close();
      for (const notebook of behind.values()) await notebook.close();
      windows.leave();
      writer.stop();
    },
  };
  // Asked once now, so that a browser which keeps nothing says so before anything is typed.
  const entries = await shelf.list();
  void loadOpening();
  const old = entries.filter(({ removedAt = Infinity }) => removedAt < Date.now() - REMOVED_FOR_MS);
  for (const { id } of old) await shelf.erase(id);
  return shelf;
}

function marked(entry: ShelfEntry, mark: 'archivedAt' | 'removedAt', isOn: boolean): ShelfEntry {
  const others = Object.entries(entry).filter(([name]) => name !== mark);
  const unmarked = Object.fromEntries(others) as unknown as ShelfEntry;
  return isOn ? { ...unmarked, [mark]: Date.now() } : unmarked;
}
