import { html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  BOX,
  HEIGHT,
  NARROWEST,
  WIDEST,
  drawable,
  frameOf,
  type Axis,
  type CurveLevel,
  type CurveLine,
  type CurveMark,
  type Frame,
} from './curve-frame.ts';
import { curveStyle } from './curve-style.ts';
import { drawingStyle } from './drawing-style.ts';
import { px } from './figures.ts';
import { spreadApart } from './labels.ts';
import { Sized } from './sized.ts';

/** A small chart of one quantity against another, in plain SVG. */
@customElement('bp-curve')
export class Curve extends Sized {
  static override readonly styles = [drawingStyle, curveStyle];

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
