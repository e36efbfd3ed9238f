import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { BookView, CellView, ColumnView } from '../worksheet/index.ts';
import type { Place } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { withUnit } from './unit-face.ts';
import { base } from './tokens.ts';

/**
 * How one cell was worked out: the value, the formula in force, what it says, and where the rule
 * comes from.
 *
 * @fires close-working - The panel was put away.
 */
@customElement('bp-working')
export class Working extends LitElement {
  static override styles = [
    base,
    css`
      aside {
        position: fixed;
        top: 0;
        right: 0;
        bottom: 0;
        z-index: 20;
        width: min(400px, 100vw);
        padding: 18px 22px;
        overflow-y: auto;
        background: var(--sheet);
        border-left: 2px solid var(--ink);
      }
      h2 {
        font-size: 24px;
        outline: none;
      }
      .value {
        font-size: 28px;
        font-weight: 600;
        margin: 4px 0 10px;
      }
      dt {
        margin-top: 12px;
        font: 600 16px/1.3 var(--name-face);
        color: var(--soft);
      }
      code {
        display: block;
        font: inherit;
        padding: 6px 10px;
        margin-top: 2px;
        border-left: 3px solid var(--chalk);
        background: var(--wash);
        overflow-wrap: anywhere;
      }
      .trouble {
        color: var(--paint);
        border-left: 6px solid var(--paint-bar);
        padding-left: 10px;
      }
      .close {
        float: right;
      }
      @media (max-width: 599px) {
        aside {
          top: auto;
          max-height: 80vh;
          border-left: 0;
          border-top: 2px solid var(--ink);
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) place: Place | undefined;

  @query('h2') private readonly heading!: HTMLElement | null;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const { place } = this;
    const view = place && this.book?.sheet(place.sheet);
    const column = view?.columns.find(({ id }) => id === place?.column);
    if (!view || !column) return nothing;
    const row = Array.from({ length: view.rowCount }, (_, at) => at).find(
      (at) => view.rowId(at) === place?.row,
    );
    const cell = row === undefined ? undefined : view.cell(row, column.id);
    return html`<aside aria-labelledby="title" @keydown=${this.pressKey}>
      <button class="close" @click=${this.close}>Close</button>
      <h2 id="title" tabindex="-1">
        ${column.label}${row === undefined ? '' : `, ${view.rowName(row)}`}
      </h2>
      ${cell ? this.renderCell(column, cell) : nothing}
      <dl>
        ${said('Formula', column.formula && html`<code>${column.formula}</code>`)}
        ${said('What it is', column.help)} ${said('Where the rule comes from', column.source)}
        ${said('How far it can be trusted', column.standing)}
      </dl>
    </aside>`;
  }

  protected override updated(changed: Map<PropertyKey, unknown>) {
    if (changed.has('place') && this.place) this.heading?.focus();
  }

  private renderCell({ unit }: ColumnView, cell: CellView): TemplateResult {
    const trouble = cell.state === 'wrong' || cell.state === 'ask';
    return html`${
      cell.text === ''
        ? nothing
        : html`<p class="value">${setFractions(withUnit(cell.text, unit))}</p>`
    }
    ${
      cell.note === ''
        ? nothing
        : html`<p class=${trouble ? 'trouble' : ''}>${setFractions(cell.note)}</p>`
    }
    ${
      cell.suggested === undefined
        ? nothing
        : html`<p>Typed by hand. The formula gives ${setFractions(cell.suggested)}.</p>`
    }`;
  }

  private pressKey(event: KeyboardEvent) {
    if (event.key === 'Escape') this.close();
  }

  private close() {
    this.dispatchEvent(new CustomEvent('close-working'));
  }
}

function said(
  title: string,
  words: TemplateResult | string | undefined,
): TemplateResult | typeof nothing {
  if (words === undefined || words === '') return nothing;
  return html`<dt>${title}</dt>
    <dd>${words}</dd>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-working': Working;
  }
}
