import type { CuttingTask, Pattern } from './cutting.ts';

/** First-fit-decreasing into one stock length. */
export function firstFit(task: CuttingTask, stock: number): readonly Pattern[] {
  const bars: Map<number, number>[] = [];
  const rooms = new BarRooms(task.rooms[stock] ?? 0);
  task.widths.forEach((width, at) => {
    for (let piece = 0; piece < (task.wanted[at] ?? 0); piece++) {
      const place = rooms.cut(width);
      const takes = (bars[place] ??= new Map<number, number>());
      takes.set(at, (takes.get(at) ?? 0) + 1);
    }
  });
  return bars.map((takes) => ({ stock, takes }));
}

/**
 * What is left of each bar, and above every two the more of them, so that the first with room is found in a few steps:
 * a long run has as many different lengths as pieces.
 */
class BarRooms {
  private readonly whole: number;
  private size = 1;
  /** The most left under each node; node 1 is the top, the bars are the last `size` nodes. */
  private most: Float64Array;

  constructor(whole: number) {
    this.whole = whole;
    this.most = new Float64Array([0, whole]);
  }

  /** Cuts a piece from the first bar with room for it, a new one where none has, and says which. */
  cut(width: number): number {
    while ((this.most[1] ?? 0) < width) this.grow();
    let node = 1;
    while (node < this.size) {
      node *= 2;
      if ((this.most[node] ?? 0) < width) node += 1;
    }
    const place = node - this.size;
    this.most[node] = (this.most[node] ?? 0) - width;
    for (node = node >> 1; node > 0; node = node >> 1) this.most[node] = this.mostUnder(node);
    return place;
  }

  /** Lays as many new bars beside those there are. */
  private grow(): void {
    const before = this.most.subarray(this.size);
    this.size *= 2;
    this.most = new Float64Array(2 * this.size).fill(this.whole, this.size);
    this.most.set(before, this.size);
    for (let node = this.size - 1; node > 0; node--) this.most[node] = this.mostUnder(node);
  }

  private mostUnder(node: number): number {
    return Math.max(this.most[2 * node] ?? 0, this.most[2 * node + 1] ?? 0);
  }
}
