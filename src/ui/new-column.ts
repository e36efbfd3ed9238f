import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView, NewColumn as ColumnAsked, SheetView } from '../worksheet/index.ts';
import './formula-field.ts';
import type { FormulaField } from './formula-field.ts';
import { formStyles, panelStyles } from './panel-styles.ts';
import { base } from './tokens.ts';

/**
 * A form for a column of one's own: what it is called, whether it is typed or worked out, its kind and unit.
 *
 * @fires made - The column stands; `detail` is its label.
 */
@customElement('bp-new-column')
export class NewColumn extends LitElement {
  static override styles = [base, panelStyles, formStyles];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  /** The row whose value is shown beside the formula. */
  @property() row = '';
  /** The column it is to stand behind. */
  @property() behind = '';

  @state() private label = '';
  @state() private worked = false;
  @state() private kind = 'text';
  @state() private refused = '';

  @query('bp-formula-field') private readonly formula!: FormulaField | null;

  protected override render() {
    const { book } = this;
    const view = book?.sheet(this.sheet);
    if (!book || !view) return nothing;
    const id = book.own.nameFor(this.label);
    return html`<form
      @submit=${(event: Event) => {
        event.preventDefault();
        this.make(book, view);
      }}
    >
      <p class="line">
        <label for="label">What it is called</label>
        <input
          id="label"
          autocomplete="off"
          aria-describedby="name"
          @input=${(event: Event) => (this.label = (event.target as HTMLInputElement).value)}
        />
        <span id="name" class="hint">${id === '' ? nothing : html`In formulas: ${id}`}</span>
      </p>
      <fieldset class="line">
        <legend>How it is filled</legend>
        ${this.renderWay('Somebody types in it', false)}
        ${this.renderWay('A formula works it out', true)}
      </fieldset>
      ${this.worked ? this.renderFormula(book, view) : this.renderKind(book)}
      <p class="line">
        <label for="help">What it says beside it</label>
        <input id="help" autocomplete="off" />
      </p>
      <label class="check"><input id="total" type="checkbox" /> Add it up under the sheet</label>
      ${this.refused === '' ? nothing : html`<p class="trouble" role="alert">${this.refused}</p>`}
      <p class="ways"><button type="submit">Add the column</button></p>
    </form>`;
  }

  private renderWay(words: string, worked: boolean): TemplateResult {
    return html`<label class="check"
      ><input
        type="radio"
        name="way"
        .checked=${this.worked === worked}
        @change=${() => (this.worked = worked)}
      />
      ${words}</label
    >`;
  }

  private renderFormula(book: BookView, view: SheetView): TemplateResult {
    const place = Array.from({ length: view.rowCount }, (_, at) => at).find(
      (at) => view.rowId(at) === this.row,
    );
    return html`<div class="line">
      <bp-formula-field
        .book=${book}
        .sheet=${view.id}
        .row=${this.row}
        .rowName=${place === undefined ? '' : view.rowName(place)}
        @formula-kept=${() => {
          this.make(book, view);
        }}
      ></bp-formula-field>
    </div>`;
  }

  private renderKind(book: BookView): TemplateResult {
    return html`<p class="line">
        <label for="kind">What stands in it</label>
        <select
          id="kind"
          @change=${(event: Event) => (this.kind = (event.target as HTMLSelectElement).value)}
        >
          ${book.own.kinds.map(
            (kind) => html`<option value=${kind} ?selected=${kind === this.kind}>${kind}</option>`,
          )}
        </select>
      </p>
      ${
        this.kind === 'choice'
          ? html`<p class="line">
              <label for="choices">Choices, with commas between</label>
              <input id="choices" autocomplete="off" />
            </p>`
          : html`<p class="line">
              <label for="unit">Unit a bare number is taken in</label>
              <input id="unit" autocomplete="off" aria-describedby="units" />
              <span id="units" class="hint">Such as in, ft, ft^3, lb, USD; blank for none.</span>
            </p>`
      }`;
  }

  private make(book: BookView, view: SheetView) {
    const { label, worked } = this;
    if (label.trim() === '') {
      this.refused = 'The column has no name. Say what it is called.';
      return;
    }
    const check = worked ? this.formula?.check : undefined;
    if (worked && (!check || check.problem)) {
      const problem = check?.problem;
      this.refused = problem ? `${problem.found} ${problem.fix}` : 'Write the formula first.';
      return;
    }
    const asked: ColumnAsked = {
      label: label.trim(),
      kind: check?.kindId ?? this.kind,
      choices: splitChoices(this.textOf('choices')),
      unit: check?.unit ?? this.textOf('unit'),
      entry: !worked,
      formula: worked ? (this.formula?.text.trim() ?? '') : '',
      help: this.textOf('help'),
      total: this.renderRoot.querySelector<HTMLInputElement>('#total')?.checked ?? false,
      ...(this.behind !== '' && { after: this.behind }),
    };
    const wrong = book.own.addColumn(view.id, asked);
    if (wrong) this.refused = `${wrong.where}: ${wrong.found} ${wrong.fix}`;
    else this.dispatchEvent(new CustomEvent<string>('made', { detail: asked.label }));
  }

  private textOf(id: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value.trim() ?? '';
  }
}

function splitChoices(text: string): readonly string[] {
  return [...new Set(text.split(',').map((choice) => choice.trim()))].filter(
    (choice) => choice !== '',
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-new-column': NewColumn;
  }
}
