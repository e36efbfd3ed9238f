import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BroughtIn } from './desk.ts';
import type { Preview, PreviewHeader } from './import-desk.ts';
import { importStyles } from './import-styles.ts';
import type { Doing } from './import-flow.ts';
import { base } from './tokens.ts';

/**
 * A crew's file before it comes in: how far its reading is, then how each header was taken and why, to be changed, and
 * the first rows as they would stand.
 *
 * @fires import-preview - A header was settled; `detail` is the promise of the file read again.
 * @fires import-take - The file is to come in; `detail` is the promise of what came of it.
 * @fires import-cancel - Nothing of the file is to come in.
 */
@customElement('bp-import')
export class ImportScreen extends LitElement {
  static override styles = [base, importStyles];

  /** The name of the file. */
  @property() name = '';
  /** How far the reading is, from 0 to 1. */
  @property({ type: Number }) share = 0;
  /** What is being done with it: it is read, coming in after it was looked at, or a job that is opened. */
  @property() doing: Doing = 'Reading';
  /** How it was understood, once it is read; undefined while something is being done. */
  @property({ attribute: false }) preview: Preview | undefined;

  @state() private settling = '';

  /** Puts the focus on the screen's head, so that it is read out and Tab leads on from there. */
  focusHead(): void {
    this.renderRoot.querySelector('h1')?.focus();
  }

  protected override render() {
    const { preview } = this;
    const doing = `${this.doing} ${this.name}`;
    return html`<main>
      <h1 tabindex="-1">${preview ? `Before ${preview.name} comes in` : doing}</h1>
      ${preview ? this.renderPreview(preview) : this.renderProgress(doing)}
    </main>`;
  }

  protected override firstUpdated() {
    this.focusHead();
  }

  private renderProgress(doing: string): TemplateResult {
    const percent = Math.round(100 * this.share);
    return html`<p class="progress">
        <progress aria-label=${doing} max="100" value=${percent}></progress>
        <span>${percent}%</span>
      </p>
      ${this.doing === 'Opening' ? nothing : this.renderCancel()}`;
  }

  private renderCancel(): TemplateResult {
    return html`<p class="deeds"><button @click=${this.cancel}>Cancel</button></p>
      <p class="soft">
        ${
          this.doing === 'Bringing in'
            ? 'Cancel takes all of it out of the notebook again.'
            : 'Until it is all read, nothing of it is in the notebook.'
        }
      </p>`;
  }

  private renderPreview(preview: Preview): TemplateResult {
    return html`<p class="summary">${preview.summary}</p>
      ${this.renderDeeds(preview)}
      ${
        preview.remembered
          ? html`<p>Headers stand as you settled them for the last file of this shape.</p>`
          : nothing
      }
      ${
        preview.notes.length === 0
          ? nothing
          : html`<ul class="notes" aria-label="How the file was read">
              ${preview.notes.map((note) => html`<li>${note}</li>`)}
            </ul>`
      }
      <h2 id="headers">What each header was taken for</h2>
      <div class="wide">
        <table aria-labelledby="headers">
          <thead>
            <tr>
              <th scope="col">In the file</th>
              <th scope="col">Fills</th>
              <th scope="col">Why</th>
            </tr>
          </thead>
          <tbody>
            ${preview.headers.map((header) => this.renderHeader(header, preview))}
          </tbody>
        </table>
      </div>
      <h2 id="rows">The first rows, as they were read</h2>
      <div class="wide" tabindex="0" role="group" aria-labelledby="rows">
        ${this.renderRows(preview.rows)}
      </div>`;
  }

  private renderDeeds(preview: Preview): TemplateResult {
    return html`<p class="deeds">
      <button
        class="first"
        @click=${() => {
          this.send('import-take', preview.bringIn());
        }}
      >
        Bring in
      </button>
      <button @click=${this.cancel}>Cancel</button>
    </p>`;
  }

  private renderHeader({ header, column, why }: PreviewHeader, preview: Preview): TemplateResult {
    return html`<tr>
      <th scope="row">${header}</th>
      <td>
        <select
          aria-label="What “${header}” fills"
          ?disabled=${this.settling !== ''}
          @change=${(event: Event) => {
            const { value } = event.target as HTMLSelectElement;
            void this.settle(preview, header, value === '' ? null : value);
          }}
        >
          <option value="" .selected=${column === null}>kept beside the row</option>
          ${preview.columns.map(
            ({ id, label }) =>
              html`<option value=${id} .selected=${id === column}>${label}</option>`,
          )}
        </select>
      </td>
      <td>${why}</td>
    </tr>`;
  }

  private renderRows([heads = [], ...rows]: Preview['rows']): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              ${row.map((cell) => html`<td>${cell}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  // The screen stays as it is until the file is read again, so that the focus stays on the header.
  private async settle(preview: Preview, header: string, column: string | null): Promise<void> {
    this.settling = header;
    const again = preview.settle(header, column);
    this.send('import-preview', again);
    try {
      await again;
    } catch {
      // Whoever heard the event says what went wrong.
    }
    this.settling = '';
    await this.updateComplete;
    const fields = [...this.renderRoot.querySelectorAll('select')];
    fields.find(({ ariaLabel }) => ariaLabel === `What “${header}” fills`)?.focus();
  }

  private readonly cancel = () => {
    this.dispatchEvent(new CustomEvent('import-cancel'));
  };

  private send(name: 'import-preview' | 'import-take', detail: Promise<Preview | BroughtIn>) {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-import': ImportScreen;
  }
}
