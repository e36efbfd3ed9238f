import { ANGLE, LENGTH, MONEY, RATIO, TEMPERATURE, sameDimension } from './dimension.ts';
import { isQuantity, type QuantityKind } from './kind.ts';
import { readNumber, splitSign, type NumberWay, type WrittenNumber } from './number.ts';
import type { ReadingOptions } from './reading.ts';
import { readDashed, readFeetInches } from './tape.ts';
import { wordedUnit } from './unit-words.ts';
import { parseUnit, toSI, unitNamed, usualUnit, type Unit } from './unit.ts';

/** A quantity that was written down, and every way it can be taken. */
export interface Measures {
  readonly ways: readonly Measure[];
  /** What there is to ask; absent where there is one way only. */
  readonly doubt?: 'unit' | 'reading';
}

/** One way to take an entry, and an entry that can be taken in that way only. */
export interface Measure {
  /** In SI. */
  readonly value: number;
  readonly unit: string;
  readonly entry: string;
  /** The number stood alone and took the unit it was offered. */
  readonly assumed?: boolean;
  /** The level length written with it. [m] */
  readonly over?: number;
}

/** An entry that has a unit of another dimension. */
export interface WrongUnit {
  readonly wrong: Unit;
}

/** How a number without a unit is taken here. */
export interface MeasureOptions extends ReadingOptions {
  /** Nobody knows the unit: ask, whatever is offered. */
  readonly unitUnknown?: boolean;
}

/** Reads one signed number and its unit, or feet and inches; undefined where it is neither. */
export function readMeasure(
  text: string,
  kind: QuantityKind,
  options: MeasureOptions,
): Measures | WrongUnit | undefined {
  const { sign, rest } = splitSign(moneyLast(text));
  const read = readUnsigned(rest, kind, options, sign);
  if (read === undefined || 'wrong' in read || sign === 1) return read;
  return { ...read, ways: read.ways.map((way) => ({ ...way, entry: `-${way.entry}` })) };
}

/** The unit a sheet offers, where it fits the kind; `%` counts as one. */
export function offeredUnit(symbol: string | undefined, kind: QuantityKind): Unit | undefined {
  const unit = symbol === undefined ? undefined : unitFor(symbol, kind);
  return unit && sameDimension(unit.dimension, kind.dimension) ? unit : undefined;
}

const LEADING_NUMBER = /^((?:\d|[.,]\d)(?:[\d .,/-]*\d)?) ?(.*)$/;

function readUnsigned(
  text: string,
  kind: QuantityKind,
  options: MeasureOptions,
  sign: 1 | -1,
): Measures | WrongUnit | undefined {
  const tape = isQuantity(kind, LENGTH) ? readFeetInches(text, options.decimal) : undefined;
  if (tape) return fromTape(tape, sign);
  const parts = LEADING_NUMBER.exec(text);
  const number = readNumber(parts?.[1] ?? '', options.decimal);
  const unitText = (parts?.[2] ?? '').replace(/^-(?=[a-z])/i, '');
  if (!number) {
    const dashed = isQuantity(kind, LENGTH) ? readDashed(text, options.decimal) : undefined;
    return dashed && fromTape(dashed, sign);
  }
  if (unitText === '' || (unitText === '°' && isQuantity(kind, TEMPERATURE))) {
    return readBare(number, kind, options, sign);
  }
  const unit = unitFor(unitText, kind);
  if (!unit) return undefined;
  if (!sameDimension(unit.dimension, kind.dimension)) return { wrong: unit };
  return measures(number, [unit], kind, sign);
}

function readBare(
  number: WrittenNumber,
  kind: QuantityKind,
  { unit: symbol, unitUnknown = false }: MeasureOptions,
  sign: 1 | -1,
): Measures {
  const offered = unitUnknown ? undefined : offeredUnit(symbol, kind);
  // A fraction in a metric column is as likely a slip of the column as of the hand.
  const strange = number.fraction && offered !== undefined && METRIC.has(offered.symbol);
  if (offered && offered.symbol !== '' && !strange) {
    const { ways, ...doubt } = measures(number, [offered], kind, sign);
    return { ways: ways.map((way) => ({ ...way, assumed: true })), ...doubt };
  }
  const anyUnit = !isQuantity(kind, TEMPERATURE) || kind.scale === 'difference';
  if (!unitUnknown && anyUnit && number.ways.every((way) => way.number === 0)) {
    return { ways: [{ value: 0, unit: '', entry: '0' }] };
  }
  if (isQuantity(kind, RATIO)) return measures(number, [PLAIN_UNIT], kind, sign);
  if (isQuantity(kind, MONEY) && !unitUnknown) {
    return readBare(number, kind, { unit: 'USD' }, sign);
  }
  const asked = askedUnits(kind);
  const ways = number.ways.flatMap((way) => {
    const long = isQuantity(kind, LENGTH) && way.number >= 1 && Number.isInteger(way.number);
    const units = long ? [...asked, ...LONG] : asked;
    return measures({ ...number, ways: [way] }, units, kind, sign).ways;
  });
  return { ways, doubt: number.sure ? 'unit' : 'reading' };
}

function measures(
  number: WrittenNumber,
  units: readonly Unit[],
  kind: QuantityKind,
  sign: 1 | -1,
): Measures {
  const ways = units.flatMap((unit) =>
    number.ways.map((way) => ({
      value: inSI(sign * way.number, unit, kind),
      unit: unit.symbol,
      entry: entryText(way, unit.symbol),
    })),
  );
  return number.sure ? { ways } : { ways, doubt: 'reading' };
}

function inSI(number: number, unit: Unit, kind: QuantityKind): number {
  if (unit.symbol === '%' && isQuantity(kind, ANGLE)) return Math.atan(number / 100);
  // A quotient, because 0.01 is no double: 10% is 10/100 to the last digit.
  if (unit.symbol === '%') return number / 100 + 0;
  if (kind.scale === 'difference') return number * unit.factor + 0;
  return toSI(number, unit);
}

function entryText(way: NumberWay, symbol: string): string {
  return symbol === '%' ? `${way.text}%` : `${way.text} ${symbol}`.trim();
}

function fromTape(
  { ways, sure }: { readonly ways: readonly Measure[]; readonly sure: boolean },
  sign: 1 | -1,
): Measures {
  const signed = ways.map((way) => ({ ...way, value: sign * way.value + 0 }));
  return sure ? { ways: signed } : { ways: signed, doubt: 'reading' };
}

const PLAIN_UNIT: Unit = { symbol: '', dimension: RATIO, factor: 1, offset: 0 };
const PERCENT: Unit = { symbol: '%', dimension: RATIO, factor: 0.01, offset: 0 };
const METRIC = new Set(['mm', 'cm', 'm']);
const LONG = ['ft', 'm'].flatMap((symbol) => unitNamed(symbol) ?? []);

function unitFor(text: string, kind: QuantityKind): Unit | undefined {
  if (text === '' || text === '1') return PLAIN_UNIT;
  if (text !== '%' && text.toLowerCase() !== 'percent') return wordedUnit(text);
  return isQuantity(kind, ANGLE) ? { ...PERCENT, dimension: ANGLE } : PERCENT;
}

const ASKED = 'in mm|ft^2 m^2|ft^3 yd^3 m^3|lb kg|lbf N|psf psi kPa|psf/ft kPa/m|lb/ft^3 kg/m^3'
  .concat('|mph m/s|deg|degF degC|h day|USD')
  .split('|')
  .map((group) => group.split(' ').flatMap((symbol) => parseUnit(symbol) ?? []));

function askedUnits({ dimension }: QuantityKind): readonly Unit[] {
  const group = ASKED.find(([first]) => first && sameDimension(first.dimension, dimension));
  return group ?? [usualUnit(dimension)];
}

/** Puts a dollar sign behind its number, where other units stand: `$4.50/ft` becomes `4.50 USD/ft`. */
function moneyLast(text: string): string {
  const dollars = /^(-?) ?(?:\$|USD) ?(-?[\d.,][\d .,/]*\d|\d)(.*)$/i.exec(text);
  return dollars ? `${dollars[1] ?? ''}${dollars[2] ?? ''} USD${dollars[3] ?? ''}` : text;
}
