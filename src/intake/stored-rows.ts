import type { IntakeRow } from './intake.ts';
import { textAt, type RowPart, type StoredColumn, type StoredRows } from './row-store.ts';

/** The rows of a file, each of which finds its texts when they are asked for. */
export function rowsOf({ text, lines, columns }: StoredRows): IntakeRow[] {
  const [cells, kept, assumed] = (['cells', 'kept', 'assumed'] as const).map(
    (part) => new PartColumns(text, part, columns),
  ) as [PartColumns, PartColumns, PartColumns];
  const parts = { cells, kept, assumed };
  return Array.from(lines, (line, at) => new StoredRow(line, at, parts));
}

/** A row with texts of its own, as it may go to another thread. */
export function ownRow({ line, cells, kept, assumed }: IntakeRow): IntakeRow {
  return { line, cells: new Map(cells), kept: new Map(kept), assumed: new Map(assumed) };
}

/** The columns of one part of the rows. */
class PartColumns {
  readonly text: string;
  readonly all: readonly StoredColumn[];
  readonly byName: ReadonlyMap<string, StoredColumn>;

  constructor(text: string, part: RowPart, columns: readonly StoredColumn[]) {
    this.text = text;
    this.all = columns.filter((column) => column.part === part);
    this.byName = new Map(this.all.map((column) => [column.name, column]));
  }
}

class StoredRow implements IntakeRow {
  readonly line: number;
  private readonly at: number;
  private readonly parts: Readonly<Record<RowPart, PartColumns>>;

  constructor(line: number, at: number, parts: Readonly<Record<RowPart, PartColumns>>) {
    this.line = line;
    this.at = at;
    this.parts = parts;
  }

  get cells(): ReadonlyMap<string, string> {
    return new RowTexts(this.parts.cells, this.at);
  }

  get kept(): ReadonlyMap<string, string> {
    return new RowTexts(this.parts.kept, this.at);
  }

  get assumed(): ReadonlyMap<string, string> {
    return new RowTexts(this.parts.assumed, this.at);
  }
}

/** What one row has in the columns of a part, by their names. */
class RowTexts implements ReadonlyMap<string, string> {
  private readonly columns: PartColumns;
  private readonly at: number;

  constructor(columns: PartColumns, at: number) {
    this.columns = columns;
    this.at = at;
  }

  get size(): number {
    let size = 0;
    for (const { to } of this.columns.all) if (to[this.at] !== 0) size++;
    return size;
  }

  get(name: string): string | undefined {
    const column = this.columns.byName.get(name);
    return column && textAt(this.columns.text, column, this.at);
  }

  has(name: string): boolean {
    const to = this.columns.byName.get(name)?.to[this.at] ?? 0;
    return to !== 0;
  }

  *entries(): MapIterator<[string, string]> {
    for (const column of this.columns.all) {
      const text = textAt(this.columns.text, column, this.at);
      if (text !== undefined) yield [column.name, text];
    }
    return undefined;
  }

  *keys(): MapIterator<string> {
    for (const [name] of this) yield name;
    return undefined;
  }

  *values(): MapIterator<string> {
    for (const [, text] of this) yield text;
    return undefined;
  }

  forEach(tell: (text: string, name: string, map: ReadonlyMap<string, string>) => void): void {
    for (const column of this.columns.all) {
      const text = textAt(this.columns.text, column, this.at);
      if (text !== undefined) tell(text, column.name, this);
    }
  }

  [Symbol.iterator](): MapIterator<[string, string]> {
    return this.entries();
  }
}
