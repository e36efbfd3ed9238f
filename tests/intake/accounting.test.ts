import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../src/units/index.ts';
import { readSite, type Intake } from '../../src/intake/index.ts';
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
    const near = fc
      .tuple(
        table,
        fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { maxLength: 8 }),
      )
      .map(([shape, changes]) => {
        const bytes = new TextEncoder().encode(textOf(shape));
        for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
        return bytes;
      });
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array({ maxLength: 300 }), near), (bytes) => {
        const intake = read(bytes);
        if (intake && !intake.turned)
          expect(intake.rows.length + intake.passedOver.length).toBe(intake.linesRead);
      }),
      { numRuns: 600 },
    );
  }, 30_000);
});
