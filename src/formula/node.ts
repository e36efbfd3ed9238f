import { KNOWN, type Column, type State } from '../graph/index.ts';
import type { Problem } from '../units/index.ts';

/** Rows worked out at a time: small enough for the processor's cache, large enough to spread the calls. */
export const CHUNK = 256;

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
  data: Float64Array = new Float64Array(CHUNK);
  at = 0;
  private states: Uint8Array | undefined;

  /** Works out `count` rows (at most CHUNK) from row `from` on. */
  abstract fill(from: number, count: number): void;

  /** The state of the row at place `i` of the last fill; tells `trace` the reasons where it is given. */
  abstract trace(i: number, trace?: Trace): State;

  /** The states of the first `count` rows of the last fill. The array is used again at the next. */
  stated(count: number): Uint8Array {
    const states = this.room().subarray(0, count);
    for (let i = 0; i < count; i++) states[i] = this.knows(i) ? KNOWN : this.trace(i);
    return states;
  }

  /** Has the values of another node, where that keeps them. */
  protected stand(at: Node): void {
    this.data = at.data;
    this.at = at.at;
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

  /** How many values are worked out at most to fill `count` rows, those inside aggregates too. */
  work(count: number): number {
    return this.parts.reduce((sum, part) => sum + part.work(count), count);
  }

  /** The value at place `i` of the last fill. */
  value(i: number): number {
    return this.data[this.at + i] ?? NaN;
  }

  /** Whether place `i` of the last fill has a value. */
  knows(i: number): boolean {
    return !Number.isNaN(this.value(i));
  }
}
