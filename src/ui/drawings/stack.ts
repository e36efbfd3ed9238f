import { px } from './figures.ts';

/** One stack of bags on its pallet. */
export interface Stack {
  readonly count: number;
  readonly left: number;
  readonly right: number;
  readonly bags: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    /** The number of bags below and before it. */
    readonly from: number;
  }[];
}

const MOST_DRAWN = 120;
const GAP = 36;

/** Lays stacks side by side with bags of one size, so that their heights compare. */
export function stack(counts: readonly number[], room: number) {
  const whole = counts.map((count) => Math.max(0, Math.round(count)));
  const most = Math.max(...whole, 1);
  const each = Math.ceil(most / MOST_DRAWN);
  const drawn = Math.ceil(most / each);
  const across = Math.max(3, Math.ceil(Math.sqrt(drawn * 0.55)));
  const stackWidth = (room - GAP * (counts.length - 1)) / counts.length;
  const width = Math.min(36, stackWidth / across);
  const height = width * 0.42;
  const floor = px(Math.ceil(drawn / across) * height + 6);
  return {
    floor,
    height: floor,
    scaled: each === 1 ? '' : `each bag drawn stands for ${String(each)}`,
    stacks: whole.map((count, index): Stack => {
      const left = px(index * (stackWidth + GAP));
      return {
        count,
        left,
        right: px(left + across * width),
        bags: Array.from({ length: Math.ceil(count / each) }, (_, bag) => ({
          x: px(left + (bag % across) * width + 1),
          y: px(floor - 2 - (Math.floor(bag / across) + 1) * height),
          width: px(width - 2),
          height: px(height - 2),
          from: bag * each,
        })),
      };
    }),
  };
}
