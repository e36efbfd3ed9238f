import { plainCharacters, quoted } from './characters.ts';
import { ANGLE, LENGTH, RATIO } from './dimension.ts';
import { isQuantity, quantity, type QuantityKind } from './kind.ts';
import { takeApproximate, takeLengthMarks } from './marks.ts';
import {
  offeredUnit,
  readMeasure,
  type MeasureOptions,
  type Measures,
  type WrongUnit,
} from './measure.ts';
import { wordForReading } from './not-read.ts';
import type { Problem } from './problem.ts';
import { isDoubt, type Choice, type Doubt, type Reading, type ReadingOptions } from './reading.ts';
import { settle } from './settle.ts';
import { readGapOver } from './slope.ts';
import { notQuantity, wrongUnit } from './unreadable.ts';
import { fractionsOfDate, fractionsOfDayNumber } from './turned-date.ts';
import { usualUnit } from './unit.ts';
import { inOtherSystem } from './write.ts';

/**
 * Reads a quantity: a length in any tape notation, or a number with its unit.
 *
 * In a length, an angle or a percentage (`2°`, `2%`) is a gap over a level length of 1 m, and a
 * gap with its own level length (`3/8 out in 4'`) carries it in `over`. In a ratio such a gap is
 * divided by its level length; in an angle it is the angle itself. A number, a space and a
 * question mark (`63.5 ?`) is a number whose unit nobody knows, whatever unit is offered.
 */
export function readQuantity(
  text: string,
  kind: QuantityKind,
  options: ReadingOptions,
): Reading | Doubt | Problem {
  const plain = plainCharacters(text);
  const word = wordForReading(plain, () => zeroEntry(kind, options));
  if (word) return word;
  const unsure = plain.endsWith('?') ? /^(.*[^?\s])( ?)\?+$/.exec(plain) : undefined;
  if (!unsure) return readPlain(text, plain, kind, options);
  const unitUnknown = unsure[2] === ' ';
  const entry = unsure[1] ?? '';
  const read = readPlain(text, entry, kind, { ...options, unitUnknown });
  if (isDoubt(read) || !('value' in read)) return read;
  const question = `${quoted(text)} has a question mark. Is the reading right?`;
  return { doubt: 'reading', question, choices: [{ label: entry, entry }] };
}

function readPlain(
  text: string,
  plain: string,
  kind: QuantityKind,
  options: MeasureOptions,
): Reading | Doubt | Problem {
  const isLength = isQuantity(kind, LENGTH);
  const turned =
    isLength && !options.unitUnknown ? turnedIntoDate(text, plain, options) : undefined;
  if (turned) return turned;
  const marks = isLength ? takeLengthMarks(plain) : takeApproximate(plain);
  const read = readWithLevel(marks.rest, kind, options);
  if (read === undefined) return notQuantity(text, kind);
  if ('wrong' in read) return wrongUnit(text, read.wrong, kind);
  return settle(text, read, marks, isLength);
}

function readWithLevel(
  text: string,
  kind: QuantityKind,
  options: MeasureOptions,
): Measures | WrongUnit | undefined {
  if (isQuantity(kind, RATIO)) {
    return ratioOfGap(text, options) ?? readMeasure(text, kind, options);
  }
  if (isQuantity(kind, ANGLE)) {
    return angleOfGap(text, options) ?? readMeasure(text, kind, options);
  }
  if (!isQuantity(kind, LENGTH)) return readMeasure(text, kind, options);
  return (
    leanOfAngle(text, options) ??
    readGapOver(text, options) ??
    station(text, options) ??
    readMeasure(text, kind, options)
  );
}

function ratioOfGap(text: string, options: MeasureOptions): Measures | undefined {
  const read = readGapOver(text, options);
  if (!read) return undefined;
  const ways = read.ways.map(({ value, unit, entry, over, overUnit }) => {
    return { value: value / over, unit: `${unit}/${overUnit}`, entry };
  });
  return { ...read, ways };
}

function angleOfGap(text: string, options: MeasureOptions): Measures | undefined {
  const read = readGapOver(text, options);
  if (!read) return undefined;
  const ways = read.ways.map(({ value, entry, over }) => {
    return { value: Math.atan2(value, over), unit: 'deg', entry };
  });
  return { ...read, ways };
}

function leanOfAngle(text: string, options: MeasureOptions): Measures | undefined {
  if (!/(?:%|percent|°|deg|degrees?)$/i.test(text)) return undefined;
  const read = readMeasure(text, quantity(ANGLE), options);
  if (!read || 'wrong' in read) return undefined;
  const ways = read.ways.filter((way) => Math.abs(way.value) < Math.PI / 2);
  if (ways.length === 0) return undefined;
  return { ...read, ways: ways.map((way) => ({ ...way, value: Math.tan(way.value), over: 1 })) };
}

/** `1+20` is station 120 ft, except where the column is metric: there stations are asked about. */
function station(text: string, { unit, unitUnknown }: MeasureOptions): Measures | undefined {
  const parts = /^(\d{1,6})\+(\d{2}(?:\.\d+)?)$/.exec(text);
  if (!parts) return undefined;
  const number = `${String(Number(parts[1]))}${parts[2] ?? ''}`;
  const ask = unitUnknown === true || ['m', 'mm', 'cm'].includes(unit ?? '');
  const ways = (ask ? ['ft', 'm'] : ['ft']).flatMap((symbol) => {
    const read = readMeasure(`${number} ${symbol}`, quantity(LENGTH), { decimal: '.' });
    return read && 'ways' in read ? read.ways : [];
  });
  return ask ? { ways, doubt: 'unit' } : { ways };
}

function turnedIntoDate(text: string, plain: string, options: ReadingOptions): Doubt | undefined {
  const small = ['in', 'mm', 'cm', ''].includes(options.unit ?? '');
  const number = small ? fractionsOfDayNumber(plain) : undefined;
  const fractions = fractionsOfDate(plain) ?? number;
  if (!fractions) return undefined;
  const entries = fractions.map((fraction) => `${fraction} in`);
  if (number)
    entries.push(`${plain} ${offeredUnit(options.unit, quantity(LENGTH))?.symbol ?? 'mm'}`);
  const question = `${quoted(text)} looks like a fraction that was turned into a date. What was read?`;
  return { doubt: 'reading', question, choices: entries.map(echoed) };
}

function echoed(entry: string): Choice {
  const read = readMeasure(entry, quantity(LENGTH), {});
  const [way] = read && 'ways' in read ? read.ways : [];
  return { label: way ? `${entry} (${inOtherSystem(way.value, way.unit)})` : entry, entry };
}

function zeroEntry(kind: QuantityKind, { unit }: ReadingOptions): string {
  const usual = usualUnit(kind.dimension).symbol;
  const fallback = usual === 'ft' ? 'in' : usual;
  return `0 ${offeredUnit(unit, kind)?.symbol ?? fallback}`.trim();
}
