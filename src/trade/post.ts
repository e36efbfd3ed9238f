import { isProblem, readSize, type Answer, type Size } from '../units/index.ts';
import { covered, refusal } from './limits.ts';
import { dressedSide } from './lumber.ts';

/**
 * The smaller side of a post as it stands.
 *
 * dressed for a name such as 4x4; as written for an actual size; the diameter of a round one
 *
 * @param size - Post size, such as 4x4, 125 x 75 mm or 2 3/8 in round. [text]
 * @returns Thickness, or diameter. [m]
 *
 * @source NDS 2018 Supplement Table 1A for names; otherwise as written
 * @check 4x4 → 3 1/2 in (NDS 2018 Supplement Table 1A)
 */
export function postSide(size: string): Answer {
  return ofSize('post_side', size, ({ thickness }) => thickness);
}

/**
 * The larger side of a post as it stands.
 *
 * dressed for a name such as 4x6; as written for an actual size; the diameter of a round one
 *
 * @param size - Post size, such as 4x6, 125 x 75 mm or 2 3/8 in round. [text]
 * @returns Width, or diameter. [m]
 *
 * @source NDS 2018 Supplement Table 1A for names; otherwise as written
 * @check 4x6 → 5 1/2 in (engineeringtoolbox.com softwood table)
 */
export function postFace(size: string): Answer {
  return ofSize('post_face', size, ({ width }) => width);
}

/**
 * The area that a post takes up in its hole.
 *
 * thickness x width; pi / 4 x diameter^2 for a round post
 *
 * A pipe counts as a full circle: concrete does not fill it.
 *
 * @param size - Post size, such as 4x4, 125 x 75 mm or 2 3/8 in round. [text]
 * @returns Area across the post. [m^2]
 *
 * @source plane geometry
 * @check hand-worked: 4x4 → 3.5 x 3.5 = 12.25 in^2
 */
export function postArea(size: string): Answer {
  return ofSize('post_area', size, ({ thickness, width, round }) =>
    round ? (Math.PI / 4) * thickness ** 2 : thickness * width,
  );
}

/**
 * The section modulus of a solid post about its weaker axis.
 *
 * modulus = width x thickness^2 / 6
 *
 * A round post is refused: a pipe's wall is not in its name.
 *
 * @param size - Post size, such as 4x4 or 125 x 75 mm. [text]
 * @returns Section modulus. [m^3]
 *
 * @source section modulus of a solid rectangle
 * @check hand-worked: 4x4 → 3.5^3/6 = 7.1458 in^3
 */
export function postModulus(size: string): Answer {
  const read = readSize(size);
  if (!isProblem(read) && read.form === 'actual' && read.shape === 'round') {
    return refusal('post_modulus', [
      `“${size}” is round, and its wall is not known.`,
      'Take the section modulus from the maker of the pipe.',
    ]);
  }
  return ofSize('post_modulus', size, ({ thickness, width }) => (width * thickness ** 2) / 6);
}

interface Section {
  readonly thickness: number;
  readonly width: number;
  readonly round: boolean;
}

function ofSize(where: string, size: string, work: (section: Section) => number): Answer {
  const read = readSize(size);
  if (isProblem(read)) return { ...read, where };
  return covered(where, [], () => work(sectionOf(read)));
}

function sectionOf(size: Size): Section {
  if (size.form === 'named') {
    return {
      thickness: dressedSide(size.thickness),
      width: dressedSide(size.width),
      round: false,
    };
  }
  if (size.shape === 'round') {
    return { thickness: size.diameter, width: size.diameter, round: true };
  }
  return { thickness: size.thickness, width: size.width, round: false };
}
