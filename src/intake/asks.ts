import type { Choice } from '../units/index.ts';
import type { FileAsk, IntakeColumn, IntakeRow } from './intake.ts';

/** One question for each column whose bare numbers have no unit. */
export function unitAsks(
  unitless: ReadonlyMap<string, string>,
  sheet: readonly IntakeColumn[],
  long: ReadonlySet<string>,
): FileAsk[] {
  return [...unitless].map(([column, header]) => ({
    about: 'unit',
    column,
    header,
    question: `The numbers under “${header}” (${labelOf(column, sheet)}) have no unit. Which is it?`,
    choices: long.has(column) ? LONG_UNITS : SMALL_UNITS,
  }));
}

/** One question for each column that a remedy needs and the file does not have. */
export function missingAsks(
  rows: readonly IntakeRow[],
  filled: ReadonlySet<string>,
  sheet: readonly IntakeColumn[],
): FileAsk[] {
  if (rows.length === 0) return [];
  const gaps = rows.some(({ cells }) => cells.has('lean_gap'));
  const levels = rows.some(({ cells }) => cells.has('level_length'));
  return MISSING.filter(({ column }) => {
    if (!sheet.some(({ id }) => id === column) || filled.has(column)) return false;
    if (column === 'level_length') return gaps && !levels;
    if (column === 'probe_depth' && rows.every(isSnapped)) return false;
    return rows.some(({ cells }) => !cells.has(column));
  }).map((missing) => ({ about: 'missing', header: '', ...missing }));
}

/** A snapped post is replaced however sound its wood is. */
function isSnapped({ cells }: IntakeRow): boolean {
  return cells.get('rock_test') === 'snapped';
}

function labelOf(column: string, sheet: readonly IntakeColumn[]): string {
  return sheet.find(({ id }) => id === column)?.label ?? column;
}

function unit(label: string, entry: string): Choice {
  return { label, entry };
}

const INCHES = unit('inches', 'in');
const MILLIMETRES = unit('millimeters', 'mm');
const FEET = unit('feet', 'ft');
const METRES = unit('meters', 'm');
const SMALL_UNITS = [INCHES, MILLIMETRES, unit('centimeters', 'cm'), FEET];
const LONG_UNITS = [FEET, METRES, INCHES, MILLIMETRES];

const MISSING: readonly Pick<FileAsk, 'column' | 'question' | 'choices'>[] = [
  {
    column: 'lean_gap',
    question: 'The file has no lean readings. Take every post as plumb?',
    choices: [{ label: 'yes, every post is plumb', entry: '0 in' }],
  },
  {
    column: 'level_length',
    question: 'The file does not say how long the level was. Which level was used?',
    choices: ['24 in', '48 in', '72 in', '600 mm', '1200 mm', '1800 mm'].map((length) =>
      unit(length, length),
    ),
  },
  {
    column: 'probe_depth',
    question: 'The file has no probe readings. Take every post as sound?',
    choices: [{ label: 'yes, every post is sound', entry: '0 in' }],
  },
  {
    column: 'rock_test',
    question: 'The file has no rock test. Take every post as firm?',
    choices: [{ label: 'yes, every post is firm', entry: 'firm' }],
  },
];
