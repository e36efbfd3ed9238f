import { plainCharacters, quoted } from './characters.ts';
import { readChoice, readFlag } from './choice.ts';
import { readDate } from './date.ts';
import type { Kind } from './kind.ts';
import { readList } from './list.ts';
import { wordForReading } from './not-read.ts';
import { problem, type Problem } from './problem.ts';
import { readQuantity } from './quantity.ts';
import type { Doubt, Reading, ReadingOptions } from './reading.ts';

/** Entries longer than this hold more than one reading; only text may be longer. */
const LONGEST_ENTRY = 500;

/**
 * Reads one entry as a person wrote it: a Reading where it can mean one thing only, a Doubt where
 * it can mean several or says that nothing was read, a Problem where it can't be read. Never throws.
 */
export function readEntry(
  text: string,
  kind: Kind,
  options: ReadingOptions = {},
): Reading | Doubt | Problem {
  if (kind.type === 'text') return { value: text.trim(), unit: '' };
  if (text.length > LONGEST_ENTRY) {
    const found = `${quoted(text)} is longer than a reading can be.`;
    return problem('', found, 'Keep the reading here and move the rest to a note.');
  }
  switch (kind.type) {
    case 'quantity':
      return readQuantity(text, kind, options);
    case 'choice':
      if (kind.choices.includes(text.trim())) return { value: text.trim(), unit: '' };
      return notRead(text) ?? readChoice(text, kind);
    case 'flag':
      return notRead(text) ?? readFlag(text);
    case 'date':
      return notRead(text) ?? readDate(text);
    case 'list':
      return notRead(text) ?? readList(text, kind, options, readEntry);
  }
}

function notRead(text: string): Doubt | undefined {
  const plain = plainCharacters(text);
  return wordForReading(/^-+$/.test(plain) ? '?' : plain);
}
