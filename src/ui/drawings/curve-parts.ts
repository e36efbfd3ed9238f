import { svg, type TemplateResult } from 'lit';
import type { CurveLevel, CurveLine, CurveStretch } from '../../worksheet/index.ts';
import type { Drawn, Frame } from './curve-frame.ts';
import { baseline, linesOf, placeLabels, type Box } from './curve-labels.ts';
import { drawnFigures, px } from './figures.ts';
import { labelsThatFit, spreadApart, textWidth } from './labels.ts';

const ORDER = ['first', 'second', 'third'];
const NAME_HEIGHT = 18;

/** The lines, each with its name at its end. */
export function drawLines(lines: readonly CurveLine[], frame: Frame): TemplateResult<2> {
  const places = namesOf(lines, frame);
  return svg`${lines.map(({ points }, index) => {
    const path = points.map(([x, y]) => `${String(frame.across(x))} ${String(frame.up(y))}`);
    return svg`<path class="line ${ORDER[index] ?? ''}" d="M${path.join('L')}"></path>`;
  })}
  ${lines.map(
    ({ name }, index) =>
      svg`<text class="name" x=${places[index]?.x ?? 0} y=${px((places[index]?.y ?? 0) + 14)}>${drawnFigures(name)}</text>`,
  )}`;
}

/** The levels to reach, each with its words on it. */
export function drawLevels(levels: readonly CurveLevel[], frame: Frame): TemplateResult<2> {
  const { left, right, up } = frame;
  return svg`${levels.map(
    ({ y, label }) => svg`<path class="level" d="M${left} ${up(y)}H${right}"></path>
      <text class="name quiet" x=${left + 6} y=${px(up(y) - 5)}>${label}</text>`,
  )}`;
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
    spans.map(({ label, from, to }, rank) => ({
      x: (from + to) / 2,
      text: textWidth(label) - 12 <= to - from ? label : '',
      rank: -rank,
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

/** The marks, their words where they cover least. */
export function drawMarks({ lines, marks, levels }: Drawn, frame: Frame): TemplateResult<2> {
  const { across, up, bottom, left, right, top, width } = frame;
  const spots = marks.map(({ x, y, label }) => ({ at: [across(x), up(y)] as const, label }));
  const places = placeLabels(spots, {
    within: { x: left + 2, y: top - 6, width: width - left - 2, height: bottom - top + 4 },
    boxes: [
      ...namesOf(lines, frame),
      ...levels.map(({ y, label }) => ({ x: left + 6, y: up(y) - 19, width: textWidth(label) - 12, height: NAME_HEIGHT })), // prettier-ignore
    ],
    lines: [
      ...lines.map(({ points }) => points.map(([x, y]) => [across(x), up(y)] as const)),
      ...levels.map(({ y }) => [[left, up(y)] as const, [right, up(y)] as const]),
    ],
  });
  return svg`${spots.map(
    ({ at: [x, y] }) => svg`<path class="lead" d="M${x} ${y}V${bottom}"></path>
      <circle class="mark" cx=${x} cy=${y} r="5"></circle>`,
  )}
  ${spots.map(({ at: [x], label }, index) => {
    const box = places[index];
    return box ? drawWords(label, box, x) : '';
  })}`;
}

function drawWords(label: string, box: Box, beside: number): TemplateResult<2> {
  const isLeft = box.x + box.width <= beside;
  const at = px(isLeft ? box.x + box.width : box.x);
  return svg`<text class="marked ${isLeft ? 'toward-left' : ''}" y=${px(baseline(box, 0))}>${linesOf(
    label,
  ).map(
    (words, line) =>
      svg`<tspan x=${at} y=${px(baseline(box, line))}>${drawnFigures(words)}</tspan>`,
  )}</text>`;
}

function namesOf(lines: readonly CurveLine[], { across, up }: Frame): readonly Box[] {
  const ends = lines.map(({ points }) => points.at(-1) ?? ([0, 0] as const));
  const heights = spreadApart(
    ends.map(([, y]) => up(y)),
    NAME_HEIGHT,
  );
  return lines.map(({ name }, index) => ({
    x: px(across(ends[index]?.[0] ?? 0) + 6),
    y: px((heights[index] ?? 0) - 9),
    width: textWidth(name) - 12,
    height: NAME_HEIGHT,
  }));
}
