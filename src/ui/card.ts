import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import './ask.ts';
import { cardColumns, isHalf, isTaped } from './card-columns.ts';
import { cardStyles } from './card-styles.ts';
import './dots.ts';
import { send } from './events.ts';
import { seenIn, type Field, type FieldKept } from './field.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import './keypad.ts';
import type { KeypadDeed } from './keypad.ts';
import { manner } from './shown-columns.ts';
import './order-bar.ts';
import { rowOf } from './row-of.ts';
import { RowOrder } from './row-order.ts';
import { pressTape } from './tape-keys.ts';
import { withUnit } from './unit-face.ts';
import { base } from './tokens.ts';

/** The reading that a new card waits for. */
const FIRST_READING = 'lean_gap';
/** The results that the answer's line is made of. */
const OUTCOME = ['lean_angle', 'top_offset', 'remedy'];

/**
 * One post a screen, for a phone in one hand: the run as dots, the readings in the order a tape and a
 * level go, the results, and keys made for a tape.
 *
 * @fires row-current - Another post was chosen.
 * @fires show-working - Somebody wants to see how a result was worked out.
 */
@customElement('bp-card')
export class Card extends LitElement {
  static override styles = [base, cardStyles];

  @property({ attribute: false }) book: BookView | undefined;
  @property() sheet = 'posts';
  @property() current = '';

  /** The field that the keypad types into. */
  @state() private typingInto: Field | undefined;

  private readonly order = new RowOrder(() => {
    this.goToFirst();
  });

  protected readonly follow = new FollowBook(this, () => this.book);

  protected override render() {
    const whole = this.book?.sheet(this.sheet);
    if (!whole) return nothing;
    if (whole.rowCount === 0) return this.renderEmpty(whole);
    const view = this.order.seen(whole, this.follow.version);
    if (view.rowCount === 0)
      return html`${this.renderOrder(whole)}
        <p class="none">No post is like that.</p>`;
    const row = this.rowOf(view);
    const { readings, results, more } = cardColumns(view);
    const isLast = row === view.rowCount - 1;
    return html`
      <div class="scroll">
        ${whole.rowCount > 2 ? this.renderOrder(whole) : nothing}
        <bp-dots .book=${this.book} .sheet=${view.id} .current=${view.rowId(row)}></bp-dots>
        <div class="title">
          <h2 tabindex="-1">${view.rowName(row)}</h2>
          ${this.renderStation(view, row)}
        </div>
        ${this.renderAsks(view, row)}
        <div class="fields" @focusin=${this.noteField}>
          ${readings.map((column) => this.renderField(view, row, column))}
        </div>
        <dl class="results">${results.map((column) => this.renderResult(view, row, column))}</dl>
        ${
          view.id === 'posts' && this.book?.whatIf
            ? html`<button
                @click=${() => {
                  send(this, 'show-remedies', { sheet: view.id, row: view.rowId(row) });
                }}
              >
                Remedies side by side
              </button>`
            : nothing
        }
        ${this.renderStops(view, row)}
        <details>
          <summary>More readings</summary>
          <div class="fields" @focusin=${this.noteField}>
            ${more.map((column) => this.renderField(view, row, column))}
          </div>
          ${
            view.growable
              ? html`<button
                  @click=${() => {
                    this.removeRow(view, row);
                  }}
                >
                  Remove ${view.rowName(row)}
                </button>`
              : nothing
          }
        </details>
      </div>
      <div class="held">
        ${this.renderOutcome(view, row)}
        <bp-keypad
          .metric=${this.typingInto?.column?.unit === 'mm'}
          .next=${isLast ? 'Add a post' : 'Next post'}
          @keypad-deed=${(event: CustomEvent<KeypadDeed>) => {
            this.press(view, row, event.detail);
          }}
        ></bp-keypad>
      </div>
    `;
  }

  private renderOrder(whole: SheetView): TemplateResult {
    return html`<bp-order-bar
      .view=${whole}
      .order=${this.order}
      @order-changed=${this.goToFirst}
    ></bp-order-bar>`;
  }

  private goToFirst() {
    const whole = this.book?.sheet(this.sheet);
    const view = whole && this.order.seen(whole, this.follow.version);
    this.requestUpdate();
    if (!view || view.rowCount === 0) return;
    // The focus stays on the list that was chosen from.
    this.current = view.rowId(0);
    send(this, 'row-current', { sheet: view.id, row: this.current });
  }

  private renderEmpty(view: SheetView): TemplateResult {
    return html`<h2>No posts yet</h2>
      <p>Begin at one end of the run and read post by post.</p>
      <button
        class="begin"
        @click=${() => {
          this.addRow(view);
        }}
      >
        Add a post
      </button>`;
  }

  private renderStation(view: SheetView, row: number): TemplateResult | typeof nothing {
    const column = view.columns.find(({ id }) => id === 'station');
    if (!column) return nothing;
    const { state, text } = view.cell(row, column.id);
    if (state !== 'known') return nothing;
    return html`<p>${setFractions(withUnit(text, column.unit))} ${column.hint}</p>`;
  }

  private renderField(view: SheetView, row: number, column: ColumnView): TemplateResult {
    const rowId = view.rowId(row);
    // A field of its own for each row: what was typed for one post must never stand in the next.
    const field = html`<bp-field
      class=${isHalf(column) ? 'half' : ''}
      data-column=${column.id}
      short
      ?buttons=${column.choices.length <= 6}
      ?keypad=${isTaped(column)}
      .column=${column}
      .cell=${view.cell(row, column.id)}
      @field-kept=${({ detail, currentTarget }: FieldKept) => {
        this.book?.type(view.id, rowId, column.id, detail, seenIn(currentTarget));
      }}
    ></bp-field>`;
    return html`${keyed(rowId, field)}`;
  }

  private renderResult(view: SheetView, row: number, column: ColumnView): TemplateResult {
    const cell = view.cell(row, column.id);
    const place = { sheet: view.id, row: view.rowId(row), column: column.id };
    const text = cell.state === 'known' ? withUnit(cell.text, column.unit) : cell.note;
    return html`<div class=${manner(cell)}>
      <dt>${column.label}</dt>
      <dd>
        <button
          class="plain"
          @click=${() => {
            send(this, 'show-working', place);
          }}
        >
          ${text.trim() === '' ? '–' : setFractions(text)}<span class="spoken">, show working</span>
        </button>
      </dd>
    </div>`;
  }

  /** The answer in one line, in sight while the readings are typed. */
  private renderOutcome(view: SheetView, row: number): TemplateResult {
    const [lean, offset, remedy] = OUTCOME.map((id) => {
      const column = view.columns.find((one) => one.id === id);
      const cell = view.cell(row, id);
      return cell.state === 'known' ? withUnit(cell.text, column?.unit ?? '') : '';
    });
    if (lean === '' && offset === '' && remedy === '')
      return html`<p class="outcome"><em>${view.cell(row, 'remedy').note}</em></p>`;
    return html`<p class="outcome">
      <span
        >${lean === '' ? nothing : html`<strong>${lean}</strong>, `}${
          offset === '' ? nothing : html`${setFractions(offset ?? '')} out at the top`
        }</span
      >
      <strong>${remedy}</strong>
    </p>`;
  }

  private renderAsks(view: SheetView, row: number) {
    const id = view.rowId(row);
    return (this.book?.asks() ?? [])
      .filter((ask) => ask.sheet === view.id && (ask.row === id || ask.row === undefined))
      .map((ask) => html`<bp-ask class="ask-here" .book=${this.book} .ask=${ask}></bp-ask>`);
  }

  private renderStops(view: SheetView, row: number) {
    return (this.book?.stops() ?? [])
      .filter((stop) => stop.row === view.rowId(row))
      .map(
        ({ level, message }) =>
          html`<p class=${level}>
            <strong>${level === 'stop' ? 'Stop' : 'Caution'}</strong> ${setFractions(message)}
          </p>`,
      );
  }

  private rowOf(view: SheetView): number {
    return Math.max(0, rowOf(view, this.current));
  }

  private noteField(event: FocusEvent) {
    const field = event.target as Field;
    this.typingInto = field.keypad ? field : undefined;
  }

  private press(view: SheetView, row: number, deed: KeypadDeed) {
    if (deed === 'note') this.field('note')?.focus();
    else if (deed === 'next') this.goOn(view, row);
    else {
      const field = this.typingInto ?? this.field(FIRST_READING);
      if (!this.typingInto) field?.focus();
      field?.press((text, chosen) => pressTape(text, deed, chosen));
    }
  }

  private goOn(view: SheetView, row: number) {
    this.typingInto?.keep();
    if (row + 1 < view.rowCount) this.goTo(view, view.rowId(row + 1));
    else this.addRow(view);
  }

  private addRow(view: SheetView) {
    if (!view.growable || !this.book) return;
    const [row = ''] = this.book.rows.put('add post', view.id, undefined, [
      startOfNext(this.book, view),
    ]);
    this.goTo(view, row);
  }

  private removeRow(view: SheetView, row: number) {
    const name = view.rowName(row);
    this.book?.removeRow(view.id, view.rowId(row));
    send(this, 'say', `${name} removed. Undo brings it back.`);
  }

  private goTo(view: SheetView, row: string) {
    this.typingInto = undefined;
    this.current = row;
    send(this, 'row-current', { sheet: view.id, row });
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector('.scroll')?.scrollTo(0, 0);
      this.field(FIRST_READING)?.focus();
    });
  }

  private field(column: string): Field | null {
    return this.renderRoot.querySelector(`[data-column='${column}']`);
  }
}

/** What the next post begins with: the number after the last one's, and the level that was held there. */
function startOfNext(book: BookView, view: SheetView): ReadonlyMap<string, string> {
  const last = view.rowCount - 1;
  const key = view.columns[0]?.id ?? '';
  const rows = [last - 1, last].filter((row) => row >= 0).map((row) => view.rowId(row));
  const [name = ''] = rows.length === 0 ? ['1'] : book.rows.runOn(view.id, key, rows, 1);
  const level = last < 0 ? undefined : view.cell(last, 'level_length').typed;
  return new Map([[key, name], ...(level === undefined ? [] : [['level_length', level] as const])]);
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-card': Card;
  }
}
