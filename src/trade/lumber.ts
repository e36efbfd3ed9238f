import { isProblem, readSize, type Answer } from '../units/index.ts';
import { INCH } from './factors.ts';
import { aboveZero, atMost, covered, refusal, shown, type Limit } from './limits.ts';

/**
 * The dry, dressed thickness of a size that lumber is sold by; the side of a square one.
 *
 * nominal 1 in → 3/4 in; 2 to 6 in less 1/2 in; above 6 in less 3/4 in
 *
 * Nominal 1 to 16 in. Green lumber is 1/16 to 1/4 in fuller, and rough lumber is as
 * measured. Metric names are real sizes and are never dressed.
 *
 * @param size - A name such as 4x4 or 2x6. [text]
 * @returns Thickness as it stands, dry. [m]
 *
 * @source NDS 2018 Supplement Table 1A; PS 20-05 for timbers, as quoted at sizes.com
 * @check 4x4 → 3 1/2 in (NDS 2018 Supplement Table 1A)
 */
export function dressed(size: string): Answer {
  const read = readSize(size);
  if (isProblem(read)) return { ...read, where: 'dressed' };
  if (read.form === 'named') return covered('dressed', [], () => dressedSide(read.thickness));
  return refusal('dressed', [
    `“${size}” is a size as it stands.`,
    'Use post_side for it: only a name such as 4x4 loses wood to dressing.',
  ]);
}

/** Dry, dressed size of one nominal side of 1 to 16 in. [m] */
export function dressedSide(nominal: number): number {
  if (nominal <= 1) return 0.75 * INCH;
  return (nominal <= 6 ? nominal - 0.5 : nominal - 0.75) * INCH;
}

/**
 * The shortest stock length that serves.
 *
 * the least of the lengths that is not under what is needed
 *
 * A length within 1e-9 of what is needed serves. No saw cut is allowed for.
 *
 * @param needed - Length of the piece, more than 0. [m]
 * @param lengths - Lengths that the yard sells. [m]
 * @returns Stock length. [m]
 *
 * @source arithmetic
 * @check hand-worked: 104 in from 8, 10 and 12 ft → 10 ft, for 8 ft is 96 in
 */
export function stockLength(needed: number, lengths: readonly number[]): Answer {
  const longest = lengths.reduce((most, length) => Math.max(most, length), 0);
  const none: Limit =
    lengths.length === 0
      ? ['The list of stock lengths is empty.', 'Enter the lengths that the yard sells.']
      : undefined;
  const limits = [
    none,
    aboveZero('length needed', needed, 'ft'),
    ...lengths.map((length) => aboveZero('stock length', length, 'ft')),
    atMost(needed, longest) ? undefined : tooShort(needed, longest),
  ];
  return covered('stock_length', limits, () =>
    Math.min(...lengths.filter((length) => atMost(needed, length))),
  );
}

function tooShort(needed: number, longest: number): Limit {
  return [
    `“${shown(needed, 'ft')}” (${shown(needed, 'm')}) is needed, and the longest stock is ${shown(longest, 'ft')} (${shown(longest, 'm')}).`,
    'Add a longer stock length, or set the post less deep.',
  ];
}
