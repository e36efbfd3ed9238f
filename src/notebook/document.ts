/** Everything a person typed or brought in, as they wrote it. Nothing computed is kept here. */
export interface NotebookDocument {
  /** Raised by one whenever the shape changes; see `upgrade.ts`. */
  readonly format: 2;
  name: string;
  /** Job inputs as typed, by name; an absent one has its starting value. */
  readonly inputs: Map<string, string>;
  /** Rows by sheet id. Sheets that follow another hold only rows somebody typed into, under the followed row's id. */
  readonly sheets: Map<string, Row[]>;
  /** Formulas that stand for the built-in ones, by `sheet.column`. */
  readonly formulas: Map<string, string>;
  /** What a whole column's blanks are taken as, once a person has agreed: `posts.probe_depth` -> `0 in`. */
  readonly assumed: Map<string, string>;
  /** Columns (`sheet.column`) and sheets of the user's own, in the same JSON as the built-in ones, in their order. */
  readonly own: Map<string, OwnPart>;
  /** Every file brought in, byte for byte, with its report. */
  readonly files: ImportedFile[];
}

/** A column or a sheet as JSON; what may stand in it is checked where it is put to work. */
export type OwnPart = Readonly<Record<string, unknown>>;

/** One row of entries. */
export interface Row {
  /** Stable and unique in its sheet; never shown. */
  readonly id: string;
  /** Entries as typed, by column id; a blank cell is absent. */
  readonly cells: Map<string, string>;
  /** The file and line it came from. */
  readonly from?: { readonly file: string; readonly line: number };
  /** Cells of the file that fit no column, by header. */
  readonly kept?: ReadonlyMap<string, string>;
  /** Why an entry carries a unit or value the file did not write, by column id. */
  readonly assumed?: ReadonlyMap<string, string>;
}

/** A file as it came, and what became of its lines. */
export interface ImportedFile {
  readonly name: string;
  /** The bytes, base64. */
  readonly bytes: string;
  readonly linesRead: number;
  readonly passedOver: readonly PassedLine[];
}

/** A line that holds no reading, and why. */
export interface PassedLine {
  readonly line: number;
  readonly text: string;
  readonly why: string;
}
