import { px } from './figures.ts';
import { tickMarks } from './tick-marks.ts';

/** One axis: numbers are already in the unit the label names. */
export interface Axis {
  readonly label: string;
  readonly unit: string;
  readonly from?: number;
  readonly to?: number;
}

/** A named line; up to three are told apart by dash and by the name at its end. */
export interface CurveLine {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** A point that matters, with its words: `8.08 ft holds the wind`. */
export interface CurveMark {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

/** A level to reach, drawn across: `500 psi to rehang`. */
export interface CurveLevel {
  readonly y: number;
  readonly label: string;
}

/** The chart's size and the margins its words need. [px] */
export const HEIGHT = 260;
export const NARROWEST = 300;
export const WIDEST = 560;
export const BOX = { left: 62, right: 124, top: 18, bottom: 46 };

/** Where numbers stand on the drawing. */
export interface Frame {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly right: number;
  readonly bottom: number;
  across(x: number): number;
  up(y: number): number;
}

/** Axes that span the lines, marks and levels. */
export function frameOf(
  { x, y }: { readonly x: Axis; readonly y: Axis },
  {
    lines,
    marks,
    levels,
  }: {
    readonly lines: readonly CurveLine[];
    readonly marks: readonly CurveMark[];
    readonly levels: readonly CurveLevel[];
  },
  width: number,
): Frame {
  const points = [
    ...lines.flatMap((line) => line.points),
    ...marks.map((mark) => [mark.x, mark.y] as const),
  ];
  const xs = tickMarks(
    points.map(([at]) => at),
    x.from,
    x.to,
  );
  const ys = tickMarks(
    [...points.map(([, at]) => at), ...levels.map((level) => level.y)],
    y.from,
    y.to,
  );
  const right = width - BOX.right;
  const bottom = HEIGHT - BOX.bottom;
  return {
    xs,
    ys,
    right,
    bottom,
    across: (at) => px(BOX.left + share(at, xs) * (right - BOX.left)),
    up: (at) => px(bottom - share(at, ys) * (bottom - BOX.top - 8)),
  };
}

function share(at: number, ticks: readonly number[]): number {
  const from = ticks[0] ?? 0;
  const to = ticks.at(-1) ?? 1;
  return to === from ? 0.5 : (at - from) / (to - from);
}

/** Whether a number can be drawn: past this it is a slip, and its place on the drawing no number at all. */
export function drawable(value: number): boolean {
  return Math.abs(value) <= 1e12;
}
