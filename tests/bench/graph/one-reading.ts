import { FollowingRows, GroupedRows, type Column } from '../../../src/graph/index.ts';
import type { Notebook } from '../../../src/notebook/index.ts';
import type { Engine } from '../../../src/worksheet/engine.ts';
import { openBook } from '../../../src/worksheet/index.ts';
import { quantile } from '../clock.ts';
import { atMost, inCount, inTime, slope, told, type Curve, type Findings } from '../figure.ts';
import { largeJob } from '../large-job.ts';
import { builtJob } from './built.ts';

/** What one reading costs at one size, in ms. */
interface Times {
  readonly posts: number;
  /** The cells of its row. */
  readonly row: number;
  /** What gathers over many rows: totals, lists, sheet-wide stops. */
  readonly gathering: number;
  /** As a person types it, asks and stops told anew. */
  readonly typed: number;
}

/** Fewer among so many posts that each takes a while; the median is of enough all the same. */
const editsAmong = (posts: number): number => (posts > 10_000 ? 20 : 60);

/** One reading of one post changes. */
export function oneReading(sizes: readonly number[]): Findings {
  const all = sizes.map((posts) => timesAt(posts));
  const curve: Curve = {
    name: 'one reading, the cells of its row',
    points: all.map(({ posts, row }) => [posts, row]),
  };
  const [first, last] = [all[0], all.at(-1)];
  if (!first || !last) return { figures: [], curves: [] };
  const size = `${inCount(last.posts)} posts`;
  return {
    curves: [
      curve,
      { name: 'one reading, typed', points: all.map(({ posts, typed }) => [posts, typed]) },
    ],
    figures: [
      atMost(4, last.row / first.row, {
        part: 'graph',
        what: 'one reading, the cells of its row',
        size,
        found: inTime(last.row),
        against: `${inCount(first.posts)} posts ${inTime(first.row)}`,
        how: `a lean gap typed ${String(editsAmong(last.posts))} times or more in the middle row, median of Graph.settle less the columns and row sets that gather over many rows; growth posts ^ ${slope(curve).toFixed(2)}`,
      }),
      ...all.map((times) =>
        told({
          part: 'graph',
          what: 'one reading, gathered and told',
          size: `${inCount(times.posts)} posts`,
          found: inTime(times.typed),
          against: `of it gathering ${inTime(times.gathering)}`,
          how: 'Book.type with asks and stops asked again, median; gathering is every column that reads a whole other column',
        }),
      ),
    ],
  };
}

function timesAt(posts: number): Times {
  const { notebook, engine } = builtJob(posts);
  const gathering = watchGathering(engine);
  const row = Math.floor(posts / 2);
  const totals: number[] = [];
  const apart: number[] = [];
  for (let edit = 0; edit < editsAmong(posts); edit++) {
    retype(notebook, engine, row, edit);
    gathering.ms = 0;
    const began = performance.now();
    engine.settle();
    totals.push(performance.now() - began - gathering.ms);
    apart.push(gathering.ms);
  }
  return {
    posts,
    row: quantile(totals, 0.5),
    gathering: quantile(apart, 0.5),
    typed: typedTime(posts, row),
  };
}

function typedTime(posts: number, row: number): number {
  const book = openBook(largeJob(posts));
  const id = book.sheet('posts')?.rowId(row) ?? '';
  const times: number[] = [];
  book.asks();
  book.stops();
  for (let edit = 0; edit < editsAmong(posts); edit++) {
    const began = performance.now();
    book.type('posts', id, 'lean_gap', gapAt(edit));
    book.asks();
    book.stops();
    times.push(performance.now() - began);
  }
  return quantile(times, 0.5);
}

function retype(notebook: Notebook, engine: Engine, row: number, edit: number): void {
  const entry = engine.models.get('posts')?.bands[0]?.columns.get('lean_gap')?.entry;
  const cells = notebook.rows('posts')[row]?.cells;
  if (!entry || !cells) throw new Error('The sheet of posts has no lean gap.');
  cells.set('lean_gap', gapAt(edit));
  engine.graph.touch(entry, row);
}

function gapAt(edit: number): string {
  return `${String(4 + (edit % 6))}/16 in`;
}

/** Adds up the time spent in columns and row sets that go over many rows of another column. */
function watchGathering(engine: Engine): { ms: number } {
  const spent = { ms: 0 };
  const timed = <T>(act: () => T): T => {
    const began = performance.now();
    try {
      return act();
    } finally {
      spent.ms += performance.now() - began;
    }
  };
  for (const column of engine.owners.keys()) {
    if (gathers(column)) {
      const { computation } = column;
      column.computation = {
        inputs: computation.inputs,
        run: (...given) => {
          timed(() => {
            computation.run(...given);
          });
        },
      };
    }
    const { rows } = column;
    const isDerived = rows instanceof FollowingRows || rows instanceof GroupedRows;
    if (!isDerived || Object.hasOwn(rows, 'refresh')) continue;
    const refresh = rows.refresh.bind(rows);
    rows.refresh = () => timed(refresh);
  }
  return spent;
}

function gathers({ computation }: Column): boolean {
  return computation.inputs.some(({ column, reach }) => reach === 'whole' && column.rows.count > 1);
}
