import type { Choice } from '../units/index.ts';
import type { BookView } from '../worksheet/index.ts';
import type { Progress, Reading, ReadingWatch } from './import-desk.ts';
import type { KeepingDesk, RestorePlan } from './keeping/keeping-desk.ts';
import type { FilesDesk, YardDesk } from './yard-desk.ts';

/** A job kept on this device. */
export interface KeptJob {
  readonly id: string;
  readonly name: string;
  /** When it was last saved, in words. */
  readonly saved: string;
  /** Whether it is the demo, whose numbers are invented. */
  readonly isDemo?: boolean;
  /** Put with the finished jobs, or removed and not erased yet. */
  readonly isFinished?: boolean;
  readonly isRemoved?: boolean;
  /** Which backup it is in, in words. */
  readonly backup?: string;
  /** Whether it has work in it that is in no backup; `isDue`, where that is from an earlier day. */
  readonly isBehind?: boolean;
  readonly isDue?: boolean;
}

/** A job that is open on the screen. */
export interface OpenJob {
  readonly id: string;
  readonly book: BookView;
}

/** A question about a whole file, such as which of two headers a column is. */
export interface FileQuestion {
  readonly question: string;
  readonly choices: readonly Choice[];
  /** Brings the file in again with the answer. */
  answer(entry: string): Promise<BroughtIn>;
}

/** What came of bringing in a file. */
export interface BroughtIn {
  readonly job: OpenJob;
  readonly questions: readonly FileQuestion[];
  /** One line for people: how many lines were read, asked about and passed over. */
  readonly summary: string;
  /** Lines that hold no reading, and why; columns that fit nothing. */
  readonly remarks: readonly string[];
}

/** A file beside the posts of the job, by post number, or beside another sheet by what names its rows. */
export interface ComparedFile {
  readonly file: string;
  /** What a row is called, and its sheet; posts where left out. */
  readonly rows?: string;
  readonly sheet?: string;
  /** Whether rows that are not there yet can be added. */
  readonly isGrowable?: boolean;
  /** Post numbers of the file that the job does not have. */
  readonly fresh: readonly string[];
  readonly changed: readonly {
    readonly post: string;
    readonly cells: readonly {
      readonly label: string;
      readonly before: string;
      readonly after: string;
    }[];
  }[];
  readonly same: readonly string[];
}

/** What to do with a file whose posts are there already. */
export type MergeChoice = 'merge' | 'return' | 'add' | 'leave';

/** Asks a person what to do with such a file. */
export type AskMerge = (compared: ComparedFile) => Promise<MergeChoice>;

/** Whether what is on the screen is kept. */
export interface SavedMark {
  readonly state: 'saved' | 'saving' | 'trouble';
  readonly words: string;
  /** What a person should do: save the job as a file as long as this stands, reload, or make a backup once. */
  readonly todo?: 'save file' | 'reload' | 'backup';
}

/** A page or a list that can be given out, and what its button says. */
export interface Handout {
  readonly id: string;
  readonly label: string;
  /** For a list: the page that says the same on paper. */
  readonly page?: string | undefined;
}

/**
 * What the screens may ask of the rest of the notebook: keeping, bringing in, giving out. Whatever
 * goes wrong comes back as a rejected promise whose message is meant for people.
 */
export interface Desk {
  list(): Promise<readonly KeptJob[]>;
  /** `progress` hears how far a long job is worked out, from 0 to 1. */
  open(id: string, progress?: Progress): Promise<OpenJob>;
  /** The job whose company details, rates and prices a new one takes over; blank for none. */
  pattern: string;
  startEmpty(): Promise<OpenJob>;
  openDemo(): Promise<OpenJob>;
  /**
   * Reads a crew's CSV, to be looked at before it comes into the open job, or into a new one. A yard's price list comes in at once.
   */
  readSite(
    file: File,
    into: OpenJob | undefined,
    watch: ReadingWatch,
    /** The sheet it was put on, where one was meant: it is read by the columns of that sheet, if it fits them. */
    onto?: string,
  ): Promise<Reading | BroughtIn>;
  /** Who is asked where posts of a file are in the job already. */
  askMerge: AskMerge;
  /** Opens a notebook or backup file that was saved before; undefined where none of its jobs alone is to be shown. */
  openFile(file: File, progress?: Progress): Promise<OpenJob | undefined>;
  /** Who is asked where a file holds several jobs, or one that is here and differs; false to leave it. */
  askRestore: (plan: RestorePlan) => Promise<boolean>;
  readonly keeping: KeepingDesk;
  /** Gives a text out as a JSON file of this name. */
  giveFile(text: string, name: string): void;
  /** Lists that can be given out as CSV; the supplier's is the first. */
  readonly lists: readonly Handout[];
  /** Saves a list as CSV; the name of the file. */
  saveList(job: OpenJob, list: string): string;
  readonly yard: YardDesk;
  readonly files: FilesDesk;
  readonly pages: readonly Handout[];
  /** Prints a page; `sheet` is the one that is looked at. */
  print(job: OpenJob, page: string, sheet: string): void;
  /** Calls back with the mark now and whenever it changes. */
  onSaved(listener: (mark: SavedMark) => void): () => void;
  /** Calls back when another window changed what is on the shelf. */
  onShelf(listener: () => void): () => void;
}
