import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { BroughtIn, Desk, OpenJob } from './desk.ts';
import type { FormulaPlace, Place } from './events.ts';
import type { OpenDesk } from './open-desk.ts';

/** What the panels need of the page they open over. */
export interface PanelsHost extends ReactiveControllerHost {
  readonly desk: Desk | undefined;
  readonly open: OpenDesk;
  /** Puts the focus back where a panel was opened from. */
  returnTo(place: Place): void;
}

/** Panels that stand over the page. */
export type Side = 'yard' | 'files' | 'what if';

/** What opens over the sheets: a cell's working, a formula, the yard's lists, the files brought in. */
export class AppPanels {
  private readonly page: PanelsHost;
  private working: Place | undefined;
  private writing: FormulaPlace | undefined;
  private side: Side | undefined;
  private remedies: Place | undefined;

  constructor(page: PanelsHost) {
    this.page = page;
  }

  readonly showWorking = ({ detail }: CustomEvent<Place>): void => {
    this.working = detail;
    this.page.requestUpdate();
  };

  readonly editFormula = ({ detail }: CustomEvent<FormulaPlace>): void => {
    this.write(detail);
  };

  write(place: FormulaPlace): void {
    this.working = undefined;
    this.writing = place;
    this.page.requestUpdate();
  }

  openSide(side: Side): void {
    this.side = side;
    this.page.requestUpdate();
  }

  readonly showRemedies = ({ detail }: CustomEvent<Place>): void => {
    this.remedies = detail;
    this.page.requestUpdate();
  };

  closeAll(): void {
    this.working = undefined;
    this.remedies = undefined;
    this.writing = undefined;
    this.side = undefined;
  }

  /** The working of a cell, the formula that is written and the remedies of a post, beside the sheets. */
  renderBeside({ book }: OpenJob): TemplateResult {
    const { working, writing, remedies } = this;
    return html`${
      working
        ? html`<bp-working
            .book=${book}
            .place=${working}
            @close-working=${() => {
              this.working = undefined;
              this.close(working);
            }}
          ></bp-working>`
        : nothing
    }
    ${
      writing
        ? html`<bp-formula-panel
            .book=${book}
            .place=${writing}
            @close-formula=${() => {
              this.writing = undefined;
              this.close(writing);
            }}
          ></bp-formula-panel>`
        : nothing
    }${
      remedies
        ? html`<bp-remedies
            .book=${book}
            .row=${remedies.row ?? ''}
            @put-away=${() => {
              this.remedies = undefined;
              this.close(remedies);
            }}
          ></bp-remedies>`
        : nothing
    }`;
  }

  renderSide(): TemplateResult | typeof nothing {
    const { side } = this;
    const { desk, open } = this.page;
    const { job } = open;
    if (!desk || !job || side === undefined) return nothing;
    const putAway = (): void => {
      this.side = undefined;
      this.page.requestUpdate();
    };
    if (side === 'yard')
      return html`<bp-yard .yard=${desk.yard} .job=${job} @put-away=${putAway}></bp-yard>`;
    if (side === 'what if')
      return html`<bp-what-if .book=${job.book} @put-away=${putAway}></bp-what-if>`;
    return html`<bp-reports
      .reports=${desk.files.reports(job)}
      @put-away=${putAway}
      @give-back=${({ detail }: CustomEvent<number>) => {
        desk.files.giveBack(job, detail);
      }}
    ></bp-reports>`;
  }

  /** What went wrong last. */
  renderTrouble(): TemplateResult | typeof nothing {
    const { open } = this.page;
    if (open.trouble === '') return nothing;
    return html`<div class="trouble" role="alert">
      <p>${open.trouble}</p>
      <button
        class="plain"
        @click=${() => {
          open.putAway('trouble');
        }}
      >
        Put away
      </button>
    </div>`;
  }

  /** What came of the file brought in last. */
  renderBroughtIn(): TemplateResult | typeof nothing {
    const { open } = this.page;
    if (!open.broughtIn) return nothing;
    return html`<bp-brought-in
      .broughtIn=${open.broughtIn}
      @brought-in=${({ detail }: CustomEvent<Promise<BroughtIn>>) => open.take(detail)}
      @put-away=${() => {
        open.putAway('broughtIn');
      }}
    ></bp-brought-in>`;
  }

  private close(place: Place): void {
    this.page.requestUpdate();
    this.page.returnTo(place);
  }
}
