import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { FileReport } from '../output/index.ts';
import { panelDialogStyles } from './panel-dialog-styles.ts';
import { base } from './tokens.ts';

/** As many lines of a kind as are listed: the file itself has them all. */
const MOST_LINES = 300;

/**
 * What became of every line of the files that were brought in, whenever somebody wants to know.
 *
 * @fires give-back - A file is wanted again as it came; `detail` is its place.
 * @fires put-away - The panel was closed.
 */
@customElement('bp-reports')
export class Reports extends LitElement {
  static override styles = [base, panelDialogStyles];

  @property({ attribute: false }) reports: readonly FileReport[] = [];
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
  }

  protected override render() {
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">Files brought in</h2>
      ${
        this.reports.length === 0
          ? html`<p>No file was brought into this job yet.</p>`
          : this.reports.map((report, place) => this.renderReport(report, place))
      }
      <p class="deeds">
        <button @click=${() => this.dialog?.close()}>Close</button>
      </p>
    </dialog>`;
  }

  private renderReport({ name, words, asked, passedOver }: FileReport, place: number) {
    return html`<section>
      <h3>${name}</h3>
      <p>${words}</p>
      ${this.renderLines(
        'Asked about',
        asked.map(({ line, question }) => html`Line ${line}: ${question}`),
      )}
      ${this.renderLines(
        'Passed over',
        passedOver.map(({ line, why, text }) => html`Line ${line}: ${why}. <code>${text}</code>`),
      )}
      <p class="deeds">
        <button
          @click=${() =>
            this.dispatchEvent(new CustomEvent<number>('give-back', { detail: place }))}
        >
          Save the file as it came<span class="spoken">: ${name}</span>
        </button>
      </p>
    </section>`;
  }

  private renderLines(title: string, lines: readonly TemplateResult[]) {
    if (lines.length === 0) return nothing;
    const left = lines.length - MOST_LINES;
    return html`<details>
      <summary>${title} (${lines.length})</summary>
      <ul>
        ${lines.slice(0, MOST_LINES).map((line) => html`<li>${line}</li>`)}
      </ul>
      ${left > 0 ? html`<p class="soft">And ${left} more.</p>` : nothing}
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-reports': Reports;
  }
}
