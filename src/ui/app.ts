import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { appStyles } from './app-styles.ts';
import './asks.ts';
import './band.ts';
import './brought-in.ts';
import type { BroughtIn, Desk, KeptJob, OpenJob, SavedMark } from './desk.ts';
import type { Place } from './events.ts';
import './header.ts';
import type { HeaderDeed } from './header.ts';
import './phone.ts';
import './sheet.ts';
import type { Sheet } from './sheet.ts';
import './start.ts';
import type { StartChoice } from './start.ts';
import './string-line.ts';
import { base } from './tokens.ts';
import './working.ts';

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

  @state() private job: OpenJob | undefined;
  @state() private jobs: readonly KeptJob[] = [];
  @state() private trouble = '';
  @state() private broughtIn: BroughtIn | undefined;
  @state() private sheet = '';
  @state() private row = '';
  @state() private working: Place | undefined;
  @state() private said = '';
  @state() private saved: SavedMark = { state: 'saved', words: '' };
  @state() private isPhone = matchMedia(PHONE).matches;

  @query('#readings') private readonly readings!: HTMLInputElement | null;

  private readonly width = matchMedia(PHONE);
  /** Until then the sheet somebody went to stays the current one, also where the page ends too soon. */
  private heldUntil = 0;
  private quiet: ReturnType<typeof setTimeout> | undefined;
  private leave: (() => void)[] = [];
  // A sheet is current once it crosses a line a third of the way down the screen.
  private readonly crossing = new IntersectionObserver(
    (entries) => {
      const crossed = entries.find(({ isIntersecting }) => isIntersecting)?.target;
      if (crossed && performance.now() > this.heldUntil) this.sheet = (crossed as Sheet).sheet;
    },
    { rootMargin: '-30% 0px -69% 0px' },
  );

  override connectedCallback() {
    super.connectedCallback();
    this.width.addEventListener('change', this.noteWidth);
    window.addEventListener('hashchange', this.followAddress);
    document.addEventListener('keydown', this.pressKey);
  }

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.width.removeEventListener('change', this.noteWidth);
    window.removeEventListener('hashchange', this.followAddress);
    document.removeEventListener('keydown', this.pressKey);
    this.crossing.disconnect();
    for (const stop of this.leave) stop();
    this.leave = [];
  }

  protected override render() {
    return html`
      <div
        class="page"
        @go-to=${(event: CustomEvent<Place>) => this.goTo(event.detail)}
        @row-current=${this.noteRow}
        @show-working=${(event: CustomEvent<Place>) => (this.working = event.detail)}
        @say=${(event: CustomEvent<string>) => {
          this.say(event.detail);
        }}
        @dragover=${(event: DragEvent) => {
          event.preventDefault();
        }}
        @drop=${this.dropFile}
      >
        ${this.job ? this.renderJob(this.job) : this.renderStart()}
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
      <p class="said" role="status">${this.said}</p>
    `;
  }

  protected override willUpdate(changed: PropertyValues) {
    if (changed.has('desk') && this.desk) {
      for (const stop of this.leave) stop();
      this.leave = [
        this.desk.onSaved((mark) => (this.saved = mark)),
        this.desk.onElsewhere((id) => {
          if (id === this.job?.id) void this.attempt(this.openKept(id));
        }),
      ];
      this.followAddress();
    }
  }

  protected override updated() {
    this.crossing.disconnect();
    for (const sheet of this.sheets()) this.crossing.observe(sheet);
    document.title = this.job ? `${this.job.book.name} – Backplumb` : 'Backplumb';
  }

  private renderStart(): TemplateResult {
    return html`${this.renderTrouble()}
      <bp-start
        .jobs=${this.jobs}
        @start-choice=${({ detail }: CustomEvent<StartChoice>) => this.attempt(this.begin(detail))}
      ></bp-start>`;
  }

  private renderJob({ book }: OpenJob): TemplateResult {
    const head = html`<bp-header
      slot="head"
      .book=${book}
      .saved=${this.saved}
      .pages=${this.desk?.pages ?? []}
      .lists=${this.desk?.lists ?? []}
      @header-deed=${({ detail }: CustomEvent<HeaderDeed>) => this.attempt(this.doDeed(detail))}
    ></bp-header>`;
    const notices = html`${this.renderTrouble()} ${this.renderBroughtIn()}
      <bp-band .book=${book}></bp-band>
      <bp-asks .book=${book}></bp-asks>`;
    const working = html`<bp-working
      .book=${book}
      .place=${this.working}
      @close-working=${this.closeWorking}
    ></bp-working>`;
    if (this.isPhone)
      return html`<bp-phone .book=${book} .sheet=${this.sheet} .current=${this.row}
          >${head}</bp-phone
        >
        ${this.renderTrouble()} ${this.renderBroughtIn()} ${this.working ? working : nothing}`;
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
      ${this.working ? working : nothing}`;
  }

  private renderTrouble(): TemplateResult | typeof nothing {
    if (this.trouble === '') return nothing;
    return html`<div class="trouble" role="alert">
      <p>${this.trouble}</p>
      <button class="plain" @click=${() => (this.trouble = '')}>Put away</button>
    </div>`;
  }

  private renderBroughtIn(): TemplateResult | typeof nothing {
    if (!this.broughtIn) return nothing;
    return html`<bp-brought-in
      .broughtIn=${this.broughtIn}
      @brought-in=${({ detail }: CustomEvent<Promise<BroughtIn>>) => this.attempt(this.take(detail))}
      @put-away=${() => (this.broughtIn = undefined)}
    ></bp-brought-in>`;
  }

  private async begin(choice: StartChoice): Promise<void> {
    const { desk } = this;
    if (!desk) return;
    switch (choice.choose) {
      case 'demo':
        this.show(await desk.openDemo());
        return;
      case 'empty':
        this.show(await desk.startEmpty());
        return;
      case 'readings':
        await this.bringIn(choice.file);
        return;
      case 'notebook':
        this.show(await desk.openFile(choice.file));
        return;
      case 'open':
        await this.openKept(choice.id);
        return;
      case 'remove':
        await desk.remove(choice.id);
        this.jobs = await desk.list();
    }
  }

  private async doDeed(deed: HeaderDeed): Promise<void> {
    const { desk, job } = this;
    if (!desk || !job) return;
    if (deed === 'home') location.hash = '';
    else if (deed === 'bring in') this.readings?.click();
    else if (deed === 'save file') desk.saveFile(job);
    else if (deed.startsWith('list ')) desk.saveList(job, deed.slice('list '.length));
    else desk.print(job, deed.slice('print '.length));
    return Promise.resolve();
  }

  private async bringIn(file: File): Promise<void> {
    if (this.desk) await this.take(this.desk.importSite(file, this.job));
  }

  private async take(coming: Promise<BroughtIn>): Promise<void> {
    const came = await coming;
    this.show(came.job);
    this.broughtIn = came;
    this.say(came.summary);
  }

  private async openKept(id: string): Promise<void> {
    if (this.desk) this.show(await this.desk.open(id));
  }

  private show(job: OpenJob) {
    this.job = job;
    this.trouble = '';
    this.working = undefined;
    if (!job.book.sheet(this.sheet)) this.sheet = this.firstSheet(job);
    this.row = firstRow(job);
    if (location.hash !== `#${job.id}`) location.hash = job.id;
  }

  // On a phone the posts come first; the job's inputs have starting values.
  private firstSheet({ book }: OpenJob): string {
    const posts = this.isPhone ? book.sheet('posts') : undefined;
    return (posts ?? book.sheets[0])?.id ?? '';
  }

  private readonly followAddress = () => {
    const id = location.hash.slice(1);
    if (id === this.job?.id) return;
    this.broughtIn = undefined;
    if (id !== '') {
      void this.attempt(this.openKept(id));
      return;
    }
    this.job = undefined;
    this.row = '';
    this.sheet = '';
    void this.attempt(this.showStart());
  };

  private async showStart(): Promise<void> {
    if (this.desk) this.jobs = await this.desk.list();
  }

  /** Does what may go wrong, and says so in words where it does. */
  private async attempt(deed: Promise<void>): Promise<void> {
    try {
      await deed;
    } catch (error) {
      this.trouble = error instanceof Error ? error.message : String(error);
      if (!this.job) await this.showStart();
    }
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
    const { book } = this.job ?? {};
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
    if (file) void this.attempt(this.bringIn(file));
    if (this.readings) this.readings.value = '';
  }

  private dropFile(event: DragEvent) {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    const isNotebook = file.name.endsWith('.json');
    void this.attempt(isNotebook ? this.begin({ choose: 'notebook', file }) : this.bringIn(file));
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
