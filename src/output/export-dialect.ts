import type { WriteOptions } from '../csv/index.ts';
import {
  LENGTH,
  isQuantity,
  parseUnit,
  writeExact,
  writeWithUnit,
  type Kind,
  type Unit,
} from '../units/index.ts';

/** How whoever gets a list wants it written. */
export interface Dialect {
  readonly separator: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
  /** A byte order mark at the start, which some programs need to read accents. */
  readonly mark: boolean;
  /** The unit of every length; `job` leaves each as its sheet shows it. */
  readonly lengths: 'job' | 'in' | 'ft' | 'mm' | 'm';
}

/** As lists are written where nobody asked for anything else. */
export const PLAIN_DIALECT: Dialect = { separator: ',', decimal: '.', mark: false, lengths: 'job' };

/** How the file as a whole is written. */
export function writeOptions({ separator, mark }: Dialect): WriteOptions {
  return { delimiter: separator, bom: mark };
}

/** A number as text, with the decimal mark of the dialect. */
export function numberIn(text: string, { decimal }: Dialect): string {
  if (decimal === '.') return text;
  // Three figures behind a comma could be read as thousands: a nought more leaves no doubt.
  return text.replace(/(\d)\.(\d+)/, (_, whole: string, parts: string) =>
    parts.length === 3 ? `${whole},${parts}0` : `${whole},${parts}`,
  );
}

/** A quantity as an entry that reads back to the same value, in the unit of the dialect. */
export function exactIn(value: number, kind: Kind, unit: Unit, dialect: Dialect): string {
  return numberIn(writeExact(value, unitIn(kind, unit, dialect)), dialect);
}

/** A quantity as people write it, rounded, in the unit of the dialect; `shown` is how its sheet shows it. */
export function shownIn(
  value: number,
  shown: string,
  kind: Kind,
  unit: Unit,
  dialect: Dialect,
): string {
  const wanted = unitIn(kind, unit, dialect);
  return numberIn(wanted === unit ? shown : writeWithUnit(value, wanted), dialect);
}

function unitIn(kind: Kind, unit: Unit, { lengths }: Dialect): Unit {
  return lengths !== 'job' && isQuantity(kind, LENGTH) ? (parseUnit(lengths) ?? unit) : unit;
}
