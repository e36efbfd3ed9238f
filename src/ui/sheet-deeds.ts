import type { BookView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { printPage } from './print/index.ts';
import { rowOf } from './row-of.ts';
import { withUnit } from './unit-face.ts';

/** Something that can be done from the head of a sheet. */
export interface SheetDeed {
  readonly label: string;
  readonly do: () => void;
}

/** What the head of a sheet offers besides its rows; `from` is the element that sends what is asked, of the row that is current. */
export function sheetDeeds(
  book: BookView,
  sheet: string,
  from: EventTarget,
  current: string,
): readonly SheetDeed[] {
  const isPriced = ['prices', 'price', 'materials'].includes(sheet);
  const deeds = [...(isPriced ? missingPrices(book, from) : []), ...rateDeeds(book, sheet, from)];
  return [...remedyDeeds(book, sheet, from, current), ...deeds, ...printDeeds(book, sheet)];
}

function remedyDeeds(
  book: BookView,
  sheet: string,
  from: EventTarget,
  current: string,
): readonly SheetDeed[] {
  const posts = book.sheet('posts');
  if (sheet !== 'posts' || !posts || posts.rowCount === 0 || !book.whatIf) return [];
  const row = Math.max(0, rowOf(posts, current));
  return [
    {
      label: `Remedies side by side, ${posts.rowName(row)}`,
      do: () => {
        send(from, 'show-remedies', { sheet, row: posts.rowId(row) });
      },
    },
  ];
}

// What is printed is the sheet whole, each formula once, for somebody else to check.
function printDeeds(book: BookView, sheet: string): readonly SheetDeed[] {
  const view = book.sheet(sheet);
  const isWorked = view?.columns.some(({ formula }) => formula !== undefined) === true;
  if (!view || !isWorked || view.rowCount === 0 || sheet === 'job') return [];
  return [{ label: 'Print the working', do: () => void printPage('calculation', book, { sheet }) }];
}

function rateDeeds(book: BookView, sheet: string, from: EventTarget): readonly SheetDeed[] {
  if (sheet !== 'price' || !book.whatIf) return [];
  return [
    {
      label: 'Rates, overhead, profit and tax',
      do: () => {
        send(from, 'go-to', { sheet: 'job', row: 'job', column: 'crew_rate' });
      },
    },
    {
      label: 'What if, and why it changed',
      do: () => {
        send(from, 'open-side', 'what if');
      },
    },
  ];
}

function missingPrices(book: BookView, from: EventTarget): readonly SheetDeed[] {
  const lines = unpricedLines(book);
  if (lines.length === 0) return [];
  const count = lines.length === 1 ? 'the line' : `the ${String(lines.length)} lines`;
  return [
    {
      label: `Add ${count} of the list that has no price`.replace(
        'lines of the list that has',
        'lines of the list that have',
      ),
      do: () => {
        const [first] = book.rows.put('add lines without a price', 'prices', undefined, lines);
        if (first !== undefined)
          send(from, 'go-to', { sheet: 'prices', row: first, column: 'price' });
      },
    },
  ];
}

/** Lines of the list that have no price and no row on the prices sheet to type one in. */
function unpricedLines(book: BookView): readonly ReadonlyMap<string, string>[] {
  const materials = book.sheet('materials');
  if (!materials) return [];
  const length = materials.columns.find(({ id }) => id === 'length')?.unit ?? '';
  return Array.from({ length: materials.rowCount }, (_, row) => row).flatMap((row) => {
    const text = (column: string): string => materials.cell(row, column).text;
    const isMissing = materials.cell(row, 'no_price').value === true;
    if (!isMissing || materials.cell(row, 'matched').value === true) return [];
    const cells = [
      ['item', text('item')],
      ['size', text('size')],
      ['length', withUnit(text('length'), length)],
    ] as const;
    return [new Map(cells.filter(([, said]) => said !== ''))];
  });
}
