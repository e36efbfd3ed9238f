import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EMPTY_SCOPE,
  Program,
  encode,
  isFormula,
  readFormula,
  type Scope,
} from '../../src/formula/index.ts';
import {
  BLANK,
  Column,
  EnteredRows,
  KNOWN,
  UNREAD,
  WRONG,
  Words,
  type Rows,
} from '../../src/graph/index.ts';
import { PLAIN, type Kind } from '../../src/units/index.ts';

const FLAG: Kind = { type: 'flag' };
const TEXT: Kind = { type: 'text' };
const KINDS: Readonly<Record<string, Kind>> = {
  a: PLAIN,
  b: PLAIN,
  p: FLAG,
  q: FLAG,
  t: TEXT,
  // The job's, one for all rows.
  j: PLAIN,
  k: FLAG,
};

/** What stands in a cell: a number by its place among the values of the kind, or the state of one that has none. */
type Cell = { value: number } | { state: number };

// Few values, so that rows are often alike; among them both noughts and one too large to work with.
const VALUES = {
  quantity: [0, -0, 1, 2, 2 + 1e-12, -1.5, 1e300],
  flag: [0, 1],
  text: ['B', 'C', 'Z'],
};

const formula = fc.letrec<{ number: string; flag: string }>((tie) => {
  const number = tie('number');
  const flag = tie('flag');
  const call = (write: (x: string, y: string, f: string) => string) =>
    fc.tuple(number, number, flag).map(([x, y, f]) => write(x, y, f));
  return {
    number: fc.oneof(
      { maxDepth: 4, depthSize: 'small' },
      fc.constantFrom('a', 'b', 'j', '0', '2', 'previous(a)', 'sum(here.a)', 'row_number()'),
      call((x, y) => `(${x} + ${y})`),
      call((x, y) => `(${x} - ${y})`),
      call((x, y) => `(${x} * ${y})`),
      call((x, y) => `(${x} / ${y})`),
      call((x, y) => `max(${x}, ${y})`),
      call((x, y) => `up_to_step(${x}, ${y})`),
      call((x) => `-sqrt(${x})`),
      call((x, y, f) => `(${f} ? ${x} : ${y})`),
      call((x, y, f) => `(${f} ? ${x} : ${f} or p ? 2 : q ? ${y} : 1)`),
      call((x, y) => `given(${x}, ${y})`),
      call((x, _y, f) => `only_if(${x}, ${f})`),
      call((x, y) => `(round_hole(${x} * 1 m, ${y} * 1 m) / (1 m^3))`),
      call((x, y) => `(velocity_pressure(${x} * 1 m/s, t, ${y} * 1 m) / (1 Pa))`),
    ),
    flag: fc.oneof(
      { maxDepth: 4, depthSize: 'small' },
      fc.constantFrom('p', 'q', 'k', '(t == "B")', '(t != "C")'),
      call((x, y) => `(${x} < ${y})`),
      call((x, y) => `(${x} >= ${y})`),
      call((x, y) => `(${x} == ${y})`),
      fc.tuple(flag, flag).map(([f, g]) => `(${f} and ${g})`),
      fc.tuple(flag, flag).map(([f, g]) => `(${f} or ${g})`),
      flag.map((f) => `(not ${f})`),
      fc.tuple(flag, flag).map(([f, g]) => `given(${f}, ${g})`),
    ),
  };
}).number;

const cell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ value: fc.nat(20) }) },
  { weight: 1, arbitrary: fc.record({ state: fc.constantFrom(BLANK, UNREAD, WRONG) }) },
);
const row = fc.record({ a: cell, b: cell, p: cell, q: cell, t: cell });
// Runs of equal rows, as a job has them; some sheets are longer than a formula works at a time.
const rows = fc
  .array(fc.tuple(row, fc.constantFrom(1, 1, 3, 40)), { minLength: 1, maxLength: 8 })
  .chain((runs) =>
    fc
      .constantFrom(1, 1, 1, 30)
      .map((times) =>
        Array.from({ length: times }, () =>
          runs.flatMap(([each, many]) => Array.from({ length: many }, () => each)),
        ).flat(),
      ),
  );

describe('a formula over a whole column', () => {
  it('comes to what it does where each part is worked out for each row by itself', () => {
    fc.assert(
      fc.property(formula, rows, fc.record({ j: cell, k: cell }), (text, cells, job) => {
        const { program, sheet } = at(text, cells, job);
        const values = new Float64Array(sheet.count);
        const states = new Uint8Array(sheet.count);
        // Twice, as what was kept of one run is none of the next.
        program.run(values, states, 0, sheet.count);
        program.run(values, states, 0, sheet.count);
        // The first rows, and those about the end of what is worked out at a time.
        const looked = Array.from({ length: sheet.count }, (_, place) => place).filter(
          (place) => place < 8 || Math.abs(place - 512) < 3,
        );
        for (const each of looked) {
          const { value, state } = program.parts(each);
          expect([each, text, states[each]]).toEqual([each, text, state]);
          // Nought has no sign: a rule asked for nought and then for minus nought answers once.
          expect((values[each] ?? NaN) + 0).toBe(Number(value ?? NaN) + 0);
        }
      }),
      { numRuns: 80 },
    );
  });
});

function at(
  text: string,
  cells: readonly Readonly<Record<string, Cell>>[],
  job: Readonly<Record<string, Cell>>,
): { readonly program: Program; readonly sheet: Rows } {
  const words = new Words();
  const sheet = new EnteredRows('here', cells.length);
  const one = new EnteredRows('job', 1);
  const columns = new Map(
    Object.keys(KINDS).map((name) => {
      const isJob = name in job;
      const column = new Column(name, isJob ? one : sheet);
      fill(column, isJob ? [job[name]!] : cells.map((each) => each[name]!), words);
      return [name, column];
    }),
  );
  const reference = (name: string, reach: 'row' | 'whole') => {
    const column = columns.get(name);
    const kind = KINDS[name];
    if (!column || !kind) return undefined;
    const sheetName = name in job ? 'job' : 'here';
    return { sheet: sheetName, name, label: name, kind, columns: [column], reach };
  };
  const scope: Scope = {
    ...EMPTY_SCOPE,
    sheet: 'here',
    bare: (name) => reference(name, name in job ? 'whole' : 'row'),
    member: (_sheet, name) => reference(name, 'whole'),
  };
  const read = readFormula(text, scope);
  if (!isFormula(read)) throw new Error(`${text}: ${read.found}`);
  return { program: new Program(read.expression, sheet, words), sheet };
}

function fill(column: Column, cells: readonly Cell[], words: Words): void {
  column.fit();
  const values = VALUES[(KINDS[column.name]?.type ?? 'flag') as keyof typeof VALUES];
  cells.forEach((each, at) => {
    const isKnown = 'value' in each;
    column.states[at] = isKnown ? KNOWN : each.state;
    column.values[at] = isKnown ? encode(values[each.value % values.length]!, words) : NaN;
  });
}
