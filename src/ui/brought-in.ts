import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BroughtIn, FileQuestion } from './desk.ts';
import { base } from './tokens.ts';

/**
 * What came of a file: how many lines were read, what is asked about the file as a whole, and the
 * lines that were passed over, each with why.
 *
 * @fires brought-in - A question was answered; `detail` is the promise of what came of it.
 * @fires put-away - The account was read.
 */
@customElement('bp-brought-in')
export class BroughtInPanel extends LitElement {
  static override styles = [
    base,
    css`
      .account {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 4px 16px;
        padding: 8px 14px;
        border-left: 8px solid var(--chalk);
        background: var(--wash);
      }
      .summary {
        flex: 1 1 20em;
        font-weight: 600;
      }
      .question {
        flex-basis: 100%;
        border-left: 8px solid var(--paint-bar);
        background: var(--paint-wash);
        padding: 6px 12px;
      }
      .question button {
        margin: 6px 8px 2px 0;
      }
      details {
        flex-basis: 100%;
      }
      summary {
        min-height: 24px;
        cursor: pointer;
      }
      li {
        padding: 2px 0;
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) broughtIn: BroughtIn | undefined;

  // The screen that brought the file in is gone, and the focus with it: Tab leads on from here, to the asks.
  protected override firstUpdated() {
    const { activeElement, body } = document;
    const account = this.renderRoot.querySelector<HTMLElement>('.account');
    if (!activeElement || activeElement === body) account?.focus();
  }

  protected override render() {
    if (!this.broughtIn) return nothing;
    const { summary, questions, remarks } = this.broughtIn;
    return html`<div class="account" role="region" aria-label="What came of the file" tabindex="-1">
      <p class="summary">${summary}</p>
      <button class="plain" @click=${() => this.dispatchEvent(new CustomEvent('put-away'))}>
        Put away
      </button>
      ${questions.map((question) => this.renderQuestion(question))}
      ${
        remarks.length === 0
          ? nothing
          : html`<details>
              <summary>How each line and column was taken (${remarks.length})</summary>
              <ul>
                ${remarks.map((remark) => html`<li>${remark}</li>`)}
              </ul>
            </details>`
      }
    </div>`;
  }

  private renderQuestion(question: FileQuestion): TemplateResult {
    return html`<div class="question">
      <p>${question.question}</p>
      ${question.choices.map(
        ({ label, entry }) =>
          html`<button
            @click=${() => {
              const detail = question.answer(entry);
              this.dispatchEvent(new CustomEvent<Promise<BroughtIn>>('brought-in', { detail }));
            }}
          >
            ${label}
          </button>`,
      )}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-brought-in': BroughtInPanel;
  }
}
