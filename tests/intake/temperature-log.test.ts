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
      linesRead: 3,
      passedOver: [{ line: 5, why: 'no temperature' }],
    });
  });

  it('takes hours as dates, and each cell’s own unit', () => {
    const log = read('Time,Temperature\n2026-10-14 07:30,41 F\n');
    expect(log !== undefined && !isProblem(log) && [...(log.rows[0] ?? [])]).toEqual([
      ['at', '2026-10-14 07:30'],
      ['temperature', '41 F'],
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
