import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BookChange, BookView } from '../worksheet/index.ts';
import { drawSoon, joinTurns, leaveTurns, type InTurn } from './turns.ts';

const NOTHING: ReadonlySet<string> = new Set();
const FLASH_MS = 1200;

/** Draws its element again whenever the book changes, and knows which cells just changed. */
export class FollowBook implements ReactiveController {
  /** Counts changes, for what is worked out once a change. */
  version = 0;

  private book: BookView | undefined;
  private leave: (() => void) | undefined;
  private calm: ReturnType<typeof setTimeout> | undefined;
  private cells: ReadonlySet<string> = NOTHING;
  private isLit = false;

  private readonly host: ReactiveControllerHost & Element;
  private readonly bookOfHost: () => BookView | undefined;
  private readonly hear: (change: BookChange) => void;
  private readonly draw: (host: InTurn) => void;

  /** `hear` is told of each change, and of another book as of a change of everything; `draw` says when it is drawn. */
  constructor(
    host: ReactiveControllerHost & Element,
    bookOfHost: () => BookView | undefined,
    hear: (change: BookChange) => void = () => undefined,
    draw: (host: InTurn) => void = drawSoon,
  ) {
    this.draw = draw;
    this.host = host;
    this.bookOfHost = bookOfHost;
    this.hear = hear;
    host.addController(this);
  }

  /** Cells that changed a moment ago, as `sheet/row/column`. */
  get changed(): ReadonlySet<string> {
    this.isLit = true;
    return this.cells;
  }

  hostUpdate(): void {
    if (this.bookOfHost() !== this.book) this.follow(this.bookOfHost());
  }

  hostConnected(): void {
    joinTurns(this.host);
    this.host.requestUpdate();
  }

  hostDisconnected(): void {
    leaveTurns(this.host);
    this.follow(undefined);
  }

  private follow(book: BookView | undefined): void {
    this.leave?.();
    this.book = book;
    this.cells = NOTHING;
    this.version += 1;
    this.hear({ cells: NOTHING });
    this.leave = book?.subscribe((change) => {
      this.version += 1;
      this.hear(change);
      this.flash(change.cells);
    });
  }

  private flash(cells: ReadonlySet<string>): void {
    clearTimeout(this.calm);
    this.cells = cells;
    this.draw(this.host);
    // Who shows no such cells need not put them out.
    if (!this.isLit || cells.size === 0) return;
    this.calm = setTimeout(() => {
      this.cells = NOTHING;
      this.draw(this.host);
    }, FLASH_MS);
  }
}
