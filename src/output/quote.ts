import type { BookView, PriceLine, SheetView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, numberIn, type Dialect } from './export-dialect.ts';
import { measuresIn, type Measures } from './measure-in.ts';
import { stepWords } from './money-step.ts';
import type { Table } from './table.ts';

/** One post as its owner reads it. */
export interface QuoteLine {
  readonly post: string;
  readonly finding: string;
  readonly remedy: string;
  readonly included: string;
}

/** One sum of the quote; blank while it waits. */
export interface QuoteSum {
  readonly name: string;
  readonly amount: string;
}

/** What is never in the price unless it is written into it. */
export const EXCLUDED = [
  'rock and roots met below the surface',
  'buried services and sprinklers',
  'trees and their roots',
  'survey, boundary and neighbors’ consent',
  'rot or damage that can’t be seen before work begins',
] as const;

const DONE: Readonly<Record<string, string>> = {
  leave: 'nothing needed',
  're-plumb': 'set plumb again and packed',
  mend: 'mended at grade',
  replace: 'new post in new concrete',
};

const CAUSES: Readonly<Record<string, string>> = {
  snapped: 'snapped',
  'rot at grade': 'rotten where it meets the ground',
  heaved: 'lifted by frost',
  tree: 'pushed by a tree',
  'loose collar': 'loose in its concrete',
  'gate sag': 'pulled by its gate',
  'soil against it': 'pushed by soil on one side',
  'bowed or twisted': 'bowed or twisted',
  'shallow footing': 'its footing is too shallow',
  'wind over the run': 'moved with the whole run',
  'ground gave way': 'loose in the ground',
  'footing turning': 'its footing turns in the ground',
  'wet ground': 'stands in wet ground',
  'leans, footing firm': 'leans on a firm footing',
  'none seen': '',
};

/** A new post set otherwise than in concrete, by how the holes sheet has it set. */
const SET: Readonly<Record<string, string>> = {
  driven: 'new steel post, driven',
  pinned: 'new steel post, pinned to rock',
  held: 'held until an engineer has answered',
};

/** Ways that the owner sees afterward. */
const WAYS: Readonly<Record<string, string>> = {
  straighten: 'straightened',
  'new hole beside': 'new post in new concrete beside the old place',
  'two posts beside': 'two new posts in new concrete, one to either side',
  'move the line': 'new post in new concrete, the line moved aside',
};

const INCLUDED: Readonly<Record<string, string>> = {
  leave: '',
  're-plumb': 'propping, packing, plumbing on two faces',
  mend: 'parts and fixing',
};

/** What was found at each post that is in the price, and what is done about it. */
export function quoteLines(book: BookView, dialect: Dialect = PLAIN_DIALECT): readonly QuoteLine[] {
  const posts = book.sheet('posts');
  if (!posts) return [];
  const measures = measuresIn(book, dialect);
  return rowsOf(posts).flatMap((row) => {
    const remedy = posts.cell(row, 'remedy');
    if (remedy.state === 'known' && remedy.text === 'leave') return [];
    const known = remedy.state === 'known' ? remedy.text : '';
    const said = (sheet: string, column: string) => measures(sheet, posts.rowId(row), column);
    const how = SET[said('holes', 'set_how')];
    const done = WAYS[said('posts', 'work')] ?? DONE[known] ?? known;
    return [
      {
        post: posts.rowKey(row),
        finding: findingAt(book, posts, row, measures),
        remedy: known === '' ? 'not decided yet' : known === 'replace' ? (how ?? done) : done,
        included: known === 'replace' ? includedIn(said) : (INCLUDED[known] ?? ''),
      },
    ];
  });
}

/** What a new post takes, as the sheets have it. */
function includedIn(said: (sheet: string, column: string) => string): string {
  const how = said('holes', 'set_how');
  if (how === 'held') return 'nothing until then';
  const footing =
    said('removal', 'way') === 'left, hole beside'
      ? 'old post out, its footing left in the ground'
      : 'old footing out';
  const set =
    how === 'driven' ? 'post' : how === 'pinned' ? 'hole, post, pins' : 'hole, post, concrete';
  return `${footing}, ${set}, props, rails rehung after the wait`;
}

/** Price, tax, total, deposit and balance. */
export function quoteSums(book: BookView, dialect: Dialect = PLAIN_DIALECT): readonly QuoteSum[] {
  return (
    [
      ['Price before tax', 'price_before_tax'],
      ['Tax', 'tax'],
      ['Total', 'total_price'],
      ['Deposit', 'deposit'],
      ['Balance when the work is done', 'balance'],
    ] as const
  ).map(([name, column]) => ({ name, amount: moneyText(book, column, dialect) }));
}

/** Why the total is not there yet; blank where it is. */
export function quoteWaits(book: BookView): string {
  const job = book.sheet('job');
  const total = job?.cell(0, 'total_price');
  if (!job || !total || total.state === 'known') return '';
  const unpriced = job.cell(0, 'unpriced').value;
  const lines =
    typeof unpriced === 'number' && unpriced > 0
      ? `${String(unpriced)} lines of the materials list have no price`
      : '';
  return [total.note, lines].filter((part) => part !== '').join('; ') || 'not known yet';
}

/** What else the customer may choose: each variant of the job that has a total, with how far it is from the price. */
export function quoteOptions(
  book: BookView,
  dialect: Dialect = PLAIN_DIALECT,
): readonly QuoteSum[] {
  const currency = book.sheet('job')?.cell(0, 'currency').text ?? '';
  const total = totalOf(book.whatIf?.now() ?? []);
  if (total === undefined) return [];
  return (book.whatIf?.variants() ?? []).flatMap(({ name, lines }) => {
    const other = totalOf(lines);
    if (other === undefined) return [];
    const step = numberIn(stepWords(other - total), dialect);
    const amount = `${numberIn(other.toFixed(2), dialect)} ${currency}`.trim();
    return [{ name, amount: step === '' ? `${amount}, the same` : `${amount} (${step})` }];
  });
}

function totalOf(lines: readonly PriceLine[]): number | undefined {
  return lines.find(({ part }) => part === 'Total')?.money;
}

/** The quote as a table: posts first, then the sums. */
export function quoteTable(book: BookView, dialect?: Dialect): Table {
  return [
    ['Post', 'Finding', 'Remedy', 'Included', 'Amount'],
    ...quoteLines(book, dialect).map(({ post, finding, remedy, included }) => [
      post,
      finding,
      remedy,
      included,
      '',
    ]),
    ...quoteSums(book, dialect).map(({ name, amount }) => ['', name, '', '', amount]),
    ...quoteOptions(book, dialect).map(({ name, amount }) => [
      '',
      'Total if instead',
      name,
      '',
      amount,
    ]),
    ...[...EXCLUDED, ownExclusions(book)]
      .filter((words) => words !== '')
      .map((words) => ['', 'Not included', words, '', '']),
  ];
}

/** What the estimator leaves out besides. */
export function ownExclusions(book: BookView): string {
  return book.sheet('job')?.cell(0, 'exclusions').text ?? '';
}

/** An amount of money to the cent in the job's currency; blank while it waits. */
export function moneyText(
  book: BookView,
  column: string,
  dialect: Dialect = PLAIN_DIALECT,
): string {
  const job = book.sheet('job');
  const value = job?.cell(0, column).value;
  if (!job || typeof value !== 'number') return '';
  return `${numberIn(value.toFixed(2), dialect)} ${job.cell(0, 'currency').text}`.trim();
}

function findingAt(book: BookView, posts: SheetView, row: number, measures: Measures): string {
  const said = (id: string): string => measures('posts', posts.rowId(row), id);
  const offset = said('top_offset');
  const isOut = offset !== '' && posts.cell(row, 'top_offset').value !== 0;
  const probe = posts.cell(row, 'probe_depth').value;
  const sound = book.sheet('job')?.cell(0, 'probe_sound').value;
  const isSoft = typeof probe === 'number' && typeof sound === 'number' && probe > sound;
  const cause = said('cause');
  return [
    isOut ? `${offset} out of plumb at the top` : '',
    isSoft ? `soft to ${said('probe_depth')} at grade` : '',
    CAUSES[cause] ?? cause,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

function rowsOf(sheet: SheetView): readonly number[] {
  return Array.from({ length: sheet.rowCount }, (_, row) => row);
}
