import { quoted } from './characters.ts';
import type { Kind, ListKind } from './kind.ts';
import { isProblem, problem, type Problem } from './problem.ts';
import {
  isDoubt,
  type Choice,
  type Doubt,
  type ReadEntry,
  type Reading,
  type ReadingOptions,
} from './reading.ts';

/**
 * Reads a list such as `8, 10, 12 ft` or `8 ft; 10 ft`: a unit at its end goes for every number
 * that has none. One doubtful item is asked about with the whole list as the answer.
 */
export function readList(
  text: string,
  kind: ListKind,
  options: ReadingOptions,
  read: ReadEntry,
): Reading | Doubt | Problem {
  if (/\d,\d{3}(?!\d)/.test(text) && !/;|, /.test(text)) return oneOrTwo(text, kind, options, read);
  const items = itemsOf(text);
  const found = readItems(items, kind.of, options, read);
  const wrong = found.find(isProblem);
  if (wrong) return wrong;
  const doubts = found.filter((item) => isDoubt(item));
  const [doubt] = doubts;
  if (!doubt) return asOne(found.filter((item) => 'value' in item));
  const place = doubts.length === 1 ? found.indexOf(doubt) : found.length - 1;
  const asked = found[place];
  const answers = asked && isDoubt(asked) ? asked.choices : [];
  const choices = answers.map(({ entry, label }): Choice => {
    const whole = items.with(place, entry).join('; ');
    return { label: doubts.length === 1 ? label : whole, entry: whole };
  });
  const readable = choices.filter(({ entry }) =>
    readItems(itemsOf(entry), kind.of, options, read).every((item) => 'value' in item),
  );
  return { doubt: doubt.doubt, question: doubt.question, choices: readable };
}

/** `1,200 mm` may be one number or two; with nothing else to go by it is asked. */
function oneOrTwo(
  text: string,
  kind: ListKind,
  options: ReadingOptions,
  read: ReadEntry,
): Doubt | Problem {
  const entries = [itemsOf(text).join('; '), ...(/,.*,/.test(text) ? [] : [text.replace(',', '')])];
  const choices = entries
    .filter((entry) =>
      readItems(itemsOf(entry), kind.of, options, read).every((item) => 'value' in item),
    )
    .map((entry) => ({ label: entry, entry }));
  if (choices.length === 0) {
    const fix = 'Put a space or a semicolon between the items: 8, 10, 12 ft.';
    return problem('', `${quoted(text)} is not a list I can read.`, fix);
  }
  const question = `Does the comma in ${quoted(text)} stand between two items or inside one number?`;
  return { doubt: 'reading', question, choices };
}

function itemsOf(text: string): readonly string[] {
  const separator = text.includes(';') ? ';' : /, /.test(text) ? ', ' : ',';
  return text.split(separator).map((item) => item.trim());
}

function readItems(
  items: readonly string[],
  of: Kind,
  options: ReadingOptions,
  read: ReadEntry,
): readonly (Reading | Doubt | Problem)[] {
  const last = items.length === 0 ? undefined : read(items.at(-1) ?? '', of, options);
  const shared =
    last && 'value' in last && last.unit !== '' ? { ...options, unit: last.unit } : options;
  return items.map((item, place) => {
    if (item === '')
      return problem('', 'One item of the list is blank.', 'Take out the extra comma.');
    return last && place === items.length - 1 ? last : withSharedUnit(read(item, of, shared), last);
  });
}

/** A unit written once at the end of the list is written, not assumed. */
function withSharedUnit(
  item: Reading | Doubt | Problem,
  last: Reading | Doubt | Problem | undefined,
): Reading | Doubt | Problem {
  const written = last && 'value' in last && last.unitAssumed !== true && last.unit !== '';
  if (!written || !('value' in item)) return item;
  const { unitAssumed, ...rest } = item;
  return unitAssumed === true ? rest : item;
}

function asOne(items: readonly Reading[]): Reading {
  return {
    value: items.map((item) => item.value),
    unit: items.findLast((item) => item.unit !== '')?.unit ?? '',
    ...(items.some((item) => item.unitAssumed) && { unitAssumed: true }),
    ...(items.some((item) => item.approximate) && { approximate: true }),
  };
}
