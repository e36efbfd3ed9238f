import { MONEY, sameDimension } from './dimension.ts';
import { fromSI, unitNamed, type Unit } from './unit.ts';

/** How a quantity is to look, where there is more than one way. */
export interface WritingStyle {
  /** Inches as fractions to the sixteenth (as they stand unless told), or as decimals. */
  readonly inches?: 'fraction' | 'decimal';
  /** A plain number as it is, or as a percentage. */
  readonly ratio?: 'plain' | 'percent';
}

/**
 * The number of a quantity in a unit, as people here write it and without the unit.
 *
 * Inches are fractions to the nearest sixteenth (`2 1/4`, `-3/8`): exact where the value is a
 * whole count of sixteenths, rounded otherwise. Millimetres and centimetres have at most one
 * decimal, metres three, degrees two, money always two. Anything else has four significant digits,
 * whole numbers all of theirs. Decimals that are zero are left off.
 */
export function writeQuantity(value: number, unit: Unit, style: WritingStyle = {}): string {
  const number = fromSI(value, unit);
  if (unit.symbol === 'in' && style.inches !== 'decimal') return sixteenths(number);
  if (sameDimension(unit.dimension, MONEY)) return fixed(number, 2);
  if (style.ratio === 'percent' || unit.symbol === '%') return `${numberText(value * 100)}%`;
  const decimals = DECIMALS.get(unit.symbol);
  if (decimals !== undefined) return trimmed(fixed(number, decimals));
  const whole = Math.round(number);
  return nearly(number, whole) && Math.abs(whole) < 1e15 ? plainDecimal(whole) : numberText(number);
}

/** The same with its unit behind it: `2 1/4 in`, `150 psf/ft`. */
export function writeWithUnit(value: number, unit: Unit, style?: WritingStyle): string {
  const number = writeQuantity(value, unit, style);
  return number.endsWith('%') ? number : `${number} ${unit.symbol}`.trim();
}

/**
 * A length as a tape gives it, to the nearest sixteenth of an inch: `5' 3 1/2"`, `8'`, `-3/8"`.
 *
 * @param length - [m]
 */
export function writeTape(length: number): string {
  const parts = Math.round((Math.abs(length) / 0.0254) * 16);
  const feet = Math.floor(parts / 192);
  const inches = sixteenths((parts % 192) / 16);
  const sign = length < 0 && parts > 0 ? '-' : '';
  if (feet === 0) return `${sign}${inches}"`;
  return inches === '0'
    ? `${sign}${plainDecimal(feet)}'`
    : `${sign}${plainDecimal(feet)}' ${inches}"`;
}

/** A number with so many significant digits, without zeros at the end and, at ordinary sizes, without an exponent. */
export function numberText(number: number, digits = 4): string {
  if (!Number.isFinite(number)) return String(number);
  const rounded = Number(number.toPrecision(Math.min(Math.max(digits, 1), 17)));
  const size = Math.abs(rounded);
  return size === 0 || (size >= 1e-9 && size < 1e21) ? plainDecimal(rounded) : String(rounded);
}

/** Every digit of a number, without an exponent whatever its size: the shortest text that reads back to it. */
export function plainDecimal(number: number): string {
  const [digits = '0', exponent] = String(Math.abs(number)).split('e');
  const sign = number < 0 ? '-' : '';
  if (exponent === undefined) return `${sign}${digits}`;
  const [whole = '', tail = ''] = digits.split('.');
  const point = whole.length + Number(exponent);
  const figures = whole + tail;
  return point <= 0
    ? `${sign}0.${'0'.repeat(-point)}${figures}`
    : `${sign}${figures.padEnd(point, '0')}`;
}

/** A date as `2026-10-14`, with the time of day where it has one: `2026-10-14 07:30`. [s since 1970-01-01] */
export function writeDate(seconds: number): string {
  const date = new Date(seconds * 1000);
  if (Number.isNaN(date.getTime())) return '';
  const [day = '', time = ''] = date.toISOString().split('T');
  if (time.startsWith('00:00:00')) return day;
  return `${day} ${time.slice(0, time.startsWith('00', 6) ? 5 : 8)}`;
}

/** A time of work or waiting as people say it: `1 h 20 min`, `45 min`; from ten hours on to the tenth, `34.9 h`. [s] */
export function writeDuration(seconds: number): string {
  const minutes = Math.round(Math.abs(seconds) / 60);
  const sign = seconds < 0 && minutes > 0 ? '-' : '';
  if (minutes >= 600) return `${sign}${numberText(Math.round(minutes / 6) / 10, 6)} h`;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  const parts = [hours === 0 ? '' : `${String(hours)} h`, rest === 0 ? '' : `${String(rest)} min`];
  return `${sign}${parts.filter((part) => part !== '').join(' ') || '0 h'}`;
}

/** A length said in the other system than its unit's: `1612.9 mm` for inches and feet, `2 1/2"` for metres. */
export function inOtherSystem(length: number, unit: string): string {
  const millimetre = unitNamed('mm');
  const metric = ['mm', 'cm', 'm'].includes(unit);
  return metric || !millimetre ? writeTape(length) : writeWithUnit(length, millimetre);
}

/** Inches as a whole and a fraction, in lowest terms. */
function sixteenths(inches: number): string {
  const parts = Math.round(Math.abs(inches) * 16);
  const whole = Math.floor(parts / 16);
  const sign = inches < 0 && parts > 0 ? '-' : '';
  const fraction = fractionText(parts % 16, 16);
  if (fraction === '') return `${sign}${plainDecimal(whole)}`;
  return whole === 0 ? `${sign}${fraction}` : `${sign}${plainDecimal(whole)} ${fraction}`;
}

/** A proper fraction of a power of two in lowest terms; blank where it is zero. */
export function fractionText(parts: number, over: number): string {
  if (parts === 0) return '';
  return parts % 2 === 0 ? fractionText(parts / 2, over / 2) : `${String(parts)}/${String(over)}`;
}

const DECIMALS: ReadonlyMap<string, number> = new Map([
  ['mm', 1],
  ['cm', 1],
  ['m', 3],
  ['deg', 2],
]);

function fixed(number: number, decimals: number): string {
  if (Math.abs(number) >= 1e21) return numberText(number);
  // The nudge rounds 69.85 up although its double lies a hair below.
  const text = (number * (1 + 1e-14)).toFixed(decimals);
  return /[1-9]/.test(text) ? text : text.replace('-', '');
}

function trimmed(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

function nearly(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * Math.abs(b);
}
