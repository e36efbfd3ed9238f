import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { SheetView } from '../worksheet/index.ts';
import { RowOrder, stillOpen, withText } from './row-order.ts';
import { base } from './tokens.ts';

/**
 * Sorting and sifting by lists, where there are no heads of columns to press.
 *
 * @fires order-changed - The rows stand otherwise now.
 */
@customElement('bp-order-bar')
export class OrderBar extends LitElement {
  static override styles = [
    base,
    css`
      summary {
        display: flex;
        align-items: center;
        min-height: 44px;
        cursor: pointer;
        color: var(--chalk);
        font-weight: 600;
      }
      .lists {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 8px;
        padding-bottom: 10px;
      }
      label {
        display: grid;
        gap: 2px;
        font-size: 15px;
        min-width: 0;
      }
      select,
      input {
        width: 100%;
        min-width: 0;
        min-height: 44px;
        padding: 0 8px;
        color: var(--chalk);
      }
    `,
  ];

  /** The sheet as it is read, with all its rows. */
  @property({ attribute: false }) view: SheetView | undefined;
  @property({ attribute: false }) order = new RowOrder();

  private column = '';
  private way: 'descending' | 'ascending' = 'ascending';

  protected override render() {
    const { view, order } = this;
    if (!view) return html``;
    const columns = view.columns.filter(({ show }) => show === 'always');
    const words = [
      order.sorting === undefined ? '' : `by ${this.labelOf(order.sorting.column)}`,
      order.sieve === undefined ? '' : `only ${order.sieve.words}`,
    ].filter((part) => part !== '');
    return html`<details>
      <summary>Sort and sift${words.length === 0 ? '' : `: ${words.join(', ')}`}</summary>
      <div class="lists">
        ${this.renderList('Sort by', (column) => this.sort(column, this.way), [
          ['', 'as read'],
          ...columns.map(({ id, label }): [string, string] => [id, label]),
        ])}
        ${this.renderList(
          'Which first',
          (way) => this.sort(this.column, way === 'descending' ? way : 'ascending'),
          [
            ['ascending', 'smallest first'],
            ['descending', 'largest first'],
          ],
        )}
        ${this.renderList('Show', this.sift, [
          ['', 'all rows'],
          ['open', 'what waits or asks'],
        ])}
        <label
          >Only rows with
          <input autocomplete="off" enterkeyhint="done" @change=${this.siftWords} />
        </label>
      </div>
    </details>`;
  }

  private renderList(
    label: string,
    choose: (value: string) => void,
    choices: readonly (readonly [string, string])[],
  ): TemplateResult {
    return html`<label
      >${label}
      <select
        @change=${(event: Event) => {
          choose((event.target as HTMLSelectElement).value);
        }}
      >
        ${choices.map(([value, words]) => html`<option value=${value}>${words}</option>`)}
      </select></label
    >`;
  }

  private sort(column: string, way: 'descending' | 'ascending') {
    this.column = column;
    this.way = way;
    if (this.view) this.order.sort(this.view, column === '' ? undefined : { column, way });
    this.tell();
  }

  private readonly sift = (which: string) => {
    const { view } = this;
    if (!view) return;
    const shown = view.columns.filter(({ show }) => show === 'always').map(({ id }) => id);
    this.order.sift(view, which === '' ? undefined : stillOpen(shown));
    this.tell();
  };

  private siftWords(event: Event) {
    const { view } = this;
    const words = (event.target as HTMLInputElement).value.trim();
    if (!view) return;
    const ids = view.columns.map(({ id }) => id);
    this.order.sift(view, words === '' ? undefined : withText(words, ids));
    this.tell();
  }

  private labelOf(column: string): string {
    return this.view?.columns.find(({ id }) => id === column)?.label.toLowerCase() ?? column;
  }

  private tell() {
    this.requestUpdate();
    this.dispatchEvent(new CustomEvent('order-changed'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-order-bar': OrderBar;
  }
}
