import type { Book } from '../../src/worksheet/index.ts';
import { addTyped, typeInto } from './site.ts';
import { sample } from './take-off.ts';

/** The snapped post of the price sheet's own test: every price and rate is invented, 833.82 in all. */
export function priced(): Book {
  const book = sample('D3-snapped', {
    crew_rate: '60', permit_fee: '0', travel_charge: '40', dump_charge: '85', treated_charge: '30',
    overhead: '10%', profit_way: 'margin of price', profit_rate: '20%', tax_rule: 'all', tax_rate: '8%',
    deposit_share: '10%',
  }); // prettier-ignore
  typeInto(book, 'bags', book.sheet('bags')!.rowId(0), { price: '6' });
  addTyped(book, 'prices', { item: 'post', size: '4x4', length: '10 ft', price: '22.50', second_price: '19' }); // prettier-ignore
  addTyped(book, 'prices', { item: 'concrete mix', size: '80 lb', price: '6', second_price: '7' });
  return book;
}
