import { html, svg, type TemplateResult } from 'lit';
import type { CurveLevel, CurveLine, CurveMark, CurveStretch } from '../../worksheet/index.ts';
import type { Frame } from './curve-frame.ts';
import { drawnFigures, px } from './figures.ts';
import { labelsThatFit, spreadApart, textWidth } from './labels.ts';

const ORDER = ['first', 'second', 'third'];
const NAME_HEIGHT = 18;

/** The lines, each with its name at its end. */
export function drawLines(lines: readonly CurveLine[], { across, up }: Frame): TemplateResult<2> {
  const ends = lines.map(({ points }) => points.at(-1) ?? ([0, 0] as const));
  const heights = spreadApart(
    ends.map(([, y]) => up(y)),
    NAME_HEIGHT,
  );
  return svg`${lines.map(({ points }, index) => {
    const path = points.map(([x, y]) => `${String(across(x))} ${String(up(y))}`);
    return svg`<path class="line ${ORDER[index] ?? ''}" d="M${path.join('L')}"></path>`;
  })}
  ${lines.map(
    ({ name }, index) =>
      svg`<text class="name" x=${px(across(ends[index]?.[0] ?? 0) + 7)} y=${px((heights[index] ?? 0) + 5)}>${drawnFigures(name)}</text>`,
  )}`;
}

/** The levels to reach. */
export function drawLevels(
  levels: readonly CurveLevel[],
  { left, right, up }: Frame,
): TemplateResult<2> {
  return svg`${levels.map(({ y }) => svg`<path class="level" d="M${left} ${up(y)}H${right}"></path>`)}`;
}

/** The stretches along the top, with the words there is room for. */
export function drawStretches(
  stretches: readonly CurveStretch[],
  { across, top }: Frame,
): TemplateResult<2> {
  const spans = stretches.map(({ from, to, label }) => ({
    label,
    from: across(from),
    to: across(to),
  }));
  const fit = labelsThatFit(
    spans.map(({ label, from, to }, index) => ({
      x: (from + to) / 2,
      text: textWidth(label) - 12 <= to - from ? label : '',
      rank: -index,
    })),
  );
  return svg`${spans.map(
    (
      { label, from, to },
      index,
    ) => svg`<path class="stretch" d="M${from} ${top - 9}v6H${to}v-6"></path>
      ${fit.has(index) ? svg`<text class="middle quiet" x=${px((from + to) / 2)} y=${top - 9}>${label}</text>` : ''}`,
  )}`;
}

/** The marks, numbered as in the key. */
export function drawMarks(
  marks: readonly CurveMark[],
  { across, up, bottom }: Frame,
): TemplateResult<2> {
  return svg`${marks.map(({ x, y }) => svg`<path class="lead" d="M${across(x)} ${up(y)}V${bottom}"></path>`)}
    ${marks.map(
      ({ x, y }, index) => svg`<circle class="mark" cx=${across(x)} cy=${up(y)} r="8.5"></circle>
        <text class="number middle" x=${across(x)} y=${px(up(y) + 4.5)}>${index + 1}</text>`,
    )}`;
}

/** What the numbers and levels of the chart stand for. */
export function renderKey(
  marks: readonly CurveMark[],
  levels: readonly CurveLevel[],
): TemplateResult | '' {
  if (marks.length + levels.length === 0) return '';
  return html`<ul class="key">
    ${marks.map(({ label }, index) => html`<li><b class="dot">${index + 1}</b> ${label}</li>`)}
    ${levels.map(({ label }) => html`<li><span class="dashes"></span> ${label}</li>`)}
  </ul>`;
}
