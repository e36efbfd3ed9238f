import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type {
  BookView,
  CellPlace,
  CellView,
  ColumnView,
  SheetView,
  Working as WorkedCell,
} from '../worksheet/index.ts';
import { send, type Place } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { printPage } from './print/index.ts';
import { withUnit } from './unit-face.ts';
import { base } from './tokens.ts';
import './working-detail.ts';

/**
 * How one cell was worked out: the value, the formula in force, what it says, where the rule comes
 * from, and every step; from each step one can walk back to the entry it came from.
 *
 * @fires close-working - The panel was put away.
 * @fires show-working - Somebody walked on to the working of another cell.
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
      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin: 20px 0 8px;
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

  private picked: Place | undefined;
  /** Cells gone through to get here, so that one can go back. */
  private trail: readonly Place[] = [];

  protected override render() {
    const { place, book } = this;
    if (!book || !place) return nothing;
    const view = book.sheet(place.sheet);
    const column = view?.columns.find(({ id }) => id === place.column);
    if (!view || !column) return nothing;
    const row = Array.from({ length: view.rowCount }, (_, at) => at).find(
      (at) => view.rowId(at) === place.row,
    );
    const cell = row === undefined ? undefined : view.cell(row, column.id);
    const working = book.working(view.id, place.row ?? '', column.id);
    const { formula, help, source, standing } = working ?? column;
    const pointers = working?.pointers ?? [];
    return html`<aside aria-labelledby="title" @keydown=${this.pressKey}>
      <button class="close" @click=${this.close}>Close</button>
      <h2 id="title" tabindex="-1">${working?.title ?? column.label}</h2>
      ${cell ? this.renderCell(column, cell, isSaidBelow(working)) : nothing}
      <dl>
        ${said(
          'What points there',
          pointers.length === 0
            ? undefined
            : html`<ul>
                ${pointers.map((words) => html`<li>${setFractions(words)}</li>`)}
              </ul>`,
        )}
        ${said('Formula', formula && html`<code>${formula}</code>`)} ${said('What it is', help)}
        ${said('Where the rule comes from', source)} ${said('How far it can be trusted', standing)}
      </dl>
      <bp-working-detail .working=${working} @cell-pick=${this.pick}></bp-working-detail>
      <p class="ways">
        ${this.trail.length === 0 ? nothing : html`<button @click=${this.back}>Back</button>`}
        ${
          column.formula === undefined
            ? nothing
            : html`<button @click=${this.changeFormula}>Change the formula</button>`
        }
        <button @click=${this.print}>Print ${working ? rowWords(view, row) : 'it'}</button>
      </p>
    </aside>`;
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>) {
    // A place that was not picked here starts a new walk.
    if (changed.has('place') && this.place !== this.picked) this.trail = [];
  }

  protected override updated(changed: Map<PropertyKey, unknown>) {
    if (changed.has('place') && this.place) this.heading?.focus();
  }

  private renderCell({ unit }: ColumnView, cell: CellView, isNoteBelow: boolean): TemplateResult {
    const trouble = cell.state === 'wrong' || cell.state === 'ask';
    return html`${
      cell.text === ''
        ? nothing
        : html`<p class="value">${setFractions(withUnit(cell.text, unit))}</p>`
    }
    ${
      cell.note === '' || isNoteBelow
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

  private pick({ detail }: CustomEvent<CellPlace>) {
    this.walkTo(detail, this.place ? [...this.trail, this.place] : this.trail);
  }

  private back() {
    const last = this.trail.at(-1);
    if (last) this.walkTo(last, this.trail.slice(0, -1));
  }

  private walkTo(place: Place, trail: readonly Place[]) {
    this.trail = trail;
    this.picked = place;
    send(this, 'show-working', place);
  }

  private changeFormula() {
    if (this.place) send(this, 'edit-formula', this.place);
  }

  private print() {
    const { book, place } = this;
    if (book && place) void printPage('calculation', book, { sheet: place.sheet, row: place.row });
  }

  private close() {
    this.dispatchEvent(new CustomEvent('close-working'));
  }
}

// The list below says it at more length.
function isSaidBelow(working: WorkedCell | undefined): boolean {
  return working !== undefined && working.waits.length + working.problems.length > 0;
}

function rowWords(view: SheetView, row: number | undefined): string {
  const name = row === undefined ? '' : view.rowName(row);
  return `the working of ${name === '' ? view.title.toLowerCase() : name}`;
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
