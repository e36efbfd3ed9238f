import { readLength } from './length-entry.ts';

/** A lean cell that says more than a gap. */
export interface LeanParts {
  /** The gap alone, as it was written. */
  readonly gap: string;
  /** The level length it was taken over, with its unit. */
  readonly over: string;
  /** It is a slope, such as `1/8 per ft` or `2°`: true whatever level was used. */
  readonly slope: boolean;
}

/** Takes a gap and its level length apart: `3/8 out in 4'`, `1/8 per ft`, `2°`; undefined where the cell has no level length. */
export function splitLean(cell: string): LeanParts | undefined {
  const read = readLength(cell, 'in');
  if (read?.over === undefined) return undefined;
  if (ANGLE.test(cell)) return { gap: cell, over: '1 m', slope: true };
  const found = OVER.exec(cell) ?? RATE.exec(cell);
  const [gap = '', word = '', level = ''] = found?.slice(1) ?? [];
  const over = /^\d/.test(level) ? level.trim() : `1 ${level.trim()}`;
  const length = readLength(over);
  if (gap === '' || length === undefined || Math.abs(Number(length.value) - read.over) > 1e-9)
    return undefined;
  // A gap without a unit is inches over feet and millimetres over metres, as it is wherever it is typed.
  const bare = readLength(gap, 'in')?.unitAssumed === true;
  return {
    gap: bare ? `${gap} ${METRIC.has(length.unit) ? 'mm' : 'in'}` : gap,
    over,
    slope: /per|\//.test(word) || !/^\d/.test(level),
  };
}

/** Takes a footing apart into width and depth: `10 dia x 24`, `12"ø x 30"`, `300x300x450`; undefined where it is none. */
export function splitFooting(
  cell: string,
): { readonly width: string; readonly depth: string } | undefined {
  // One small unit at the end is for every number before it; feet and meters may be for the depth alone.
  const unit = /\d\s*(mm|cm|in\.?|["″”])\s*$/i.exec(cell)?.[1];
  const parts = cell
    .split(/\s*(?:[x×*]|\bby\b|,\s|;)\s*/i)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) =>
      unit !== undefined && /^[\d\s.,/]+$/.test(plainNumber(part))
        ? `${plainNumber(part)} ${unit}`
        : part,
    );
  const [first = '', second = '', third] = parts;
  if (parts.length < 2 || parts.length > 3 || !parts.every((part) => /\d/.test(part)))
    return undefined;
  if (third !== undefined) {
    return plainNumber(first) === plainNumber(second)
      ? { width: plainNumber(first), depth: plainNumber(third) }
      : undefined;
  }
  const turned = DEEP.test(first) && !DEEP.test(second);
  return turned
    ? { width: plainNumber(second), depth: plainNumber(first) }
    : { width: plainNumber(first), depth: plainNumber(second) };
}

const ANGLE = /(?:%|percent|°|º|deg|degrees?)\s*$/i;
const OVER =
  /^(.*?\d.*?)\s*(?:\bout(?:\s+of\s+plumb)?)?\s+(in|over|per|on|@)\s+(\d.*|(?:ft|foot|feet|m|meter|metre|yd|in|mm)\.?)\s*$/i;
const RATE = /^(.*[a-z"'])\s*(\/)\s*(\d.*|(?:ft|foot|feet|m|meter|metre)\.?)\s*$/i;
const DEEP = /deep|depth|tief|prof/i;
const METRIC = new Set(['mm', 'cm', 'm']);

/** Without the words that say which number it is. */
function plainNumber(part: string): string {
  return part
    .replace(
      /\s*(?:\bdia(?:m|meter)?\b\.?|[øØ⌀]|\bround\b|\brd\b\.?|\bsq(?:uare)?\b\.?|\bwide\b|\bdeep\b|\bdepth\b)\s*/gi,
      ' ',
    )
    .trim();
}
