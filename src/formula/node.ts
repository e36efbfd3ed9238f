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
  /** Whether nothing more needs to be told of an aggregate's rows. */
  isEnough?(): boolean;
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
  /** Whether it fills some parts for some rows only. */
  protected readonly isChooser: boolean = false;
  /** The rows of the next fill that somebody looks at, where those are not all: a rule is called for no other. */
  lookedAt: Uint8Array | undefined;
  /** The nodes directly inside. */
  readonly parts: readonly Node[];
  private own: Float64Array = NONE;
  /** How many places of its own have the one value of `holdStill`. */
  private alike = 0;
  private states: Uint8Array | undefined;
  private mask: Uint8Array | undefined;
  private askers: readonly Node[] | undefined;
  private keeping: readonly Node[] | undefined;

  constructor(parts: readonly Node[] = []) {
    this.parts = parts;
  }

  /** Works out `count` rows (at most CHUNK) from row `from` on. */
  fill(from: number, count: number): void {
    let isStill = true;
    for (const part of this.parts) {
      part.fill(from, count);
      isStill &&= part.isStill;
    }
    this.combineAll(count, isStill);
  }

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
    this.alike = 0;
    return this.own;
  }

  /** Has one value for `count` rows. */
  protected holdStill(value: number, count: number): void {
    if (this.alike < count || !Object.is(this.own[0], value)) {
      const own = this.hold(count).fill(value);
      this.alike = own.length;
    }
    this.data = this.own;
    this.at = 0;
    this.isStill = true;
  }

  /** Writes `count` values from those of the parts. */
  protected combine?(count: number): void;

  /** Combines the parts, once for all rows where each part has one value for them. */
  protected combineAll(count: number, isStill: boolean): void {
    if (!isStill) {
      this.combine?.(count);
      return;
    }
    const { alike, own } = this;
    const before = own[0];
    this.lookedAt = undefined;
    this.combine?.(1);
    // What stands in the other places stands there still.
    if (this.own === own && Object.is(own[0], before)) this.alike = alike;
    this.holdStill(this.value(0), count);
  }

  /** Notes that all rows came to one value, where they did: what follows from flags is mostly that. */
  protected noteStill(count: number): void {
    this.isStill = isOneValue(this.data, this.at, count);
  }

  /** Fills for the rows where `marks` from `place` on are `mark`, of those `among`; of others nobody reads the value. */
  fillWhere(
    from: number,
    count: number,
    marks: ArrayLike<number>,
    place: number,
    mark: number,
    among: Uint8Array | undefined,
  ): void {
    const askers = (this.askers ??= this.choosy);
    if (askers.length > 0) {
      const lookedAt = (this.mask ??= new Uint8Array(CHUNK));
      for (let i = 0; i < count; i++)
        lookedAt[i] = marks[place + i] === mark && among?.[i] !== 0 ? 1 : 0;
      for (const node of askers) node.lookedAt = lookedAt;
    }
    this.fill(from, count);
  }

  /** The nodes of this part that go by what is looked at. */
  get choosy(): readonly Node[] {
    const inside = this.parts.flatMap((part) => part.choosy);
    return this.isChooser && inside.length > 0 ? [this, ...inside] : inside;
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
    this.keeping ??= this.parts.filter((part) => part.keeps);
    for (const part of this.keeping) part.restart();
  }

  /** Whether anything in this part is worked out once for all rows. */
  get keeps(): boolean {
    return this.parts.some((part) => part.keeps);
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

/** Whether `count` values from `at` on, more than one, are one and the same; not known counts as a value. */
function isOneValue(data: Float64Array, at: number, count: number): boolean {
  const first = data[at];
  for (let i = at + count - 1; i > at; i--) if (!Object.is(data[i], first)) return false;
  return count > 1;
}
