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
  if (kind.type === 'text') return dittoMark(text) ?? { value: text.trim(), unit: '' };
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

/** A lone ditto mark, which even words would not begin with. */
function dittoMark(text: string): Doubt | undefined {
  return text.length < 8 && /^["'\u2033\u3003\u201c-\u201f\u00b4\s]+$/.test(text)
    ? notRead(text)
    : undefined;
}

function notRead(text: string): Doubt | undefined {
  const plain = plainCharacters(text);
  return wordForReading(/^-+$/.test(plain) ? '?' : plain);
}
