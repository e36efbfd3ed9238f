import type { Pace } from '../worksheet/index.ts';

/** Leaves half a frame for drawing. [ms] */
const SLICE = 8;

/** Lets the page draw and take keys while a long job is worked out. */
export function pagePace(): Pace {
  let end = 0;
  return {
    begin() {
      end = performance.now() + SLICE;
    },
    isOver: () => performance.now() >= end,
    later(step) {
      setTimeout(step);
    },
  };
}
