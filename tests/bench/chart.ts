import { slope, type Curve } from './figure.ts';

const WIDTH = 860;
const HEIGHT = 460;
const LEFT = 70;
const RIGHT = 300;
const TOP = 48;
const BOTTOM = 52;
const DASHES = ['', '7 4', '2 4', '10 3 2 3'];

/** What is drawn with, on a light page and on a dark one. */
const PAPER = { light: '#fbf8f1', dark: '#1d1f21' };
const TEXT = { light: '#3d3a35', dark: '#e6e1d6' };
const RULE = { light: '#d8d2c4', dark: '#3b3e41' };
const FRAME = { light: '#a3441a', dark: '#f0a47c' };
// Told apart by their dashes and names as well as by their inks.
const INKS = {
  light: ['#2b5d8c', '#a84a1a', '#3d3a35', '#4c6a2c', '#7a4b86', '#7a5f12', '#2f666a', '#9b3150'],
  dark: ['#8cc0f0', '#f0a070', '#e6e1d6', '#a9cf7e', '#d3a4e0', '#dfc069', '#82cbd0', '#f396b0'],
};

function style(scheme: 'light' | 'dark'): string {
  const inks = INKS[scheme].map(
    (ink, at) => `.c${String(at)}{stroke:${ink}}text.c${String(at)}{fill:${ink};stroke:none}`,
  );
  return (
    `text{fill:${TEXT[scheme]}}.paper{fill:${PAPER[scheme]}}.rule{stroke:${RULE[scheme]}}` +
    `.frame{stroke:${FRAME[scheme]}}text.frame{fill:${FRAME[scheme]};stroke:${PAPER[scheme]}}${inks.join('')}`
  );
}

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
  const frame = `<line x1="${px(LEFT)}" x2="${px(WIDTH - RIGHT)}" y1="${px(y(1000 / 60))}" y2="${px(y(1000 / 60))}" class="frame" stroke-dasharray="1 3"/><text x="${px(LEFT + 6)}" y="${px(y(1000 / 60) - 5)}" class="frame" stroke-width="4" paint-order="stroke">one frame of the screen</text>`;
  const ends = apart(curves.map((curve) => y(curve.points.at(-1)?.[1] ?? 1)));
  const lines = curves.map((curve, at) => {
    const ink = `c${String(at % INKS.light.length)}`;
    const dash = DASHES[Math.floor(at / 2) % DASHES.length] ?? '';
    const path = curve.points.map(([posts, ms]) => `${px(x(posts))},${px(y(ms))}`).join(' ');
    const last = curve.points.at(-1);
    const [endX, endY] = last ? [x(last[0]), y(last[1])] : [0, 0];
    const [nameX, nameY] = [WIDTH - RIGHT + 26, ends[at] ?? 0];
    return `<polyline points="${path}" fill="none" class="${ink}" stroke-width="2.2" stroke-dasharray="${dash}"/><path d="M${px(endX + 3)} ${px(endY)}L${px(nameX - 4)} ${px(nameY)}" class="${ink}" stroke-width="0.8"/><text x="${px(nameX)}" y="${px(nameY + 4)}" class="${ink}">${curve.name}: ${slope(curve).toFixed(2)}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(WIDTH)} ${String(HEIGHT)}" role="img" aria-label="${title}">
<style>text{font:13px sans-serif}${style('light')}@media (prefers-color-scheme:dark){${style('dark')}}</style>
<rect width="100%" height="100%" class="paper"/>
<text x="${px(LEFT)}" y="26" style="font-weight:600">${title}</text>
<text x="${px(WIDTH - RIGHT + 26)}" y="26">slope: 1 grows in step, 0 not at all</text>
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
    last = Math.max(places[at] ?? 0, last + 17);
    moved[at] = last;
  }
  return moved;
}

function px(length: number): string {
  return String(Math.round(length * 10) / 10);
}
