import type { CuttingTask } from './cutting.ts';

/** More different lengths than this are only weighed by their sum. */
export const MANY = 60;
const ROUNDS = 60;

/**
 * A cost that no plan can go under. Any worth given to the pieces bounds the cost from below, once
 * it is scaled so that no bar can hold more worth than it costs; the worths are bettered a few times.
 */
export function provenBound(task: CuttingTask): number {
  if (task.widths.length > MANY) return roundedUp(loosest(task), task.costs);
  let worths = task.widths.map(Number);
  let best = 0;
  for (let round = 0; round < ROUNDS && task.widths.length > 0; round++) {
    const bars = task.rooms.map((room) => fullest(room, worths, task));
    // The bar that holds the most worth for its cost decides the scale.
    const dear = bars.reduce((a, b, stock) => {
      const ratio = b.worth / (task.costs[stock] ?? 1);
      return ratio > a.ratio ? { ratio, takes: b.takes } : a;
    }, NOTHING);
    if (!Number.isFinite(dear.ratio) || dear.ratio <= 0) return best;
    const worth = worths.reduce((sum, each, at) => sum + each * (task.wanted[at] ?? 0), 0);
    best = Math.max(best, worth / dear.ratio);
    const ease = 0.25 / (round + 1);
    worths = worths.map((each, at) => ((dear.takes[at] ?? 0) > 0 ? each * (1 - ease) : each));
  }
  return roundedUp(best, task.costs);
}

// As if pieces could be cut across bars, at the best rate there is.
function loosest({ widths, wanted, rooms, costs }: CuttingTask): number {
  const rate = Math.min(...rooms.map((room, at) => (costs[at] ?? 0) / room));
  return rate * widths.reduce((sum, width, at) => sum + width * (wanted[at] ?? 0), 0);
}

const NOTHING = { ratio: 0, takes: [] as readonly number[] };

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
