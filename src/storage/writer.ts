import type { UseStore } from 'idb-keyval';
import { append, type Appended, type Appending } from './append.ts';

/** What the thread that writes is asked. */
export interface WriterAsk {
  readonly number: number;
  readonly database: string;
  readonly appending: Appending;
}

/** What it answers: that it is there, what came of an asking, or what the browser refused it with. */
export type WriterAnswer =
  | { readonly say: 'ready' }
  | { readonly say: 'appended'; readonly number: number; readonly appended: Appended }
  | { readonly say: 'refused'; readonly number: number; readonly error: unknown };

interface Waiting {
  readonly resolve: (appended: Appended) => void;
  readonly reject: (error: unknown) => void;
}

/** Adds acts to journals: in a thread of its own once that is there, and here where there is none. */
export class Writer {
  private readonly store: UseStore;
  private readonly database: string;
  private readonly waiting = new Map<number, Waiting>();
  private readonly thread: Worker | undefined;
  private isReady = false;
  private isDoubted = false;
  private asked = 0;

  constructor(store: UseStore, database: string, start: (() => Worker) | undefined) {
    this.store = store;
    this.database = database;
    this.thread = started(start);
    this.thread?.addEventListener('message', ({ data }: MessageEvent<WriterAnswer>) => {
      this.hear(data);
    });
    this.thread?.addEventListener('error', () => {
      this.stop();
    });
  }

  /** Adds acts to one notebook's journal: all of them, or none; rejects with what the browser refused it with. */
  append(appending: Appending): Promise<Appended> {
    const { thread, database } = this;
    if (!thread || !this.isReady || this.isDoubted) {
      this.isDoubted = false;
      return append(this.store, appending);
    }
    this.asked += 1;
    const number = this.asked;
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { resolve, reject });
      thread.postMessage({ number, database, appending } satisfies WriterAsk);
    });
  }

  /** What is asked next is asked here: the page heard that the store is cleared, and the thread perhaps not yet. */
  doubt(): void {
    this.isDoubted = true;
  }

  /** Lets the thread go; what it had not answered is refused, and what is asked from now on is done here. */
  stop(): void {
    this.isReady = false;
    this.thread?.terminate();
    for (const { reject } of this.waiting.values()) reject(new Error('The writing was cut off.'));
    this.waiting.clear();
  }

  private hear(data: WriterAnswer): void {
    if (data.say === 'ready') {
      this.isReady = true;
      return;
    }
    const waiting = this.waiting.get(data.number);
    this.waiting.delete(data.number);
    if (data.say === 'appended') waiting?.resolve(data.appended);
    else waiting?.reject(data.error);
  }
}

// A browser that has no such threads still keeps what is typed.
function started(start: (() => Worker) | undefined): Worker | undefined {
  try {
    return start?.();
  } catch {
    return undefined;
  }
}
