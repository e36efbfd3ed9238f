import { sentence, type Problem } from '../units/index.ts';

/** A moment, as this person's browser writes it. */
export function whenInWords(time: number): string {
  return new Date(time).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

/** A problem to be told by whoever asked for the deed. */
export function inWords(problem: Problem): Error {
  return new Error(sentence(problem));
}
