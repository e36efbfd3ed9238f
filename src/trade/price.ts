import type { Answer } from '../units/index.ts';
import { covered, zeroOrMore, type Limit } from './limits.ts';

/**
 * Selling price with a markup on cost.
 *
 * price = cost x (1 + rate)
 *
 * Markup counts on cost, margin on price: the same figure is not the same money.
 *
 * @param cost - Cost of the work, 0 or more. [USD]
 * @param rate - Markup as a ratio, 0.25 for 25%, above -1. [1]
 * @returns Price before tax. [USD]
 *
 * @source OpenStax Contemporary Mathematics 6.2
 * @check 62 at 0.15 → 71.30 (OpenStax Contemporary Mathematics 6.2)
 */
export function priceAtMarkup(cost: number, rate: number): Answer {
  const limits = [zeroOrMore('cost', cost, 'USD'), aboveMinusOne(rate)];
  return covered('price_at_markup', limits, () => cost * (1 + rate));
}

/**
 * Selling price that leaves a margin.
 *
 * price = cost / (1 - rate)
 *
 * @param cost - Cost of the work, 0 or more. [USD]
 * @param rate - Profit over price, 0.25 for 25%, below 1. [1]
 * @returns Price before tax. [USD]
 *
 * @source web article on margin: cost 80, price 100, markup 25%, margin 20%
 * @check 80 at 0.20 → 100 (web article on margin)
 */
export function priceAtMargin(cost: number, rate: number): Answer {
  const limits = [zeroOrMore('cost', cost, 'USD'), belowOne(rate)];
  return covered('price_at_margin', limits, () => cost / (1 - rate));
}

/**
 * The markup that leaves a margin.
 *
 * markup = margin / (1 - margin)
 *
 * @param margin - Profit over price, below 1. [1]
 * @returns Profit over cost. [1]
 *
 * @source web article on margin: cost 80, price 100, markup 25%, margin 20%
 * @check 0.20 → 0.25 (web article on margin)
 */
export function markupOfMargin(margin: number): Answer {
  return covered('markup_of_margin', [belowOne(margin)], () => margin / (1 - margin));
}

/**
 * The margin that a markup leaves.
 *
 * margin = markup / (1 + markup)
 *
 * @param markup - Profit over cost, above -1. [1]
 * @returns Profit over price. [1]
 *
 * @source web article on margin: cost 80, price 100, markup 25%, margin 20%
 * @check 0.25 → 0.20 (web article on margin)
 */
export function marginOfMarkup(markup: number): Answer {
  return covered('margin_of_markup', [aboveMinusOne(markup)], () => markup / (1 + markup));
}

function belowOne(margin: number): Limit {
  if (margin < 1) return undefined;
  return [
    `The margin is “${String(margin)}”.`,
    'Enter a ratio below 1, such as 0.25 for 25%: no price is all profit.',
  ];
}

function aboveMinusOne(markup: number): Limit {
  if (markup > -1) return undefined;
  return [`The markup is “${String(markup)}”.`, 'Enter a ratio, such as 0.25 for 25%.'];
}
