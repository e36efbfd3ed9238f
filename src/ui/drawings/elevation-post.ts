import { nothing, svg, type TemplateResult } from 'lit';
import { drawnFigures, px } from './figures.ts';
import type { PostReading } from './run-readings.ts';
import { sideways, type DrawnPost, type DrawnRun } from './run.ts';

/** A post with what there is room to say beside it. */
export interface Shown {
  readonly drawn: DrawnPost;
  readonly now: boolean;
  readonly tabStop: boolean;
  readonly number: boolean;
  readonly beside: boolean;
  /** Remedies are marked by a sign, since not all words have room. */
  readonly markOnly: boolean;
  /** Half the width a touch may land in. [px] */
  readonly reach: number;
}

const MARKS: ReadonlyMap<string, string> = new Map([
  ['replace', '×'],
  ['re-plumb', '/'],
  ['mend', '+'],
]);

/** The sign that stands for a remedy; blank for `leave` and for what is not known. */
export function markOf({ remedy }: PostReading): string {
  return MARKS.get(remedy) ?? '';
}

/** What the signs in use stand for. */
export function legendOf(posts: readonly DrawnPost[]): string {
  const used = new Set(posts.map(({ reading }) => reading.remedy));
  return [...MARKS]
    .filter(([remedy]) => used.has(remedy))
    .map(([remedy, sign]) => `${sign} ${remedy}`)
    .join('\u2003');
}

/** How many posts need what: `2 replace, 2 re-plumb`. */
export function remedyCounts(posts: readonly DrawnPost[]): string {
  const counts = new Map<string, number>();
  for (const { reading } of posts) {
    if (reading.remedy !== '') counts.set(reading.remedy, (counts.get(reading.remedy) ?? 0) + 1);
  }
  return [...counts].map(([remedy, count]) => `${String(count)} ${remedy}`).join(', ');
}

/** The words above a post: where it leans, and for the current one how far. */
export function beside({ reading }: DrawnPost, now: boolean): string {
  if (reading.offset === undefined) return '?';
  if (reading.offset === 0) return '';
  const arrow = sideways(reading.toward) * Math.sign(reading.offset) < 0 ? '←' : '→';
  const words = now ? [reading.offsetText, reading.toward] : [reading.toward];
  return [arrow, ...words].filter((word) => word !== '').join(' ');
}

/** The post as it is said aloud. */
export function spokenPost({ reading }: DrawnPost): string {
  const name = reading.name.charAt(0).toUpperCase() + reading.name.slice(1);
  const lean =
    reading.offset === undefined
      ? `lean not known${reading.offsetNote === '' ? '' : `, ${reading.offsetNote}`}`
      : reading.offset === 0
        ? 'plumb'
        : `${reading.offsetText} out at the top${reading.toward === '' ? '' : ` toward ${reading.toward}`}`;
  const along = reading.stationText === '' ? '' : `at ${reading.stationText}`;
  return [name, along, lean, reading.remedy].filter((part) => part !== '').join(', ');
}

/** One post with its plumb line, and where a touch lands. */
export function drawPost(shown: Shown, run: DrawnRun): TemplateResult<2> {
  const { drawn, now, reach } = shown;
  const { grade, top, foot, plumb, width, reading } = drawn;
  const leans = top.x !== plumb.x;
  return svg`
    <rect class="touch" x=${px(grade.x - reach)} y="2" width=${px(reach * 2)} height=${px(run.height - 4)}></rect>
    ${leans ? svg`<path class="plumb" d="M${grade.x} ${grade.y}L${plumb.x} ${plumb.y}"></path>` : nothing}
    <path class="below" stroke-width=${width} d="M${grade.x} ${grade.y}L${foot.x} ${foot.y}"></path>
    <path class="post" stroke-width=${now ? width + 2 : width} d="M${grade.x} ${grade.y}L${top.x} ${top.y}"></path>
    ${reading.remedy === 'replace' ? drawStripes(drawn) : nothing}
  `;
}

/** The words round a post: number, lean, remedy. They stand apart from what is touched, which has a name of its own. */
export function drawWords(shown: Shown, run: DrawnRun): TemplateResult<2> {
  const { drawn, now } = shown;
  const { grade, top, plumb, reading } = drawn;
  const above = px(Math.min(top.y, plumb.y) - 10);
  return svg`<g class="words" aria-hidden="true">
    ${shown.number ? svg`<text class="number" x=${grade.x} y="18">${reading.label}</text>` : nothing}
    ${now ? svg`<path class="underline" d="M${px(grade.x - 10)} 24H${px(grade.x + 10)}"></path>` : nothing}
    ${shown.beside ? svg`<text class="beside" x=${px((top.x + plumb.x) / 2)} y=${above}>${drawnFigures(beside(drawn, now))}</text>` : nothing}
    ${drawRemedy(shown, run)}
  </g>`;
}

function drawStripes({ grade, top, width }: DrawnPost): TemplateResult<2> {
  const half = width / 2 + 2;
  const bars = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9].map((share) => {
    const x = grade.x + (top.x - grade.x) * share;
    const y = grade.y + (top.y - grade.y) * share;
    return `M${String(px(x - half))} ${String(px(y + 3))}L${String(px(x + half))} ${String(px(y - 3))}`;
  });
  return svg`<path class="bar" d=${bars.join('')}></path>`;
}

function drawRemedy({ drawn, markOnly }: Shown, { soilBottom }: DrawnRun) {
  const { grade, reading } = drawn;
  if (markOnly) {
    return svg`<text class="mark" x=${grade.x} y=${px(soilBottom + 21)}>${markOf(reading)}</text>`;
  }
  const weight = reading.remedy === 'replace' ? 'remedy replace' : 'remedy';
  return svg`<text class=${weight} x=${grade.x} y=${px(soilBottom + 20)}>${reading.remedy}</text>`;
}
