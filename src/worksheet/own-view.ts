import type { Problem } from '../units/index.ts';

/** Columns, sheets and formulas of the user's own, and what helps to write them. Each act is one undo step. */
export interface OwnParts {
  /** The kinds a column may have, by the names to choose from. */
  readonly kinds: readonly string[];
  /** A name for formulas made of what a person called something. */
  nameFor(label: string): string;
  /** What a formula would be on a sheet before it stands there; `column` is blank for one that is not there yet. */
  check(sheet: string, column: string, formula: string, row: string): FormulaCheck;
  /** What could stand at the caret, and what is known of the call it stands in. */
  complete(sheet: string, column: string, formula: string, caret: number): Completion;
  addColumn(sheet: string, column: NewColumn): Problem | undefined;
  /** Takes a column of the user's own away, with all that was typed in it. */
  removeColumn(sheet: string, column: string): void;
  addSheet(sheet: NewSheet): Problem | undefined;
  /** Takes a sheet of the user's own away, with all its rows. */
  removeSheet(sheet: string): void;
  /** A sheet as the text of a file to share; for a built-in sheet, the user's columns and formulas on it. */
  share(sheet: string): string;
  /** Whether a text is that of a shared sheet, sound or not. */
  isShared(text: string): boolean;
  /** Brings in a shared file, checked whole before anything of it is taken. */
  receive(text: string): Received | Problem;
  /** Parts of this notebook that could not be put to work, and why. */
  problems(): readonly Problem[];
}

/** What came of a shared file. */
export interface Received {
  /** What was taken, in words: `sheet “Site visit”`, `column “Cap”`. */
  readonly taken: readonly string[];
  readonly sheet: string;
}

/** A column as a person describes it. */
export interface NewColumn {
  readonly label: string;
  /** Its name in formulas; made of the label where blank. */
  readonly id?: string;
  readonly kind: string;
  readonly choices?: readonly string[];
  readonly unit?: string;
  readonly entry: boolean;
  readonly formula?: string;
  readonly help?: string;
  readonly total?: boolean;
  /** The column it stands behind. */
  readonly after?: string;
}

/** A sheet as a person describes it; its first column names its rows. */
export interface NewSheet {
  readonly title: string;
  readonly question: string;
  /** The sheet whose rows it follows; blank where its rows are typed. */
  readonly follows: string;
  /** Which of those rows; blank for all. */
  readonly where: string;
  /** What a row is called aloud, such as `visit`. */
  readonly called: string;
}

/** What is known of a formula while it is being written. */
export interface FormulaCheck {
  readonly problem: (Problem & { readonly span: { start: number; end: number } }) | undefined;
  /** The kind it gives, in words; blank where it is not a formula yet. */
  readonly kind: string;
  /** The name among `kinds` that fits it; blank where none does. */
  readonly kindId: string;
  /** The unit it would be shown in; blank where it has none. */
  readonly unit: string;
  /** What it comes to in the row, or what it waits for; blank where there is no row. */
  readonly value: string;
  readonly isKnown: boolean;
}

/** What could be written next. */
export interface Completion {
  /** The characters a choice would replace. */
  readonly start: number;
  readonly end: number;
  readonly words: readonly FormulaWord[];
  /** The function whose arguments are being written. */
  readonly call: FormulaCall | undefined;
}

export interface FormulaWord {
  /** What is put in: `lean_gap`, `holes.depth`, `lean_angle(`. */
  readonly insert: string;
  readonly what: 'column' | 'input' | 'sheet' | 'unit' | 'function';
  /** What it is called or does, in words. */
  readonly meaning: string;
  /** Its kind in words, with those of a function's arguments. */
  readonly kind: string;
  readonly source: string;
}

export interface FormulaCall {
  readonly name: string;
  readonly parameters: readonly { readonly name: string; readonly kind: string }[];
  /** Which of them the caret is in. */
  readonly argument: number;
  readonly result: string;
  readonly meaning: string;
  readonly source: string;
}
