import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
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
      #other {
        flex: 1 1 9em;
        min-width: 0;
        padding: 0 8px;
        color: var(--chalk);
      }
      .stood {
        margin: 2px 0;
        padding: 2px 8px;
        border-left: 3px solid var(--rule);
        background: var(--sheet);
        font-family: ui-monospace, monospace;
        font-size: 14px;
        white-space: pre-wrap;
        overflow-wrap: anywhere;
      }
      .all {
        display: flex;
        align-items: center;
        gap: 8px;
        min-height: var(--target);
      }
      .all input {
        width: 20px;
        height: 20px;
        min-height: 0;
        accent-color: var(--chalk);
      }
      label {
        align-self: center;
        font-size: 15px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) ask: Ask | undefined;
  /** Asks that are alike, this one among them: one answer may be for all. */
  @property({ attribute: false }) alike: readonly Ask[] = [];
  /** Finds the line of the file that a row came from, as it stood there. */
  @property({ attribute: false }) lineOf: LineOf | undefined;

  @state() private stood: string | undefined;
  @state() private forAll = false;

  @query('#other') private readonly field!: HTMLInputElement | null;

  /** Puts the focus on the first thing that answers. */
  async focusFirst(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.choices button, #other')?.focus();
  }

  override connectedCallback() {
    super.connectedCallback();
    this.addEventListener('keydown', this.pressFigure);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.removeEventListener('keydown', this.pressFigure);
  }

  protected override willUpdate(changed: PropertyValues<this>) {
    const isOther = changed.has('ask') && changed.get('ask')?.id !== this.ask?.id;
    if (isOther) this.forAll = false;
    if (isOther || changed.has('lineOf')) void this.findLine();
  }

  protected override render() {
    const { ask } = this;
    if (!ask) return nothing;
    return html`
      <p class="from">${placeWords(ask)}${ask.text === '' ? nothing : html`: “${ask.text}”`}</p>
      ${this.stood === undefined ? nothing : html`<p class="stood">${this.stood}</p>`}
      <p class="question">${ask.question}</p>
      ${this.alike.length > 1 ? this.renderAlike() : nothing}
      <div class="choices">
        ${ask.choices.map(
          ({ label }, place) =>
            html`<button
              @click=${() => {
                this.choose(place);
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

  private renderAlike(): TemplateResult {
    const others = this.alike.slice(1).flatMap(({ line }) => (line === undefined ? [] : [line]));
    const shown = others.slice(0, MOST_LINES).join(', ');
    const more = others.length > MOST_LINES ? ' …' : '';
    return html`<label class="all"
      ><input
        type="checkbox"
        .checked=${this.forAll}
        @change=${(event: Event) => (this.forAll = (event.target as HTMLInputElement).checked)}
      />
      Same for all ${this.alike.length} like
      this${others.length === 0 ? '' : ` (also line ${shown}${more})`}</label
    >`;
  }

  private async findLine(): Promise<void> {
    const { ask, lineOf } = this;
    this.stood = undefined;
    if (ask?.row === undefined || !lineOf) return;
    const line = await lineOf(ask.row);
    if (ask === this.ask) this.stood = line;
  }

  // A figure picks the choice in that place, wherever in the ask the focus is but in its field.
  private readonly pressFigure = (event: KeyboardEvent) => {
    const isText = event.composedPath()[0] === this.field;
    const place = Number(event.key) - 1;
    if (isText || event.ctrlKey || event.altKey || event.metaKey) return;
    if (this.ask?.choices[place] === undefined) return;
    event.preventDefault();
    this.choose(place);
  };

  /** Answers with the choice in a place: for this ask, or for each that is alike with its own choice there. */
  private choose(place: number) {
    const { ask, book } = this;
    const entry = ask?.choices[place]?.entry;
    if (!ask || !book || entry === undefined) return;
    if (!this.forAll || this.alike.length < 2) {
      this.answer(entry);
      return;
    }
    book.typeAll(`answer ${String(this.alike.length)} of ${ask.columnLabel.toLowerCase()}`, [
      ...this.alike.flatMap(({ sheet, row, column, choices }) => {
        const text = choices[place]?.entry;
        return row === undefined || text === undefined ? [] : [{ sheet, row, column, text }];
      }),
    ]);
    send(this, 'say', `${ask.columnLabel}, ${String(this.alike.length)} like this: ${entry}.`);
    this.dispatchEvent(new CustomEvent('answered'));
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

/** Finds the line of the file that a row came from; undefined where it came from none. */
export type LineOf = (row: string) => Promise<string | undefined>;

const MOST_LINES = 12;

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
