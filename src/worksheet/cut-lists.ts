import { cutPlan, type CuttingPlan } from '../formula/index.ts';
import type { BookView, CutList, SheetView } from './view.ts';

interface Wanted {
  readonly length: number;
  readonly count: number;
}

/** The columns that the cutting plans are made from, by sheet. */
export const CUT_FROM = {
  job: [
    'kerf',
    'stock_lengths',
    'rail_size',
    'rail_lengths',
    'picket_size',
    'picket_lengths',
    'picket_length',
    'picket_waste',
  ],
  prices: ['key_length', 'post_section', 'post_price', 'rail_price', 'picket_price'],
  holes: ['post_length', 'post_section', 'each', 'post_size'],
  posts: ['rail_cut', 'rail_count', 'picket_count'],
};

/** The cutting plans behind the materials sheet, from the same cells. */
export function cutLists(book: BookView): readonly CutList[] {
  const job = book.sheet('job');
  const kerf = job && numberIn(job, 0, 'kerf');
  if (!job || kerf === undefined) return [];
  const paid = priceTable(book);
  const plan = (
    item: string,
    size: string,
    stocks: string,
    wanted: readonly Wanted[] | undefined,
    prices: readonly number[],
  ): readonly CutList[] => {
    const lengths = listIn(job, stocks);
    const found = wanted && lengths && cutPlan(wanted, lengths, paid.lengths, prices, kerf);
    return found && found.bars.length > 0 ? [{ item, size, ...grouped(found) }] : [];
  };
  return [
    ...postSizes(book).flatMap(({ size, section, wanted }) =>
      plan('post', size, 'stock_lengths', wanted, paid.ofSection(section)),
    ),
    ...plan(
      'rail',
      textIn(job, 'rail_size'),
      'rail_lengths',
      wantedIn(book.sheet('posts'), 'rail_cut', 'rail_count'),
      paid.of('rail_price'),
    ),
    ...plan(
      'board',
      textIn(job, 'picket_size'),
      'picket_lengths',
      boards(book, job),
      paid.of('picket_price'),
    ),
  ];
}

function grouped({ bars, ...rest }: CuttingPlan): Omit<CutList, 'item' | 'size'> {
  const alike = new Map<string, CutList['bars'][number]>();
  for (const { stock, pieces, offcut } of bars) {
    const key = [stock, ...pieces].join(' ');
    alike.set(key, { count: (alike.get(key)?.count ?? 0) + 1, stock, pieces, offcut });
  }
  return { ...rest, bars: [...alike.values()] };
}

// Posts of one section are planned together, by the name that the list has for them.
function postSizes(book: BookView) {
  const holes = book.sheet('holes');
  const sizes = new Map<string, { size: string; section: number; wanted: Wanted[] }>();
  for (const row of rowsOf(holes)) {
    const length = holes && numberIn(holes, row, 'post_length');
    const section = holes && numberIn(holes, row, 'post_section');
    const count = holes && numberIn(holes, row, 'each');
    if (!holes || length === undefined || section === undefined || count === undefined) return [];
    // Steel posts come as they are.
    if (section === 0) continue;
    const size = textIn(holes, 'post_size', row);
    const of = sizes.get(size) ?? { size, section, wanted: [] };
    of.wanted.push({ length, count });
    sizes.set(size, of);
  }
  return [...sizes.values()];
}

function boards(book: BookView, job: SheetView): readonly Wanted[] | undefined {
  const length = numberIn(job, 0, 'picket_length');
  const waste = numberIn(job, 0, 'picket_waste');
  const posts = book.sheet('posts');
  const counts = rowsOf(posts).map((row) => posts && numberIn(posts, row, 'picket_count'));
  if (length === undefined || waste === undefined || counts.includes(undefined)) return undefined;
  const net = counts.reduce<number>((sum, count) => sum + (count ?? 0), 0);
  return [{ length, count: Math.ceil(net * (1 + waste) - 1e-9) }];
}

function wantedIn(
  sheet: SheetView | undefined,
  lengths: string,
  counts: string,
): readonly Wanted[] | undefined {
  const wanted: Wanted[] = [];
  for (const row of rowsOf(sheet)) {
    const length = sheet && numberIn(sheet, row, lengths);
    const count = sheet && numberIn(sheet, row, counts);
    if (length === undefined || count === undefined) return undefined;
    wanted.push({ length, count });
  }
  return wanted;
}

function priceTable(book: BookView) {
  const sheet = book.sheet('prices');
  const column = (id: string): readonly number[] =>
    rowsOf(sheet).map((row) => (sheet && numberIn(sheet, row, id)) ?? 0);
  const sections = column('post_section');
  return {
    lengths: column('key_length'),
    of: column,
    ofSection: (section: number) =>
      column('post_price').map((price, at) =>
        Math.abs((sections[at] ?? 0) - section) <= 1e-9 * section ? price : 0,
      ),
  };
}

function rowsOf(sheet: SheetView | undefined): readonly number[] {
  return Array.from({ length: sheet?.rowCount ?? 0 }, (_, row) => row);
}

function numberIn(sheet: SheetView, row: number, column: string): number | undefined {
  // Without the words around it: a long run has a hundred thousand of them.
  const value = sheet.value ? sheet.value(row, column) : sheet.cell(row, column).value;
  return typeof value === 'number' ? value : undefined;
}

function listIn(sheet: SheetView, column: string): readonly number[] | undefined {
  const { value } = sheet.cell(0, column);
  return Array.isArray(value) ? value.filter((each) => typeof each === 'number') : undefined;
}

function textIn(sheet: SheetView, column: string, row = 0): string {
  return sheet.cell(row, column).text;
}
