import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { AppFiles, type FilesHost } from './app-files.ts';
import { AppPanels, type PanelsHost } from './app-panels.ts';
import { appStyles } from './app-styles.ts';
import type { LineOf } from './ask.ts';
import type { BroughtIn, Desk, OpenJob } from './desk.ts';
import type { Place } from './events.ts';
import type { HeaderDeed } from './header.ts';
import './keeping/keeping.ts';
import type { Keeping } from './keeping/keeping.ts';
import type { PastJob } from './keeping/keeping-desk.ts';
import type { Preview } from './import-desk.ts';
import type { FileComing } from './import-flow.ts';
import { OpenDesk } from './open-desk.ts';
import type { Sheet } from './sheet.ts';
import './start.ts';
import type { StartChoice } from './start.ts';
import { base } from './tokens.ts';

/** Narrower than this a job is shown as cards. */
const PHONE = '(max-width: 599px)';
/** How long words stand in the status line. */
const SAID_MS = 8000;

/**
 * The whole notebook on a screen: the start, or the open job with its sheets one under another. It
 * knows where the person is; everything else it asks of the desk.
 */
@customElement('bp-app')
export class App extends LitElement implements FilesHost, PanelsHost {
  static override styles = [base, appStyles];

  @property({ attribute: false }) desk: Desk | undefined;

  @state() private sheet = '';
  @state() private row = '';
  @state() private said = '';
  /** What may be done next, said beside the words. */
  @state() private offer: { readonly label: string; readonly deed: () => void } | undefined;
  @state() private isPhone = matchMedia(PHONE).matches;

  @query('bp-keeping') private readonly keeping!: Keeping | null;

  private readonly width = matchMedia(PHONE);
  /** Until then the sheet somebody went to stays the current one, also where the page ends too soon. */
  private heldUntil = 0;
  private quiet: ReturnType<typeof setTimeout> | undefined;
  private observed: OpenJob | undefined;
  readonly open = new OpenDesk(this, (job) => {
    this.stand(job);
  });
  private readonly files = new AppFiles(this);
  private readonly panels = new AppPanels(this);
  // A sheet is current once it crosses a line a third of the way down the screen.
  private readonly crossing = new IntersectionObserver(
    (entries) => {
      const crossed = entries.find(({ isIntersecting }) => isIntersecting)?.target;
      if (crossed && performance.now() > this.heldUntil) this.sheet = crossed.id;
    },
    { rootMargin: '-30% 0px -69% 0px' },
  );

  override connectedCallback() {
    super.connectedCallback();
    this.addEventListener('say', this.hear);
    this.width.addEventListener('change', this.noteWidth);
    document.addEventListener('keydown', this.pressKey);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.width.removeEventListener('change', this.noteWidth);
    document.removeEventListener('keydown', this.pressKey);
    this.crossing.disconnect();
  }

  protected override render() {
    const { files, panels } = this;
    return html`
      <div
        class="page"
        @go-to=${(event: CustomEvent<Place>) => this.goTo(event.detail)}
        @row-current=${this.noteRow}
        @show-working=${panels.showWorking}
        @edit-formula=${panels.editFormula}
        @show-remedies=${panels.showRemedies}
        @open-side=${({ detail }: CustomEvent<'what if'>) => {
          panels.openSide(detail);
        }}
        @give-sheet=${({ detail }: CustomEvent<Place>) => {
          files.giveSheet(detail.sheet);
        }}
        @look-back=${({ detail }: CustomEvent<PastJob | undefined>) => {
          this.open.lookBack(detail);
        }}
        @open-room=${() => this.keeping?.open('room')}
        @bring-onto=${({ detail }: CustomEvent<Place>) => {
          files.choose('readings', detail.sheet);
        }}
        @dragover=${(event: DragEvent) => {
          event.preventDefault();
        }}
        @drop=${files.drop}
      >
        <bp-keeping
          .desk=${this.desk}
          .job=${this.open.job}
          .past=${this.open.past}
          .saved=${this.open.saved}
        ></bp-keeping>
        ${this.renderPage()} ${panels.renderSide()}
      </div>
      ${files.render()}
      <div class="said">
        <p role="status">${this.said}</p>
        ${this.offer ? html`<button @click=${this.takeOffer}>${this.offer.label}</button>` : nothing}
      </div>
    `;
  }

  protected override willUpdate(changed: PropertyValues) {
    if (!changed.has('desk') || !this.desk) return;
    this.open.sitAt(this.desk);
    this.desk.askMerge = this.files.askMerge;
    this.desk.askRestore = (plan) => this.keeping?.ask(plan) ?? Promise.resolve(false);
  }

  protected override updated() {
    const job = this.open.shown;
    document.title = job ? `${job.book.name} – Backplumb` : 'Backplumb';
    const seen = this.isPhone ? undefined : job;
    if (seen === this.observed) return;
    this.observed = seen;
    this.crossing.disconnect();
    for (const sheet of this.sheets()) this.crossing.observe(sheet);
  }

  private renderPage(): TemplateResult {
    const { importing, shown: job } = this.open;
    if (importing.file) return this.renderImport(importing.file);
    return job ? this.renderJob(job) : this.renderStart();
  }

  private renderImport({ name, share, doing, preview }: FileComing): TemplateResult {
    return html`${this.panels.renderTrouble()}
      <bp-import
        .name=${name}
        .share=${share}
        .doing=${doing ?? 'Reading'}
        .preview=${preview}
        @import-preview=${({ detail }: CustomEvent<Promise<Preview>>) => this.open.lookAgain(detail)}
        @import-take=${({ detail }: CustomEvent<Promise<BroughtIn>>) => this.open.take(detail)}
        @import-cancel=${() => {
          this.open.importing.cancel();
        }}
      ></bp-import>`;
  }

  private readonly lineOf: LineOf = (row) => {
    const job = this.open.shown;
    return job && this.desk ? this.desk.files.lineOf(job, row) : Promise.resolve(undefined);
  };

  private renderStart(): TemplateResult {
    return html`${this.panels.renderTrouble()}
      <bp-start
        .desk=${this.desk}
        .jobs=${this.open.jobs}
        @start-choice=${({ detail }: CustomEvent<StartChoice>) => this.open.begin(detail)}
      ></bp-start>`;
  }

  private renderJob(job: OpenJob): TemplateResult {
    const { book } = job;
    const beside = this.panels.renderBeside(job);
    const head = html`<bp-header
      slot="head"
      .book=${book}
      .saved=${this.open.saved}
      .pages=${this.desk?.pages ?? []}
      .lists=${this.desk?.lists ?? []}
      @header-deed=${({ detail }: CustomEvent<HeaderDeed>) => {
        this.doDeed(detail);
      }}
    ></bp-header>`;
    const notices = html`<div class="notices">
      ${this.panels.renderTrouble()} ${this.panels.renderBroughtIn()}
      ${this.isPhone ? nothing : html`<bp-band .book=${book}></bp-band>`}
      <bp-asks .book=${book} .lineOf=${this.lineOf}></bp-asks>
    </div>`;
    if (this.isPhone)
      return html`<main>
          <bp-phone .book=${book} .sheet=${this.sheet} .current=${this.row}
            >${head}${notices}</bp-phone
          >
        </main>
        ${beside}`;
    return html`<div class="desk">
        <bp-string-line .book=${book} .current=${this.sheet}></bp-string-line>
        <main>
          ${head} ${notices}
          ${book.sheets.map(
            ({ id }) =>
              html`<bp-sheet
                id=${id}
                .book=${book}
                .sheet=${id}
                .current=${this.row}
                @focusin=${() => (this.sheet = id)}
              ></bp-sheet>`,
          )}
        </main>
      </div>
      ${beside}`;
  }

  private doDeed(deed: HeaderDeed) {
    const { desk } = this;
    const job = this.open.shown;
    if (!desk || !job) return;
    if (deed === 'home') location.hash = '';
    else if (deed === 'bring in') this.files.choose('readings');
    else if (deed === 'save file')
      void this.keeping?.save([job.id], false).then((said) => {
        this.say(said);
      });
    else if (deed === 'history' || deed === 'room') this.keeping?.open(deed);
    else if (deed === 'yard' || deed === 'files' || deed === 'what if') this.panels.openSide(deed);
    else if (deed === 'add sheet') this.panels.write({ sheet: this.sheet, add: 'sheet' });
    else if (deed === 'bring sheet') this.files.choose('sheet-file');
    else if (deed.startsWith('list ')) this.saveList(deed.slice('list '.length), job, desk);
    else desk.print(job, deed.slice('print '.length), this.sheet);
  }

  private saveList(id: string, job: OpenJob, desk: Desk) {
    const file = desk.saveList(job, id);
    const page = desk.lists.find((list) => list.id === id)?.page;
    const deed = (): void => {
      desk.print(job, page ?? '', this.sheet);
    };
    this.say(`Saved as ${file}, where this browser puts files.`, page && { label: 'Print it as a page', deed }); // prettier-ignore
  }

  /** Takes a place in a job that was just opened: the one taken before, where the job has it. */
  private stand(job: OpenJob | undefined) {
    this.panels.closeAll();
    const { book } = job ?? {};
    // On a phone the posts come first; the job's inputs have starting values.
    const first = (this.isPhone ? book?.sheet('posts') : undefined) ?? book?.sheets[0];
    if (!book?.sheet(this.sheet)) this.sheet = first?.id ?? '';
    this.row = job ? firstRow(job) : '';
  }

  private async goTo({ sheet, row, column }: Place): Promise<void> {
    this.heldUntil = performance.now() + 500;
    this.sheet = sheet;
    if (row !== undefined) this.row = row;
    await this.updateComplete;
    const target = this.sheets().find((one) => one.sheet === sheet);
    target?.scrollIntoView({ block: 'start', behavior: 'instant' });
    target?.goTo(row, column);
  }

  returnTo({ sheet, row, column }: Place): void {
    if (this.isPhone) return;
    this.sheets()
      .find((one) => one.sheet === sheet)
      ?.goTo(row, column);
  }

  private noteRow({ detail }: CustomEvent<Place>) {
    this.row = detail.row ?? '';
  }

  private readonly hear = ({ detail }: CustomEvent<string>) => {
    this.say(detail);
  };

  private say(words: string, offer?: App['offer'] | '') {
    clearTimeout(this.quiet);
    this.said = words;
    this.offer = offer === '' ? undefined : offer;
    this.quiet = setTimeout(this.hush, this.offer ? 3 * SAID_MS : SAID_MS);
  }

  private readonly hush = () => {
    this.said = '';
    this.offer = undefined;
  };

  private readonly takeOffer = () => {
    const deed = this.offer?.deed;
    this.hush();
    deed?.();
  };

  private readonly noteWidth = () => {
    this.isPhone = this.width.matches;
  };

  // Undo works wherever the focus is, but in a field it is the field's own.
  private readonly pressKey = (event: KeyboardEvent) => {
    const { book } = this.open.shown ?? {};
    const inField = event.composedPath()[0] instanceof HTMLInputElement;
    if (!book || inField || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const redo = key === 'y' || (key === 'z' && event.shiftKey);
    const label = redo ? book.redoLabel : key === 'z' ? book.undoLabel : undefined;
    if (label === undefined) return;
    event.preventDefault();
    if (redo) book.redo();
    else book.undo();
    this.say(`${redo ? 'Done again' : 'Taken back'}: ${label}.`);
  };

  private sheets(): Sheet[] {
    return [...this.renderRoot.querySelectorAll('bp-sheet')];
  }
}

/** The row that the pictures show at first: a hole where one is dug, else a post. */
function firstRow({ book }: OpenJob): string {
  const [sheet] = [book.sheet('holes'), book.sheet('posts')].filter(
    (one) => (one?.rowCount ?? 0) > 0,
  );
  return sheet?.rowId(0) ?? '';
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-app': App;
  }
}
