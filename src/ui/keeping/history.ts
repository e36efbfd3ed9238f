import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { OpenJob } from '../desk.ts';
import { panelDialogStyles } from '../panel-dialog-styles.ts';
import { base } from '../tokens.ts';
import type { KeepingDesk, PastAct } from './keeping-desk.ts';

const AT_A_TIME = 60;

/**
 * What was done in a job during its last day, the latest first; each leads to the job as it was then.
 *
 * @fires look-back - A time was chosen; `detail` is the job as it was.
 * @fires put-away - The panel was closed.
 */
@customElement('bp-history')
export class History extends LitElement {
  static override styles = [
    base,
    panelDialogStyles,
    css`
      ol {
        margin: 12px 0 0;
        padding: 0;
        list-style: none;
      }
      li button {
        display: grid;
        grid-template-columns: 7em minmax(0, 1fr);
        gap: 12px;
        width: 100%;
        text-align: left;
        text-decoration: none;
      }
      li button:hover span {
        text-decoration: underline;
      }
      time {
        color: var(--soft);
        font-weight: 400;
      }
      .words::first-letter {
        text-transform: uppercase;
      }
    `,
  ];

  @property({ attribute: false }) desk: KeepingDesk | undefined;
  @property({ attribute: false }) job: OpenJob | undefined;

  @state() private acts: readonly PastAct[] | undefined;
  @state() private shown = AT_A_TIME;
  @state() private trouble = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
    void this.desk?.acts(this.job?.id ?? '').then((acts) => (this.acts = acts));
  }

  protected override render() {
    const { acts, shown, trouble } = this;
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">Earlier today</h2>
      <p>${introduction(acts)}</p>
      ${trouble === '' ? nothing : html`<p role="alert">${trouble}</p>`}
      <ol>
        ${acts?.slice(0, shown).map(
          (act) =>
            html`<li>
              <button class="plain" @click=${() => this.look(act)}>
                <time>${timeWords(act.at)}</time>
                <span class="words">${act.label}</span>
              </button>
            </li>`,
        )}
      </ol>
      <p class="deeds">
        ${
          (acts?.length ?? 0) > shown
            ? html`<button @click=${() => (this.shown += AT_A_TIME)}>Show earlier ones</button>`
            : nothing
        }
        <button @click=${() => this.dialog?.close()}>Close</button>
      </p>
    </dialog>`;
  }

  private async look(act: PastAct): Promise<void> {
    try {
      const past = await this.desk?.lookBack(this.job?.id ?? '', act);
      this.dispatchEvent(new CustomEvent('look-back', { detail: past, bubbles: true }));
    } catch (error) {
      this.trouble = error instanceof Error ? error.message : String(error);
    }
  }
}

function introduction(acts: readonly PastAct[] | undefined): string {
  if (!acts) return 'Reading.';
  return acts.length === 0
    ? 'Nothing was done in this job yet.'
    : 'Choose one to look at the job as it was right after it. Nothing changes until you bring it back.';
}

function timeWords(at: number): string {
  const then = new Date(at);
  const isToday = then.toDateString() === new Date().toDateString();
  return then.toLocaleString(
    undefined,
    isToday ? { timeStyle: 'medium' } : { weekday: 'short', hour: 'numeric', minute: '2-digit' },
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-history': History;
  }
}
