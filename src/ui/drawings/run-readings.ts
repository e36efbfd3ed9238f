import type { BookView, SheetView } from '../../worksheet/index.ts';
import { cellOf, jobOf, measureOf, numberOf, sizeOf, wordsOf } from './cells.ts';

/** One post as it was read: SI lengths, and words for what is said beside it. */
export interface PostReading {
  readonly row: string;
  /** Its number: `4`. */
  readonly label: string;
  /** What it is called aloud: `post 4`. */
  readonly name: string;
  readonly kind: string;
  /** [m] */
  readonly station: number | undefined;
  readonly stationText: string;
  /** The fence's height here. [m] */
  readonly height: number | undefined;
  /** How far it is out at the top; undefined where that is not known. [m] */
  readonly offset: number | undefined;
  readonly offsetText: string;
  /** Why the offset is not known. */
  readonly offsetNote: string;
  readonly toward: string;
  readonly remedy: string;
  /** How far the ground falls from the post before it. [m] */
  readonly drop: number | undefined;
  readonly footingWidth: number | undefined;
  readonly footingDepth: number | undefined;
  /** Whether the footing turned with the post, or stands while the post moves in it. */
  readonly footingTurns: boolean;
  readonly tree:
    { readonly width: number; readonly distance: number; readonly text: string } | undefined;
}

/** What the picture of a run is drawn from. */
export interface RunReadings {
  readonly posts: readonly PostReading[];
  /** [m] */
  readonly spacing: number | undefined;
  /** [m] */
  readonly groundGap: number;
  readonly rails: number;
}

/** Posts from one place to another, which is not among them. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

const WHOLE: Stretch = { from: 0, to: Infinity };

/** Reads a run, or a stretch of it by the places of its posts, out of the posts sheet and the job. */
export function readRun(book: BookView, { from, to }: Stretch = WHOLE): RunReadings {
  const job = jobOf(book);
  const posts = book.sheet('posts');
  const count = Math.max(0, Math.min(posts?.rowCount ?? 0, to) - from);
  return {
    posts: Array.from({ length: count }, (_, at) => readPost(posts, job, from + at)),
    spacing: sizeOf(job, 0, 'post_spacing'),
    groundGap: sizeOf(job, 0, 'ground_gap') ?? 0,
    rails: Math.min(8, Math.floor(sizeOf(job, 0, 'rails_per_bay') ?? 0)),
  };
}

function readPost(
  posts: SheetView | undefined,
  job: SheetView | undefined,
  row: number,
): PostReading {
  const offset = cellOf(posts, row, 'top_offset');
  const width = sizeOf(posts, row, 'tree_diameter');
  const distance = sizeOf(posts, row, 'tree_distance');
  return {
    row: posts?.rowId(row) ?? '',
    label: wordsOf(posts, row, 'post'),
    name: posts?.rowName(row) ?? '',
    kind: wordsOf(posts, row, 'post_type'),
    station: numberOf(posts, row, 'station'),
    stationText: measureOf(posts, row, 'station'),
    height: sizeOf(posts, row, 'height') ?? sizeOf(job, 0, 'fence_height'),
    offset: numberOf(posts, row, 'top_offset'),
    offsetText: measureOf(posts, row, 'top_offset'),
    offsetNote: offset?.state === 'known' ? '' : (offset?.note ?? ''),
    toward: wordsOf(posts, row, 'lean_toward'),
    remedy: wordsOf(posts, row, 'remedy'),
    drop: numberOf(posts, row, 'drop'),
    footingWidth: sizeOf(posts, row, 'footing_width'),
    footingDepth: sizeOf(posts, row, 'footing_depth'),
    footingTurns: !['snapped', 'moves in collar'].includes(wordsOf(posts, row, 'rock_test')),
    tree:
      width === undefined || distance === undefined
        ? undefined
        : { width, distance, text: `${measureOf(posts, row, 'tree_diameter')} trunk` },
  };
}
