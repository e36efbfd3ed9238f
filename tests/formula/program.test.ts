import { expect, it } from 'vitest';
import { EMPTY_SCOPE, Program, isFormula, readFormula } from '../../src/formula/index.ts';
import { Column, EnteredRows, KNOWN, Words } from '../../src/graph/index.ts';
import { PLAIN } from '../../src/units/index.ts';

it('a formula has no more to explain once its input came, though work was broken off before it', () => {
  const x = new Column('job.x', new EnteredRows('job', 1));
  x.fit();
  x.computation.run(x.values, x.states, 0, 1);
  const reference = { sheet: 'job', name: 'x', label: 'x', kind: PLAIN, columns: [x] };
  const read = readFormula('x > 5 ? 1 : 2', {
    ...EMPTY_SCOPE,
    bare: () => ({ ...reference, reach: 'whole' }),
  });
  if (!isFormula(read)) throw new Error(read.found);
  const program = new Program(read.expression, new EnteredRows('here', 1), new Words());
  const said: unknown[] = [];
  const trace = { lacks: (column: Column) => said.push(column.name), wrong: said.push };
  program.run(new Float64Array(1), new Uint8Array(1), 0, 1);
  program.explain(0, trace);
  expect(said).toEqual(['job.x']);

  x.values[0] = 7;
  x.states[0] = KNOWN;
  x.version += 1;
  program.explain(0, trace);
  expect(said).toEqual(['job.x']);
});

it('a total asks no more of its rows than somebody wants to hear', () => {
  const rows = new EnteredRows('posts', 5000);
  const gap = new Column('posts.gap', rows);
  gap.fit();
  gap.computation.run(gap.values, gap.states, 0, 5000);
  const reference = { sheet: 'posts', name: 'gap', label: 'gap', kind: PLAIN, columns: [gap] };
  const read = readFormula('sum(posts.gap)', {
    ...EMPTY_SCOPE,
    member: () => ({ ...reference, reach: 'whole' }),
  });
  if (!isFormula(read)) throw new Error(read.found);
  const program = new Program(read.expression, new EnteredRows('here', 1), new Words());
  const asked: number[] = [];
  const lacks = (_: Column, row: number) => asked.push(row);
  for (const tell of program.reasons(0, 24)) tell({ lacks, wrong: fail });
  expect(asked.slice(0, 24)).toEqual(Array.from({ length: 24 }, (_, row) => row));
  expect(asked.length).toBeLessThan(1000);

  asked.length = 0;
  program.explain(0, { lacks, wrong: fail });
  expect(asked).toHaveLength(5000);
});

it('a formula tells all it lacks, though whoever hears it asks another formula meanwhile', () => {
  const rows = new EnteredRows('posts', 3);
  const [a, b] = ['a', 'b'].map((name) => {
    const column = new Column(name, rows);
    column.fit();
    column.computation.run(column.values, column.states, 0, 3);
    return column;
  });
  const columns = new Map([['a', a!], ['b', b!]]); // prettier-ignore
  const programOf = (text: string) => {
    const read = readFormula(text, {
      ...EMPTY_SCOPE,
      bare: (name) => ({ sheet: 'posts', name, label: name, kind: PLAIN, reach: 'row', columns: [columns.get(name)!] }), // prettier-ignore
    });
    if (!isFormula(read)) throw new Error(read.found);
    return new Program(read.expression, rows, new Words());
  };
  const outer = programOf('(a + 1) * 2 + (b + 1) * 2');
  const inner = programOf('(1 + row_number()) * 3 + (2 + row_number()) * 4');
  const said: string[] = [];
  outer.explain(1, {
    lacks: ({ name }) => {
      said.push(name);
      inner.explain(1, { lacks: fail, wrong: fail });
    },
    wrong: fail,
  });
  expect(said).toEqual(['a', 'b']);
});

function fail(): never {
  throw new Error('Nothing is wrong.');
}
