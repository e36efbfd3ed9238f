import { decode, records } from '../csv/index.ts';
import {
  LENGTH,
  isDoubt,
  isProblem,
  problem,
  quantity,
  readEntry,
  parseUnit,
  writeWithUnit,
  type Problem,
} from '../units/index.ts';
import type { BookView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, exactIn, numberIn, type Dialect } from './export-dialect.ts';
import type { Table } from './table.ts';

/** One line of the supplier's list. */
export interface MaterialLine {
  readonly item: string;
  readonly size: string;
  /** [m]; undefined where the item has none. */
  readonly length: number | undefined;
  /** Undefined while the sheet waits for something. */
  readonly quantity: number | undefined;
  readonly unit: string;
  readonly treatment: string;
  readonly detail: string;
  /** Length to be cut down should the yard be out of this one. [m] */
  readonly longer: number | undefined;
  /** What else will do, such as `42 of 60 lb`; blank where nothing will. */
  readonly instead: string;
}

const HEADS = [
  'Line', 'Item', 'Size', 'Length', 'Quantity', 'Unit', 'Treatment', 'Detail', 'Or cut down', 'Or instead',
]; // prettier-ignore
/** Lists written before substitutes were on them lack these. */
const NEWER_HEADS = ['Or cut down', 'Or instead'];

/** What the yard is asked for, in the order of the materials sheet. */
export function materialLines(book: BookView): readonly MaterialLine[] {
  const sheet = book.sheet('materials');
  if (!sheet) return [];
  const isOpen = book.sheet('job')?.cell(0, 'substitutes').text !== 'no';
  return Array.from({ length: sheet.rowCount }, (_, row) => {
    const text = (column: string): string => sheet.cell(row, column).text;
    const number = (column: string): number | undefined => {
      const { value } = sheet.cell(row, column);
      return typeof value === 'number' ? value : undefined;
    };
    return {
      item: text('item'),
      size: text('size'),
      length: number('length'),
      quantity: number('quantity'),
      unit: text('unit'),
      treatment: text('treatment'),
      detail: text('detail'),
      longer: isOpen ? number('longer') : undefined,
      instead: otherMix(text),
    };
  });
}

/** `42 of 60 lb`: another mix, and how many bags of it. */
function otherMix(text: (column: string) => string): string {
  const count = text('other_quantity');
  return count === '' ? '' : `${count} of ${text('other_mix')}`;
}

/** The list as a table; lengths in feet or metres as the job is. A quantity that is not known yet stays blank. */
export function materialTable(book: BookView, dialect: Dialect = PLAIN_DIALECT): Table {
  const unit = parseUnit(lengthUnit(book));
  const long = (length: number | undefined): string =>
    length === undefined || !unit
      ? ''
      : dialect === PLAIN_DIALECT
        ? writeWithUnit(length, unit)
        : exactIn(length, quantity(LENGTH), unit, dialect);
  return [
    HEADS,
    ...materialLines(book).map((line, at) => [
      String(at + 1),
      line.item,
      line.size,
      long(line.length),
      line.quantity === undefined ? '' : numberIn(String(line.quantity), dialect),
      line.unit,
      line.treatment,
      line.detail,
      long(line.longer),
      line.instead,
    ]),
  ];
}

/** Reads a list that was written here back to its lines. */
export function readMaterialList(bytes: Uint8Array): readonly MaterialLine[] | Problem {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return decoded;
  const [head, ...rows] = records(decoded.text).records;
  const places = HEADS.map((name) => head?.cells.indexOf(name) ?? -1);
  if (HEADS.some((name, at) => places[at] === -1 && !NEWER_HEADS.includes(name))) {
    return problem(
      'Material list',
      'Its first line does not have our heads.',
      `Start it with ${HEADS.join(', ')}.`,
    );
  }
  const lines: MaterialLine[] = [];
  const numbers = places.filter((_, at) => HEADS[at] === 'Length' || HEADS[at] === 'Quantity');
  const decimal = rows.some(({ cells }) => numbers.some((at) => cells[at]?.includes(',')))
    ? ','
    : '.';
  for (const { cells: fields, line } of rows) {
    const [
      ,
      item = '',
      size = '',
      length = '',
      count = '',
      unit = '',
      treatment = '',
      detail = '',
      longer = '',
      instead = '',
    ] = places.map((at) => fields[at] ?? '');
    const read = readLength(length, decimal, line);
    const readLonger = readLength(longer, decimal, line);
    if (isProblem(read)) return read;
    if (isProblem(readLonger)) return readLonger;
    lines.push({
      item,
      size,
      length: read,
      quantity: count === '' ? undefined : Number(count.replace(',', '.')),
      unit,
      treatment,
      detail,
      longer: readLonger,
      instead,
    });
  }
  return lines;
}

function readLength(text: string, decimal: ',' | '.', line: number): number | undefined | Problem {
  const read = text === '' ? undefined : readEntry(text, quantity(LENGTH), { decimal });
  if (read && (isProblem(read) || isDoubt(read))) {
    return problem(
      `Material list, line ${String(line)}, Length`,
      `“${text}” is not one length.`,
      'Write it like 10 ft.',
    );
  }
  return typeof read?.value === 'number' ? read.value : undefined;
}

/** The list as plain text, to paste in a message. */
export function materialText(book: BookView): string {
  const [, ...rows] = materialTable(book);
  return rows
    .map(([, item = '', size = '', length = '', count = '', unit = '', ...rest]) => {
      const [treatment = '', detail = '', longer = '', instead = ''] = rest;
      const what = [size, item, length].filter((part) => part !== '').join(' ');
      const or = [longer === '' ? '' : `${longer} cut down`, instead].map((other) =>
        other === '' ? '' : `or ${other}`,
      );
      const said = [treatment, detail, ...or].filter((note) => note !== '').join('; ');
      const note = said === '' ? '' : ` (${said})`;
      return `${count === '' ? '?' : count} ${unit}  ${what}${note}`;
    })
    .join('\n');
}

function lengthUnit(book: BookView): string {
  const sheet = book.sheet('materials');
  return sheet?.columns.find(({ id }) => id === 'length')?.unit ?? 'ft';
}
