import { describe, expect, it } from 'vitest';
import { Notebook } from '../../src/notebook/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { addTyped, cellOf, siteOf, typeInto } from './site.ts';
import { shown } from './take-off.ts';

// Everything here is invented.
function quoted() {
  const book = siteOf(
    {
      company: 'Invented Fence Co.', license: 'X-1', company_phone: '555-0100', first_yard: 'North yard',
      crew_rate: '62', profit_rate: '20%', tax_rate: '8%', warranty: 'two years',
      customer: 'A. Customer', site_address: '1 Invented Lane', frost_depth: '24 in', permit_fee: '90',
    },
    [{ remedy: 'replace' }],
  ); // prettier-ignore
  addTyped(book, 'prices', {
    item: 'post',
    size: '4x4',
    length: '10 ft',
    price: '22.50',
    second_price: '23',
  });
  typeInto(book, 'bags', book.sheet('bags')!.rowId(0), { price: '6' });
  typeInto(book, 'rates', book.sheet('rates')!.rowId(0), { dig_hours: '12 min' });
  typeInto(book, 'methods', book.sheet('methods')!.rowId(2), { banned: 'yes' });
  return book;
}

describe('a new job that takes over from another', () => {
  const next = openBook(new Notebook(startDocument('next', quoted().notebook.document)));
  const job = (column: string) => next.sheet('job')!.cell(0, column).typed;

  it('has the company’s details, its rates and the yards’ prices', () => {
    expect(
      ['company', 'license', 'company_phone', 'first_yard', 'crew_rate', 'warranty'].map(job),
    ).toEqual(['Invented Fence Co.', 'X-1', '555-0100', 'North yard', '62 USD', 'two years']);
    expect(cellOf(next, 'prices', '1', 'price').text).toBe('22.50');
    expect(cellOf(next, 'prices', '1', 'second_price').text).toBe('23.00');
    expect(cellOf(next, 'bags', '80 lb', 'price').text).toBe('6.00');
    expect(cellOf(next, 'rates', 'sand', 'dig_hours').text).toBe('12');
  });

  it('has nothing of the other site, its customer or its town', () => {
    expect(['customer', 'site_address', 'frost_depth', 'permit_fee'].map(job)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(next.sheet('posts')!.rowCount).toBe(0);
    expect(new Set(shown(next, 'methods', 'banned'))).toEqual(new Set(['no']));
  });

  it('shares nothing with it: what is typed here stays here', () => {
    const from = quoted();
    const book = openBook(new Notebook(startDocument('next', from.notebook.document)));
    typeInto(book, 'prices', book.sheet('prices')!.rowId(0), { price: '30' });
    expect(cellOf(from, 'prices', '1', 'price').text).toBe('22.50');
  });
});
