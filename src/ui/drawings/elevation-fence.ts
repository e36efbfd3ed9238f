import { nothing, svg, type TemplateResult } from 'lit';
import { px } from './figures.ts';
import { textWidth } from './labels.ts';
import type { DrawnPost, DrawnRun, DrawnTree, Point } from './run.ts';

type Drawn = TemplateResult<2> | typeof nothing;

/** What stands behind the posts: soil, old footings, a trunk, pickets hinted, rails. */
export function drawFence({ posts, width, soilBottom, tree }: DrawnRun): TemplateResult<2> {
  const grades = posts.map(({ grade }) => grade);
  const first = grades[0]?.y ?? 0;
  const last = grades.at(-1)?.y ?? 0;
  const ground = path([{ x: 0, y: first }, ...grades, { x: width, y: last }]);
  const bays = posts.slice(1).flatMap((to, index) => {
    const from = posts[index];
    return from ? [{ from, to }] : [];
  });
  return svg`<g aria-hidden="true">
    <path class="soil" d="${ground}L${width} ${soilBottom}L0 ${soilBottom}Z"></path>
    ${posts.map(({ footing }) => (footing.length === 0 ? nothing : svg`<path class="concrete" d="${path(footing)}Z"></path>`))}
    ${tree ? drawTree(tree) : nothing}
    ${bays.map(({ from, to }) => drawBay(from, to))}
    <path class="grade" d=${ground}></path>
  </g>`;
}

function drawBay(from: DrawnPost, to: DrawnPost): Drawn {
  if (isGate(from, to)) return drawGate(from, to);
  const pickets = Math.max(2, Math.min(24, Math.round((to.grade.x - from.grade.x) / 9)));
  const shares = Array.from({ length: pickets - 1 }, (_, picket) => (picket + 1) / pickets);
  const strokes = shares
    .map((share) =>
      path([
        between(from.picketFoot, to.picketFoot, share),
        between(from.picketTop, to.picketTop, share),
      ]),
    )
    .join('');
  return svg`<path class="pickets" d=${strokes}></path>
    ${from.rails.map((start, rail) => {
      const end = to.rails[rail];
      return end ? svg`<path class="rail" d=${path([start, end])}></path>` : nothing;
    })}`;
}

function isGate(from: DrawnPost, to: DrawnPost): boolean {
  const kinds = [from.reading.kind, to.reading.kind];
  return kinds.every((kind) => /gate/iu.test(kind)) && kinds.some((kind) => /hinge/iu.test(kind));
}

function drawGate(from: DrawnPost, to: DrawnPost): Drawn {
  const corners = [from.picketFoot, from.picketTop, to.picketTop, to.picketFoot];
  // A gate's brace runs from the lower hinge up to the latch.
  const hingeFirst = /hinge/iu.test(from.reading.kind);
  const brace = hingeFirst ? [from.picketFoot, to.picketTop] : [to.picketFoot, from.picketTop];
  const middle = between(from.picketTop, to.picketTop, hingeFirst ? 0.35 : 0.65);
  return svg`<path class="gate" d="${path(corners)}Z${path(brace)}"></path>
    ${to.grade.x - from.grade.x > 2 * textWidth('gate') ? svg`<text class="beside" x=${middle.x} y=${px(middle.y + 26)}>gate</text>` : nothing}`;
}

function drawTree({ at, width, height, text }: DrawnTree): Drawn {
  const half = Math.max(4, width / 2);
  const crown = px(height * 0.3);
  const middle = px(at.y - height * 0.98 + crown);
  const trunk = `V${String(px(middle + crown * Math.sqrt(Math.max(0, 1 - (half / crown) ** 2))))}`;
  return svg`<path class="tree" d="M${px(at.x - half)} ${at.y}${trunk}M${px(at.x + half)} ${at.y}${trunk}"></path>
    <circle class="tree" cx=${at.x} cy=${middle} r=${crown}></circle>
    <text class="beside quiet" x=${at.x} y=${px(middle - crown * 0.3)}>${text}</text>`;
}

function between(from: Point, to: Point, share: number): Point {
  return { x: px(from.x + (to.x - from.x) * share), y: px(from.y + (to.y - from.y) * share) };
}

function path(points: readonly Point[]): string {
  return points
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${String(x)} ${String(y)}`)
    .join('');
}
