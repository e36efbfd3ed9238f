import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { stepWords } from '../output/index.ts';
import type { BookView, Way } from '../worksheet/index.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { panelDialogStyles } from './panel-dialog-styles.ts';
import { remediesStyles } from './remedies-styles.ts';
import { base } from './tokens.ts';

/**
 * The ways of treating one post beside each other: what each takes, costs and leaves undone, with the
 * local rule on it. The one that is chosen is typed on the posts sheet, and everything follows it.
 *
 * @fires put-away - The panel was closed.
 */
@customElement('bp-remedies')
export class Remedies extends LitElement {
  static override styles = [base, panelDialogStyles, remediesStyles];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the post's row. */
  @property() row = '';

  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;
  @query('#why') private readonly why!: HTMLInputElement | null;

  protected readonly follow = new FollowBook(this, () => this.book);

  // Worked out once a change, as each is the whole job.
  private ways: readonly Way[] = [];
  private workedAt = -1;

  protected override firstUpdated() {
    this.dialog?.showModal();
  }

  protected override render() {
    const { book, row } = this;
    const posts = book?.sheet('posts');
    const at = Array.from({ length: posts?.rowCount ?? 0 }, (_, each) => each).find(
      (each) => posts?.rowId(each) === row,
    );
    if (!book?.whatIf || !posts || at === undefined) return nothing;
    if (this.workedAt !== this.follow.version) this.ways = book.whatIf.ways(row);
    this.workedAt = this.follow.version;
    const { ways } = this;
    const found = [posts.cell(at, 'cause').text, ...(book.pointers?.('posts', row, 'cause') ?? [])];
    const unfit = ways.filter(({ fits }) => !fits);
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">Remedies side by side, ${posts.rowName(at)}</h2>
      <p>${setFractions(found.filter((words) => words !== '').join('; '))}</p>
      <p class="soft">
        Each is the whole job worked out with that remedy here, less the job with this post left as
        it is.
      </p>
      <label class="why"
        >Why this one, kept with the post
        <input id="why" autocomplete="off" .value=${posts.cell(at, 'why').text} />
      </label>
      <ul class="cards">
        ${ways.filter(({ fits }) => fits).map((way) => this.renderCard(book, way))}
      </ul>
      ${
        unfit.length === 0
          ? nothing
          : html`<h3>Not for this post, as it was read</h3>
              <ul class="cards">
                ${unfit.map((way) => this.renderCard(book, way))}
              </ul>`
      }
      <p class="deeds"><button @click=${() => this.dialog?.close()}>Close</button></p>
      <p role="status">${this.said}</p>
    </dialog>`;
  }

  private renderCard(book: BookView, way: Way): TemplateResult {
    const currency = book.sheet('job')?.cell(0, 'currency').text ?? '';
    const money = (sum: number): string => `${sum.toFixed(2)} ${currency}`;
    return html`<li class=${way.stands ? 'stands' : ''}>
      <h3 class="way">${way.name}</h3>
      ${way.stops.map(
        ({ level, message }) =>
          html`<p class=${level}>
            <strong>${level === 'stop' ? 'Stop' : 'Caution'}</strong> ${setFractions(message)}
          </p>`,
      )}
      <dl>
        <dt>Adds to the price</dt>
        <dd class="sum">
          ${
            way.adds === undefined
              ? html`<em>waits for ${way.waits.replace('waits for ', '')}</em>`
              : stepWords(way.adds) === ''
                ? 'nothing'
                : stepWords(way.adds)
          }
        </dd>
        ${
          way.total === undefined
            ? nothing
            : html`<dt>The job then</dt>
                <dd>${money(way.total)}</dd>`
        }
        <dt>Hours</dt>
        <dd>${way.hours === '' ? html`<em>wait</em>` : way.hours}</dd>
        <dt>Trips, all posts</dt>
        <dd>${way.visits === '' ? html`<em>wait</em>` : way.visits}</dd>
        <dt>Materials</dt>
        <dd>${renderItems(way)}</dd>
        ${
          way.notFixed === ''
            ? nothing
            : html`<dt>Does not fix</dt>
                <dd>${way.notFixed}</dd>`
        }
      </dl>
      ${this.renderRule(book, way)}
      <button
        class=${way.fits ? 'first' : ''}
        ?disabled=${way.stands}
        aria-label="${way.stands ? 'Stands now' : 'Choose'}: ${way.name}"
        @click=${() => {
          book.whatIf?.choose(this.row, way.name, this.why?.value.trim() ?? '');
          this.said = `Chosen: ${way.name}. The list, the crew sheet and the price follow. Undo takes it back.`;
        }}
      >
        ${way.stands ? 'Stands now' : 'Choose'}
      </button>
    </li>`;
  }

  private renderRule(book: BookView, { name, rule, isBanned, banSource }: Way) {
    if (rule === undefined) return nothing;
    const type = (column: string, text: string): void => {
      book.type('methods', rule, column, text);
    };
    return html`<label class="rule"
        ><input
          type="checkbox"
          .checked=${isBanned}
          @change=${(event: Event) => {
            type('banned', (event.target as HTMLInputElement).checked ? 'yes' : 'no');
          }}
        />
        Banned here<span class="spoken">: ${name}</span></label
      >
      ${
        isBanned
          ? html`<label class="by"
              >By what rule<span class="spoken"> ${name} is banned</span>
              <input
                autocomplete="off"
                .value=${banSource}
                @change=${(event: Event) => {
                  type('ban_source', (event.target as HTMLInputElement).value.trim());
                }}
            /></label>`
          : nothing
      }`;
  }
}

function renderItems({ items, open, name }: Way): TemplateResult | string {
  if (name === 'leave' || items.length + open === 0) return 'none';
  return html`<ul>
    ${items.map(
      ({ called, count }) =>
        html`<li>${count < 0 ? '−' : ''}${String(Math.abs(count))} × ${setFractions(called)}</li>`,
    )}
    ${open === 0 ? nothing : html`<li><em>lines that wait for other posts: ${open}</em></li>`}
  </ul>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-remedies': Remedies;
  }
}
