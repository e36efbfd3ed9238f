import { textWidth } from './labels.ts';

/** How high a line of words stands. [px] */
const LINE = 17;
/** Between a mark and its words. [px] */
const GAP = 9;

/** A place on the drawing. [px] */
export type Spot = readonly [x: number, y: number];

/** A part of the drawing that is taken, from its top left corner. [px] */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What words must keep clear of. */
export interface Taken {
  /** Within which they must stand. */
  readonly within: Box;
  readonly boxes: readonly Box[];
  /** Lines, as the corners they turn at. */
  readonly lines: readonly (readonly Spot[])[];
}

/** The lines that words are set in: broken where a comma stands. */
export function linesOf(label: string): readonly string[] {
  return label.split(/(?<=,) /u);
}

/** Where the words of marks stand beside them, each clear of lines and of one another as far as there is room. */
export function placeLabels(
  marks: readonly { readonly at: Spot; readonly label: string }[],
  { within, boxes, lines }: Taken,
): readonly Box[] {
  const dots = [...lines.flatMap(dotted), ...marks.map(({ at }) => at)];
  const taken = [...boxes];
  return marks.map(({ at, label }) => {
    const words = linesOf(label);
    const width = Math.max(...words.map(textWidth)) - 8;
    const places = placesRound(at, width, words.length * LINE);
    const costs = places.map((box, order) => order * 0.1 + cost(box, within, taken, dots));
    const best = places[costs.indexOf(Math.min(...costs))] ?? { x: 0, y: 0, width, height: LINE };
    taken.push(best);
    return best;
  });
}

/** The height at which a line of a label's words is written. */
export function baseline({ y }: Box, line: number): number {
  return y + (line + 1) * LINE - 4;
}

function placesRound([x, y]: Spot, width: number, height: number): readonly Box[] {
  const [left, right] = [x - GAP - width, x + GAP];
  const [above, below] = [y - 4 - height, y + 4];
  const [middle, across] = [y - height / 2, x - width / 2];
  return [
    [left, above],
    [right, below],
    [right, above],
    [left, below],
    [left, middle],
    [right, middle],
    [across, y - GAP - height],
    [across, y + GAP],
    [left, above - LINE],
    [right, below + LINE],
  ].map(([at = 0, top = 0]) => ({ x: at, y: top, width, height }));
}

function cost(box: Box, within: Box, taken: readonly Box[], dots: readonly Spot[]): number {
  const outside =
    Math.max(0, within.x - box.x) +
    Math.max(0, box.x + box.width - within.x - within.width) +
    Math.max(0, within.y - box.y) +
    Math.max(0, box.y + box.height - within.y - within.height);
  const covered = taken.reduce((sum, other) => sum + overlap(box, other), 0);
  return outside * 100 + covered + dots.filter((dot) => holds(box, dot)).length * 2;
}

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

function holds({ x, y, width, height }: Box, [dotX, dotY]: Spot): boolean {
  return dotX >= x && dotX <= x + width && dotY >= y && dotY <= y + height;
}

/** A line as dots close enough that no words slip between them. */
function dotted(line: readonly Spot[]): readonly Spot[] {
  return line.flatMap(([x, y], at): readonly Spot[] => {
    const [nextX, nextY] = line[at + 1] ?? [x, y];
    const steps = Math.min(200, Math.ceil(Math.hypot(nextX - x, nextY - y) / 4));
    return Array.from({ length: Math.max(1, steps) }, (_, step) => {
      const share = steps === 0 ? 0 : step / steps;
      return [x + (nextX - x) * share, y + (nextY - y) * share] as const;
    });
  });
}
