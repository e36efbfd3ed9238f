import type { AskMerge, OpenJob } from '../ui/index.ts';
import type { Book, BookView } from '../worksheet/index.ts';

/** A job on the screen, with the book behind it. */
export interface Job extends OpenJob {
  readonly book: Book;
}

/** What a file that comes in may ask of the page. */
export interface Hands {
  /** The job on the screen. */
  current(): Job | undefined;
  newJob(name: string): Promise<Job>;
  /** Puts a job on the screen. */
  onScreen(job: Job): void;
  /** A book with nothing left for later. */
  whole<View extends BookView>(book: View): View;
  askMerge: AskMerge;
  /** Asks the browser to keep what is there. */
  askToStay(): void;
  /** Starts the thread that reads long files. */
  startReading(): Worker;
}

// The engine and the importer are most of the page's weight; the start screen does without them.
export const loadEngine = () => import('../worksheet/index.ts');
export const loadImporter = () => import('../intake/index.ts');
