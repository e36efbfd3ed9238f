import { readNumber, type WrittenNumber } from './number.ts';
import { toSI, unitNamed } from './unit.ts';

/** Feet and inches as a tape gives them, and every way they can be taken. */
export interface TapeReading {
  readonly ways: readonly {
    readonly value: number;
    readonly unit: string;
    readonly entry: string;
  }[];
  readonly sure: boolean;
}

/**
 * Reads feet with their mark, with or without inches: `6'`, `5' 3 1/2"`, `6'-0"`, `5 ft 6 in`.
 * Undefined where there is no whole number of feet to begin with. `5.3'` is taken both as a decimal
 * and as 5 ft 3 in, and 12 in or more behind feet is never sure.
 */
export function readFeetInches(text: string, decimal?: '.' | ','): TapeReading | undefined {
  const decimalFeet = /^(\d+)[.,](\d{1,2}) ?'$/.exec(text);
  if (decimalFeet) return feetOrInches(decimalFeet[1] ?? '', decimalFeet[2] ?? '');
  if (/ft[23]$/i.test(text)) return undefined;
  const parts = /^(\d{1,9}) ?(?:'|feet|foot|ft\.?) ?[-,]? ?([\d.].*)$/i.exec(text);
  if (!parts) return undefined;
  const inches = readNumber((parts[2] ?? '').replace(INCH_MARK, ''), decimal);
  return inches && feetAndInches(parts[1] ?? '', inches);
}

/** Reads two numbers that may be feet and inches or a fraction that was turned into a date, such as `5-8`, `5 3` or `5-3 1/2"`; never sure. */
export function readDashed(text: string, decimal?: '.' | ','): TapeReading | undefined {
  const parts = /^(\d{1,9})(?: ?- ?| )(\d+(?: \d+ ?\/ ?\d+)?)$/.exec(text.replace(INCH_MARK, ''));
  const inches = parts && readNumber(parts[2] ?? '', decimal);
  if (!inches) return undefined;
  const likely = inches.sure && inches.ways.every((way) => way.number < 12);
  const ways = likely ? feetAndInches(parts[1] ?? '', inches).ways : [];
  return { ways: [...ways, ...dayAndMonth(text)], sure: false };
}

/** The tape’s fraction that a program may have turned into a day and a month, such as `5-8`. */
function dayAndMonth(text: string): TapeReading['ways'] {
  const pair = /^(\d{1,2}) ?- ?(\d{1,2})$/.exec(text);
  const [top, bottom] = [Number(pair?.[1]), Number(pair?.[2])].sort((a, b) => a - b);
  if (top === undefined || top === bottom || ![2, 4, 8, 16, 32].includes(bottom ?? 0)) return [];
  const entry = `${String(top)}/${String(bottom)} in`;
  return [{ value: inUnit(top / (bottom ?? 1), 'in'), unit: 'in', entry }];
}

const INCH_MARK = / ?(?:"|inch(?:es)?|ins?\.?)$/i;

function feetOrInches(feet: string, tail: string): TapeReading | undefined {
  const inches = readNumber(tail);
  const number = Number(`${feet}.${tail}`);
  const asDecimal = { value: inUnit(number, 'ft'), unit: 'ft', entry: `${feet}.${tail} ft` };
  if (!inches || Number(tail) < 1 || Number(tail) > 11) return { ways: [asDecimal], sure: true };
  const asInches = feetAndInches(feet, { ...inches, ways: [way(Number(tail))] }).ways;
  return { ways: [asDecimal, ...asInches], sure: false };
}

function feetAndInches(feetText: string, inches: WrittenNumber): TapeReading {
  const feet = Number(feetText);
  const ways = inches.ways.map(({ number, text }) => {
    // Whole feet stay whole feet, so that 6'-0" and 6' are the same to the last digit.
    if (number === 0) return { value: inUnit(feet, 'ft'), unit: 'ft', entry: `${feetText}' 0"` };
    const total = feet * 12 + number;
    const entry = number < 12 ? `${feetText}' ${text}"` : `${String(total)} in`;
    return { value: inUnit(total, 'in'), unit: 'in', entry };
  });
  return { ways, sure: inches.sure && ways.length === 1 && inches.ways.every(underAFoot) };
}

function underAFoot({ number }: { readonly number: number }): boolean {
  return number < 12;
}

function way(number: number): { readonly number: number; readonly text: string } {
  return { number, text: String(number) };
}

function inUnit(number: number, symbol: 'ft' | 'in'): number {
  const unit = unitNamed(symbol);
  return unit ? toSI(number, unit) : number;
}
