import { describe, expect, it } from 'vitest';
import type { Book, CurveLine, CurveView } from '../../src/worksheet/index.ts';
import { addTyped, amount, cellOf, run, siteOf, typeInto } from './site.ts';
import { expectNear } from '../trade/si.ts';

type Typed = Readonly<Record<string, string>>;

const WINDY = { soil: 'sand', wind_speed: '115 mph', exposure: 'B' };
const POURED = { pour_time: '2026-10-14 09:00' };

/** Three posts to replace, and the capacity of the one in the middle. */
function capacity(inputs: Typed, hole: Typed = {}): { book: Book; curve: CurveView } {
  const book = siteOf(inputs, run(3, 8, hole));
  const curve = book.capacityCurve(book.sheet('holes')!.rowId(1));
  if (!curve) throw new Error('The hole has no curve.');
  return { book, curve };
}

function strength(inputs: Typed): { book: Book; curve: CurveView } {
  const book = siteOf({ ...POURED, ...inputs }, run(2, 8));
  return { book, curve: book.strengthCurve(book.sheet('cure')!.rowId(0)) };
}

/** What a line has at a place, where it has a point there. */
function at(line: CurveLine | undefined, x: number): number {
  const point = line?.points.find(([each]) => Math.abs(each - x) < 1e-9);
  if (!point) throw new Error(`${line?.name ?? 'No line'} has no point at ${String(x)}.`);
  return point[1];
}

function named(curve: CurveView, name: string): CurveLine {
  const line = curve.lines.find((each) => each.name === name);
  if (!line) throw new Error(`There is no line ${name}.`);
  return line;
}

function mark(curve: CurveView, label: RegExp) {
  const found = curve.marks.find((each) => label.test(each.label));
  if (!found) throw new Error(`Nothing is marked ${String(label)}.`);
  return found;
}

describe('capacity against depth', () => {
  it('is drawn for the width, a narrower and a wider one', () => {
    const { curve } = capacity({ soil: 'sand' });
    expect(curve.lines.map(({ name }) => name)).toEqual(['12 in wide', '8 in', '18 in']);
    expect([curve.x.unit, curve.y.unit, curve.waits]).toEqual(['in', 'lbf', '']);
  });

  it('holds what the rule gives, worked by hand', () => {
    // IBC 2012 Eq. 18-1 turned round, P = s b d^3 / (7.02 (d + 1.09 h)): sand 150 psf/ft, b 1 ft, d 30 in;
    // h = 2 in + 0.55 x 6 ft = 3.4667 ft: 150 x 15.625 / (7.02 x (2.5 + 3.77867)) = 53.17 lbf.
    const { curve } = capacity({ soil: 'sand' }, { depth_wanted: '30 in' });
    expectNear(mark(curve, /wanted/).y, 53.17, 0.01);
    expectNear(at(named(curve, '18 in'), 30), 1.5 * 53.17, 0.02);
  });

  it('agrees with the cells of a hole dug short', () => {
    const { book, curve } = capacity(WINDY, { depth_reached: '18 in', hole_width: '18 in' });
    const dug = mark(curve, /dug/);
    expectNear(dug.y, amount(book, 'holes', '2', 'capacity', 'lbf'), 1e-6);
    expectNear(at(named(curve, '18 in wide'), dug.x), dug.y, 1e-9);
    const [level] = curve.levels;
    expectNear(level!.y, amount(book, 'holes', '2', 'wind_force', 'lbf'), 1e-6);
  });

  it('reaches the wind’s demand at the depth that the ground and wind rule gives', () => {
    const { book, curve } = capacity(WINDY);
    const enough = mark(curve, /holds the wind/);
    expectNear(enough.x, amount(book, 'holes', '2', 'ground_and_wind', 'in'), 1e-6);
    expectNear(enough.y, amount(book, 'holes', '2', 'wind_force', 'lbf'), 1e-6);
  });

  it('shows that width does not replace depth', () => {
    const { curve } = capacity({ soil: 'sand' }, { depth_reached: '18 in', hole_width: '18 in' });
    // The widest line at the depth dug holds less than the job's own width at the depth wanted.
    const wanted = mark(curve, /wanted/).y;
    for (const line of curve.lines) expect(at(line, 18)).toBeLessThan(wanted);
    // In width it grows as the width does, in depth faster: the rule itself.
    const [wide, narrow] = [named(curve, '18 in wide'), named(curve, '12 in')];
    for (const [depth, force] of narrow.points) expectNear(at(wide, depth), 1.5 * force, 1e-9);
    expect(at(narrow, mark(curve, /wanted/).x) / at(narrow, 18)).toBeGreaterThan(
      mark(curve, /wanted/).x / 18,
    );
    expect(curve.notes.join(' ')).toContain('Width does not replace depth');
  });

  it('cancels the soil where none is entered, and says so', () => {
    const hole = { depth_reached: '18 in', hole_width: '18 in' };
    const { book, curve } = capacity({}, hole);
    expect(curve.y.unit).toBe('%');
    expect(curve.notes.join(' ')).toContain('No soil is entered');
    expectNear(mark(curve, /wanted/).y, 100, 1e-9);
    expectNear(mark(curve, /dug/).y / 100, amount(book, 'holes', '2', 'capacity_left'), 1e-9);
    // A share is the same in any soil.
    for (const soil of ['clay', 'gravel']) {
      const other = capacity({ soil }, hole).curve;
      expectNear(100 * mark(other, /dug/).y / mark(other, /wanted/).y, mark(curve, /dug/).y, 1e-9); // prettier-ignore
    }
  });

  it('counts a square hole by its diagonal', () => {
    const round = capacity({ soil: 'sand' }, { depth_wanted: '30 in' }).curve;
    const square = capacity(
      { soil: 'sand', hole_shape: 'square' },
      { depth_wanted: '30 in' },
    ).curve;
    // IBC 2012 1807.3.2.1: b is the diagonal of a square post or footing.
    expectNear(mark(square, /wanted/).y / mark(round, /wanted/).y, Math.SQRT2, 1e-9);
  });

  it('is in the units of the job', () => {
    const { curve } = capacity({ units: 'metric', soil: 'sand', hole_width: '300 mm' });
    expect([curve.x.unit, curve.y.unit]).toEqual(['mm', 'N']);
    expect(curve.lines.map(({ name }) => name)).toEqual(['300 mm wide', '200 mm', '450 mm']);
  });

  it('says what it lacks, of the wind and of the hole', () => {
    const { curve } = capacity({ soil: 'sand', wind_speed: '115 mph' });
    expect(curve.levels).toEqual([]);
    expect(curve.notes.join(' ')).toContain('waits for exposure');
    const bare = capacity({ hole_width: '?' }).curve;
    expect(bare.lines).toEqual([]);
    expect(bare.waits).toContain('hole width');
  });

  it('is not there for a post that keeps its hole', () => {
    const book = siteOf({}, [{ remedy: 'leave' }]);
    expect(book.capacityCurve(book.sheet('posts')!.rowId(0))).toBeUndefined();
  });
});

describe('strength against hours', () => {
  it('follows the published curve at 20 degC', () => {
    // ACI 209R-92, type I, moist: 2 days, 2/(4 + 1.7) = 0.3509 of 2,500 psi; 500 psi is reached at 23.1 h.
    const { curve } = strength({ air_temperature: '20 degC' });
    expectNear(mark(curve, /^rehang from 48 h/).y, 877.2, 0.1);
    const reached = mark(curve, /^500 psi/);
    expectNear(reached.x, 23.13, 0.01);
    expectNear(reached.y, 500, 1e-6);
    expect(curve.lines).toHaveLength(1);
  });

  it('agrees with the cells where it is cold', () => {
    const { book, curve } = strength({ air_temperature: '5 degC' });
    const rehang = mark(curve, /^rehang/);
    expectNear(rehang.x, amount(book, 'cure', '1', 'wait', 'h'), 1e-9);
    expectNear(rehang.y, amount(book, 'cure', '1', 'strength_then', 'psi'), 1e-6);
    expect(mark(curve, /^common wait/).x).toBe(48);
    expect(mark(curve, /^common wait/).y).toBeLessThan(500);
    const [cold, mild] = curve.lines;
    for (const [hours, psi] of cold!.points) expect(psi).toBeLessThanOrEqual(at(mild, hours));
    expect(curve.notes.join(' ')).toContain(cellOf(book, 'cure', '1', 'rehang_after').text);
  });

  it('follows a forecast reading by reading', () => {
    const { book } = strength({});
    addTyped(book, 'temperatures', { from: '0', temperature: '20 degC' });
    addTyped(book, 'temperatures', { from: '10', temperature: '5 degC' });
    const [first, second] = [0, 1].map((row) => book.sheet('cure')!.rowId(row));
    const curve = book.strengthCurve(first);
    // Hand-worked: 10 h at 20 degC leave 13.125 h, at a rate of 0.3986: 10 + 32.9 h.
    expectNear(mark(curve, /^500 psi/).x, 42.93, 0.05);
    expect(curve.stretches.map(({ from, label }) => [from, label])).toEqual([
      [0, '68 °F'],
      [10, '41 °F'],
    ]);
    typeInto(book, 'cure', second!, { poured_at: '2026-10-14 19:00' });
    const later = book.strengthCurve(second);
    expectNear(mark(later, /^rehang/).x, 58.03, 0.05);
    expect(later.stretches.map(({ label }) => label)).toEqual(['41 °F']);
  });

  it('is drawn for 20 degC where no temperature is known, as that and no more', () => {
    const { curve } = strength({});
    expect(curve.lines.map(({ name }) => name)).toEqual(['at 68 °F']);
    expect(curve.notes.join(' ')).toContain('not checked');
    expect(curve.marks.map(({ label }) => label)).toEqual(['pour', 'rehang from 48 h']);
  });

  it('marks rails planned too early', () => {
    const { book } = strength({ air_temperature: '5 degC' });
    const row = book.sheet('cure')!.rowId(0);
    typeInto(book, 'cure', row, { rehung_at: '2026-10-16 05:00' });
    const curve = book.strengthCurve(row);
    expect(mark(curve, /^planned/).x).toBe(44);
    expect(mark(curve, /^planned/).x).toBeLessThan(mark(curve, /^rehang/).x);
  });

  it('is there before any post is, for the first pour', () => {
    const curve = siteOf({ air_temperature: '20 degC' }).strengthCurve(undefined);
    expect(curve.heading).toContain('first pour');
    expect(mark(curve, /^common wait/).x).toBe(48);
  });

  it('says why it can’t be drawn', () => {
    const { book } = strength({});
    addTyped(book, 'temperatures', { from: '3', temperature: '20 degC' });
    const curve = book.strengthCurve(book.sheet('cure')!.rowId(0));
    expect(curve.lines).toEqual([]);
    expect(curve.waits).toContain('time of the pour, or before it');
  });
});
