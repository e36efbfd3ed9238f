import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import { send, type FormulaPlace } from './events.ts';
import { FollowBook } from './follow-book.ts';
import './formula-field.ts';
import type { FormulaField } from './formula-field.ts';
import './new-column.ts';
import './new-sheet.ts';
import { panelStyles } from './panel-styles.ts';
import { base } from './tokens.ts';

/**
 * Where a person writes formulas of their own: another formula for a column, a column more, a sheet more.
 *
 * @fires close-formula - The panel was put away.
 * @fires say - Words for the status line.
 */
@customElement('bp-formula-panel')
export class FormulaPanel extends LitElement {
  static override styles = [
    base,
    panelStyles,
    css`
      .yours {
        color: var(--chalk);
        font-weight: 600;
      }
      code {
        display: block;
        font: inherit;
        padding: 6px 10px;
        background: var(--wash);
        border-left: 3px solid var(--rule);
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) place: FormulaPlace | undefined;

  @state() private refused = '';

  @query('bp-formula-field') private readonly field!: FormulaField | null;
  @query('h2') private readonly heading!: HTMLElement | null;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const { place, book } = this;
    if (!book || !place) return nothing;
    const view = book.sheet(place.sheet);
    return html`<aside aria-labelledby="title" @keydown=${this.pressKey}>
      <button class="close" @click=${this.close}>Close</button>
      ${this.renderBody(book, view, place)}
    </aside>`;
  }

  protected override updated(changed: PropertyValues) {
    if (!changed.has('place') || !this.place) return;
    this.refused = '';
    // The field is ready to be written in; a form is read from its heading on.
    void this.updateComplete.then(() => {
      (this.field ?? this.heading)?.focus();
    });
  }

  private renderBody(book: BookView, view: SheetView | undefined, place: FormulaPlace) {
    if (place.add === 'sheet')
      return html`<h2 id="title" tabindex="-1">Add a sheet</h2>
        <bp-new-sheet
          .book=${book}
          @made=${({ detail }: CustomEvent<string>) => {
            this.done(`Sheet ${detail} added. Undo takes it away.`);
          }}
        ></bp-new-sheet>`;
    if (!view) return nothing;
    if (place.add === 'column')
      return html`<h2 id="title" tabindex="-1">Add a column to ${view.title}</h2>
        <bp-new-column
          .book=${book}
          .sheet=${view.id}
          .row=${place.row ?? ''}
          .behind=${place.column ?? ''}
          @made=${({ detail }: CustomEvent<string>) => {
            this.done(`Column ${detail} added. Undo takes it away.`);
          }}
        ></bp-new-column>`;
    const column = view.columns.find(({ id }) => id === place.column);
    return column ? this.renderColumn(book, view, column, place) : nothing;
  }

  private renderColumn(
    book: BookView,
    view: SheetView,
    column: ColumnView,
    { row = '' }: FormulaPlace,
  ): TemplateResult {
    return html`<h2 id="title" tabindex="-1">${column.label}, ${view.title}</h2>
      <p>
        ${
          column.own === undefined
            ? html`The built-in formula stands. What you write stands over it until you put it back.`
            : html`<span class="yours"
                >${column.own === 'column' ? 'Your own column.' : 'Your own formula.'}</span
              >`
        }
      </p>
      <bp-formula-field
        .book=${book}
        .sheet=${view.id}
        .column=${column.id}
        .row=${row}
        .rowName=${rowNameOf(view, row)}
        .text=${column.formula ?? ''}
        @formula-written=${() => (this.refused = '')}
        @formula-kept=${() => {
          this.keep(book, view, column);
        }}
      ></bp-formula-field>
      ${this.refused === '' ? nothing : html`<p class="trouble" role="alert">${this.refused}</p>`}
      <p class="ways">
        <button
          @click=${() => {
            this.keep(book, view, column);
          }}
        >
          Keep this formula
        </button>
        ${
          column.own === 'formula'
            ? html`<button
                @click=${() => {
                  book.setFormula(view.id, column.id, undefined);
                  this.done(`The built-in formula of ${column.label} stands again.`);
                }}
              >
                Put the built-in one back
              </button>`
            : nothing
        }
      </p>
      ${
        column.own === 'formula' && column.builtIn !== undefined
          ? html`<h3>Built in</h3>
              <code>${column.builtIn}</code>`
          : nothing
      }`;
  }

  private keep(book: BookView, view: SheetView, column: ColumnView) {
    const text = this.field?.text.trim() ?? '';
    const wrong = book.setFormula(view.id, column.id, text === '' ? undefined : text);
    if (wrong) this.refused = `${wrong.found} ${wrong.fix}`;
    else this.done(`Formula of ${column.label}: kept. Undo takes it back.`);
  }

  private done(words: string) {
    send(this, 'say', words);
    this.close();
  }

  private pressKey(event: KeyboardEvent) {
    if (event.key === 'Escape') this.close();
  }

  private close() {
    this.dispatchEvent(new CustomEvent('close-formula'));
  }
}

function rowNameOf(view: SheetView, row: string): string {
  const place = Array.from({ length: view.rowCount }, (_, at) => at).find(
    (at) => view.rowId(at) === row,
  );
  return place === undefined ? '' : view.rowName(place);
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-formula-panel': FormulaPanel;
  }
}
