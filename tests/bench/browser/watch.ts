/** A transaction that wrote: when it began and was over, in ms since 1970, and how many bytes it took. */
export interface Write {
  readonly began: number;
  over: number;
  bytes: number;
}

/** What is noted in a page while it works. */
export interface Noted {
  /** Tasks over 50 ms. [ms] */
  readonly longTasks: number[];
  /** When the posts sheet first showed a remedy; when anything first did. */
  firstRemedy: number | undefined;
  firstButton: number | undefined;
}

declare global {
  var noted: Noted;
  /** In a page, and in its thread that writes. */
  var storeWrites: Write[];
}

/** Runs in a page before the app: notes long tasks and first paints. */
export function watchPage(): void {
  const noted: Noted = {
    longTasks: [],
    firstRemedy: undefined,
    firstButton: undefined,
  };
  globalThis.noted = noted;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) noted.longTasks.push(duration);
  }).observe({ type: 'longtask', buffered: true });

  const look = () => {
    const app = document.querySelector('bp-app')?.shadowRoot;
    if (app?.querySelector('bp-start')?.shadowRoot?.querySelector('button'))
      noted.firstButton ??= performance.now();
    const cells = app
      ?.querySelector('bp-sheet#posts')
      ?.shadowRoot?.querySelector('bp-grid')
      ?.shadowRoot?.querySelectorAll('.cell.call');
    if (cells && [...cells].some((cell) => /re-plumb|replace|leave/.test(cell.textContent)))
      noted.firstRemedy ??= performance.now();
    if (noted.firstRemedy === undefined) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** Runs in a page or in a thread, before anything of it: notes writes to the device. */
export function watchStore(): void {
  globalThis.storeWrites = [];
  // One clock for the page and its threads.
  const now = () => performance.timeOrigin + performance.now();
  const writing = new WeakMap<IDBTransaction, Write>();
  for (const verb of ['put', 'add'] as const) {
    // eslint-disable-next-line @typescript-eslint/unbound-method -- it is called with its store.
    const plain = IDBObjectStore.prototype[verb];
    IDBObjectStore.prototype[verb] = function (this: IDBObjectStore, value: unknown, key) {
      const { transaction } = this;
      let write = writing.get(transaction);
      if (!write) {
        write = { began: now(), over: NaN, bytes: 0 };
        writing.set(transaction, write);
        globalThis.storeWrites.push(write);
        const note = write;
        transaction.addEventListener('complete', () => (note.over = now()));
      }
      write.bytes += bytesOf(value);
      return key === undefined ? plain.call(this, value) : plain.call(this, value, key);
    };
  }

  // Near to what a structured clone takes, and the same for every build.
  function bytesOf(value: unknown): number {
    if (typeof value === 'string') return value.length;
    if (value instanceof ArrayBuffer || ArrayBuffer.isView(value)) return value.byteLength;
    if (value instanceof Map) return [...value].reduce((sum, each) => sum + bytesOf(each), 0);
    if (Array.isArray(value)) return value.reduce<number>((sum, each) => sum + bytesOf(each), 0);
    if (typeof value !== 'object' || value === null) return 8;
    return Object.entries(value).reduce((sum, [key, each]) => sum + key.length + bytesOf(each), 0);
  }
}
