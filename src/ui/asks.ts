import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookView } from '../worksheet/index.ts';
import './ask.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

/**
 * All that the notebook asks, in one list that can be answered from the top down by keyboard; folded
 * to a line until it is opened, and gone once all is answered.
 *
 * @fires go-to - Somebody wants to see the cell an ask is about.
 */
@customElement('bp-asks')
export class Asks extends LitElement {
  static override styles = [
    base,
    css`
      details {
        border-left: 8px solid var(--paint-bar);
        background: var(--paint-wash);
      }
      summary {
        padding: 8px 14px;
        cursor: pointer;
      }
      summary strong {
        color: var(--paint);
      }
      li {
        border-top: 1px solid var(--rule);
        padding: 2px 14px 6px;
      }
      bp-ask {
        padding: 8px 0 4px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @state() private opened = false;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const asks = this.book?.asks() ?? [];
    if (asks.length === 0) return nothing;
    return html`<details
      ?open=${this.opened}
      @toggle=${(event: Event) => (this.opened = (event.target as HTMLDetailsElement).open)}
    >
      <summary>
        <strong>${counted(asks.length, 'ask')}</strong> to answer before the numbers stand
      </summary>
      <ul>
        ${repeat(
          asks,
          ({ id }) => id,
          (ask) =>
            html`<li>
              <bp-ask .book=${this.book} .ask=${ask} @answered=${this.focusNext}></bp-ask>
              ${
                ask.row === undefined
                  ? nothing
                  : html`<a
                      href="#${ask.sheet}"
                      @click=${(event: Event) => {
                        event.preventDefault();
                        send(this, 'go-to', { sheet: ask.sheet, row: ask.row, column: ask.column });
                      }}
                      >Show the cell</a
                    >`
              }
            </li>`,
        )}
      </ul>
    </details>`;
  }

  // An answered ask leaves the list; the next one, or the list's head, takes the focus.
  private async focusNext() {
    await this.updateComplete;
    const next = this.renderRoot.querySelector('bp-ask');
    if (next) await next.focusFirst();
    else this.renderRoot.querySelector('summary')?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-asks': Asks;
  }
}
