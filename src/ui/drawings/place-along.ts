import type { PostReading } from './run-readings.ts';

/** How far along the run each post stands, and what was taken for granted. */
export interface Along {
  /** From the first post. [m], or bays where neither stations nor spacing are known */
  readonly at: readonly number[];
  /** From first to last, never 0. */
  readonly length: number;
  readonly note: string;
}

/** Places posts by their stations; between neighbors where one is missing; evenly where stations can't serve. */
export function placeAlong(
  posts: readonly Pick<PostReading, 'station'>[],
  spacing: number | undefined,
): Along {
  const known = posts.flatMap(({ station }, index) =>
    station === undefined ? [] : [{ index, station }],
  );
  const rising = known.every(
    ({ station }, index) => index === 0 || station > (known[index - 1]?.station ?? -Infinity),
  );
  const bay = spacing ?? 1;
  if (known.length < 2 || !rising) {
    return along(
      posts.map((_, index) => index * bay),
      bay,
      evenlyBecause(posts.length, known.length, spacing),
    );
  }
  const missing = posts.length - known.length;
  return along(
    posts.map((_, index) => between(known, index, spacing)),
    bay,
    missing === 0
      ? ''
      : `${String(missing)} ${missing === 1 ? 'post has' : 'posts have'} no station: placed by ${missing === 1 ? 'its' : 'their'} neighbors`,
  );
}

interface Known {
  readonly index: number;
  readonly station: number;
}

function between(known: readonly Known[], index: number, spacing: number | undefined): number {
  const after = known.find((post) => post.index >= index);
  const before = known.findLast((post) => post.index <= index);
  const first = known[0];
  const last = known.at(-1);
  if (!first || !last) return index;
  const bay = spacing ?? (last.station - first.station) / (last.index - first.index);
  if (!before) return first.station - (first.index - index) * bay;
  if (!after) return last.station + (index - last.index) * bay;
  if (after.index === before.index) return before.station;
  const share = (index - before.index) / (after.index - before.index);
  return before.station + share * (after.station - before.station);
}

function along(places: readonly number[], bay: number, note: string): Along {
  const first = places[0] ?? 0;
  const at = places.map((place) => place - first);
  const length = at.at(-1) ?? 0;
  return { at, length: length > 0 ? length : bay, note };
}

function evenlyBecause(posts: number, known: number, spacing: number | undefined): string {
  if (posts < 2) return '';
  const why =
    known === 0
      ? 'no stations'
      : known === 1
        ? 'one station only'
        : 'stations do not rise down the list';
  return spacing === undefined
    ? `${why}, no post spacing: posts drawn evenly, not to scale`
    : `${why}: posts drawn at the job’s spacing`;
}
