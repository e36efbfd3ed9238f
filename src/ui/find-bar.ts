import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { ColumnView, SheetView } from '../worksheet/index.ts';
import { base } from './tokens.ts';

/** Where something was found. */
export interface Found {
  readonly row: string;
  readonly column: string;
}

/** Cells looked at before the page may draw again. */
const AT_A_TIME = 4000;
const MOST = 10_000;

/**
 * Looks for words in all cells of a sheet, also those that are not drawn, without holding the page up.
 *
 * @fires found - Another find became the current one.
 * @fires only-found - Only rows with a find are wanted, by their ids.
 * @fires put-away - The bar was closed.
 */
@customElement('bp-find-bar')
export class FindBar extends LitElement {
  static override styles = [
    base,
    css`
      form {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 6px 10px;
        padding: 6px 10px;
        background: var(--wash);
        border-left: 4px solid var(--chalk);
      }
      input {
        flex: 0 1 18em;
        min-width: 8em;
        padding: 0 8px;
      }
      .count {
        min-width: 8em;
        color: var(--soft);
      }
    `,
  ];

  @property({ attribute: false }) view: SheetView | undefined;
  @property({ attribute: false }) columns: readonly ColumnView[] = [];

  @state() private words = '';
  @state() private found: readonly Found[] = [];
  @state() private at = -1;
  @state() private searching = false;

  @query('input') private readonly field!: HTMLInputElement | null;

  private search = 0;

  override focus(): void {
    void this.updateComplete.then(() => {
      this.field?.focus();
      this.field?.select();
    });
  }

  /** Goes on to the next find, or to the one before. */
  step(by: 1 | -1): void {
    if (this.found.length === 0) return;
    this.at = (this.at + by + this.found.length) % this.found.length;
    this.tell();
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.search += 1;
  }

  protected override render() {
    const { found, at, words, searching } = this;
    const count =
      words === ''
        ? ''
        : found.length === 0
          ? searching
            ? 'Looking'
            : 'Nothing like it here'
          : `${String(at + 1)} of ${String(found.length)}${searching ? ' so far' : ''}`;
    return html`<form
      role="search"
      @submit=${(event: Event) => {
        event.preventDefault();
        this.step(1);
      }}
      @keydown=${this.pressKey}
    >
      <label for="words">Find</label>
      <input
        id="words"
        autocomplete="off"
        spellcheck="false"
        .value=${words}
        @input=${(event: Event) => void this.lookFor((event.target as HTMLInputElement).value)}
      />
      <span class="count" role="status">${count}</span>
      <button type="button" ?disabled=${found.length === 0} @click=${() => this.step(-1)}>
        Before
      </button>
      <button type="submit" ?disabled=${found.length === 0}>Next</button>
      ${
        found.length === 0
          ? nothing
          : html`<button type="button" @click=${this.onlyFound}>Only these rows</button>`
      }
      <button type="button" class="plain" @click=${this.close}>Close</button>
    </form>`;
  }

  private async lookFor(words: string): Promise<void> {
    this.words = words;
    this.found = [];
    this.at = -1;
    this.search += 1;
    const { search, view } = this;
    const wanted = words.trim().toLowerCase();
    if (!view || wanted === '') return;
    this.searching = true;
    const found: Found[] = [];
    let looked = 0;
    for (let row = 0; row < view.rowCount && found.length < MOST; row += 1) {
      for (const { id } of this.columns) {
        const { text, typed } = view.cell(row, id);
        const has = text.toLowerCase().includes(wanted) || typed?.toLowerCase().includes(wanted);
        if (has === true) found.push({ row: view.rowId(row), column: id });
      }
      looked += this.columns.length;
      if (looked < AT_A_TIME) continue;
      looked = 0;
      this.show(found);
      await new Promise((resolve) => setTimeout(resolve));
      // Other words, or none, are being looked for by now.
      if (search !== this.search) return;
    }
    this.searching = false;
    this.show(found);
  }

  private show(found: readonly Found[]) {
    const isFirst = this.found.length === 0 && found.length > 0;
    this.found = [...found];
    if (!isFirst) return;
    this.at = 0;
    this.tell();
  }

  private tell() {
    const detail = this.found[this.at];
    if (detail) this.dispatchEvent(new CustomEvent<Found>('found', { detail }));
  }

  private onlyFound() {
    const detail = [...new Set(this.found.map(({ row }) => row))];
    this.dispatchEvent(new CustomEvent<readonly string[]>('only-found', { detail }));
  }

  private close() {
    this.dispatchEvent(new CustomEvent('put-away'));
  }

  private pressKey(event: KeyboardEvent) {
    if (event.key === 'Escape') this.close();
    else if (event.key === 'Enter' && event.shiftKey) this.step(-1);
    else if (event.key === 'F3') this.step(event.shiftKey ? -1 : 1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-find-bar': FindBar;
  }
}
