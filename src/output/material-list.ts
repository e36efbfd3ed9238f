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
}

const HEADS = ['Line', 'Item', 'Size', 'Length', 'Quantity', 'Unit', 'Treatment', 'Detail'];

/** What the yard is asked for, in the order of the materials sheet. */
export function materialLines(book: BookView): readonly MaterialLine[] {
  const sheet = book.sheet('materials');
  if (!sheet) return [];
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
    };
  });
}

/** The list as a table; lengths in feet or metres as the job is. A quantity that is not known yet stays blank. */
export function materialTable(book: BookView, dialect: Dialect = PLAIN_DIALECT): Table {
  const unit = parseUnit(lengthUnit(book));
  return [
    HEADS,
    ...materialLines(book).map((line, at) => [
      String(at + 1),
      line.item,
      line.size,
      line.length === undefined || !unit
        ? ''
        : dialect === PLAIN_DIALECT
          ? writeWithUnit(line.length, unit)
          : exactIn(line.length, quantity(LENGTH), unit, dialect),
      line.quantity === undefined ? '' : numberIn(String(line.quantity), dialect),
      line.unit,
      line.treatment,
      line.detail,
    ]),
  ];
}

/** Reads a list that was written here back to its lines. */
export function readMaterialList(bytes: Uint8Array): readonly MaterialLine[] | Problem {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return decoded;
  const [head, ...rows] = records(decoded.text).records;
  const places = HEADS.map((name) => head?.cells.indexOf(name) ?? -1);
  if (places.includes(-1)) {
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
    ] = places.map((at) => fields[at] ?? '');
    const read = length === '' ? undefined : readEntry(length, quantity(LENGTH), { decimal });
    if (read && (isProblem(read) || isDoubt(read))) {
      return problem(
        `Material list, line ${String(line)}, Length`,
        `“${length}” is not one length.`,
        'Write it like 10 ft.',
      );
    }
    lines.push({
      item,
      size,
      length: typeof read?.value === 'number' ? read.value : undefined,
      quantity: count === '' ? undefined : Number(count.replace(',', '.')),
      unit,
      treatment,
      detail,
    });
  }
  return lines;
}

/** The list as plain text, to paste in a message. */
export function materialText(book: BookView): string {
  const [, ...rows] = materialTable(book);
  return rows
    .map(([, item = '', size = '', length = '', count = '', unit = '', ...notes]) => {
      const what = [size, item, length].filter((part) => part !== '').join(' ');
      const said = notes.filter((note) => note !== '').join('; ');
      const note = said === '' ? '' : ` (${said})`;
      return `${count === '' ? '?' : count} ${unit}  ${what}${note}`;
    })
    .join('\n');
}

function lengthUnit(book: BookView): string {
  const sheet = book.sheet('materials');
  return sheet?.columns.find(({ id }) => id === 'length')?.unit ?? 'ft';
}
