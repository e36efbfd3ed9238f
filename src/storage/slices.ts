import type { Steps } from '../notebook/index.ts';

/** Leaves half a frame for drawing. [ms] */
const SLICE = 8;

/** What steps come to, taken a slice at a time, so that the page draws and takes keys meanwhile. */
export async function inSlices<T>(steps: Steps<T>): Promise<T> {
  for (;;) {
    const end = performance.now() + SLICE;
    do {
      const step = steps.next();
      if (step.done === true) return step.value;
    } while (performance.now() < end);
    await new Promise<void>((resolve) => {
      // A timer set by a timer waits for 4 ms.
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        // Or the browser would keep both for as long as the page is open.
        port1.close();
        resolve();
      };
      port2.postMessage(0);
    });
  }
}
