import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookView } from '../worksheet/index.ts';

const NOTHING: ReadonlySet<string> = new Set();
const FLASH_MS = 1200;
/** Sheets of a job with more rows are drawn one after the other where they are out of sight. */
const LONG_JOB = 400;

/** Draws its element again whenever the book changes, and knows which cells just changed. */
export class FollowBook implements ReactiveController {
  /** Cells that changed a moment ago, as `sheet/row/column`. */
  changed: ReadonlySet<string> = NOTHING;
  /** Counts changes, for what is worked out once a change. */
  version = 0;

  private book: BookView | undefined;
  private leave: (() => void) | undefined;
  private calm: ReturnType<typeof setTimeout> | undefined;
  private isInSight = true;
  private readonly sight = new IntersectionObserver(
    ([entry]) => (this.isInSight = entry?.isIntersecting ?? true),
    { rootMargin: '50%' },
  );

  private readonly host: ReactiveControllerHost & Element;
  private readonly bookOfHost: () => BookView | undefined;

  constructor(host: ReactiveControllerHost & Element, bookOfHost: () => BookView | undefined) {
    this.host = host;
    this.bookOfHost = bookOfHost;
    host.addController(this);
  }

  hostUpdate(): void {
    if (this.bookOfHost() !== this.book) this.follow(this.bookOfHost());
  }

  hostConnected(): void {
    this.sight.observe(this.host);
    this.host.requestUpdate();
  }

  hostDisconnected(): void {
    this.sight.disconnect();
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
    this.draw();
    this.calm = setTimeout(() => {
      this.changed = NOTHING;
      this.draw();
    }, FLASH_MS);
  }

  private draw(): void {
    if (this.isInSight || !isLong(this.book)) this.host.requestUpdate();
    else drawLater(this.host);
  }
}

function isLong(book: BookView | undefined): boolean {
  return book?.sheets.some(({ rowCount }) => rowCount > LONG_JOB) ?? false;
}

const waiting = new Set<ReactiveControllerHost>();

/** Draws what is out of sight, one element a task, so that the key just pressed is not kept waiting. */
function drawLater(host: ReactiveControllerHost): void {
  if (waiting.size === 0) setTimeout(drawNext);
  waiting.add(host);
}

function drawNext(): void {
  const [host] = waiting;
  if (!host) return;
  waiting.delete(host);
  host.requestUpdate();
  if (waiting.size > 0) setTimeout(drawNext);
}
