import { describe, expect, it } from 'vitest';
import { addTyped, amount, cellOf, expectPlainStops, siteOf, stopsOf, typeInto } from './site.ts';
import { crewLines } from '../../src/output/index.ts';
import { expectNear } from '../trade/si.ts';

const POURED = { pour_time: '2026-10-14 09:00' };
const HOLES = [{ remedy: 'replace' }, { remedy: 'replace' }];
const poured = (inputs: Record<string, string> = {}) => siteOf({ ...POURED, ...inputs }, HOLES);

/** A site with a log of hour and temperature. */
function logged(readings: readonly (readonly [string, string])[], inputs = {}) {
  const book = poured(inputs);
  for (const [from, temperature] of readings) addTyped(book, 'temperatures', { from, temperature });
  return book;
}

describe('the wait before rehanging', () => {
  // ACI 209R-92, type I: 500 of 2,500 psi at 23.1 h at 20 degC; with 5,000 K at 58 h at 5 degC. 48 h is common practice.
  it.each([
    { at: '20 degC', strength: 23.13, wait: 48, governs: 'common wait', from: '2026-10-16 09:00' },
    { at: '5 degC', strength: 58.0, wait: 58.0, governs: 'strength', from: '2026-10-16 19:15' },
  ])('is $wait h at $at', ({ at, strength, wait, governs, from }) => {
    const book = poured({ air_temperature: at });
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), strength, 0.05);
    expectNear(amount(book, 'cure', '1', 'wait', 'h'), wait, 0.05);
    expect(cellOf(book, 'cure', '1', 'governs').text).toBe(governs);
    expect(cellOf(book, 'cure', '1', 'rehang_after').text).toBe(from);
  });

  it('is the same by a log that never changes', () => {
    const book = logged([['0', '5 degC']]);
    expectNear(amount(book, 'cure', '1', 'wait', 'h'), 58, 0.05);
    expect(cellOf(book, 'cure', '1', 'model').text).toBe('equivalent age, logged');
  });

  it('stands on the common wait alone where no temperature is known, and says so', () => {
    const book = poured();
    expect(cellOf(book, 'cure', '1', 'strength_wait').state).toBe('waiting');
    expect(amount(book, 'cure', '1', 'wait', 'h')).toBe(48);
    const [caution] = stopsOf(book, 'cure', 'strength_unchecked');
    expect(caution?.level).toBe('caution');
    expect(stopsOf(poured({ air_temperature: '20 degC' }), 'cure', 'strength_unchecked')).toEqual(
      [],
    );
    expectPlainStops(book, 'cure');
  });

  it.each([
    { rule: 'the common wait', wait: 48 },
    { rule: 'the strength', wait: 58.03 },
  ])('follows $rule where that was chosen', ({ rule, wait }) => {
    const book = poured({ air_temperature: '5 degC', rehang_rule: rule });
    expectNear(amount(book, 'cure', '1', 'wait', 'h'), wait, 0.05);
  });

  it('takes the wait printed on the bag', () => {
    const book = poured();
    const bags = book.sheet('bags')!;
    typeInto(book, 'bags', bags.rowId(0), { set_hours: '4 h' });
    expect(amount(book, 'cure', '1', 'common_wait', 'h')).toBe(4);
  });

  it('needs the mix to reach the strength at all', () => {
    const book = poured({ mix_strength: '400 psi', air_temperature: '20 degC' });
    expect(cellOf(book, 'job', '', 'rehang_age').note).toContain('1.1765');
  });

  it('shows the strength that it will have then, and a second opinion', () => {
    // ACI 209R-92, type I at 2 days: 2/(4 + 1.7) = 0.3509 of 2,500 psi. Nurse-Saul, datum -10 degC: half as fast at 5 degC.
    const mild = poured({ air_temperature: '20 degC' });
    expectNear(amount(mild, 'cure', '1', 'strength_then', 'psi'), 877, 0.5);
    const cold = poured({ air_temperature: '5 degC' });
    expectNear(amount(cold, 'cure', '1', 'maturity_wait', 'h'), 46.3, 0.05);
  });
});

describe('a log of temperatures', () => {
  const NIGHT = [
    ['0', '20 degC'],
    ['10', '5 degC'],
  ] as const;

  it('counts each reading until the next', () => {
    // Hand-worked: 10 h at 20 degC leave 13.125 h, at a rate of 0.3986: 10 + 32.9 h.
    expectNear(amount(logged(NIGHT), 'cure', '1', 'strength_wait', 'h'), 42.93, 0.05);
  });

  it('passes over a blank line, wherever it stands', () => {
    const [first, second] = NIGHT;
    const book = logged([['', ''], first, ['', ''], second, ['30', ''], ['', '']]);
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 42.93, 0.05);
  });

  it('serves a post poured later from its own hour on', () => {
    const book = logged(NIGHT);
    const row = book.sheet('cure')!.rowId(1);
    typeInto(book, 'cure', row, { poured_at: '2026-10-14 19:00' });
    expectNear(amount(book, 'cure', '2', 'strength_wait', 'h'), 58.03, 0.05);
    expect(cellOf(book, 'cure', '2', 'rehang_after').text).toBe('2026-10-17 05:15');
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 42.93, 0.05);
    expect(cellOf(book, 'job', '', 'all_rehung_after').text).toBe('2026-10-17 05:15');
  });

  it('may begin before the first pour', () => {
    const book = logged([
      ['-5', '35 degC'],
      ['0', '20 degC'],
    ]);
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 23.13, 0.05);
    expectNear(amount(book, 'temperatures', '0', 'equivalent', 'h'), 1, 1e-9);
  });

  it('takes times of day as well as hours', () => {
    const book = poured();
    addTyped(book, 'temperatures', { at: '2026-10-14 09:00', temperature: '20 degC' });
    addTyped(book, 'temperatures', { at: '2026-10-14 19:00', temperature: '5 degC' });
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 42.93, 0.05);
  });

  it('shows maturity, equivalent age and strength as they grow', () => {
    // Hand-worked: 10 h at 30 K over the datum and 1 h at 15 K; 3 days at 10 degC are 1.6425 days, 0.3044 of the mix.
    const book = logged(NIGHT);
    expectNear(amount(book, 'temperatures', '10', 'maturity_gained', 'degC*h'), 315, 1e-6);
    const long = logged([
      ['0', '10 degC'],
      ['72', '10 degC'],
    ]);
    expectNear(amount(long, 'temperatures', '0', 'equivalent', 'day'), 1.6425, 0.0005);
    expectNear(amount(long, 'temperatures', '0', 'strength', 'psi'), 0.3044 * 2500, 0.3);
  });

  it('stops at readings out of order rather than work with them', () => {
    const book = logged([...NIGHT, ['8', '12 degC']]);
    expect(stopsOf(book, 'temperatures', 'out_of_order')).toHaveLength(1);
    expect(cellOf(book, 'cure', '1', 'strength_wait').state).toBe('wrong');
    expect(cellOf(book, 'cure', '1', 'rehang_after').state).toBe('wrong');
  });

  it('asks for a reading at the pour where it begins later', () => {
    const cell = cellOf(logged([['3', '20 degC']]), 'cure', '1', 'strength_wait');
    expect(cell.state).toBe('wrong');
    expect(cell.note).toContain('time of the pour, or before it');
  });

  it('is gone without a trace once its lines are removed', () => {
    const book = logged(NIGHT, { air_temperature: '20 degC' });
    const sheet = () => book.sheet('temperatures')!;
    while (sheet().rowCount > 0) book.removeRow('temperatures', sheet().rowId(0));
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 23.13, 0.05);
  });
});

describe('warnings for the pour', () => {
  const rules = (book: ReturnType<typeof poured>) =>
    book
      .stops()
      .filter(({ sheet }) => sheet === 'cure')
      .map(({ rule }) => rule);

  // Portland Cement Association: cold under 40 degF, no freezing before 500 psi. ACI 305.1: 95 degF at most at the pour.
  it.each([
    { weather: 'a mild day', readings: [['0', '60 degF']], said: [] },
    { weather: '40 degF, on the line', readings: [['0', '40 degF']], said: [] },
    { weather: 'a cold night', readings: [['0', '60 degF'], ['10', '38 degF']], said: ['cold_readings'] }, // prettier-ignore
    { weather: 'a frost', readings: [['0', '60 degF'], ['10', '30 degF'], ['18', '60 degF']], said: ['freezing'] }, // prettier-ignore
    {
      weather: 'a frost long after',
      readings: [
        ['0', '70 degF'],
        ['200', '20 degF'],
      ],
      said: [],
    },
    { weather: 'a heat wave', readings: [['0', '96 degF']], said: ['hot_pour'] },
    {
      weather: 'heat after the pour',
      readings: [
        ['0', '80 degF'],
        ['3', '97 degF'],
      ],
      said: [],
    },
  ] as const)('say $said of $weather', ({ readings, said }) => {
    expect([...new Set(rules(logged(readings)))]).toEqual(said);
  });

  it.each([
    { hour: '2', said: ['rain'] },
    { hour: '8', said: [] },
  ])('say $said of rain at hour $hour', ({ hour, said }) => {
    const book = logged([['0', '60 degF']]);
    addTyped(book, 'temperatures', { from: hour, temperature: '60 degF', rain: 'yes' });
    expect([...new Set(rules(book))]).toEqual(said);
  });

  // Portland Cement Association: 500 psi before it freezes. Concrete that gains nothing never gets there.
  it.each([
    {
      frost: 'a frost in the night',
      readings: [
        ['0', '45 degF'],
        ['12', '28 degF'],
        ['24', '50 degF'],
      ],
    },
    {
      frost: 'a frost that the log ends in',
      readings: [
        ['0', '45 degF'],
        ['12', '28 degF'],
      ],
    },
    {
      frost: 'freezing on the line, and no more readings',
      readings: [
        ['0', '45 degF'],
        ['12', '32 degF'],
      ],
    },
  ] as const)('give no rehang date for $frost', ({ readings }) => {
    for (const rehang_rule of ['the later', 'the common wait']) {
      const book = logged(readings, rehang_rule === 'the later' ? {} : { rehang_rule });
      expect(cellOf(book, 'cure', '1', 'rehang_after').state).toBe('blank');
      expect(cellOf(book, 'job', '', 'all_rehung_after').text).toBe('');
      expect(amount(book, 'job', '', 'visits')).toBe(2);
      const stops = book.stops().filter(({ sheet, level }) => sheet === 'cure' && level === 'stop');
      expect(stops.map(({ rule, rowName }) => `${rule} ${rowName}`)).toEqual([
        'freezing post 1',
        'freezing post 2',
      ]);
      expect(stops[0]?.message).toMatch(/32 degF.*500 psi/);
      expect(crewLines(book).map(({ rehangAfter }) => rehangAfter)).toEqual(
        Array(2).fill('no date: it may freeze first'),
      );
      const curve = book.strengthCurve(book.sheet('cure')!.rowId(0));
      expect(curve.marks.map(({ label }) => label).join()).not.toContain('rehang from');
      expect(curve.notes.join(' ')).toContain('may freeze');
    }
  });

  it('keep the date of a post poured after the frost', () => {
    const book = logged([['0', '30 degF'], ['24', '60 degF']]); // prettier-ignore
    typeInto(book, 'cure', book.sheet('cure')!.rowId(1), { poured_at: '2026-10-15 09:00' });
    expect(cellOf(book, 'cure', '1', 'freezes').text).toBe('yes');
    expect(cellOf(book, 'cure', '2', 'freezes').text).toBe('no');
    expect(cellOf(book, 'cure', '2', 'rehang_after').text).toBe('2026-10-17 09:00');
  });

  it('say a mean air of frost once a post, in no unit that was not typed', () => {
    const book = poured({ air_temperature: '28 degF' });
    const said = book.stops().filter(({ sheet }) => sheet === 'cure');
    expect(new Set(said.map(({ message }) => message)).size).toBe(1);
    expect(said.map(({ message }) => message).join()).not.toMatch(/2\.2222|last reading/);
  });

  it('name the hours of rain that count', () => {
    const book = logged([['0', '60 degF']], { rain_hours: '4 h' });
    addTyped(book, 'temperatures', { from: '2', temperature: '60 degF', rain: 'yes' });
    expect(stopsOf(book, 'cure', 'rain')[0]?.message).toContain('4 h');
  });

  it('say that a log is there and does not count', () => {
    const book = siteOf({}, HOLES);
    addTyped(book, 'temperatures', { at: '2026-10-14 06:00', temperature: '45 degF' });
    expect(rules(book)).toEqual(['log_not_read']);
    expect(stopsOf(book, 'temperatures', 'not_counted')).toHaveLength(1);
    const { notes } = book.strengthCurve(book.sheet('cure')!.rowId(0));
    expect(notes.join(' ')).toContain('none of it counts yet');
    expect(notes.join(' ')).not.toContain('No temperature is entered');
  });

  it('stop rails planned before the concrete is ready', () => {
    const book = poured({ air_temperature: '5 degC' });
    const row = book.sheet('cure')!.rowId(0);
    typeInto(book, 'cure', row, { rehung_at: '2026-10-16 09:00' });
    expect(stopsOf(book, 'cure', 'early_rehang')[0]?.level).toBe('stop');
    typeInto(book, 'cure', row, { rehung_at: '2026-10-16 19:15' });
    expect(stopsOf(book, 'cure', 'early_rehang')).toEqual([]);
  });

  it('are silent on an empty notebook', () => {
    expect(siteOf({}).stops().filter(({ sheet }) => /cure|temperatures/.test(sheet))).toEqual([]); // prettier-ignore
  });
});
