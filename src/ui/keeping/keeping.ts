import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Desk, OpenJob, SavedMark } from '../desk.ts';
import { send } from '../events.ts';
import { FollowBook } from '../follow-book.ts';
import { giveBackup } from './give-file.ts';
import './keeping-bar.ts';
import type { PastJob, RestorePlan } from './keeping-desk.ts';

/** What a button of the bar asks for. */
export type KeepingDeed = 'save file' | 'reload' | 'put away' | 'bring back' | 'history' | 'to now';

/** One thing to know, and what can be done about it. */
export interface KeepingWord {
  readonly words: string;
  readonly isTrouble: boolean;
  readonly deeds: readonly (readonly [KeepingDeed, string])[];
}

/**
 * The place for everything about how jobs are kept. It knows when there is something to say or ask.
 *
 * @fires look-back - A job is to be shown as it was, or, with undefined, as it is now.
 */
@customElement('bp-keeping')
export class Keeping extends LitElement {
  @property({ attribute: false }) desk: Desk | undefined;
  /** The job on the screen, as it is now. */
  @property({ attribute: false }) job: OpenJob | undefined;
  /** The job as it was, where that is on the screen. */
  @property({ attribute: false }) past: PastJob | undefined;
  @property({ attribute: false }) saved: SavedMark | undefined;

  @state() private panel: 'history' | 'room' | undefined;
  @state() private restoring:
    { readonly plan: RestorePlan; readonly answer: (isWanted: boolean) => void } | undefined;
  /** What was put away, until it is said anew. */
  @state() private away: SavedMark | undefined;
  @state() private reminder = '';

  protected readonly follow = new FollowBook(this, () => this.job?.book);

  override createRenderRoot() {
    return this;
  }

  /** Opens what was done today, or the backups and the room. */
  open(panel: 'history' | 'room'): void {
    this.panel = panel;
  }

  /** Asks what to do with the jobs of a file; false where they are left. */
  ask(plan: RestorePlan): Promise<boolean> {
    return new Promise((answer) => {
      this.restoring = { plan, answer };
    });
  }

  /** Gives jobs out as a file: that on the screen, or all where `ids` names none. */
  async save(ids: readonly string[] | undefined, isPacked: boolean): Promise<string> {
    const { desk, job } = this;
    if (!desk) return '';
    const jobName = ids?.length === 1 && ids[0] === job?.id ? job?.book.name : undefined;
    const said = await giveBackup({ ids, jobName, isPacked }, desk.keeping.whole());
    this.reminder = '';
    return said;
  }

  protected override willUpdate(changed: PropertyValues) {
    if (changed.has('job') && this.job?.id !== (changed.get('job') as OpenJob | undefined)?.id)
      void this.remind();
  }

  protected override render() {
    const { desk, job, panel, restoring } = this;
    if (!desk) return nothing;
    const words = this.words();
    const hasClashes = (job?.book.clashes?.all().length ?? 0) > 0 && !this.past;
    const hasBar = words.length > 0 || hasClashes;
    return html`${
      hasBar
        ? html`<bp-keeping-bar
            .book=${this.past ? undefined : job?.book}
            .words=${words}
            @keeping-deed=${({ detail }: CustomEvent<KeepingDeed>) => {
              this.doDeed(detail);
            }}
          ></bp-keeping-bar>`
        : nothing
    }
    ${panel ? this.renderPanel(panel, desk) : nothing}
    ${
      restoring
        ? html`<bp-restore
            .plan=${restoring.plan}
            @restore-choice=${({ detail }: CustomEvent<boolean>) => {
              this.restoring = undefined;
              restoring.answer(detail);
            }}
          ></bp-restore>`
        : nothing
    }`;
  }

  private renderPanel(panel: 'history' | 'room', desk: Desk): TemplateResult {
    const putAway = (): void => {
      this.panel = undefined;
    };
    if (panel === 'history')
      return html`<bp-history
        .desk=${desk.keeping}
        .job=${this.job}
        @look-back=${putAway}
        @put-away=${putAway}
      ></bp-history>`;
    return html`<bp-room
      .desk=${desk.keeping}
      .job=${this.job}
      .save=${(ids: readonly string[] | undefined, isPacked: boolean) => this.save(ids, isPacked)}
      @put-away=${putAway}
    ></bp-room>`;
  }

  private words(): readonly KeepingWord[] {
    const { past, saved, job, reminder } = this;
    if (past)
      return [
        {
          words: past.words,
          isTrouble: false,
          deeds: [
            ['bring back', 'Bring this back'],
            ['history', 'Another time'],
            ['to now', 'Back to now'],
          ],
        },
      ];
    const words: KeepingWord[] = [];
    if (saved?.todo && saved !== this.away)
      words.push({ words: saved.words, isTrouble: true, deeds: deedsFor(saved.todo, job) });
    else if (reminder !== '')
      words.push({ words: reminder, isTrouble: false, deeds: deedsFor('backup', job) });
    return words;
  }

  private async remind(): Promise<void> {
    const { desk, job } = this;
    this.reminder = '';
    this.away = undefined;
    if (!desk || !job) return;
    const kept = (await desk.list()).find(({ id }) => id === job.id);
    if (this.job === job && kept?.isDue) this.reminder = `${job.book.name}: ${kept.backup ?? ''}.`;
  }

  private doDeed(deed: KeepingDeed): void {
    const { desk, job, past } = this;
    if (deed === 'reload') location.reload();
    else if (deed === 'history') this.open('history');
    else if (deed === 'save file' && job) {
      void this.save([job.id], false).then((said) => {
        send(this, 'say', said);
      });
    } else if (deed === 'put away') {
      this.away = this.saved;
      this.reminder = '';
    } else if (past) {
      this.lookAt(undefined);
      if (deed !== 'bring back' || !desk) return;
      void desk.keeping.whole().then((whole) => {
        whole.bringBack(past.document, past.backLabel);
        send(this, 'say', 'Brought back. Undo takes it away again.');
      });
    }
  }

  private lookAt(past: PastJob | undefined): void {
    this.dispatchEvent(new CustomEvent('look-back', { detail: past, bubbles: true }));
  }
}

function deedsFor(
  todo: NonNullable<SavedMark['todo']>,
  job: OpenJob | undefined,
): KeepingWord['deeds'] {
  const save = job ? ([['save file', 'Save it as a file']] as const) : [];
  if (todo === 'reload') return [['reload', 'Reload this page'], ...save];
  // What is not saved stays said until it is.
  return todo === 'save file' ? save : [...save, ['put away', 'Put away']];
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-keeping': Keeping;
  }
  interface GlobalEventHandlersEventMap {
    'look-back': CustomEvent<PastJob | undefined>;
  }
}
