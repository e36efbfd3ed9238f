import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { ComparedFile, MergeChoice } from './desk.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

const MOST_SHOWN = 200;

/**
 * What a file would change on the sheet, by post number, before any of it is applied.
 *
 * @fires merge-choice - What to do with the file.
 */
@customElement('bp-comparison')
export class ComparisonDialog extends LitElement {
  static override styles = [
    base,
    css`
      dialog {
        width: min(760px, calc(100vw - 24px));
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
      .counts {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 22px;
        font-size: 19px;
      }
      .table {
        max-height: 45vh;
        margin: 10px 0;
        overflow: auto;
      }
      table {
        border-collapse: collapse;
        width: 100%;
      }
      th,
      td {
        padding: 3px 10px;
        text-align: left;
        vertical-align: top;
        border-bottom: 1px solid var(--rule);
      }
      thead th {
        position: sticky;
        top: 0;
        background: var(--sheet);
        font: 600 16px/1.2 var(--name-face);
      }
      .before {
        color: var(--soft);
      }
      .after {
        color: var(--chalk);
        font-weight: 600;
      }
      .ways {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 12px;
      }
    `,
  ];

  @property({ attribute: false }) compared: ComparedFile | undefined;

  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override render() {
    const { compared } = this;
    if (!compared) return nothing;
    const { file, fresh, changed, same, rows = 'post', sheet = '', isGrowable = true } = compared;
    const cells = changed.reduce((sum, row) => sum + row.cells.length, 0);
    return html`<dialog
      aria-labelledby="name"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.choose('leave');
      }}
    >
      <h2 id="name">
        ${file} and ${sheet === '' ? 'the posts that are here' : `what is on ${sheet}`}
      </h2>
      <p class="counts">
        <span><strong>${fresh.length}</strong> ${isGrowable ? 'new' : 'not here'}</span>
        <span><strong>${changed.length}</strong> changed</span>
        <span><strong>${same.length}</strong> the same</span>
      </p>
      ${changed.length === 0 ? nothing : this.renderChanged(compared)}
      ${
        fresh.length === 0
          ? nothing
          : html`<p>
              ${isGrowable ? 'New' : 'Not on this sheet, and left out'}: ${listed(fresh)}.
            </p>`
      }
      ${same.length === 0 ? nothing : html`<p>The same: ${listed(same)}.</p>`}
      <p class="ways">
        ${
          (isGrowable ? fresh.length : 0) + changed.length === 0
            ? nothing
            : html`<button @click=${() => this.choose('merge')}>
                ${mergeWords(cells, isGrowable ? fresh.length : 0, rows)}
              </button>`
        }
        ${
          sheet === ''
            ? html`<button @click=${() => this.choose('return')}>
                  Take it as the return visit
                </button>
                <button @click=${() => this.choose('add')}>Add all of it as new rows</button>`
            : nothing
        }
        <button @click=${() => this.choose('leave')}>Leave the file</button>
      </p>
    </dialog>`;
  }

  protected override updated() {
    if (this.dialog && !this.dialog.open) this.dialog.showModal();
  }

  private renderChanged({ changed, rows = 'post' }: ComparedFile): TemplateResult {
    const rest = changed.length - MOST_SHOWN;
    return html`<div class="table" tabindex="0" role="region" aria-label="What would change">
        <table>
          <thead>
            <tr>
              <th scope="col">${rows.slice(0, 1).toUpperCase() + rows.slice(1)}</th>
              <th scope="col">Column</th>
              <th scope="col">Here</th>
              <th scope="col">In the file</th>
            </tr>
          </thead>
          <tbody>
            ${changed.slice(0, MOST_SHOWN).flatMap(({ post, cells }) =>
              cells.map(
                ({ label, before, after }, place) =>
                  html`<tr>
                    <th scope="row">
                      ${place === 0 ? post : html`<span class="spoken">${post}</span>`}
                    </th>
                    <td>${label}</td>
                    <td class="before">${before === '' ? '–' : before}</td>
                    <td class="after">${after}</td>
                  </tr>`,
              ),
            )}
          </tbody>
        </table>
      </div>
      ${rest > 0 ? html`<p>and ${counted(rest, rows)} more</p>` : nothing}`;
  }

  private choose(choice: MergeChoice) {
    this.dialog?.close();
    this.dispatchEvent(new CustomEvent<MergeChoice>('merge-choice', { detail: choice }));
  }
}

function mergeWords(cells: number, fresh: number, rows: string): string {
  const parts = [
    cells === 0 ? '' : `change ${counted(cells, 'cell')}`,
    fresh === 0 ? '' : `add ${counted(fresh, rows)}`,
  ].filter((part) => part !== '');
  return `Merge: ${parts.join(', ')}`;
}

function listed(posts: readonly string[]): string {
  const shown = posts.slice(0, 30).map((post) => (post === '' ? 'no number' : post));
  const rest = posts.length - shown.length;
  return `${shown.join(', ')}${rest > 0 ? ` and ${String(rest)} more` : ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-comparison': ComparisonDialog;
  }
}
