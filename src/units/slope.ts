import { LENGTH } from './dimension.ts';
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
  for (const split of splits(text)) {
    const level = readLevel(split, options);
    if (!level) continue;
    const gap = readMeasure(split.gap.replace(OUT_OF_PLUMB, ''), LENGTHS, {
      ...options,
      unit: METRIC.has(level.unit) ? 'mm' : 'in',
    });
    if (!gap || 'wrong' in gap) continue;
    const ways = gap.ways.map((way) => ({
      ...way,
      entry: `${way.entry} over ${level.entry}`,
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

interface Split {
  readonly gap: string;
  readonly level: string;
  /** `per ft`, `/ft`: the level length may be a unit alone. */
  readonly per: boolean;
}

function splits(text: string): readonly Split[] {
  const words = [...text.matchAll(/ (in|over|per|on|@)(?= )/gi)].map(
    ({ 0: found, 1: word = '', index }): Split => ({
      gap: text.slice(0, index),
      level: text.slice(index + found.length + 1),
      per: word.toLowerCase() === 'per',
    }),
  );
  // Figures on both sides of a slash are a fraction: 1/8 ft.
  const slash = /^(.*[a-z"']) ?\/ ?([a-z"'.]+)$/i.exec(text);
  return slash ? [...words, { gap: slash[1] ?? '', level: slash[2] ?? '', per: true }] : words;
}

function readLevel({ level: text, per }: Split, options: MeasureOptions): Measure | undefined {
  if (!/^[\d.]/.test(text)) {
    const unit = per ? wordedUnit(text) : undefined;
    if (!unit || !LEVEL_UNITS.has(unit.symbol)) return undefined;
    return { value: unit.factor, unit: unit.symbol, entry: `1 ${unit.symbol}` };
  }
  const level = readMeasure(text, LENGTHS, { ...options, unitUnknown: true });
  if (!level || 'wrong' in level || level.doubt) return undefined;
  return level.ways.find((way) => way.value > 0);
}

const LEVEL_UNITS = new Set(['ft', 'yd', 'm']);
