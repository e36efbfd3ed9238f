import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookView } from '../worksheet/index.ts';

const NOTHING: ReadonlySet<string> = new Set();
const FLASH_MS = 1200;

/** Draws its element again whenever the book changes, and knows which cells just changed. */
export class FollowBook implements ReactiveController {
  /** Cells that changed a moment ago, as `sheet/row/column`. */
  changed: ReadonlySet<string> = NOTHING;
  /** Counts changes, for what is worked out once a change. */
  version = 0;

  private book: BookView | undefined;
  private leave: (() => void) | undefined;
  private calm: ReturnType<typeof setTimeout> | undefined;

  private readonly host: ReactiveControllerHost;
  private readonly bookOfHost: () => BookView | undefined;

  constructor(host: ReactiveControllerHost, bookOfHost: () => BookView | undefined) {
    this.host = host;
    this.bookOfHost = bookOfHost;
    host.addController(this);
  }

  hostUpdate(): void {
    if (this.bookOfHost() !== this.book) this.follow(this.bookOfHost());
  }

  hostConnected(): void {
    this.host.requestUpdate();
  }

  hostDisconnected(): void {
    this.follow(undefined);
  }

  private follow(book: BookView | undefined): void {
    this.leave?.();
    this.book = book;
    this.changed = NOTHING;
    this.version += 1;
    this.leave = book?.subscribe(({ cells }) => {
      this.version += 1;
      this.flash(cells);
    });
  }

  private flash(cells: ReadonlySet<string>): void {
    clearTimeout(this.calm);
    this.changed = cells;
    this.host.requestUpdate();
    this.calm = setTimeout(() => {
      this.changed = NOTHING;
      this.host.requestUpdate();
    }, FLASH_MS);
  }
}
