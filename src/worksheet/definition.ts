import type { Choice } from '../units/index.ts';

/** One worksheet as it stands in JSON: which numbers meet, and where the rules come from. */
export interface SheetDefinition {
  readonly format: 1;
  readonly id: string;
  readonly title: string;
  readonly question: string;
  /** Whether its rows are the user’s own, and go from job to job. */
  readonly carried?: boolean;
  /** The editions of codes and standards its numbers come from, in a sentence. */
  readonly editions?: string;
  /** How somebody else follows the calculation of one row: chapters by title with their `sheet.column`s in order, or a sheet whose chapters stand there. */
  readonly follow?: readonly (readonly [title: string, cells?: string])[];
  readonly rows: RowsDefinition;
  readonly columns: readonly ColumnDefinition[];
  /** For sheets whose rows are lines of their own, such as the material list. */
  readonly lines?: readonly LineDefinition[];
  /** Rows that a new notebook starts with. */
  readonly starting?: readonly Readonly<Record<string, string>>[];
  readonly asks?: readonly AskDefinition[];
  /** What speaks for a cell of the sheet, looked at where somebody asks. */
  readonly reasons?: readonly ReasonDefinition[];
  /** Looked at row by row. */
  readonly stops?: readonly StopDefinition[];
  /** Looked at once for the sheet. */
  readonly sheetStops?: readonly StopDefinition[];
}

export type RowsDefinition =
  | { readonly from: 'single' }
  | { readonly from: 'entered'; readonly key: string; readonly called: string }
  | {
      readonly from: 'following';
      readonly sheet: string;
      readonly where?: string;
      readonly key: string;
      readonly called: string;
    }
  | { readonly from: 'lines'; readonly key: string; readonly called: string };

export interface ColumnDefinition {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  /** What messages call it, where the label alone would not do. */
  readonly called?: string;
  readonly group?: string;
  /** A name of `kinds.ts`, such as `length`. */
  readonly kind: string;
  readonly choices?: readonly string[];
  readonly unit?: string;
  /** The unit where the job is metric. */
  readonly metric?: string;
  readonly percent?: boolean;
  /** Whether a person types here; with a formula, what is typed stands over it. */
  readonly entry?: boolean;
  readonly formula?: string;
  /** What a new job has, typed as a person would. */
  readonly start?: string;
  readonly startMetric?: string;
  /** Whether what is typed is the user’s own, and goes from job to job. */
  readonly carried?: boolean;
  readonly help?: string;
  readonly source?: string;
  readonly standing?: string;
  readonly show?: 'always' | 'when filled' | 'when worked' | 'more';
  readonly wide?: boolean;
  readonly total?: 'sum';
  /** The words are a direction: `S` and `South` are one. */
  readonly direction?: boolean;
  /** Entries to offer. */
  readonly suggest?: readonly string[];
  /** A column, written sheet.column, whose values are offered. */
  readonly suggestFrom?: string;
  /** The one question where a file lacks the column altogether. */
  readonly askWhenMissing?: {
    readonly question: string;
    readonly choices: readonly Choice[];
    /** Columns that must wait for it before it is asked; the remedy and the lean unless told. */
    readonly waiting?: readonly string[];
    /** Rows to which the answer does not apply, because another reading of theirs says otherwise. */
    readonly exceptWhere?: string;
  };
}

/** Lines of a list: one, or one for each combination of columns of another sheet. */
export interface LineDefinition {
  readonly id: string;
  /** The sheet whose combinations make the lines. */
  readonly each?: string;
  /** Column here -> column there. */
  readonly by?: Readonly<Record<string, string>>;
  /** Where false, there is no such line. */
  readonly when?: string;
  readonly formulas: Readonly<Record<string, string>>;
  readonly source: string;
  readonly standing: string;
}

/** A question that readings raise together, though each can be read. */
export interface AskDefinition {
  readonly column: string;
  readonly when: string;
  readonly question: string;
  readonly choices: readonly Choice[];
}

/** A reading that points to what a cell shows, with `{column}` in the message standing for the cell. */
export interface ReasonDefinition {
  readonly column: string;
  readonly when: string;
  readonly message: string;
  readonly source: string;
}

/** A rule that stops the work or cautions, with `{column}` in the message standing for the cell. */
export interface StopDefinition {
  readonly rule: string;
  /** The column whose cell settles it: of the same row, or `job.column` for an input. */
  readonly settle?: string;
  readonly level: 'stop' | 'caution';
  readonly when: string;
  readonly message: string;
  readonly source: string;
}
