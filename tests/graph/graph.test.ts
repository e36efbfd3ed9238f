import { describe, expect, it } from 'vitest';
import {
  BLANK,
  type Column,
  EnteredRows,
  FollowingRows,
  Graph,
  GroupedRows,
  KNOWN,
  LoopError,
  inOrder,
  placeBelow,
  placeIn,
  worse,
  type Computation,
} from '../../src/graph/index.ts';
import { Counted, Typed, at, column, shown } from './count.ts';

/** Entries, doubled, and their sum. */
function chain(cells: (number | undefined)[]) {
  const rows = new EnteredRows('posts', cells.length);
  const one = new EnteredRows('job', 1);
  const typed = new Typed(cells);
  const entry = column('entry', rows, typed);
  const doubling = new Counted([{ column: entry, reach: 'row' }], (row) => 2 * at(entry, row));
  const doubled = column('doubled', rows, doubling);
  const summing = new Counted([{ column: doubled, reach: 'whole' }], () =>
    Array.from({ length: rows.count }, (_, row) => at(doubled, row)).reduce((a, b) => a + b, 0),
  );
  const total = column('total', one, summing);
  const graph = new Graph();
  // The order they are added in must not matter.
  for (const each of [total, doubled, entry]) graph.add(each);
  graph.settle();
  doubling.take();
  summing.take();
  return { graph, rows, typed, entry, doubled, doubling, total, summing };
}

describe('a graph', () => {
  it('works out what is needed first, whatever the order of adding', () => {
    const { doubled, total } = chain([1, 2, 3]);
    expect(shown(doubled)).toEqual([2, 4, 6]);
    expect(shown(total)).toEqual([12]);
  });

  it('runs one row for one edited cell, and the total once', () => {
    const { graph, typed, entry, doubling, summing, total } = chain([1, 2, 3, 4, 5]);
    typed.cells[2] = 10;
    graph.touch(entry, 2);
    const changed = graph.settle();
    expect([doubling.take(), summing.take()]).toEqual([1, 1]);
    expect(shown(total)).toEqual([2 * (1 + 2 + 10 + 4 + 5)]);
    expect(changed.get(entry)).toEqual(new Set([2]));
    expect(changed.get(total)).toEqual(new Set([0]));
  });

  it('runs nothing when nothing changed', () => {
    const { graph, doubling, summing } = chain([1, 2]);
    expect(graph.settle().size).toBe(0);
    expect([doubling.take(), summing.take()]).toEqual([0, 0]);
  });

  it('stops where a value comes out as it was', () => {
    const { graph, entry, doubling, summing } = chain([1, 2, 3]);
    graph.touch(entry, 1);
    expect(graph.settle().size).toBe(0);
    expect([doubling.take(), summing.take()]).toEqual([0, 0]);
  });

  it('stops behind a single value that comes out as it was', () => {
    const rows = new EnteredRows('posts', 3);
    const one = new EnteredRows('job', 1);
    const typed = new Typed([1, 5, 3]);
    const entry = column('entry', rows, typed);
    const most = column(
      'most',
      one,
      new Counted([{ column: entry, reach: 'whole' }], () =>
        Math.max(...typed.cells.map((x) => x ?? 0)),
      ),
    );
    const share = new Counted([{ column: most, reach: 'whole' }], () => at(most, 0));
    const graph = new Graph();
    for (const each of [entry, most, column('share', rows, share)]) graph.add(each);
    graph.settle();
    share.take();
    typed.cells[0] = 2;
    graph.touch(entry, 0);
    graph.settle();
    expect(share.take()).toBe(0);
    typed.cells[0] = 9;
    graph.touch(entry, 0);
    graph.settle();
    expect(share.take()).toBe(3);
  });

  it('runs a whole column when a job input changes', () => {
    const rows = new EnteredRows('posts', 4);
    const one = new EnteredRows('job', 1);
    const typed = new Typed([6]);
    const height = column('height', one, typed);
    const use = new Counted([{ column: height, reach: 'whole' }], () => at(height, 0));
    const used = column('used', rows, use);
    const graph = new Graph();
    graph.add(used);
    graph.add(height);
    graph.settle();
    use.take();
    typed.cells[0] = 8;
    graph.touch(height, 0);
    graph.settle();
    expect(use.take()).toBe(4);
    expect(shown(used)).toEqual([8, 8, 8, 8]);
  });

  it('runs a row and its neighbors where a formula looks at the row above or below', () => {
    const rows = new EnteredRows('posts', 6);
    const typed = new Typed([0, 8, 16, 24, 32, 40]);
    const station = column('station', rows, typed);
    const step = new Counted([{ column: station, reach: 'near' }], (row) =>
      row === 0 ? 0 : at(station, row) - at(station, row - 1),
    );
    const bay = column('bay', rows, step);
    const graph = new Graph();
    graph.add(station);
    graph.add(bay);
    graph.settle();
    step.take();
    typed.cells[3] = 25;
    graph.touch(station, 3);
    graph.settle();
    expect(step.take()).toBe(3);
    expect(shown(bay)).toEqual([0, 8, 8, 9, 7, 8]);
    typed.cells[0] = 1;
    graph.touch(station, 0);
    graph.settle();
    expect(step.take()).toBe(2);
  });

  it('works out the rows behind one that goes, where their place decides', () => {
    const rows = new EnteredRows('posts', 5);
    const work = new Counted([], (row) => row + 1);
    const place = column('place', rows, Object.assign(work, { placed: true }));
    const graph = new Graph();
    graph.add(place);
    graph.settle();
    work.take();
    graph.splice(rows, 1, 1, 0);
    graph.settle();
    expect(shown(place)).toEqual([1, 2, 3, 4]);
    graph.splice(rows, 0, 0, 2);
    graph.settle();
    expect(shown(place)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('works everything out again when told that all entries may have changed', () => {
    const { graph, typed, entry, doubling, doubled } = chain([undefined, 2]);
    typed.cells[0] = 7;
    graph.touchAll(entry);
    graph.settle();
    expect(doubling.take()).toBe(2);
    expect(shown(doubled)).toEqual([14, 4]);
  });

  it('takes a column that comes later', () => {
    const { graph, rows, doubled } = chain([1, 2]);
    const more = column(
      'more',
      rows,
      new Counted([{ column: doubled, reach: 'row' }], (row) => at(doubled, row) + 1),
    );
    graph.add(more);
    graph.settle();
    expect(shown(more)).toEqual([3, 5]);
  });
});

describe('a loop', () => {
  function looped(...reaches: ('row' | 'near' | 'whole')[]): Column[] {
    const rows = new EnteredRows('posts', 2);
    const columns = reaches.map((_, place) => column(`column ${place + 1}`, rows));
    reaches.forEach((reach, place) => {
      const of = columns[(place + 1) % columns.length]!;
      columns[place]!.computation = new Counted([{ column: of, reach }], () => 0);
    });
    return columns;
  }

  it.each([
    ['itself', looped('row')],
    ['itself through the row above', looped('near')],
    ['two', looped('row', 'row')],
    ['three, by way of a total', looped('row', 'whole', 'row')],
  ])('of %s is refused, naming the way round', (_, columns) => {
    let loop: readonly string[] = [];
    try {
      inOrder(columns);
    } catch (error) {
      if (!(error instanceof LoopError)) throw error;
      loop = error.loop;
      expect(error.message).toContain(loop.join(' → '));
    }
    expect(loop[0]).toBe(loop.at(-1));
    expect(new Set(loop)).toEqual(new Set(columns.map(({ name }) => name)));
  });

  it('leaves the graph able to go on once it is opened', () => {
    const columns = looped('row', 'row');
    const graph = new Graph();
    for (const each of columns) graph.add(each);
    expect(() => graph.settle()).toThrow(LoopError);
    columns[1]!.computation = new Typed([4, 5]);
    const first = columns[1]!;
    columns[0]!.computation = new Counted([{ column: first, reach: 'row' }], (row) =>
      at(first, row),
    );
    for (const each of columns) graph.add(each);
    graph.settle();
    expect(shown(columns[0]!)).toEqual([4, 5]);
  });

  it('through rows that hang on their own columns is refused as well', () => {
    const posts = new EnteredRows('posts', 2);
    const where = column('where', posts);
    const holes = new FollowingRows('holes', posts, where);
    const depth = column('depth', holes, new Typed([1, 1]));
    where.computation = new Counted([{ column: depth, reach: 'whole' }], () => 1);
    expect(() => inOrder([where, depth])).toThrow(LoopError);
  });
});

describe('rows that follow others', () => {
  function followed() {
    const posts = new EnteredRows('posts', 4);
    const flags = new Typed([0, 1, 1, 0]);
    const numbers = new Typed([10, 20, 30, 40]);
    const where = column('replace', posts, flags);
    const lean = column('lean', posts, numbers);
    const holes = new FollowingRows('holes', posts, where);
    const reading = new Counted([{ column: lean, reach: 'follow' }], (row) =>
      at(lean, placeIn(posts, holes, row)),
    );
    const depth = column('depth', holes, reading);
    const graph = new Graph();
    for (const each of [depth, where, lean]) graph.add(each);
    graph.settle();
    reading.take();
    return { graph, posts, holes, flags, numbers, where, lean, depth, reading };
  }

  it('are those where the flag is true, each with its own values', () => {
    const { depth, holes } = followed();
    expect(holes.count).toBe(2);
    expect(shown(depth)).toEqual([20, 30]);
  });

  it('run one row for one edited cell of the sheet they follow', () => {
    const { graph, numbers, lean, depth, reading } = followed();
    numbers.cells[2] = 35;
    graph.touch(lean, 2);
    graph.settle();
    expect(reading.take()).toBe(1);
    expect(shown(depth)).toEqual([20, 35]);
  });

  it('run nothing for a row they do not follow', () => {
    const { graph, numbers, lean, reading } = followed();
    numbers.cells[0] = 11;
    graph.touch(lean, 0);
    graph.settle();
    expect(reading.take()).toBe(0);
  });

  it('come and go with their flag', () => {
    const { graph, flags, where, depth, holes } = followed();
    flags.cells[0] = 1;
    graph.touch(where, 0);
    graph.settle();
    expect(shown(depth)).toEqual([10, 20, 30]);
    flags.cells[1] = 0;
    flags.cells[2] = undefined;
    graph.touch(where, 1);
    graph.touch(where, 2);
    graph.settle();
    expect(shown(depth)).toEqual([10]);
    expect(placeBelow(holes.parent, holes, 0)).toBe(0);
    expect(placeBelow(holes.parent, holes, 1)).toBe(-1);
  });

  it('move with the rows they follow', () => {
    const { graph, posts, flags, numbers, depth } = followed();
    flags.cells.splice(0, 1);
    numbers.cells.splice(0, 1);
    graph.splice(posts, 0, 1, 0);
    graph.settle();
    expect(shown(depth)).toEqual([20, 30]);
    flags.cells.splice(1, 0, 1);
    numbers.cells.splice(1, 0, 25);
    graph.splice(posts, 1, 0, 1);
    graph.settle();
    expect(shown(depth)).toEqual([20, 25, 30]);
  });

  it('may be followed in turn', () => {
    const { graph, holes, lean, posts } = followed();
    const labor = new FollowingRows('labor', holes);
    const hours = column(
      'hours',
      labor,
      new Counted(
        [{ column: lean, reach: 'follow' }],
        (row) => at(lean, placeIn(posts, labor, row)) / 10,
      ),
    );
    graph.add(hours);
    graph.settle();
    expect(shown(hours)).toEqual([2, 3]);
  });
});

describe('rows by their groups', () => {
  it('are one for each combination that is known, largest last key first', () => {
    const holes = new EnteredRows('holes', 5);
    const size = new Typed([1, 1, 2, 2, undefined]);
    const length = new Typed([8, 10, 8, 8, 12]);
    const columns = [column('size', holes, size), column('length', holes, length)];
    const lines = new GroupedRows('lines', columns);
    const count = column(
      'count',
      lines,
      new Counted(
        columns.map((each) => ({ column: each, reach: 'whole' as const })),
        (row) =>
          Array.from({ length: holes.count }, (_, hole) => hole).filter((hole) =>
            columns.every((each, key) => each.values[hole] === lines.keys[key]![row]),
          ).length,
      ),
    );
    const graph = new Graph();
    for (const each of [count, ...columns]) graph.add(each);
    graph.settle();
    expect(lines.keys.map((keys) => [...keys])).toEqual([
      [1, 2, 1],
      [10, 8, 8],
    ]);
    expect(shown(count)).toEqual([1, 2, 1]);
    size.cells[4] = 2;
    graph.touch(columns[0]!, 4);
    graph.settle();
    expect(shown(count)).toEqual([1, 1, 2, 1]);
  });
});

describe('states', () => {
  it('take the worse of two', () => {
    expect([worse(0, 1), worse(3, 2), worse(1, 1)]).toEqual([1, 3, 1]);
  });

  it('are blank for a column without a computation', () => {
    const rows = new EnteredRows('posts', 2);
    const empty = column('empty', rows);
    const graph = new Graph();
    graph.add(empty);
    graph.settle();
    expect([...empty.states.subarray(0, 2)]).toEqual([BLANK, BLANK]);
    expect(KNOWN).toBe(0);
  });

  it('are told on when a message may have changed though there is no value', () => {
    const rows = new EnteredRows('posts', 1);
    const typed = new Typed([1]);
    const entry = column('entry', rows, typed);
    const wrong = column(
      'wrong',
      rows,
      new Counted([{ column: entry, reach: 'row' }], () => undefined),
    );
    const heard: Computation = new Counted([{ column: wrong, reach: 'row' }], () => undefined);
    const graph = new Graph();
    for (const each of [entry, wrong, column('after', rows, heard)]) graph.add(each);
    graph.settle();
    typed.cells[0] = 2;
    graph.touch(entry, 0);
    expect([...graph.settle().keys()].map(({ name }) => name)).toEqual(['entry', 'wrong', 'after']);
  });
});
