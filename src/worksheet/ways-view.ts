import type { Stop } from './view.ts';

/** A line of the list that a way adds to or takes from. */
export interface WayItem {
  /** `4x4 post 10 ft`. */
  readonly called: string;
  /** How many more; minus where it takes fewer. */
  readonly count: number;
}

/** One way of treating a post, and what it takes against leaving the post as it is. */
export interface Way {
  /** `re-plumb and repack`; `leave` where nothing is done. */
  readonly name: string;
  /** Whether the post is done so as the job stands. */
  readonly stands: boolean;
  /** Whether nothing says that it does not suit the post. */
  readonly fits: boolean;
  readonly items: readonly WayItem[];
  /** Lines of the list that still wait for something. */
  readonly open: number;
  /** Hours of one person; blank while they wait. */
  readonly hours: string;
  /** Trips of the whole job with it. */
  readonly visits: string;
  /** What it adds to the total; undefined while that waits. [USD, the job's currency] */
  readonly adds: number | undefined;
  /** Total of the job with it. [USD, the job's currency] */
  readonly total: number | undefined;
  /** What the total waits for; blank where it does not. */
  readonly waits: string;
  readonly notFixed: string;
  readonly isBanned: boolean;
  readonly banSource: string;
  /** The row of the methods sheet that holds its local rule. */
  readonly rule: string | undefined;
  /** Stops and cautions that it brings to this post. */
  readonly stops: readonly Stop[];
}
