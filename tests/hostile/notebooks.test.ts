import { describe, expect, it } from 'vitest';
import { Notebook, readNotebook, toJson } from '../../src/notebook/index.ts';
import {
  crewTable,
  materialTable,
  postTable,
  quoteTable,
  tableCsv,
} from '../../src/output/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { openBook } from '../../src/worksheet/index.ts';
import { hostileFiles } from './notebooks.ts';

const FILES = hostileFiles();
// Far above what any of them takes, far below what a person would call hung.
const LONGEST_MS = 20_000;

describe('a notebook file that means harm', () => {
  it('comes in more than a hundred ways', () => {
    expect(FILES.length).toBeGreaterThanOrEqual(100);
    expect(new Set(FILES.map(({ what }) => what)).size).toBe(FILES.length);
  });

  it.each(FILES)('is opened or refused in words: $what', { timeout: LONGEST_MS }, ({ text }) => {
    const answer = opened(text());
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    expect(answer.every((words) => words.trim() !== '')).toBe(true);
    for (const words of answer) {
      expect(words).not.toMatch(/\[object|undefined|NaN|Infinity(?!”)/);
      // A list somebody has to read, not the file over again.
      expect(words.length).toBeLessThan(1000);
    }
  });
});

/** What a person is told: why it was refused, or what was set aside of it. Everything that is shown of it is worked out. */
function opened(text: string): readonly string[] {
  const read = readNotebook(parsed(text));
  if (isProblem(read)) return [sentence(read)];
  const book = openBook(new Notebook(read.document));
  for (const sheet of book.sheets) {
    sheet.totals();
    for (let row = 0; row < Math.min(sheet.rowCount, 50); row += 1) {
      expect(typeof sheet.rowName(row)).toBe('string');
      for (const { id } of sheet.columns) expect(typeof sheet.cell(row, id).text).toBe('string');
    }
  }
  book.asks();
  book.stops();
  for (const table of [materialTable(book), postTable(book), crewTable(book), quoteTable(book)])
    expect(typeof tableCsv(table)).toBe('string');
  // Whatever was taken can be written and read again, whole.
  const again = readNotebook(JSON.parse(JSON.stringify(toJson(read.document))));
  if (isProblem(again)) throw new Error(sentence(again));
  expect(again.setAside).toEqual([]);
  expect(again.document).toEqual(read.document);
  return [...read.setAside, ...book.own.problems().map(sentence)];
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
