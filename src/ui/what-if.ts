import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookView, Variant, VariantEntry, WhatIfParts } from '../worksheet/index.ts';
import { panelDialogStyles } from './panel-dialog-styles.ts';
import { base } from './tokens.ts';
import { choicesOf, placesOf, type WhatIfPlace } from './what-if-places.ts';
import { moneyStep, quoteWaits } from '../output/index.ts';
import { changeTable } from './what-if-change.ts';
import { whatIfStyles } from './what-if-styles.ts';

/**
 * Variants of the job beside it: a few entries changed, and every line of the price with how far it
 * moves; and why the price is not what it was when it was kept. What is typed on the sheets stays.
 *
 * @fires put-away - The panel was closed.
 */
@customElement('bp-what-if')
export class WhatIfPanel extends LitElement {
  static override styles = [base, panelDialogStyles, whatIfStyles];

  @property({ attribute: false }) book: BookView | undefined;

  @state() private place = '';
  @state() private since = '';
  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;
  @query('#variant') private readonly variant!: HTMLInputElement | null;
  @query('#value') private readonly value!: HTMLInputElement | HTMLSelectElement | null;
  @query('#kept') private readonly kept!: HTMLInputElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
  }

  protected override render() {
    const parts = this.book?.whatIf;
    if (!this.book || !parts) return nothing;
    const variants = parts.variants();
    const waits = quoteWaits(this.book);
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">What if</h2>
      <p class="soft">
        A variant is this job with a few entries changed. The job stays as it is typed until you use
        one.
      </p>
      ${variants.length === 0 ? nothing : this.renderVariants(parts, variants)}
      ${waits === '' ? nothing : html`<p class="note">The total waits: ${waits}.</p>`}
      ${this.renderForm(this.book, variants)}
      <h3>Why the price changed</h3>
      ${this.renderChange(parts)}
      <p class="deeds">
        <button @click=${() => this.dialog?.close()}>Close</button>
      </p>
      <p role="status">${this.said}</p>
    </dialog>`;
  }

  private renderVariants(parts: WhatIfParts, variants: readonly Variant[]): TemplateResult {
    const now = parts.now();
    return html`<div class="table" tabindex="0" role="region" aria-label="Variants side by side">
      <table>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" class="sum">As it stands</th>
            ${variants.map(({ name }) => html`<th scope="col" class="sum">${name}</th>`)}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">Differs in</th>
            <td></td>
            ${variants.map(({ name, entries }) => html`<td class="sum">${entries.map((entry) => this.renderEntry(parts, name, entry))}</td>`)}
          </tr>
          ${now.map(
            (line, at) =>
              html`<tr class=${line.part === 'Total' ? 'total' : ''}>
                <th scope="row">${line.part}</th>
                <td class="sum">${line.text === '' ? 'waits' : line.text}</td>
                ${variants.map(({ lines }) => {
                  const then = lines[at];
                  return html`<td class="sum">
                    ${then === undefined || then.text === '' ? 'waits' : then.text}
                    <small>${moneyStep(line.money, then?.money)}</small>
                  </td>`;
                })}
              </tr>`,
          )}
          <tr>
            <td></td>
            <td></td>
            ${variants.map(
              ({ name }) =>
                html`<td class="sum">
                  <button
                    @click=${() =>
                      this.act(`The job is now as ${name}. Undo takes it back.`, () => {
                        parts.use(name);
                      })}
                  >
                    Use ${name}
                  </button>
                  <button
                    class="plain"
                    aria-label="Remove ${name}"
                    @click=${() =>
                      this.act(`${name} is removed.`, () => {
                        parts.drop(name);
                      })}
                  >
                    Remove
                  </button>
                </td>`,
            )}
          </tr>
        </tbody>
      </table>
    </div>`;
  }

  private renderEntry(parts: WhatIfParts, name: string, entry: VariantEntry): TemplateResult {
    return html`<div>
      ${entry.label}: ${entry.text}
      <button
        class="plain"
        aria-label="Leave ${entry.label} out of ${name}"
        @click=${() => {
          this.act(`${entry.label} is as in the job again.`, () => {
            parts.drop(name, entry);
          });
        }}
      >
        ×
      </button>
      ${entry.note === '' ? nothing : html`<small class="note">${entry.note}</small>`}
    </div>`;
  }

  private renderForm(book: BookView, variants: readonly Variant[]): TemplateResult {
    const groups = placesOf(book);
    const chosen = groups.flatMap(({ places }) => places).find(({ key }) => key === this.place);
    return html`<form
      @submit=${(event: Event) => {
        event.preventDefault();
        this.add(chosen);
      }}
    >
      <label
        >Variant
        <input id="variant" list="variants" autocomplete="off" required placeholder="6x6 posts" />
        <datalist id="variants">
          ${variants.map(({ name }) => html`<option value=${name}></option>`)}
        </datalist></label
      >
      <label
        >What is different
        <select
          required
          @change=${(event: Event) => (this.place = (event.target as HTMLSelectElement).value)}
        >
          <option value="">choose</option>
          ${groups.map(
            ({ label, places }) =>
              html`<optgroup label=${label}>
                ${places.map(
                  (place) =>
                    html`<option value=${place.key} ?selected=${place.key === this.place}>
                      ${place.label}
                    </option>`,
                )}
              </optgroup>`,
          )}
        </select></label
      >
      <label
        >${chosen ? `In place of ${chosen.now === '' ? 'blank' : chosen.now}` : 'Would be'}
        ${
          chosen && choicesOf(book, chosen).length > 0
            ? html`<select id="value">
                ${choicesOf(book, chosen).map((choice) => html`<option>${choice}</option>`)}
              </select>`
            : html`<input id="value" autocomplete="off" required />`
        }</label
      >
      <button class="first">Add to the variant</button>
    </form>`;
  }

  private renderChange(parts: WhatIfParts): TemplateResult {
    const marks = [...new Set(parts.marks())];
    const since = marks.includes(this.since) ? this.since : (marks[0] ?? '');
    const change = since === '' ? undefined : parts.changedSince(since);
    return html`<form
        @submit=${(event: Event) => {
          event.preventDefault();
          const name = this.kept?.value.trim() ?? '';
          if (name === '') return;
          this.since = name;
          this.act(`Kept as ${name}.`, () => {
            parts.mark(name);
          });
          if (this.kept) this.kept.value = '';
        }}
      >
        <label
          >Keep the price as it stands, as
          <input id="kept" autocomplete="off" required placeholder="first quote"
        /></label>
        <button>Keep</button>
        ${
          marks.length === 0
            ? nothing
            : html`<label
                >Changed since
                <select
                  @change=${(event: Event) => (this.since = (event.target as HTMLSelectElement).value)}
                >
                  ${marks.map((mark) => html`<option ?selected=${mark === since}>${mark}</option>`)}
                </select></label
              >`
        }
      </form>
      ${change ? changeTable(change, since) : html`<p class="soft">Keep the price when you give the quote; later this tells what moved it.</p>`}`;
  }

  private add(place: WhatIfPlace | undefined) {
    const [name, text] = [this.variant?.value.trim() ?? '', this.value?.value.trim() ?? ''];
    const parts = this.book?.whatIf;
    if (!place || !parts || name === '' || text === '') return;
    this.act(`${name}: ${place.label} ${text}.`, () => {
      parts.put(name, { sheet: place.sheet, row: place.row, column: place.column, text });
    });
  }

  private act(words: string, deed: () => void) {
    deed();
    this.said = words;
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-what-if': WhatIfPanel;
  }
}
