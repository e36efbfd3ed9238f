import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { Ask, BookView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { setFractions } from './fraction.ts';
import { base } from './tokens.ts';

/**
 * One thing the notebook will not guess: the question, the readings to choose from, and a field for
 * any other answer.
 *
 * @fires answered - The answer was given to the book.
 * @fires say - Words for the status line.
 */
@customElement('bp-ask')
export class AskPanel extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        padding: 10px 14px 12px;
      }
      .from {
        color: var(--soft);
        font-size: 15px;
      }
      .question {
        font-weight: 600;
      }
      .choices,
      form {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 8px;
      }
      input {
        flex: 1 1 9em;
        min-width: 0;
        padding: 0 8px;
        color: var(--chalk);
      }
      label {
        align-self: center;
        font-size: 15px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) ask: Ask | undefined;

  @query('input') private readonly field!: HTMLInputElement | null;

  /** Puts the focus on the first thing that answers. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.choices button, input')?.focus();
  }

  protected override render() {
    const { ask } = this;
    if (!ask) return nothing;
    return html`
      <p class="from">${placeWords(ask)}${ask.text === '' ? nothing : html`: “${ask.text}”`}</p>
      <p class="question">${ask.question}</p>
      <div class="choices">
        ${ask.choices.map(
          ({ label, entry }) =>
            html`<button
              @click=${() => {
                this.answer(entry);
              }}
            >
              ${setFractions(label)}
            </button>`,
        )}
      </div>
      <form @submit=${this.answerTyped}>
        <label for="other">${ask.choices.length === 0 ? 'Answer' : 'Or type it'}</label>
        <input id="other" autocomplete="off" />
        <button>Answer</button>
      </form>
    `;
  }

  private answerTyped(event: SubmitEvent) {
    event.preventDefault();
    const entry = this.field?.value.trim() ?? '';
    if (entry !== '') this.answer(entry);
    else this.field?.focus();
  }

  private answer(entry: string) {
    const { ask, book } = this;
    if (!ask || !book) return;
    book.answer(ask, entry);
    send(this, 'say', `${ask.columnLabel}, ${ask.rowName}: ${entry}.`);
    this.dispatchEvent(new CustomEvent('answered'));
  }
}

/** Where an ask stands: the line of the file, the row and the column. */
function placeWords({ line, rowName, columnLabel }: Ask): string {
  const parts = [line === undefined ? '' : `Line ${String(line)}`, rowName, columnLabel];
  return parts.filter((part) => part !== '').join(', ');
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-ask': AskPanel;
  }
}
