import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { base } from './tokens.ts';

/** The reading that makes a post count as read. */
const READ_BY = 'lean_gap';

/**
 * The run as a string of dots: a full dot for a post that was read, a ring for one that was not, a
 * square for one with something to answer.
 *
 * @fires row-current - A dot was pressed.
 */
@customElement('bp-dots')
export class Dots extends LitElement {
  static override styles = [
    base,
    css`
      ul {
        display: flex;
        justify-content: space-between;
        overflow-x: auto;
        padding: 4px 0;
        background: linear-gradient(var(--chalk), var(--chalk)) center / 100% 2px no-repeat;
      }
      button {
        display: grid;
        place-items: center;
        width: 44px;
        height: 44px;
        min-height: 0;
        padding: 0;
        border: 0;
        background: none;
        color: var(--on-chalk);
      }
      button:focus-visible {
        outline-offset: -3px;
      }
      .dot {
        display: grid;
        place-items: center;
        width: 16px;
        height: 16px;
        border: 2.5px solid var(--chalk);
        border-radius: 50%;
        background: var(--paper);
        font-size: 18px;
      }
      .read .dot {
        background: var(--chalk);
      }
      .waits .dot {
        border-color: var(--paint-bar);
        border-radius: 2px;
        background: var(--paint-bar);
      }
      [aria-current] .dot {
        width: 36px;
        height: 36px;
        background: var(--chalk);
        border-color: var(--chalk);
        border-radius: 50%;
      }
      .waits[aria-current] .dot {
        border-color: var(--paint-bar);
        border-width: 4px;
      }
      @media (forced-colors: active) {
        .read .dot,
        [aria-current] .dot {
          background: Highlight;
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  @property() current = '';

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const view = this.book?.sheet(this.sheet);
    if (!view || view.rowCount === 0) return nothing;
    return html`<nav aria-label="The run">
      <ul>
        ${Array.from({ length: view.rowCount }, (_, row) => this.renderDot(view, row))}
      </ul>
    </nav>`;
  }

  protected override updated() {
    this.renderRoot
      .querySelector('[aria-current]')
      ?.scrollIntoView({ block: 'nearest', inline: 'center' });
  }

  private renderDot(view: SheetView, row: number): TemplateResult {
    const id = view.rowId(row);
    const waits = this.book?.asks().some((ask) => ask.sheet === view.id && ask.row === id);
    const read = view.cell(row, READ_BY).state === 'known';
    const isCurrent = id === this.current;
    const state = waits ? 'something to answer' : read ? 'read' : 'not read';
    return html`<li>
      <button
        class=${waits ? 'waits' : read ? 'read' : ''}
        aria-label="${view.rowName(row)}, ${state}"
        aria-current=${isCurrent ? 'true' : nothing}
        @click=${() => {
          send(this, 'row-current', { sheet: view.id, row: id });
        }}
      >
        <span class="dot">${isCurrent ? view.rowKey(row) : ''}</span>
      </button>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-dots': Dots;
  }
}
