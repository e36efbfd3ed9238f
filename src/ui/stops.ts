import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { stopsAlike, type SharedStop } from '../output/index.ts';
import type { BookView } from '../worksheet/index.ts';
import { send, type Place } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

/** More cautions than this are folded away until asked for; stops never are. */
const CAUTIONS_SHOWN = 2;

/** So many rows are named at first where a stop says the same of many, and so many more at each asking. */
const ROWS_NAMED = 12;
const MORE_ROWS = 100;

/**
 * The stops and cautions of a sheet, each with its source, beside the sheet they belong to.
 *
 * @fires go-to - Somebody wants to see the row a stop is about.
 */
@customElement('bp-stops')
export class Stops extends LitElement {
  static override styles = [
    base,
    css`
      li {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        gap: 0 12px;
        padding: 6px 12px;
        margin-top: 6px;
      }
      .stop {
        border-left: 8px solid var(--paint-bar);
        background: var(--paint-wash);
      }
      .caution {
        border-left: 3px solid var(--paint-bar);
        padding: 2px 12px;
      }
      .where {
        color: var(--paint);
        font-weight: 600;
        white-space: nowrap;
      }
      .stop button.plain {
        color: var(--chalk);
      }
      .source {
        grid-column: 2;
        font-size: 14px;
        color: var(--soft);
      }
      .stop .source {
        color: var(--ink);
      }
      @media (max-width: 599px) {
        li {
          grid-template-columns: minmax(0, 1fr);
        }
        .source {
          grid-column: 1;
        }
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = '';
  @state() private all = false;
  /** How many rows are named of each stop that was asked for more, by what it says. */
  @state() private named: ReadonlyMap<string, number> = new Map();

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const stops = stopsAlike(this.book?.stops({ sheet: this.sheet }) ?? []);
    if (stops.length === 0) return nothing;
    const strong = stops.filter(({ level }) => level === 'stop').length;
    const shown = this.all ? stops : stops.slice(0, strong + CAUTIONS_SHOWN);
    const folded = stops.length - strong - CAUTIONS_SHOWN;
    return html`<ul aria-label="Stops and cautions">
        ${shown.map((stop) => this.renderStop(stop))}
      </ul>
      ${
        folded > 0
          ? html`<button
              class="plain"
              aria-expanded=${String(this.all)}
              @click=${() => (this.all = !this.all)}
            >
              ${this.all ? 'Fewer cautions' : counted(folded, 'more caution')}
            </button>`
          : nothing
      }`;
  }

  private renderStop(shared: SharedStop): TemplateResult {
    const { said, level, message, source, rows } = shared;
    const name = level === 'stop' ? 'Stop' : 'Caution';
    const named = this.named.get(said) ?? ROWS_NAMED;
    return html`<li class=${level}>
      <span class="where">${name}</span>
      <span
        >${setFractions(message)}
        ${rows
          .slice(0, named)
          .map(({ row, rowName, settle }) =>
            this.renderLink(
              rowName === '' ? 'Show it' : rowName,
              settle ?? { sheet: this.sheet, row },
            ),
          )}${rows.length === 0 && shared.settle ? this.renderLink('Put it right', shared.settle) : nothing}${
          rows.length > named
            ? html`<button
                class="plain"
                @click=${() => (this.named = new Map(this.named).set(said, named + MORE_ROWS))}
              >
                and ${counted(rows.length - named, 'more', 'more')}
              </button>`
            : nothing
        }</span
      >
      ${source === '' ? nothing : html`<span class="source">${source}</span>`}
    </li>`;
  }

  private renderLink(words: string, place: Place): TemplateResult {
    return html`<a
        href="#${place.sheet}"
        @click=${(event: Event) => {
          event.preventDefault();
          send(this, 'go-to', place);
        }}
        >${words}</a
      >${' '}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-stops': Stops;
  }
}
