import {
  KNOWN,
  WRONG,
  type Computation,
  type Input,
  type Rows,
  type Words,
} from '../graph/index.ts';
import { compile } from './compile.ts';
import { countsRows, references, type Expression } from './expression.ts';
import { CHUNK, type Node, type Trace } from './node.ts';
import { problem, type Problem } from '../units/index.ts';
import { workedParts, type Part } from './part.ts';

/**
 * How much one formula may ask of aggregates that look at the row outside, in sums of two numbers: less than a tenth of a
 * second. They go through their whole sheet once a row, which on a long run never ends.
 */
const MOST_WORK = 2e7;

const TOO_MUCH = problem(
  'This formula',
  'It would go through too many rows too many times.',
  'Take the aggregate once, in a column or input of its own, or use fewer of them.',
);

/** One thing that keeps a row from having a value. */
export type Reason = (to: Trace) => void;

/** A formula at work on the rows of a sheet: whole columns at once, or one row. */
export class Program implements Computation {
  readonly inputs: readonly Input[];
  readonly placed: boolean;
  private made: Node | undefined;
  /** Whether it goes through another sheet, which it may do for each row. */
  private readonly gathers: boolean;
  /** The versions of the inputs at the last run; what was worked out once for all rows holds as long as they do. */
  private ranAt = -1;
  private readonly expression: Expression;
  private readonly rows: Rows;
  private readonly words: Words;

  constructor(expression: Expression, rows: Rows, words: Words) {
    this.expression = expression;
    this.rows = rows;
    this.words = words;
    this.placed = countsRows(expression);
    const read = references(expression);
    this.gathers = read.some(({ reach, sheet }) => reach === 'whole' && sheet !== 'job');
    this.inputs = read.flatMap(({ columns, reach }) =>
      columns.map((column): Input => ({ column, reach })),
    );
  }

  // Built once there is a row to work out: most sheets of a new job have none.
  private get node(): Node {
    this.made ??= compile(this.expression, this.rows, this.words);
    return this.made;
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    const isOneMore = this.ranAt >= 0 && to - from === 1;
    this.ranAt = -1;
    if (to <= from) return;
    // One more row of a formula at work is not counted over again with each key that is typed.
    if (!isOneMore && this.isTooMuch) {
      values.fill(NaN, from, to);
      states.fill(WRONG, from, to);
      return;
    }
    const { node } = this;
    node.restart();
    this.ranAt = this.version;
    for (let start = from; start < to; start += CHUNK) {
      const count = Math.min(CHUNK, to - start);
      node.fill(start, count);
      if (taken(node, values, start, count)) states.fill(KNOWN, start, start + count);
      else states.set(node.stated(count).subarray(0, count), start);
    }
  }

  /** Tells why a row has no value; says nothing where it has one. */
  explain(row: number, trace: Trace): void {
    for (const tell of this.reasons(row)) tell(trace);
  }

  /**
   * Why a row has no value, each to be told; nothing where it has one. Of the rows of an aggregate about `most` are looked
   * at. Whoever hears a reason may ask other formulas: all are found before any is told, as formulas share their room.
   */
  reasons(row: number, most = Infinity): readonly Reason[] {
    const found: Reason[] = [];
    const wrong = (problem: Problem): void => {
      found.push((to) => {
        to.wrong(problem);
      });
    };
    if (this.isTooMuch) {
      wrong(TOO_MUCH);
      return found;
    }
    // Where work was broken off, inputs may have changed since.
    const { version } = this;
    if (this.ranAt !== version) this.node.restart();
    this.ranAt = version;
    this.node.fill(row, 1);
    this.node.trace(0, {
      lacks: (column, at) => {
        found.push((to) => {
          to.lacks(column, at);
        });
      },
      wrong,
      isEnough: () => found.length >= most,
    });
    return found;
  }

  /** Whether a condition is known to be true on a row. */
  isTrue(row: number): boolean {
    if (this.isTooMuch) return false;
    this.node.restart();
    this.node.fill(row, 1);
    return this.node.value(0) === 1;
  }

  /** Another number whenever an input may have changed. */
  get version(): number {
    let sum = 0;
    for (const { column } of this.inputs) sum += column.version;
    return sum;
  }

  private get isTooMuch(): boolean {
    return this.gathers && this.node.repeatedWork(this.rows.count) > MOST_WORK;
  }

  /** The whole formula with what each of its parts comes to on a row. */
  parts(row: number): Part {
    return workedParts(this.expression, this.rows, this.words, row);
  }
}

/** Takes over the values of the last fill; whether all of them are known. */
function taken(
  { data, at, mask }: Node,
  values: Float64Array,
  start: number,
  count: number,
): boolean {
  if (mask === 0) {
    const value = data[at] as number;
    values.fill(value, start, start + count);
    return value === value;
  }
  let isKnown = true;
  for (let i = 0; i < count; i++) {
    const value = data[at + i] as number;
    values[start + i] = value;
    if (value !== value) isKnown = false;
  }
  return isKnown;
}
