import { plainCharacters, quoted } from './characters.ts';
import { problem, type Problem } from './problem.ts';
import type { Doubt, Reading } from './reading.ts';
import { monthNumber } from './turned-date.ts';
import { writeDate } from './write.ts';

/**
 * Reads a date with or without a time of day as seconds since 1970-01-01, in no zone:
 * `2026-10-14`, `2026-10-14 07:30`, `14 Oct 2026`. `10/11/2026` is asked about.
 */
export function readDate(text: string): Reading | Doubt | Problem {
  const plain = plainCharacters(text);
  const [day, time] = splitTime(plain);
  const seconds = time === undefined ? 0 : timeOfDay(time);
  const days = daysOf(day);
  const dates = [...new Set(seconds === undefined ? [] : days.map((at) => at + seconds))];
  const [only] = dates;
  if (only !== undefined && dates.length === 1 && !/[/.-]\d\d$/.test(unlessISO(day))) {
    return { value: only, unit: '' };
  }
  if (only === undefined) {
    const fix = 'Write it like 2026-10-14 or 2026-10-14 07:30.';
    return problem('', `${quoted(text)} is not a date I can read.`, fix);
  }
  const choices = dates.map((date) => ({ label: written(date), entry: writeDate(date) }));
  return { doubt: 'reading', question: `Which day is ${quoted(text)}?`, choices };
}

/** Day, month and year in words, so that the two orders can be told apart. */
function written(seconds: number): string {
  const [year = '', month = '', rest = ''] = writeDate(seconds).split('-');
  return `${String(Number(rest.slice(0, 2)))} ${MONTHS[Number(month) - 1] ?? ''} ${year}${rest.slice(2)}`;
}

const MONTHS =
  'January February March April May June July August September October November December'.split(
    ' ',
  );

function splitTime(text: string): readonly [string, string | undefined] {
  const parts = /^(.+?)(?: |T(?=\d))(\d{1,2}:.*)$/.exec(text);
  return parts ? [parts[1] ?? '', parts[2]] : [text, undefined];
}

function timeOfDay(text: string): number | undefined {
  const parts = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:\.0+)?)? ?([ap]m)?$/i.exec(text);
  if (!parts) return undefined;
  const half = parts[4]?.toLowerCase();
  const [hour, minute, second] = [Number(parts[1]), Number(parts[2]), Number(parts[3] ?? 0)];
  if (minute > 59 || second > 59 || hour > 23 || (half && (hour < 1 || hour > 12)))
    return undefined;
  const hours = half === undefined ? hour : (hour % 12) + (half === 'pm' ? 12 : 0);
  return hours * 3600 + minute * 60 + second;
}

function daysOf(text: string): readonly number[] {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso) return seconds(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const numbers = /^(\d{1,2})([/.-])(\d{1,2})\2(\d{4}|\d{2})$/.exec(text);
  if (numbers) {
    const [a, b] = [Number(numbers[1]), Number(numbers[3])];
    const year = fullYear(numbers[4] ?? '');
    // Points between the numbers are written day first wherever they are written at all.
    return numbers[2] === '.'
      ? seconds(year, b, a)
      : [...seconds(year, a, b), ...seconds(year, b, a)];
  }
  const dayFirst = /^(\d{1,2})[-. ]{1,2}(\p{L}{3,9})[-., ]{1,2}(\d{4}|\d{2})$/u.exec(text);
  if (dayFirst) return named(dayFirst[2], dayFirst[1], dayFirst[3]);
  const monthFirst = /^(\p{L}{3,9})[-. ]{1,2}(\d{1,2})[-, ]{1,2}(\d{4}|\d{2})$/u.exec(text);
  return monthFirst ? named(monthFirst[1], monthFirst[2], monthFirst[3]) : [];
}

function named(name = '', day = '', year = ''): readonly number[] {
  return seconds(fullYear(year), monthNumber(name) ?? 0, Number(day));
}

function fullYear(year: string): number {
  return Number(year) + (year.length === 2 ? 2000 : 0);
}

// A year of two figures is asked about even where day and month are plain.
function unlessISO(day: string): string {
  return /^\d{4}-/.test(day) ? '' : day;
}

function seconds(year: number, month: number, day: number): readonly number[] {
  const date = new Date(Date.UTC(year, month - 1, day));
  const kept = date.getUTCMonth() === month - 1 && date.getUTCDate() === day && year >= 1900;
  return kept ? [date.getTime() / 1000] : [];
}
