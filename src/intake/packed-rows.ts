import type { IntakeRow } from './intake.ts';

/**
 * Rows as they go from one thread to another: a list of texts a column rather than a map a row, and every text that
 * comes again sent once.
 */
export interface PackedRows {
  readonly lines: readonly number[];
  readonly columns: readonly PackedColumn[];
}

interface PackedColumn {
  readonly part: 'cells' | 'kept' | 'assumed';
  readonly name: string;
  /** Texts, each once. */
  readonly texts: readonly string[];
  /** Place of each row's text among them; -1 where the row has none. */
  readonly places: Int32Array;
}

/** Packs rows. */
export function packed(rows: readonly IntakeRow[]): PackedRows {
  const columns = new Map<string, Packing>();
  for (const [at, row] of rows.entries()) {
    for (const part of PARTS) {
      for (const [name, text] of row[part]) {
        const key = `${part} ${name}`;
        let column = columns.get(key);
        if (!column) {
          const places = new Int32Array(rows.length).fill(-1);
          column = { part, name, texts: [], places, known: new Map() };
          columns.set(key, column);
        }
        column.places[at] = placeOf(text, column);
      }
    }
  }
  return {
    lines: rows.map(({ line }) => line),
    columns: [...columns.values()].map(({ part, name, texts, places }) => ({
      part,
      name,
      texts,
      places,
    })),
  };
}

/** Unpacks them again. */
export function unpacked({ lines, columns }: PackedRows): IntakeRow[] {
  return lines.map((line, at): IntakeRow => {
    const maps = { cells: new Map<string, string>(), kept: NONE, assumed: NONE };
    for (const { part, name, texts, places } of columns) {
      const text = texts[places[at] ?? -1];
      if (text === undefined) continue;
      if (maps[part] === NONE) maps[part] = new Map();
      maps[part].set(name, text);
    }
    return { line, ...maps };
  });
}

interface Packing extends PackedColumn {
  readonly texts: string[];
  readonly known: Map<string, number>;
}

const PARTS = ['cells', 'kept', 'assumed'] as const;
const NONE = new Map<string, string>();

function placeOf(text: string, { texts, known }: Packing): number {
  const before = known.get(text);
  if (before !== undefined) return before;
  known.set(text, texts.length);
  return texts.push(text) - 1;
}
