import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { OpenJob } from '../desk.ts';
import { panelDialogStyles } from '../panel-dialog-styles.ts';
import { base } from '../tokens.ts';
import type { KeepingDesk, Room } from './keeping-desk.ts';

/** Gives jobs out as a file and says what came of it. */
export type SaveJobs = (ids: readonly string[] | undefined, isPacked: boolean) => Promise<string>;

/**
 * Backups, the room this browser gives, and what it promises about it.
 *
 * @fires put-away - The panel was closed.
 */
@customElement('bp-room')
export class RoomPanel extends LitElement {
  static override styles = [
    base,
    panelDialogStyles,
    css`
      h3 {
        margin-bottom: 2px;
      }
      dl {
        display: grid;
        grid-template-columns: max-content minmax(0, 1fr);
        gap: 2px 18px;
      }
      dt {
        color: var(--soft);
      }
      label {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: var(--target);
        margin-top: 6px;
      }
      input {
        width: 22px;
        min-height: 22px;
        height: 22px;
        margin: 0;
        accent-color: var(--chalk);
      }
      [role='status'] {
        margin-top: 8px;
        font-weight: 600;
      }
    `,
  ];

  @property({ attribute: false }) desk: KeepingDesk | undefined;
  @property({ attribute: false }) job: OpenJob | undefined;
  @property({ attribute: false }) save: SaveJobs | undefined;

  @state() private room: Room | undefined;
  @state() private isPacked = false;
  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
    void this.look();
  }

  protected override render() {
    const { job, room } = this;
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">Backups and room</h2>
      <h3>A backup</h3>
      <p>
        One file that can be read by eye. It comes back with “Open a notebook file” on the first
        page, which says what it brings before anything changes.
      </p>
      <label
        ><input
          type="checkbox"
          .checked=${this.isPacked}
          @change=${() => (this.isPacked = !this.isPacked)}
        />
        Packed with gzip, to send it</label
      >
      <p class="deeds">
        ${
          job
            ? html`<button class="first" @click=${() => this.give([job.id])}>
                Back up this job
              </button>`
            : nothing
        }
        <button class=${job ? '' : 'first'} @click=${() => this.give(undefined)}>
          Back up all jobs
        </button>
      </p>
      <h3>Room on this device</h3>
      ${room ? this.renderRoom(room) : nothing}
      <p class="deeds"><button @click=${() => this.dialog?.close()}>Close</button></p>
      <p role="status">${this.said}</p>
    </dialog>`;
  }

  private renderRoom({ used, free, isPromised }: Room): TemplateResult {
    return html`<dl>
        <dt>Used by all jobs</dt>
        <dd>${sizeWords(used)}</dd>
        <dt>Free for more</dt>
        <dd>${sizeWords(free)}</dd>
      </dl>
      <p>
        ${
          isPromised
            ? 'This browser promised to keep it until you clear it yourself.'
            : 'This browser may clear it when the device runs out of room. Safari may clear a page that was not visited for seven days. Keep a backup elsewhere.'
        }
      </p>
      <p>
        Saved means that the browser was asked to write to the disk and said it had. Chrome and Edge
        were seen to do so; Firefox and Safari take the same order, which was not checked here.
      </p>
      ${
        isPromised
          ? nothing
          : html`<p class="deeds">
              <button @click=${this.ask}>Ask the browser to keep it</button>
            </p>`
      }`;
  }

  private async look() {
    this.room = await (await this.desk?.whole())?.room();
  }

  private async ask() {
    const isPromised = (await (await this.desk?.whole())?.askToStay()) ?? false;
    this.said = isPromised
      ? 'This browser keeps it now.'
      : 'This browser promises nothing. Backups are the safe way.';
    await this.look();
  }

  private async give(ids: readonly string[] | undefined) {
    try {
      this.said = (await this.save?.(ids, this.isPacked)) ?? '';
    } catch (error) {
      this.said = `Not saved: ${error instanceof Error ? error.message : String(error)}`;
    }
  }
}

const UNITS = ['bytes', 'KB', 'MB', 'GB', 'TB'];

function sizeWords(bytes: number | undefined): string {
  if (bytes === undefined) return 'this browser does not say';
  const step = Math.min(UNITS.length - 1, Math.floor(Math.log10(Math.max(bytes, 1)) / 3));
  const size = bytes / 1000 ** step;
  return `${size.toFixed(step === 0 || size >= 100 ? 0 : 1)} ${UNITS[step] ?? ''}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-room': RoomPanel;
  }
}
