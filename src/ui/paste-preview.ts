import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { PastePlan } from './clipboard.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

const SHOWN_ROWS = 8;
const SHOWN_COLUMNS = 8;

/** What to do with a paste that does not fit. */
export type PasteChoice = 'here' | 'with rows' | 'leave';

/**
 * Where the cells of a paste would go, before anything is typed: shown where its shape does not fit.
 *
 * @fires paste-choice - What to do with it.
 */
@customElement('bp-paste-preview')
export class PastePreview extends LitElement {
  static override styles = [
    base,
    css`
      dialog {
        width: min(720px, calc(100vw - 24px));
        max-height: calc(100vh - 24px);
        padding: 16px 20px;
        overflow: auto;
        border: 0;
        border-left: 6px solid var(--chalk);
        background: var(--sheet);
        color: var(--ink);
        outline: 1px solid var(--outline);
      }
      dialog::backdrop {
        background: rgb(0 0 0 / 45%);
      }
      h2 {
        font-size: 24px;
        margin-bottom: 6px;
      }
      .table {
        margin: 10px 0;
        overflow-x: auto;
      }
      table {
        border-collapse: collapse;
      }
      th,
      td {
        padding: 3px 10px;
        text-align: left;
        border-bottom: 1px solid var(--rule);
        white-space: nowrap;
      }
      th {
        font: 600 16px/1.2 var(--name-face);
      }
      td {
        color: var(--chalk);
      }
      .left-out {
        color: var(--soft);
        text-decoration: line-through;
      }
      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 12px;
      }
    `,
  ];

  @property({ attribute: false }) plan: PastePlan | undefined;
  @property({ type: Boolean }) growable = false;

  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override render() {
    const { plan } = this;
    if (!plan) return nothing;
    const more = plan.added.length;
    return html`<dialog
      aria-labelledby="name"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.choose('leave');
      }}
    >
      <h2 id="name">This paste does not fit</h2>
      ${this.reasons(plan).map((reason) => html`<p>${reason}</p>`)}
      <div class="table" tabindex="0" role="region" aria-label="What would go where">
        ${this.renderTable(plan)}
      </div>
      <p class="ways">
        ${
          more > 0 && this.growable
            ? html`<button
                @click=${() => {
                  this.choose('with rows');
                }}
              >
                Add ${counted(more, 'row')} and paste ${counted(plan.cells.withRows, 'cell')}
              </button>`
            : nothing
        }
        ${
          plan.cells.here > 0
            ? html`<button
                @click=${() => {
                  this.choose('here');
                }}
              >
                Paste ${counted(plan.cells.here, 'cell')} that
                ${plan.cells.here === 1 ? 'fits' : 'fit'}
              </button>`
            : nothing
        }
        <button
          @click=${() => {
            this.choose('leave');
          }}
        >
          Leave it
        </button>
      </p>
    </dialog>`;
  }

  protected override updated() {
    if (this.dialog && !this.dialog.open) this.dialog.showModal();
  }

  private reasons({ added, pastColumns, onWorked }: PastePlan): readonly string[] {
    return [
      added.length === 0 ? '' : `${counted(added.length, 'row')} would stand below the last row.`,
      pastColumns === 0 ? '' : `${counted(pastColumns, 'cell')} would stand past the last column.`,
      onWorked === 0
        ? ''
        : `${counted(onWorked, 'cell')} would fall on columns that are worked out, and would be left out.`,
    ].filter((reason) => reason !== '');
  }

  private renderTable({ rows, columns, rowsHere }: PastePlan): TemplateResult {
    const across = columns.slice(0, SHOWN_COLUMNS);
    const rest = rows.length - SHOWN_ROWS;
    return html`<table>
        <thead>
          <tr>
            ${across.map(
              (column) =>
                html`<th scope="col">
                  ${column?.label ?? 'no column'}${column && !column.entered ? ', worked out' : ''}
                </th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${rows.slice(0, SHOWN_ROWS).map(
            (cells, down) =>
              html`<tr>
                ${across.map((column, place) => {
                  const goes = column?.entered === true && (down < rowsHere || this.growable);
                  return html`<td class=${goes ? '' : 'left-out'}>
                    ${cells[place] ?? ''}${
                      goes || (cells[place] ?? '') === ''
                        ? nothing
                        : html`<span class="spoken">, left out</span>`
                    }
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
      ${rest > 0 ? html`<p>and ${counted(rest, 'row')} more</p>` : nothing}`;
  }

  private choose(choice: PasteChoice) {
    this.dialog?.close();
    this.dispatchEvent(new CustomEvent<PasteChoice>('paste-choice', { detail: choice }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-paste-preview': PastePreview;
  }
}
