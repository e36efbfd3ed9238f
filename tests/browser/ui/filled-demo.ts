import readings from '../../../demo-data/tannery-lane.csv?raw';
import settings from '../../../demo-data/tannery-lane.job.json?raw';
import { bringIn, intakeColumns, readSite } from '../../../src/intake/index.ts';
import { Notebook } from '../../../src/notebook/index.ts';
import { isProblem, sentence } from '../../../src/units/index.ts';
import {
  applyJobFile,
  openBook,
  readJobFile,
  startDocument,
  type Book,
} from '../../../src/worksheet/index.ts';

/** The demo job as it is opened. */
export function demoBook(): Book {
  const demo = openBook(new Notebook(startDocument('Tannery Lane')));
  const bytes = new TextEncoder().encode(readings);
  const columns = intakeColumns(demo.sheet('posts')?.columns ?? [], new Map());
  const intake = readSite(bytes, 'tannery-lane.csv', columns);
  if (isProblem(intake)) throw new Error(sentence(intake));
  bringIn(intake, { name: 'tannery-lane.csv', bytes }, demo.notebook);
  applied(settings, demo);
  return demo;
}

/** The demo job with what an estimator would go on to type: its ask answered, prices and rates, odd readings, a way chosen on rock. */
export function filledDemo(): Book {
  const book = demoBook();
  applied(JSON.stringify(MORE), book);
  return book;
}

function applied(text: string, book: Book): void {
  const file = readJobFile(text);
  const wrong = isProblem(file) ? file : applyJobFile(file, book);
  if (wrong) throw new Error(sentence(wrong));
}

// Invented, so that every column has something to work out.
const MORE = {
  inputs: {
    new_pickets: 'yes',
    slope_way: 'stepped, each bay alike',
    crew_rate: '48',
    travel_charge: '35',
    dump_charge: '60',
    treated_charge: '20',
    permit_fee: '40',
    overhead: '10%',
    profit_way: 'margin of price',
    profit_rate: '20%',
    tax_rule: 'materials at price',
    tax_rate: '7%',
    deposit_share: '10%',
    deposit_cap: '1000',
    quote_date: '2026-10-17',
    air_temperature: '50 degF',
  },
  entries: {
    posts: {
      1: { top_above_line: '0 in', gap_mid: '1/8 in' },
      2: {
        free_end: 'yes',
        lean_gap_along: '1/4 in',
        along_toward: 'E',
        move_low: '1/8 in',
        height_low: '6 in',
        move_high: '1/2 in',
        height_high: '60 in',
        top_above_line: '1/4 in',
      },
      3: { free_end: 'yes', method: 'new hole beside', top_above_line: '0 in', drop: '3 in' },
      4: { free_end: 'yes' },
      5: { free_end: 'yes', method: 'move the line', remedy: 'replace', tree_diameter: '14 in' },
      6: { diagonal_long: '74 in', diagonal_short: '72 1/2 in', leaf_height: '60 in' },
      7: { lean_gap: '5/8 in' },
    },
    holes: { 4: { rock_choice: 'driven post' } },
    bags: { '80 lb': { price: '6.50' } },
    prices: [
      { item: 'post', size: '4x4', length: '10 ft', price: '21', second_price: '23' },
      { item: 'steel post', length: '10 ft', price: '34', second_price: '33' },
      { item: 'rail', length: '8 ft', price: '6', second_price: '5.80' },
      { item: 'rail', length: '10 ft', price: '7.40', second_price: '7.60' },
      { item: 'rail', length: '16 ft', price: '12', second_price: '12.50' },
      { item: 'board', size: '1x6', length: '6 ft', price: '3.20', second_price: '3.40' },
      { item: 'concrete mix', size: '80 lb', price: '6.50', second_price: '6.70' },
      { item: 'gravel', price: '5', second_price: '5' },
      { item: 'rail screws', price: '11', second_price: '10' },
      { item: 'board screws', price: '9', second_price: '9' },
    ],
    return_visit: { 2: { gap_again: '1/16 in', along_again: '0 in', level_again: '48 in' } },
  },
};
