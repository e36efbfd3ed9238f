import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bringIn, cells, millimetres } from './bring-in.ts';

const sample = (name: string): Uint8Array =>
  readFileSync(new URL(`../samples/${name}.csv`, import.meta.url));
const accounted = (name: string): number[] => {
  const { linesRead, rows, passedOver } = bringIn(sample(name));
  return [linesRead, rows.length, passedOver.length];
};

describe('the sample files', () => {
  it.each([
    ['D1-tree-run', 8, 7, 1],
    ['D2-rock', 6, 5, 1],
    ['D3-snapped', 2, 1, 1],
    ['D4-wind', 14, 13, 1],
    ['D5-clay-metric', 10, 9, 1],
    ['D6-stepped', 10, 9, 1],
  ])('account for every line of %s', (name, read, rows, passed) => {
    expect(accounted(name)).toEqual([read, rows, passed]);
  });

  it('give the tree run its gaps, with bare probes in inches and a bare nought as it is', () => {
    const intake = bringIn(sample('D1-tree-run'));
    expect(cells(intake, 'lean_gap')).toEqual([
      '0',
      '3/8"',
      '1 7/8"',
      '2 1/4"',
      '5/8"',
      '1/8"',
      '0',
    ]);
    expect(cells(intake, 'level_length')).toEqual(Array(7).fill('48"'));
    expect(cells(intake, 'station')).toEqual(['0', "8'", "16'", "24'", "32'", "40'", "48'"]);
    expect(cells(intake, 'probe_depth').map(millimetres)).toEqual([
      1.5875, 3.175, 3.175, 6.35, 3.175, 1.5875, 0,
    ]);
    expect(intake.rows[0]?.assumed.get('probe_depth')).toContain('taken as in');
    expect(intake.rows[3]?.cells.get('note')).toBe(
      'trunk 14" dia at sta 20, neighbor side; root 3" at 8" deep',
    );
    expect(intake.asks).toEqual([]);
  });

  it('take the rock file for a list of holes', () => {
    const intake = bringIn(sample('D2-rock'));
    expect(intake.layout).toBe('holes');
    expect(cells(intake, 'post')).toEqual(['1', '2', '3', '4', '5']);
    expect(cells(intake, 'hole_width')).toEqual(Array(5).fill('12 in'));
    expect(cells(intake, 'depth_wanted')).toEqual(Array(5).fill('30 in'));
    expect(cells(intake, 'depth_reached')).toEqual([
      '36 in',
      '18 in',
      '18 1/2 in',
      '36 in',
      '36 in',
    ]);
    expect(cells(intake, 'stopped_by')).toEqual([undefined, 'rock', 'rock', undefined, undefined]);
    expect(cells(intake, 'gravel')).toEqual(['6 in', '0', '0', '6 in', '6 in']);
    expect(intake.rows[1]?.assumed.has('depth_wanted')).toBe(true);
    expect(intake.rows[1]?.assumed.has('hole_width')).toBe(false);
    expect(intake.asks).toEqual([]);
  });

  it('keep the snapped post’s break and concrete below grade', () => {
    const intake = bringIn(sample('D3-snapped'));
    const row = intake.rows[0]!.cells;
    expect(row.get('rock_test')).toBe('snapped');
    expect(millimetres(row.get('break_at'))).toBe(-76.2);
    expect(millimetres(row.get('top_of_concrete_found'))).toBe(-50.8);
    expect(millimetres(row.get('height'))).toBe(1828.8);
    expect(row.has('lean_gap')).toBe(false);
    expect(intake.asks).toEqual([]);
  });

  it('take the wind file’s footings apart and ask for what it lacks', () => {
    const intake = bringIn(sample('D4-wind'));
    expect(cells(intake, 'footing_width')).toEqual(Array(13).fill('10 in'));
    expect(cells(intake, 'footing_depth')).toEqual(Array(13).fill('24 in'));
    expect(cells(intake, 'station').at(-1)).toBe('96 ft');
    expect(cells(intake, 'lean_gap').slice(0, 2)).toEqual(['1 1/4 in', '1 1/2 in']);
    expect(cells(intake, 'lean_toward')).toEqual(Array(13).fill('E'));
    expect(intake.asks.map(({ about, column }) => [about, column])).toEqual([
      ['missing', 'probe_depth'],
      ['missing', 'rock_test'],
    ]);
  });

  it('read the metric file’s decimal commas, with its German headers settled or not', () => {
    for (const settled of [{}, { 'Wasserwaage mm': 'level_length' }]) {
      const intake = bringIn(sample('D5-clay-metric'), settled);
      expect(cells(intake, 'station').map(millimetres)).toEqual([
        0, 2400, 4800, 7200, 9600, 12000, 14400, 16800, 19200,
      ]);
      expect(cells(intake, 'lean_gap').map(millimetres)).toEqual([4, 9, 22, 31, 28, 35, 19, 8, 3]);
      expect(cells(intake, 'level_length').map(millimetres)).toEqual(Array(9).fill(1200));
      expect(cells(intake, 'standing_water')[3]).toBe('180 mm');
    }
  });

  it('read the stepped slope’s drops', () => {
    const drops = cells(bringIn(sample('D6-stepped')), 'drop').map(millimetres);
    expect(drops).toEqual([0, 76.2, 114.3, 152.4, 209.55, 190.5, 158.75, 127, 88.9]);
  });
});
