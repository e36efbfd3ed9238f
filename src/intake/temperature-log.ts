import { decode, records } from '../csv/index.ts';
import type { Notebook, Row } from '../notebook/index.ts';
import { isProblem, problem, wordedUnit, type Problem } from '../units/index.ts';

/** A log or forecast of temperatures as it stands in a file, by column of the temperatures sheet. */
export interface TemperatureLog {
  readonly rows: readonly ReadonlyMap<string, string>[];
  readonly linesRead: number;
  /** Lines that hold no reading, with their place in the file. */
  readonly passedOver: readonly { readonly line: number; readonly why: string }[];
}

const WORDS: readonly (readonly [column: string, heads: RegExp])[] = [
  [
    'temperature',
    /^(temp|temperature|temperatur|temperatura|air temp|air temperature|concrete temperature)$/,
  ],
  ['from', /^(hour|hours|hours since pour|h|stunde|hora)$/],
  ['at', /^(at|time|date|date and time|when|zeit|fecha)$/],
  ['rain', /^(rain|raining|regen|lluvia)$/],
];

/** Reads a temperature log or forecast; undefined where the file is none, because no line heads a temperature and a time. */
export function readTemperatureLog(bytes: Uint8Array): TemperatureLog | Problem | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return undefined;
  const all = records(decoded.text).records;
  const at = all.findIndex(({ cells }) => {
    const columns = cells.map(columnOf);
    return columns.includes('temperature') && (columns.includes('from') || columns.includes('at'));
  });
  const head = all[at];
  if (!head) return undefined;
  const columns = head.cells.map(columnOf);
  const units = head.cells.map(unitOf);
  const rows: ReadonlyMap<string, string>[] = [];
  const passedOver: { line: number; why: string }[] = [];
  for (const { cells, line } of all.slice(at + 1)) {
    const row = new Map<string, string>();
    columns.forEach((column, place) => {
      const text = (cells[place] ?? '').trim();
      const unit = units[place] ?? (column === 'from' ? 'h' : '');
      if (column !== undefined && text !== '')
        row.set(column, isBare(text) ? `${text} ${unit}`.trim() : text);
    });
    const temperature = row.get('temperature');
    if (temperature === undefined) passedOver.push({ line, why: 'no temperature' });
    else if (isBare(temperature)) return withoutUnit(line, temperature);
    else rows.push(row);
  }
  return { rows, linesRead: rows.length + passedOver.length, passedOver };
}

/** Puts a log under the readings of the temperatures sheet. One act that can be undone. */
export function bringInTemperatures(log: TemperatureLog, name: string, notebook: Notebook): void {
  if (log.rows.length === 0) return;
  const ids = notebook.freshIds(log.rows.length);
  const rows = log.rows.map((cells, at): Row => ({ id: ids[at] ?? '', cells: new Map(cells) }));
  const at = notebook.rows('temperatures').length;
  notebook.do(`bring in ${name}`, [{ edit: 'add rows', sheet: 'temperatures', at, rows }]);
}

function columnOf(head: string): string | undefined {
  const words = head
    .toLowerCase()
    .replaceAll(/\(.*\)|°\s*[cf]\b|\bdeg[cf]\b/g, '')
    .replaceAll(/\s+/g, ' ')
    .trim();
  return WORDS.find(([, heads]) => heads.test(words))?.[0];
}

// `Temp (F)`, `Temperature °C`: without one, nobody can tell a mild day from a hot one.
function unitOf(head: string): string | undefined {
  if (columnOf(head) !== 'temperature') return undefined;
  const letter = /[\s(°g]([CF])\)?\s*$/i.exec(head)?.[1];
  return letter === undefined ? undefined : wordedUnit(`°${letter.toUpperCase()}`)?.symbol;
}

function isBare(text: string): boolean {
  return /^-?\d+(?:[.,]\d+)?$/.test(text);
}

function withoutUnit(line: number, found: string): Problem {
  return problem(
    `Temperatures, line ${String(line)}`,
    `“${found}” could be degrees Fahrenheit or Celsius.`,
    'Head the column Temperature (F) or Temperature (C).',
  );
}
