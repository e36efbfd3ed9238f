import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Desk, KeptJob } from './desk.ts';
import './keeping/kept-jobs.ts';
import { base } from './tokens.ts';

/** What a person chose on the start screen. */
export type StartChoice =
  | { readonly choose: 'demo' }
  | { readonly choose: 'empty' }
  | { readonly choose: 'readings'; readonly file: File }
  | { readonly choose: 'notebook'; readonly file: File }
  | { readonly choose: 'open'; readonly id: string };

/**
 * The first page: ways to begin, and the jobs kept on this device.
 *
 * @fires start-choice - Something was chosen.
 */
@customElement('bp-start')
export class Start extends LitElement {
  static override styles = [
    base,
    css`
      main {
        max-width: 860px;
        margin: 0 auto;
        padding: 7vh 24px 40px;
      }
      h1 {
        font-size: 46px;
      }
      .lead {
        max-width: 34em;
        margin-top: 6px;
        font-size: 19px;
      }
      h2 {
        margin-top: 34px;
        padding-bottom: 4px;
        border-bottom: 2px solid var(--ink);
        font-size: 24px;
      }
      .ways li {
        display: grid;
        grid-template-columns: 15em minmax(0, 1fr);
        gap: 2px 20px;
        align-items: center;
        padding: 9px 0;
        border-bottom: 1px solid var(--rule);
      }
      .ways button {
        text-align: left;
        min-height: 40px;
        border-color: var(--ink);
      }
      .ways .first {
        background: var(--chalk);
        border-color: var(--chalk);
        color: var(--on-chalk);
      }
      .dropping main {
        outline: 3px dashed var(--chalk);
        outline-offset: -8px;
      }
      .pattern {
        display: block;
        margin-top: 14px;
      }
      .pattern select {
        max-width: 100%;
      }
      .made {
        margin-top: 40px;
        font-size: 15px;
      }
      input[type='file'] {
        display: none;
      }
      @media (max-width: 599px) {
        main {
          padding: 22px 14px;
        }
        .ways li {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ];

  @property({ attribute: false }) jobs: readonly KeptJob[] = [];
  @property({ attribute: false }) desk: Desk | undefined;
  /** What went wrong last, in words. */
  @property() trouble = '';

  /** The job that was chosen to take over from; undefined for the last saved. */
  @state() private chosen: string | undefined;

  @query('#readings') private readonly readings!: HTMLInputElement | null;
  @query('#notebook') private readonly notebook!: HTMLInputElement | null;

  protected override willUpdate() {
    if (this.desk) this.desk.pattern = this.pattern;
  }

  protected override render() {
    return html`<main>
      <h1>Backplumb</h1>
      <p class="lead">
        From a tape, a level and a leaning fence to the holes, the bags and the supplier’s list,
        with the working shown. Everything stays on this device.
      </p>
      <h2>Begin</h2>
      <ul class="ways">
        ${this.renderWay(
          'Open the demo job',
          'A back run with a tree in it, to look around in.',
          () => this.choose({ choose: 'demo' }),
          'first',
        )}
        ${this.renderWay(
          'Import a CSV',
          'Readings from the crew: one line a post, or one line a hole.',
          () => this.readings?.click(),
        )}
        ${this.renderWay('Start empty', 'Type the readings here, post by post.', () =>
          this.choose({ choose: 'empty' }),
        )}
        ${this.renderWay(
          'Open a notebook file',
          'Or a backup: one that was saved from here before.',
          () => this.notebook?.click(),
        )}
      </ul>
      ${this.renderPattern()}
      <input
        id="readings"
        type="file"
        accept=".csv,.txt,.tsv,text/csv"
        tabindex="-1"
        aria-label="Readings"
        @change=${this.takeReadings}
      />
      <input
        id="notebook"
        type="file"
        accept=".json,.gz,application/json,application/gzip"
        tabindex="-1"
        aria-label="Notebook file"
        @change=${this.takeNotebook}
      />
      ${
        this.jobs.length === 0
          ? nothing
          : html`<bp-kept-jobs
              .desk=${this.desk}
              .jobs=${this.jobs}
              @open-job=${({ detail }: CustomEvent<string>) =>
                this.choose({ choose: 'open', id: detail })}
            ></bp-kept-jobs>`
      }
      <p class="made">
        <a href="/licences.txt" target="_blank" rel="noreferrer">What Backplumb is built from</a>
      </p>
    </main>`;
  }

  /** Jobs whose details a new one may take over, the last saved first. */
  private get patterns(): readonly KeptJob[] {
    return this.jobs.filter(({ isDemo, isRemoved }) => isDemo !== true && isRemoved !== true);
  }

  private get pattern(): string {
    return this.chosen ?? this.patterns[0]?.id ?? '';
  }

  private renderPattern(): TemplateResult | typeof nothing {
    if (this.patterns.length === 0) return nothing;
    return html`<label class="pattern"
      >A new job takes over company details, rates and the yard’s prices from
      <select
        @change=${(event: Event) => (this.chosen = (event.target as HTMLSelectElement).value)}
      >
        ${this.patterns.map(
          ({ id, name, saved }) =>
            html`<option value=${id} ?selected=${id === this.pattern}>${name}, ${saved}</option>`,
        )}
        <option value="" ?selected=${this.pattern === ''}>no job</option>
      </select></label
    >`;
  }

  private renderWay(label: string, words: string, deed: () => void, name = ''): TemplateResult {
    return html`<li>
      <button class=${name} @click=${deed}>${label}</button><span>${words}</span>
    </li>`;
  }

  private takeReadings() {
    const file = this.readings?.files?.[0];
    if (file) this.choose({ choose: 'readings', file });
    if (this.readings) this.readings.value = '';
  }

  private takeNotebook() {
    const file = this.notebook?.files?.[0];
    if (file) this.choose({ choose: 'notebook', file });
    if (this.notebook) this.notebook.value = '';
  }

  private choose(choice: StartChoice) {
    this.dispatchEvent(new CustomEvent<StartChoice>('start-choice', { detail: choice }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-start': Start;
  }
}
