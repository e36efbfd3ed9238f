import { LENGTH, sameDimension } from './dimension.ts';
import { quantity } from './kind.ts';
import { readMeasure, type Measure, type MeasureOptions, type Measures } from './measure.ts';
import { wordedUnit } from './unit-words.ts';

/** A gap and the level length it was taken over. */
export interface GapOver extends Measures {
  readonly ways: readonly (Measure & { readonly over: number; readonly overUnit: string })[];
}

/**
 * Reads a gap over a level length: `3/8 out in 4'`, `1/4 in in 4 ft`, `1/8 per ft`, `5 mm/m`.
 * A gap without a unit is inches over feet and millimetres over metres. Undefined where there is
 * no level length.
 */
export function readGapOver(text: string, options: MeasureOptions): GapOver | undefined {
  for (const [gapText, levelText] of splits(text)) {
    const level = readLevel(levelText, options);
    if (!level) continue;
    const gap = readMeasure(gapText.replace(OUT_OF_PLUMB, ''), LENGTHS, {
      ...options,
      unit: METRIC.has(level.unit) ? 'mm' : 'in',
    });
    if (!gap || 'wrong' in gap) continue;
    const ways = gap.ways.map((way) => ({
      ...way,
      entry: `${way.entry}${way.assumed === true ? ` ${way.unit}` : ''} over ${level.entry}`,
      over: level.value,
      overUnit: level.unit,
    }));
    return { ...gap, ways };
  }
  return undefined;
}

/** The words that say a gap is a lean, and nothing more. */
export const OUT_OF_PLUMB = / out(?: of plumb)?$/i;

const LENGTHS = quantity(LENGTH);
const METRIC = new Set(['mm', 'cm', 'm']);

function splits(text: string): (readonly [gap: string, level: string])[] {
  const words = [...text.matchAll(/ (?:in|over|per|on|@)(?= )/gi)].map(
    ({ 0: word, index }) => [text.slice(0, index), text.slice(index + word.length + 1)] as const,
  );
  const slash = text.lastIndexOf('/');
  const [gap, level] = [text.slice(0, Math.max(slash, 0)), text.slice(slash + 1).trim()];
  // A figure behind the slash belongs to a fraction: 1/8 ft.
  return gap === '' || /^\d/.test(level) ? words : [...words, [gap.trim(), level]];
}

function readLevel(text: string, options: MeasureOptions): Measure | undefined {
  const unit = /^\d/.test(text) ? undefined : wordedUnit(text);
  if (unit) {
    if (!sameDimension(unit.dimension, LENGTH)) return undefined;
    return { value: unit.factor, unit: unit.symbol, entry: `1 ${unit.symbol}` };
  }
  const level = readMeasure(text, LENGTHS, { ...options, unitUnknown: true });
  if (!level || 'wrong' in level || level.doubt) return undefined;
  return level.ways.find((way) => way.value > 0);
}
