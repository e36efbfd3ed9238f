import { KNOWN, type Column, type State } from '../graph/index.ts';
import type { Problem } from '../units/index.ts';

/** Rows worked out at a time: small enough for the processor's cache, large enough to spread the calls. */
export const CHUNK = 256;

/** The states of rows that are all known. */
export const ALL_KNOWN = new Uint8Array(CHUNK).fill(KNOWN);

const NONE = new Float64Array(0);

/** Collects why a value is not known. */
export interface Trace {
  /** An input that has no value, with its row. */
  lacks(column: Column, row: number): void;
  /** A rule that has no answer here. */
  wrong(problem: Problem): void;
}

/**
 * One part of a formula at work. After `fill`, the values of the rows stand in `data` from `at` on;
 * NaN means not known, and `trace` says why. Flags are 1 and 0; texts are numbers of the graph's Words.
 */
export abstract class Node {
  data: Float64Array = NONE;
  at = 0;
  /** Whether the last fill is known to have one value for all its rows. */
  isStill = false;
  private own: Float64Array = NONE;
  private states: Uint8Array | undefined;

  /** Works out `count` rows (at most CHUNK) from row `from` on. */
  abstract fill(from: number, count: number): void;

  /** The state of the row at place `i` of the last fill; tells `trace` the reasons where it is given. */
  abstract trace(i: number, trace?: Trace): State;

  /** The states of the first `count` rows of the last fill, or of more. The array is used again at the next. */
  stated(count: number): Uint8Array {
    if (this.knowsAll(count)) return ALL_KNOWN;
    const states = this.room();
    for (let i = 0; i < count; i++) states[i] = this.knows(i) ? KNOWN : this.trace(i);
    return states;
  }

  /** Room of its own for the values of `count` rows, which the node has from now on. */
  protected hold(count: number): Float64Array {
    // Most sheets of a job have a few rows, and thousands of nodes.
    if (this.own.length < count) this.own = new Float64Array(Math.min(CHUNK, 2 * count));
    this.data = this.own;
    this.at = 0;
    this.isStill = false;
    return this.own;
  }

  /** Has one value for `count` rows. */
  protected holdStill(value: number, count: number): void {
    const before = this.own;
    const isSame = this.data === before && this.isStill && Object.is(before[0], value);
    if (!isSame || before.length < count) this.hold(count).fill(value);
    this.isStill = true;
  }

  /** Has the values of another node, where that keeps them. */
  protected stand(at: Node): void {
    this.data = at.data;
    this.at = at.at;
    this.isStill = at.isStill;
  }

  /** Where `stated` writes. */
  protected room(): Uint8Array {
    return (this.states ??= new Uint8Array(CHUNK));
  }

  /** Forgets what was worked out once for all rows. */
  restart(): void {
    for (const part of this.parts) part.restart();
  }

  /** The nodes directly inside. */
  get parts(): readonly Node[] {
    return [];
  }

  /** What one value takes, parts aside, as a multiple of a sum of two numbers. */
  protected get effort(): number {
    return 1;
  }

  /** What it takes at most to fill `count` rows, parts and aggregates included, in sums of two numbers. */
  work(count: number): number {
    return this.parts.reduce((sum, part) => sum + part.work(count), count * this.effort);
  }

  /** How much of that goes into aggregates that go through their rows again for each of these. */
  repeatedWork(count: number): number {
    return this.parts.reduce((sum, part) => sum + part.repeatedWork(count), 0);
  }

  /** The value at place `i` of the last fill. */
  value(i: number): number {
    return this.data[this.at + i] ?? NaN;
  }

  /** Whether place `i` of the last fill has a value. */
  knows(i: number): boolean {
    return !Number.isNaN(this.value(i));
  }

  /** Whether none of the first `count` places of the last fill has. */
  knowsNone(count: number): boolean {
    const { data, at } = this;
    for (let i = at; i < at + count; i++) if (data[i] === data[i]) return false;
    return true;
  }

  /** Whether the first `count` places of the last fill have. */
  knowsAll(count: number): boolean {
    const { data, at } = this;
    for (let i = at; i < at + count; i++) if (data[i] !== data[i]) return false;
    return true;
  }
}
