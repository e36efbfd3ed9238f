import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../src/units/index.ts';
import { bringIn, intakeColumns, readSite, type Intake } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { accountFor, fileReports } from '../../src/output/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { COLUMNS } from './bring-in.ts';

const read = (bytes: Uint8Array): Intake | undefined => {
  const intake = readSite(bytes, 'site.csv', { columns: COLUMNS, settled: new Map() });
  return isProblem(intake) ? undefined : intake;
};

const HEADERS = [
  'Post',
  'Sta',
  'Gap (in)',
  'Lean',
  'Level',
  'Over',
  'Toward',
  'Probe N',
  'Probe S',
  'Footing',
  'Rock test',
  'Note',
  'Height',
  'Foo',
  '',
  'Gap',
  'Hole dia',
  'Depth got',
];
const CELLS = [
  '1',
  '7A',
  '',
  ' ',
  "8'",
  '3/8"',
  "3/8 out in 4'",
  '2°',
  'Total',
  'Subtotal',
  '---',
  'E',
  '10x24',
  '"',
  '0',
  '63.5',
  '1,200',
  '0,45 m',
  'firm',
  'note, more',
  'Level: 48 in',
  'Post',
  'Gap (in)',
  'in',
  '-',
  '5-3',
  '1 1/4',
  '2%',
  '=1+1',
  'a\nb',
];

const table = fc
  .record({
    above: fc.array(fc.constantFrom('Oak Street', 'Level: 48 in', 'All in mm', ''), {
      maxLength: 3,
    }),
    header: fc.shuffledSubarray(HEADERS, { minLength: 2, maxLength: 9 }),
    delimiter: fc.constantFrom(',', ';', '\t'),
    end: fc.constantFrom('\n', '\r\n'),
    quoted: fc.boolean(),
  })
  .chain((shape) =>
    fc
      .array(fc.array(fc.constantFrom(...CELLS), { maxLength: shape.header.length + 2 }), {
        maxLength: 12,
      })
      .map((rows) => ({ ...shape, rows })),
  );

function textOf({
  above,
  header,
  rows,
  delimiter,
  end,
  quoted,
}: {
  readonly above: readonly string[];
  readonly header: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly delimiter: string;
  readonly end: string;
  readonly quoted: boolean;
}): string {
  const written = [header, ...rows].map((row) =>
    row.map((cell) => (quoted ? `"${cell.replaceAll('"', '""')}"` : cell)).join(delimiter),
  );
  return [...above, ...written].join(end);
}

/** A table with some of its bytes changed. */
const near = fc
  .tuple(table, fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { maxLength: 8 }))
  .map(([shape, changes]) => {
    const bytes = new TextEncoder().encode(textOf(shape));
    for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
    return bytes;
  });
const anyBytes = fc.oneof(fc.uint8Array({ maxLength: 300 }), near);

/** A table with its posts side by side. */
const onItsSide = table.map(({ header, rows, ...shape }) => {
  const lines = [header, ...rows.map((row) => header.map((_, at) => row[at] ?? ''))];
  const [first = [], ...others] = header.map((_, at) => lines.map((line) => line[at] ?? ''));
  return new TextEncoder().encode(textOf({ ...shape, header: first, rows: others }));
});

describe('an account', () => {
  // One book for all: an open book costs far more than a file, and undo leaves it as it was.
  const notebook = new Notebook(startDocument('fuzz'));
  const book = openBook(notebook);
  const options = intakeColumns(book.sheet('posts')?.columns ?? [], new Map());

  it('says of every line that was read whether it was imported, asked about or passed over', () => {
    const whole = table.map((shape) => new TextEncoder().encode(textOf(shape)));
    fc.assert(
      fc.property(fc.oneof(whole, anyBytes, onItsSide), (bytes) => {
        const intake = readSite(bytes, 'site.csv', options);
        if (isProblem(intake)) return;
        bringIn(intake, { name: 'site.csv', bytes }, notebook);
        const asks = book.asks().filter(({ sheet }) => sheet === 'posts');
        const account = accountFor(intake.linesRead, intake.passedOver, asks);
        const [report] = fileReports(notebook.document, book.asks());
        notebook.undo();
        expect(report?.account).toEqual(account);
        const asked = new Set(asks.flatMap(({ line }) => line ?? []));
        const taken = new Set(intake.rows.map(({ line }) => line));
        for (const line of asked) expect(taken).toContain(line);
        // Counted from the rows, and not from what is left of the lines.
        if (!intake.turned) expect(account.imported).toBe(taken.size - asked.size);
        expect(account.imported).toBeGreaterThanOrEqual(0);
        expect(account.imported + account.asked + account.passedOver).toBe(account.read);
      }),
      { numRuns: 80 },
    );
  }, 30_000);
});

describe('readSite', () => {
  it('makes every line that is not blank a row or passes it over, once', () => {
    fc.assert(
      fc.property(table, (shape) => {
        const intake = read(new TextEncoder().encode(textOf(shape)));
        if (!intake) return;
        const taken = intake.turned ? [] : intake.rows;
        const lines = [...taken, ...intake.passedOver].map(({ line }) => line);
        expect(new Set(lines).size).toBe(lines.length);
        if (intake.turned) expect(lines.length).toBeLessThan(intake.linesRead);
        else expect(lines).toHaveLength(intake.linesRead);
      }),
      { numRuns: 600 },
    );
  }, 30_000);

  it('drops no filled cell of a row: each is an entry, kept, or named where it was taken apart', () => {
    fc.assert(
      fc.property(table, (shape) => {
        const rows = shape.rows.map((row) =>
          row.map((cell) => (/[\n",;]/.test(cell) ? 'x9' : cell)),
        );
        const plain = { ...shape, above: [], rows, quoted: false, end: '\n' };
        const intake = read(new TextEncoder().encode(textOf(plain)));
        if (intake?.turned) return;
        for (const row of intake?.rows ?? []) {
          const source = textOf(plain).split('\n')[row.line - 1] ?? '';
          const said = [...row.cells.values(), ...row.kept.values(), ...row.assumed.values()].join(
            ' | ',
          );
          for (const cell of source.split(shape.delimiter).map((text) => text.trim())) {
            expect(said, `${cell} of ${source}`).toContain(cell);
          }
        }
      }),
      { numRuns: 600 },
    );
  }, 30_000);

  it('drops no filled cell of a table on its side', () => {
    const cell = fc.constantFrom('0', '3/8"', "8'", 'firm', 'n/a', 'E', '', 'x9');
    const reading = fc.tuple(
      fc.constantFrom('Station', 'Lean gap', 'Level', 'Toward', 'Rock test', 'Foo', 'Note'),
      fc.array(cell, { minLength: 3, maxLength: 3 }),
    );
    fc.assert(
      fc.property(fc.uniqueArray(reading, { selector: ([head]) => head }), (readings) => {
        const lines = [
          ['Post', '1', '2', '3'],
          ...readings.map(([head, cells]) => [head, ...cells]),
        ];
        const intake = read(new TextEncoder().encode(lines.map((one) => one.join(',')).join('\n')));
        if (!intake?.turned) return;
        expect(intake.linesRead).toBe(lines.length);
        expect(intake.rows.map(({ cells }) => cells.get('post'))).toEqual(['1', '2', '3']);
        for (const [at, row] of intake.rows.entries()) {
          const said = [...row.cells.values(), ...row.kept.values(), ...row.assumed.values()];
          for (const [, cells] of readings) expect(said.join(' | ')).toContain(cells[at]);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('never throws, whatever the bytes are', () => {
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        const intake = read(bytes);
        if (intake && !intake.turned)
          expect(intake.rows.length + intake.passedOver.length).toBe(intake.linesRead);
      }),
      { numRuns: 600 },
    );
  }, 30_000);
});
