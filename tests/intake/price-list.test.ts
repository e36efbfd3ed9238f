import { describe, expect, it } from 'vitest';
import { bringInPrices, readPriceList, type PriceList } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';

function listOf(text: string): PriceList {
  const list = readPriceList(new TextEncoder().encode(text));
  if (list === undefined || isProblem(list)) throw new Error('no list');
  return list;
}

const YARD =
  'Our yard, spring\nItem,Size,Length,Price\npost,4x4,10 ft,22.50\n,,,3\nrail,2x4,8 ft,5.10\n';

describe('a yard’s price list', () => {
  it('is found by its head, below a title, and every line is accounted for', () => {
    const list = listOf(YARD);
    expect(list.rows.map((row) => row.get('price'))).toEqual(['22.50', '5.10']);
    expect(list.passedOver).toEqual([
      { line: 1, why: 'a line above the header' },
      { line: 2, why: 'the header' },
      { line: 4, why: 'no item' },
    ]);
    expect(list.linesRead).toBe(5);
  });

  it('takes the yard’s words for an item as the list’s own', () => {
    const list = listOf('Item,Price\nPosts,1\nFence pickets,2\nConcrete,3\nScrews,4\nHinges,5\n');
    expect(list.rows.map((row) => row.get('item'))).toEqual([
      'post',
      'board',
      'concrete mix',
      'rail screws',
      'Hinges',
    ]);
  });

  it('takes a description for the item, and what each costs for the price', () => {
    const list = listOf('Description,Size,Length,Each\nFence post,4x4,8 ft,11.80\n');
    expect(Object.fromEntries(list.rows[0]!)).toEqual({
      item: 'post',
      size: '4x4',
      length: '8 ft',
      price: '11.80',
    });
  });

  it('is not taken from a list of posts, though one column prices them', () => {
    const posts = 'Post No,Item,Lean gap,Price\n1,post,1/4,3\n';
    expect(readPriceList(new TextEncoder().encode(posts))).toBeUndefined();
  });

  it('asks for one head a column', () => {
    const read = readPriceList(new TextEncoder().encode('Item,Price,Unit price\npost,1,2\n'));
    expect(isProblem(read) && read.found).toContain('price');
  });

  it('goes over the prices that stand, leaves the rest, and can be taken back', () => {
    const notebook = new Notebook(startDocument('job'));
    bringInPrices(listOf(YARD), 'spring.csv', notebook);
    bringInPrices(listOf('Item,Size,Length,Price\npost,4x4,10 ft,24.00\n'), 'fall.csv', notebook);
    const prices = () => notebook.rows('prices').map(({ cells }) => cells.get('price'));
    expect(prices()).toEqual(['24.00', '5.10']);
    notebook.undo();
    expect(prices()).toEqual(['22.50', '5.10']);
  });
});
