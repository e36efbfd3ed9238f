import { RowPlaces, apply, inverse } from './apply.ts';
import { isNothing, type Change, type Step } from './change.ts';
import { Clashes, placeOf } from './clash.ts';
import type { NotebookDocument, Row } from './document.ts';
import { TAKE_BACK, recall } from './recall.ts';
import { settle } from './settle.ts';

/** Hears of changes after they were made, whether done, undone, redone or come from another window. */
export type ChangeListener = (changes: readonly Change[]) => void;

/** Hears of every act of the person at this window: its name, what was meant, and what it came to. */
export type ActListener = (act: Step, made: readonly Change[]) => void;

/** Acts that are made and nobody has written down yet. */
export interface Held {
  /** Has them written down, as if they were done now. */
  keep(): void;
  /** Takes them back, as if they had never been: nothing is left to do again. */
  drop(): void;
}

/** A document that remembers how to take every act back. */
export class Notebook {
  readonly document: NotebookDocument;
  /** Entries that two windows wrote at once, until somebody chooses. */
  readonly clashes = new Clashes();
  /** Ends every new row's id, so that rows added in two windows at once stay two. */
  rowMark = '';
  private locked: (() => void) | undefined;
  private begun: { readonly label: string; readonly act: () => void } | undefined;
  private held: { readonly act: Step; readonly made: readonly Change[] }[] | undefined;
  /** Kept once no acts are held back. */
  free = Promise.resolve();
  private readonly places = new RowPlaces();
  private done: Step[] = [];
  private undone: Step[] = [];
  private lastId: number | undefined;
  private readonly listeners = new Set<ChangeListener>();
  private readonly actListeners = new Set<ActListener>();

  constructor(document: NotebookDocument) {
    this.document = document;
  }

  /**
   * Does one act of a person; `label` names it for undo. Nothing is done where there are no changes.
   * An entry whose `before` is not what stands there was typed by somebody who had not seen that:
   * both are kept as a clash.
   */
  do(label: string, changes: readonly Change[]): void {
    if (changes.length === 0) return;
    this.finishBegun();
    if (this.isLocked()) return;
    const made = changes.flatMap((change) => {
      if (placeOf(change)) return this.settleAll([change]);
      apply(this.document, change, this.places);
      return [change];
    });
    // To keep what stands settles a clash, and leaves nothing to take back.
    if (!made.every(isNothing)) {
      this.done.push({ label, changes: made });
      this.undone = [];
    }
    this.hear({ label, changes }, made);
  }

  /** Takes the last act back. */
  undo(): void {
    this.finishBegun();
    if (this.done.length === 0 || this.held || this.isLocked()) return;
    const step = this.done.pop();
    if (!step) return;
    const back = backOf(step);
    this.undone.push(step);
    this.hear(back, this.settleAll(back.changes));
  }

  /** Does again what was last taken back. */
  redo(): void {
    this.finishBegun();
    if (this.undone.length === 0 || this.held || this.isLocked()) return;
    const step = this.undone.pop();
    if (!step) return;
    this.done.push(step);
    this.hear(step, this.settleAll(step.changes));
  }

  /**
   * Makes changes that come from elsewhere, as far as they fit: no undo of this window takes them
   * back, and where they meet an entry they did not know of, both are kept as a clash.
   */
  take(changes: readonly Change[]): readonly Change[] {
    this.finishBegun();
    const made = this.settleAll(changes);
    this.tell(made);
    return made;
  }

  /**
   * Begins an act that takes a while to make out. It is done when the caller says so, and sooner where anything else
   * happens to the notebook: acts stay in the order in which they were begun.
   */
  begin(label: string, act: () => void): () => void {
    this.finishBegun();
    const begun = { label, act };
    this.begun = begun;
    return () => {
      if (this.begun === begun) this.finishBegun();
    };
  }

  /** Does at once what was begun. */
  finishBegun(): void {
    const { begun } = this;
    this.begun = undefined;
    begun?.act();
  }

  /** Takes back, exactly, what was just made. */
  unmake(made: readonly Change[]): void {
    const back = [...made].reverse().map(inverse);
    for (const change of back) apply(this.document, change, this.places);
    this.tell(back);
  }

  /** Goes on with undo and redo where they were after these acts, which are in the document already. */
  recall(acts: readonly Step[]): void {
    const { done, undone } = recall(acts);
    this.done = [...done];
    this.undone = [...undone];
  }

  /** Holds back what is done from now on, until it is kept or dropped; undo and redo wait for that. */
  hold(): Held {
    this.finishBegun();
    const [done, undone] = [[...this.done], [...this.undone]];
    const sheets = new Set(this.document.sheets.keys());
    const held: NonNullable<Notebook['held']> = [];
    this.held = held;
    let release: (() => void) | undefined;
    this.free = new Promise((resolve) => (release = resolve));
    const letGo = (): void => {
      this.held = undefined;
      release?.();
    };
    return {
      keep: () => {
        letGo();
        for (const { act, made } of held) this.report(act, made);
      },
      drop: () => {
        [this.done, this.undone] = [done, undone];
        const back = held.reverse().flatMap(({ made }) => [...made].reverse().map(inverse));
        const made = this.settleAll(back);
        for (const [sheet, rows] of this.document.sheets) {
          if (rows.length === 0 && !sheets.has(sheet)) this.document.sheets.delete(sheet);
        }
        letGo();
        this.tell(made);
      },
    };
  }

  /** From now on nothing can be done here; whoever tries is told by `refuse`. */
  lock(refuse: () => void): void {
    this.locked = refuse;
  }

  /** What undo would take back, in words. */
  get undoLabel(): string | undefined {
    return this.begun?.label ?? this.done.at(-1)?.label;
  }

  /** What redo would do again, in words. */
  get redoLabel(): string | undefined {
    return this.undone.at(-1)?.label;
  }

  /** The rows of a sheet, in order; a sheet nobody typed into has none. */
  rows(sheet: string): readonly Row[] {
    return this.document.sheets.get(sheet) ?? [];
  }

  /** The row with this id. */
  row(sheet: string, id: string): Row | undefined {
    const at = this.place(sheet, id);
    return at === undefined ? undefined : this.rows(sheet)[at];
  }

  /** Where a row stands in its sheet, from 0. */
  place(sheet: string, id: string): number | undefined {
    return this.places.find(this.document, sheet, id);
  }

  /** Ids that no row has or had since the notebook was opened, so that nothing typed for a gone row comes back on a new one. */
  freshIds(count: number): readonly string[] {
    this.lastId ??= Math.max(0, ...[...this.document.sheets.values()].map(highestId));
    return Array.from({ length: count }, () => {
      this.lastId = (this.lastId ?? 0) + 1;
      return `r${String(this.lastId)}${this.rowMark}`;
    });
  }

  /** Calls back after every change; returns how to stop. */
  subscribe(listener: ChangeListener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Calls back after every act at this window, as it has to be done again elsewhere; returns how to stop. */
  subscribeToActs(listener: ActListener): () => void {
    this.actListeners.add(listener);
    return () => this.actListeners.delete(listener);
  }

  private isLocked(): boolean {
    this.locked?.();
    return this.locked !== undefined;
  }

  private settleAll(changes: readonly Change[]): readonly Change[] {
    // One by one: each has to fit the document as those before it leave it.
    return changes.flatMap((change) => {
      const made = settle(change, this.document, this.places, this.clashes);
      for (const each of made) apply(this.document, each, this.places);
      return made;
    });
  }

  private hear(act: Step, made: readonly Change[]): void {
    if (this.held) this.held.push({ act, made });
    else this.report(act, made);
    this.tell(made);
  }

  private report(act: Step, made: readonly Change[]): void {
    for (const listener of this.actListeners) listener(act, made);
  }

  private tell(changes: readonly Change[]): void {
    if (changes.length === 0) return;
    for (const listener of this.listeners) listener(changes);
  }
}

function backOf({ label, changes }: Step): Step {
  return { label: `${TAKE_BACK}${label}`, changes: [...changes].reverse().map(inverse) };
}

function highestId(rows: readonly Row[]): number {
  return rows.reduce(
    (highest, { id }) => Math.max(highest, Number(/^r(\d+)(?:-\w+)?$/.exec(id)?.[1] ?? 0)),
    0,
  );
}
