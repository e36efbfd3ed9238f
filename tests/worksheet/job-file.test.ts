import { describe, expect, it } from 'vitest';
import { isProblem, sentence } from '../../src/units/index.ts';
import { readJobFile } from '../../src/worksheet/index.ts';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf } from './site.ts';
import { shown, takeOff } from './take-off.ts';

const SITE =
  'Post,Lean gap,Level,Probe,Rock test\n1,1 in,48 in,1 in,loose\n2,0 in,48 in,0 in,firm\n';
const REPLACED = { posts: { 1: { remedy: 'replace' } } };

const said = (entries: object, inputs: object = {}): string => {
  try {
    takeOff(SITE, { inputs, entries });
  } catch (error) {
    return (error as Error).message;
  }
  return '';
};

describe('entries of a job file', () => {
  it('give a log of temperatures, by hour', () => {
    // Hand-worked: 5 degC throughout, 5,000 K, 23.13 h at 20 degC wanted: 58 h, and 48 by the common wait.
    const temperatures = { 0: { temperature: '5 degC' }, 24: { temperature: '41 degF' } };
    const book = takeOff(SITE, {
      inputs: { pour_time: '2026-10-14 08:00' },
      entries: { ...REPLACED, temperatures },
    });
    expect(shown(book, 'temperatures', 'from')).toEqual(['0', '24']);
    expect(cellOf(book, 'cure', '1', 'model').text).toBe('equivalent age, logged');
    expectNear(amount(book, 'cure', '1', 'strength_wait', 'h'), 58, 0.1);
    expect(cellOf(book, 'cure', '1', 'governs').text).toBe('strength');
  });

  it('give a log by day and time as a list, each with what it holds', () => {
    const temperatures = [
      { at: '2026-10-14 08:00', temperature: 52 },
      { at: '2026-10-14 20:00', temperature: '38 degF', rain: 'yes' },
    ];
    const book = takeOff(SITE, {
      inputs: { pour_time: '2026-10-14 08:00' },
      entries: { ...REPLACED, temperatures },
    });
    expect(shown(book, 'temperatures', 'from')).toEqual(['0', '12']);
    expect(shown(book, 'temperatures', 'temperature')).toEqual(['52', '38']);
    expect(shown(book, 'temperatures', 'counted')).toEqual(['yes', 'yes']);
  });

  it('type into a row that is there, and add the next to a sheet whose rows have numbers', () => {
    const prices = { 1: { item: 'post', price: '12' }, 2: { item: 'rail', price: '6.50' } };
    const book = takeOff(SITE, { entries: { prices, bags: { '80 lb': { price: '7.25' } } } });
    expect(shown(book, 'prices', 'item')).toEqual(['post', 'rail']);
    expect(cellOf(book, 'bags', '80 lb', 'price').text).toBe('7.25');
  });

  it('add a mix that stands in a list, which the job may then name', () => {
    const bags = [{ mix: '90 lb', weight: '90 lb', yield: '0.675 ft^3' }];
    const book = takeOff(SITE, { inputs: { mix: '90 lb' }, entries: { bags } });
    expect(cellOf(book, 'job', '', 'mix_yield').text).toBe('0.675');
  });

  it.each([
    [{ temperature: { 0: { temperature: '5 degC' } } }, 'Did you mean “temperatures”?'],
    [
      { temperatures: { 6: { temprature: '5 degC' } } },
      'entries, temperatures, 6: There is no column to type in “temprature”. Did you mean “temperature”?',
    ],
    [
      { temperatures: [{ from: '0 h' }, { degrees: '5' }] },
      'entries, temperatures, row 2: There is no column to type in “degrees”.',
    ],
    [{ temperatures: [{}] }, 'temperatures, row 1: Nothing is typed in it.'],
    [{ bags: { '80lb': { price: '7' } } }, 'There is no row “80lb”. Did you mean “80 lb”?'],
    [{ posts: { 33: { remedy: 'leave' } } }, 'To add rows, list them: "posts": [{...}].'],
    [{ prices: { 7: { item: 'post' } } }, 'There is no row “7”.'],
    [{ holes: [{ width: '12 in' }] }, 'holes, row 1: This sheet takes no rows of its own.'],
    [{ job: { job: { waste: '0' } } }, 'under “inputs”'],
  ])('that are nowhere in %j are told by sheet, row and column', (entries, words) => {
    expect(said(entries)).toContain(words);
  });

  it.each([
    [{ entries: { bags: { '80 lb': { price: null } } } }, 'entries, bags, 80 lb, price: null'],
    [{ entries: { temperatures: [{ rain: true }] } }, 'temperatures, row 1, rain: true'],
    [{ entries: { temperatures: 'cold' } }, 'temperatures: It is not an object.'],
    [{ inputs: { waste: ['10%'] } }, 'inputs, waste: ["10%"] there is not text.'],
    [{ columns: { Gap: false } }, 'columns, Gap: false there is not text.'],
  ])('that are no text in %j are told by place', (file, words) => {
    const read = readJobFile(JSON.stringify(file));
    expect(isProblem(read) ? sentence(read) : '').toContain(words);
  });
});
