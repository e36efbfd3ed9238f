import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import type { BookView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import './grid.ts';
import type { Grid } from './grid.ts';
import './job-form.ts';
import type { JobForm } from './job-form.ts';
import { sheetDeeds } from './sheet-deeds.ts';
import { pictureSide, sheetPicture } from './sheet-picture.ts';
import './stops.ts';
import { base } from './tokens.ts';
import { drawInTurn } from './turns.ts';

/** The sheet that is one row, shown as a form. */
const JOB = 'job';

/** One sheet down the page: its name and question, what stops it, its picture and its rows. */
@customElement('bp-sheet')
export class Sheet extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        margin-inline: -6px;
        padding: 30px 6px 0;
        /* What is out of sight costs an edit nothing; the browser keeps the height it had. */
        content-visibility: auto;
        contain-intrinsic-size: auto 700px;
        scroll-margin-top: 4px;
      }
      .title {
        display: flex;
        flex-wrap: wrap;
        align-items: baseline;
        gap: 0 16px;
        margin-bottom: 10px;
      }
      h2 {
        font-size: 28px;
      }
      .question {
        color: var(--soft);
      }
      .editions {
        margin-bottom: 10px;
        color: var(--soft);
        font-size: 14px;
      }
      bp-stops {
        margin-bottom: 12px;
      }
      .above .picture {
        margin-bottom: 14px;
      }
      .picture {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: 20px;
        align-items: start;
      }
      .beside {
        display: grid;
        grid-template-columns: minmax(240px, 330px) minmax(0, 1fr);
        gap: 16px 28px;
        align-items: start;
      }
      .rows,
      .picture {
        min-width: 0;
      }
      @media (max-width: 1099px) {
        .beside {
          grid-template-columns: minmax(0, 1fr);
        }
        .beside .picture {
          grid-template-columns: repeat(2, minmax(0, 420px));
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  /** The id of the row that is current on the page. */
  @property() current = '';

  @query('bp-grid') private readonly grid!: Grid | null;
  @query('bp-job-form') private readonly form!: JobForm | null;
  @query('h2') private readonly heading!: HTMLElement | null;

  // The grid in it draws itself; the rest of the sheet comes after.
  protected readonly follow = new FollowBook(this, () => this.book, undefined, drawInTurn);

  /** Puts the focus on a cell of the sheet, or on its name where no cell is meant. */
  goTo(row: string | undefined, column: string | undefined): void {
    if (row === undefined && column === undefined) this.heading?.focus();
    else if (this.form && column !== undefined) this.form.goTo(column);
    else this.grid?.goTo(row, column);
  }

  // Going from row to row moves the picture and the other sheets along, each in its turn.
  protected override shouldUpdate(changed: PropertyValues): boolean {
    const isFollowing = changed.size === 1 && changed.has('current') && this.hasUpdated;
    if (isFollowing) drawInTurn(this);
    return !isFollowing;
  }

  protected override render() {
    const { book } = this;
    const view = book?.sheet(this.sheet);
    if (!book || !view) return nothing;
    return html`<section aria-labelledby="title">
      <div class="title">
        <h2 id="title" tabindex="-1">${view.title}</h2>
        <p class="question">${view.question}</p>
        ${sheetDeeds(book, view.id, this, this.current).map(
          ({ label, do: deed }) => html`<button class="plain" @click=${deed}>${label}</button>`,
        )}
      </div>
      ${view.editions === '' ? nothing : html`<p class="editions">${view.editions}</p>`}
      <bp-stops .book=${book} .sheet=${view.id}></bp-stops>
      <div class=${pictureSide(view.id)}>
        ${this.renderPicture(book)}
        <div class="rows">
          ${
            view.id === JOB
              ? html`<bp-job-form .book=${book} .sheet=${view.id}></bp-job-form>`
              : html`<bp-grid .book=${book} .sheet=${view.id} .current=${this.current}></bp-grid>`
          }
        </div>
      </div>
    </section>`;
  }

  private renderPicture(book: BookView): TemplateResult | typeof nothing {
    if (pictureSide(this.sheet) === 'none') return nothing;
    return html`<div class="picture">
      ${sheetPicture(book, this.sheet, this.current, (row) => {
        send(this, 'row-current', { sheet: this.sheet, row });
      })}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-sheet': Sheet;
  }
}
