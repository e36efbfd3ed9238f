import { describe, expect, it } from 'vitest';
import { bringIn, intakeColumns, readSite, type IntakeRow } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { accountFor } from '../../src/output/index.ts';
import { LENGTH, isDoubt, isProblem, isQuantity, readEntry } from '../../src/units/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { BYTES } from './corpus/bytes.ts';
import { CELLS } from './corpus/cells.ts';
import { COLUMN_NAMES, SOUND, type CorpusFile } from './corpus/file.ts';
import { HEADERS } from './corpus/headers.ts';
import { POSTS } from './corpus/posts.ts';
import { SEPARATORS } from './corpus/separators.ts';
import { SHAPE } from './corpus/shape.ts';

const CORPUS = [...BYTES, ...SEPARATORS, ...SHAPE, ...POSTS, ...CELLS, ...HEADERS];

// One book for all: an open book costs far more than a file, and undo leaves it as it was.
const notebook = new Notebook(startDocument('corpus'));
const book = openBook(notebook);
const options = intakeColumns(book.sheet('posts')?.columns ?? [], new Map());

describe('the corpus', () => {
  it('has at least 120 files, no two of which are of one kind', () => {
    expect(CORPUS.length).toBeGreaterThanOrEqual(120);
    expect(new Set(CORPUS.map(({ is }) => is)).size).toBe(CORPUS.length);
  });
});

describe('a file', () => {
  it.each(CORPUS.filter(({ refused }) => refused === undefined))('$is is read', (one) => {
    const { rows = '', asks = [], over = [], says } = one;
    const read = outcome(one);
    if ('refused' in read) throw new Error(read.refused);
    expect(read.rows).toEqual(
      rows
        .split('\n')
        .filter((row) => row !== '')
        .map(pairs),
    );
    const given = asks.some((ask) => SOUND.includes(ask)) ? SOUND : [];
    const left = SOUND.filter((ask) => !given.includes(ask));
    expect(read.asks.filter((ask) => !left.includes(ask))).toEqual([...asks].sort());
    expect(read.over.map(({ line }) => line)).toEqual(over.map((line) => Number.parseInt(line)));
    for (const [at, { why }] of read.over.entries())
      expect(why).toContain((over[at] ?? '').replace(/^\d+ /, ''));
    if (says !== undefined) expect(read.notes.join('\n')).toContain(says);
    expect(read.account.imported).toBeGreaterThanOrEqual(0);
    expect(read.account.imported + read.account.asked + read.account.passedOver).toBe(
      read.account.read,
    );
  });

  it.each(CORPUS.filter(({ refused }) => refused !== undefined))('$is is refused', (one) => {
    const read = outcome(one);
    if (!('refused' in read)) throw new Error('was read');
    expect(read.refused).toContain(one.refused);
    expect(read.fix).not.toBe('');
  });
});

function outcome({ file }: CorpusFile) {
  const bytes = typeof file === 'string' ? new TextEncoder().encode(file) : file;
  const intake = readSite(bytes, 'site.csv', options);
  if (isProblem(intake)) return { refused: `${intake.where}: ${intake.found}`, fix: intake.fix };
  bringIn(intake, { name: 'site.csv', bytes }, notebook);
  const asks = book.asks().filter(({ sheet }) => sheet === 'posts');
  const account = accountFor(intake.linesRead, intake.passedOver, asks);
  notebook.undo();
  const headers = intake.asks.filter(({ about }) => about === 'header');
  return {
    rows: intake.rows.map(rowPairs),
    asks: [
      ...new Set([
        ...asks.map(
          ({ line, column }) => `${line === undefined ? 'file' : String(line)} ${column}`,
        ),
        ...headers.map(({ column }) => `header ${column}`),
      ]),
    ].sort(),
    over: intake.passedOver,
    notes: intake.notes,
    account,
  };
}

/** A row as it is written in the corpus, its cells in the order of their names. */
function pairs(row: string): string {
  const [, line = '', cells = ''] = /^(\d+): (.*)$/.exec(row) ?? [];
  const sorted = cells.split(/(?<!\\); /).map((cell) => {
    const [name = '', ...text] = cell.replaceAll('\\;', ';').replaceAll('\\n', '\n').split('=');
    return `${COLUMN_NAMES[name] ?? name}=${text.join('=')}`;
  });
  return `${line}: ${sorted.sort().join('; ')}`;
}

function rowPairs({ line, cells, kept }: IntakeRow): string {
  const entries = [...cells].map(([column, entry]) => `${column}=${said(column, entry)}`);
  const beside = [...kept].map(([header, cell]) => `+${header}=${cell}`);
  return `${String(line)}: ${[...entries, ...beside].sort().join('; ')}`;
}

/** A length in millimeters, or the entry with what becomes of it. */
function said(column: string, entry: string): string {
  const kind = options.columns.find(({ id }) => id === column)?.kind;
  if (!kind || !isQuantity(kind, LENGTH)) return entry;
  const read = readEntry(entry, kind);
  if (isProblem(read)) return `!${entry}`;
  if (isDoubt(read)) return `?${entry.replace(/ (?:\?|in)$/, '')}`;
  return String(Math.round(Number(read.value) * 1e7) / 1e4);
}
