import type { CellPlaces } from '../csv/index.ts';

/** What a cell that is nothing but a number is. */
export type PlainNumber = typeof DECIMAL | typeof FRACTION | typeof WITH_MARK;

/** Such as `12` or `4.75`, which only wants its unit behind it. */
export const DECIMAL = 1;
/** Such as `3/8` or `1 1/4`. */
export const FRACTION = 2;
/** Either with an inch or a foot mark, such as `4.75"`, which wants nothing. */
export const WITH_MARK = 3;

/**
 * Which plain number a cell is; undefined where it is none, or wants a closer look: five figures in a row may be a
 * date, and figures over one another may be several things.
 */
export function numberIn({ text, from, to }: CellPlaces, index: number): PlainNumber | undefined {
  const start = from[index] ?? 0;
  let end = to[index] ?? 0;
  if (end - start > LONGEST) return undefined;
  const last = text.charCodeAt(end - 1);
  const hasMark = last === INCH_MARK || last === FOOT_MARK;
  if (hasMark) end -= 1;
  let [point, space, slash] = [-1, -1, -1];
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) continue;
    if (at === start || at === end - 1) return undefined;
    if (code === POINT && point + space + slash === -3) point = at;
    else if (code === SPACE && point + space + slash === -3) space = at;
    else if (code === SLASH && point + slash === -2 && at - 1 > space) slash = at;
    else return undefined;
  }
  if (slash !== -1) return hasMark ? WITH_MARK : FRACTION;
  if (space !== -1 || start === end) return undefined;
  if (hasMark) return WITH_MARK;
  return point === -1 && end - start > MOST_FIGURES ? undefined : DECIMAL;
}

const LONGEST = 9;
const MOST_FIGURES = 4;
const INCH_MARK = 34;
const FOOT_MARK = 39;
const POINT = 46;
const SPACE = 32;
const SLASH = 47;
