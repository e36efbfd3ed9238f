import { KNOWN, type Column, type State } from '../graph/index.ts';
import type { Problem } from '../units/index.ts';

/** Rows worked out at a time: small enough for the processor's cache, large enough to spread the calls. */
export const CHUNK = 512;

/** The states of rows that are all known. */
export const ALL_KNOWN = new Uint8Array(CHUNK).fill(KNOWN);

const NONE = new Float64Array(0);

/**
 * Room for the values of one chunk, by its number. All formulas use the same, as one is at work at a time: what they
 * touch stays in the processor's cache, and no formula keeps memory of its own.
 */
const SHARED: Float64Array[] = [];

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
 * One part of a formula at work. After `fill`, the value of row `i` stands in `data` at `at + (i & mask)`;
 * NaN means not known, and `trace` says why. Flags are 1 and 0; texts are numbers of the graph's Words.
 */
export abstract class Node {
  data: Float64Array = NONE;
  at = 0;
  /** -1, or 0 where the last fill is known to have one value for all its rows. */
  mask = -1;
  /** The number of its room among what formulas share, which no other part of its formula has; -1 keeps its own. */
  shared = -1;
  /** Whether it fills some parts for some rows only. */
  protected readonly isChooser: boolean = false;
  /** The rows of the next fill that somebody looks at, where those are not all: a rule is called for no other. */
  lookedAt: Uint8Array | undefined;
  /** The nodes directly inside. */
  readonly parts: readonly Node[];
  private own: Float64Array = NONE;
  private states: Uint8Array | undefined;
  private marked: Uint8Array | undefined;
  private askers: readonly Node[] | undefined;
  private keeping: readonly Node[] | undefined;

  constructor(parts: readonly Node[] = []) {
    this.parts = parts;
  }

  /** Works out `count` rows (at most CHUNK) from row `from` on. */
  fill(from: number, count: number): void {
    let mask = 0;
    for (const part of this.parts) {
      part.fill(from, count);
      mask |= part.mask;
    }
    this.combineAll(count, mask === 0);
  }

  /** Whether the last fill is known to have one value for all its rows. */
  get isStill(): boolean {
    return this.mask === 0;
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

  /** Room for the values of `count` rows, which the node has from now on. */
  protected hold(count: number): Float64Array {
    const { shared } = this;
    let room = shared < 0 ? this.own : SHARED[shared];
    if (!room || room.length < count) {
      // Most sheets of a job have a few rows.
      room = new Float64Array(Math.min(CHUNK, 2 * count));
      if (shared < 0) this.own = room;
      else SHARED[shared] = room;
    }
    this.data = room;
    this.at = 0;
    this.mask = -1;
    return room;
  }

  /** Has one value for all rows, and keeps it while other formulas are at work. */
  protected holdStill(value: number): void {
    if (this.own.length === 0) this.own = new Float64Array(1);
    this.own[0] = value;
    this.data = this.own;
    this.at = 0;
    this.mask = 0;
  }

  /** Writes `count` values from those of the parts. */
  protected combine?(count: number): void;

  /** Combines the parts, once for all rows where each part has one value for them. */
  protected combineAll(count: number, isStill: boolean): void {
    if (!isStill) {
      this.combine?.(count);
      return;
    }
    this.lookedAt = undefined;
    this.combine?.(1);
    this.mask = 0;
  }

  /** Notes that all rows came to one value, where they did: what follows from flags is mostly that. */
  protected noteStill(count: number): void {
    this.mask = isOneValue(this.data, this.at, count) ? 0 : -1;
  }

  /** Fills for the rows whose mark is `wanted`, of those `among`; of others nobody reads the value. */
  fillWhere(
    from: number,
    count: number,
    { data, at, mask }: Marks,
    wanted: number,
    among: Uint8Array | undefined,
  ): void {
    const askers = (this.askers ??= this.choosy);
    if (askers.length > 0) {
      const lookedAt = (this.marked ??= new Uint8Array(CHUNK));
      for (let i = 0; i < count; i++)
        lookedAt[i] = data[at + (i & mask)] === wanted && among?.[i] !== 0 ? 1 : 0;
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
    this.mask = at.mask;
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
    return this.data[this.at + (i & this.mask)] ?? NaN;
  }

  /** Whether place `i` of the last fill has a value. */
  knows(i: number): boolean {
    return !Number.isNaN(this.value(i));
  }

  /** Whether none of the first `count` places of the last fill has. */
  knowsNone(count: number): boolean {
    const { data, at } = this;
    const end = at + (this.mask === 0 ? 1 : count);
    for (let i = at; i < end; i++) if (data[i] === data[i]) return false;
    return true;
  }

  /** Whether the first `count` places of the last fill have. */
  knowsAll(count: number): boolean {
    const { data, at } = this;
    const end = at + (this.mask === 0 ? 1 : count);
    for (let i = at; i < end; i++) if (data[i] !== data[i]) return false;
    return true;
  }
}

/** A mark for each row, as a node has its values. */
export interface Marks {
  readonly data: ArrayLike<number>;
  readonly at: number;
  readonly mask: number;
}

/** Whether `count` values from `at` on, more than one, are one and the same; not known counts as a value. */
function isOneValue(data: Float64Array, at: number, count: number): boolean {
  const first = data[at] as number;
  if (first !== first) {
    for (let i = at + count - 1; i > at; i--) if (data[i] === data[i]) return false;
  } else if (first === 0) {
    // Nought and minus nought are two values; 1 over the one is above zero.
    for (let i = at + count - 1; i >= at; i--)
      if (data[i] !== 0 || 1 / (data[i] as number) < 0) return false;
  } else {
    for (let i = at + count - 1; i > at; i--) if (data[i] !== first) return false;
  }
  return count > 1;
}
