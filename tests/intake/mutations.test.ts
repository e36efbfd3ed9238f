import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { decode, records } from '../../src/csv/index.ts';
import type { Intake, IntakeRow } from '../../src/intake/index.ts';
import {
  LENGTH,
  isDoubt,
  isProblem,
  isQuantity,
  readEntry,
  readSize,
} from '../../src/units/index.ts';
import { COLUMNS, bringIn } from './bring-in.ts';
import { MUTATIONS, csv, type Grid } from './mutations.ts';

const SAMPLES = ['D1-tree-run', 'D2-rock', 'D3-snapped', 'D4-wind', 'D5-clay-metric', 'D6-stepped'];
const PLACES = [0, 3, 7, 11];
const CASES = SAMPLES.flatMap((sample) => MUTATIONS.map(({ does }) => [sample, does] as const));

describe('a sample', () => {
  it.each(CASES)(
    '%s that %s gives the same answers or asks, never different ones',
    (sample, does) => {
      const { grid, rows } = original(sample);
      const mutation = MUTATIONS.find((one) => one.does === does)!;
      for (const at of PLACES) {
        const file = mutation.file(grid, at);
        if (file === undefined) continue;
        const intake = bringIn(file);
        const order = mutation.order?.(grid) ?? [...rows.keys()];
        const expected = [...order, ...(mutation.adds?.(grid, at) ?? [])].map(
          (place) => rows[place]!,
        );
        expect(intake.rows).toHaveLength(expected.length);
        expect(
          intake.turned ? 0 : intake.linesRead - intake.rows.length - intake.passedOver.length,
        ).toBe(0);
        for (const [place, row] of intake.rows.entries())
          expect(
            differences(row, expected[place]!, intake),
            `row ${String(place + 1)} of\n${String(file)}`,
          ).toEqual([]);
      }
    },
  );
});

describe('a defect', () => {
  it.each(MUTATIONS.slice(1))('that $does changes at least one sample', ({ file }) => {
    const changed = SAMPLES.filter((sample) => {
      const { grid } = original(sample);
      return PLACES.some((at) => (file(grid, at) ?? csv(grid)) !== csv(grid));
    });
    expect(changed.length).toBeGreaterThan(0);
  });
});

function original(sample: string): { readonly grid: Grid; readonly rows: readonly IntakeRow[] } {
  const bytes = readFileSync(new URL(`../samples/${sample}.csv`, import.meta.url));
  const decoded = decode(bytes);
  if (isProblem(decoded)) throw new Error(decoded.found);
  return {
    grid: records(decoded.text).records.map(({ cells }) => cells),
    rows: bringIn(bytes).rows,
  };
}

/** Columns of a row that say something else than the original and ask nothing. */
function differences(row: IntakeRow, original: IntakeRow, { asks }: Intake): string[] {
  const asked = new Set(asks.map(({ column }) => column));
  const columns = new Set([...row.cells.keys(), ...original.cells.keys()]);
  return [...columns].flatMap((column) => {
    const [now, before] = [row.cells.get(column), original.cells.get(column)];
    const same = meaning(column, now) === meaning(column, before);
    const isAsked = meaning(column, now) === 'asked' || (now === undefined && asked.has(column));
    // What fits no column any more stands beside the row, in full.
    const beside = [...row.kept.values()].some(
      (cell) => cell !== '' && (before ?? '').startsWith(cell),
    );
    return same || isAsked || (now === undefined && beside)
      ? []
      : [`${column}: ${String(before)} became ${String(now)}`];
  });
}

/** What an entry comes to: a length in meters, its words, or that it is asked about. */
function meaning(column: string, entry: string | undefined): string | number | undefined {
  const kind = COLUMNS.find(({ id }) => id === column)?.kind;
  if (entry === undefined || !kind) return entry;
  // A size that is none stops the work, with what to type.
  if (column === 'post_size' && isProblem(readSize(entry))) return 'asked';
  const read = readEntry(entry, kind);
  if (isProblem(read) || isDoubt(read)) return 'asked';
  if (isQuantity(kind, LENGTH)) return Math.round(Number(read.value) * 1e9) / 1e9;
  return inPlainMarks(String(read.value));
}

/** Marks that look alike mean the same in words. */
function inPlainMarks(words: string): string {
  return words
    .replace(/''|[″”]/g, '"')
    .replace(/[′’]/g, "'")
    .replaceAll('⁄', '/')
    .replace(/\s+/g, ' ');
}
