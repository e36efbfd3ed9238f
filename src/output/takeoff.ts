import type { PassedLine } from '../notebook/index.ts';
import type { Value } from '../units/index.ts';
import type { Ask, BookView, SheetView, Stop } from '../worksheet/index.ts';
import { accountFor, accountWords, type Account } from './account.ts';
import { materialText } from './material-list.ts';
import { rowsInWords, stopsAlike } from './stops-alike.ts';

/** A question about the file that stands in no cell. */
export interface LooseAsk {
  readonly column: string;
  readonly text: string;
  readonly question: string;
}

/** All that came of a site file, ready to be printed or handed on. */
export interface Takeoff {
  readonly book: BookView;
  readonly linesRead: number;
  readonly passedOver: readonly PassedLine[];
  readonly looseAsks: readonly LooseAsk[];
  /** How the file was read, in words. */
  readonly notes: readonly string[];
}

/** Whether readings must be asked about. */
export function hasAsks(takeoff: Takeoff): boolean {
  return sheetAsks(takeoff).length + takeoff.looseAsks.length > 0;
}

// Of two headers that rival for a column the column can't be said to be missing: which it is, is asked already.
function sheetAsks({ book, looseAsks }: Takeoff): readonly Ask[] {
  const rivals = new Set(looseAsks.map(({ column }) => column));
  return book.asks().filter(({ row, column }) => row !== undefined || !rivals.has(column));
}

/** The take-off as one object: quantities in SI numbers, absent where blank or wrong. */
export function takeoffJson(takeoff: Takeoff): unknown {
  const { book, passedOver, looseAsks } = takeoff;
  const sheets = book.sheets
    .filter(({ id }) => id !== 'job')
    .map((sheet): [string, unknown] => [sheet.id, rowObjects(sheet)]);
  return {
    ...Object.fromEntries(sheets),
    stops: book.stops().map((stop) => ({
      ...(stop.rowName !== '' && { post: postOf(stop) }),
      rule: stop.rule,
      level: stop.level,
      message: stop.message,
      source: stop.source,
    })),
    asks: [...sheetAsks(takeoff).map(askObject), ...looseAsks],
    passed_over: passedOver,
    rows: rowCounts(takeoff),
  };
}

/** The take-off as people read it: the list first, then what stops it and what must be asked. */
export function takeoffText(takeoff: Takeoff): string {
  const { book, passedOver, notes, looseAsks } = takeoff;
  const account = accountOf(takeoff);
  const asks = [...sheetAsks(takeoff).map(askLine), ...looseAsks.map(({ question }) => question)];
  return [
    section('Supplier’s list', [materialText(book) || 'Nothing to order yet.']),
    section('Stops', lines(book.stops(), 'stop')),
    section('Cautions', lines(book.stops(), 'caution')),
    section('To ask', asks),
    section('How the file was read', notes),
    section(
      'Passed over',
      passedOver.map(({ line, text, why }) => `line ${String(line)}: ${why}: ${text}`),
    ),
    accountWords(account),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function accountOf({ book, linesRead, passedOver }: Takeoff): Account {
  return accountFor(linesRead, passedOver, book.asks());
}

function rowCounts(takeoff: Takeoff): unknown {
  const { read, imported, asked, passedOver } = accountOf(takeoff);
  return { read, imported, asked, passed_over: passedOver };
}

function rowObjects(sheet: SheetView): readonly unknown[] {
  const columns = sheet.columns.map(({ id }) => id);
  const valueAt = (row: number, id: string): Value | undefined =>
    sheet.value ? sheet.value(row, id) : sheet.cell(row, id).value;
  return Array.from({ length: sheet.rowCount }, (_, row) =>
    Object.fromEntries(
      columns.flatMap((id) => {
        const value = valueAt(row, id);
        return value === undefined ? [] : [[id, value]];
      }),
    ),
  );
}

function askObject({ line, column, text, question }: Ask): unknown {
  return { ...(line !== undefined && { line }), column, text, question };
}

function askLine({ line, rowName, columnLabel, text, question }: Ask): string {
  const place = [line === undefined ? '' : `line ${String(line)}`, rowName, columnLabel].filter(
    (part) => part !== '',
  );
  return `${place.join(', ')}${text === '' ? '' : `, “${text}”`}: ${question}`;
}

function lines(stops: readonly Stop[], level: Stop['level']): readonly string[] {
  return stopsAlike(stops.filter((stop) => stop.level === level)).map((stop) => {
    const rows = rowsInWords(stop);
    return rows === '' ? stop.message : `${rows}: ${stop.message}`;
  });
}

// `hole 3` and `post 3` are both post 3.
function postOf({ rowName }: Stop): string {
  return rowName.replace(/^(?:post|hole) /, '');
}

function section(title: string, content: readonly string[]): string {
  return content.length === 0
    ? ''
    : [title, ...content.map((line) => `  ${line.replaceAll('\n', '\n  ')}`)].join('\n');
}
