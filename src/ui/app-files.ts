import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import { isProblem, sentence } from '../units/index.ts';
import type { ComparedFile, Desk, MergeChoice } from './desk.ts';
import { send } from './events.ts';
import type { OpenDesk } from './open-desk.ts';
import type { Sheet } from './sheet.ts';

/** What the files need of the page they come to. */
export interface FilesHost extends ReactiveControllerHost, EventTarget {
  readonly renderRoot: HTMLElement | DocumentFragment;
  readonly desk: Desk | undefined;
  readonly open: OpenDesk;
}

/** Files that are chosen or dropped on the page, and what is asked about them. */
export class AppFiles {
  private readonly page: FilesHost;
  private comparing:
    | { readonly compared: ComparedFile; readonly resolve: (choice: MergeChoice) => void }
    | undefined;

  /** The sheet that the file being chosen is for. */
  private onto: string | undefined;

  constructor(page: FilesHost) {
    this.page = page;
  }

  /** Asks a person what to do with a file whose rows are there already. */
  readonly askMerge = (compared: ComparedFile): Promise<MergeChoice> =>
    new Promise((resolve) => {
      this.comparing = { compared, resolve };
      this.page.requestUpdate();
    });

  /** Opens the device's own choice of files. */
  choose(what: 'readings' | 'sheet-file', onto?: string): void {
    this.onto = onto;
    this.field(what)?.click();
  }

  readonly drop = (event: DragEvent): void => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    const { open } = this.page;
    const isNotebook = /\.(json|gz)$/.test(file.name);
    const onto = event.composedPath().find(isSheet)?.sheet;
    if (isNotebook && open.job) void this.openOrReceive(file);
    else if (!isNotebook && open.job && onto !== undefined) void open.bringIn(file, onto);
    else void open.begin({ choose: isNotebook ? 'notebook' : 'readings', file });
  };

  /** Gives a sheet out as a file. */
  giveSheet(sheet: string): void {
    const { desk, open } = this.page;
    const { job } = open;
    if (!job || !desk) return;
    const title = job.book.sheet(sheet)?.title ?? sheet;
    desk.giveFile(job.book.own.share(sheet), `${title} sheet`);
  }

  /** The fields that choose files, and the comparison while one is asked about. */
  render(): TemplateResult {
    return html`<input
        id="readings"
        class="file"
        type="file"
        accept=".csv,.txt,.tsv,text/csv"
        tabindex="-1"
        aria-label="Readings"
        @change=${() => {
          this.take('readings', (file) => this.page.open.bringIn(file, this.onto));
        }}
      />
      <input
        id="sheet-file"
        class="file"
        type="file"
        accept=".json,application/json"
        tabindex="-1"
        aria-label="Shared sheet"
        @change=${() => {
          this.take('sheet-file', (file) => this.receiveSheet(file));
        }}
      />
      ${this.renderComparing()}`;
  }

  private renderComparing(): TemplateResult | typeof nothing {
    const { comparing } = this;
    if (!comparing) return nothing;
    return html`<bp-comparison
      .compared=${comparing.compared}
      @merge-choice=${({ detail }: CustomEvent<MergeChoice>) => {
        this.comparing = undefined;
        this.page.requestUpdate();
        comparing.resolve(detail);
      }}
    ></bp-comparison>`;
  }

  private take(what: string, deed: (file: File) => Promise<void>): void {
    const field = this.field(what);
    const file = field?.files?.[0];
    if (file) void deed(file);
    // The same file may be chosen again.
    if (field) field.value = '';
  }

  private field(id: string): HTMLInputElement | null {
    return this.page.renderRoot.querySelector(`#${id}`);
  }

  private async openOrReceive(file: File): Promise<void> {
    const { open } = this.page;
    const isSheet = open.job?.book.own.isShared(await file.text()) ?? false;
    if (isSheet) await this.receiveSheet(file);
    else await open.begin({ choose: 'notebook', file });
  }

  private async receiveSheet(file: File): Promise<void> {
    const { book } = this.page.open.job ?? {};
    const received = book?.own.receive(await file.text());
    if (!received) return;
    const words = isProblem(received)
      ? `${file.name}: ${sentence(received)}`
      : `Taken from ${file.name}: ${received.taken.join(', ')}. Undo takes it away.`;
    send(this.page, 'say', words);
  }
}

// The sheets themselves come after the first screen, so that no file may ask for their class.
function isSheet(target: EventTarget): target is Sheet {
  return target instanceof Element && target.localName === 'bp-sheet';
}
