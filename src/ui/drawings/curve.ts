import { html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type {
  CurveAxis,
  CurveLevel,
  CurveLine,
  CurveMark,
  CurveStretch,
} from '../../worksheet/index.ts';
import {
  HEIGHT,
  NARROWEST,
  WIDEST,
  drawable,
  frameOf,
  type Drawn,
  type Frame,
} from './curve-frame.ts';
import { drawLevels, drawLines, drawMarks, drawStretches, renderKey } from './curve-parts.ts';
import { curveStyle } from './curve-style.ts';
import { drawingStyle } from './drawing-style.ts';
import { px } from './figures.ts';
import { Sized } from './sized.ts';

/** A small chart of one quantity against another, in plain SVG, with what belongs beside it. */
@customElement('bp-curve')
export class Curve extends Sized {
  static override readonly styles = [drawingStyle, curveStyle];

  /** What the chart shows, in a few words. */
  @property() heading = '';
  @property({ attribute: false }) x: CurveAxis = { label: '', unit: '' };
  @property({ attribute: false }) y: CurveAxis = { label: '', unit: '' };
  @property({ attribute: false }) lines: readonly CurveLine[] = [];
  @property({ attribute: false }) marks: readonly CurveMark[] = [];
  @property({ attribute: false }) levels: readonly CurveLevel[] = [];
  /** Parts of the way along, named over the chart. */
  @property({ attribute: false }) stretches: readonly CurveStretch[] = [];
  /** What is said under the chart. */
  @property({ attribute: false }) notes: readonly string[] = [];
  /** What is said where there is nothing to draw. */
  @property() waits = 'Nothing to draw yet.';

  protected override render() {
    const drawn = this.drawn();
    if (drawn.lines.length === 0) return html`<p class="waits">${this.waits}</p>`;
    const width = Math.min(WIDEST, Math.max(NARROWEST, this.room === 0 ? 460 : this.room));
    const frame = frameOf(this, drawn, width);
    return html`<figure>
      ${this.heading === '' ? nothing : html`<figcaption>${this.heading}</figcaption>`}
      <svg
        width=${width}
        height=${HEIGHT}
        viewBox="0 0 ${width} ${HEIGHT}"
        role="img"
        aria-label="${this.heading}: ${this.y.label} against ${this.x.label}"
        aria-describedby="summary"
      >
        <desc id="summary">${spoken(drawn)}</desc>
        ${this.renderAxes(frame)} ${drawStretches(drawn.stretches, frame)}
        ${drawLevels(drawn.levels, frame)} ${drawLines(drawn.lines, frame)}
        ${drawMarks(drawn.marks, frame)}
      </svg>
      ${renderKey(drawn.marks, drawn.levels)}
      ${this.notes.map((note) => html`<p class="note">${note}</p>`)}
    </figure>`;
  }

  private drawn(): Drawn {
    return {
      lines: this.lines
        .map((line) => ({
          ...line,
          points: line.points.filter((point) => point.every(drawable)),
        }))
        .filter(({ points }) => points.length > 1)
        .slice(0, 3),
      marks: this.marks.filter(({ x, y }) => drawable(x) && drawable(y)).sort((a, b) => a.x - b.x),
      levels: this.levels.filter(({ y }) => drawable(y)),
      stretches: this.stretches.filter(({ from, to }) => drawable(from) && drawable(to)),
    };
  }

  private renderAxes({ xs, ys, left, right, top, bottom, across, up }: Frame): TemplateResult<2> {
    return svg`
      ${ys.map(
        (tick) => svg`<path class="guide" d="M${left} ${up(tick)}H${right}"></path>
          <text class="toward-left" x=${left - 12} y=${px(up(tick) + 5)}>${plain(tick)}</text>`,
      )}
      ${xs.map(
        (tick) => svg`<path class="tick" d="M${across(tick)} ${bottom}v5"></path>
          <text class="middle" x=${across(tick)} y=${bottom + 20}>${plain(tick)}</text>`,
      )}
      <path class="axis" d="M${left} ${top}V${bottom}H${right}"></path>
      <text class="quiet" x=${left} y=${HEIGHT - 6}>${named(this.x)}</text>
      <text class="quiet" x="0" y="13">${named(this.y)}</text>
    `;
  }
}

function named({ label, unit }: CurveAxis): string {
  return unit === '' ? label : `${label}, ${unit}`;
}

function spoken({ lines, marks, levels, stretches }: Drawn): string {
  return [
    ...lines.map(({ name, points }) => `${name}: ${ends(points)}`),
    ...marks.map(({ label }) => label),
    ...levels.map(({ label }) => label),
    ...stretches.map(({ from, label }) => `${label} from ${plain(from)}`),
  ].join('. ');
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
