import type { Column } from '../../../src/graph/index.ts';
import type { Engine } from '../../../src/worksheet/engine.ts';
import type { Notebook } from '../../../src/notebook/index.ts';
import { leastTimes } from '../clock.ts';
import {
  atLeast,
  atMost,
  inCount,
  inTime,
  slope,
  told,
  type Curve,
  type Figure,
  type Findings,
} from '../figure.ts';
import { builtJob } from './built.ts';
import { workedColumns, type WorkedColumn } from './columns.ts';
import { mathjsCells } from './mathjs-cells.ts';
import { signalSheet } from './signal-cells.ts';
import { NotStraight, straightLoop } from './straight.ts';

/** What one job input costs at one size, in ms. */
interface Times {
  readonly posts: number;
  readonly arithmetic: number;
  readonly arithmeticLoop: number;
  readonly mathjs: number;
  readonly trade: number;
  readonly tradeLoop: number;
  /** All columns that have a loop, those that take an entry over a formula too. */
  readonly rows: number;
  /** Undefined where so many cells would not fit the memory. */
  readonly signals: number | undefined;
  /** All that the change reaches, aggregates, lists and stops with it. */
  readonly whole: number;
  readonly columns: Readonly<Record<'arithmetic' | 'trade' | 'left out', number>>;
}

const INPUT = 'fence_height';
/** [ms] */
const WARM = 200;
// Some 60 cells a post, each an object of some 200 bytes.
const MOST_SIGNALS = 10_000;

/** One job input changes: the columns of all built-in sheets against hand loops and the peers. */
export function oneInput(sizes: readonly number[]): Findings {
  const all = sizes.map((posts) => timesAt(posts));
  const curve = (name: string, of: (times: Times) => number | undefined): Curve => ({
    name,
    points: all.flatMap((times): [number, number][] => {
      const ms = of(times);
      return ms === undefined ? [] : [[times.posts, ms]];
    }),
  });
  const curves = [
    curve('hand loops', ({ arithmeticLoop, tradeLoop }) => arithmeticLoop + tradeLoop),
    curve('this graph, row by row columns', ({ rows }) => rows),
    curve('one reactive cell each', ({ signals }) => signals),
    curve('mathjs, arithmetic only', ({ mathjs }) => mathjs),
  ];
  return { figures: [...all.flatMap(figuresAt), ...curves.map(slopeFigure)], curves };
}

function figuresAt(times: Times): readonly Figure[] {
  const size = `${inCount(times.posts)} posts`;
  const about = (what: string, ms: number) => ({ part: 'graph', what, size, found: inTime(ms) });
  const { columns } = times;
  return [
    atMost(8, times.arithmetic / times.arithmeticLoop, {
      ...about(`one input, ${String(columns.arithmetic)} columns of arithmetic`, times.arithmetic),
      against: `hand loop ${inTime(times.arithmeticLoop)}`,
      how: 'each column of the built-in sheets that fence height changes, run whole; the loop is its formula as plain statements over typed arrays, checked to give the same values',
    }),
    atLeast(40, times.mathjs / times.arithmetic, {
      ...about('the same, faster than mathjs', times.arithmetic),
      against: `mathjs ${inTime(times.mathjs)}`,
      how: 'the same formulas compiled once by mathjs (number build), evaluated cell by cell with a Map for scope, the faster of the two it takes; what all rows share is put there once. What a part of a formula costs however few rows there are decides at 100 posts',
    }),
    atMost(2, times.trade / times.tradeLoop, {
      ...about(`one input, ${String(columns.trade)} columns with trade functions`, times.trade),
      against: `hand loop ${inTime(times.tradeLoop)}`,
      how: 'as above; both call a trade function only where a row differs from the one above',
    }),
    ...(times.signals === undefined
      ? []
      : [
          atLeast(10, times.signals / times.rows, {
            ...about('one input, all columns row by row', times.rows),
            against: `reactive cells ${inTime(times.signals)}`,
            how: 'one @preact/signals-core cell for each cell; the input is set and every cell read, without building them; each cell calls its own trade functions. At 100 posts those, which both sides call, are most of what the graph takes',
          }),
        ]),
    told({
      ...about('one input, everything it reaches', times.whole),
      against: `of it row by row ${inTime(times.rows)}`,
      how: `Graph.settle: aggregates, cutting plan, lists and stops with it; ${String(columns['left out'])} columns that gather over rows have no plain loop and stand here alone`,
    }),
  ];
}

function slopeFigure(curve: Curve): Figure {
  const ends = [curve.points[0], curve.points.at(-1)].map((point) => inCount(point?.[0] ?? 0));
  return told(
    {
      part: 'graph',
      what: `growth of ${curve.name}`,
      size: `${ends.join(' to ')} posts`,
      found: `posts ^ ${slope(curve).toFixed(2)}`,
      against: 'in step is 1',
      how: 'slope of the curve between its ends, both axes logarithmic',
    },
    slope(curve),
  );
}

function timesAt(posts: number): Times {
  const { notebook, engine } = builtJob(posts);
  const input = inputColumn(engine);
  const settle = settler(engine, notebook, input);
  const changed = new Set(settle().changed.keys());
  const worked = workedColumns(engine, changed);
  const { loops, leftOut } = loopsOf(worked, engine);
  const of = (sort: WorkedColumn['sort']) => loops.filter(({ column }) => column.sort === sort);
  const [arithmetic, trade] = [of('arithmetic'), of('trade')];
  const cells = of('arithmetic').map(({ column }) => mathjsCells(column, engine.words));
  // A short run at few posts is over before the engine has compiled it, on either side.
  const options = { rounds: posts > 10_000 ? 3 : 10, warmMs: WARM };
  const times = leastTimes(
    {
      arithmetic: () => {
        runAll(arithmetic);
      },
      arithmeticLoop: () => {
        for (const { loop } of arithmetic) loop();
      },
      trade: () => {
        runAll(trade);
      },
      tradeLoop: () => {
        for (const { loop } of trade) loop();
      },
      rows: () => {
        runAll(loops);
      },
      mathjs: () => {
        for (const work of cells) work();
      },
      whole: () => void settle(),
    },
    options,
  );
  const columns = {
    arithmetic: arithmetic.length,
    trade: trade.length,
    'left out': leftOut.length,
  };
  const signals =
    posts > MOST_SIGNALS
      ? undefined
      : signalTime(
          loops.map(({ column }) => column),
          engine,
          input,
        );
  return { posts, ...times, signals, columns };
}

function runAll(loops: readonly Loop[]): void {
  for (const { column } of loops) {
    const { computation, values, states, rows } = column.column;
    computation.run(values, states, 0, rows.count);
  }
}

interface Loop {
  readonly column: WorkedColumn;
  readonly loop: () => Float64Array;
}

/** A loop for each column that one can be written for; throws where a loop comes to something else. */
function loopsOf(
  worked: readonly WorkedColumn[],
  { words }: Engine,
): { readonly loops: readonly Loop[]; readonly leftOut: readonly WorkedColumn[] } {
  const loops: Loop[] = [];
  const leftOut: WorkedColumn[] = [];
  for (const column of worked) {
    try {
      const loop = straightLoop(column, words);
      agree(column, loop());
      if (column.sort === 'arithmetic') agree(column, mathjsCells(column, words)(), 'known only');
      loops.push({ column, loop });
    } catch (error) {
      if (!(error instanceof NotStraight)) throw error;
      leftOut.push(column);
    }
  }
  return { loops, leftOut };
}

// mathjs has no unknown: a comparison with NaN is false there.
function agree({ name, column }: WorkedColumn, out: Float64Array, where?: 'known only'): void {
  for (let row = 0; row < column.rows.count; row++) {
    const [a, b] = [column.values[row] ?? NaN, out[row] ?? NaN];
    if (Number.isNaN(a) && (Number.isNaN(b) || where === 'known only')) continue;
    if (Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a))) continue;
    throw new Error(
      `${name}, row ${String(row)}: the graph has ${String(a)}, a loop ${String(b)}.`,
    );
  }
}

function signalTime(worked: readonly WorkedColumn[], engine: Engine, input: Column): number {
  const sheet = signalSheet(worked, engine.words, input);
  for (const each of worked) agree(each, sheet.values(each.column));
  let height = input.values[0] ?? 0;
  const { signals } = leastTimes(
    {
      signals: () => {
        height = height > 2 ? 1.8 : height + 0.01;
        sheet.set(height);
        sheet.readAll();
      },
    },
    { rounds: 5, warmMs: WARM },
  );
  return signals;
}

function inputColumn(engine: Engine): Column {
  const entry = engine.models.get('job')?.bands[0]?.columns.get(INPUT)?.entry;
  if (!entry) throw new Error(`The job has no input ${INPUT}.`);
  return entry;
}

/** Types another height at each call and works out what follows. */
function settler(engine: Engine, { document }: Notebook, input: Column) {
  let inches = 66;
  return () => {
    inches = inches === 72 ? 66 : 72;
    document.inputs.set(INPUT, `${String(inches)} in`);
    engine.graph.touch(input, 0);
    return engine.settle();
  };
}
