import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView } from '../worksheet/index.ts';
import type { Handout, SavedMark } from './desk.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { THEMES, keptTheme, setTheme, type Theme } from './theme.ts';
import { base } from './tokens.ts';
import { headerStyles } from './header-styles.ts';

/** What a button of the header asks for. */
export type HeaderDeed =
  | 'home'
  | 'bring in'
  | 'add sheet'
  | 'bring sheet'
  | 'save file'
  | 'history'
  | 'room'
  | 'yard'
  | 'files'
  | 'what if'
  | `list ${string}`
  | `print ${string}`;

const THEME_WORDS: Record<Theme, string> = {
  device: 'Light: as the device',
  light: 'Light: day',
  dark: 'Light: dusk',
};

/** What the mark says where the bar above says more. */
const SHORT = { saved: 'Saved on this device', saving: 'Saving', trouble: 'Not saved' };

/**
 * The head of a job: its name, whether it is kept, and what can be brought in, given out and taken back.
 *
 * @fires header-deed - A button was pressed; `detail` says which.
 */
@customElement('bp-header')
export class Header extends LitElement {
  static override styles = [base, headerStyles];

  @property({ attribute: false }) book: BookView | undefined;
  @property({ attribute: false }) saved: SavedMark = { state: 'saving', words: '' };
  /** Pages to print and lists to save; the first list has a button of its own. */
  @property({ attribute: false }) pages: readonly Handout[] = [];
  @property({ attribute: false }) lists: readonly Handout[] = [];

  @state() private theme = keptTheme();
  @state() private menuOpen = false;
  @query('input') private readonly nameField!: HTMLInputElement | null;

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const { book, saved } = this;
    if (!book) return nothing;
    const [supplier, ...lists] = this.lists;
    return html`<header>
      <h1 class="name">
        <label for="name" class="spoken">Name of the job</label>
        <span class="sizer" aria-hidden="true">${book.name}</span>
        <input
          id="name"
          .value=${book.name}
          autocomplete="off"
          @change=${this.rename}
          @keydown=${this.pressInName}
        />
      </h1>
      <p class="saved ${saved.state}">${saved.todo ? SHORT[saved.state] : saved.words}</p>
      <div class="steps" role="group" aria-label="Take back and do again">
        ${this.renderStep('Undo', book.undoLabel, () => {
          const label = book.undoLabel;
          book.undo();
          send(this, 'say', `Taken back: ${label ?? ''}.`);
        })}
        ${this.renderStep('Redo', book.redoLabel, () => {
          const label = book.redoLabel;
          book.redo();
          send(this, 'say', `Done again: ${label ?? ''}.`);
        })}
      </div>
      <div class="deeds">
        <button @click=${() => this.ask('bring in')}>Bring in readings</button>
        ${
          supplier
            ? html`<button @click=${() => this.ask(`list ${supplier.id}`)}>
                ${supplier.label}
              </button>`
            : nothing
        }
        <details ?open=${this.menuOpen} @toggle=${this.noteMenu} @keydown=${this.pressInMenu}>
          <summary>More</summary>
          <ul>
            ${this.pages.map(({ id, label }) => this.renderChoice(label, () => this.ask(`print ${id}`)))}
            ${lists.map(({ id, label }) => this.renderChoice(label, () => this.ask(`list ${id}`)))}
            ${this.renderChoice('What if, and why the price changed', () => this.ask('what if'))}
            ${this.renderChoice('Add a sheet of your own', () => this.ask('add sheet'))}
            ${this.renderChoice('Bring in a shared sheet', () => this.ask('bring sheet'))}
            ${this.renderChoice('A list as the yard wants it', () => this.ask('yard'))}
            ${this.renderChoice('Files brought in', () => this.ask('files'))}
            ${this.renderChoice('Earlier today', () => this.ask('history'))}
            ${this.renderChoice('Save as a file', () => this.ask('save file'))}
            ${this.renderChoice('Backups and room', () => this.ask('room'))}
            ${this.renderChoice(THEME_WORDS[this.theme], this.nextTheme, false)}
            ${this.renderChoice('Other jobs', () => this.ask('home'))}
          </ul>
        </details>
      </div>
    </header>`;
  }

  private renderStep(word: string, label: string | undefined, deed: () => void): TemplateResult {
    return html`<button class="plain" ?disabled=${label === undefined} @click=${deed}>
      ${word}${label === undefined ? '' : html`<span class="label">: ${label}</span>`}
    </button>`;
  }

  private renderChoice(label: string, deed: () => void, closes = true): TemplateResult {
    return html`<li>
      <button
        class="plain"
        @click=${() => {
          // What opens next gives the focus back to what had it; a folded menu cannot take it.
          if (closes) this.foldMenu();
          deed();
        }}
      >
        ${label}
      </button>
    </li>`;
  }

  private readonly nextTheme = () => {
    this.theme = THEMES[(THEMES.indexOf(this.theme) + 1) % THEMES.length] ?? 'device';
    setTheme(this.theme);
  };

  private noteMenu(event: Event) {
    this.menuOpen = (event.target as HTMLDetailsElement).open;
  }

  private pressInMenu(event: KeyboardEvent) {
    if (event.key === 'Escape') this.foldMenu();
  }

  private foldMenu() {
    this.menuOpen = false;
    this.renderRoot.querySelector('summary')?.focus();
  }

  private rename() {
    const name = this.nameField?.value.trim() ?? '';
    if (name !== '') this.book?.rename(name);
    else if (this.nameField) this.nameField.value = this.book?.name ?? '';
  }

  private pressInName(event: KeyboardEvent) {
    if (event.key === 'Enter') this.nameField?.blur();
    if (event.key !== 'Escape' || !this.nameField) return;
    this.nameField.value = this.book?.name ?? '';
    this.nameField.blur();
  }

  private ask(deed: HeaderDeed) {
    this.dispatchEvent(new CustomEvent<HeaderDeed>('header-deed', { detail: deed }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-header': Header;
  }
}
