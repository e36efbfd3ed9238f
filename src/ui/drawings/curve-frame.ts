import type {
  CurveAxis,
  CurveLevel,
  CurveLine,
  CurveMark,
  CurveStretch,
} from '../../worksheet/index.ts';
import { px } from './figures.ts';
import { textWidth } from './labels.ts';
import { tickMarks } from './tick-marks.ts';

/** What is drawn between the axes. */
export interface Drawn {
  readonly lines: readonly CurveLine[];
  readonly marks: readonly CurveMark[];
  readonly levels: readonly CurveLevel[];
  readonly stretches: readonly CurveStretch[];
}

/** The chart's size and the margins its words need. [px] */
export const HEIGHT = 270;
export const NARROWEST = 270;
export const WIDEST = 560;
const BOX = { left: 54, top: 20, bottom: 46, strip: 26 };

/** Where numbers stand on the drawing. */
export interface Frame {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly width: number;
  across(x: number): number;
  up(y: number): number;
}

/** Axes that span the lines, marks and levels. */
export function frameOf(
  { x, y }: { readonly x: CurveAxis; readonly y: CurveAxis },
  { lines, marks, levels, stretches }: Drawn,
  width: number,
): Frame {
  const points = [
    ...lines.flatMap((line) => line.points),
    ...marks.map((mark) => [mark.x, mark.y] as const),
  ];
  const xs = tickMarks(
    points.map(([at]) => at),
    x,
  );
  const ys = tickMarks([...points.map(([, at]) => at), ...levels.map((level) => level.y)], y);
  const names = lines.map(({ name }) => textWidth(name));
  const left = BOX.left;
  const right = width - Math.min(Math.max(...names, 24), 130);
  const top = BOX.top + (stretches.length > 0 ? BOX.strip : 0);
  const bottom = HEIGHT - BOX.bottom;
  return {
    xs,
    ys,
    left,
    right,
    top,
    bottom,
    width,
    across: (at) => px(left + share(at, xs) * (right - left)),
    up: (at) => px(bottom - share(at, ys) * (bottom - top - 8)),
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
