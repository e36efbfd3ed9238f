import type { CellPlaces } from '../csv/index.ts';

/** What a row holds: its entries, the cells that fit no column, and why an entry says more than its cell did. */
export type RowPart = 'cells' | 'kept' | 'assumed';

/**
 * One column of the rows of a file, as it goes from one thread to another. A row's text is a stretch of the file's
 * text, with the column's unit behind it where `to` is negative; one that does not stand in the file so is the text at
 * `-from - 1`. Where `to` is nought the row has none.
 */
export interface StoredColumn {
  readonly part: RowPart;
  readonly name: string;
  readonly behind: string;
  readonly from: Int32Array<ArrayBuffer>;
  readonly to: Int32Array<ArrayBuffer>;
  readonly texts: readonly string[];
}

/** Rows of a file column by column, in little more room than the file. */
export interface StoredRows {
  readonly text: string;
  /** The line each row stands on. */
  readonly lines: Int32Array<ArrayBuffer>;
  readonly columns: readonly StoredColumn[];
}

/** The text of one row in a column; undefined where it has none. */
export function textAt(file: string, column: StoredColumn, row: number): string | undefined {
  const from = column.from[row] ?? 0;
  const to = column.to[row] ?? 0;
  if (from < 0) return column.texts[-from - 1];
  if (to === 0) return undefined;
  return to > 0 ? file.slice(from, to) : file.slice(from, -to) + column.behind;
}

/** What a column needs to know of the cells of a record. */
type CellStretch = Pick<CellPlaces, 'isOfFile' | 'from' | 'to' | 'cell'>;

/** A column while its rows come in. */
export class ColumnStore implements StoredColumn {
  readonly part: RowPart;
  readonly name: string;
  behind = '';
  readonly from: Int32Array<ArrayBuffer>;
  readonly to: Int32Array<ArrayBuffer>;
  readonly texts: string[] = [];
  private readonly known = new Map<string, number>();

  constructor(part: RowPart, name: string, rows: number) {
    this.part = part;
    this.name = name;
    this.from = new Int32Array(rows);
    this.to = new Int32Array(rows);
  }

  /** Takes a cell as it stands, with a unit behind it. */
  put(row: number, cells: CellStretch, index: number, behind: string): void {
    const unit = behind === '' || this.behind === '' || this.behind === behind;
    if (!cells.isOfFile || !unit) {
      this.putText(row, cells.cell(index) + behind);
      return;
    }
    this.from[row] = cells.from[index] ?? 0;
    const to = cells.to[index] ?? 0;
    if (behind === '') this.to[row] = to;
    else {
      this.behind = behind;
      this.to[row] = -to;
    }
  }

  /** Takes a text, whatever stands in the file. */
  putText(row: number, text: string): void {
    let place = this.known.get(text);
    if (place === undefined) {
      place = this.texts.push(text);
      if (this.known.size < MOST_KNOWN) this.known.set(text, place);
    }
    this.from[row] = -place;
    this.to[row] = 1;
  }
}

/** As many different texts of a column are remembered to be kept once. */
const MOST_KNOWN = 2000;

/** Takes in the rows of a file, one after another. */
export class RowStore {
  readonly text: string;
  private readonly parts: Readonly<Record<RowPart, Map<string, ColumnStore>>> = {
    cells: new Map(),
    kept: new Map(),
    assumed: new Map(),
  };
  private readonly lines: Int32Array<ArrayBuffer>;
  /** The row that is being taken in. */
  private at = -1;

  /** @param rows - As many rows as there will be. */
  constructor(text: string, rows: number) {
    this.text = text;
    this.lines = new Int32Array(rows);
  }

  /** The row that is being taken in, from 0. */
  get row(): number {
    return this.at;
  }

  /** Begins the next row. */
  next(line: number): void {
    this.at += 1;
    this.lines[this.at] = line;
  }

  /** A column, in the order in which they were first asked for. */
  column(part: RowPart, name: string): ColumnStore {
    const columns = this.parts[part];
    let column = columns.get(name);
    if (!column) {
      column = new ColumnStore(part, name, this.lines.length);
      columns.set(name, column);
    }
    return column;
  }

  /** What the row has in a column so far. */
  get(part: RowPart, name: string): string | undefined {
    const column = this.parts[part].get(name);
    return column && textAt(this.text, column, this.at);
  }

  /** Sets what the row has in a column. */
  set(part: RowPart, name: string, text: string): void {
    this.column(part, name).putText(this.at, text);
  }

  /** All rows as they go to another thread. */
  stored(): StoredRows {
    const columns = Object.values(this.parts)
      .flatMap((one) => [...one.values()])
      .filter(({ to }) => to.some((end) => end !== 0));
    return {
      text: this.text,
      lines: this.lines,
      columns: columns.map(({ part, name, behind, from, to, texts }) => ({
        part,
        name,
        behind,
        from,
        to,
        texts,
      })),
    };
  }
}
