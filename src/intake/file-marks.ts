import type { CellPlaces } from '../csv/index.ts';
import type { FileColumn } from './assign.ts';
import { unitWord } from './header-unit.ts';

/** What the file as a whole tells about its numbers. */
export interface FileMarks {
  /** The decimal mark, where the file shows it and never the other one. */
  readonly decimal: '.' | ',' | undefined;
  /** The one small unit the file uses, inch or millimetre; undefined where it uses both or neither. */
  readonly small: 'in' | 'mm' | undefined;
}

/** Looks through the reading columns of a file for its decimal mark and its small unit. */
export class MarkFinder {
  private readonly units: Set<string>;
  private readonly isMeasured: (column: string) => boolean;
  private measured: readonly number[] = [];
  private commas = false;
  private points = false;

  /** @param stated - Units that lines of the file state for all its readings. */
  constructor(stated: readonly string[], isMeasured: (column: string) => boolean) {
    this.units = new Set(stated);
    this.isMeasured = isMeasured;
  }

  /** Takes in the headers of a table, before its rows. */
  head(columns: readonly FileColumn[]): void {
    for (const { unit, over } of columns)
      for (const used of [unit, overUnit(over)]) if (used !== undefined) this.units.add(used);
    this.measured = columns
      .filter(({ column }) => column !== null && this.isMeasured(column))
      .map(({ index }) => index);
  }

  /** Takes in a row of it. */
  row(cells: CellPlaces): void {
    for (const index of this.measured) {
      const seen = this.news(marksIn(cells, index));
      if (seen !== 0) this.see(cells.cell(index), seen);
    }
  }

  /** What all of it comes to. */
  marks(): FileMarks {
    const { commas, points, units } = this;
    const decimal = commas === points ? undefined : commas ? ',' : '.';
    const small = (['in', 'mm', 'cm'] as const).filter((unit) => units.has(unit));
    const [only] = small;
    return { decimal, small: small.length === 1 && only !== 'cm' ? only : undefined };
  }

  /** The marks among these that may tell something that is not known yet. */
  private news(marks: number): number {
    if (this.commas) marks &= ~COMMA;
    if (this.points) marks &= ~POINT;
    if (this.units.has('in')) marks &= ~TICK;
    return this.units.has('in') && this.units.has('mm') && this.units.has('cm')
      ? marks & ~WORD
      : marks;
  }

  private see(cell: string, seen: number): void {
    if (seen & COMMA) this.commas ||= DECIMAL_COMMA.test(cell);
    if (seen & POINT) this.points ||= DECIMAL_POINT.test(cell);
    if (!(seen & (WORD | TICK))) return;
    for (const [name, pattern] of SMALL_UNITS)
      if (!this.units.has(name) && pattern.test(cell)) this.units.add(name);
  }
}

/** The unit that a line above the table states for all its readings, as in `All readings in mm`. */
export function statedUnit(line: string): string | undefined {
  const found = STATED.exec(line);
  return found ? unitWord(found[1] ?? found[2] ?? '') : undefined;
}

const STATED =
  /\b(?:units?|einheit(?:en)?|unidad(?:es)?)\s*(?:[:=]|are|is|,)?\s*(?:in\s+)?([\p{L}"″]+)\s*$|\b(?:all|dimensions|measurements|readings|gaps|alle|maße|masse|medidas|todo|todas)\b.*\b(?:in|en)\s+([\p{L}]+)/iu;

// One or two figures behind the mark, or four and more, or a nought before it: never a thousand's mark.
const DECIMAL_COMMA = /(?<![\d.,])(?:\d*,(?:\d{1,2}|\d{4,})|0,\d+)(?![\d,])|\.\d{3},\d/;
const DECIMAL_POINT = /(?<![\d.,])(?:\d*\.(?:\d{1,2}|\d{4,})|0?\.\d+)(?![\d.])|,\d{3}\.\d/;
const COMMA = 1;
const POINT = 2;
const WORD = 4;
const TICK = 8;

/** What a cell has beside figures: a comma, a point, letters or signs. Most cells have none, and need no closer look. */
function marksIn({ text, from, to, count }: CellPlaces, index: number): number {
  let marks = 0;
  const end = index < count ? (to[index] ?? 0) : 0;
  for (let at = from[index] ?? 0; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 44) marks |= COMMA;
    else if (code === 46) marks |= POINT;
    else if (code > 57) marks |= WORD;
    else if (code === 34 || code === 39) marks |= TICK;
  }
  return marks;
}

const INCHES = /\d\s*(?:["″”]|''|′′|´´|inch|in\b|zoll)|[¼½¾⅛⅜⅝⅞]\s*(?:["″”]|in\b)/i;
const MILLIMETRES = /\d\s*mm\b/i;
const CENTIMETRES = /\d\s*cm\b/i;
const SMALL_UNITS = [
  ['in', INCHES],
  ['mm', MILLIMETRES],
  ['cm', CENTIMETRES],
] as const;

function overUnit(over: string | undefined): string | undefined {
  return over === undefined ? undefined : unitWord(over.replace(/^[\d.,/ -]+/, ''));
}
