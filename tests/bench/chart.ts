import type { Curve } from './figure.ts';

const WIDTH = 760;
const HEIGHT = 420;
const LEFT = 70;
const RIGHT = 250;
const TOP = 44;
const BOTTOM = 52;
// Told apart by their dashes as well as by their inks.
const INKS = [
  '#2b5d8c',
  '#b4511e',
  '#3d3a35',
  '#5d7a3a',
  '#7a4b86',
  '#8a6d1d',
  '#44686b',
  '#9b3150',
];
const DASHES = ['', '7 4', '2 4', '10 3 2 3'];

/** Cost against the number of posts, both axes logarithmic, as an SVG that needs nothing else. */
export function chart(curves: readonly Curve[], title: string): string {
  const points = curves.flatMap((curve) => curve.points);
  const [fromX, toX] = decades(points.map(([posts]) => posts));
  const [fromY, toY] = decades(points.map(([, ms]) => ms));
  const x = (posts: number) =>
    LEFT + ((Math.log10(posts) - fromX) / (toX - fromX)) * (WIDTH - LEFT - RIGHT);
  const y = (ms: number) =>
    HEIGHT - BOTTOM - ((Math.log10(ms) - fromY) / (toY - fromY)) * (HEIGHT - TOP - BOTTOM);
  const across = steps(fromX, toX).map((at) => {
    const posts = 10 ** at;
    return `<line x1="${px(x(posts))}" x2="${px(x(posts))}" y1="${px(TOP)}" y2="${px(HEIGHT - BOTTOM)}" class="rule"/><text x="${px(x(posts))}" y="${px(HEIGHT - BOTTOM + 20)}" text-anchor="middle">${posts.toLocaleString('en-US')}</text>`;
  });
  const up = steps(fromY, toY).map((at) => {
    const ms = 10 ** at;
    return `<line x1="${px(LEFT)}" x2="${px(WIDTH - RIGHT)}" y1="${px(y(ms))}" y2="${px(y(ms))}" class="rule"/><text x="${px(LEFT - 8)}" y="${px(y(ms) + 4)}" text-anchor="end">${timeLabel(ms)}</text>`;
  });
  // A frame is what a person notices.
  const frame = `<line x1="${px(LEFT)}" x2="${px(WIDTH - RIGHT)}" y1="${px(y(1000 / 60))}" y2="${px(y(1000 / 60))}" class="frame"/><text x="${px(LEFT + 6)}" y="${px(y(1000 / 60) - 5)}">one frame</text>`;
  const ends = apart(curves.map((curve) => y(curve.points.at(-1)?.[1] ?? 1)));
  const lines = curves.map((curve, at) => {
    const ink = INKS[at % INKS.length] ?? '#000';
    const dash = DASHES[Math.floor(at / 2) % DASHES.length] ?? '';
    const path = curve.points.map(([posts, ms]) => `${px(x(posts))},${px(y(ms))}`).join(' ');
    return `<polyline points="${path}" fill="none" stroke="${ink}" stroke-width="2.2" stroke-dasharray="${dash}"/><text x="${px(WIDTH - RIGHT + 10)}" y="${px((ends[at] ?? 0) + 4)}" fill="${ink}">${curve.name}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(WIDTH)} ${String(HEIGHT)}" role="img" aria-label="${title}">
<style>text{font:13px sans-serif;fill:#3d3a35}.rule{stroke:#d8d2c4}.frame{stroke:#b4511e;stroke-dasharray:1 3}</style>
<rect width="100%" height="100%" fill="#fbf8f1"/>
<text x="${px(LEFT)}" y="24" style="font-weight:600">${title}</text>
${[...across, ...up, frame, ...lines].join('\n')}
<text x="${px((LEFT + WIDTH - RIGHT) / 2)}" y="${px(HEIGHT - 12)}" text-anchor="middle">posts</text>
</svg>
`;
}

function decades(values: readonly number[]): readonly [number, number] {
  const logs = values.map(Math.log10);
  return [Math.floor(Math.min(...logs)), Math.ceil(Math.max(...logs))];
}

function steps(from: number, to: number): readonly number[] {
  return Array.from({ length: to - from + 1 }, (_, step) => from + step);
}

function timeLabel(ms: number): string {
  if (ms >= 1000) return `${String(ms / 1000)} s`;
  return ms >= 1 ? `${String(ms)} ms` : `${String(Math.round(ms * 1000))} µs`;
}

/** Places of labels, moved down so that none covers another. */
function apart(places: readonly number[]): readonly number[] {
  const order = places.map((_, at) => at).sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0));
  const moved = [...places];
  let last = -Infinity;
  for (const at of order) {
    last = Math.max(places[at] ?? 0, last + 16);
    moved[at] = last;
  }
  return moved;
}

function px(length: number): string {
  return String(Math.round(length * 10) / 10);
}
