import { MANY, fullest } from './cutting-bound.ts';
import { firstFit } from './cutting-fit.ts';
import { costOf, usedOf, type CuttingTask, type Pattern } from './cutting.ts';

// Enough for the rails and posts of any fence of a few runs; beyond it the best plan so far stands.
const MOST_STEPS = 20000;
const ROUNDS = 40;
const MOST_TRIES = 400;
// The search goes a bar deeper with every bar.
const MOST_BARS = 300;

/** The best plan found, and whether every other was looked at or outbid. */
export function searchPlans(
  task: CuttingTask,
  bound: number,
): { readonly patterns: readonly Pattern[]; readonly isWhole: boolean } {
  const starts = [
    ...task.rooms.flatMap((room, stock) =>
      room < (task.widths[0] ?? 0) ? [] : [firstFit(task, stock)],
    ),
    ...valuedPlans(task, bound),
  ].map((patterns) => patterns.map((pattern) => inCheapest(pattern, task)));
  const start = starts.reduce((a, b) => (isBetter(b, a, task) ? b : a));
  const isProved = costOf(start, task) <= bound;
  if (isProved || start.length > MOST_BARS) return { patterns: start, isWhole: isProved };
  return new Search(task, start, bound).run();
}

/**
 * Plans made bar after bar, each bar the one that costs least for the worth of what it holds. Pieces
 * that ended in dear bars are worth more in the next round, so that they are served sooner.
 */
function valuedPlans(task: CuttingTask, bound: number): readonly (readonly Pattern[])[] {
  let worths = task.widths.map(Number);
  const plans: (readonly Pattern[])[] = [];
  let tries = 0;
  const rounds = task.widths.length > MANY ? 0 : ROUNDS;
  for (let round = 0; round < rounds; round++) {
    const plan = valuedPlan(task, worths);
    plans.push(plan);
    tries += new Set(plan).size;
    if (costOf(plan, task) <= bound || tries > MOST_TRIES) break;
    worths = task.widths.map((width, at) => {
      const dear = plan.filter(({ takes }) => takes.has(at)).map((bar) => dearness(bar, task));
      const mean = dear.reduce((sum, each) => sum + each, 0) / Math.max(1, dear.length);
      return 0.6 * (worths[at] ?? 0) + 0.4 * width * mean ** (1 + (round % 7));
    });
  }
  return plans;
}

function valuedPlan(task: CuttingTask, worths: readonly number[]): readonly Pattern[] {
  const wanted = [...task.wanted];
  const plan: Pattern[] = [];
  while (wanted.some((count) => count > 0)) {
    const left = { ...task, wanted };
    const bars = task.rooms.map((room, stock) => {
      const { worth, takes } = fullest(room, worths, left);
      return { pattern: { stock, takes: taken(takes) }, rate: (task.costs[stock] ?? 0) / worth };
    });
    const { pattern } = bars.reduce((a, b) => (b.rate < a.rate ? b : a));
    const times = Math.min(
      ...[...pattern.takes].map(([at, count]) => Math.floor((wanted[at] ?? 0) / count)),
    );
    if (!Number.isFinite(times)) return plan;
    for (let each = 0; each < times; each++) plan.push(pattern);
    for (const [at, count] of pattern.takes) wanted[at] = (wanted[at] ?? 0) - count * times;
  }
  return plan;
}

// What a bar costs for what is cut from it, against a bar of the best rate without waste.
function dearness(bar: Pattern, task: CuttingTask): number {
  const best = Math.min(...task.rooms.map((room, at) => (task.costs[at] ?? 0) / room));
  return (task.costs[bar.stock] ?? 0) / usedOf(bar, task) / best;
}

function taken(counts: readonly number[]): ReadonlyMap<number, number> {
  return new Map([...counts.entries()].filter(([, count]) => count > 0));
}

function inCheapest(bar: Pattern, task: CuttingTask): Pattern {
  const { takes, stock } = bar;
  const used = usedOf(bar, task);
  const cheapest = task.rooms.reduce(
    (best, room, at) =>
      room >= used && (task.costs[at] ?? 0) < (task.costs[best] ?? Infinity) ? at : best,
    stock,
  );
  return { takes, stock: cheapest };
}

// Of two plans that cost the same, the one with fewer bars.
function isBetter(a: readonly Pattern[], b: readonly Pattern[], task: CuttingTask): boolean {
  const difference = costOf(a, task) - costOf(b, task);
  return difference < 0 || (difference === 0 && a.length < b.length);
}

/** Branch and bound: the longest piece still wanted is cut from every bar that could hold it. */
class Search {
  private readonly task: CuttingTask;
  private readonly bound: number;
  private best: readonly Pattern[];
  private bestCost: number;
  private steps = 0;
  private readonly wanted: number[];
  private readonly chosen: Pattern[] = [];
  private readonly seen = new Map<string, number>();
  private readonly rate: number;

  constructor(task: CuttingTask, start: readonly Pattern[], bound: number) {
    this.task = task;
    this.bound = bound;
    this.best = start;
    this.bestCost = costOf(start, task);
    this.wanted = [...task.wanted];
    this.rate = Math.min(...task.rooms.map((room, at) => (task.costs[at] ?? 0) / room));
  }

  run(): { readonly patterns: readonly Pattern[]; readonly isWhole: boolean } {
    this.visit(0);
    return {
      patterns: this.best,
      isWhole: this.steps <= MOST_STEPS || this.bestCost <= this.bound,
    };
  }

  private visit(cost: number): void {
    this.steps += 1;
    if (this.isOver()) return;
    const first = this.wanted.findIndex((count) => count > 0);
    if (first < 0) {
      if (cost < this.bestCost) {
        this.best = [...this.chosen];
        this.bestCost = cost;
      }
      return;
    }
    const rest = this.wanted.reduce(
      (sum, count, at) => sum + count * (this.task.widths[at] ?? 0),
      0,
    );
    if (cost + rest * this.rate >= this.bestCost - 1e-6) return;
    const state = this.wanted.join();
    if ((this.seen.get(state) ?? Infinity) <= cost) return;
    this.seen.set(state, cost);
    for (const stock of this.stocksByRate()) {
      const left = (this.task.rooms[stock] ?? 0) - (this.task.widths[first] ?? 0);
      if (left < 0) continue;
      const takes = this.task.widths.map((_, at) => (at === first ? 1 : 0));
      this.fill(stock, first, left, takes, cost);
      if (this.isOver()) return;
    }
  }

  // Only bars that have no room for another wanted piece: a fuller bar is never worse.
  private fill(stock: number, at: number, left: number, takes: number[], cost: number): void {
    this.steps += 1;
    if (this.isOver()) return;
    if (at >= this.task.widths.length) {
      const hasRoom = this.task.widths.some(
        (width, piece) => width <= left && (this.wanted[piece] ?? 0) > (takes[piece] ?? 0),
      );
      if (!hasRoom) this.take({ stock, takes: taken(takes) }, cost);
      return;
    }
    const width = this.task.widths[at] ?? 1;
    const already = takes[at] ?? 0;
    const more = Math.min((this.wanted[at] ?? 0) - already, Math.floor(left / width));
    for (let count = more; count >= 0; count--) {
      takes[at] = already + count;
      this.fill(stock, at + 1, left - count * width, takes, cost);
    }
    takes[at] = already;
  }

  private take(pattern: Pattern, cost: number): void {
    this.giveBack(pattern, -1);
    this.chosen.push(pattern);
    this.visit(cost + (this.task.costs[pattern.stock] ?? 0));
    this.chosen.pop();
    this.giveBack(pattern, 1);
  }

  private giveBack({ takes }: Pattern, times: 1 | -1): void {
    for (const [at, count] of takes) this.wanted[at] = (this.wanted[at] ?? 0) + times * count;
  }

  private stocksByRate(): readonly number[] {
    const { rooms, costs } = this.task;
    return rooms
      .map((_, at) => at)
      .sort((a, b) => (costs[a] ?? 0) / (rooms[a] ?? 1) - (costs[b] ?? 0) / (rooms[b] ?? 1));
  }

  private isOver(): boolean {
    return this.steps > MOST_STEPS || this.bestCost <= this.bound;
  }
}
