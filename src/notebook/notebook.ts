import { RowPlaces, apply, inverse } from './apply.ts';
import type { Change, Step } from './change.ts';
import type { NotebookDocument, Row } from './document.ts';

/** Hears of changes after they were made, whether done, undone or redone. */
export type ChangeListener = (changes: readonly Change[]) => void;

/** A document that remembers how to take every act back. */
export class Notebook {
  readonly document: NotebookDocument;
  private readonly places = new RowPlaces();
  private readonly done: Step[] = [];
  private undone: Step[] = [];
  private lastId: number | undefined;
  private readonly listeners = new Set<ChangeListener>();

  constructor(document: NotebookDocument) {
    this.document = document;
  }

  /** Does one act of a person; `label` names it for undo. Nothing is done where there are no changes. */
  do(label: string, changes: readonly Change[]): void {
    if (changes.length === 0) return;
    this.make(changes);
    this.done.push({ label, changes });
    this.undone = [];
    this.tell(changes);
  }

  /** Takes the last act back. */
  undo(): void {
    const step = this.done.pop();
    if (!step) return;
    const back = [...step.changes].reverse().map(inverse);
    this.make(back);
    this.undone.push(step);
    this.tell(back);
  }

  /** Does again what was last taken back. */
  redo(): void {
    const step = this.undone.pop();
    if (!step) return;
    this.make(step.changes);
    this.done.push(step);
    this.tell(step.changes);
  }

  /** What undo would take back, in words. */
  get undoLabel(): string | undefined {
    return this.done.at(-1)?.label;
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
      return `r${String(this.lastId)}`;
    });
  }

  /** Calls back after every change; returns how to stop. */
  subscribe(listener: ChangeListener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private make(changes: readonly Change[]): void {
    for (const change of changes) apply(this.document, change, this.places);
  }

  private tell(changes: readonly Change[]): void {
    for (const listener of this.listeners) listener(changes);
  }
}

function highestId(rows: readonly Row[]): number {
  return rows.reduce(
    (highest, { id }) => Math.max(highest, Number(/^r(\d+)$/.exec(id)?.[1] ?? 0)),
    0,
  );
}
