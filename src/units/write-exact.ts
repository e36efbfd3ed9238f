import { fromSI, siUnit, toSI, type Unit } from './unit.ts';
import { fractionText, plainDecimal } from './write.ts';

/**
 * The shortest entry, with its unit, that reads back to the identical value: a fraction where
 * inches are a whole count of 64ths, else a decimal. Where no number in this unit comes back to
 * the value to the last digit, the SI unit is used instead, in which every value has one.
 *
 * @param value - In SI; must be finite.
 */
export function writeExact(value: number, unit: Unit): string {
  const number = exactFraction(value, unit) ?? exactDecimal(value, unit);
  if (number !== undefined) return `${number} ${unit.symbol}`.trim();
  return `${plainDecimal(value)} ${siUnit(unit.dimension).symbol}`.trim();
}

function exactFraction(value: number, unit: Unit): string | undefined {
  if (unit.symbol !== 'in') return undefined;
  const parts = Math.round(Math.abs(fromSI(value, unit)) * 64);
  if (parts > 1e12 || toSI(parts / 64, unit) !== Math.abs(value)) return undefined;
  const whole = Math.floor(parts / 64);
  const fraction = fractionText(parts % 64, 64);
  const number = whole > 0 && fraction !== '' ? `${String(whole)} ${fraction}` : fraction;
  return `${value < 0 ? '-' : ''}${number === '' ? String(whole) : number}`;
}

function exactDecimal(value: number, unit: Unit): string | undefined {
  const nearest = fromSI(value, unit);
  if (!Number.isFinite(nearest)) return undefined;
  for (let digits = 1; digits <= 17; digits += 1) {
    const number = Number(nearest.toPrecision(digits));
    if (toSI(number, unit) === value) return plainDecimal(number);
  }
  return undefined;
}
