import type { Choice, Kind, Problem, Value } from '../units/index.ts';
import type { CurveView } from './curve-view.ts';
import type { OwnParts } from './own-view.ts';
import type { WhatIfParts } from './what-if-view.ts';
import type { Working } from './working-view.ts';

/** A sheet as it is shown; the job is a sheet of one row whose columns are its inputs. */
export interface SheetView {
  readonly id: string;
  readonly title: string;
  /** The question the sheet answers. */
  readonly question: string;
  /** The editions of codes and standards its numbers come from; blank where it needs none. */
  readonly editions: string;
  /** The chapters in which the calculation of one row is followed; none where its columns go as they stand. */
  readonly follow: readonly (readonly [title: string, cells?: string])[];
  readonly columns: readonly ColumnView[];
  readonly rowCount: number;
  /** Another number whenever rows came, went or moved. */
  readonly rowsVersion?: number;
  /** Whether a person may add and remove rows here. */
  readonly growable: boolean;
  /** Whether it is a sheet of the user's own. */
  readonly own?: boolean;
  /** The stable id of a row, by its place on the sheet. */
  rowId(index: number): string;
  /** Where the row of an id stands, sooner than by looking at each; -1 where it does not. */
  placeOf?(row: string): number;
  /** What stands in the row's key column, such as its post number; blank where nothing does. */
  rowKey(index: number): string;
  /** What a row is called aloud: `post 3`, `80 lb`. */
  rowName(index: number): string;
  cell(index: number, column: string): CellView;
  /** The value of a cell alone, sooner: without the words around it. */
  value?(index: number, column: string): Value | undefined;
  /** What looking at each cell of a column would tell, sooner: whether any of the first rows is filled. */
  isFilled?(column: string, rows: number): boolean;
  /** The totals row: column id -> text with its unit; empty where nothing is totalled. */
  totals(): ReadonlyMap<string, string>;
}

/** One column, or one job input. */
export interface ColumnView {
  readonly id: string;
  readonly label: string;
  /** What messages call it: as the label, where that is enough. */
  readonly called: string;
  /** A second, smaller line of the head: `level held plumb`. */
  readonly hint: string;
  /** The unit numbers are shown in, said once in the head; blank where none applies. */
  readonly unit: string;
  readonly kind: Kind;
  /** Whether a person may type here. */
  readonly entered: boolean;
  /** The formula in force, where there is one; with `entered`, what is typed stands over it. */
  readonly formula: string | undefined;
  readonly help: string;
  readonly source: string;
  /** `code`, `standard`, `theory`, `arithmetic`, `common practice`, `yours`. */
  readonly standing: string;
  /** What may be chosen, where the kind is a choice or the column offers a list. */
  readonly choices: readonly string[];
  /** `reading`: shown by default; `more`: behind “more columns”. */
  readonly show: 'always' | 'when filled' | 'more';
  /** Whether the user made the column, or gave a built-in one a formula of their own. */
  readonly own?: 'column' | 'formula' | undefined;
  /** The built-in formula, where the user's own stands over it. */
  readonly builtIn?: string | undefined;
  /** A heading that groups job inputs: `The fence`, `The ground`, `The holes`. */
  readonly group: string;
}

/** One cell as it is shown. */
export interface CellView {
  readonly state: 'known' | 'blank' | 'waiting' | 'ask' | 'wrong';
  /** The value in the column's unit, without the unit; an ask shows what was typed. */
  readonly text: string;
  /** The SI value, where it is known. */
  readonly value: Value | undefined;
  /** What a person typed here, exactly; undefined where nothing is. */
  readonly typed: string | undefined;
  /** Where an entry stands over a formula: what the formula says, as text. */
  readonly suggested: string | undefined;
  /** What it waits for, what is wrong and what to do, or what was assumed; blank where there is nothing to say. */
  readonly note: string;
  /** Readings to choose from, where it is an ask. */
  readonly choices: readonly Choice[];
}

/** Something the notebook will not guess. */
export interface Ask {
  readonly id: string;
  readonly sheet: string;
  /** Absent where the ask is about a whole column of the file. */
  readonly row: string | undefined;
  readonly rowName: string;
  readonly column: string;
  readonly columnLabel: string;
  /** Line of the file the row came from. */
  readonly line: number | undefined;
  /** What stood there. */
  readonly text: string;
  readonly question: string;
  readonly choices: readonly Choice[];
}

/** A rule that stops the work, or a caution that belongs beside a number. */
export interface Stop {
  readonly sheet: string;
  readonly row: string | undefined;
  readonly rowName: string;
  /** The rule's id, such as `short_hole`. */
  readonly rule: string;
  readonly level: 'stop' | 'caution';
  readonly message: string;
  readonly source: string;
  /** The cell that settles it, where one does. */
  readonly settle?: { readonly sheet: string; readonly row: string; readonly column: string };
}

/** Which stops: of a level, of a sheet, or both. */
export interface StopChoice {
  readonly level?: Stop['level'];
  readonly sheet?: string;
}

/** A notebook with its sheets worked out: all that the screens, the pages and the command line read. */
export interface BookView {
  readonly name: string;
  /** In the order of the work: job, posts, holes, bags, materials. */
  readonly sheets: readonly SheetView[];
  sheet(id: string): SheetView | undefined;
  asks(): readonly Ask[];
  /** Stops first, then cautions; the same list for as long as none of it changes. */
  stops(choice?: StopChoice): readonly Stop[];
  /** How a cell came by what it shows, by its sheet, row id and column; undefined where there is no such cell. */
  working(sheet: string, row: string, column: string): Working | undefined;
  /** Readings that speak for what a cell shows, in words. */
  pointers?(sheet: string, row: string, column: string): readonly string[];
  /** What the ground holds against the depth of a hole, at its width and two others; undefined where the row has no hole. */
  capacityCurve(row: string): CurveView | undefined;
  /** Strength against hours since the pour of a row of the cure sheet, or of concrete poured first where there is no such row. */
  strengthCurve(row: string | undefined): CurveView;
  /** Variants of the job beside it, and why its price moved. */
  readonly whatIf?: WhatIfParts;
  /** How posts, rails and boards are cut from stock; what can't be planned yet is left out. */
  cuts?(): readonly CutList[];
  /** Calls back after every change, once all sheets are worked out again. */
  subscribe(listener: (change: BookChange) => void): () => void;

  /**
   * Types into a cell as a person would; blank text clears it. The job's row id is `job`. One undo step.
   * Where something else than `seen` stands there by now, another window wrote it meanwhile: both are kept as a clash.
   */
  type(sheet: string, row: string, column: string, text: string, seen?: string): void;
  /** Types many cells at once; one undo step named by `label`. */
  typeAll(label: string, entries: readonly Entry[]): void;
  /** Puts an answer where the ask stands: in its cell, or over the blanks of its column. */
  answer(ask: Ask, entry: string): void;
  /** Entries that two windows wrote in one place. */
  readonly clashes?: ClashParts;
  /** Rows put in, doubled, moved and taken out. */
  readonly rows: RowParts;
  /** Columns, sheets and formulas of the user's own. */
  readonly own: OwnParts;
  addRow(sheet: string): string;
  removeRow(sheet: string, row: string): void;
  rename(name: string): void;
  /** Gives a column a formula of the user's own; a Problem where it can't be one; undefined puts the built-in one back, or leaves a column of the user's own to be typed in. */
  setFormula(sheet: string, column: string, formula: string | undefined): Problem | undefined;
  undo(): void;
  redo(): void;
  /** What undo would take back, in words; undefined where there is nothing. */
  readonly undoLabel: string | undefined;
  readonly redoLabel: string | undefined;
}

/** What may be done with rows of a sheet that grows; each act is one undo step. */
export interface RowParts {
  /** Puts rows in before another, or last, with what is typed in them; types into rows that are there in the same step. */
  put(
    label: string,
    sheet: string,
    before: string | undefined,
    rows: readonly ReadonlyMap<string, string>[],
    entries?: readonly Entry[],
  ): readonly string[];
  /**
   * The same for many entries, rows put last: they are read a slice at a time, then all is done at once. Whatever else is
   * done before that comes after it, as it was begun.
   */
  putLong(
    label: string,
    sheet: string,
    rows: readonly ReadonlyMap<string, string>[],
    entries: readonly Entry[],
    done: () => void,
  ): void;
  /** Does at once what was begun so, before somebody types over what they have not seen yet. */
  finishLong(): void;
  /** Copies of rows behind the last of them, without their names; their ids. */
  double(label: string, sheet: string, rows: readonly string[]): readonly string[];
  /** Moves rows before another, or to the end. */
  move(label: string, sheet: string, rows: readonly string[], before: string | undefined): void;
  remove(label: string, sheet: string, rows: readonly string[]): void;
  /** How the entries of some rows go on: numbers and stations by their step, names by their number. */
  runOn(sheet: string, column: string, rows: readonly string[], count: number): readonly string[];
}

/** What two windows wrote in one place, neither knowing of the other, until somebody chooses. */
export interface ClashParts {
  all(): readonly ClashView[];
}

/** One of those places. */
export interface ClashView {
  /** `Lean gap, post 3`. */
  readonly where: string;
  /** The way there; none leads to the job's name. */
  readonly place:
    { readonly sheet: string; readonly row?: string; readonly column: string } | undefined;
  /** What stands there now; blank where it was cleared. */
  readonly standing: string;
  readonly other: string;
  /** The row was removed in one window while the other wrote in it. */
  readonly rowIsGone: boolean;
  keep(): void;
  takeOther(): void;
}

export interface Entry {
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
  readonly text: string;
}

/** The cutting plan of one item, in SI numbers. */
export interface CutList {
  readonly item: string;
  readonly size: string;
  /** Bars alike are one line. */
  readonly bars: readonly {
    readonly count: number;
    readonly stock: number;
    readonly pieces: readonly number[];
    readonly offcut: number;
  }[];
  readonly byPrice: boolean;
  /** What is bought, in money or in length, and what no plan can go under. */
  readonly total: number;
  readonly bound: number;
  readonly isLeast: boolean;
}

/** What changed, so that the screen may show cause and effect. */
export interface BookChange {
  /** Cells whose value changed, as `sheet/row/column`; a rough list is enough, at most a few hundred. */
  readonly cells: ReadonlySet<string>;
  /** The rows that may show something else than before; absent where anything may. */
  readonly rows?: ChangedRows | undefined;
}

/** Ids of rows, by their sheet; `all` where they are too many to name. */
export type ChangedRows = ReadonlyMap<string, 'all' | ReadonlySet<string>>;
