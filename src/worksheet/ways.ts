import { writeDuration } from '../units/index.ts';
import { placeOfRow } from './row-ids.ts';
import { inUnit } from './shown.ts';
import type { BookView, Entry, Stop } from './view.ts';
import type { Way } from './ways-view.ts';

/** Nothing is done at the post: what every other way is held against. */
const LEFT = 'leave';
/** These rules say that a way does not suit the post, or is not allowed. */
const UNFIT = /^(?:unfit_|banned_method$|no_jog$)/;

/**
 * Every way of treating a post, each worked out as the whole job with that way in it; what it takes
 * is its difference from the job with the post left as it is. `copy` is a book of its own, and is
 * typed into.
 */
export function waysOf(row: string, copy: BookView): readonly Way[] {
  const [posts, methods] = [copy.sheet('posts'), copy.sheet('methods')];
  const at = posts && placeOfRow(posts, row);
  if (!posts || !methods || at === undefined) return [];
  const now = posts.cell(at, 'work').text;
  const rules = Array.from({ length: methods.rowCount }, (_, each) => each);
  const choices = posts.columns.find(({ id }) => id === 'method')?.choices ?? [];
  const names = choices.filter((name) => rules.some((each) => methods.rowKey(each) === name));
  copy.typeAll(LEFT, entriesOf(row, LEFT));
  const left = figuresOf(copy, row);
  const known = new Set(left.stops.map(({ rule }) => rule));
  return [LEFT, ...names].map((name): Way => {
    copy.typeAll(name, entriesOf(row, name));
    const taken = figuresOf(copy, row);
    const rule = rules.find((each) => methods.rowKey(each) === name);
    const said = (column: string): string =>
      rule === undefined ? '' : methods.cell(rule, column).text;
    const stops = taken.stops.filter((stop) => !known.has(stop.rule));
    return {
      name,
      stands: name === now,
      fits: !stops.some(({ rule: id }) => UNFIT.test(id)),
      ...difference(left.items, taken.items),
      hours: stepOf(left.hours, taken.hours),
      visits: taken.visits.text,
      adds: moneyOf(left.total, taken.total),
      total: taken.total.value,
      waits: taken.waits,
      notFixed: said('not_fixed'),
      isBanned: said('banned') === 'yes',
      banSource: said('ban_source'),
      rule: rule === undefined ? undefined : methods.rowId(rule),
      stops,
    };
  });
}

/** What is typed where a way is chosen: the way, no remedy of its own over it, and why where that is said. */
export function choiceOf(row: string, way: string, why: string): readonly Entry[] {
  const reason = why === '' ? [] : [{ sheet: 'posts', row, column: 'why', text: why }];
  return [...entriesOf(row, way), ...reason];
}

function entriesOf(row: string, way: string): readonly Entry[] {
  const isLeft = way === LEFT;
  return [
    { sheet: 'posts', row, column: 'method', text: isLeft ? '' : way },
    { sheet: 'posts', row, column: 'remedy', text: isLeft ? LEFT : '' },
  ];
}

interface Figure {
  readonly value: number | undefined;
  readonly text: string;
}

interface Figures {
  readonly items: ReadonlyMap<string, number | undefined>;
  readonly hours: Figure;
  readonly visits: Figure;
  readonly total: Figure;
  readonly waits: string;
  readonly stops: readonly Stop[];
}

function figuresOf(book: BookView, row: string): Figures {
  const total = figure(book, 'total_price');
  const unpriced = figure(book, 'unpriced').value ?? 0;
  const note = book.sheet('job')?.cell(0, 'total_price').note ?? '';
  return {
    items: itemsOf(book),
    hours: figure(book, 'all_hours'),
    visits: figure(book, 'visits'),
    total,
    waits:
      total.value !== undefined ? '' : unpriced > 0 ? 'prices of some lines of the list' : note,
    stops: book.stops().filter((stop) => stop.row === row),
  };
}

function figure(book: BookView, id: string): Figure {
  const job = book.sheet('job');
  const value = job?.cell(0, id).value;
  return {
    value: typeof value === 'number' ? value : undefined,
    text: job?.cell(0, id).text ?? '',
  };
}

// What a line of the list is called -> how many of it; undefined while it waits.
function itemsOf(book: BookView): Figures['items'] {
  const list = book.sheet('materials');
  const unit = list?.columns.find(({ id }) => id === 'length')?.unit ?? '';
  const rows = Array.from({ length: list?.rowCount ?? 0 }, (_, row) => row);
  return new Map(
    rows.map((row) => {
      const said = (column: string): string => list?.cell(row, column).text ?? '';
      const quantity = list?.cell(row, 'quantity').value;
      const words = [said('size'), said('item'), inUnit(said('length'), unit)];
      const called = words.filter((text) => text !== '').join(' ');
      return [called, typeof quantity === 'number' ? quantity : undefined];
    }),
  );
}

/** What a way takes more of; and lines that wait, as another post is still open, are counted apart. */
function difference(from: Figures['items'], to: Figures['items']): Pick<Way, 'items' | 'open'> {
  const steps = [...new Set([...to.keys(), ...from.keys()])].map((called) => {
    const [before, after] = [from, to].map((items) => (items.has(called) ? items.get(called) : 0));
    return {
      called,
      count: before === undefined || after === undefined ? undefined : after - before,
    };
  });
  return {
    items: steps.flatMap(({ called, count = 0 }) => (count === 0 ? [] : [{ called, count }])),
    open: steps.filter(({ count }) => count === undefined).length,
  };
}

function stepOf(from: Figure, { value }: Figure): string {
  if (from.value === undefined || value === undefined) return '';
  return writeDuration(value - from.value);
}

function moneyOf(from: Figure, to: Figure): number | undefined {
  return from.value === undefined || to.value === undefined ? undefined : to.value - from.value;
}
