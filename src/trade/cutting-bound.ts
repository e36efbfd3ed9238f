import type { CuttingTask } from './cutting.ts';

/** More different lengths than this are only weighed by their sum. */
export const MANY = 60;
const ROUNDS = 80;

/**
 * A cost that no plan can go under. Any worth given to the pieces bounds the cost from below, once
 * it is scaled so that no bar can hold more worth than it costs. The worths are bettered as by
 * Gilmore and Gomory: they are what a piece costs in the bars chosen so far, and the bar that is
 * worth most for its cost is chosen next, until none is worth more than it costs.
 */
export function provenBound(task: CuttingTask): number {
  if (task.widths.length > MANY) return roundedUp(loosest(task), task.costs);
  const chosen = new ChosenBars(task);
  let worths = task.widths.map(Number);
  let best = 0;
  for (let round = 0; round < ROUNDS && task.widths.length > 0; round++) {
    const bars = task.rooms.map((room) => fullest(room, worths, task));
    // The bar that holds the most worth for its cost decides the scale.
    const dear = bars.reduce((a, b, stock) => {
      const ratio = b.worth / (task.costs[stock] ?? 1);
      return ratio > a.ratio ? { ratio, takes: b.takes, stock } : a;
    }, NOTHING);
    if (!Number.isFinite(dear.ratio) || dear.ratio <= 0) return best;
    const worth = worths.reduce((sum, each, at) => sum + each * (task.wanted[at] ?? 0), 0);
    best = Math.max(best, worth / dear.ratio);
    // The first worths, the widths, are not of any bars yet.
    const isLast = round > 0 && dear.ratio <= 1 + 1e-9;
    if (isLast || (round > 0 && !chosen.choose(dear.takes, task.costs[dear.stock] ?? 0))) break;
    worths = chosen.worths();
  }
  return roundedUp(best, task.costs);
}

/** As many bars as there are widths, cut so that they give just what is wanted, in parts of bars where need be: a basis of the simplex method. */
class ChosenBars {
  private readonly inverse: number[][];
  private readonly counts: number[];
  private readonly costs: number[];

  /** At first each bar holds one width alone, from the stock that gives it for least. */
  constructor({ widths, wanted, rooms, costs }: CuttingTask) {
    const alone = widths.map((width, at) => {
      const ways = rooms.map((room, stock) => {
        const most = Math.min(wanted[at] ?? 0, Math.floor(room / width));
        return { most, cost: costs[stock] ?? 0 };
      });
      return ways.reduce((a, b) => (b.cost / b.most < a.cost / a.most ? b : a));
    });
    this.inverse = alone.map(({ most }, at) => widths.map((_, to) => (to === at ? 1 / most : 0)));
    this.counts = alone.map(({ most }, at) => (wanted[at] ?? 0) / most);
    this.costs = alone.map(({ cost }) => cost);
  }

  /** What a piece of each width costs in these bars; what would cost less than nothing is worth nothing. */
  worths(): number[] {
    return this.costs.map((_, width) =>
      Math.max(
        0,
        this.inverse.reduce((sum, row, at) => sum + (this.costs[at] ?? 0) * (row[width] ?? 0), 0),
      ),
    );
  }

  /** Takes a bar in the place of the one it uses up first; false where it would change nothing. */
  choose(takes: readonly number[], cost: number): boolean {
    const { inverse, counts, costs } = this;
    const uses = inverse.map((row) =>
      row.reduce((sum, each, at) => sum + each * (takes[at] ?? 0), 0),
    );
    const limits = uses.map((use, at) => (use > 1e-9 ? (counts[at] ?? 0) / use : Infinity));
    const most = Math.min(...limits);
    const out = limits.indexOf(most);
    const use = uses[out];
    const leaving = inverse[out];
    if (!Number.isFinite(most) || use === undefined || !leaving) return false;
    const entering = leaving.map((each) => each / use);
    uses.forEach((each, at) => {
      if (at === out) return;
      counts[at] = (counts[at] ?? 0) - most * each;
      inverse[at] = (inverse[at] ?? []).map((value, to) => value - each * (entering[to] ?? 0));
    });
    inverse[out] = entering;
    counts[out] = most;
    costs[out] = cost;
    return true;
  }
}

// As if pieces could be cut across bars, at the best rate there is.
function loosest({ widths, wanted, rooms, costs }: CuttingTask): number {
  const rate = Math.min(...rooms.map((room, at) => (costs[at] ?? 0) / room));
  return rate * widths.reduce((sum, width, at) => sum + width * (wanted[at] ?? 0), 0);
}

const NOTHING = { ratio: 0, takes: [] as readonly number[], stock: 0 };

// Every plan costs a whole number of the costs' greatest common part.
function roundedUp(bound: number, costs: readonly number[]): number {
  const part = costs.reduce((a, b) => commonPart(a, b), 0);
  return part === 0 ? 0 : Math.ceil(bound / part - 1e-6) * part;
}

function commonPart(a: number, b: number): number {
  return b === 0 ? a : commonPart(b, a % b);
}

/** No bar of this room holds more than `worth` of the wanted pieces; `takes` are those of the best bar that was met. */
export function fullest(
  room: number,
  worths: readonly number[],
  { widths, wanted }: CuttingTask,
): { readonly worth: number; readonly takes: readonly number[] } {
  const order = widths
    .map((_, at) => at)
    .sort((a, b) => (worths[b] ?? 0) / (widths[b] ?? 1) - (worths[a] ?? 0) / (widths[a] ?? 1));
  const takes = widths.map(() => 0);
  let best: { worth: number; takes: readonly number[] } = { worth: 0, takes: [] };
  let steps = 0;
  const loose = (place: number, left: number): number =>
    place < order.length
      ? (left * (worths[order[place] ?? 0] ?? 0)) / (widths[order[place] ?? 0] ?? 1)
      : 0;
  const visit = (place: number, left: number, worth: number): void => {
    steps += 1;
    if (worth > best.worth) best = { worth, takes: [...takes] };
    if (place >= order.length || steps > STEPS) return;
    if (worth + loose(place, left) <= best.worth) return;
    const at = order[place] ?? 0;
    const width = widths[at] ?? 1;
    const most = Math.min(wanted[at] ?? 0, Math.floor(left / width));
    for (let count = most; count >= 0; count--) {
      takes[at] = count;
      visit(place + 1, left - count * width, worth + count * (worths[at] ?? 0));
    }
    takes[at] = 0;
  };
  visit(0, room, 0);
  // Cut off before the end, only the loose value is safe.
  return steps > STEPS ? { worth: Math.max(best.worth, loose(0, room)), takes: best.takes } : best;
}

const STEPS = 20000;
