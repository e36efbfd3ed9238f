import type { Change, Notebook, Row } from '../notebook/index.ts';
import type { Engine } from './engine.ts';
import type { Pace } from './pace.ts';
import { runOn } from './run-on.ts';
import { KeptTexts, typedCells, typingChanges } from './typing.ts';
import type { Entry, RowParts } from './view.ts';

/** Entries read at one go. */
const AT_A_TIME = 50;

/** Rows put in, doubled, moved and taken out; each act is one undo step. */
export class RowDeeds implements RowParts {
  private readonly notebook: Notebook;
  private readonly engineNow: () => Engine;

  private readonly pace: Pace | undefined;

  constructor(notebook: Notebook, engineNow: () => Engine, pace?: Pace) {
    this.pace = pace;
    this.notebook = notebook;
    this.engineNow = engineNow;
  }

  put(
    label: string,
    sheet: string,
    before: string | undefined,
    rows: readonly ReadonlyMap<string, string>[],
    entries: readonly Entry[] = [],
    texts = new KeptTexts(),
  ): readonly string[] {
    this.notebook.finishBegun();
    const ids = this.notebook.freshIds(rows.length);
    const at = this.placeBefore(sheet, before);
    const typed = typingChanges(entries, this.engineNow(), this.notebook, texts);
    const added = rows.map((cells, place): Row => {
      return {
        id: ids[place] ?? '',
        cells: typedCells(sheet, cells, this.engineNow(), this.notebook, texts),
      };
    });
    this.notebook.do(label, [
      ...typed,
      ...(added.length === 0 ? [] : [{ edit: 'add rows', sheet, at, rows: added } as const]),
    ]);
    return ids;
  }

  putLong(
    label: string,
    sheet: string,
    rows: readonly ReadonlyMap<string, string>[],
    entries: readonly Entry[],
    done: () => void,
  ): void {
    const { notebook, pace } = this;
    const texts = new KeptTexts();
    const steps = this.readAhead(sheet, rows, entries, texts);
    const finish = notebook.begin(label, () => {
      this.put(label, sheet, undefined, rows, entries, texts);
      done();
    });
    const goOn = (): void => {
      pace?.begin();
      while (steps.next().done !== true) {
        if (pace?.isOver() !== true) continue;
        pace.later(goOn);
        return;
      }
      finish();
    };
    goOn();
  }

  finishLong(): void {
    this.notebook.finishBegun();
  }

  /** Works out the texts that a paste would keep, some at a time. */
  private *readAhead(
    sheet: string,
    rows: readonly ReadonlyMap<string, string>[],
    entries: readonly Entry[],
    texts: KeptTexts,
  ): Generator<undefined> {
    for (let at = 0; at < entries.length; at += AT_A_TIME) {
      for (const entry of entries.slice(at, at + AT_A_TIME)) {
        const model = this.engineNow().models.get(entry.sheet)?.bands[0]?.columns.get(entry.column);
        if (model?.entry) texts.of(entry.text, model, this.notebook);
      }
      yield;
    }
    for (const cells of rows) {
      typedCells(sheet, cells, this.engineNow(), this.notebook, texts);
      yield;
    }
  }

  double(label: string, sheet: string, rows: readonly string[]): readonly string[] {
    this.notebook.finishBegun();
    const ids = this.notebook.freshIds(rows.length);
    const key = this.keyOf(sheet);
    const changes = this.withFollowers(sheet).flatMap((id): readonly Change[] => {
      const copies = rows.flatMap((row, place): readonly Row[] => {
        const found = this.notebook.row(id, row);
        if (!found) return [];
        const cells = new Map(found.cells);
        // Two rows of one name would be one question more.
        if (id === sheet && key !== undefined) cells.delete(key);
        return [{ id: ids[place] ?? '', cells, ...(found.assumed && { assumed: found.assumed }) }];
      });
      if (copies.length === 0) return [];
      const at = id === sheet ? this.behind(sheet, rows) : this.notebook.rows(id).length;
      return [{ edit: 'add rows', sheet: id, at, rows: copies }];
    });
    this.notebook.do(label, changes);
    return ids;
  }

  move(label: string, sheet: string, rows: readonly string[], before: string | undefined): void {
    this.notebook.finishBegun();
    const moving = new Set(rows);
    const all = this.notebook.rows(sheet);
    const rest = all.filter(({ id }) => !moving.has(id));
    const place = before === undefined ? -1 : rest.findIndex(({ id }) => id === before);
    const at = place < 0 ? rest.length : place;
    const moved = all.filter(({ id }) => moving.has(id));
    const after = [...rest.slice(0, at), ...moved, ...rest.slice(at)];
    if (moved.length === 0 || after.every((row, each) => row === all[each])) return;
    this.notebook.do(label, [
      ...this.takenOut(sheet, rows),
      { edit: 'add rows', sheet, at, rows: moved.map(copyOf) },
    ]);
  }

  remove(label: string, sheet: string, rows: readonly string[]): void {
    this.notebook.finishBegun();
    // What was typed for them on sheets that follow goes with them.
    const changes = this.withFollowers(sheet).flatMap((id) => this.takenOut(id, rows));
    this.notebook.do(label, changes);
  }

  runOn(sheet: string, column: string, rows: readonly string[], count: number): readonly string[] {
    return runOn(sheet, column, rows, count, this.engineNow(), this.notebook);
  }

  /** Takes rows out from the last on, so that no place of another shifts; neighbors go as one change. */
  private takenOut(sheet: string, rows: readonly string[]): readonly Change[] {
    const places = rows
      .flatMap((row) => this.notebook.place(sheet, row) ?? [])
      .sort((a, b) => b - a);
    const changes: { edit: 'remove rows'; sheet: string; at: number; rows: Row[] }[] = [];
    for (const at of places) {
      const row = this.notebook.rows(sheet)[at];
      const last = changes.at(-1);
      if (!row) continue;
      if (last?.at === at + 1) {
        last.at = at;
        last.rows.push(copyOf(row));
      } else changes.push({ edit: 'remove rows', sheet, at, rows: [copyOf(row)] });
    }
    return changes.map((change) => ({ ...change, rows: change.rows.reverse() }));
  }

  private placeBefore(sheet: string, row: string | undefined): number {
    const place = row === undefined ? undefined : this.notebook.place(sheet, row);
    return place ?? this.notebook.rows(sheet).length;
  }

  private behind(sheet: string, rows: readonly string[]): number {
    return Math.max(-1, ...rows.map((row) => this.notebook.place(sheet, row) ?? -1)) + 1;
  }

  private keyOf(sheet: string): string | undefined {
    const rows = this.engineNow().models.get(sheet)?.definition.rows;
    return rows && 'key' in rows ? rows.key : undefined;
  }

  private withFollowers(sheet: string): readonly string[] {
    return [...this.engineNow().models.keys()].filter(
      (id) => id === sheet || this.follows(id, sheet),
    );
  }

  private follows(id: string, sheet: string): boolean {
    const rows = this.engineNow().models.get(id)?.definition.rows;
    if (rows?.from !== 'following') return false;
    return rows.sheet === sheet || this.follows(rows.sheet, sheet);
  }
}

function copyOf(row: Row): Row {
  return { ...row, cells: new Map(row.cells) };
}
