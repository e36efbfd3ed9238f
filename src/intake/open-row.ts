import { readDirection } from '../units/index.ts';
import { Entries, type ColumnOrder } from './entries.ts';
import type { IntakeRow } from './intake.ts';
import { readLength, type LengthEntry } from './length-entry.ts';
import { saysSnapped } from './rock-test.ts';

/** A row while its cells come in; some of them say something about another column. */
export interface OpenRow extends IntakeRow {
  readonly cells: Entries;
  kept: ReadonlyMap<string, string>;
  assumed: ReadonlyMap<string, string>;
  /** The probe on each face. */
  faces: readonly Face[];
  /** The level length that stands in the lean cell, in its header, or above the table. */
  over: LevelLength | undefined;
  /** The direction that stands in the lean cell. */
  toward: string | undefined;
}

/** The probe on one face of a post. */
export interface Face {
  readonly header: string;
  readonly cell: string;
  readonly entry: LengthEntry;
}

/** A level length that stands somewhere else than in its own column. */
export interface LevelLength {
  readonly text: string;
  readonly why: string;
  /** A slope holds over any length: it replaces the level's own. */
  readonly slope: boolean;
}

/** An empty row for a line of the file. */
export function openRow(line: number, order: ColumnOrder): OpenRow {
  const cells = new Entries(order);
  return {
    line,
    cells,
    kept: NONE,
    assumed: NONE,
    faces: NO_FACES,
    over: undefined,
    toward: undefined,
  };
}

/** Keeps a cell that fits no column. */
export function keep(row: OpenRow, header: string, cell: string): void {
  row.kept = added(row.kept, header, cell);
}

/** Says why an entry is more than its cell. */
export function assume(row: OpenRow, column: string, why: string): void {
  row.assumed = added(row.assumed, column, why);
}

// Most rows keep and assume nothing; a hundred thousand empty maps would only be in the way.
const NONE: ReadonlyMap<string, string> = new Map();
const NO_FACES: readonly Face[] = [];

function added(
  map: ReadonlyMap<string, string>,
  key: string,
  text: string,
): ReadonlyMap<string, string> {
  if (map === NONE) return new Map([[key, text]]);
  (map as Map<string, string>).set(key, text);
  return map;
}

/** The row with everything put where it belongs. */
export function closeRow(row: OpenRow, stated: LevelLength | undefined): IntakeRow {
  if (row.faces.length > 0) takeDeepest(row);
  if (row.cells.has('lean_gap') || row.cells.has('lean_gap_along'))
    takeLevel(row, row.over ?? stated);
  if (row.toward !== undefined) takeDirection(row, row.toward);
  takeSnapped(row);
  const { line, cells, kept, assumed } = row;
  return { line, cells, kept, assumed };
}

/** The deepest of the faces; a face that can't be read stands instead, so that it is asked about. */
function takeDeepest(row: OpenRow): void {
  for (const { header, cell } of row.faces) keep(row, header, cell);
  let deepest: { readonly text: string; readonly depth: number } | undefined;
  for (const { header, entry } of row.faces) {
    const depth = readLength(entry.text)?.value;
    if (typeof depth !== 'number') {
      row.cells.set('probe_depth', entry.text);
      assume(row, 'probe_depth', `from “${header}”; the deepest face can’t be told without it`);
      return;
    }
    if (deepest === undefined || depth > deepest.depth) deepest = { text: entry.text, depth };
  }
  if (deepest === undefined) return;
  const faces = row.faces.map(({ header }) => header).join(', ');
  const usual = row.faces.some(({ entry }) => entry.usual);
  row.cells.set('probe_depth', deepest.text);
  assume(
    row,
    'probe_depth',
    `the deepest of ${faces}${usual ? '; no unit written, taken as the one small unit in the file' : ''}`,
  );
}

/** A post noted as snapped is so, unless it was rocked and did not move as one that is: then somebody has to say. */
function takeSnapped(row: OpenRow): void {
  const soundness = row.cells.get('soundness') ?? '';
  const rocked = row.cells.get('rock_test');
  if (!saysSnapped(soundness) || rocked === 'snapped') return;
  if (rocked === undefined) {
    row.cells.set('rock_test', 'snapped');
    assume(row, 'rock_test', `the soundness column says “${soundness}”`);
  } else {
    row.cells.set('rock_test', `${rocked} or snapped`);
    assume(row, 'rock_test', `the rock test says “${rocked}”, the soundness column “${soundness}”`);
  }
}

function takeLevel(row: OpenRow, over: LevelLength | undefined): void {
  if (over === undefined) return;
  const written = row.cells.get('level_length');
  const before = written === undefined ? undefined : readLength(written)?.value;
  const same =
    typeof before === 'number' &&
    Math.abs(before - Number(readLength(over.text)?.value ?? NaN)) < 1e-6;
  if (same || (written !== undefined && over !== row.over)) return;
  if (written !== undefined && !over.slope) {
    row.cells.set('level_length', `${written} or ${over.text}`);
    assume(
      row,
      'level_length',
      `two level lengths: “${written}” in its column, “${over.text}” ${over.why}`,
    );
    return;
  }
  if (written !== undefined) keep(row, 'level length in its own column', written);
  row.cells.set('level_length', over.text);
  assume(row, 'level_length', over.why);
}

function takeDirection(row: OpenRow, toward: string): void {
  const written = row.cells.get('lean_toward');
  if (written === undefined) {
    row.cells.set('lean_toward', toward);
    assume(row, 'lean_toward', 'written in the lean cell');
  } else if (readDirection(written) !== readDirection(toward)) {
    assume(row, 'lean_toward', `the lean cell says “${toward}”`);
  }
}
