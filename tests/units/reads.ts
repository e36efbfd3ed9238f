import {
  LENGTH,
  isDoubt,
  isProblem,
  quantity,
  readEntry,
  sentence,
  type Doubt,
  type Kind,
  type Problem,
  type Reading,
  type ReadingOptions,
} from '../../src/units/index.ts';

/** The Reading of an entry; a test that meets anything else is told what it met. */
export function readingOf(text: string, kind: Kind, options?: ReadingOptions): Reading {
  const read = readEntry(text, kind, options);
  if (isProblem(read)) throw new Error(sentence(read));
  if (isDoubt(read)) throw new Error(`${text}: ${read.question}`);
  return read;
}

/** The Doubt of an entry. */
export function doubtOf(text: string, kind: Kind, options?: ReadingOptions): Doubt {
  const read = readEntry(text, kind, options);
  if (isProblem(read)) throw new Error(sentence(read));
  if (!isDoubt(read)) throw new Error(`${text} was read as ${String(read.value)}`);
  return read;
}

/** The Problem of an entry. */
export function problemOf(text: string, kind: Kind, options?: ReadingOptions): Problem {
  const read = readEntry(text, kind, options);
  if (!isProblem(read)) throw new Error(`${text} was read: ${JSON.stringify(read)}`);
  return read;
}

/** The number of a length. [mm] */
export function millimetres(text: string, options?: ReadingOptions): number {
  return Number(readingOf(text, quantity(LENGTH), options).value) * 1000;
}
