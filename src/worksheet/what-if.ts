import {
  Notebook,
  difference,
  fromText,
  toJson,
  type Change,
  type NotebookDocument,
  type Row,
} from '../notebook/index.ts';
import { isProblem, writeDuration } from '../units/index.ts';
import { inUnit } from './shown.ts';
import type { BookView, Entry } from './view.ts';
import { placeOfRow } from './row-ids.ts';
import { choiceOf, waysOf } from './ways.ts';
import type { Way } from './ways-view.ts';
import type {
  PriceChange,
  PriceLine,
  PriceMove,
  Variant,
  VariantEntry,
  WhatIfParts,
} from './what-if-view.ts';

const VARIANTS = 'variants';
const MARKS = 'marks';
/** Above this many, how each alone moves the total is not worked out. */
const MOST_ALONE = 12;

/** Works variants of a notebook out on copies, and finds why its price moved; what was typed is never touched. */
export class WhatIf implements WhatIfParts {
  private readonly notebook: Notebook;
  private readonly open: (notebook: Notebook) => BookView;
  private readonly book: BookView;

  constructor(notebook: Notebook, book: BookView, open: (notebook: Notebook) => BookView) {
    this.notebook = notebook;
    this.book = book;
    this.open = open;
  }

  now(): readonly PriceLine[] {
    return linesOf(this.book);
  }

  variants(): readonly Variant[] {
    const names = [...new Set(this.rows(VARIANTS).map((row) => cell(row, 'name')))];
    return names.map((name) => this.variant(name));
  }

  put(name: string, entry: Entry): void {
    const row = this.rows(VARIANTS).find((each) => isOf(each, name, entry));
    if (row) {
      const before = row.cells.get('text');
      if (before !== entry.text) {
        const change = { sheet: VARIANTS, row: row.id, column: 'text', before, after: entry.text };
        this.notebook.do(`variant ${name}`, [{ edit: 'cell', ...change }]);
      }
      return;
    }
    this.add(`variant ${name}`, VARIANTS, { name, ...entry });
  }

  drop(name: string, entry?: Entry): void {
    const rows = this.rows(VARIANTS);
    const gone = rows.filter((row) => cell(row, 'name') === name && (!entry || isOf(row, name, entry))); // prettier-ignore
    // From the last to the first, so that the places before them hold.
    const changes = [...gone].reverse().map((row): Change => ({ edit: 'remove rows', sheet: VARIANTS, at: rows.indexOf(row), rows: [row] })); // prettier-ignore
    this.notebook.do(`remove variant ${name}`, changes);
  }

  use(name: string): void {
    this.book.typeAll(`use ${name}`, this.entriesOf(name));
  }

  ways(row: string): readonly Way[] {
    return waysOf(row, this.opened(this.notebook.document));
  }

  choose(row: string, way: string, why: string): void {
    const at = placeOf(this.book, 'posts', row);
    const name = at === undefined ? '' : this.book.sheet('posts')?.rowName(at);
    this.book.typeAll(`${name ?? ''}: ${way}`, choiceOf(row, way, why));
  }

  mark(name: string): void {
    const document = JSON.stringify(toJson(bare(this.notebook.document)));
    this.add(`keep the price of ${name}`, MARKS, { name, document });
  }

  marks(): readonly string[] {
    return this.rows(MARKS)
      .map((row) => cell(row, 'name'))
      .reverse();
  }

  changedSince(mark: string): PriceChange | undefined {
    const row = this.rows(MARKS).findLast((each) => cell(each, 'name') === mark);
    const then = row && fromText(cell(row, 'document'));
    if (!then || isProblem(then)) return undefined;
    const before = this.opened(then);
    const changes = groups(difference(then, bare(this.notebook.document)));
    const lines = linesOf(before);
    const moves = changes.map((group): PriceMove => {
      const alone = changes.length > MOST_ALONE ? undefined : totalOf(this.opened(then, group));
      const total = totalOf(before);
      const words = movedWords(group, before, this.book);
      return { ...words, alone: alone === undefined || total === undefined ? undefined : alone - total }; // prettier-ignore
    });
    return { moves, before: lines, now: this.now() };
  }

  private variant(name: string): Variant {
    const entries = this.entriesOf(name);
    const book = this.opened(this.notebook.document);
    book.typeAll(name, entries);
    return {
      name,
      entries: entries.map((entry) => told(entry, this.book, book)),
      lines: linesOf(book),
    };
  }

  private entriesOf(name: string): readonly Entry[] {
    return this.rows(VARIANTS)
      .filter((row) => cell(row, 'name') === name)
      .map((row) => ({
        sheet: cell(row, 'sheet'),
        row: cell(row, 'row'),
        column: cell(row, 'column'),
        text: cell(row, 'text'),
      }));
  }

  private opened(document: NotebookDocument, changes: readonly Change[] = []): BookView {
    const notebook = new Notebook(structuredClone(bare(document)));
    notebook.do('what if', changes);
    return this.open(notebook);
  }

  private add(label: string, sheet: string, cells: Readonly<Record<string, string>>): void {
    const [id = ''] = this.notebook.freshIds(1);
    const row: Row = { id, cells: new Map(Object.entries(cells)) };
    const at = this.rows(sheet).length;
    this.notebook.do(label, [{ edit: 'add rows', sheet, at, rows: [row] }]);
  }

  private rows(sheet: string): readonly Row[] {
    return this.notebook.rows(sheet);
  }
}

/** The document without its files and what is kept here: what a price comes from. */
function bare(document: NotebookDocument): NotebookDocument {
  const sheets = new Map(document.sheets);
  for (const id of [VARIANTS, MARKS]) sheets.delete(id);
  return { ...document, sheets, files: [] };
}

function linesOf(book: BookView): readonly PriceLine[] {
  const job = book.sheet('job');
  const price = book.sheet('price');
  const said = (column: string): string => textAt(book, 'job', job?.rowId(0) ?? '', column);
  const materials = book.sheet('materials');
  const bags = placeOf(book, 'materials', 'concrete');
  const work = [
    { part: 'Holes', text: String(book.sheet('holes')?.rowCount ?? 0), money: undefined },
    {
      part: 'Bags',
      text: bags === undefined ? '' : (materials?.cell(bags, 'quantity').text ?? ''),
      money: undefined,
    },
    { part: 'Hours', text: hoursOf(book), money: undefined },
    { part: 'Visits', text: said('visits'), money: undefined },
  ];
  const sums = Array.from({ length: price?.rowCount ?? 0 }, (_, row) => {
    const amount = price?.cell(row, 'amount').value;
    const money = typeof amount === 'number' ? amount : undefined;
    return { part: price?.rowKey(row) ?? '', text: money?.toFixed(2) ?? '', money };
  });
  return [...work, ...sums];
}

function hoursOf(book: BookView): string {
  const hours = book.sheet('job')?.cell(0, 'all_hours').value;
  return typeof hours === 'number' ? writeDuration(hours) : '';
}

function totalOf(book: BookView): number | undefined {
  const total = book.sheet('job')?.cell(0, 'total_price').value;
  return typeof total === 'number' ? total : undefined;
}

function told(entry: Entry, now: BookView, then: BookView): VariantEntry {
  const { sheet, row, column } = entry;
  const at = placeOf(then, sheet, row);
  const { state, note } = (at === undefined ? undefined : then.sheet(sheet)?.cell(at, column)) ?? {
    state: 'wrong',
    note: 'It is no longer on the sheet.',
  };
  return {
    ...entry,
    label: labelAt(now, sheet, row, column),
    now: textAt(now, sheet, row, column),
    note: state === 'wrong' || state === 'ask' ? note : '',
  };
}

// Rows put in or taken out are one move a sheet, and each entry is one of its own.
function groups(changes: readonly Change[]): readonly (readonly [Change, ...Change[]])[] {
  const found = new Map<string, [Change, ...Change[]]>();
  changes.forEach((change, at) => {
    if (change.edit === 'name' || change.edit === 'add file' || change.edit === 'remove file')
      return;
    const key =
      change.edit === 'add rows' || change.edit === 'remove rows' ? change.sheet : String(at);
    const group = found.get(key);
    if (group) group.push(change);
    else found.set(key, [change]);
  });
  return [...found.values()];
}

function movedWords(
  [change]: readonly [Change, ...Change[]],
  before: BookView,
  now: BookView,
): Omit<PriceMove, 'alone'> {
  switch (change.edit) {
    case 'input':
      return entryWords('job', 'job', change.name, before, now);
    case 'cell':
      return entryWords(change.sheet, change.row, change.column, before, now);
    case 'add rows':
    case 'remove rows': {
      const count = (book: BookView): string => String(book.sheet(change.sheet)?.rowCount ?? 0);
      const title = now.sheet(change.sheet)?.title ?? change.sheet;
      return { label: `${title}, rows`, before: count(before), after: count(now) };
    }
    case 'formula':
    case 'assumed':
      return {
        label: `${change.edit === 'formula' ? 'Formula of' : 'Agreed for'} ${change.name}`,
        before: change.before ?? '',
        after: change.after ?? '',
      };
    default:
      return { label: 'Columns and sheets of your own', before: '', after: 'changed' };
  }
}

function entryWords(
  sheet: string,
  row: string,
  column: string,
  before: BookView,
  now: BookView,
): Omit<PriceMove, 'alone'> {
  return {
    label: labelAt(now, sheet, row, column),
    before: textAt(before, sheet, row, column),
    after: textAt(now, sheet, row, column),
  };
}

function labelAt(book: BookView, sheet: string, row: string, column: string): string {
  const view = book.sheet(sheet);
  const at = placeOf(book, sheet, row);
  const label = view?.columns.find(({ id }) => id === column)?.label ?? column;
  const name = sheet === 'job' || at === undefined ? '' : (view?.rowName(at) ?? '');
  return name === '' ? label : `${label}, ${name}`;
}

function textAt(book: BookView, sheet: string, row: string, column: string): string {
  const view = book.sheet(sheet);
  const at = placeOf(book, sheet, row);
  const head = view?.columns.find(({ id }) => id === column);
  return view && head && at !== undefined ? inUnit(view.cell(at, column).text, head.unit) : '';
}

function placeOf(book: BookView, sheet: string, row: string): number | undefined {
  if (sheet === 'job') return 0;
  const view = book.sheet(sheet);
  return view && placeOfRow(view, row);
}

function isOf(row: Row, name: string, { sheet, row: of, column }: Entry): boolean {
  const is = { name, sheet, row: of, column };
  return Object.entries(is).every(([key, value]) => cell(row, key) === value);
}

function cell({ cells }: Row, column: string): string {
  return cells.get(column) ?? '';
}
