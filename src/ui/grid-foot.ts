import { html, nothing, type TemplateResult } from 'lit';
import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import type { RowOrder } from './row-order.ts';

const LONGEST_SIEVE = 18;

/** What the line under a grid is drawn from. */
export interface FootSight {
  readonly view: SheetView;
  readonly column: ColumnView | undefined;
  readonly cell: CellView | undefined;
  /** The current row's place. */
  readonly row: number;
  readonly more: boolean;
  /** How many columns are shown only once they are asked for. */
  readonly hidden: number;
  /** Whether somebody was on the grid: what is about the current cell is of no use before. */
  readonly used: boolean;
  readonly order: RowOrder;
  /** How many cells are chosen while one of them is typed into. */
  readonly choosing: number;
}

/** What the buttons under a grid do. */
export interface FootDeeds {
  readonly showMore: () => void;
  readonly addRow: () => void;
  readonly removeRow: () => void;
  readonly showWorking: () => void;
  readonly sort: () => void;
  readonly sift: () => void;
  readonly openMenu: () => void;
  readonly find: () => void;
}

/** The line under a grid: what there is to say about the current cell, and what can be done here. */
export function gridFoot(sight: FootSight, deeds: FootDeeds): TemplateResult {
  const { view, column, row, more, hidden, order, used } = sight;
  const rowName = row < view.rowCount ? view.rowName(row) : '';
  return html`<div class="foot">
    <p class="note">${used ? noteOf(sight, rowName) : nothing}</p>
    ${
      used && column?.formula !== undefined && rowName !== ''
        ? button('Working', deeds.showWorking)
        : nothing
    }
    ${order.sieve || (used && view.rowCount > 2) ? orderButtons(sight, deeds) : nothing}
    ${
      hidden === 0
        ? nothing
        : button(more ? 'Fewer columns' : `More columns (${String(hidden)})`, deeds.showMore)
    }
    ${used ? button('More to do here', deeds.openMenu) : nothing}
    ${view.rowCount > 2 ? button('Find', deeds.find) : nothing}
    ${view.growable ? button('Add a row', deeds.addRow) : nothing}
    ${used && view.growable && rowName !== '' ? button(`Remove ${rowName}`, deeds.removeRow) : nothing}
  </div>`;
}

function orderButtons(
  { view, column, cell, order: { sorting, sieve } }: FootSight,
  { sort, sift }: FootDeeds,
): TemplateResult {
  const isHere = column !== undefined && sorting?.column === column.id;
  const next = isHere
    ? sorting.way === 'descending'
      ? 'smallest first'
      : 'as read'
    : 'largest first';
  return html`${column ? button(`${column.label}: ${next}`, sort) : nothing}
  ${
    sieve
      ? button('All rows', sift)
      : column && cell && isSieve(view, column, cell)
        ? button(`Only “${cell.text}”`, sift)
        : nothing
  }`;
}

/** A long note or a row's own name makes no sieve. */
function isSieve({ columns }: SheetView, { id }: ColumnView, { state, text }: CellView): boolean {
  return state === 'known' && text !== '' && text.length <= LONGEST_SIEVE && id !== columns[0]?.id;
}

function button(label: string, deed: () => void): TemplateResult {
  return html`<button class="plain" @click=${deed}>${label}</button>`;
}

function noteOf(
  { column, cell, choosing }: FootSight,
  rowName: string,
): TemplateResult | typeof nothing {
  if (choosing > 1)
    return html`Enter types into this cell, Ctrl+Enter into all ${choosing} chosen ones.`;
  if (!column || !cell || (cell.note === '' && column.help === '')) return nothing;
  const trouble = cell.state === 'wrong' || cell.state === 'ask';
  return html`<strong>${column.label}, ${rowName}:</strong> ${
      cell.note === ''
        ? column.help
        : html`<span id="note" class=${trouble ? 'trouble' : ''}>${cell.note}</span>`
    }`;
}
