import { px } from './figures.ts';
import { placeAlong } from './place-along.ts';
import type { PostReading, RunReadings } from './run-readings.ts';

/** A place on the drawing. [px] */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A post laid out on the drawing. */
export interface DrawnPost {
  readonly reading: PostReading;
  /** Where it meets the ground. */
  readonly grade: Point;
  readonly top: Point;
  readonly foot: Point;
  readonly width: number;
  /** Above it where it would stand plumb. */
  readonly plumb: Point;
  /** Rails from the lowest up, then the tops and feet of the pickets. */
  readonly rails: readonly Point[];
  readonly picketFoot: Point;
  readonly picketTop: Point;
  /** The old footing's corners, where its size was read. */
  readonly footing: readonly Point[];
}

/** A run laid out to scale. */
export interface DrawnRun {
  readonly width: number;
  readonly height: number;
  readonly posts: readonly DrawnPost[];
  readonly soilBottom: number;
  readonly shortestBay: number;
  /** A trunk that was measured from a post. */
  readonly tree: DrawnTree | undefined;
  /** How the drawing departs from the ground, in words. */
  readonly notes: readonly string[];
}

/** A trunk beside the run; on which side is not known. */
export interface DrawnTree {
  readonly at: Point;
  readonly width: number;
  /** As high as the fence. */
  readonly height: number;
  /** Blank where the bays are too short to name it. */
  readonly text: string;
}

const WIDE_ROOM = 600;
const HEAD = 58;
const TAIL = 30;
const LEAST_BAY = 24;
const LEAST_FENCE = 92;
const MOST_FENCE = 150;
const MOST_RISE = 300;
const UNKNOWN_HEIGHT = 1.8;
const EXAGGERATIONS = [5, 3, 2, 1];

/** Lays a run out in a room of this width; wider than the room where posts would stand too close to touch. */
export function layOutRun(
  { posts, spacing, groundGap, rails }: RunReadings,
  room: number,
): DrawnRun {
  const along = placeAlong(posts, spacing);
  const stub = Math.max(...posts.map(({ footingDepth }) => footingDepth ?? 0), 0);
  const heights = posts.map(({ height }) => height ?? UNKNOWN_HEIGHT);
  const falls = fallsOf(posts);
  const tallest = Math.max(...heights) + groundGap;
  const rise = Math.max(...falls) - Math.min(...falls) + tallest;
  const side = room < WIDE_ROOM ? 30 : 44;
  const across = Math.max(room - 2 * side, LEAST_BAY * (posts.length - 1), 60);
  const scale = scales(across, along.length, tallest, rise);
  const runWidth = scale.along * along.length;
  const width = Math.max(across + 2 * side, room);
  const left = (width - runWidth) / 2;
  const xs = along.at.map((at) => left + at * scale.along);
  const shortestBay = Math.min(...xs.slice(1).map((x, index) => x - (xs[index] ?? 0)), width);
  const highest = Math.max(
    ...heights.map((height, index) => height + groundGap - (falls[index] ?? 0)),
  );
  const lean = exaggeration(posts, heights, shortestBay / scale.up);
  const buried = Math.min(Math.max(40, stub * scale.up + 10), 220);

  const drawn = posts.map((reading, index): DrawnPost => {
    const grade = { x: xs[index] ?? left, y: HEAD + (highest + (falls[index] ?? 0)) * scale.up };
    const board = heights[index] ?? UNKNOWN_HEIGHT;
    const slope = (lean * sideways(reading.toward) * (reading.offset ?? 0)) / (board + groundGap);
    const up = (height: number): Point => onPost(grade, slope, height * scale.up);
    const down = Math.min((reading.footingDepth ?? 0) * scale.up || 30, buried - 6);
    const turn = reading.footingTurns ? slope : 0;
    return {
      reading,
      grade: rounded(grade),
      top: up(board + groundGap),
      foot: onPost(grade, turn, -down),
      width: px(Math.min(9, Math.max(4, 0.09 * scale.up))),
      plumb: rounded({ x: grade.x, y: grade.y - (board + groundGap) * scale.up }),
      rails: railShares(rails).map((share) => up(groundGap + share * board)),
      picketFoot: up(groundGap),
      picketTop: up(groundGap + board * 0.97),
      footing: footingCorners(grade, turn, (reading.footingWidth ?? 0) * scale.up, down, reading),
    };
  });
  const soilBottom = px(Math.max(...drawn.map(({ grade }) => grade.y)) + buried);
  return {
    width: px(width),
    height: px(soilBottom + TAIL),
    posts: drawn,
    soilBottom,
    shortestBay,
    tree: nearestTree(drawn, scale, { width, shortestBay }),
    notes: notesOf(posts, lean, scale.up / scale.along, along.note),
  };
}

/** To the right for every lean but one down the line: an elevation cannot show a lean across it. */
export function sideways(toward: string): 1 | -1 {
  return /^down[\s-]?line$/iu.test(toward.trim()) ? -1 : 1;
}

function scales(across: number, length: number, tallest: number, rise: number) {
  const along = Math.min(across / length, MOST_FENCE / tallest);
  const up = Math.min(Math.max(along, LEAST_FENCE / tallest), MOST_RISE / rise);
  return { along: Math.min(along, up), up };
}

function exaggeration(
  posts: readonly PostReading[],
  heights: readonly number[],
  bay: number,
): number {
  const most = Math.max(0, ...posts.map(({ offset }) => Math.abs(offset ?? 0)));
  const allowed = Math.min(bay * 0.7, Math.min(...heights) * 0.4);
  return EXAGGERATIONS.find((times) => most * times <= allowed) ?? 1;
}

function fallsOf(posts: readonly PostReading[]): readonly number[] {
  let fall = 0;
  return posts.map(({ drop }) => (fall += drop ?? 0));
}

function railShares(rails: number): readonly number[] {
  if (rails === 1) return [0.5];
  return Array.from({ length: rails }, (_, rail) => 0.12 + (0.76 * rail) / (rails - 1));
}

function onPost(grade: Point, slope: number, up: number): Point {
  return rounded({ x: grade.x + slope * up, y: grade.y - up });
}

function footingCorners(
  grade: Point,
  slope: number,
  width: number,
  depth: number,
  { footingWidth, footingDepth }: PostReading,
): readonly Point[] {
  if (footingWidth === undefined || footingDepth === undefined) return [];
  const half = Math.min(width / 2, 60);
  return [
    [-half, 0],
    [half, 0],
    [half, depth],
    [-half, depth],
  ].map(([x = 0, down = 0]) =>
    rounded({ x: grade.x + x - slope * down, y: grade.y + down + slope * x }),
  );
}

function nearestTree(
  posts: readonly DrawnPost[],
  { along, up }: { along: number; up: number },
  { width, shortestBay }: Pick<DrawnRun, 'width' | 'shortestBay'>,
): DrawnTree | undefined {
  const [nearest] = posts
    .flatMap((post) => (post.reading.tree ? [{ ...post, ...post.reading.tree }] : []))
    .sort((a, b) => a.distance - b.distance);
  if (!nearest) return undefined;
  const away = nearest.distance * along;
  const right = nearest.grade.x + away;
  const x = Math.max(40, right > width - 40 ? nearest.grade.x - away : right);
  return {
    at: rounded({ x, y: nearest.grade.y }),
    width: px(Math.min(80, (nearest.reading.tree?.width ?? 0) * up)),
    height: nearest.grade.y - nearest.plumb.y,
    text: shortestBay > 90 ? nearest.text : '',
  };
}

function notesOf(
  posts: readonly PostReading[],
  lean: number,
  heights: number,
  stations: string,
): readonly string[] {
  const leaning = posts.filter(({ offset }) => offset !== undefined && offset !== 0);
  const across = leaning.some(({ toward }) => !/^(up|down)[\s-]?line$/iu.test(toward.trim()));
  return [
    leaning.length === 0 ? '' : lean === 1 ? 'lean drawn true' : `lean drawn ${String(lean)} times`,
    heights > 1.04 ? `heights drawn ${heights.toFixed(1).replace(/\.0$/u, '')} times` : '',
    across ? 'leans drawn to the right; the letter gives the true direction' : '',
    posts.some(({ height }) => height === undefined)
      ? 'fence height not entered: height not to scale'
      : '',
    stations,
  ].filter((note) => note !== '');
}

function rounded({ x, y }: Point): Point {
  return { x: px(x), y: px(y) };
}
