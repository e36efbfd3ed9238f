import type { Entry } from './view.ts';
import type { Way } from './ways-view.ts';

/** One line of a price: a sum of money, or what it comes from, such as hours. */
export interface PriceLine {
  readonly part: string;
  /** As people read it; blank while it waits. */
  readonly text: string;
  /** [USD, the job's currency]; undefined while it waits, and where the line is no sum. */
  readonly money: number | undefined;
}

/** An entry of a variant, with what it stands against. */
export interface VariantEntry extends Entry {
  /** `New posts`, `Remedy, post 3`. */
  readonly label: string;
  /** What the job has there. */
  readonly now: string;
  /** What is wrong with it; blank where nothing is. */
  readonly note: string;
}

/** The job with a few entries changed, and what it would come to. */
export interface Variant {
  readonly name: string;
  readonly entries: readonly VariantEntry[];
  readonly lines: readonly PriceLine[];
}

/** One entry that is not what it was, and how it alone moves the total. */
export interface PriceMove {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  /** [USD]; undefined while either total waits, and for the later ones of a long list. */
  readonly alone: number | undefined;
}

/** Why a price is not what it was. */
export interface PriceChange {
  readonly moves: readonly PriceMove[];
  readonly before: readonly PriceLine[];
  readonly now: readonly PriceLine[];
}

/** Variants of the job beside it, and prices kept to be compared with. Each act is one undo step. */
export interface WhatIfParts {
  now(): readonly PriceLine[];
  /** Works every variant out; for 10,000 posts that takes seconds. */
  variants(): readonly Variant[];
  /** Puts an entry into a variant, over the one it has for the same cell. */
  put(name: string, entry: Entry): void;
  drop(name: string, entry?: Entry): void;
  /** Types the entries of a variant into the job. */
  use(name: string): void;
  /** Every way of treating a post, side by side; none where there is no such post. */
  ways(row: string): readonly Way[];
  /** Treats a post so; `why` is kept with it where it is not blank. */
  choose(row: string, way: string, why: string): void;
  /** Keeps the job as it stands, to be compared with later. */
  mark(name: string): void;
  /** Names of what was kept, the newest first. */
  marks(): readonly string[];
  /** What changed since; undefined where nothing of that name is kept. */
  changedSince(mark: string): PriceChange | undefined;
}
