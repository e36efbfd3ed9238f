import {
  LENGTH,
  TEXT,
  choiceOf,
  isProblem,
  quantity,
  readEntry,
  type Value,
} from '../../src/units/index.ts';
import {
  readSite,
  type Intake,
  type IntakeColumn,
  type IntakeRow,
} from '../../src/intake/index.ts';

const LENGTHS =
  'station height lean_gap level_length lean_gap_along probe_depth footing_width footing_depth break_at depth_reached top_above_line grade_shift drop standing_water post_top top_of_concrete_found depth_wanted gravel hole_width tree_diameter tree_distance';
const TEXTS = 'post post_type post_size lean_toward soundness collar stopped_by note';
const ROCK_TEST = choiceOf(['firm', 'loose', 'moves at grade', 'moves in collar', 'snapped']);

/** The columns of the posts sheet, by their ids. */
export const COLUMNS: readonly IntakeColumn[] = [
  ...TEXTS.split(' ').map((id) => ({ id, label: words(id), kind: TEXT, unit: '' })),
  ...LENGTHS.split(' ').map((id) => ({ id, label: words(id), kind: quantity(LENGTH), unit: 'in' })),
  { id: 'rock_test', label: 'rock test', kind: ROCK_TEST, unit: '' },
];

/** What the importer makes of a text or of bytes; throws where it is refused. */
export function bringIn(
  file: string | Uint8Array,
  settled: Record<string, string | null> = {},
): Intake {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const read = readSite(bytes, 'site.csv', {
    columns: COLUMNS,
    settled: new Map(Object.entries(settled)),
  });
  if (isProblem(read)) throw new Error(`${read.where}: ${read.found} ${read.fix}`);
  return read;
}

/** The one row of a file of one row. */
export function onlyRow(text: string): IntakeRow {
  const { rows } = bringIn(text);
  if (rows.length !== 1) throw new Error(`${String(rows.length)} rows`);
  return rows[0]!;
}

/** Where each header went. */
export function mapped(text: string): Record<string, string | null> {
  return Object.fromEntries(bringIn(text).mapping.map(({ header, column }) => [header, column]));
}

/** The cells of one column, one for each row. */
export function cells({ rows }: Intake, column: string): (string | undefined)[] {
  return rows.map((row) => row.cells.get(column));
}

/** A length entry in millimeters; `doubt` or `problem` where it is no reading. */
export function millimetres(entry: string | undefined): number | 'doubt' | 'problem' {
  const read = readEntry(entry ?? '', quantity(LENGTH));
  if (isProblem(read)) return 'problem';
  if ('doubt' in read) return 'doubt';
  const value: Value = read.value;
  return Math.round(Number(value) * 1e7) / 1e4;
}

function words(id: string): string {
  return id.replaceAll('_', ' ');
}
