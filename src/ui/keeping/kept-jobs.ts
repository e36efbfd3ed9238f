import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { isProblem, sentence } from '../../units/index.ts';
import type { Desk, KeptJob } from '../desk.ts';
import { base } from '../tokens.ts';

/** What was done last, and how to take it back. */
interface Done {
  readonly words: string;
  readonly undo?: () => Promise<void>;
}

/**
 * The jobs kept on this device: those in work, the finished and the removed ones, and what can be
 * done with each.
 *
 * @fires open-job - One is to be opened; `detail` is its id.
 */
@customElement('bp-kept-jobs')
export class KeptJobs extends LitElement {
  static override styles = [
    base,
    css`
      h2 {
        margin-top: 34px;
        padding-bottom: 4px;
        border-bottom: 2px solid var(--ink);
        font-size: 24px;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0 14px;
        padding: 5px 0;
        border-bottom: 1px solid var(--rule);
      }
      .open {
        padding-left: 0;
        font-size: 18px;
        text-align: left;
      }
      .when {
        flex: 1 1 14em;
        color: var(--soft);
      }
      .deeds {
        display: flex;
        flex-wrap: wrap;
      }
      .backup,
      .done {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 14px;
        margin-top: 12px;
      }
      .backup p {
        flex: 1 1 16em;
      }
      .done:empty {
        margin: 0;
      }
      details {
        margin-top: 14px;
      }
      summary {
        min-height: var(--target);
        padding: 4px 0;
        font-weight: 600;
        cursor: pointer;
      }
    `,
  ];

  @property({ attribute: false }) desk: Desk | undefined;
  @property({ attribute: false }) jobs: readonly KeptJob[] = [];

  @state() private done: Done = { words: '' };
  /** The removed job whose erasing is being asked about. */
  @state() private erasing = '';

  protected override render() {
    const { jobs, done } = this;
    const removed = jobs.filter(({ isRemoved }) => isRemoved);
    const finished = jobs.filter(({ isFinished, isRemoved }) => isFinished && !isRemoved);
    const current = jobs.filter(({ isFinished, isRemoved }) => !isFinished && !isRemoved);
    return html`<h2>Jobs on this device</h2>
      <p class="done" role="status">
        ${done.words}${
          done.undo ? html` <button @click=${() => this.undo(done)}>Undo</button>` : nothing
        }
      </p>
      ${
        current.length === 0
          ? html`<p>None in work.</p>`
          : html`<ul class="kept">
              ${current.map((job) => this.renderCurrent(job))}
            </ul>`
      }
      ${this.renderSome('Finished jobs', finished, (job) => [
        this.renderDeed('Back to work', job, () => this.finish(job, false)),
      ])}
      ${this.renderSome('Removed jobs, kept for seven days', removed, (job) => this.removedDeeds(job))}
      ${this.renderBackup(jobs.filter(({ isRemoved }) => !isRemoved))}`;
  }

  private renderCurrent(job: KeptJob): TemplateResult {
    return html`<li>
      ${this.renderOpen(job)}
      <span class="when">${job.saved}</span>
      <span class="deeds">
        ${this.renderDeed('Finish', job, () => this.finish(job, true))}
        ${this.renderDeed('Copy', job, () => this.copy(job))}
        ${this.renderDeed('Remove', job, () => this.takeOff(job))}
      </span>
    </li>`;
  }

  private renderSome(
    title: string,
    jobs: readonly KeptJob[],
    deeds: (job: KeptJob) => readonly (TemplateResult | typeof nothing)[],
  ) {
    if (jobs.length === 0) return nothing;
    return html`<details>
      <summary>${title} (${jobs.length})</summary>
      <ul>
        ${jobs.map(
          (job) =>
            html`<li>
              ${job.isRemoved ? html`<span class="open">${job.name}</span>` : this.renderOpen(job)}
              <span class="when">${job.saved}</span>
              <span class="deeds">${deeds(job)}</span>
            </li>`,
        )}
      </ul>
    </details>`;
  }

  private removedDeeds(job: KeptJob): readonly TemplateResult[] {
    const putBack = this.renderDeed('Put back', job, () => this.putBack(job));
    if (this.erasing !== job.id)
      return [putBack, this.renderDeed('Erase', job, () => void (this.erasing = job.id))];
    return [
      html`<span>No undo for this.</span>`,
      this.renderDeed('Erase for good', job, () => this.erase(job)),
      this.renderDeed('Keep', job, () => void (this.erasing = '')),
    ];
  }

  private renderOpen({ id, name }: KeptJob): TemplateResult {
    return html`<button
      class="plain open"
      @click=${() => this.dispatchEvent(new CustomEvent('open-job', { detail: id }))}
    >
      ${name}
    </button>`;
  }

  private renderDeed(
    word: string,
    { name }: KeptJob,
    deed: () => Promise<void> | undefined,
  ): TemplateResult {
    return html`<button class="plain" @click=${() => void this.attempt(deed)}>
      ${word}<span class="spoken"> ${name}</span>
    </button>`;
  }

  private renderBackup(jobs: readonly KeptJob[]) {
    const behind = jobs.filter(({ isBehind }) => isBehind);
    if (jobs.length === 0) return nothing;
    const [only] = behind;
    const words =
      behind.length > 1
        ? `${String(behind.length)} jobs have work in them that is in no backup.`
        : only
          ? `${only.name}: ${only.backup ?? ''}.`
          : 'All work is in a backup.';
    return html`<div class="backup">
      <p>${words}</p>
      <button
        @click=${() =>
          this.dispatchEvent(new CustomEvent('open-room', { bubbles: true, composed: true }))}
      >
        Backups and room
      </button>
    </div>`;
  }

  private async finish({ id, name }: KeptJob, isOn: boolean): Promise<void> {
    await this.desk?.keeping.mark(id, 'archivedAt', isOn);
    this.done = {
      words: isOn ? `${name} is with the finished jobs.` : `${name} is in work again.`,
      undo: async () => this.desk?.keeping.mark(id, 'archivedAt', !isOn),
    };
  }

  private async takeOff({ id, name }: KeptJob): Promise<void> {
    await this.desk?.keeping.mark(id, 'removedAt', true);
    this.done = {
      words: `${name} is removed. It can be put back for seven days.`,
      undo: async () => this.desk?.keeping.mark(id, 'removedAt', false),
    };
  }

  private async putBack({ id, name }: KeptJob): Promise<void> {
    await this.desk?.keeping.mark(id, 'removedAt', false);
    this.done = { words: `${name} is back.` };
  }

  private async erase({ id, name }: KeptJob): Promise<void> {
    await this.desk?.keeping.erase(id);
    this.done = { words: `${name} is erased.` };
  }

  private async copy({ id, name }: KeptJob): Promise<void> {
    const { keeping } = this.desk ?? {};
    const copy = await (await keeping?.whole())?.duplicate(id);
    if (copy === undefined) return;
    if (isProblem(copy)) this.done = { words: sentence(copy) };
    else
      this.done = {
        words: `A copy of ${name} is beside it.`,
        undo: async () => keeping?.mark(copy, 'removedAt', true),
      };
  }

  private async undo({ undo }: Done): Promise<void> {
    this.done = { words: 'Taken back.' };
    await undo?.();
  }

  private async attempt(deed: () => Promise<void> | undefined): Promise<void> {
    try {
      await deed();
    } catch (error) {
      this.done = { words: error instanceof Error ? error.message : String(error) };
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-kept-jobs': KeptJobs;
  }
}
