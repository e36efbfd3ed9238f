import { LitElement, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView } from '../worksheet/index.ts';
import './formula-field.ts';
import type { FormulaField } from './formula-field.ts';
import { formStyles, panelStyles } from './panel-styles.ts';
import { base } from './tokens.ts';

/**
 * A form for a sheet of one's own: what it is called, the question it answers, and where its rows come from.
 *
 * @fires made - The sheet stands; `detail` is its title.
 */
@customElement('bp-new-sheet')
export class NewSheet extends LitElement {
  static override styles = [base, panelStyles, formStyles];

  @property({ attribute: false }) book: BookView | undefined;

  @state() private follows = '';
  @state() private refused = '';

  @query('bp-formula-field') private readonly where!: FormulaField | null;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    // The job is one row, and the lines of a list are no rows to follow.
    const followed = book.sheets.filter(({ id, growable }) => id === 'holes' || growable);
    return html`<form
      @submit=${(event: Event) => {
        event.preventDefault();
        this.make(book);
      }}
    >
      <p class="line">
        <label for="title">What it is called</label>
        <input id="title" autocomplete="off" />
      </p>
      <p class="line">
        <label for="question">The question it answers</label>
        <input id="question" autocomplete="off" />
      </p>
      <p class="line">
        <label for="follows">Its rows</label>
        <select
          id="follows"
          @change=${(event: Event) => (this.follows = (event.target as HTMLSelectElement).value)}
        >
          <option value="">typed on it</option>
          ${followed.map(({ id, title }) => html`<option value=${id}>one for each row of ${title}</option>`)}
        </select>
      </p>
      ${
        this.follows === ''
          ? nothing
          : html`<div class="line">
              <bp-formula-field
                label="Only rows where, or blank for all"
                .book=${book}
                .sheet=${this.follows}
                .row=${book.sheet(this.follows)?.rowCount ? (book.sheet(this.follows)?.rowId(0) ?? '') : ''}
              ></bp-formula-field>
            </div>`
      }
      <p class="line">
        <label for="called">What a row is called aloud</label>
        <input id="called" autocomplete="off" placeholder="row" />
      </p>
      ${this.refused === '' ? nothing : html`<p class="trouble" role="alert">${this.refused}</p>`}
      <p class="ways"><button type="submit">Add the sheet</button></p>
    </form>`;
  }

  private make(book: BookView) {
    const title = this.textOf('title');
    if (title === '') {
      this.refused = 'The sheet has no name. Say what it is called.';
      return;
    }
    const wrong = book.own.addSheet({
      title,
      question: this.textOf('question'),
      follows: this.follows,
      where: this.where?.text.trim() ?? '',
      called: this.textOf('called') || 'row',
    });
    if (wrong) this.refused = `${wrong.where}: ${wrong.found} ${wrong.fix}`;
    else this.dispatchEvent(new CustomEvent<string>('made', { detail: title }));
  }

  private textOf(id: string): string {
    return this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value.trim() ?? '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-new-sheet': NewSheet;
  }
}
