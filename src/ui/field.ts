import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CellView, ColumnView } from '../worksheet/index.ts';
import { setFractions } from './fraction.ts';
import { choicesWith } from './grid-editor.ts';
import { unitFace } from './unit-face.ts';
import { base } from './tokens.ts';
import { fieldStyles } from './field-styles.ts';

/** A person finished an entry; `detail` is exactly what they typed. */
export type FieldKept = CustomEvent<string>;

/**
 * One entry with its label, unit and standing. It shows the value as the book reads it, and what was
 * typed while it has the focus.
 *
 * @fires field-kept - An entry was finished, and it is not the one that stood there.
 */
@customElement('bp-field')
export class Field extends LitElement {
  static override styles = [base, fieldStyles];
  static override shadowRootOptions: ShadowRootInit = { mode: 'open', delegatesFocus: true };

  @property({ attribute: false }) column: ColumnView | undefined;
  @property({ attribute: false }) cell: CellView | undefined;
  /** Set where a keypad types, so that the device's own keyboard stays away. */
  @property({ type: Boolean }) keypad = false;
  /** Shows choices as buttons in a row instead of a list. */
  @property({ type: Boolean }) buttons = false;
  /** Leaves the source and standing out. */
  @property({ type: Boolean }) short = false;

  @state() private focused = false;

  @query('input') private readonly input!: HTMLInputElement | null;

  /** What stood there when typing began; another window may write there meanwhile. */
  seen: string | undefined;
  /** What stood in the open field then; it stays there whatever another window writes. */
  private begun: string | undefined;

  /** What stands in the field now. */
  get text(): string {
    return this.input?.value ?? '';
  }

  /** Changes the text as a key of a keypad does; `chosen` says that all of it is selected. */
  press(change: (text: string, chosen: boolean) => string): void {
    const { input } = this;
    if (!input) return;
    this.see();
    const chosen = input.selectionStart === 0 && input.selectionEnd === input.value.length;
    input.value = change(input.value, chosen);
    input.setSelectionRange(input.value.length, input.value.length);
  }

  /** Hands over what stands in the field, where it is new. */
  keep(): void {
    if (this.input && this.input.value !== (this.begun ?? this.standing))
      this.hand(this.input.value);
  }

  protected override render() {
    const { column, cell } = this;
    if (!column || !cell) return nothing;
    const trouble = cell.state === 'wrong' || cell.state === 'ask';
    return html`
      <label for="entry" id="label"
        >${column.label}${column.hint === '' ? '' : html`<span class="hint">, ${column.hint}</span>`}</label
      >
      ${this.renderControl(column, cell)}
      ${
        cell.note === ''
          ? nothing
          : html`<p id="note" class=${trouble ? 'note trouble' : 'note'}>
              ${setFractions(cell.note)}
            </p>`
      }
      ${this.short ? nothing : this.renderStanding(column, cell)}
    `;
  }

  private renderControl(column: ColumnView, cell: CellView): TemplateResult {
    const typed = cell.typed ?? (column.entered ? cell.text : '');
    if (!column.entered)
      return html`<output id="entry" class="worked">${this.shown(column, cell)}</output>`;
    const isChoice = column.kind.type === 'choice' || column.kind.type === 'flag';
    if ((isChoice || column.choices.length > 0) && this.buttons)
      return this.renderButtons(column, typed);
    if (isChoice)
      return html`<select
        id="entry"
        aria-describedby="note"
        @change=${(event: Event) => {
          this.hand((event.target as HTMLSelectElement).value);
        }}
      >
        ${choicesWith(column, typed).map(
          (choice) =>
            html`<option value=${choice} ?selected=${choice === typed}>
              ${choice === '' ? 'not given' : choice}
            </option>`,
        )}
      </select>`;
    const trouble = cell.state === 'wrong' || cell.state === 'ask';
    return html`<div class="line ${trouble ? 'trouble' : ''} ${this.focused ? 'typing' : ''}">
      <input
        id="entry"
        .value=${this.begun ?? this.standing}
        list=${column.choices.length > 0 ? 'offered' : nothing}
        inputmode=${this.keypad ? 'none' : 'text'}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        enterkeyhint="next"
        aria-invalid=${trouble ? 'true' : nothing}
        aria-describedby="note"
        @focus=${this.startTyping}
        @blur=${this.endTyping}
        @input=${this.see}
        @keydown=${this.pressKey}
      /><span class="shown" aria-hidden="true">${this.shown(column, cell)}</span>
      ${column.unit === '' ? nothing : html`<span class="unit">${unitFace(column.unit)}</span>`}
      <datalist id="offered">
        ${column.choices.map((choice) => html`<option value=${choice}></option>`)}
      </datalist>
    </div>`;
  }

  private renderButtons(column: ColumnView, typed: string): TemplateResult {
    return html`<div class="buttons" role="group" aria-labelledby="label">
      ${choicesWith(column, typed)
        .filter((choice) => choice !== '')
        .map(
          (choice) =>
            html`<button
              aria-pressed=${String(choice === typed)}
              @click=${() => {
                this.hand(choice === typed ? '' : choice);
              }}
            >
              ${choice}
            </button>`,
        )}
    </div>`;
  }

  private renderStanding(column: ColumnView, cell: CellView): TemplateResult | typeof nothing {
    const words = standingWords(column, cell);
    return words === '' ? nothing : html`<p class="standing" title=${words}>${words}</p>`;
  }

  private shown(column: ColumnView, cell: CellView): TemplateResult | string {
    if (cell.state === 'waiting') return '';
    if (cell.state === 'blank')
      return column.entered ? html`<span class="none">not given</span>` : '';
    return setFractions(cell.state === 'ask' ? `${cell.text}?` : cell.text);
  }

  /** What a person typed here, or the starting value. */
  private get standing(): string {
    return this.cell?.typed ?? this.cell?.text ?? '';
  }

  private startTyping() {
    this.focused = true;
    this.input?.select();
  }

  private endTyping() {
    this.focused = false;
    this.keep();
    this.begun = undefined;
    this.seen = undefined;
    void this.updateComplete.then(() => {
      if (this.input && !this.focused) this.input.value = this.standing;
    });
  }

  private pressKey(event: KeyboardEvent) {
    if (event.isComposing) return;
    if (event.key === 'Enter') this.keep();
    if (event.key !== 'Escape' || !this.input) return;
    this.begun = undefined;
    this.seen = undefined;
    this.input.value = this.standing;
    this.input.select();
  }

  private hand(text: string) {
    this.dispatchEvent(
      new CustomEvent<string>('field-kept', { detail: text, bubbles: true, composed: true }),
    );
    this.begun = undefined;
    this.seen = undefined;
  }

  // From the first key on: until then the field shows what another window writes.
  private see(): void {
    this.begun ??= this.standing;
    this.seen ??= this.cell?.typed ?? '';
  }
}

/** What stood in a field when the entry it hands over was begun. */
export function seenIn(field: EventTarget | null): string | undefined {
  return field instanceof Field ? field.seen : undefined;
}

/** Where a number comes from and how far it can be trusted, said once; what nobody typed is nobody’s yet. */
function standingWords({ source, standing, formula }: ColumnView, cell: CellView): string {
  if ((cell.typed ?? '') !== '') return 'yours';
  if (standing === 'yours' && formula === undefined)
    return cell.state === 'blank' ? source : source === '' ? 'as a job starts' : source;
  if (source === '' || source.startsWith(standing)) return source === '' ? standing : source;
  return standing === '' ? source : `${source}, ${standing}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-field': Field;
  }
  interface GlobalEventHandlersEventMap {
    'field-kept': FieldKept;
  }
}
