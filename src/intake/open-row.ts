import { readDirection } from '../units/index.ts';
import { readLength, type LengthEntry } from './length-entry.ts';
import { saysSnapped } from './rock-test.ts';
import type { RowStore } from './row-store.ts';

/** The row of a store whose cells are coming in; some of them say something about another column. */
export interface OpenRow {
  readonly store: RowStore;
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

/** A row that nothing was put in yet. */
export function openRow(store: RowStore): OpenRow {
  return { store, faces: NO_FACES, over: undefined, toward: undefined };
}

const NO_FACES: readonly Face[] = [];

/** Says why an entry is more than its cell. */
export function assume({ store }: OpenRow, column: string, why: string): void {
  store.set('assumed', column, why);
}

/** Puts everything of the row where it belongs, and makes it ready for the next. */
export function closeRow(row: OpenRow, stated: LevelLength | undefined): void {
  const over = row.over ?? stated;
  if (row.faces.length > 0) takeDeepest(row);
  if (over !== undefined && (entry(row, 'lean_gap') ?? entry(row, 'lean_gap_along')) !== undefined)
    takeLevel(row, over);
  if (row.toward !== undefined) takeDirection(row, row.toward);
  takeSnapped(row);
  row.faces = NO_FACES;
  row.over = undefined;
  row.toward = undefined;
}

function entry({ store }: OpenRow, column: string): string | undefined {
  return store.get('cells', column);
}

function enter({ store }: OpenRow, column: string, text: string): void {
  store.set('cells', column, text);
}

/** The deepest of the faces; a face that can't be read stands instead, so that it is asked about. */
function takeDeepest(row: OpenRow): void {
  for (const { header, cell } of row.faces) row.store.set('kept', header, cell);
  let deepest: { readonly text: string; readonly depth: number } | undefined;
  for (const { header, entry: face } of row.faces) {
    const depth = readLength(face.text)?.value;
    if (typeof depth !== 'number') {
      enter(row, 'probe_depth', face.text);
      assume(row, 'probe_depth', `from “${header}”; the deepest face can’t be told without it`);
      return;
    }
    if (deepest === undefined || depth > deepest.depth) deepest = { text: face.text, depth };
  }
  if (deepest === undefined) return;
  const faces = row.faces.map(({ header }) => header).join(', ');
  const usual = row.faces.some((face) => face.entry.usual);
  enter(row, 'probe_depth', deepest.text);
  assume(
    row,
    'probe_depth',
    `the deepest of ${faces}${usual ? '; no unit written, taken as the one small unit in the file' : ''}`,
  );
}

/** A post noted as snapped is so, unless it was rocked and did not move as one that is: then somebody has to say. */
function takeSnapped(row: OpenRow): void {
  const soundness = entry(row, 'soundness');
  if (soundness === undefined) return;
  const rocked = entry(row, 'rock_test');
  if (!saysSnapped(soundness) || rocked === 'snapped') return;
  if (rocked === undefined) {
    enter(row, 'rock_test', 'snapped');
    assume(row, 'rock_test', `the soundness column says “${soundness}”`);
  } else {
    enter(row, 'rock_test', `${rocked} or snapped`);
    assume(row, 'rock_test', `the rock test says “${rocked}”, the soundness column “${soundness}”`);
  }
}

function takeLevel(row: OpenRow, over: LevelLength): void {
  const written = entry(row, 'level_length');
  const before = written === undefined ? undefined : readLength(written)?.value;
  const same =
    typeof before === 'number' &&
    Math.abs(before - Number(readLength(over.text)?.value ?? NaN)) < 1e-6;
  if (same || (written !== undefined && over !== row.over)) return;
  if (written !== undefined && !over.slope) {
    enter(row, 'level_length', `${written} or ${over.text}`);
    assume(
      row,
      'level_length',
      `two level lengths: “${written}” in its column, “${over.text}” ${over.why}`,
    );
    return;
  }
  if (written !== undefined) row.store.set('kept', 'level length in its own column', written);
  enter(row, 'level_length', over.text);
  assume(row, 'level_length', over.why);
}

function takeDirection(row: OpenRow, toward: string): void {
  const written = entry(row, 'lean_toward');
  if (written === undefined) {
    enter(row, 'lean_toward', toward);
    assume(row, 'lean_toward', 'written in the lean cell');
  } else if (readDirection(written) !== readDirection(toward)) {
    assume(row, 'lean_toward', `the lean cell says “${toward}”`);
  }
}
