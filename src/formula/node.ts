import { type Column, type State } from '../graph/index.ts';
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

  /** Works out `count` rows (at most CHUNK) from row `from` on. */
  abstract fill(from: number, count: number): void;

  /** The state of the row at place `i` of the last fill; tells `trace` the reasons where it is given. */
  abstract trace(i: number, trace?: Trace): State;

  /** Forgets what was worked out once for all rows. */
  restart(): void {
    for (const part of this.parts) part.restart();
  }

  /** The nodes directly inside. */
  get parts(): readonly Node[] {
    return [];
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
