import { describe, expect, it } from 'vitest';
import { bringInTemperatures, readTemperatureLog } from '../../src/intake/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { siteOf } from '../worksheet/site.ts';

function read(text: string) {
  return readTemperatureLog(new TextEncoder().encode(text));
}

describe('a temperature log', () => {
  it('is found by its head, and every line is accounted for', () => {
    const log = read('Forecast\nHour;Temp (C);Rain\n0;5;no\n;;\n12;;\n24;5;yes\n');
    expect(log !== undefined && !isProblem(log) && log).toEqual({
      rows: [
        new Map([
          ['from', '0 h'],
          ['temperature', '5 degC'],
          ['rain', 'no'],
        ]),
        new Map([
          ['from', '24 h'],
          ['temperature', '5 degC'],
          ['rain', 'yes'],
        ]),
      ],
      linesRead: 5,
      passedOver: [
        { line: 1, why: 'a line above the header' },
        { line: 2, why: 'the header' },
        { line: 5, why: 'no temperature' },
      ],
    });
  });

  it('takes hours as dates, and each cell’s own unit', () => {
    const log = read('Time,Temperature\n2026-10-14 07:30,41 F\n');
    expect(log !== undefined && !isProblem(log) && [...(log.rows[0] ?? [])]).toEqual([
      ['at', '2026-10-14 07:30'],
      ['temperature', '41 F'],
    ]);
  });

  it.each([
    {
      as: 'day and time apart, and rain in inches',
      text: 'Date,Time,Temp (F),Rain (in)\n2026-10-14,06:00,48,0\n2026-10-14,15:00,58,0.2\n',
      rows: [
        { at: '2026-10-14 06:00', temperature: '48 degF', rain: 'no' },
        { at: '2026-10-14 15:00', temperature: '58 degF', rain: 'yes' },
      ],
    },
    {
      as: 'one head for both, and precipitation',
      text: 'Date/Time,Temp (F),Precip (in)\n10/14/2026 6:00 AM,48,0.1\n10/14/2026 9:00 PM,41,0.0\n',
      rows: [
        { at: '10/14/2026 6:00 AM', temperature: '48 degF', rain: 'yes' },
        { at: '10/14/2026 9:00 PM', temperature: '41 degF', rain: 'no' },
      ],
    },
    {
      as: 'a timestamp, and a chance of rain that is none',
      text: 'Timestamp,air_temp_c,Rain (%)\n2026-10-14T06:00,9,40\n',
      rows: [{ at: '2026-10-14T06:00', temperature: '9 degC' }],
    },
    {
      as: 'the hour of a day',
      text: 'Date,Hour,Temp (F),Rain\n2026-10-14,6,48,trace\n2026-10-14,0700,50,5 mm\n',
      rows: [
        { at: '2026-10-14 6:00', temperature: '48 degF', rain: 'yes' },
        { at: '2026-10-14 07:00', temperature: '50 degF', rain: 'yes' },
      ],
    },
  ])('takes $as', ({ text, rows }) => {
    const log = read(text);
    if (log === undefined || isProblem(log)) throw new Error('no log');
    expect(log.rows.map((row) => Object.fromEntries(row))).toEqual(rows);
    expect(log.passedOver).toEqual([{ line: 1, why: 'the header' }]);
  });

  it('counts on the sheet once the first pour is known', () => {
    const book = siteOf({ pour_time: '2026-10-14 06:00' });
    const log = read(
      'Date,Time,Temp (F),Rain (in)\n2026-10-14,06:00,48,0\n2026-10-14,15:00,58,0.2\n',
    );
    if (log === undefined || isProblem(log)) throw new Error('no log');
    bringInTemperatures(log, 'log.csv', book.notebook);
    const sheet = book.sheet('temperatures')!;
    expect([0, 1].map((row) => sheet.cell(row, 'from').text)).toEqual(['0', '9']);
    expect([0, 1].map((row) => sheet.cell(row, 'rain').text)).toEqual(['no', 'yes']);
  });

  it('passes over a day without a time, rather than take it for midnight', () => {
    const log = read('Date,Time,Temp (F)\n2026-10-14,06:00,48\n2026-10-15,,50\n');
    expect(log !== undefined && !isProblem(log) && log.passedOver).toEqual([
      { line: 1, why: 'the header' },
      { line: 3, why: 'no time' },
    ]);
  });

  it('asks for the unit of bare degrees', () => {
    const log = read('Hour,Temp\n0,41\n');
    expect(isProblem(log) && log.fix).toContain('Temperature (F)');
  });

  it('is not taken from a list of posts', () => {
    expect(read('Post,Lean gap,Over\n1,1/4,48\n')).toBeUndefined();
  });

  // ACI 209R-92 with Arrhenius at 5000 K: 500 of 2,500 psi is 23.1 h at 20 degC and 58.0 h at 5.
  it('moves the rehanging of the posts, and comes out again as one act', () => {
    const book = siteOf({}, [{ rock_test: 'snapped' }]);
    const log = read('Hour,Temp (C)\n0,5\n');
    if (log === undefined || isProblem(log)) throw new Error('no log');
    const wait = () => book.sheet('cure')?.cell(0, 'strength_wait').value;
    expect(wait()).toBeUndefined();
    bringInTemperatures(log, 'log.csv', book.notebook);
    expect(Number(wait()) / 3600).toBeCloseTo(58, 0);
    book.undo();
    expect(wait()).toBeUndefined();
  });
});
