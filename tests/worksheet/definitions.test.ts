import { describe, expect, it } from 'vitest';
import { functionNames } from '../../src/formula/index.ts';
import { SHEETS, kindNamed } from '../../src/worksheet/index.ts';
import { UNITS, parseUnit, sameDimension } from '../../src/units/index.ts';
import { siteOf } from './site.ts';

const columns = SHEETS.flatMap((sheet) =>
  sheet.columns.map((column) => ({ name: `${sheet.id}.${column.id}`, ...column })),
);
const STANDINGS = ['code', 'standard', 'theory', 'arithmetic', 'common practice', 'yours'];
const GRAMMAR = ['and', 'or', 'not', 'to', 'in', 'true', 'false', 'mod', 'xor', 'pi'];

describe('the built-in sheets', () => {
  it('read, fit and come to rest', () => {
    expect(siteOf({}).sheets.length).toBe(SHEETS.length);
  });

  it.each(SHEETS.map(({ id }) => id))('have %s once, with a title and a question', (id) => {
    const [sheet, ...others] = SHEETS.filter((each) => each.id === id);
    expect(others).toEqual([]);
    expect(sheet!.title).not.toBe('');
    expect(sheet!.question).toMatch(/\?$/);
    const ids = sheet!.columns.map((column) => column.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the chapters of a calculation', () => {
  const chapters = SHEETS.flatMap(({ id, follow = [] }) =>
    follow.map(([title, cells]) => ({ id, title, cells: cells?.split(' ') })),
  );

  it('hold worked-out cells, each once, or stand for the chapters of another sheet', () => {
    expect(chapters.map(({ id }) => id)).toContain('holes');
    for (const { title, cells } of chapters) {
      if (!cells) expect(chapters.map(({ id }) => id)).toContain(title);
      for (const cell of cells ?? [])
        expect(columns.find(({ name }) => name === cell)?.formula, cell).toBeDefined();
    }
    const told = chapters.flatMap(({ cells }) => cells ?? []);
    expect(new Set(told).size).toBe(told.length);
  });

  it('go from ground and wind over demand and capacity to the depth that governs and the choice', () => {
    const titles = chapters.filter(({ id }) => id === 'holes').map(({ title }) => title);
    expect(titles).toEqual([
      'Ground and wind',
      'What the wind asks',
      'What the ground holds',
      'Which depth governs',
      'What is chosen',
      'Concrete and post',
    ]);
  });
});

describe('a column', () => {
  it.each(columns.map(({ name }) => name))('%s has a plain name and a kind', (name) => {
    const column = columns.find((each) => each.name === name)!;
    expect(column.id).toMatch(/^[a-z][a-z0-9_]*$/);
    expect(UNITS.map(({ symbol }) => symbol)).not.toContain(column.id);
    expect(GRAMMAR).not.toContain(column.id);
    expect(kindNamed(column.kind, column.choices ?? [])).toBeDefined();
    expect(column.label).not.toBe('');
  });

  const shownIn = columns.flatMap(({ name, kind, choices, unit, metric }) =>
    [unit, metric].flatMap((symbol) =>
      symbol === undefined ? [] : [{ name, kind, choices, symbol }],
    ),
  );
  it.each(shownIn)('$name is shown in $symbol, a unit of its kind', ({ kind, choices, symbol }) => {
    const named = kindNamed(kind, choices ?? []);
    const of = named?.type === 'list' ? named.of : named;
    const unit = parseUnit(symbol);
    expect(unit).toBeDefined();
    expect(of?.type === 'quantity' && sameDimension(of.dimension, unit!.dimension)).toBe(true);
  });

  it.each(columns.filter(({ formula }) => formula !== undefined).map(({ name }) => name))(
    '%s, worked out, says where it comes from or how it stands',
    (name) => {
      const { source = '', standing = '', formula } = columns.find((each) => each.name === name)!;
      const isCopy = /^\w+\.\w+$/.test(formula ?? '');
      if (!isCopy) expect(`${source}${standing}`).not.toBe('');
      if (standing !== '') expect(STANDINGS).toContain(standing);
      if (['code', 'standard', 'theory', 'common practice'].includes(standing))
        expect(source).not.toBe('');
    },
  );

  it.each(columns.filter(({ start }) => start !== undefined).map(({ name }) => name))(
    '%s, given to a new job, says how it stands and can be changed',
    (name) => {
      const { source = '', standing = '', entry } = columns.find((each) => each.name === name)!;
      expect(entry).toBe(true);
      expect(STANDINGS).toContain(standing);
      if (standing !== 'yours') expect(source).not.toBe('');
    },
  );
});

describe('a stop', () => {
  const stops = SHEETS.flatMap(({ id, stops: rows = [], sheetStops = [] }) =>
    [...rows, ...sheetStops].map((stop) => ({ name: `${id}: ${stop.rule}`, ...stop })),
  );

  it.each(stops.map(({ name }) => name))('%s speaks plainly and names its source', (name) => {
    const { message, source } = stops.find((each) => each.name === name)!;
    expect(source).not.toBe('');
    expect(message).not.toMatch(/invalid|failed|null|undefined|!/);
    expect(message).toMatch(/\.$/);
  });

  const settled = stops.flatMap(({ name, settle }) =>
    settle === undefined ? [] : [{ name, settle }],
  );
  it.each(settled)('$name leads to $settle, which can be typed', ({ name, settle }) => {
    const place = settle.includes('.') ? settle : `${name.split(':', 1)[0] ?? ''}.${settle}`;
    expect(columns.find((column) => column.name === place)?.entry).toBe(true);
  });
});

describe('the names outsiders rely on', () => {
  const PROMISED: Record<string, string> = {
    job: 'units currency fence_height ground_gap post_spacing post_size rails_per_bay solid_ratio soil bearing motion_allowed frost_depth frost_margin local_min_depth depth_rule stock_lengths hole_shape hole_width gravel_depth top_of_concrete crown_height waste mix bag_rounding wind_speed exposure plumb_tolerance probe_sound probe_replace set_hours rehang_strength air_temperature cement',
    posts:
      'post station post_type post_size height lean_gap level_length lean_toward lean_gap_along probe_depth rock_test soundness collar footing_width footing_depth break_at depth_reached stopped_by top_above_line grade_shift drop standing_water note lean_angle top_offset cause remedy',
    holes:
      'depth width post_width gravel embedment concrete concrete_ordered bags governing_rule depth_reached shortfall',
    bags: 'mix weight yield price set_hours by_job by_hole',
    materials: 'item size length quantity unit',
  };

  it.each(Object.entries(PROMISED))('stand on %s', (sheet, names) => {
    const ids = SHEETS.find(({ id }) => id === sheet)!.columns.map(({ id }) => id);
    for (const name of names.split(' ')) expect(ids).toContain(name);
  });

  it('are lists of choices that must not drift', () => {
    const choices = (sheet: string, column: string): readonly string[] | undefined =>
      SHEETS.find(({ id }) => id === sheet)?.columns.find(({ id }) => id === column)?.choices;
    expect(choices('posts', 'rock_test')).toEqual([
      'firm',
      'loose',
      'moves at grade',
      'moves in collar',
      'snapped',
    ]);
    expect(choices('posts', 'remedy')).toEqual(['leave', 're-plumb', 'mend', 'replace']);
    expect(choices('job', 'depth_rule')).toEqual([
      'greatest',
      'local minimum',
      'by height',
      'below frost',
      'ground and wind',
    ]);
    expect(choices('job', 'bag_rounding')).toEqual(expect.arrayContaining(['by hole', 'by job']));
    expect(choices('job', 'cement')).toEqual(['I', 'III']);
    expect(choices('job', 'exposure')).toEqual(['B', 'C', 'D']);
  });

  it('do not take a sheet for a job input or a function for a sheet', () => {
    const sheets = SHEETS.map(({ id }) => id);
    for (const name of functionNames()) expect(sheets).not.toContain(name);
  });
});
