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
export function fileMarks(
  tables: readonly {
    readonly columns: readonly FileColumn[];
    readonly rows: readonly (readonly string[])[];
  }[],
  stated: readonly string[],
  isMeasured: (column: string) => boolean,
): FileMarks {
  const units = new Set(stated);
  let commas = false;
  let points = false;
  for (const { columns, rows } of tables) {
    for (const { index, column, unit, over } of columns) {
      for (const used of [unit, overUnit(over)]) if (used !== undefined) units.add(used);
      if (column === null || !isMeasured(column)) continue;
      for (const row of rows) {
        const cell = row[index];
        if (cell === undefined || /^\s*\d*\s*$/.test(cell)) continue;
        commas ||= DECIMAL_COMMA.test(cell);
        points ||= DECIMAL_POINT.test(cell);
        if (INCHES.test(cell)) units.add('in');
        if (MILLIMETRES.test(cell)) units.add('mm');
        if (CENTIMETRES.test(cell)) units.add('cm');
      }
    }
  }
  const decimal = commas === points ? undefined : commas ? ',' : '.';
  const small = (['in', 'mm', 'cm'] as const).filter((unit) => units.has(unit));
  const [only] = small;
  return { decimal, small: small.length === 1 && only !== 'cm' ? only : undefined };
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
const INCHES = /\d\s*(?:["″”]|''|′′|´´|inch|in\b|zoll)|[¼½¾⅛⅜⅝⅞]\s*(?:["″”]|in\b)/i;
const MILLIMETRES = /\d\s*mm\b/i;
const CENTIMETRES = /\d\s*cm\b/i;

function overUnit(over: string | undefined): string | undefined {
  return over === undefined ? undefined : unitWord(over.replace(/^[\d.,/ -]+/, ''));
}
