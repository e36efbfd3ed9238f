import { px } from './figures.ts';
import type { HoleReadings, Measured } from './hole-readings.ts';
import type { Point } from './run.ts';
import { dimensions, sideLabels, type Dimension, type SideLabel } from './section-measures.ts';

/** A hole laid out to scale; every number in px. */
export interface Section {
  readonly width: number;
  readonly height: number;
  readonly grade: number;
  readonly middle: number;
  /** The hole's sides. */
  readonly left: number;
  readonly right: number;
  /** Where digging ends, and where it was wanted to end. */
  readonly bottom: number;
  readonly wanted: number;
  readonly short: boolean;
  readonly rock: boolean;
  readonly gravelTop: number;
  readonly post:
    | { readonly left: number; readonly right: number; readonly top: number; readonly foot: number }
    | undefined;
  /** The concrete's outline; empty where its top is not known. */
  readonly concrete: readonly Point[];
  readonly frost: number | undefined;
  readonly dimensions: readonly Dimension[];
  readonly labels: readonly SideLabel[];
}

const GUTTER = 128;
const ABOVE = 0.32;
const BELOW = 0.14;
const TALL = 400;

/** Lays out a hole whose depth and width are known, in a room of this width. */
export function layOutHole(
  hole: HoleReadings,
  depth: Measured,
  width: Measured,
  room: number,
): Section {
  const frame = Math.max(300, Math.min(room, 460));
  const reached = hole.reached?.size ?? depth.size;
  const wantedDepth = [depth, hole.embedment].find((wish) => wish && reached < wish.size * 0.999);
  const short = wantedDepth !== undefined;
  const above = Math.max(0, hole.concreteTop ?? 0) + (hole.crown?.size ?? 0) + ABOVE;
  const deepest = Math.max(depth.size, reached, wantedDepth?.size ?? 0, hole.frost?.size ?? 0);
  const scale = Math.min(TALL / (above + deepest * (1 + BELOW)), (frame - 2 * GUTTER) / width.size);
  const down = (below: number): number => px(12 + (above + below) * scale);
  const middle = frame / 2;
  const half = (width.size * scale) / 2;
  const grade = down(0);
  const bottom = down(reached);
  const gravel = Math.min(hole.gravel?.size ?? 0, reached);
  const gravelTop = down(reached - gravel);
  const foot = hole.embedment && !short ? down(Math.min(hole.embedment.size, reached)) : gravelTop;
  const postHalf = hole.post ? Math.min(hole.post.size / 2, width.size / 2) * scale : 0;
  const left = px(middle - half);
  const right = px(middle + half);
  const frost = hole.frost ? down(hole.frost.size) : undefined;
  const wanted = down(wantedDepth?.size ?? depth.size);
  return {
    width: frame,
    height: px(down(deepest * (1 + BELOW)) + 34),
    grade,
    middle,
    left,
    right,
    bottom,
    wanted,
    short,
    rock: (short || hole.shortBy !== '') && /rock|ledge|stone|boulder/iu.test(hole.stoppedBy),
    gravelTop,
    post: hole.post
      ? { left: px(middle - postHalf), right: px(middle + postHalf), top: 0, foot }
      : undefined,
    concrete: concreteOutline(hole, { left, right, middle, postHalf, foot: gravelTop, down }),
    frost,
    dimensions: dimensions(hole, wantedDepth, frost, { grade, bottom, wanted, foot, left, right }),
    labels: sideLabels(hole, {
      grade,
      bottom,
      foot: gravelTop,
      right,
      postRight: px(middle + postHalf),
      down,
    }),
  };
}

interface Sides {
  readonly left: number;
  readonly right: number;
  readonly middle: number;
  readonly postHalf: number;
  readonly foot: number;
  readonly down: (below: number) => number;
}

function concreteOutline(hole: HoleReadings, sides: Sides): readonly Point[] {
  if (hole.concreteTop === undefined) return [];
  const { left, right, middle, postHalf, foot, down } = sides;
  const top = Math.min(down(-hole.concreteTop), foot);
  const crown = Math.min(down(-hole.concreteTop - (hole.crown?.size ?? 0)), top);
  return [
    { x: left, y: foot },
    { x: left, y: top },
    { x: px(middle - postHalf), y: crown },
    { x: px(middle + postHalf), y: crown },
    { x: right, y: top },
    { x: right, y: foot },
  ];
}
