import { LENGTH, isDoubt, isProblem, quantity, readEntry, type Reading } from '../units/index.ts';

/** How the numbers of one column are written. */
export interface ColumnWriting {
  /** The unit of its header, or of the row of units. */
  readonly unit: string | undefined;
  /** The unit a bare number takes because the file uses no other; only for small lengths. */
  readonly usual: string | undefined;
  readonly decimal: '.' | ',' | undefined;
  /** A bare number counts downward, as its header says. */
  readonly below: boolean;
}

/** One entry that carries its own unit. */
export interface LengthEntry {
  readonly text: string;
  /** It took the usual unit of the file. */
  readonly usual: boolean;
  /** Nobody knows its unit: the text ends in ` ?`. */
  readonly unitless: boolean;
}

/** The cell as an entry that needs nothing beside it to be read; what can't be read stays as it was typed. */
export function lengthEntry(cell: string, writing: ColumnWriting): LengthEntry {
  const typed = cell.trim();
  const text = withPoint(typed, writing.decimal);
  const unit = writing.unit ?? writing.usual;
  if (COMPLETE.test(text)) return asIs(text);
  if (!BARE.test(text)) return worded(typed, text, unit, writing);
  const signed = writing.below && /^[\d.]/.test(text) && !ZERO.test(text) ? `-${text}` : text;
  if (ZERO.test(text)) return asIs(writing.unit === undefined ? text : `${text} ${writing.unit}`);
  // A whole number of this size among small lengths may be a date that a grid program made of a fraction.
  if (DAY_NUMBER.test(text) && unit !== 'm' && unit !== 'ft') return asIs(text);
  const fraction = /[/⁄¼½¾⅛⅜⅝⅞]/.test(text);
  if (unit === undefined || (fraction && METRIC.has(unit))) {
    return { text: `${signed} ?`, usual: false, unitless: unit === undefined };
  }
  return { text: `${signed} ${unit}`, usual: writing.unit === undefined, unitless: false };
}

/** The entry read as a length; undefined where it can't be, or could mean several things. */
export function readLength(text: string, unit?: string): Reading | undefined {
  const read = readEntry(text, quantity(LENGTH), unit === undefined ? {} : { unit });
  return isProblem(read) || isDoubt(read) ? undefined : read;
}

/** Whether the cell is a mark for “as above”. */
export function isDitto(cell: string): boolean {
  const read = readEntry(cell, quantity(LENGTH));
  return !isProblem(read) && isDoubt(read) && read.doubt === 'ditto';
}

/** The entry with the unit that answers for its question mark. */
export function withUnit(entry: string, unit: string): string {
  return entry.replace(/ \?$/, ` ${unit}`);
}

/** Puts a unit behind the number of an entry that has words as well, such as `3/8 E` or `10 dia`. */
function worded(
  typed: string,
  text: string,
  unit: string | undefined,
  { unit: headed }: ColumnWriting,
): LengthEntry {
  const probe = readLength(text, 'in');
  if (probe === undefined) return asIs(readLength(text) === undefined ? typed : text);
  if (probe.unitAssumed !== true || probe.over !== undefined) return asIs(text);
  const parts = /^(\D{0,12}?)([\d.,][\d\s.,/]*)(\s*\D*)$/.exec(text);
  const [before = '', number = '', after = ''] = parts?.slice(1) ?? [];
  const put = (mark: string): string => `${before}${number.trim()} ${mark} ${after.trim()}`.trim();
  if (unit === undefined) return { text: `${text} ?`, usual: false, unitless: true };
  const entry = put(unit);
  if (readLength(entry) === undefined) return asIs(typed);
  return { text: entry, usual: headed === undefined, unitless: false };
}

/** With the decimal mark that the formulas use, where the file's own mark is known. */
function withPoint(text: string, decimal: '.' | ',' | undefined): string {
  if (decimal === '.') return text.replace(/(?<=\d),(?=\d{3}(?!\d))/g, '');
  if (decimal === ',') {
    return text
      .replace(/(?<=\d)\.(?=\d{3}(?!\d))/g, '')
      .replace(/(?<=\d),(?=\d)/g, '.')
      .replace(/^([-+~]?),(?=\d)/, '$10.');
  }
  return text;
}

function asIs(text: string): LengthEntry {
  return { text, usual: false, unitless: false };
}

const METRIC = new Set(['mm', 'cm', 'm']);
const COMPLETE = /^-?\d+(?:\.\d+)?\s*(?:["']|in|ft|mm|cm|m)$/;
const DAY_NUMBER = /^[45]\d{4}$/;
const ZERO = /^[-+]?0+(?:[.,]0+)?$/;
const BARE =
  /^(?:[~≈]|(?:abt|about|approx|ca|circa)\.?\s)?\s*[-+−–]?\s*(?:\d*[.,]?\d+|\d+(?:,\d{3})+(?:\.\d+)?|(?:\d+[\s\u00a0\u2009‐‑–-]*)?(?:\d+\s*[/⁄]\s*\d+|[¼½¾⅛⅜⅝⅞⅓⅔]))$/i;
