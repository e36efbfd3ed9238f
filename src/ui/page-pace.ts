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
    // A timer set by a timer waits for 4 ms, which is half as long as the work itself.
    later(step) {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        port1.close();
        step();
      };
      port2.postMessage(0);
    },
  };
}
