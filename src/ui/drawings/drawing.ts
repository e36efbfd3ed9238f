import type { PropertyValues } from 'lit';
import { property } from 'lit/decorators.js';
import type { BookView } from '../../worksheet/index.ts';
import { drawSoon, joinTurns, leaveTurns } from '../turns.ts';
import { Sized } from './sized.ts';

/** What every picture of a book shares: it redraws when the book changes or its own width does. */
export abstract class Drawing extends Sized {
  /** The book the picture is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  /** The row id of the current post. */
  @property() current: string | undefined;

  private leaveBook: (() => void) | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    joinTurns(this);
    this.followBook();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    leaveTurns(this);
    this.leaveBook?.();
    this.leaveBook = undefined;
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('book')) this.followBook();
  }

  private followBook(): void {
    this.leaveBook?.();
    this.leaveBook = this.isConnected
      ? this.book?.subscribe(() => {
          drawSoon(this);
        })
      : undefined;
  }
}
