import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import './order-bar.ts';
import { RowOrder } from './row-order.ts';
import { seenIn, type FieldKept } from './field.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { manner, shownColumns } from './shown-columns.ts';
import { withUnit } from './unit-face.ts';
import { base } from './tokens.ts';

/** Rows shown at first, and more at each asking. */
const AT_A_TIME = 30;

/** A sheet on a phone: a block for each row, its results as lines and its entries as fields. */
@customElement('bp-rows')
export class Rows extends LitElement {
  static override styles = [
    base,
    css`
      li {
        padding: 10px 12px 12px;
        background: var(--sheet);
        border-bottom: 2px solid var(--rule);
      }
      bp-order-bar {
        padding: 0 12px;
      }
      li.now {
        border-left: 5px solid var(--chalk);
      }
      h3 {
        font-size: 20px;
      }
      h3::first-letter {
        text-transform: uppercase;
      }
      dl div {
        display: grid;
        grid-template-columns: 42% 1fr;
        align-items: baseline;
        border-bottom: 1px solid var(--rule);
      }
      dt {
        color: var(--soft);
      }
      dd button.plain {
        width: 100%;
        padding: 0;
        text-align: left;
        color: var(--ink);
        text-decoration: none;
      }
      .waiting button.plain {
        font-style: italic;
        font-weight: 400;
        color: var(--soft);
      }
      .wrong button.plain,
      .ask button.plain {
        color: var(--paint);
      }
      .wrong,
      .ask {
        border-bottom: 3px solid var(--paint-bar);
      }
      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(140px, 1fr));
        gap: 8px 12px;
        margin-top: 8px;
      }
      .totals {
        border-top: 2px solid var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  @property() current = '';

  @state() private shown = AT_A_TIME;

  private readonly order = new RowOrder(() => {
    this.requestUpdate();
  });

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const whole = this.book?.sheet(this.sheet);
    if (!whole) return nothing;
    const view = this.order.seen(whole, this.follow.version);
    const columns = shownColumns(view, false);
    const count = Math.min(this.shown, view.rowCount);
    const totals = [...view.totals()];
    return html`
      ${
        whole.rowCount > 2
          ? html`<bp-order-bar
              .view=${whole}
              .order=${this.order}
              @order-changed=${() => {
                this.requestUpdate();
              }}
            ></bp-order-bar>`
          : nothing
      }
      <ul>
        ${Array.from({ length: count }, (_, row) => this.renderRow(view, columns, row))}
        ${view.rowCount === 0 ? html`<li>Nothing here yet.</li>` : nothing}
        ${
          totals.length === 0
            ? nothing
            : html`<li class="totals">
                <h3>Total</h3>
                <dl>
                  ${totals.map(([id, text]) => {
                    const label = columns.find((column) => column.id === id)?.label ?? id;
                    return html`<div>
                      <dt>${label}</dt>
                      <dd>${text}</dd>
                    </div>`;
                  })}
                </dl>
              </li>`
        }
      </ul>
      ${
        count < view.rowCount
          ? html`<button @click=${() => (this.shown += AT_A_TIME)}>Show more rows</button>`
          : nothing
      }
      ${
        view.growable
          ? html`<button @click=${() => this.book?.addRow(view.id)}>Add a row</button>`
          : nothing
      }
    `;
  }

  private renderRow(view: SheetView, columns: readonly ColumnView[], row: number): TemplateResult {
    const id = view.rowId(row);
    return html`<li class=${id === this.current ? 'now' : ''}>
      <h3>${view.rowName(row)}</h3>
      <dl>
        ${columns.filter(({ entered }) => !entered).map((column) => this.renderResult(view, row, column))}
      </dl>
      <div class="fields">
        ${columns
          .filter(({ entered }) => entered)
          .map(
            (column) =>
              html`<bp-field
                short
                .column=${column}
                .cell=${view.cell(row, column.id)}
                @field-kept=${({ detail, currentTarget }: FieldKept) => {
                  this.book?.type(view.id, id, column.id, detail, seenIn(currentTarget));
                }}
              ></bp-field>`,
          )}
      </div>
    </li>`;
  }

  private renderResult(view: SheetView, row: number, column: ColumnView): TemplateResult {
    const cell = view.cell(row, column.id);
    const text = cell.state === 'known' ? withUnit(cell.text, column.unit) : cell.note;
    return html`<div class=${manner(cell)}>
      <dt>${column.label}</dt>
      <dd>
        <button
          class="plain"
          @click=${() => {
            send(this, 'show-working', { sheet: view.id, row: view.rowId(row), column: column.id });
          }}
        >
          ${text.trim() === '' ? '–' : setFractions(text)}<span class="spoken">, show working</span>
        </button>
      </dd>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-rows': Rows;
  }
}
