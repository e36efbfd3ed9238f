import { describe, expect, it } from 'vitest';
import type { Book, Working } from '../../src/worksheet/index.ts';
import { cellOf, siteOf, typeInto } from './site.ts';

const INPUTS = { frost_depth: '36 in', soil: 'clay', wind_speed: '105 mph', exposure: 'B' };
const FIRM = { rock_test: 'firm', probe_depth: '0 in' };
const POSTS = [
  { ...FIRM, station: '0 ft', lean_gap: '1 7/8 in', level_length: '48 in' },
  { ...FIRM, station: '8 ft', lean_gap: '0', level_length: '48 in', probe_depth: '1 in' },
  { ...FIRM, station: '16 ft', level_length: '48 in' },
];

const smallJob = () => siteOf(INPUTS, POSTS);

describe('the working of every computed cell', () => {
  it.each(['inch', 'metric'])('comes to what the cell shows, in %s', (units) => {
    const book = siteOf({ units, ...INPUTS }, POSTS);
    const seen = allWorkings(book).filter(
      ({ formula, state, isOverruled }) =>
        formula !== undefined && state === 'known' && !isOverruled,
    );
    expect(seen.length).toBeGreaterThan(100);
    expect(seen.filter(({ worked, value }) => worked !== value)).toEqual([]);
  });

  it('reads what stands in the cells it names', () => {
    const book = smallJob();
    const steps = allWorkings(book).flatMap(({ steps: each }) => each);
    const wrong = steps.filter(({ place, taken }) => {
      if (!place) return false;
      const there = book.working(place.sheet, place.row, place.column);
      return there?.state === 'known' ? taken !== there.value : taken !== '';
    });
    expect(steps.length).toBeGreaterThan(200);
    expect(wrong).toEqual([]);
  });

  it('leads back from every name to the cell, and from there forward again', () => {
    const book = smallJob();
    const lost = allWorkings(book).flatMap(({ place, steps }) =>
      steps.filter((step) => {
        const from = step.place;
        // A neighbor and the job are read by many rows, a column of one's own row by one.
        if (!from || from.sheet !== place.sheet || from.row !== place.row) return false;
        const uses = book.working(from.sheet, from.row, from.column)?.usedBy ?? [];
        return !uses.some(
          (use) => use.place?.column === place.column && use.place.row === place.row,
        );
      }),
    );
    expect(lost).toEqual([]);
  });

  it('has a source or a standing for every rule it calls', () => {
    const rules = allWorkings(smallJob()).flatMap((working) => working.rules);
    expect(rules.length).toBeGreaterThan(10);
    expect(rules.filter(({ source, standing }) => source === '' || standing === '')).toEqual([]);
  });
});

describe('one working', () => {
  it('has the name, the formula, and the formula in numbers', () => {
    const working = workingAt(smallJob(), 'posts', '1', 'top_offset');
    expect(working.title).toBe('Out at top, post 1');
    expect(working.formula).toBe('top_offset(lean_total, level_length, height)');
    expect(working.inNumbers).toMatch(/^top_offset\(1 7\/8 in, 48 in, 6 ft\)$/);
    // Proportion, hand-worked: 1 7/8 in over 48 in is 2 13/16 in over 6 ft, 0.0714375 m.
    expect(working.value).toBe('2 13/16 in');
    expect(working.si).toBe('0.0714375 m');
  });

  it('has each value as typed and as used, in the unit of its column and in SI', () => {
    const book = smallJob();
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { lean_gap: '50 mm' });
    const step = stepOf(workingAt(book, 'posts', '1', 'lean_total'), 'lean_gap');
    expect(step).toMatchObject({
      origin: 'typed',
      typed: '50 mm',
      si: '0.05 m',
      standing: 'yours',
    });
    expect(step.taken).toBe('1 15/16 in'); // 50 mm is 1.9685 in: nearest sixteenth, hand-worked
  });

  it('tells a starting value from one that was typed', () => {
    const book = smallJob();
    const rule = () => stepOf(workingAt(book, 'holes', '2', 'local_minimum'), 'local_min_depth');
    expect(rule()).toMatchObject({ origin: 'starting value', typed: '30 in' });
    expect(rule().standing).toBe('common practice');
    typeInto(book, 'job', 'job', { local_min_depth: '3 ft' });
    expect(rule()).toMatchObject({
      origin: 'typed',
      typed: '3 ft',
      taken: '36 in',
      standing: 'yours',
    });
  });

  it('gives each rule its clause', () => {
    const { rules } = workingAt(smallJob(), 'posts', '1', 'by_height');
    // ASTM F567 5.1: 24 in at 4 ft and 3 in more per foot is 30 in at 6 ft.
    expect(rules).toMatchObject([
      { name: 'depth_by_height', given: [{ value: '6 ft' }], result: '30 in', isUsed: true },
    ]);
    expect(rules[0]?.source).toContain('F567');
    expect(rules[0]?.standing).toBe('standard');
  });

  it('says which branch was not needed', () => {
    const { steps, rules } = workingAt(smallJob(), 'holes', '2', 'concrete');
    expect(rules.find(({ name }) => name === 'square_hole')?.isUsed).toBe(false);
    expect(rules.find(({ name }) => name === 'round_hole')?.isUsed).toBe(true);
    expect(steps.every(({ isUsed }) => isUsed)).toBe(true);
  });

  it.each([
    ['job', '', 'ground_bearing', 'soil_bearing(soil) * 1', 'soil_bearing("sand") * 1'],
    ['holes', '2', 'above_grade', 'posts.height + (ground_gap + 0 in)', '6 ft + (2 in + 0 in)'],
    ['holes', '2', 'post_length', 'above_grade + embedment', '74 in + 73 11/16 in'],
    ['holes', '2', 'lateral_width', 'width', '12 in'],
    ['cure', '2', 'rehang_after', 'poured_at + up_to_step(wait, 15 min)', ''],
  ])('tells of %s %s %s only what was taken', (sheet, row, column, names, numbers) => {
    const book = smallJob();
    typeInto(book, 'job', 'job', { soil: 'sand', pour_time: '2026-10-20 09:00' });
    const { taken, takenInNumbers } = workingAt(book, sheet, row, column);
    expect(taken).toBe(names);
    if (numbers !== '') expect(takenInNumbers).toBe(numbers);
  });

  it('says how many rows were gone through', () => {
    const { gathered, steps } = workingAt(smallJob(), 'job', '', 'post_count');
    expect(gathered).toMatchObject([{ sheet: 'Posts', rows: 3, result: '3' }]);
    expect(steps[0]).toMatchObject({ origin: 'whole column', taken: '3 rows', place: undefined });
  });

  it('lists what a waiting cell waits for, and where', () => {
    const book = smallJob();
    const working = workingAt(book, 'posts', '3', 'lean_angle');
    expect(working).toMatchObject({ state: 'waiting', value: '', worked: '' });
    expect(working.waits).toEqual([
      {
        label: 'Lean gap, post 3',
        place: { sheet: 'posts', row: book.sheet('posts')!.rowId(2), column: 'lean_gap' },
      },
    ]);
  });

  it('says what is wrong and what to do where a rule refuses', () => {
    const book = smallJob();
    typeInto(book, 'job', 'job', { stock_lengths: '4 ft' });
    const working = workingAt(book, 'holes', '2', 'post_stock');
    expect(working.state).toBe('wrong');
    expect(working.problems.join()).toContain('4 ft');
    expect(working.rules[0]?.problem).toBe(working.problems[0]);
  });

  it('keeps what the formula says where an entry stands over it', () => {
    const book = smallJob();
    expect(cellOf(book, 'posts', '1', 'remedy').text).toBe('re-plumb');
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { remedy: 'replace' });
    const working = workingAt(book, 'posts', '1', 'remedy');
    expect(working).toMatchObject({
      isOverruled: true,
      typed: 'replace',
      value: 'replace',
      worked: 're-plumb',
      standing: 'yours',
    });
    expect(working.steps.map(({ name }) => name)).toContain('readings_say');
    const said = workingAt(book, 'posts', '1', 'readings_say');
    expect(said.steps.map(({ name }) => name)).toContain('plumb_tolerance');
  });

  it('shows a formula of one’s own as one’s own', () => {
    const book = smallJob();
    expect(book.setFormula('posts', 'by_height', 'height / 3')).toBeUndefined();
    const working = workingAt(book, 'posts', '1', 'by_height');
    expect(working).toMatchObject({
      formula: 'height / 3',
      standing: 'yours',
      worked: '24 in',
      rules: [],
    });
  });

  it('names the cells and rules that read it', () => {
    const book = smallJob();
    const row = book.sheet('posts')!.rowId(1);
    const uses = workingAt(book, 'holes', '2', 'concrete').usedBy;
    expect(uses).toContainEqual({
      label: 'Holes: Concrete (with waste)',
      place: { sheet: 'holes', row, column: 'concrete_ordered' },
    });
    expect(uses.map(({ label }) => label)).toContain('Holes: total of concrete');
    const remedy = workingAt(book, 'posts', '2', 'remedy').usedBy.map(({ label }) => label);
    expect(remedy).toContain('Holes: which rows there are');
    const needed = workingAt(book, 'posts', '2', 'depth_needed').usedBy;
    expect(needed).toContainEqual({
      label: 'Holes: Embedment',
      place: { sheet: 'holes', row, column: 'embedment' },
    });
  });

  it('is not there for a cell that is not', () => {
    const book = smallJob();
    expect(book.working('posts', 'nobody', 'remedy')).toBeUndefined();
    expect(book.working('posts', book.sheet('posts')!.rowId(0), 'nothing')).toBeUndefined();
    expect(book.working('nowhere', 'r1', 'remedy')).toBeUndefined();
  });
});

function allWorkings(book: Book): readonly Working[] {
  return book.sheets.flatMap((sheet) =>
    Array.from({ length: sheet.rowCount }, (_, row) => row).flatMap((row) =>
      sheet.columns.map(({ id }) => {
        const working = book.working(sheet.id, sheet.rowId(row), id);
        if (!working) throw new Error(`${sheet.id}.${id} has no working in row ${String(row)}.`);
        return working;
      }),
    ),
  );
}

function workingAt(book: Book, sheet: string, key: string, column: string): Working {
  const view = book.sheet(sheet)!;
  const row = Array.from({ length: view.rowCount }, (_, at) => at).find(
    (at) => view.rowKey(at) === key,
  );
  return book.working(sheet, view.rowId(row!), column)!;
}

function stepOf({ steps }: Working, name: string) {
  return steps.find((step) => step.name === name)!;
}
