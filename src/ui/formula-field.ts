import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookView, Completion, FormulaCheck, FormulaWord } from '../worksheet/index.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { formulaFieldStyles } from './formula-field-styles.ts';
import { base } from './tokens.ts';

/**
 * A field for a formula: it completes names, units and functions, says of what kind the formula is and
 * what it comes to in the current row, and marks a fault under its very characters.
 *
 * @fires formula-written - The text changed.
 * @fires formula-kept - Enter was pressed on a formula without a fault.
 */
@customElement('bp-formula-field')
export class FormulaField extends LitElement {
  static override styles = [base, formulaFieldStyles];
  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  /** The column it is to stand in; blank where that is not there yet. */
  @property() column = '';
  @property() row = '';
  /** What the row is called, for the value beside the formula. */
  @property() rowName = '';
  @property() text = '';
  @property() label = 'Formula';

  @state() private completion: Completion | undefined;
  /** The word of the list that the arrow keys are on; -1 while none is. */
  @state() private picked = -1;

  @query('textarea') private readonly field!: HTMLTextAreaElement | null;

  protected readonly follow = new FollowBook(this, () => this.book);

  /** What is known of the formula as it stands. */
  get check(): FormulaCheck | undefined {
    if (!this.book || this.text.trim() === '') return undefined;
    return this.book.own.check(this.sheet, this.column, this.text, this.row);
  }

  protected override render() {
    const { check } = this;
    const words = this.completion?.words ?? [];
    return html`
      <label for="formula">${this.label}</label>
      <div class="stack">
        <pre aria-hidden="true">${this.marked(check)}</pre>
        <textarea
          id="formula"
          rows="3"
          spellcheck="false"
          autocomplete="off"
          autocapitalize="off"
          aria-autocomplete="list"
          aria-controls="words"
          aria-activedescendant=${this.picked >= 0 ? `word-${String(this.picked)}` : nothing}
          aria-invalid=${check?.problem ? 'true' : nothing}
          aria-describedby="said"
          .value=${this.text}
          @input=${this.write}
          @keydown=${this.pressKey}
          @click=${this.lookAround}
          @blur=${this.putAway}
        ></textarea>
      </div>
      ${this.renderWords(words)} ${this.renderCall()}
      <div id="said" class="said" aria-live="polite">${this.renderCheck(check)}</div>
    `;
  }

  private renderWords(words: readonly FormulaWord[]): TemplateResult {
    return html`<ul
      id="words"
      role="listbox"
      aria-label="Names that fit"
      ?hidden=${words.length === 0}
    >
      ${repeat(
        words,
        ({ insert }) => insert,
        (word, place) =>
          html`<li
            id="word-${place}"
            role="option"
            aria-selected=${String(place === this.picked)}
            @pointerdown=${(event: Event) => {
              // The field keeps the focus.
              event.preventDefault();
              this.take(word);
            }}
          >
            <strong>${word.insert}</strong> <span class="what">${word.what}</span>
            <span class="meaning">${word.meaning}</span>
            <span class="kind"
              >${word.kind}${word.source === '' ? '' : html`; ${word.source}`}</span
            >
          </li>`,
      )}
    </ul>`;
  }

  private renderCall(): TemplateResult | typeof nothing {
    const call = this.completion?.call;
    if (!call) return nothing;
    return html`<p class="call">
      ${call.name}(${call.parameters.map(
        ({ name, kind }, place) =>
          html`${place === 0 ? '' : ', '}<span class=${place === call.argument ? 'now' : ''}
              >${name}${kind === '' ? '' : `: ${kind}`}</span
            >`,
      )})${call.result === '' ? '' : html` gives ${call.result}`}.
      ${call.meaning.replace(/\.$/, '')}${call.source === '' ? '' : html`. <em>${call.source}</em>`}
    </p>`;
  }

  private renderCheck(check: FormulaCheck | undefined): TemplateResult | typeof nothing {
    if (!check) return nothing;
    if (check.problem) {
      const { found, fix } = check.problem;
      return html`<p class="trouble">${found} ${fix}</p>`;
    }
    return html`<p>Gives <strong>${check.kind}</strong>.</p>
      ${
        check.value === ''
          ? nothing
          : html`<p>
              ${this.rowName === '' ? 'Now' : this.rowName}:
              ${
                check.isKnown
                  ? html`<strong>${setFractions(check.value)}</strong>`
                  : html`<em>${check.value}</em>`
              }
            </p>`
      }`;
  }

  /** The text as it stands, with its fault marked, to lie under the field. */
  private marked(check: FormulaCheck | undefined): TemplateResult | string {
    const span = check?.problem?.span;
    if (!span) return `${this.text} `;
    const end = Math.max(span.end, span.start + 1);
    const wrong = this.text.slice(span.start, end);
    return html`${this.text.slice(0, span.start)}<mark>${wrong === '' ? ' ' : wrong}</mark>${this.text.slice(end)} `;
  }

  private write() {
    this.text = this.field?.value ?? '';
    this.lookAround();
    this.dispatchEvent(new CustomEvent('formula-written'));
  }

  private lookAround() {
    const { book, field } = this;
    if (!book || !field) return;
    this.picked = -1;
    this.completion = book.own.complete(this.sheet, this.column, field.value, field.selectionEnd);
  }

  private putAway() {
    if (this.completion) this.completion = { ...this.completion, words: [] };
    this.picked = -1;
  }

  private take({ insert }: FormulaWord) {
    const { field, completion } = this;
    if (!field || !completion) return;
    field.setRangeText(insert, completion.start, completion.end, 'end');
    field.focus();
    this.write();
  }

  private pressKey(event: KeyboardEvent) {
    if (event.isComposing) return;
    const words = this.completion?.words ?? [];
    const word = words[Math.max(0, this.picked)];
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step !== undefined && words.length > 0)
      this.picked = (this.picked + step + words.length) % words.length;
    else if (event.key === 'Tab' && word && !event.shiftKey) this.take(word);
    else if (event.key === 'Enter' && word && this.picked >= 0) this.take(word);
    else if (event.key === 'Enter') this.keep();
    else if (event.key === 'Escape' && words.length > 0) this.putAway();
    else {
      if (['ArrowLeft', 'ArrowRight', 'Home', 'End'].includes(event.key)) this.putAway();
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  private keep() {
    if (this.check && !this.check.problem) this.dispatchEvent(new CustomEvent('formula-kept'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-formula-field': FormulaField;
  }
}
