import { provenBound } from './cutting-bound.ts';
import { firstFit } from './cutting-fit.ts';
import { searchPlans } from './cutting-search.ts';

/** Pieces of one length. */
export interface Pieces {
  /** [m] */
  readonly length: number;
  readonly count: number;
}

/** A length that the yard sells; its price is undefined where it is not known. */
export interface Stock {
  /** [m] */
  readonly length: number;
  /** [USD] */
  readonly price: number | undefined;
}

/** One bar of stock and the pieces cut from it, longest first. */
export interface Bar {
  /** [m] */
  readonly stock: number;
  /** [m] */
  readonly pieces: readonly number[];
  /** What is left of it after the saw. [m] */
  readonly offcut: number;
}

/** Which bars to buy, what is cut from each, and how much less any plan could possibly take. */
export interface CuttingPlan {
  /** Longest stock first. */
  readonly bars: readonly Bar[];
  /** Whether cost was made least; else the length bought was. */
  readonly byPrice: boolean;
  /** In money where by price, else the length bought. [USD or m] */
  readonly total: number;
  /** No plan can take less than this. [USD or m] */
  readonly bound: number;
  /** Whether the plan is proved to be the least there is. */
  readonly isLeast: boolean;
}

/** Pieces and stock in whole micrometres and whole ten-thousandths of money, so that sums are exact. */
export interface CuttingTask {
  /** Different lengths with the saw added, longest first. */
  readonly widths: readonly number[];
  readonly wanted: readonly number[];
  /** Stock with one saw cut added, longest first. */
  readonly rooms: readonly number[];
  readonly costs: readonly number[];
}

/** How many pieces of each width come from one bar of a stock; widths by their place in the task, longest first, those it has none of left out. */
export interface Pattern {
  readonly stock: number;
  readonly takes: ReadonlyMap<number, number>;
}

const FINE = 1e6;
const MONEY = 1e4;

/**
 * The cheapest way found to cut all pieces from stock, offcuts used again across the job.
 *
 * Least cost where every stock length has a price, else least length bought. A bar takes
 * pieces whose lengths with a saw cut between each two are at most its own. Never worse than
 * first-fit-decreasing; searched to the end for small jobs, and cut off for large ones, where
 * `isLeast` says whether the bound still proves it. Undefined where a piece is longer than
 * every stock.
 */
export function planCuts(
  pieces: readonly Pieces[],
  stocks: readonly Stock[],
  kerf: number,
): CuttingPlan | undefined {
  const saw = Math.round(kerf * FINE);
  const byPrice = stocks.length > 0 && stocks.every(({ price }) => price !== undefined);
  const task = taskOf(pieces, stocks, saw, byPrice);
  if ((task.widths[0] ?? 0) > (task.rooms[0] ?? 0)) return undefined;
  const bound = provenBound(task);
  const { patterns, isWhole } = searchPlans(task, bound);
  const total = costOf(patterns, task);
  const scale = byPrice ? MONEY : FINE;
  return {
    bars: patterns.map((pattern) => barOf(pattern, task, saw)).sort(longestFirst),
    byPrice,
    total: total / scale,
    bound: (isWhole ? total : Math.min(bound, total)) / scale,
    isLeast: isWhole || total <= bound,
  };
}

/** What first-fit-decreasing into the cheapest single stock that takes every piece would come to, in the measure of `planCuts`. */
export function firstFitTotal(
  pieces: readonly Pieces[],
  stocks: readonly Stock[],
  kerf: number,
): number {
  const saw = Math.round(kerf * FINE);
  const byPrice = stocks.length > 0 && stocks.every(({ price }) => price !== undefined);
  const task = taskOf(pieces, stocks, saw, byPrice);
  const totals = task.rooms.flatMap((room, stock) =>
    room < (task.widths[0] ?? 0) ? [] : [costOf(firstFit(task, stock), task)],
  );
  return Math.min(...totals) / (byPrice ? MONEY : FINE);
}

/** What a plan costs, in the task's own measure. */
export function costOf(patterns: readonly Pattern[], { costs }: CuttingTask): number {
  return patterns.reduce((total, { stock }) => total + (costs[stock] ?? 0), 0);
}

function taskOf(
  pieces: readonly Pieces[],
  stocks: readonly Stock[],
  saw: number,
  byPrice: boolean,
): CuttingTask {
  const wanted = new Map<number, number>();
  for (const { length, count } of pieces) {
    if (count <= 0) continue;
    const width = Math.round(length * FINE) + saw;
    wanted.set(width, (wanted.get(width) ?? 0) + Math.ceil(count - 1e-9));
  }
  const widths = [...wanted.keys()].sort((a, b) => b - a);
  const best = new Map<number, number>();
  for (const { length, price } of stocks) {
    const room = Math.round(length * FINE) + saw;
    const cost = byPrice ? Math.round((price ?? 0) * MONEY) : room - saw;
    best.set(room, Math.min(cost, best.get(room) ?? Infinity));
  }
  const rooms = [...best.keys()].sort((a, b) => b - a);
  return {
    widths,
    wanted: widths.map((width) => wanted.get(width) ?? 0),
    rooms,
    costs: rooms.map((room) => best.get(room) ?? 0),
  };
}

/** What is cut from a bar, in the task's own measure. */
export function usedOf({ takes }: Pattern, { widths }: CuttingTask): number {
  let used = 0;
  for (const [at, count] of takes) used += count * (widths[at] ?? 0);
  return used;
}

function barOf(pattern: Pattern, task: CuttingTask, saw: number): Bar {
  const room = task.rooms[pattern.stock] ?? 0;
  return {
    stock: (room - saw) / FINE,
    pieces: [...pattern.takes].flatMap(([at, count]) =>
      Array<number>(count).fill(((task.widths[at] ?? 0) - saw) / FINE),
    ),
    // What the last cut eats is no longer an offcut.
    offcut: Math.max(0, room - usedOf(pattern, task) - saw) / FINE,
  };
}

function longestFirst(a: Bar, b: Bar): number {
  return b.stock - a.stock || (b.pieces[0] ?? 0) - (a.pieces[0] ?? 0) || a.offcut - b.offcut;
}
