import { LENGTH, sameDimension } from './dimension.ts';
import { problem, type Problem } from './problem.ts';
import { unitNamed } from './unit.ts';

/** The size of a post, rail or pipe as it was written. */
export type Size = NamedSize | RectangleSize | RoundSize;

/** A name such as `4x4`: nominal inches, whole numbers, not what a tape would show. */
export interface NamedSize {
  readonly form: 'named';
  /** The smaller nominal number. */
  readonly thickness: number;
  readonly width: number;
}

/** Sides as they stand, such as `125 x 75 mm`. [m] */
export interface RectangleSize {
  readonly form: 'actual';
  readonly shape: 'rectangle';
  /** The smaller side. [m] */
  readonly thickness: number;
  readonly width: number;
}

/** A round post or pipe as it stands, such as `2 3/8 in round`. [m] */
export interface RoundSize {
  readonly form: 'actual';
  readonly shape: 'round';
  readonly diameter: number;
}

const EXAMPLES = 'Write it like 4x4, 100 mm, 3 1/2 in x 5 1/2 in or 2 3/8 in round.';

/**
 * Reads the size of a post. Two whole numbers from 1 to 16 with no unit are a
 * name; anything with a unit is the size as it stands, and one number with a
 * unit is a square. Never guesses a unit.
 */
export function readSize(text: string): Size | Problem {
  if (text.length > LONGEST) return unread(`${text.slice(0, LONGEST)}…`);
  const plain = plainSpelling(text);
  const bare = plain.replace(ROUND_WORD, ' ').trim();
  const round = bare !== plain;
  const sides = bare.split(/\s*(?:[x*]|by)\s*/).map(readSide);
  if (sides.some((side) => side === undefined)) return unread(text);
  const known = sides.filter((side) => side !== undefined);
  if (known.some(({ number }) => !(number > 0))) {
    return problem('', `“${text}” has a side of 0.`, 'Enter each side as more than 0.');
  }
  if (round) return known.length === 1 ? roundSize(text, known) : unread(text);
  if (known.length > 2) {
    return problem(
      '',
      `“${text}” has three sizes.`,
      'Write the two sides only, without the length.',
    );
  }
  return known.every(({ unit }) => unit === '') ? namedSize(text, known) : actualSize(text, known);
}

interface Side {
  readonly number: number;
  /** As a unit symbol, blank where none was written. */
  readonly unit: string;
}

/** No size takes more letters; a longer text is not worth reading. */
const LONGEST = 60;
const ROUND_WORD = /\b(?:round|diameter|dia|od)\b\.?|ø/g;
const FRACTIONS = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);
const UNIT_WORDS = new Map([
  ['"', 'in'],
  ["''", 'in'],
  ['in.', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ["'", 'ft'],
]);
const SIDE = /^(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(\d+)\s*(\D*)$|^(\d*[.,]?\d+)\s*(\D*)$/;

function plainSpelling(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (mark) => ` ${FRACTIONS.get(mark) ?? mark}`)
    .replace(/[⁄∕]/g, '/')
    .replace(/×/g, 'x')
    .replace(/[”“″]/g, '"')
    .replace(/[’‘′]/g, "'")
    .replace(/\bo\.d\.?/, 'od')
    .replace(/\s+/g, ' ')
    .trim();
}

function readSide(text: string): Side | undefined {
  const match = SIDE.exec(text.trim());
  if (!match) return undefined;
  const [, whole, top, bottom, fractionUnit, decimal, decimalUnit] = match;
  // 11/4 could be 1 1/4 or 2 3/4.
  if (top !== undefined && Number(top) >= Number(bottom)) return undefined;
  // A comma before three digits could part thousands or decimals.
  if (decimal !== undefined && /,\d{3}$/.test(decimal)) return undefined;
  const number =
    decimal === undefined
      ? Number(whole ?? 0) + Number(top) / Number(bottom)
      : Number(decimal.replace(',', '.'));
  const word = (fractionUnit ?? decimalUnit ?? '').trim();
  const unit = UNIT_WORDS.get(word) ?? word;
  const known = unitNamed(unit);
  const isLength = unit === '' || (known && sameDimension(known.dimension, LENGTH));
  return isLength && Number.isFinite(number) ? { number, unit } : undefined;
}

function namedSize(text: string, sides: readonly Side[]): Size | Problem {
  const numbers = sides.map(({ number }) => number);
  const nominal = numbers.every((number) => Number.isInteger(number) && number <= 16);
  if (numbers.length === 2 && nominal) {
    return { form: 'named', thickness: Math.min(...numbers), width: Math.max(...numbers) };
  }
  return noUnit(text);
}

function actualSize(text: string, sides: readonly Side[]): Size | Problem {
  const unit = sides.at(-1)?.unit ?? '';
  if (unit === '') return noUnit(text);
  const lengths = sides.map((side) => inMetres(side, unit));
  return {
    form: 'actual',
    shape: 'rectangle',
    thickness: Math.min(...lengths),
    width: Math.max(...lengths),
  };
}

function roundSize(text: string, [side]: readonly Side[]): Size | Problem {
  if (side === undefined || side.unit === '') return noUnit(text);
  return { form: 'actual', shape: 'round', diameter: inMetres(side, side.unit) };
}

function inMetres({ number, unit }: Side, fallback: string): number {
  return number * (unitNamed(unit === '' ? fallback : unit)?.factor ?? NaN);
}

function noUnit(text: string): Problem {
  return problem('', `“${text}” has no unit.`, EXAMPLES);
}

function unread(text: string): Problem {
  return problem('', `“${text}” is not a size I can read.`, EXAMPLES);
}
