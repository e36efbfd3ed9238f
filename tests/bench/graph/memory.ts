import type { Column } from '../../../src/graph/index.ts';
import { atMost, inCount, told, type Findings } from '../figure.ts';
import { builtJob } from './built.ts';

/** Memory a cell. Both sizes are built in one process, so that what they share cancels out. */
export function memory(posts: number): Findings {
  const few = held(100);
  const many = held(posts);
  const cells = many.cells - few.cells;
  const perCell = (many.bytes - few.bytes) / cells;
  const size = `${inCount(posts)} posts`;
  const kinds = ['computed', 'entered'] as const;
  return {
    curves: [],
    figures: [
      ...kinds.map((kind) => {
        const { bytes, count } = many[kind];
        const most = kind === 'computed' ? 9 : 12;
        return atMost(most, Math.round((bytes / count) * 100) / 100, {
          part: 'graph',
          what: `memory a cell, ${kind}`,
          size,
          found: `${(bytes / count).toFixed(2)} bytes`,
          against: `${inCount(count)} cells; a double and a byte are 9`,
          how: 'bytes of the typed arrays behind the columns over the cells in them, beside what the notebook keeps as text',
        });
      }),
      told({
        part: 'graph',
        what: 'memory a cell, as the process sees it',
        size,
        found: `${perCell.toFixed(2)} bytes`,
        against: `${inCount(cells)} cells`,
        how: 'growth of array buffers and heap after a collection, the notebook itself not counted',
      }),
    ],
  };
}

interface Held {
  readonly bytes: number;
  readonly cells: number;
  readonly computed: { readonly bytes: number; readonly count: number };
  readonly entered: { readonly bytes: number; readonly count: number };
}

function held(posts: number): Held {
  const { engine, bytes } = builtJob(posts);
  const columns = [...engine.owners];
  const entries = new Set(columns.flatMap(([, { model }]) => model?.entry ?? []));
  return {
    bytes,
    cells: columns.reduce((sum, [{ rows }]) => sum + rows.count, 0),
    computed: sizeOf(columns.flatMap(([column]) => (entries.has(column) ? [] : [column]))),
    entered: sizeOf([...entries]),
  };
}

function sizeOf(columns: readonly Column[]): { bytes: number; count: number } {
  const many = columns.filter(({ rows }) => rows.count > 1000);
  return {
    bytes: many.reduce((sum, { values, states }) => sum + values.byteLength + states.byteLength, 0),
    count: many.reduce((sum, { rows }) => sum + rows.count, 0),
  };
}
