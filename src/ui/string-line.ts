import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { base } from './tokens.ts';
import { waitingAt } from './waiting.ts';

/**
 * The string line along the left: a knot for each sheet, with the asks and stops that wait there.
 *
 * @fires go-to - A knot was pressed.
 */
@customElement('bp-string-line')
export class StringLine extends LitElement {
  static override styles = [
    base,
    css`
      nav {
        position: sticky;
        top: 0;
        height: 100vh;
        max-height: 1000px;
        padding: 36px 0 24px;
        overflow-y: auto;
      }
      ul {
        position: relative;
        display: flex;
        flex-direction: column;
        justify-content: space-between;
        gap: 6px;
        min-height: 100%;
        padding: 30px 0;
      }
      ul::before {
        content: '';
        position: absolute;
        top: -36px;
        bottom: -24px;
        left: 37px;
        border-left: 2px solid var(--chalk);
      }
      a {
        position: relative;
        display: grid;
        grid-template-columns: 44px 1fr;
        gap: 0 4px;
        padding: 5px 6px 5px 16px;
        color: var(--ink);
        text-decoration: none;
        line-height: 1.25;
      }
      a:focus-visible {
        outline-offset: -3px;
      }
      .knot {
        justify-self: center;
        align-self: start;
        width: 15px;
        height: 15px;
        margin-top: 3px;
        border: 2.5px solid var(--chalk);
        border-radius: 50%;
        background: var(--paper);
      }
      .title {
        font-weight: 600;
      }
      a:hover .title {
        color: var(--chalk);
        text-decoration: underline;
      }
      [aria-current] .title {
        color: var(--chalk);
      }
      [aria-current] .knot {
        width: 21px;
        height: 21px;
        margin-top: 0;
        background: var(--chalk);
      }
      .waits .knot {
        border-color: var(--paint-bar);
        background: var(--paint-bar);
      }
      .waits[aria-current] .knot {
        border-color: var(--paper);
        outline: 3px solid var(--paint-bar);
        outline-offset: -1px;
      }
      .count {
        grid-column: 2;
        font-size: 14px;
        font-weight: 600;
        color: var(--paint);
      }
      .caution {
        color: var(--soft);
        font-weight: 400;
      }
      :host([flat]) nav {
        position: static;
        height: auto;
        padding: 0;
      }
      :host([flat]) ul {
        padding: 8px 0;
      }
      :host([flat]) ul::before {
        top: 0;
        bottom: 0;
      }
      :host([flat]) a {
        min-height: 44px;
      }
      @media (forced-colors: active) {
        .waits .knot,
        [aria-current] .knot {
          background: Highlight;
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet that is on the screen. */
  @property() current = '';

  /** Laid into the page, where it doesn't stay in view by itself. */
  @property({ type: Boolean, reflect: true }) flat = false;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    if (!this.book) return nothing;
    return html`<nav aria-label="Sheets">
      <ul>
        ${this.book.sheets.map((sheet) => this.renderKnot(sheet))}
      </ul>
    </nav>`;
  }

  private renderKnot({ id, title }: SheetView): TemplateResult {
    const { asks, stops, cautions, words } = waitingAt(this.book, id);
    return html`<li>
      <a
        href="#${id}"
        class=${asks + stops > 0 ? 'waits' : ''}
        aria-current=${id === this.current ? 'location' : nothing}
        @click=${(event: Event) => {
          event.preventDefault();
          send(this, 'go-to', { sheet: id });
        }}
        ><span class="knot"></span><span class="title">${title}</span>${
          words === ''
            ? nothing
            : html`<span class="count ${asks + stops === 0 && cautions > 0 ? 'caution' : ''}"
                >${words}</span
              >`
        }</a
      >
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-string-line': StringLine;
  }
}
