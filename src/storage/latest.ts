/** Writes the latest state of each of several things: soon, one at a time, the last one always. */
export interface Latest<T> {
  /** Takes a newer state; the promise is kept once this state or a newer one has been through `write`. */
  put(id: string, state: T): Promise<void>;
  /** Lets go of a state that is still waiting. */
  drop(id: string): void;
  /** Begins to write whatever waits; the promise is kept once nothing is being written. */
  flush(): Promise<void>;
}

/** A writer that waits `delay` milliseconds, so that a burst of edits is one write. `write` must not throw. */
export function keepLatest<T>(
  delay: number,
  write: (id: string, state: T) => Promise<void>,
): Latest<T> {
  const waiting = new Map<string, T>();
  let writing = Promise.resolve();
  let batch: Promise<void> | undefined;
  let begin = (): void => undefined;

  const writeAll = async (): Promise<void> => {
    // A state that comes in meanwhile is written in the same round.
    for (const [id, state] of waiting) {
      waiting.delete(id);
      await write(id, state);
    }
  };

  return {
    put(id, state) {
      waiting.set(id, state);
      batch ??= new Promise((settle) => {
        const timer = setTimeout(() => {
          begin();
        }, delay);
        begin = () => {
          clearTimeout(timer);
          batch = undefined;
          writing = writing.then(writeAll);
          settle(writing);
        };
      });
      return batch;
    },
    drop(id) {
      waiting.delete(id);
    },
    flush() {
      if (batch) begin();
      return writing;
    },
  };
}
