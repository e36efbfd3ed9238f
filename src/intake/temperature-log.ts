import { decode, records } from '../csv/index.ts';
import type { Notebook, Row } from '../notebook/index.ts';
import { isProblem, problem, wordedUnit, type Problem } from '../units/index.ts';
import { linesToHead, type PassedListLine } from './list-head.ts';

/** A log or forecast of temperatures as it stands in a file, by column of the temperatures sheet. */
export interface TemperatureLog {
  readonly rows: readonly ReadonlyMap<string, string>[];
  readonly linesRead: number;
  /** Lines that hold no reading, and why. */
  readonly passedOver: readonly PassedListLine[];
}

const WORDS: readonly (readonly [column: string, heads: RegExp])[] = [
  [
    'temperature',
    /^(?:air |concrete |outdoor |outside |ambient )?(?:temps?|temperatures?|temperatur|temperatura)$/,
  ],
  ['from', /^(hour|hours|hours since pour|h|stunde|hora)$/],
  ['at', /^(at|when|(?:date|day) ?(?:and|&|\/|-)? ?time|time ?stamp)$/],
  ['date', /^(date|day|datum|fecha)$/],
  ['time', /^(time|time of day|clock|zeit)$/],
  ['rain', /^(rain|raining|rainfall|precip|precipitation|regen|lluvia)$/],
];

/** Reads a temperature log or forecast; undefined where the file is none, because no line heads a temperature and a time. */
export function readTemperatureLog(bytes: Uint8Array): TemperatureLog | Problem | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return undefined;
  const all = records(decoded.text).records;
  const at = all.findIndex(({ cells }) => {
    const columns = cells.map(columnOf);
    return columns.includes('temperature') && columns.some((column) => WHEN.includes(column ?? ''));
  });
  const head = all[at];
  if (!head) return undefined;
  const columns = columnsOf(head.cells);
  const units = head.cells.map(unitOf);
  const rows: ReadonlyMap<string, string>[] = [];
  const passedOver = linesToHead(all, at);
  for (const { cells, line } of all.slice(at + 1)) {
    const texts = new Map<string, string>();
    columns.forEach((column, place) => {
      const text = (cells[place] ?? '').trim();
      const unit = units[place] ?? (column === 'from' ? 'h' : '');
      if (column !== undefined && text !== '')
        texts.set(column, column !== 'time' && isBare(text) ? `${text} ${unit}`.trim() : text);
    });
    const temperature = texts.get('temperature');
    const row = rowOf(texts, columns.includes('date') && columns.includes('time'));
    if (temperature === undefined) passedOver.push({ line, why: 'no temperature' });
    else if (isBare(temperature)) return withoutUnit(line, temperature);
    else if (!row.has('at') && !row.has('from')) passedOver.push({ line, why: 'no time' });
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

/** Heads that say when a reading was taken. */
const WHEN: readonly string[] = ['from', 'at', 'date', 'time'];

// Beside a date, an hour is the hour of the day and not hours since the pour.
function columnsOf(heads: readonly string[]): readonly (string | undefined)[] {
  const columns = heads.map(columnOf);
  if (!columns.includes('date') || columns.includes('time')) return columns;
  const hour = heads.findIndex((head) => /^\s*hour\s*$/i.test(head));
  return columns.map((column, place) => (place === hour ? 'time' : column));
}

/** What stands on a line, by column of the sheet. Where the file has day and time apart, a line without either has no time. */
function rowOf(texts: ReadonlyMap<string, string>, isApart: boolean): ReadonlyMap<string, string> {
  const [date, time] = [texts.get('date'), texts.get('time')];
  const day = isApart ? joined(date, time) : (date ?? time);
  const [at, rain] = [texts.get('at') ?? day, rained(texts.get('rain'))];
  const cells = { at, from: texts.get('from'), temperature: texts.get('temperature'), rain };
  return new Map(Object.entries(cells).flatMap(([id, text]) => (text ? [[id, text]] : [])));
}

function joined(date: string | undefined, time: string | undefined): string | undefined {
  if (time !== undefined && /\d[-/]\d/.test(time)) return time;
  return date === undefined || time === undefined ? undefined : `${date} ${clock(time)}`;
}

// 600 and 0600 are six o'clock, and so is 6.
function clock(time: string): string {
  if (/^\d{1,2}$/.test(time)) return `${time}:00`;
  return time.replace(/^(\d{1,2})(\d\d)$/, '$1:$2').replace(/^(\d{1,2})(?= ?[ap]m$)/i, '$1:00');
}

// An amount of rain is rain, a trace of it too; none is none.
function rained(text: string | undefined): string | undefined {
  const amount = /^(\d*[.,]?\d+)\s*(?:in|inch|inches|"|mm|cm)?$/i.exec(text ?? '')?.[1];
  if (amount !== undefined) return Number(amount.replace(',', '.')) > 0 ? 'yes' : 'no';
  return /^(?:t|tr|trace)$/i.test(text ?? '') ? 'yes' : text;
}

// A chance of rain, in percent, is not rain.
function columnOf(head: string): string | undefined {
  if (head.includes('%')) return undefined;
  const words = head
    .toLowerCase()
    .replaceAll('_', ' ')
    .replaceAll(/\(.*\)|°\s*[cf]\b|\bdeg ?[cf]\b|[ ,][cf]$|[ ,](?:in|inches|mm)$|\./g, '')
    .replaceAll(/\s+/g, ' ')
    .trim();
  return WORDS.find(([, heads]) => heads.test(words))?.[0];
}

// `Temp (F)`, `Temperature °C`: without one, nobody can tell a mild day from a hot one.
function unitOf(head: string): string | undefined {
  if (columnOf(head) !== 'temperature') return undefined;
  const letter = /[\s(°g_,]([CF])\)?\s*$/i.exec(head)?.[1];
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
