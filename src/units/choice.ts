import { plainCharacters, quoted } from './characters.ts';
import type { ChoiceKind } from './kind.ts';
import { problem, type Problem } from './problem.ts';
import type { Doubt, Reading } from './reading.ts';

/** Reads one of a list: capitals, spaces and hyphens do not matter, and the beginning of one choice is enough. */
export function readChoice(text: string, { choices }: ChoiceKind): Reading | Doubt | Problem {
  const exact = choices.find((choice) => choice === text.trim());
  const either = text.split(/\s+or\s+|\s*\?\s*/).filter((part) => part.trim() !== '');
  const named = either.map((part) => choices.find((choice) => letters(choice) === letters(part)));
  const key = letters(text);
  const same = choices.filter((choice) => letters(choice) === key);
  const begun = key === '' ? [] : choices.filter((choice) => letters(choice).startsWith(key));
  const open = named.filter((choice) => choice !== undefined);
  const found =
    exact !== undefined
      ? [exact]
      : open.length > 1 && open.length === either.length
        ? [...new Set(open)]
        : same.length > 0
          ? same
          : begun;
  const [only] = found;
  if (only !== undefined && found.length === 1) return { value: only, unit: '' };
  if (only === undefined) {
    const fix = `Choose one of ${choices.join(', ')}.`;
    return problem('', `${quoted(text)} is not one of the choices here.`, fix);
  }
  const question = `${quoted(text)} could be ${found.join(' or ')}. Which is it?`;
  return {
    doubt: 'reading',
    question,
    choices: found.map((choice) => ({ label: choice, entry: choice })),
  };
}

/** Reads yes or no: `y`, `true` and `x` are yes, `n` and `false` are no. */
export function readFlag(text: string): Reading | Problem {
  const word = plainCharacters(text).toLowerCase();
  if (['yes', 'y', 'true', 'x', '✓', '✔'].includes(word)) return { value: true, unit: '' };
  if (['no', 'n', 'false'].includes(word)) return { value: false, unit: '' };
  return problem('', `${quoted(text)} is neither yes nor no.`, 'Write yes or no.');
}

function letters(text: string): string {
  return plainCharacters(text)
    .toLowerCase()
    .replace(/[\s_-]/g, '');
}
