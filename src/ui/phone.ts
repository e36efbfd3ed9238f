import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookView, SheetView } from '../worksheet/index.ts';
import './card.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import './job-form.ts';
import './rows.ts';
import { sheetPicture } from './sheet-picture.ts';
import './stops.ts';
import './string-line.ts';
import { base } from './tokens.ts';
import { waitingAt } from './waiting.ts';

/**
 * A job on a phone: one sheet a screen, posts as cards. The string line and the job's buttons wait
 * behind the sheet's name.
 *
 * @fires go-to - Another sheet was chosen.
 * @slot head - The head of the job, shown with the string line.
 * @slot - What stands above every sheet.
 */
@customElement('bp-phone')
export class Phone extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        padding: 0 16px;
      }
      .bar {
        display: flex;
        align-items: center;
        justify-content: space-between;
        gap: 8px;
        margin: 0 -16px;
        padding: 2px 10px;
        border-bottom: 1px solid var(--rule);
      }
      .bar button {
        min-height: 44px;
      }
      .sheet-name::after {
        content: '';
        display: inline-block;
        margin-left: 8px;
        border: 5px solid transparent;
        border-top-color: currentColor;
        transform: translateY(2px);
      }
      .count {
        color: var(--paint);
      }
      h2 {
        margin-top: 10px;
        font-size: 28px;
        outline: none;
      }
      .question {
        color: var(--soft);
        margin-bottom: 8px;
      }
      bp-stops,
      bp-job-form {
        margin: 0 -16px 8px;
      }
      bp-curve {
        margin: 18px 0;
      }
      bp-rows {
        margin: 0 -16px 24px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  @property() current = '';

  @state() private menu = false;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const { book } = this;
    const view = book?.sheet(this.sheet) ?? book?.sheets[0];
    if (!book || !view) return nothing;
    const { words } = waitingAt(book, view.id);
    return html`
      <div class="bar">
        <button
          class="plain sheet-name"
          aria-expanded=${String(this.menu)}
          @click=${() => (this.menu = !this.menu)}
        >
          ${view.title}${words === '' ? nothing : html` <span class="count">${words}</span>`}
        </button>
        <button
          class="plain"
          ?disabled=${book.undoLabel === undefined}
          @click=${() => {
            const label = book.undoLabel ?? '';
            book.undo();
            send(this, 'say', `Taken back: ${label}.`);
          }}
        >
          Undo
        </button>
      </div>
      ${
        this.menu
          ? html`<slot name="head"></slot>
              <bp-string-line
                flat
                .book=${book}
                .current=${view.id}
                @go-to=${() => (this.menu = false)}
              ></bp-string-line>`
          : html`<h1 class="spoken">${book.name}</h1>
              <slot></slot>${this.renderSheet(book, view)}`
      }
    `;
  }

  private renderSheet(book: BookView, { id, title, question, editions }: SheetView) {
    if (id === 'posts')
      return html`<bp-card .book=${book} .sheet=${id} .current=${this.current}></bp-card>`;
    return html`
      <h2 tabindex="-1">${title}</h2>
      <p class="question">${question}</p>
      ${editions === '' ? nothing : html`<p class="question">${editions}</p>`}
      <bp-stops .book=${book} .sheet=${id}></bp-stops>
      ${
        id === 'job'
          ? html`<bp-job-form .book=${book} .sheet=${id}></bp-job-form>`
          : html`${sheetPicture(book, id, this.current, (row) => {
                send(this, 'row-current', { sheet: id, row });
              })} <bp-rows .book=${book} .sheet=${id} .current=${this.current}></bp-rows>`
      }
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-phone': Phone;
  }
}
