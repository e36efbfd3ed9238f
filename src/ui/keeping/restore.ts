import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query } from 'lit/decorators.js';
import { panelDialogStyles } from '../panel-dialog-styles.ts';
import { base } from '../tokens.ts';
import { counted } from '../waiting.ts';
import type { PlannedJob, RestoreChoice, RestorePlan } from './keeping-desk.ts';

const MOST_TOLD = 8;

/**
 * What a notebook or backup file would bring, job by job, before anything of it comes in.
 *
 * @fires restore-choice - Whether it is to come; the choices stand in the plan.
 */
@customElement('bp-restore')
export class Restore extends LitElement {
  static override styles = [
    base,
    panelDialogStyles,
    css`
      section {
        margin-top: 12px;
        padding-top: 8px;
        border-top: 1px solid var(--rule);
      }
      h3 {
        margin: 0;
      }
      label {
        display: flex;
        align-items: center;
        gap: 10px;
        min-height: var(--target);
      }
      input {
        flex: none;
        width: 22px;
        min-height: 22px;
        height: 22px;
        margin: 0;
        accent-color: var(--chalk);
      }
      .trouble {
        padding-left: 10px;
        border-left: 6px solid var(--paint-bar);
      }
    `,
  ];

  @property({ attribute: false }) plan: RestorePlan | undefined;
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
  }

  protected override render() {
    const jobs = this.plan?.jobs ?? [];
    const brings = jobs.some(
      ({ stands, choice, isRemoved }) =>
      stands === 'same' ? isRemoved : stands !== 'newer' && stands !== 'refused' && choice !== 'leave', // prettier-ignore
    );
    return html`<dialog
      aria-labelledby="head"
      @cancel=${(event: Event) => {
        event.preventDefault();
        this.answer(false);
      }}
    >
      <h2 id="head">What the file brings</h2>
      <p>${counted(jobs.length, 'job')} in it, checked whole. Nothing has changed yet.</p>
      ${jobs.map((job, place) => this.renderJob(job, place))}
      <p class="deeds">
        ${
          brings
            ? html`<button class="first" @click=${() => this.answer(true)}>Bring in</button>`
            : nothing
        }
        <button @click=${() => this.answer(false)}>Leave the file</button>
      </p>
    </dialog>`;
  }

  private renderJob(job: PlannedJob, place: number): TemplateResult {
    const { name, setAside } = job;
    const rest = setAside.length - MOST_TOLD;
    return html`<section aria-label=${name}>
      <h3>${name}</h3>
      ${this.renderStanding(job, place)}
      ${
        setAside.length === 0
          ? nothing
          : html`<p class="trouble">
              ${setAside.slice(0, MOST_TOLD).join(' ')}${rest > 0 ? ` And ${String(rest)} more.` : ''}
            </p>`
      }
    </section>`;
  }

  private renderStanding(job: PlannedJob, place: number) {
    const back = job.isRemoved ? ' It is among the removed jobs and comes back from there.' : '';
    switch (job.stands) {
      case 'absent':
        return html`<p>${postWords(job)} Is not on this device.</p>
          ${this.renderChoices(job, place, [
            ['beside', 'Bring it in'],
            ['leave', 'Leave it'],
          ])}`;
      case 'same':
        return html`<p>Is on this device already, the same to the last entry.${back}</p>`;
      case 'differs':
        return html`<p>
            ${postWords(job)} Is on this device too, and differs
            ${job.changes === 0 ? '' : `in ${counted(job.changes, 'place')}`}.${back}
          </p>
          ${this.renderChoices(job, place, [
            ['beside', 'Keep both: that of the file comes beside it'],
            ...(job.changes === 0
              ? []
              : ([['replace', 'Put that of the file in its place; Undo in the job takes it back']] as const)), // prettier-ignore
            ['leave', 'Leave it as it is here'],
          ])}`;
      default:
        return html`<p>Stays out.</p>`;
    }
  }

  private renderChoices(
    job: PlannedJob,
    place: number,
    choices: readonly (readonly [RestoreChoice, string])[],
  ): TemplateResult {
    return html`<div role="radiogroup" aria-label=${job.name}>
      ${choices.map(
        ([choice, words]) =>
          html`<label
            ><input
              type="radio"
              name="job-${place}"
              .checked=${job.choice === choice}
              @change=${() => {
                job.choice = choice;
                this.requestUpdate();
              }}
            />${words}</label
          >`,
      )}
    </div>`;
  }

  private answer(isWanted: boolean) {
    this.dialog?.close();
    this.dispatchEvent(new CustomEvent('restore-choice', { detail: isWanted }));
  }
}

function postWords({ rows }: PlannedJob): string {
  return rows === 0 ? 'No posts.' : `${counted(rows, 'post')}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-restore': Restore;
  }
}
