import type { Problem } from '../units/index.ts';
import type { Intake } from './intake.ts';
import type { Overview, ReaderAnswer, ReaderAsk, Reading } from './messages.ts';
import type { StoredRows } from './row-store.ts';
import { rowsOf } from './stored-rows.ts';

/** The part of a Worker that a reader needs. */
export interface ReadingThread {
  postMessage(message: ReaderAsk): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<ReaderAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** A whole file as it was read, and its bytes. */
export interface WholeFile {
  readonly intake: Intake;
  readonly bytes: Uint8Array;
}

/** Reads one file on a thread of its own. One thing is asked at a time. */
export class SiteReader {
  private readonly thread: ReadingThread;
  private readonly listening: Promise<void>;
  private readonly progress: (share: number) => void;
  private overview: Overview | undefined;
  private stop: (why: unknown) => void = () => undefined;

  /** @param progress - Hears how far the reading has come, from 0 to 1. */
  constructor(thread: ReadingThread, progress: (share: number) => void) {
    this.thread = thread;
    this.progress = progress;
    this.listening = new Promise((resolve) => {
      thread.onmessage = () => {
        resolve();
      };
    });
  }

  /** Reads the file; rejects once the reader is stopped. */
  read(file: Blob, name: string, how: Reading): Promise<Overview | Problem> {
    return this.overviewAfter({ ask: 'read', file, name, how });
  }

  /** Reads it again with other headers settled. */
  again(how: Reading): Promise<Overview | Problem> {
    return this.overviewAfter({ ask: 'again', how });
  }

  /** Everything of the file; the reader is done after it. */
  async all(): Promise<WholeFile> {
    const { overview } = this;
    if (!overview) throw new Error('Nothing was read yet.');
    const { stored, bytes } = await this.ask<{ stored: StoredRows; bytes: Uint8Array }>(
      { ask: 'rows' },
      (answer, done) => {
        if (answer.say === 'all') done(answer);
      },
    );
    this.thread.terminate();
    return { intake: { ...overview, rows: rowsOf(stored), stored }, bytes };
  }

  /** Stops the thread, whatever it does, and forgets what it read. */
  cancel(): void {
    this.thread.terminate();
    this.stop(new DOMException('Stopped.', 'AbortError'));
  }

  private async overviewAfter(asked: ReaderAsk): Promise<Overview | Problem> {
    return this.ask<Overview | Problem>(asked, (answer, done) => {
      if (answer.say === 'read') {
        this.overview = answer.overview;
        done(answer.overview);
      } else if (answer.say === 'refused') done(answer.problem);
    });
  }

  private ask<T>(
    asked: ReaderAsk,
    hear: (answer: ReaderAnswer, done: (result: T) => void) => void,
  ): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      this.stop = reject;
      this.thread.onerror = ({ message }) => {
        reject(
          new Error(`The file could not be read on: ${message}. Reload the page and try again.`),
        );
      };
      void this.listening.then(() => {
        this.thread.onmessage = ({ data }) => {
          if (data.say === 'progress') this.progress(data.share);
          else hear(data, resolve);
        };
        this.thread.postMessage(asked);
      });
    });
  }
}
