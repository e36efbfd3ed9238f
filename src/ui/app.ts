import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { isProblem, sentence } from '../units/index.ts';
import { appStyles } from './app-styles.ts';
import type { LineOf } from './ask.ts';
import './asks.ts';
import './band.ts';
import './brought-in.ts';
import type { BroughtIn, ComparedFile, Desk, MergeChoice, OpenJob } from './desk.ts';
import type { FormulaPlace, Place } from './events.ts';
import './comparison.ts';
import './formula-panel.ts';
import './header.ts';
import type { HeaderDeed } from './header.ts';
import './import.ts';
import type { Preview } from './import-desk.ts';
import type { FileComing } from './import-flow.ts';
import { OpenDesk } from './open-desk.ts';
import './phone.ts';
import './reports.ts';
import './sheet.ts';
import type { Sheet } from './sheet.ts';
import './start.ts';
import type { StartChoice } from './start.ts';
import './string-line.ts';
import { base } from './tokens.ts';
import './working.ts';
import './yard.ts';

/** Narrower than this a job is shown as cards. */
const PHONE = '(max-width: 599px)';
/** How long words stand in the status line. */
const SAID_MS = 8000;

/**
 * The whole notebook on a screen: the start, or the open job with its sheets one under another. It
 * knows where the person is; everything else it asks of the desk.
 */
@customElement('bp-app')
export class App extends LitElement {
  static override styles = [base, appStyles];

  @property({ attribute: false }) desk: Desk | undefined;

  @state() private sheet = '';
  @state() private row = '';
  @state() private working: Place | undefined;
  @state() private comparing:
    | { readonly compared: ComparedFile; readonly resolve: (choice: MergeChoice) => void }
    | undefined;
  @state() private writing: FormulaPlace | undefined;
  @state() private panel: 'yard' | 'files' | undefined;
  @state() private said = '';
  @state() private isPhone = matchMedia(PHONE).matches;

  @query('#readings') private readonly readings!: HTMLInputElement | null;
  @query('#sheet-file') private readonly sheetFile!: HTMLInputElement | null;

  private readonly width = matchMedia(PHONE);
  /** Until then the sheet somebody went to stays the current one, also where the page ends too soon. */
  private heldUntil = 0;
  private quiet: ReturnType<typeof setTimeout> | undefined;
  private observed: OpenJob | undefined;
  private readonly open = new OpenDesk(this, (job) => {
    this.stand(job);
  });
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
    return html`
      <div
        class="page"
        @go-to=${(event: CustomEvent<Place>) => this.goTo(event.detail)}
        @row-current=${this.noteRow}
        @show-working=${(event: CustomEvent<Place>) => (this.working = event.detail)}
        @edit-formula=${({ detail }: CustomEvent<FormulaPlace>) => {
          this.working = undefined;
          this.writing = detail;
        }}
        @give-sheet=${({ detail }: CustomEvent<Place>) => {
          this.giveSheet(detail.sheet);
        }}
        @say=${(event: CustomEvent<string>) => {
          this.say(event.detail);
        }}
        @dragover=${(event: DragEvent) => {
          event.preventDefault();
        }}
        @drop=${this.dropFile}
      >
        ${this.renderPage()} ${this.renderPanel()}
      </div>
      <input
        id="readings"
        class="file"
        type="file"
        accept=".csv,.txt,.tsv,text/csv"
        tabindex="-1"
        aria-label="Readings"
        @change=${this.takeReadings}
      />
      <input
        id="sheet-file"
        class="file"
        type="file"
        accept=".json,application/json"
        tabindex="-1"
        aria-label="Shared sheet"
        @change=${this.takeSheet}
      />
      ${this.renderComparing()}
      <p class="said" role="status">${this.said}</p>
    `;
  }

  protected override willUpdate(changed: PropertyValues) {
    if (!changed.has('desk') || !this.desk) return;
    this.open.sitAt(this.desk);
    this.desk.askMerge = (compared) =>
      new Promise((resolve) => {
        this.comparing = { compared, resolve };
      });
  }

  protected override updated() {
    const { job } = this.open;
    document.title = job ? `${job.book.name} – Backplumb` : 'Backplumb';
    const seen = this.isPhone ? undefined : job;
    if (seen === this.observed) return;
    this.observed = seen;
    this.crossing.disconnect();
    for (const sheet of this.sheets()) this.crossing.observe(sheet);
  }

  private renderComparing(): TemplateResult | typeof nothing {
    const { comparing } = this;
    if (!comparing) return nothing;
    return html`<bp-comparison
      .compared=${comparing.compared}
      @merge-choice=${({ detail }: CustomEvent<MergeChoice>) => {
        this.comparing = undefined;
        comparing.resolve(detail);
      }}
    ></bp-comparison>`;
  }

  private renderPage(): TemplateResult {
    const { importing, job } = this.open;
    if (importing.file) return this.renderImport(importing.file);
    return job ? this.renderJob(job) : this.renderStart();
  }

  private renderImport({ name, share, preview }: FileComing): TemplateResult {
    return html`${this.renderTrouble()}
      <bp-import
        .name=${name}
        .share=${share}
        .preview=${preview}
        @import-preview=${({ detail }: CustomEvent<Promise<Preview>>) => this.open.lookAgain(detail)}
        @import-take=${({ detail }: CustomEvent<Promise<BroughtIn>>) => this.open.take(detail)}
        @import-cancel=${() => {
          this.open.importing.cancel();
        }}
      ></bp-import>`;
  }

  private renderPanel(): TemplateResult | typeof nothing {
    const { desk, panel } = this;
    const { job } = this.open;
    if (!desk || !job || panel === undefined) return nothing;
    const putAway = (): void => {
      this.panel = undefined;
    };
    if (panel === 'yard')
      return html`<bp-yard .yard=${desk.yard} .job=${job} @put-away=${putAway}></bp-yard>`;
    return html`<bp-reports
      .reports=${desk.files.reports(job)}
      @put-away=${putAway}
      @give-back=${({ detail }: CustomEvent<number>) => {
        desk.files.giveBack(job, detail);
      }}
    ></bp-reports>`;
  }

  private readonly lineOf: LineOf = (row) => {
    const { job } = this.open;
    return job && this.desk ? this.desk.files.lineOf(job, row) : Promise.resolve(undefined);
  };

  private renderStart(): TemplateResult {
    return html`${this.renderTrouble()}
      <bp-start
        .jobs=${this.open.jobs}
        @start-choice=${({ detail }: CustomEvent<StartChoice>) => this.open.begin(detail)}
      ></bp-start>`;
  }

  private renderJob({ book }: OpenJob): TemplateResult {
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
    const notices = html`${this.renderTrouble()} ${this.renderBroughtIn()}
      <bp-band .book=${book}></bp-band>
      <bp-asks .book=${book} .lineOf=${this.lineOf}></bp-asks>`;
    const working = html`<bp-working
      .book=${book}
      .place=${this.working}
      @close-working=${this.closeWorking}
    ></bp-working>`;
    const writing = html`<bp-formula-panel
      .book=${book}
      .place=${this.writing}
      @close-formula=${this.closeWriting}
    ></bp-formula-panel>`;
    if (this.isPhone)
      return html`<bp-phone .book=${book} .sheet=${this.sheet} .current=${this.row}
          >${head}</bp-phone
        >
        ${this.renderTrouble()} ${this.renderBroughtIn()} ${this.working ? working : nothing}
        ${this.writing ? writing : nothing}`;
    return html`<div class="desk">
        <bp-string-line .book=${book} .current=${this.sheet}></bp-string-line>
        <main>
          ${head}
          <div class="notices">${notices}</div>
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
      ${this.working ? working : nothing} ${this.writing ? writing : nothing}`;
  }

  private renderTrouble(): TemplateResult | typeof nothing {
    const { trouble } = this.open;
    if (trouble === '') return nothing;
    return html`<div class="trouble" role="alert">
      <p>${trouble}</p>
      <button
        class="plain"
        @click=${() => {
          this.open.putAway('trouble');
        }}
      >
        Put away
      </button>
    </div>`;
  }

  private renderBroughtIn(): TemplateResult | typeof nothing {
    const { broughtIn } = this.open;
    if (!broughtIn) return nothing;
    return html`<bp-brought-in
      .broughtIn=${broughtIn}
      @brought-in=${({ detail }: CustomEvent<Promise<BroughtIn>>) => this.open.take(detail)}
      @put-away=${() => {
        this.open.putAway('broughtIn');
      }}
    ></bp-brought-in>`;
  }

  private doDeed(deed: HeaderDeed) {
    const { desk } = this;
    const { job } = this.open;
    if (!desk || !job) return;
    if (deed === 'home') location.hash = '';
    else if (deed === 'bring in') this.readings?.click();
    else if (deed === 'save file') desk.saveFile(job);
    else if (deed === 'yard' || deed === 'files') this.panel = deed;
    else if (deed === 'add sheet') this.writing = { sheet: this.sheet, add: 'sheet' };
    else if (deed === 'bring sheet') this.sheetFile?.click();
    else if (deed.startsWith('list ')) desk.saveList(job, deed.slice('list '.length));
    else desk.print(job, deed.slice('print '.length));
  }

  /** Takes a place in a job that was just opened: the one taken before, where the job has it. */
  private stand(job: OpenJob | undefined) {
    this.working = undefined;
    this.writing = undefined;
    this.panel = undefined;
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

  private closeWorking() {
    const place = this.working;
    this.working = undefined;
    if (!place || this.isPhone) return;
    this.sheets()
      .find(({ sheet }) => sheet === place.sheet)
      ?.goTo(place.row, place.column);
  }

  private closeWriting() {
    const place = this.writing;
    this.writing = undefined;
    if (!place || this.isPhone) return;
    this.sheets()
      .find(({ sheet }) => sheet === place.sheet)
      ?.goTo(place.row, place.column);
  }

  private giveSheet(sheet: string) {
    const { job } = this.open;
    if (!job || !this.desk) return;
    const title = job.book.sheet(sheet)?.title ?? sheet;
    this.desk.giveFile(job.book.own.share(sheet), `${title} sheet`);
  }

  private async receiveSheet(file: File): Promise<void> {
    const { book } = this.open.job ?? {};
    const received = book?.own.receive(await file.text());
    if (!received) return;
    if (isProblem(received)) this.say(`${file.name}: ${sentence(received)}`);
    else this.say(`Taken from ${file.name}: ${received.taken.join(', ')}. Undo takes it away.`);
  }

  private noteRow({ detail }: CustomEvent<Place>) {
    this.row = detail.row ?? '';
  }

  private say(words: string) {
    clearTimeout(this.quiet);
    this.said = words;
    this.quiet = setTimeout(() => (this.said = ''), SAID_MS);
  }

  private readonly noteWidth = () => {
    this.isPhone = this.width.matches;
  };

  // Undo works wherever the focus is, but in a field it is the field's own.
  private readonly pressKey = (event: KeyboardEvent) => {
    const { book } = this.open.job ?? {};
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

  private takeReadings() {
    const file = this.readings?.files?.[0];
    if (file) void this.open.bringIn(file);
    if (this.readings) this.readings.value = '';
  }

  private takeSheet() {
    const file = this.sheetFile?.files?.[0];
    if (file) void this.receiveSheet(file);
    if (this.sheetFile) this.sheetFile.value = '';
  }

  private dropFile(event: DragEvent) {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    const isNotebook = file.name.endsWith('.json');
    if (isNotebook && this.open.job) {
      void this.openOrReceive(file);
      return;
    }
    void this.open.begin({ choose: isNotebook ? 'notebook' : 'readings', file });
  }

  private async openOrReceive(file: File): Promise<void> {
    const isSheet = this.open.job?.book.own.isShared(await file.text()) ?? false;
    if (isSheet) await this.receiveSheet(file);
    else await this.open.begin({ choose: 'notebook', file });
  }

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
