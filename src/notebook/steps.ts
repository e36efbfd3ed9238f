/** Work that can be left between two steps, and what it comes to. */
export type Steps<T> = Generator<undefined, T>;

/** What steps come to, taken at one go. */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
