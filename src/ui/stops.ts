import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookView, Stop } from '../worksheet/index.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { base } from './tokens.ts';
import { counted, stopsAt } from './waiting.ts';

/** The sheet that is one row, and is in sight beside its stops. */
const JOB = 'job';

/** More cautions than this are folded away until asked for; stops never are. */
const CAUTIONS_SHOWN = 2;

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

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const stops = alike(stopsAt(this.book, this.sheet));
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

  private renderStop({ level, message, source, rows }: StopOfRows): TemplateResult {
    const name = level === 'stop' ? 'Stop' : 'Caution';
    return html`<li class=${level}>
      <span class="where">${name}</span>
      <span
        >${setFractions(message)}
        ${rows.map(
          ({ row, rowName }) =>
            html`<a
                href="#${this.sheet}"
                @click=${(event: Event) => {
                  event.preventDefault();
                  send(this, 'go-to', { sheet: this.sheet, row });
                }}
                >${rowName === '' ? 'Show it' : rowName}</a
              >${' '}`,
        )}</span
      >
      ${source === '' ? nothing : html`<span class="source">${source}</span>`}
    </li>`;
  }
}

/** A stop, and all the rows where it says the same. */
interface StopOfRows extends Stop {
  readonly rows: readonly Stop[];
}

/** Stops that say the same of several rows, said once. */
function alike(stops: readonly Stop[]): readonly StopOfRows[] {
  const groups = new Map<string, StopOfRows>();
  for (const stop of stops) {
    const said = `${stop.level} ${stop.message} ${stop.source}`;
    const before = groups.get(said)?.rows ?? [];
    groups.set(said, {
      ...stop,
      rows: stop.row === undefined || stop.sheet === JOB ? before : [...before, stop],
    });
  }
  return [...groups.values()];
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-stops': Stops;
  }
}
