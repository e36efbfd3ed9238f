import type { Answer } from '../units/index.ts';
import { covered, zeroOrMore, type Limit } from './limits.ts';

/**
 * The step of a fence whose panels all step down alike.
 *
 * step = fall of the run / bays
 *
 * @param drops - Fall of the ground to each post from the post before it, the first post's own left out of account; minus where it rises. [m]
 * @returns Step of each panel, minus where the run rises. [m]
 *
 * @source proportion
 * @check hand-worked: 3, 4 1/2, 6, 8 1/4, 7 1/2, 6 1/4, 5, 3 1/2 in over 8 bays → 44/8 = 5 1/2 in
 */
export function equalStep(drops: readonly number[]): Answer {
  return covered('equal_step', [aBay(drops)], () => total(drops) / (drops.length - 1));
}

/**
 * The least clearance under any panel where all step down alike.
 *
 * under each panel: gap + fall so far - steps so far, at the end where it is less
 *
 * Less than nothing means that a panel would have to go into the ground.
 *
 * @param drops - Fall of the ground to each post from the post before it. [m]
 * @param gap - Gap wanted under the first panel, 0 or more. [m]
 * @returns Least clearance. [m]
 *
 * @source plane geometry
 * @check hand-worked: 3, 4 1/2, 6, ... in with a 2 in gap → 2 + 7 1/2 - 11 = -1 1/2 in under the third panel
 */
export function leastClearance(drops: readonly number[], gap: number): Answer {
  return covered('least_clearance', [aBay(drops), zeroOrMore('gap', gap, 'in')], () =>
    clearances(drops, gap).reduce((least, each) => Math.min(least, each), Infinity),
  );
}

/**
 * How many panels would go into the ground where all step down alike.
 *
 * panels whose gap + fall so far - steps so far is under 0
 *
 * @param drops - Fall of the ground to each post from the post before it. [m]
 * @param gap - Gap wanted under the first panel, 0 or more. [m]
 * @returns Panels. [1]
 *
 * @source plane geometry
 * @check hand-worked: 3, 4 1/2, 6, 8 1/4, 7 1/2, 6 1/4, 5, 3 1/2 in with a 2 in gap → 3 panels
 */
export function buriedPanels(drops: readonly number[], gap: number): Answer {
  return covered(
    'buried_panels',
    [aBay(drops), zeroOrMore('gap', gap, 'in')],
    () => clearances(drops, gap).filter((each) => each < -1e-9).length,
  );
}

/**
 * How far above the ground the bottom of a panel stands at most, where all step down alike.
 *
 * at each post: gap + fall so far - steps before the panel uphill of it
 *
 * @param drops - Fall of the ground to each post from the post before it. [m]
 * @param gap - Gap wanted under the first panel, 0 or more. [m]
 * @returns Most clearance; with the fence height, what the tallest post stands above ground. [m]
 *
 * @source plane geometry
 * @check hand-worked: 3, 4 1/2, 6, 8 1/4, 7 1/2, 6 1/4, 5, 3 1/2 in with a 2 in gap → 3 3/4 + 6 1/4 = 10 in at the seventh post
 */
export function stepReach(drops: readonly number[], gap: number): Answer {
  return covered('step_reach', [aBay(drops), zeroOrMore('gap', gap, 'in')], () =>
    bays(drops, gap).reduce((most, { high, low }) => Math.max(most, high, low), gap),
  );
}

/**
 * The clearance under one panel where all step down alike.
 *
 * gap + fall so far - steps so far, at the end of that panel where it is less
 *
 * Less than nothing means that the panel would have to go into the ground.
 *
 * @param drops - Fall of the ground to each post from the post before it. [m]
 * @param gap - Gap wanted under the panel at the top of the run, 0 or more. [m]
 * @param post - Place of the post before the panel, along the run, from 1. [1]
 * @returns Clearance. [m]
 *
 * @source plane geometry
 * @check hand-worked: 3, 4 1/2, 6, 8 1/4, 7 1/2, 6 1/4, 5, 3 1/2 in with a 2 in gap, after the second post → 2 + 3 - 5 1/2 = -1/2 in
 */
export function stepClearance(drops: readonly number[], gap: number, post: number): Answer {
  const isPanel = Number.isInteger(post) && post >= 1 && post < drops.length;
  const aPanel: Limit = isPanel
    ? undefined
    : ['There is no panel after that post.', 'Name a post before the last.'];
  return covered('step_clearance', [aBay(drops), zeroOrMore('gap', gap, 'in'), aPanel], () => {
    const along = clearancesOf(drops, gap);
    return along[total(drops) < 0 ? along.length - post : post - 1] ?? NaN;
  });
}

// Every post of a run asks for its own panel of the same run.
let last: { drops: readonly number[]; gap: number; under: readonly number[] } | undefined;

function clearancesOf(drops: readonly number[], gap: number): readonly number[] {
  if (last?.drops !== drops || last.gap !== gap)
    last = { drops, gap, under: clearances(drops, gap) };
  return last.under;
}

function clearances(drops: readonly number[], gap: number): readonly number[] {
  return bays(drops, gap).map(({ high, low }) => Math.min(high, low));
}

// Clearance at both ends of each panel, from the top of the run down.
function bays(drops: readonly number[], gap: number) {
  const along = drops.slice(1);
  const falls = total(drops) < 0 ? along.reverse().map((drop) => -drop) : along;
  const step = falls.reduce((sum, drop) => sum + drop, 0) / falls.length;
  let fall = 0;
  return falls.map((drop, bay) => {
    const bottom = gap - bay * step;
    const high = bottom + fall;
    fall += drop;
    return { high, low: bottom + fall };
  });
}

function total(drops: readonly number[]): number {
  return drops.slice(1).reduce((sum, drop) => sum + drop, 0);
}

function aBay(drops: readonly number[]): Limit {
  if (drops.length < 2) return ['There are fewer than two posts.', 'Enter the posts of the run.'];
  if (drops.every((drop) => Math.abs(drop) < 1000)) return undefined;
  return ['A drop is longer than any fence falls.', 'Check each drop and its unit.'];
}
