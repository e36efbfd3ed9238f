import type { BroughtIn, Desk, OpenJob } from './desk.ts';
import type { Preview, Progress, Reading } from './import-desk.ts';

export type Doing = 'Reading' | 'Bringing in' | 'Opening';

/** A file on its way into a job, or a job on its way to the screen. */
export interface FileComing {
  readonly name: string;
  readonly share: number;
  readonly doing?: Doing;
  readonly preview: Preview | undefined;
}

/** What comes sooner needs no word. [ms] */
const MOMENT = 200;

/** The way of one file from being chosen to coming in or being put away. */
export class ImportFlow {
  file: FileComing | undefined;

  private readonly changed: () => void;
  private reading: Reading | undefined;
  /** Raised whenever a file comes or goes, so that what is late is not heard. */
  private turn = 0;

  /** @param changed - Called whenever there is something else to show. */
  constructor(changed: () => void) {
    this.changed = changed;
  }

  /** Reads a file until it can be looked at; gives what came of it where there is nothing to look at. */
  async start(
    desk: Desk,
    file: File,
    into: OpenJob | undefined,
    onto?: string,
  ): Promise<BroughtIn | undefined> {
    this.cancel();
    const turn = ++this.turn;
    this.show({ name: file.name, share: 0, preview: undefined });
    try {
      const progress = (share: number): void => {
        if (turn === this.turn && this.file) this.show({ ...this.file, share });
      };
      const reading = await desk.readSite(file, into, { progress }, onto);
      if (!('preview' in reading)) {
        this.end();
        return reading;
      }
      if (turn !== this.turn) {
        // It was put away before it began, so nobody waits for it.
        reading.preview.catch(() => undefined);
        reading.cancel();
        return undefined;
      }
      this.reading = reading;
      await this.follow(reading.preview);
    } catch (error) {
      if (turn === this.turn) this.end();
      throw error;
    }
    return undefined;
  }

  /** Shows a file once it was read again; rejects with what went wrong, and shows it as it was. */
  async follow(coming: Promise<Preview>): Promise<void> {
    const { turn, file } = this;
    try {
      const preview = await coming;
      if (turn === this.turn && this.file) this.show({ ...this.file, preview });
    } catch (error) {
      // A file that was put away has nothing more to say.
      if (turn !== this.turn) return;
      if (file?.preview) this.show(file);
      else this.end();
      throw error;
    }
  }

  /** Shows how far the file has come in, until it is in. */
  async during<T>(coming: Promise<T>): Promise<T | undefined> {
    const { turn } = this;
    if (this.file) this.show({ ...this.file, share: 0, doing: 'Bringing in', preview: undefined });
    try {
      return await coming;
    } catch (error) {
      if (turn !== this.turn) return undefined;
      throw error;
    } finally {
      if (turn === this.turn) this.end();
    }
  }

  /** Shows how far a job is opened, where that takes longer than a moment. */
  async opening<T>(
    name: string,
    open: (progress: Progress) => Promise<T> | undefined,
  ): Promise<T | undefined> {
    this.cancel();
    const { turn } = this;
    const show = (share: number): void => {
      if (turn === this.turn) this.show({ name, share, doing: 'Opening', preview: undefined });
    };
    const late = setTimeout(show, MOMENT, 0);
    try {
      return await open((share) => {
        if (this.file) show(share);
      });
    } finally {
      clearTimeout(late);
      if (turn === this.turn) this.end();
    }
  }

  /** Puts the file away; nothing of it comes in. */
  cancel(): void {
    this.reading?.cancel();
    this.end();
  }

  private end(): void {
    this.turn++;
    this.reading = undefined;
    this.file = undefined;
    this.changed();
  }

  private show(file: FileComing): void {
    this.file = file;
    this.changed();
  }
}
