import type { Answer } from '../units/index.ts';
import { planCuts, type CuttingPlan, type Pieces, type Stock } from './cutting.ts';
import { atMost, between, covered, refusal, shown, zeroOrMore, type Limit } from './limits.ts';

/**
 * How many pieces of one stock length the cutting plan takes.
 *
 * least cost where every stock length has a price, else least length bought; a saw cut
 * between each two pieces; offcuts serve the whole job
 *
 * @param pieces - Lengths that are wanted. [m]
 * @param counts - How many of each, in the same order. [1]
 * @param stocks - Lengths that the yard sells. [m]
 * @param priced - Lengths that have a price, 0 where none is meant. [m]
 * @param prices - Their prices in the same order, 0 where none is known. [USD]
 * @param kerf - Width of the saw cut, 0 or more. [m]
 * @param stock - The stock length to count. [m]
 * @returns Pieces of that stock. [1]
 *
 * @source cutting-stock problem: branch and bound over first-fit-decreasing
 * @check hand-worked: 3 pieces of 6 ft from 8 and 12 ft, no price, no kerf → 1 of 12 ft and 1 of 8 ft
 */
export function cutCount(
  pieces: readonly number[],
  counts: readonly number[],
  stocks: readonly number[],
  priced: readonly number[],
  prices: readonly number[],
  kerf: number,
  stock: number,
): Answer {
  const wanted = alikeAsOne(pieces, counts);
  const limits = limitsOn(wanted, stocks, priced, prices, kerf);
  return covered('cut_count', limits, () =>
    countOf(stock, planFor(wanted, stocks, priced, prices, kerf)),
  );
}

/**
 * The same for pieces of one section among several, told apart by area.
 *
 * as cut_count, for the pieces whose area is this one
 *
 * @param pieces - Lengths that are wanted. [m]
 * @param counts - How many of each, in the same order. [1]
 * @param areas - Section of each, in the same order. [m^2]
 * @param area - The section to plan for. [m^2]
 * @param stocks - Lengths that the yard sells. [m]
 * @param priced - Lengths that have a price, 0 where none is meant. [m]
 * @param priced_areas - Their sections, in the same order. [m^2]
 * @param prices - Their prices in the same order, 0 where none is known. [USD]
 * @param kerf - Width of the saw cut, 0 or more. [m]
 * @param stock - The stock length to count. [m]
 * @returns Pieces of that stock. [1]
 *
 * @source cutting-stock problem: branch and bound over first-fit-decreasing
 * @check hand-worked: 2 posts of 104 in from 8, 10 and 12 ft → 2 of 10 ft
 */
export function cutCountOf(
  pieces: readonly number[],
  counts: readonly number[],
  areas: readonly number[],
  area: number,
  stocks: readonly number[],
  priced: readonly number[],
  priced_areas: readonly number[],
  prices: readonly number[],
  kerf: number,
  stock: number,
): Answer {
  const wanted = pieces.map((length, at) => ({
    length,
    count: isSame(areas[at], area) ? (counts[at] ?? 0) : 0,
  }));
  const paid = prices.map((price, at) => (isSame(priced_areas[at], area) ? price : 0));
  const limits = limitsOn(wanted, stocks, priced, paid, kerf);
  return covered('cut_count_of', limits, () =>
    countOf(stock, planFor(wanted, stocks, priced, paid, kerf)),
  );
}

/** The plan that `cut_count` counts from; undefined where a piece is longer than every stock. */
export function cutPlan(
  pieces: readonly Pieces[],
  stocks: readonly number[],
  priced: readonly number[],
  prices: readonly number[],
  kerf: number,
): CuttingPlan | undefined {
  return planFor(pieces, stocks, priced, prices, kerf);
}

// Undefined where none is known.
function pricedStocks(
  stocks: readonly number[],
  priced: readonly number[],
  prices: readonly number[],
): readonly Stock[] {
  return stocks.map((length) => {
    const known = prices.filter((price, at) => price > 0 && isSame(priced[at], length));
    return { length, price: known.length === 0 ? undefined : Math.min(...known) };
  });
}

function limitsOn(
  wanted: readonly Pieces[],
  stocks: readonly number[],
  priced: readonly number[],
  prices: readonly number[],
  kerf: number,
): readonly Limit[] {
  const needed = wanted.filter(({ count }) => count > 0);
  const longest = stocks.reduce((most, length) => Math.max(most, length), 0);
  const total = needed.reduce((sum, { count }) => sum + count, 0);
  return [
    between('saw cut', kerf, [0, 0.1], 'in'),
    ...stocks.map((length) => aStock(length)),
    ...priced.map((length) => zeroOrMore('length with a price', length, 'ft')),
    ...prices.map((price) => between('price', price, [0, 1e6], 'USD')),
    ...needed.map(({ length }) => aPiece(length, longest)),
    total <= 100000
      ? undefined
      : [`“${String(total)}” pieces are wanted.`, 'Plan at most 100,000 pieces at once.'],
  ];
}

function aStock(length: number): Limit {
  if (length > 0.01 && length < 100) return undefined;
  return [`The stock length is “${shown(length, 'ft')}”.`, 'Enter lengths that a yard sells.'];
}

function aPiece(length: number, longest: number): Limit {
  if (!(length > 0.001))
    return [`A piece is “${shown(length, 'in')}” long.`, 'Enter lengths of more than 0.'];
  if (atMost(length, longest)) return undefined;
  return [
    `A piece of “${shown(length, 'in')}” is needed, and the longest stock is ${shown(longest, 'ft')}.`,
    'Add a longer stock length, or join two.',
  ];
}

function countOf(stock: number, plan: CuttingPlan | undefined): Answer {
  if (!plan)
    return refusal('', ['A piece is longer than any stock.', 'Add a longer stock length.']);
  return plan.bars.filter((bar) => isSame(bar.stock, stock)).length;
}

// The same plan is asked for once a stock length; only the last few are kept, and fewer of long ones.
const kept = new Map<string, CuttingPlan | undefined>();
const MOST_KEPT = 16;
const MOST_BARS_KEPT = 20_000;

function planFor(
  wanted: readonly Pieces[],
  stocks: readonly number[],
  priced: readonly number[],
  prices: readonly number[],
  kerf: number,
): CuttingPlan | undefined {
  const paid = pricedStocks(stocks, priced, prices);
  const needed = wanted.filter(({ count }) => count > 0);
  const key = JSON.stringify([needed, paid, kerf]);
  if (!kept.has(key)) {
    const bars = [...kept.values()].reduce((sum, plan) => sum + (plan?.bars.length ?? 0), 0);
    if (kept.size > MOST_KEPT || bars > MOST_BARS_KEPT) kept.clear();
    kept.set(key, planCuts(needed, paid, kerf));
  }
  return kept.get(key);
}

function isSame(a: number | undefined, b: number): boolean {
  return a !== undefined && atMost(a, b) && atMost(b, a);
}

// A long fence wants thousands of rails of a few lengths.
const gathered = new WeakMap<
  readonly number[],
  { readonly counts: readonly number[]; readonly alike: readonly Pieces[] }
>();

// The lines of a list ask for the same pieces, one stock length after another, and a long run has many.
function alikeAsOne(pieces: readonly number[], counts: readonly number[]): readonly Pieces[] {
  const known = gathered.get(pieces);
  if (known?.counts === counts) return known.alike;
  const alike = piecesOf(pieces, counts);
  gathered.set(pieces, { counts, alike });
  return alike;
}

function piecesOf(pieces: readonly number[], counts: readonly number[]): readonly Pieces[] {
  const wanted = new Map<number, number>();
  pieces.forEach((length, at) => {
    wanted.set(length, (wanted.get(length) ?? 0) + (counts[at] ?? 0));
  });
  return [...wanted].map(([length, count]) => ({ length, count }));
}
