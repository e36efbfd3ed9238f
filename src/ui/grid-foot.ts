import { html, nothing, type TemplateResult } from 'lit';
import type { CellView, ColumnView, SheetView } from '../worksheet/view.ts';
import { hiddenCount } from './shown-columns.ts';

/** What the buttons under a grid do. */
export interface FootDeeds {
  readonly showMore: () => void;
  readonly addRow: () => void;
  readonly removeRow: () => void;
  readonly showWorking: () => void;
}

/** The line under a grid: what there is to say about the current cell, and what can be done here. */
export function gridFoot(
  view: SheetView,
  column: ColumnView | undefined,
  cell: CellView | undefined,
  row: number,
  more: boolean,
  deeds: FootDeeds,
): TemplateResult {
  const hidden = hiddenCount(view);
  const rowName = row < view.rowCount ? view.rowName(row) : '';
  return html`<div class="foot">
    <p class="note">
      ${column && cell && (cell.note !== '' || column.help !== '') ? noteOf(column, cell, rowName) : nothing}
    </p>
    ${
      column?.formula === undefined || rowName === ''
        ? nothing
        : html`<button class="plain" @click=${deeds.showWorking}>Working</button>`
    }
    ${
      hidden === 0
        ? nothing
        : html`<button class="plain" aria-pressed=${String(more)} @click=${deeds.showMore}>
            ${more ? 'Fewer columns' : `More columns (${String(hidden)})`}
          </button>`
    }
    ${
      view.growable
        ? html`<button class="plain" @click=${deeds.addRow}>Add a row</button> ${
              rowName === ''
                ? nothing
                : html`<button class="plain" @click=${deeds.removeRow}>Remove ${rowName}</button>`
            }`
        : nothing
    }
  </div>`;
}

function noteOf(column: ColumnView, cell: CellView, rowName: string): TemplateResult {
  const trouble = cell.state === 'wrong' || cell.state === 'ask';
  return html`<strong>${column.label}, ${rowName}:</strong> ${
      cell.note === ''
        ? column.help
        : html`<span id="note" class=${trouble ? 'trouble' : ''}>${cell.note}</span>`
    }`;
}
