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
