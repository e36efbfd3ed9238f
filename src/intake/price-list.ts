import { decode, records } from '../csv/index.ts';
import type { Change, Notebook, Row } from '../notebook/index.ts';
import { isProblem, problem, type Problem } from '../units/index.ts';
import { linesToHead, type PassedListLine } from './list-head.ts';

/** A yard's prices as they stand in a file, by column of the prices sheet. */
export interface PriceList {
  readonly rows: readonly ReadonlyMap<string, string>[];
  readonly linesRead: number;
  /** Lines that hold no item, and why. */
  readonly passedOver: readonly PassedListLine[];
}

const WORDS: readonly (readonly [column: string, heads: RegExp])[] = [
  ['second_price', /^(second (yard|price)|price,? second yard|other (yard|price))$/],
  [
    'price',
    /^(price|unit (price|cost)|price each|each|cost each|first (yard|price)|price,? first yard|cost)$/,
  ],
  ['item', /^(item|product|material|article|description|item description)$/],
  ['size', /^(size|nominal size|dimension)$/],
  ['length', /^(length|len|stock length)$/],
  ['note', /^(note|notes|remark|remarks|substitute)$/],
];
const KEY = ['item', 'size', 'length'];
// What yards call the items of the materials sheet; anything else stays as they wrote it.
const ITEMS: readonly (readonly [item: string, names: RegExp])[] = [
  ['post', /^(fence )?posts?$/],
  ['rail', /^((fence|back) )?rails?$/],
  ['board', /^((fence )?(boards?|pickets?)|palings?)$/],
  ['concrete mix', /^((post|bagged) )?(concrete|cement)( mix)?( bags?)?$|^(post )?mix$/],
  ['gravel', /^((drainage|drain) )?(gravel|stone)( bags?)?$/],
  ['rail screws', /^(rail |deck )?screws?$/],
  ['board screws', /^(board|picket|fence) screws?$/],
  ['rail bracket', /^(rail |fence )?brackets?$/],
  ['post cap', /^(post )?caps?$/],
  ['form tube', /^(form |concrete )?(tubes?|forms?)$/],
  ['post mender', /^(post )?menders?$/],
  ['locate flag', /^(locate |marking )?flags?$/],
  ['prop', /^props?$/],
  ['stake', /^stakes?$/],
];

/** Reads a yard's price list; undefined where the file is not one, because no line heads an item and a price. */
export function readPriceList(bytes: Uint8Array): PriceList | Problem | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return undefined;
  const all = records(decoded.text).records;
  const at = all.findIndex(({ cells }) => {
    const columns = cells.map(columnOf);
    return columns.includes('item') && columns.includes('price') && !cells.some(isLean);
  });
  const head = all[at];
  if (!head) return undefined;
  const columns = head.cells.map(columnOf);
  const doubled = columns.find(
    (column, place) => column !== undefined && columns.indexOf(column) !== place,
  );
  if (doubled !== undefined) {
    return problem(
      `Price list, line ${String(head.line)}`,
      `Two columns would fill “${doubled}”.`,
      'Give each column a head of its own: Item, Size, Length, Price, Second yard.',
    );
  }
  const rows: ReadonlyMap<string, string>[] = [];
  const passedOver = linesToHead(all, at);
  for (const { cells, line } of all.slice(at + 1)) {
    const row = new Map<string, string>();
    columns.forEach((column, place) => {
      const text = (cells[place] ?? '').trim();
      if (column !== undefined && text !== '')
        row.set(column, column === 'item' ? itemOf(text) : text);
    });
    if (row.has('item')) rows.push(row);
    else if (cells.some((cell) => cell.trim() !== '')) passedOver.push({ line, why: 'no item' });
  }
  return { rows, linesRead: rows.length + passedOver.length, passedOver };
}

/** Puts a price list on the prices sheet: over the prices of the same item, size and length, and under the rest. One act that can be undone. */
export function bringInPrices(list: PriceList, name: string, notebook: Notebook): void {
  const standing = new Map(notebook.rows('prices').map((row) => [keyOf(row.cells), row]));
  const changes: Change[] = [];
  const fresh: Map<string, ReadonlyMap<string, string>> = new Map();
  for (const cells of list.rows) {
    const key = keyOf(cells);
    const row = standing.get(key);
    if (!row) fresh.set(key, new Map([...(fresh.get(key) ?? []), ...cells]));
    else {
      for (const [column, after] of cells) {
        const before = row.cells.get(column);
        if (before !== after)
          changes.push({ edit: 'cell', sheet: 'prices', row: row.id, column, before, after });
      }
    }
  }
  const ids = notebook.freshIds(fresh.size);
  const rows = [...fresh.values()].map((cells, at): Row => ({
    id: ids[at] ?? '',
    cells: new Map(cells),
  }));
  if (rows.length > 0) {
    changes.push({ edit: 'add rows', sheet: 'prices', at: notebook.rows('prices').length, rows });
  }
  if (changes.length > 0) notebook.do(`bring in ${name}`, changes);
}

function itemOf(text: string): string {
  const words = text.toLowerCase().replace(/\s+/g, ' ').trim();
  return ITEMS.find(([, names]) => names.test(words))?.[0] ?? text;
}

function columnOf(head: string): string | undefined {
  const words = head
    .toLowerCase()
    .replace(/\(.*\)/, '')
    .replace(/\s+/g, ' ')
    .trim();
  return WORDS.find(([, heads]) => heads.test(words))?.[0];
}

// A list of posts may price them too, and is still a list of posts.
function isLean(head: string): boolean {
  return /\b(lean|gap|plumb|station|post no)\b/i.test(head);
}

function keyOf(cells: ReadonlyMap<string, string>): string {
  return KEY.map((column) => (cells.get(column) ?? '').toLowerCase().replace(/\s+/g, ' ')).join(
    '|',
  );
}
