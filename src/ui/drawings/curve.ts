import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawingStyle } from './drawing-style.ts';
import { px } from './figures.ts';
import { spreadApart } from './labels.ts';
import { Sized } from './sized.ts';
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

const HEIGHT = 260;
const NARROWEST = 300;
const WIDEST = 560;
const BOX = { left: 62, right: 124, top: 18, bottom: 46 };

/** A small chart of one quantity against another, in plain SVG. */
@customElement('bp-curve')
export class Curve extends Sized {
  static override readonly styles = [
    drawingStyle,
    css`
      .axis,
      .tick {
        fill: none;
        stroke: var(--drawn-ink);
        stroke-width: 1.25;
      }
      .guide {
        fill: none;
        stroke: var(--drawn-rule);
        stroke-width: 1;
      }
      .line {
        fill: none;
        stroke: var(--drawn-ink);
        stroke-width: 2.25;
      }
      .line.second {
        stroke-dasharray: 9 4;
      }
      .line.third {
        stroke-dasharray: 2 4;
      }
      .level {
        fill: none;
        stroke: var(--drawn-soft);
        stroke-width: 1.5;
        stroke-dasharray: 6 3;
      }
      .mark {
        fill: var(--drawn-chalk);
      }
      .lead {
        fill: none;
        stroke: var(--drawn-chalk);
        stroke-width: 1.25;
        stroke-dasharray: 3 3;
      }
      .marked {
        fill: var(--drawn-chalk);
        font-weight: 600;
      }
      .name,
      .marked {
        paint-order: stroke;
        stroke: var(--drawn-paper);
        stroke-width: 4px;
      }
      .toward-left {
        text-anchor: end;
      }
      .middle {
        text-anchor: middle;
      }
    `,
  ];

  /** What the chart shows, in a few words. */
  @property() heading = '';
  @property({ attribute: false }) x: Axis = { label: '', unit: '' };
  @property({ attribute: false }) y: Axis = { label: '', unit: '' };
  @property({ attribute: false }) lines: readonly CurveLine[] = [];
  @property({ attribute: false }) marks: readonly CurveMark[] = [];
  @property({ attribute: false }) levels: readonly CurveLevel[] = [];
  /** What is said where there is nothing to draw. */
  @property() waits = 'Nothing to draw yet.';

  protected override render() {
    const lines = this.lines
      .map((line) => ({
        ...line,
        points: line.points.filter((point) => point.every(drawable)),
      }))
      .filter(({ points }) => points.length > 1)
      .slice(0, 3);
    if (lines.length === 0) return html`<p class="waits">${this.waits}</p>`;
    const marks = this.marks.filter(({ x, y }) => drawable(x) && drawable(y));
    const levels = this.levels.filter(({ y }) => drawable(y));
    const width = Math.min(WIDEST, Math.max(NARROWEST, this.room === 0 ? 460 : this.room));
    const frame = frameOf(this, { lines, marks, levels }, width);
    const spoken = [
      ...lines.map(({ name, points }) => `${name}: ${ends(points)}`),
      ...marks.map(({ label }) => label),
      ...levels.map(({ label }) => label),
    ].join('. ');
    return html`<figure>
      <svg
        width=${width}
        height=${HEIGHT}
        viewBox="0 0 ${width} ${HEIGHT}"
        role="img"
        aria-label="${this.heading}: ${this.y.label} against ${this.x.label}"
        aria-describedby="summary"
      >
        <desc id="summary">${spoken}</desc>
        ${this.renderAxes(frame)} ${levels.map((level) => drawLevel(level, frame))}
        ${drawLines(lines, frame)} ${drawNames(lines, levels, frame)}
        ${marks.map((mark) => drawMark(mark, frame))}
      </svg>
      ${this.heading === '' ? nothing : html`<figcaption>${this.heading}</figcaption>`}
    </figure>`;
  }

  private renderAxes({ xs, ys, right, across, up, bottom }: Frame): TemplateResult<2> {
    return svg`
      ${ys.map(
        (tick) => svg`<path class="guide" d="M${BOX.left} ${up(tick)}H${right}"></path>
          <text class="toward-left" x=${BOX.left - 8} y=${px(up(tick) + 5)}>${plain(tick)}</text>`,
      )}
      ${xs.map(
        (tick) => svg`<path class="tick" d="M${across(tick)} ${bottom}v5"></path>
          <text class="middle" x=${across(tick)} y=${bottom + 20}>${plain(tick)}</text>`,
      )}
      <path class="axis" d="M${BOX.left} ${BOX.top}V${bottom}H${right}"></path>
      <text class="quiet" x=${BOX.left} y=${HEIGHT - 6}>${named(this.x)}</text>
      <text class="quiet" x="0" y="12">${named(this.y)}</text>
    `;
  }
}

interface Frame {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly right: number;
  readonly bottom: number;
  across(x: number): number;
  up(y: number): number;
}

function frameOf(
  { x, y }: Curve,
  { lines, marks, levels }: Pick<Curve, 'lines' | 'marks' | 'levels'>,
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

function drawLines(lines: readonly CurveLine[], { across, up }: Frame): TemplateResult<2> {
  const paths = lines.map(({ points }) =>
    points.map(([x, y]) => `${String(across(x))} ${String(up(y))}`).join('L'),
  );
  return svg`${paths.map(
    (path, index) =>
      svg`<path class="line ${['first', 'second', 'third'][index] ?? ''}" d="M${path}"></path>`,
  )}`;
}

function drawNames(
  lines: readonly CurveLine[],
  levels: readonly CurveLevel[],
  { up, across, right }: Frame,
): TemplateResult<2> {
  const names = [
    ...lines.map(({ name, points }) => ({
      text: name,
      x: across(points.at(-1)?.[0] ?? 0),
      y: up(points.at(-1)?.[1] ?? 0),
    })),
    ...levels.map(({ label, y }) => ({ text: label, x: right, y: up(y) })),
  ];
  const heights = spreadApart(
    names.map(({ y }) => y),
    18,
  );
  return svg`${names.map(
    ({ text, x, y }, index) =>
      svg`<text class="name" x=${px(x + 8)} y=${px((heights[index] ?? y) + 5)}>${text}</text>`,
  )}`;
}

function drawMark(
  { x, y, label }: CurveMark,
  { across, up, bottom, right }: Frame,
): TemplateResult<2> {
  const left = across(x) > (BOX.left + right) / 2;
  return svg`<path class="lead" d="M${BOX.left} ${up(y)}H${across(x)}V${bottom}"></path>
    <circle class="mark" cx=${across(x)} cy=${up(y)} r="5"></circle>
    <text class="marked ${left ? 'toward-left' : ''}" x=${px(across(x) + (left ? -9 : 9))} y=${px(up(y) + (left ? -9 : 20))}>${label}</text>`;
}

function drawLevel({ y }: CurveLevel, { up, right }: Frame): TemplateResult<2> {
  return svg`<path class="level" d="M${BOX.left} ${up(y)}H${right}"></path>`;
}

// Past this a number is a slip, and its place on the drawing no number at all.
function drawable(value: number): boolean {
  return Math.abs(value) <= 1e12;
}

function named({ label, unit }: Axis): string {
  return unit === '' ? label : `${label}, ${unit}`;
}

function ends(points: CurveLine['points']): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return '';
  return `from ${plain(first[1])} at ${plain(first[0])} to ${plain(last[1])} at ${plain(last[0])}`;
}

function plain(number: number): string {
  return String(Number(number.toPrecision(4)));
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-curve': Curve;
  }
}
