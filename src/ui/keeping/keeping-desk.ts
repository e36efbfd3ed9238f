import type { NotebookDocument } from '../../notebook/index.ts';
import type { Problem } from '../../units/index.ts';
import type { OpenJob } from '../desk.ts';

/** Some jobs as the text of a file. */
export interface Backup {
  readonly text: string;
  readonly jobs: readonly { readonly id: string; readonly number: number }[];
  /** What could not be read and is not in it, in words. */
  readonly setAside: readonly string[];
}

/** What to do with a job of a file where the one kept here differs. */
export type RestoreChoice = 'beside' | 'replace' | 'leave';

/** One job of a file, beside what is kept here. */
export interface PlannedJob {
  readonly name: string;
  readonly rows: number;
  readonly stands: 'absent' | 'same' | 'differs' | 'newer' | 'refused';
  readonly isRemoved: boolean;
  readonly changes: number;
  readonly setAside: readonly string[];
  choice: RestoreChoice;
}

/** A file that was checked whole, before anything of it comes in. */
export interface RestorePlan {
  readonly jobs: readonly PlannedJob[];
}

/** How much room there is, in bytes, and whether the browser promised to keep what is there. */
export interface Room {
  readonly used: number | undefined;
  readonly free: number | undefined;
  readonly isPromised: boolean;
}

/** Deeds on whole notebooks; fetched once somebody wants one. */
export interface WholeDeeds {
  /** Jobs as they are now; all but the removed ones where none are named. */
  backup(ids?: readonly string[]): Promise<Backup>;
  /** Notes that a backup left the page. */
  noteBackup(backup: Backup): Promise<void>;
  /** Puts a copy of a job beside it; the id of the copy. */
  duplicate(id: string): Promise<string | Problem>;
  bringBack(document: NotebookDocument, label: string): void;
  room(): Promise<Room>;
  askToStay(): Promise<boolean>;
}

/** One act of a job's last day. */
export interface PastAct {
  readonly number: number;
  /** In milliseconds since 1970. */
  readonly at: number;
  readonly label: string;
}

/** A job as it was after one of its acts; it can be looked at, not changed. */
export interface PastJob extends OpenJob {
  readonly document: NotebookDocument;
  /** Which time it is from, in words. */
  readonly words: string;
  /** What undo calls it when it is brought back. */
  readonly backLabel: string;
}

/** What the screens may ask of the shelf as a whole. */
export interface KeepingDesk {
  whole(): Promise<WholeDeeds>;
  /** Marks a job as finished or removed, or takes the mark off. */
  mark(id: string, mark: 'archivedAt' | 'removedAt', isOn: boolean): Promise<void>;
  /** Takes a job off this device for good. */
  erase(id: string): Promise<void>;
  /** The acts of a job's last day, the latest first. */
  acts(id: string): Promise<readonly PastAct[]>;
  /** A job as it was after one of them. */
  lookBack(id: string, act: PastAct): Promise<PastJob>;
}
