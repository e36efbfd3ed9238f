import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EnteredRows,
  FollowingRows,
  Graph,
  GroupedRows,
  placeIn,
  type Column,
} from '../../src/graph/index.ts';
import { Counted, Typed, at, column, shown } from './count.ts';

interface Cells {
  readonly lean: (number | undefined)[];
  readonly replace: (number | undefined)[];
  readonly job: (number | undefined)[];
}

/** A little notebook with every reach: rows, neighbors, totals, rows that follow, and groups. */
class Small {
  readonly graph = new Graph();
  readonly posts: EnteredRows;
  readonly entries: readonly Column[];
  readonly job: Column;
  private readonly all: readonly Column[];

  constructor({ lean, replace, job }: Cells) {
    const one = new EnteredRows('job', 1);
    const posts = new EnteredRows('posts', lean.length);
    const leanColumn = column('lean', posts, new Typed(lean));
    const flag = column('replace', posts, new Typed(replace));
    const input = column('input', one, new Typed(job));
    const twice = column(
      'twice',
      posts,
      new Counted(
        [
          { column: leanColumn, reach: 'row' },
          { column: input, reach: 'whole' },
        ],
        (row) => (leanColumn.states[row] === 0 ? at(leanColumn, row) * at(input, 0) : undefined),
      ),
    );
    const step = column(
      'step',
      posts,
      new Counted([{ column: twice, reach: 'near' }], (row) =>
        row + 1 < posts.count ? at(twice, row + 1) - at(twice, row) : 0,
      ),
    );
    const holes = new FollowingRows('holes', posts, flag);
    const depth = column(
      'depth',
      holes,
      new Counted(
        [
          { column: step, reach: 'follow' },
          { column: input, reach: 'whole' },
        ],
        (row) => at(step, placeIn(posts, holes, row)) + at(input, 0),
      ),
    );
    const total = column(
      'total',
      one,
      new Counted([{ column: depth, reach: 'whole' }], () => sum(depth)),
    );
    const share = column(
      'share',
      holes,
      new Counted(
        [
          { column: depth, reach: 'row' },
          { column: total, reach: 'whole' },
        ],
        (row) => at(depth, row) - at(total, 0),
      ),
    );
    const lines = new GroupedRows('lines', [depth]);
    const counted = column(
      'counted',
      lines,
      new Counted(
        [
          { column: depth, reach: 'whole' },
          { column: total, reach: 'whole' },
        ],
        (row) => count(depth, lines.keys[0]![row]!) + at(total, 0),
      ),
    );
    this.posts = posts;
    this.entries = [leanColumn, flag];
    this.job = input;
    this.all = [counted, share, total, depth, step, twice, flag, leanColumn, input];
    for (const each of this.all) this.graph.add(each);
    this.graph.settle();
  }

  shown(): unknown {
    return Object.fromEntries(this.all.map((each) => [each.name, shown(each)]));
  }
}

function sum(of: Column): number {
  return Array.from({ length: of.rows.count }, (_, row) => at(of, row)).reduce((a, b) => a + b, 0);
}

function count(of: Column, value: number): number {
  return Array.from({ length: of.rows.count }, (_, row) => at(of, row)).filter((x) => x === value)
    .length;
}

const number = fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined });
const flag = fc.option(fc.constantFrom(0, 1), { nil: undefined });
const act = fc.oneof(
  fc.record({ act: fc.constant('lean' as const), row: fc.nat(20), value: number }),
  fc.record({ act: fc.constant('replace' as const), row: fc.nat(20), value: flag }),
  fc.record({ act: fc.constant('job' as const), row: fc.constant(0), value: number }),
  fc.record({
    act: fc.constant('add' as const),
    row: fc.nat(20),
    rows: fc.array(fc.tuple(number, flag), { minLength: 1, maxLength: 90 }),
  }),
  fc.record({ act: fc.constant('remove' as const), row: fc.nat(20), many: fc.nat(4) }),
  fc.record({ act: fc.constant('settle' as const), row: fc.constant(0) }),
  // So many slices, each of which ends at the first look at the time.
  fc.record({ act: fc.constant('work' as const), row: fc.nat(12) }),
);

describe('a graph after any edits', () => {
  it('agrees with one freshly built from the same entries', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number, flag), { maxLength: 6 }),
        fc.array(act, { maxLength: 25 }),
        (start, acts) => {
          const cells: Cells = {
            lean: start.map(([lean]) => lean),
            replace: start.map(([, replace]) => replace),
            job: [2],
          };
          const small = new Small(cells);
          for (const each of acts) edit(small, cells, each);
          small.graph.settle();
          expect(small.shown()).toEqual(
            new Small({
              lean: [...cells.lean],
              replace: [...cells.replace],
              job: [...cells.job],
            }).shown(),
          );
        },
      ),
      { numRuns: 1000 },
    );
  });
});

type Act = typeof act extends fc.Arbitrary<infer T> ? T : never;

function edit(small: Small, cells: Cells, act: Act): void {
  const { graph, posts, entries, job } = small;
  const [lean, replace] = entries;
  if (act.act === 'settle') graph.settle();
  if (act.act === 'work') for (let at = 0; at < act.row; at += 1) graph.work(() => true);
  if (act.act === 'job') {
    cells.job[0] = act.value;
    graph.touch(job, 0);
  }
  if ((act.act === 'lean' || act.act === 'replace') && act.row < posts.count) {
    cells[act.act][act.row] = act.value;
    graph.touch(act.act === 'lean' ? lean! : replace!, act.row);
  }
  if (act.act === 'add' && act.row <= posts.count) {
    cells.lean.splice(act.row, 0, ...act.rows.map(([value]) => value));
    cells.replace.splice(act.row, 0, ...act.rows.map(([, value]) => value));
    graph.splice(posts, act.row, 0, act.rows.length);
  }
  if (act.act === 'remove' && act.row < posts.count) {
    const many = Math.min(act.many, posts.count - act.row);
    cells.lean.splice(act.row, many);
    cells.replace.splice(act.row, many);
    graph.splice(posts, act.row, many, 0);
  }
}
