import type { BookView } from '../worksheet/index.ts';

/** A job kept on this device. */
export interface KeptJob {
  readonly id: string;
  readonly name: string;
  /** When it was last saved, in words. */
  readonly saved: string;
}

/** A job that is open on the screen. */
export interface OpenJob {
  readonly id: string;
  readonly book: BookView;
}

/** What came of bringing in a file. */
export interface BroughtIn {
  readonly job: OpenJob;
  /** One line for people: how many lines were read, asked about and passed over. */
  readonly summary: string;
  /** Lines that hold no reading, and why; columns that fit nothing. */
  readonly remarks: readonly string[];
}

/** Whether what is on the screen is kept. */
export interface SavedMark {
  readonly state: 'saved' | 'saving' | 'trouble';
  readonly words: string;
}

/** A page that can be printed, and what its button says. */
export interface PrintChoice {
  readonly id: string;
  readonly label: string;
}

/**
 * What the screens may ask of the rest of the notebook: keeping, bringing in, giving out. Whatever
 * goes wrong comes back as a rejected promise whose message is meant for people.
 */
export interface Desk {
  list(): Promise<readonly KeptJob[]>;
  open(id: string): Promise<OpenJob>;
  startEmpty(): Promise<OpenJob>;
  openDemo(): Promise<OpenJob>;
  remove(id: string): Promise<void>;
  /** Brings a crew's CSV into the open job, or into a new one. */
  importSite(file: File, into: OpenJob | undefined): Promise<BroughtIn>;
  /** Opens a notebook file that was saved before. */
  openFile(file: File): Promise<OpenJob>;
  /** Gives the whole notebook out as one file. */
  saveFile(job: OpenJob): void;
  /** Gives the supplier's list out as CSV. */
  supplierCsv(job: OpenJob): void;
  readonly pages: readonly PrintChoice[];
  print(job: OpenJob, page: string): void;
  /** Calls back with the mark now and whenever it changes. */
  onSaved(listener: (mark: SavedMark) => void): () => void;
  /** Calls back when another window changed the open job. */
  onElsewhere(listener: (id: string) => void): () => void;
}
