import { isOutcome } from './rock-test.ts';
import type { ValuesShow } from './meanings.ts';

/** Whether the cells of a column bear out what its header only hints at. Blank cells say nothing. */
export function valuesShow(what: ValuesShow, cells: readonly string[]): boolean {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return false;
  switch (what) {
    case 'rising':
      return risesEvenly(filled);
    case 'level':
      return filled.every((cell) => cell === filled[0]) && LEVEL.test(filled[0] ?? '');
    case 'posts':
      return (
        filled.length > 1 && new Set(filled).size === filled.length && filled.every(isPostNumber)
      );
    case 'rock':
      return mostly(
        filled,
        /firm|solid|tight|loose|moves|snapped|wobbl|fest|locker|firme|floj|suelt/i,
      );
    case 'outcomes':
      return filled.every(isOutcome);
    case 'directions':
      return mostly(filled, DIRECTION);
    case 'soundness':
      return mostly(
        filled,
        /^(?:sound|soft|rotten|rot|snapped|solid|punky|morsch|gesund|sano|podrido)\b/i,
      );
    case 'sizes':
      return mostly(filled, /^\d+\s*[x×]\s*\d+/i);
    case 'numbers':
    case 'small':
      return filled.every((cell) => /^[~+-]?\s*[\d¼½¾⅛⅜⅝⅞]/.test(cell));
  }
}

/** Whether a cell looks like a post's number: `7`, `7A`, `P07`, `G-2`, `A`. */
export function isPostNumber(cell: string): boolean {
  return /^(?:\p{L}{0,4}[-. #]?\d{1,5}[-. /]?[\p{L}\d]{0,2}|\p{L}{1,2})$/u.test(cell.trim());
}

/** Whether a cell is a direction and nothing else. */
export function isDirection(cell: string): boolean {
  return DIRECTION.test(cell.trim());
}

/** A compass point, or a side as crews name it. */
const DIRECTION_WORDS =
  '[NS][NS]?[EW]|[NSEW]|north(?:east|west)?|south(?:east|west)?|east|west|nord|ost|sud|süd|norte|sur|este|oeste|up ?hill|down ?hill|left|right|street|house|yard|road|neighbou?r(?: side)?';

const DIRECTION = new RegExp(`^(?:to |toward |towards )?(?:${DIRECTION_WORDS})$`, 'i');

// Levels and straight edges as they are sold (common practice, no source).
const LEVEL =
  /^(?:(?:24|32|36|48|60|72|78|96)(?:\s*(?:"|″|in))?|[23468]\s*(?:'|′|ft)|(?:600|800|900|1000|1200|1500|1800|2000)(?:\s*mm)?|(?:0[.,]6|1|1[.,][0258]|2)0?\s*m)$/i;

function mostly(cells: readonly string[], pattern: RegExp): boolean {
  return cells.filter((cell) => pattern.test(cell)).length >= 0.6 * cells.length;
}

function risesEvenly(cells: readonly string[]): boolean {
  const numbers = cells.map((cell) => Number(/^\d+(?:[.,]\d+)?/.exec(cell)?.[0].replace(',', '.')));
  const steps = numbers.slice(1).map((number, at) => number - (numbers[at] ?? NaN));
  const least = Math.min(...steps);
  const most = Math.max(...steps);
  // Bays of a fence are 4 ft or 1.2 m and up, so that 1, 2, 3 stays a count.
  return steps.length > 1 && least > 1 && most - least <= 0.05 * most;
}
