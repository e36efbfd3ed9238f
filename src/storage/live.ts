import type { UseStore } from 'idb-keyval';
import {
  actToBytes,
  atOnce,
  replay,
  type ActRecord,
  type Change,
  type Clash,
  type Notebook,
  type Step,
} from '../notebook/index.ts';
import type { Problem } from '../units/index.ts';
import { pack, packed, snapshotOf, type Snapshot } from './parcel.ts';
import { fold, readKept } from './journal-record.ts';
import { notKept } from './trouble.ts';
import type { Writer } from './writer.ts';

/** What an open notebook tells the shelf. */
export interface LiveListeners {
  /** An act waits to be written, or the last of them was. */
  saving(isSaving: boolean): void;
  trouble(trouble: Problem | undefined): void;
  /** Acts were written, and other windows should have them. */
  wrote(first: number, acts: readonly Uint8Array[]): void;
  /** A newer build wrote into this notebook. */
  newer(): void;
  /** The browser cleared what was kept; this notebook is kept again. */
  cleared(): void;
}

/** How an open notebook is kept. */
export interface Keeping {
  readonly store: UseStore;
  readonly writer: Pick<Writer, 'append'>;
  readonly id: string;
  /** This window, as its acts are signed. */
  readonly by: string;
  readonly format: number;
  readonly listeners: LiveListeners;
}

interface Waiting {
  readonly act: Step;
  readonly at: number;
  made: readonly Change[];
}

// A journal this long is folded while the notebook is open, and at the start when it is worth it.
const LONG = 2000;
const LONG_AT_START = 40;
const RETRY_MS = 3000;
const FOLD_RETRY_MS = 10_000;
const DAY_MS = 24 * 60 * 60 * 1000;

/** A notebook on the screen whose every act is written down at once, in one order with those of other windows. */
export class LiveNotebook {
  readonly notebook: Notebook;
  private readonly keeping: Keeping;
  private waiting: Waiting[] = [];
  private known: number;
  private folded: number;
  private standing: readonly Clash[];
  private turn = Promise.resolve();
  /** Deeds that are under way or wait for their turn. */
  private under = 0;
  /** Writing that is under way, or waits for its turn. */
  private pumping: Promise<void> | undefined;
  /** Something has to be written even where no act waits. */
  private isWanted = false;
  private retry: ReturnType<typeof setTimeout> | undefined;
  private changes = 0;
  private isRefused = false;
  private isClosed = false;
  /** Nothing of it is kept yet: this is what it was before its first act. */
  private start: Snapshot | undefined;
  private readonly leave: readonly (() => void)[];

  constructor(notebook: Notebook, number: number, folded: number, keeping: Keeping) {
    this.notebook = notebook;
    this.keeping = keeping;
    this.known = number;
    this.folded = folded;
    this.standing = notebook.clashes.all();
    this.leave = [
      notebook.subscribeToActs((act, made) => {
        this.waiting.push({ act, made, at: Date.now() });
        keeping.listeners.saving(true);
        // At once where nothing is under way, before the book works out and draws what follows from it.
        if (this.under === 0) this.pumping = this.begun(() => this.pump());
        else void this.write();
      }),
      notebook.subscribe(() => (this.changes += 1)),
    ];
  }

  /** Keeps a notebook that is not on the shelf yet; the promise is kept once it is, or was refused. */
  async begin(isNow: boolean): Promise<void> {
    this.start = await packed(this.notebook.document, this.standing, this.known);
    if (isNow) await this.write(true);
  }

  /** Writes what waits; the promise is kept once nothing does, or the browser refused. */
  write(isEvenEmpty = false): Promise<void> {
    this.notebook.finishBegun();
    if (isEvenEmpty) this.isWanted = true;
    this.pumping ??= this.next(() => this.pump());
    return this.pumping;
  }

  /** Takes acts that another window wrote. */
  hear(first: number, acts: readonly unknown[]): Promise<void> {
    return this.next(async () => {
      const records = acts.map((bytes, index) => ({ number: first + index, bytes }));
      if (first <= this.known + 1) this.merge(records);
      else this.merge((await readKept(this.keeping.store, this.keeping.id)).acts);
    }).catch(() => undefined);
  }

  /** Puts a snapshot in the place of a long journal, a piece at a time, unless somebody is at work. */
  foldWhenLong(isStart: boolean, isOlder = false): void {
    const length = this.known - this.folded;
    if (!isOlder && length < (isStart ? LONG_AT_START : LONG)) return;
    void this.next(() => this.fold()).then(
      (isDone) => {
        if (!isDone && !this.isClosed) setTimeout(() => this.foldWhenLong(isStart), FOLD_RETRY_MS);
      },
      () => undefined,
    );
  }

  /** Writes what waits and lets the notebook go. */
  async close(): Promise<void> {
    this.isClosed = true;
    clearTimeout(this.retry);
    await this.write();
    for (const stop of this.leave) stop();
  }

  /** Lets the notebook go without what still waits: it is not wanted any more. */
  drop(): Promise<void> {
    this.waiting = [];
    this.start = undefined;
    return this.close();
  }

  /** Whether the browser did not take what was done last. */
  get isBehind(): boolean {
    return this.isRefused;
  }

  private async pump(): Promise<void> {
    clearTimeout(this.retry);
    const { listeners } = this.keeping;
    try {
      while (this.waiting.length > 0 || this.isWanted) {
        this.isWanted = false;
        this.isWanted = (await this.writeOnce()) || this.isWanted;
      }
      if (this.isRefused) listeners.trouble(undefined);
      this.isRefused = false;
      listeners.saving(false);
      if (this.known - this.folded >= LONG) this.foldWhenLong(false);
    } catch (error) {
      this.isRefused = true;
      listeners.trouble(notKept(this.notebook.document.name, error));
      if (!this.isClosed) this.retry = setTimeout(() => void this.write(), RETRY_MS);
    } finally {
      this.pumping = undefined;
    }
  }

  /** Whether it has to be done once more, though nothing may wait. */
  private async writeOnce(): Promise<boolean> {
    const { writer, id, by, format, listeners } = this.keeping;
    const batch = [...this.waiting];
    const first = this.known + 1;
    const acts = batch.map(({ act, at }, index) =>
      actToBytes({ ...act, number: first + index, at, by }),
    );
    const { start } = this;
    const appended = await writer.append({
      entry: { id, name: this.notebook.document.name, savedAt: Date.now() },
      known: this.known,
      acts,
      start,
      format,
    });
    switch (appended.came) {
      case 'written':
        this.start = undefined;
        this.written(first, acts);
        return false;
      case 'late': {
        // A thread that was cut off had perhaps written these before it could say so.
        const own = sameFrom(first, acts, appended.missed);
        this.written(first, acts.slice(0, own));
        this.merge(appended.missed);
        return false;
      }
      case 'gone':
        // The browser cleared it, or somebody erased it: what is on the screen is kept again, whole.
        this.start = this.beforeWaiting();
        listeners.cleared();
        return true;
      case 'newer':
        this.waiting = [];
        listeners.newer();
        return false;
    }
  }

  private written(first: number, acts: readonly Uint8Array[]): void {
    if (acts.length === 0) return;
    this.waiting.splice(0, acts.length);
    this.known += acts.length;
    this.standing = this.notebook.clashes.all();
    this.keeping.listeners.wrote(first, acts);
  }

  private merge(records: readonly ActRecord[]): void {
    const news = records.filter(({ number }) => number > this.known);
    if (news.length === 0) return;
    this.notebook.finishBegun();
    for (const { made } of [...this.waiting].reverse()) this.notebook.unmake(made);
    if (this.waiting.length > 0) this.notebook.clashes.reset(this.standing);
    this.known = replay(this.notebook, this.known, news).last;
    this.standing = this.notebook.clashes.all();
    for (const one of this.waiting) one.made = this.notebook.take(one.act.changes);
  }

  private async fold(): Promise<boolean> {
    if (this.waiting.length > 0) return false;
    const [changes, number] = [this.changes, this.known];
    const pieces: Uint8Array<ArrayBuffer>[] = [];
    for (const piece of pack(this.notebook.document, this.notebook.clashes.all())) {
      pieces.push(piece);
      await new Promise((resolve) => setTimeout(resolve));
      // Half of it would be from before an edit, half from after.
      if (changes !== this.changes) return false;
    }
    const { store, id } = this.keeping;
    const at = Date.now();
    const isDone = await fold(store, id, { number, at, pieces }, at - DAY_MS);
    if (isDone) this.folded = number;
    return isDone;
  }

  private beforeWaiting(): Snapshot {
    this.notebook.finishBegun();
    for (const { made } of [...this.waiting].reverse()) this.notebook.unmake(made);
    const snapshot = this.snapshot();
    for (const one of this.waiting) one.made = this.notebook.take(one.act.changes);
    return snapshot;
  }

  private snapshot(): Snapshot {
    return atOnce(snapshotOf(this.notebook.document, this.standing, this.known));
  }

  /** One thing after another: an act must not be numbered while another window's are being taken, and what is held back is not kept. */
  private next<T>(deed: () => Promise<T>): Promise<T> {
    return this.begun(() => this.turn.then(() => this.notebook.free).then(deed));
  }

  /** Begins a deed; what comes next waits for it. */
  private begun<T>(deed: () => Promise<T>): Promise<T> {
    this.under += 1;
    const done = deed();
    const over = (): void => {
      this.under -= 1;
    };
    this.turn = done.then(over, over);
    return done;
  }
}

/** How many acts, from the first on, lie in a journal as they are. */
function sameFrom(
  first: number,
  acts: readonly Uint8Array[],
  records: readonly ActRecord[],
): number {
  const others = acts.findIndex((act, index) => {
    const lying = records[index];
    return lying?.number !== first + index || !isSame(act, lying.bytes);
  });
  return others < 0 ? acts.length : others;
}

function isSame(bytes: Uint8Array, lying: unknown): boolean {
  return (
    lying instanceof Uint8Array &&
    lying.length === bytes.length &&
    bytes.every((byte, at) => lying[at] === byte)
  );
}
