import { describe, expect, it } from 'vitest';
import { amount, cellOf, expectPlainStops, run, siteOf, stopsOf } from './site.ts';
import { expectNear } from '../trade/si.ts';

const propped = (inputs: Record<string, string> = {}, cells: Record<string, string> = {}) =>
  siteOf({ ground_gap: '0 in', ...inputs }, run(3, 8, cells));

describe('bracing', () => {
  it('stands at every post that is replaced or plumbed again, and at no other', () => {
    const book = siteOf({}, [
      { remedy: 'replace' },
      { remedy: 're-plumb' },
      { remedy: 'mend' },
      { remedy: 'leave' },
      {},
    ]);
    const sheet = book.sheet('bracing')!;
    expect(Array.from({ length: sheet.rowCount }, (_, at) => sheet.rowKey(at))).toEqual(['1', '2']);
  });

  // NDS 2018 Table L3: No. 10 is 0.190 in; 3 in less the 1 1/2 in of a prop is 1 1/2 in.
  it('shows how far a screw reaches beside the 6 and 10 diameters it needs', () => {
    const book = propped();
    expectNear(amount(book, 'bracing', '1', 'screw_reaches', 'in'), 1.5, 1e-9);
    expectNear(amount(book, 'bracing', '1', 'least_reach', 'in'), 1.14, 1e-9);
    expectNear(amount(book, 'bracing', '1', 'full_reach', 'in'), 1.9, 1e-9);
  });

  it('is harmless on an empty notebook', () => {
    const book = siteOf({});
    expect(book.stops().filter(({ sheet }) => sheet === 'bracing')).toEqual([]);
  });

  // Hand-worked: 48 in up and out is 67.9 in at 45 deg; 1.3 x 0.00256 V^2 on 6 x 8 ft is 100 lb at
  // 25 mph and 256 at 40; x 36/48 x sqrt(2) along the prop.
  it.each([
    { gust: '25 mph', wind: 99.84, load: 105.9 },
    { gust: '40 mph', wind: 255.6, load: 271.1 },
  ])('puts $load lbf on a prop at $gust', ({ gust, wind, load }) => {
    const book = propped({ working_wind: gust });
    expectNear(amount(book, 'bracing', '2', 'length', 'in'), 67.9, 0.05);
    expectNear(amount(book, 'bracing', '2', 'angle', 'deg'), 45, 1e-9);
    expectNear(amount(book, 'bracing', '2', 'wind', 'lbf'), wind, 0.05);
    expectNear(amount(book, 'bracing', '2', 'load', 'lbf'), load, 0.1);
  });

  it('shares the load among the props on one side', () => {
    const [one, two] = ['1', '2'].map((each) => propped({ props_each_side: each }));
    expectNear(
      amount(two!, 'bracing', '2', 'load') * 2,
      amount(one!, 'bracing', '2', 'load'),
      1e-9,
    );
    expect(amount(two!, 'bracing', '2', 'props')).toBe(4);
  });

  it('gives a No. 10 x 3 1/2 in through 1 1/2 in no more than the rail can grip', () => {
    // NDS 2018 Table 12L: No. 10, side 1 1/2 in, G 0.50 has 117 lb; 1 1/2 in of rail is 0.789 of 10 diameters.
    const book = propped({ screw_length: '3 1/2 in', wood_gravity: '0.50' });
    expectNear(amount(book, 'bracing', '2', 'screw_reaches', 'in'), 1.5, 1e-9);
    expectNear(amount(book, 'bracing', '2', 'screw_value', 'lbf'), 117 * 0.789, 0.6);
  });

  it('refuses a screw that bites under six diameters, and says what to do', () => {
    // No. 10 x 2 1/2 in through 1 1/2 in leaves 1.0 in, under 6 x 0.190 = 1.14 in.
    const book = propped({ screw_length: '2 1/2 in' });
    const cell = cellOf(book, 'bracing', '2', 'screw_value');
    expect(cell.state).toBe('wrong');
    expect(cell.note).toContain('1.14 in');
    expect(cell.note).toContain('longer');
    expect(book.stops().filter(({ message }) => message.includes('1.14 in'))).toHaveLength(1);
  });

  it('stops where a prop takes more than its screws hold', () => {
    // 271 lbf against 78 lbf a screw: four, where three are planned.
    const book = propped({ working_wind: '40 mph' });
    expect(amount(book, 'bracing', '2', 'screws_needed')).toBe(4);
    expect(stopsOf(book, 'bracing', 'too_few_screws')[0]?.message).toContain('4');
    expect(stopsOf(propped(), 'bracing', 'too_few_screws')).toEqual([]);
  });

  it('says that propped fences fall and that props may be banned for good', () => {
    const book = propped();
    expect(stopsOf(book, 'bracing', 'propped_fence')[0]?.message).toContain('under a jack');
    expect(stopsOf(book, 'bracing', 'bracing_ban')[0]?.message).toContain('local code');
    expectPlainStops(book, 'bracing');
  });

  it('works in millimeters with sizes as they stand', () => {
    const metric = { units: 'metric', fence_height: '1.8 m', rail_size: '75 x 50 mm' };
    const book = propped({ ...metric, prop_size: '75 x 38 mm' });
    expect(cellOf(book, 'bracing', '2', 'screw_value').state).toBe('known');
    expectNear(amount(book, 'bracing', '2', 'screw_reaches', 'mm'), 37, 1e-9);
  });
});
