import type { Column } from '../graph/index.ts';
import type { Change, Notebook } from '../notebook/index.ts';
import { asksIn } from './asks.ts';
import type { Engine } from './engine.ts';
import type { Pace } from './pace.ts';
import { rowIdAt } from './row-ids.ts';
import { StopBoard } from './stop-board.ts';
import { stopsIn } from './stops.ts';
import { TouchedRows } from './touched-rows.ts';
import type { Ask, BookChange, Stop, StopChoice } from './view.ts';

// Enough for the eye; a changed job input changes every row.
const MOST_CHANGED = 300;

/**
 * What follows from a change: the sheets worked out again, then the stops and asks. On a page that
 * is done a slice at a time, so that a sheet of 100,000 rows lets the next key through; until it is
 * done the stops and asks are those from before.
 */
export class BookWork {
  private readonly stopsNow = new StopBoard();
  private asksNow: readonly Ask[] = [];
  private rest: Generator<undefined> | undefined;
  private isWaiting = false;
  /** Who waits until nothing is left. */
  private readonly waiters = new Set<{
    readonly heard: ((share: number) => void) | undefined;
    readonly resolve: () => void;
  }>();
  /** Whether stops or asks from before were given out since the change. */
  private gaveOld = false;

  private readonly engineNow: () => Engine;
  private readonly notebook: Notebook;
  private readonly pace: Pace | undefined;
  private readonly touched = new TouchedRows();
  private readonly hear: (change: BookChange) => void;

  constructor(
    engineNow: () => Engine,
    notebook: Notebook,
    pace: Pace | undefined,
    hear: (change: BookChange) => void,
  ) {
    this.engineNow = engineNow;
    this.notebook = notebook;
    this.pace = pace;
    this.hear = hear;
    this.rest = this.steps(pace === undefined);
  }

  stops(choice?: StopChoice): readonly Stop[] {
    this.catchUp();
    return this.stopsNow.list(choice);
  }

  asks(): readonly Ask[] {
    this.catchUp();
    return this.asksNow;
  }

  /** Works out what an edit made stale, all of it or as much as fits before the page draws, and tells of it. */
  follow(changes: readonly Change[], inSlices: boolean): void {
    this.touched.edited(changes);
    const cells = new Set<string>();
    this.pace?.begin();
    const isDone = this.settle(cells, inSlices ? this.pace : undefined);
    this.restart(isDone);
    this.tell(cells);
  }

  /** Begins again, with an engine that is settled or has yet to be. */
  restart(isSettled: boolean): void {
    this.rest = this.steps(isSettled);
    this.gaveOld = false;
    if (this.pace) this.goOnLater();
  }

  /** Resolves once nothing is left; without a pace that is at once. */
  worked(heard?: (share: number) => void): Promise<void> {
    if (!this.pace) this.finish();
    if (!this.rest) return Promise.resolve();
    this.goOnLater();
    return new Promise((resolve) => {
      this.waiters.add({ heard, resolve });
    });
  }

  /** Works out all that is left, at one go. */
  finish(): void {
    while (this.rest) this.step();
  }

  private *steps(isSettled: boolean): Generator<undefined> {
    if (!isSettled) {
      const cells = new Set<string>();
      while (!this.settle(cells, this.pace)) yield;
      this.tell(cells);
    }
    const stops = yield* stopsIn(this.engineNow(), this.notebook);
    this.asksNow = yield* asksIn(this.engineNow(), this.notebook);
    this.stopsNow.put(stops);
  }

  private catchUp(): void {
    if (!this.rest) return;
    if (!this.pace) this.finish();
    // Whoever asks first after a change waits for a slice; for most jobs that is all.
    else if (!this.gaveOld) {
      this.gaveOld = !this.slice(this.pace);
      if (this.gaveOld) this.goOnLater();
    }
  }

  /** Works for as long as the page can wait; whether nothing is left. */
  private slice(pace: Pace): boolean {
    pace.begin();
    while (this.rest && !pace.isOver()) this.step();
    return !this.rest;
  }

  private step(): void {
    if (this.rest?.next().done !== true) return;
    this.rest = undefined;
    for (const { resolve } of this.waiters) resolve();
    this.waiters.clear();
  }

  private goOnLater(): void {
    const { pace } = this;
    if (!pace || this.isWaiting) return;
    this.isWaiting = true;
    pace.later(() => {
      this.isWaiting = false;
      if (!this.rest) return;
      const isDone = this.slice(pace);
      for (const { heard } of this.waiters) heard?.(this.engineNow().share);
      if (!isDone) this.goOnLater();
      else if (this.gaveOld) this.tell(new Set());
    });
  }

  private tell(cells: ReadonlySet<string>): void {
    this.hear({ cells, rows: this.touched.take() });
  }

  private settle(cells: Set<string>, pace: Pace | undefined): boolean {
    const { changed, isDone } = this.engineNow().settle(pace?.isOver);
    for (const [column, rows] of changed) this.nameCells(column, rows, cells);
    return isDone;
  }

  private nameCells(column: Column, rows: 'all' | ReadonlySet<number>, cells: Set<string>): void {
    const { owners, models } = this.engineNow();
    const owner = owners.get(column);
    if (!owner?.model) return;
    const { sheet, definition, result } = owner.model;
    const { touched } = this;
    if ('key' in owner.sheet.definition.rows && owner.sheet.definition.rows.key === definition.id)
      touched.addEverything();
    if (rows === 'all') touched.addAll(sheet);
    // What is shown as well, such as a suggestion, lights nothing up.
    const lights = column === result;
    if (!lights && touched.isAll(sheet)) return;
    const places =
      rows === 'all'
        ? Array.from({ length: Math.min(column.rows.count, MOST_CHANGED) }, (_, at) => at)
        : rows;
    for (const row of places) {
      if (cells.size >= MOST_CHANGED && touched.isAll(sheet)) return;
      const id = rowIdAt(owner.sheet, owner.band, row, this.notebook, models) ?? '';
      touched.add(sheet, id);
      if (lights && cells.size < MOST_CHANGED) cells.add(`${sheet}/${id}/${definition.id}`);
    }
  }
}
