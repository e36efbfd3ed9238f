import type { UseStore } from 'idb-keyval';
import {
  backupText,
  difference,
  type BackedUpJob,
  type Notebook,
  type NotebookDocument,
} from '../notebook/index.ts';
import { isProblem, type Problem } from '../units/index.ts';
import { readNow, reopened } from './opened.ts';
import { changeEntry, readEntries } from './record.ts';
import { planRestore, restore, type Restored, type RestorePlan } from './restore.ts';
import { shelveAll } from './shelving.ts';
import { askToStay, readRoom, type Room } from './room.ts';

export { Keeping };

/** Some jobs as the text of a file, and how far each of them had come. */
export interface Backup {
  readonly text: string;
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
  /** Jobs, or parts of them, that could not be read and are not in it, in words. */
  readonly setAside: readonly string[];
}

/** A notebook on the screen; it may know more than the store, where that has no room. */
export interface OnScreen {
  readonly id: string;
  readonly notebook: Notebook;
}

/** What the deeds here need of the shelf. */
export interface KeptShelf {
  readonly store: UseStore;
  readonly format: number;
  readonly onScreen: () => OnScreen | undefined;
  /** Acts were written into a notebook from here. */
  readonly wrote: (id: string, first: number, acts: readonly Uint8Array[]) => void;
  readonly changed: () => void;
}

/** What is done with whole notebooks: backups, bringing them back, copies, and the room they take. */
class Keeping {
  private readonly shelf: KeptShelf;

  constructor(shelf: KeptShelf) {
    this.shelf = shelf;
  }

  /** Jobs as they are now; all but the removed ones where none are named. */
  async backup(ids?: readonly string[]): Promise<Backup> {
    const { store, onScreen } = this.shelf;
    const live = onScreen();
    const entries = await readEntries(store).catch(() => []);
    const kept = entries.filter(({ removedAt }) => removedAt === undefined).map(({ id }) => id);
    const wanted = ids ?? [...new Set([...kept, ...(live ? [live.id] : [])])];
    const jobs: BackedUpJob[] = [];
    const taken: { id: string; number: number }[] = [];
    const setAside: string[] = [];
    for (const id of wanted) {
      const entry = entries.find((one) => one.id === id);
      const archivedAt = entry?.archivedAt;
      if (live?.id === id) jobs.push({ id, document: live.notebook.document, archivedAt });
      else {
        const opened = await reopened(await readNow(store, id));
        const name = entry?.name ?? id;
        if (isProblem(opened)) setAside.push(`${name}: ${opened.found}`);
        else {
          jobs.push({ id, document: opened.notebook.document, archivedAt });
          setAside.push(...opened.setAside.map((words) => `${name}: ${words}`));
        }
      }
      taken.push({ id, number: entry?.number ?? 0 });
    }
    return { text: backupText(jobs, Date.now()), jobs: taken, setAside };
  }

  /** Notes that a backup left the page, so that nobody is reminded of what is in it. */
  async noteBackup({ jobs }: Backup): Promise<void> {
    const at = Date.now();
    for (const { id, number } of jobs)
      await changeEntry(this.shelf.store, id, (entry) => ({ ...entry, backedUp: { number, at } }));
    this.shelf.changed();
  }

  /** What a notebook or backup file would bring; nothing is changed by asking. */
  plan(file: Blob): Promise<RestorePlan | Problem> {
    return planRestore(file, this.shelf);
  }

  /** Brings back what a plan says, by its choices. */
  async restore(plan: RestorePlan): Promise<Restored | Problem> {
    const done = await restore(plan, this.shelf);
    this.shelf.changed();
    return done;
  }

  /** Makes the notebook on the screen what it was at an earlier time, as one act that undo takes back. */
  bringBack(document: NotebookDocument, label: string): void {
    const { notebook } = this.shelf.onScreen() ?? {};
    notebook?.do(label, difference(notebook.document, document));
  }

  /** Puts a copy of a notebook beside it, under a name of its own; the id of the copy. */
  async duplicate(id: string): Promise<string | Problem> {
    const opened = await reopened(await readNow(this.shelf.store, id));
    if (isProblem(opened)) return opened;
    const { document } = opened.notebook;
    document.name = `${document.name}, copy`;
    const copy = crypto.randomUUID();
    return (await shelveAll([{ id: copy, document }], this.shelf)) ?? copy;
  }

  room(): Promise<Room> {
    return readRoom();
  }

  askToStay(): Promise<boolean> {
    return askToStay();
  }
}
