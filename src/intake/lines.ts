import type { CellPlaces, CsvRecord } from '../csv/index.ts';
import type { FileColumn } from './assign.ts';
import { isPostNumber } from './values.ts';

/** Whether a line begins with a figure, as the line of a post mostly does. */
export function beginsWithFigure({ text }: CsvRecord): boolean {
  const first = text.charCodeAt(0);
  return first > 32 && first < 128 ? first >= 48 && first <= 57 : /^\s*\d/.test(text);
}

/** Why a record of the table is no row, where its text alone tells; undefined where it may be one. */
export function notARow(record: CsvRecord, noteColumns: ReadonlySet<number>): string | undefined {
  const { text } = record;
  const mayTotal = MAY_TOTAL.test(text);
  if (!mayTotal && /^[\s"]*[\p{L}\p{N}]/u.test(text)) return undefined;
  const { cells } = record;
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  const ruled = filled.every((cell) => /^[-=_*~#.–—\s]+$/.test(cell));
  if (ruled && filled.some((cell) => cell.length > 2)) return 'a ruled line';
  if (!mayTotal) return undefined;
  const total = cells.some((cell, index) => !noteColumns.has(index) && TOTAL.test(cell));
  return total || TOTAL_OF.test(filled[0] ?? '') ? 'a total or subtotal' : undefined;
}

/** Tells why a record of a table holds no reading of a post; undefined where it is a row. */
export function remarks(
  columns: readonly FileColumn[],
  isMeasured: (column: string) => boolean,
): (cells: CellPlaces) => string | undefined {
  const post = columns.find(({ column }) => column === 'post')?.index;
  const others = columns.filter(({ column }) => column !== null && column !== 'post');
  return (cells) => {
    if (post !== undefined && isCount(cells, post)) return undefined;
    const number = post === undefined ? '' : cells.cell(post);
    if (number !== '' && isPostNumber(number)) return undefined;
    const filled = others.filter(({ index }) => cells.has(index));
    if (number === '') {
      return filled.some(({ column }) => column !== 'note')
        ? undefined
        : 'a remark: it has no post number and no reading';
    }
    const measured = filled.some(
      ({ index, column }) => column !== null && isMeasured(column) && /\d/.test(cells.cell(index)),
    );
    return measured && !LABELLED.test(number) ? undefined : 'a remark, not a post';
  };
}

/** Whether a cell is a number of up to five figures, as most posts have. */
function isCount({ text, from, to, count }: CellPlaces, index: number): boolean {
  const end = to[index] ?? 0;
  const start = from[index] ?? 0;
  if (index >= count || start === end || end - start > 5) return false;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code < 48 || code > 57) return false;
  }
  return true;
}

/** The run that a line of its own names, as in `Run B` or `North side`; undefined where it names none. */
export function namedRun(filled: readonly string[]): string | undefined {
  const line = filled.join(' ').trim();
  if (isPostNumber(filled[0] ?? '') || !RUN.test(line)) return undefined;
  return line.replace(/\s*:\s*$/, '').replace(/\s*:\s*/, ' ');
}

const RUN_WORD = '(?:runs?|side|section|stretch|lauf|zug|abschnitt|seite|tramo|lado)';
const RUN = new RegExp(
  `^(?:${RUN_WORD}(?:\\s*[:#.-]?\\s*(?:\\p{L}+|\\p{L}?\\d{1,3}\\p{L}?)(?:[ ,]+\\p{L}+){0,3})|(?:\\p{L}+\\s+){1,3}${RUN_WORD})\\s*:?$`,
  'iu',
);

/** The level length that a line of its own states, as in `Level: 48 in`; bare where it has no unit. */
export function statedLevel(line: string): string | undefined {
  const found = LEVEL_FIRST.exec(line) ?? LEVEL_LAST.exec(line);
  const length = found?.groups?.length?.trim();
  return length === undefined || /\b(?:water|ground)\s+level/i.test(line) ? undefined : length;
}

const TOTAL_WORD =
  '(?:sub ?-?totals?|(?:grand |run |job |page )?totals?|sum|zwischensumme|summe|gesamt(?:summe)?|suma|total general|averages?|avg\\.?|mean|mittel(?:wert)?|promedio|maximum|minimum)';
// Every one of the words below, roughly: most lines have none of them.
const MAY_TOTAL = /tot|sum|avg|ave|mean|mittel|prom|max|min|ges/i;
const TOTAL = new RegExp(`^\\s*(?:posts? )?${TOTAL_WORD}\\s*[:=]?\\s*$`, 'i');
const TOTAL_OF = new RegExp(`^${TOTAL_WORD}(?![\\p{L}\\p{N}])`, 'iu');
const LABELLED =
  /:\s*$|^(?:date|datum|fecha|job|address|measured|crew|client|owner|site|page|level|weather|checked|signed)\b/i;

const UNIT = '(?:in(?:ch(?:es)?)?\\b|"|″|”|ft\\b|feet\\b|foot\\b|\'|′|mm\\b|cm\\b|m\\b)';
const NUMBER = '\\d+(?:[.,]\\d+)?(?:[ -]\\d+/\\d+)?';
const WORD = '(?:level|straight ?edge|wasserwaage|richtscheit|nivel)';
const LEVEL_FIRST = new RegExp(
  `(?<![\\p{L}])${WORD}(?:\\s+(?:length|used|is|was|of|länge|de))*\\s*[:=,]?\\s*(?<length>${NUMBER}\\s*${UNIT}|${NUMBER}\\s*$)`,
  'iu',
);
const LEVEL_LAST = new RegExp(
  `(?<length>${NUMBER}\\s*${UNIT})[\\s-]*(?:long\\s+)?${WORD}(?![\\p{L}])`,
  'iu',
);
