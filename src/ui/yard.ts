import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Dialect } from '../output/index.ts';
import type { OpenJob } from './desk.ts';
import { panelDialogStyles } from './panel-dialog-styles.ts';
import { base } from './tokens.ts';
import type { YardDesk } from './yard-desk.ts';
import { DIALECT_CHOICES, keepDialect, keptDialect, known } from './yard-memory.ts';

const PREVIEW_LINES = 6;

/**
 * A list as the yard wants it: which list, what parts its cells, the decimal mark, the unit of lengths; with its first
 * lines as they will be, to be saved, or copied as plain text for a message.
 *
 * @fires put-away - The panel was closed.
 */
@customElement('bp-yard')
export class Yard extends LitElement {
  static override styles = [
    base,
    panelDialogStyles,
    css`
      .choices {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(14em, 1fr));
        gap: 10px 18px;
        margin-top: 10px;
      }
      label {
        font-weight: 600;
      }
      select {
        display: block;
        width: 100%;
        color: var(--chalk);
      }
      .mark {
        display: flex;
        align-items: center;
        gap: 8px;
      }
      .mark input {
        width: 20px;
        height: 20px;
        min-height: 0;
        accent-color: var(--chalk);
      }
      pre {
        margin: 12px 0 0;
        padding: 8px 10px;
        overflow-x: auto;
        border-left: 3px solid var(--rule);
        background: var(--sheet);
        font-size: 14px;
      }
    `,
  ];

  @property({ attribute: false }) yard: YardDesk | undefined;
  @property({ attribute: false }) job: OpenJob | undefined;

  @state() private list = '';
  @state() private dialect = keptDialect();
  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;

  protected override firstUpdated() {
    this.dialog?.showModal();
  }

  protected override render() {
    return html`<dialog
      aria-labelledby="head"
      @close=${() => this.dispatchEvent(new CustomEvent('put-away'))}
    >
      <h2 id="head">A list as the yard wants it</h2>
      <div class="choices">
        ${this.renderSelect(
          'List',
          this.lists.map(({ id, label }) => [id, label]),
          this.chosen,
          (id) => (this.list = id),
        )}
        ${this.renderSelect(
          'Cells parted by',
          DIALECT_CHOICES.separator,
          this.dialect.separator,
          (text) => {
            this.change({ separator: known('separator', text) });
          },
        )}
        ${this.renderSelect(
          'Decimal mark',
          DIALECT_CHOICES.decimal,
          this.dialect.decimal,
          (text) => {
            this.change({ decimal: known('decimal', text) });
          },
        )}
        ${this.renderSelect('Lengths in', DIALECT_CHOICES.lengths, this.dialect.lengths, (text) => {
          this.change({ lengths: known('lengths', text) });
        })}
        <label class="mark"
          ><input
            type="checkbox"
            .checked=${this.dialect.mark}
            @change=${(event: Event) => {
              this.change({ mark: (event.target as HTMLInputElement).checked });
            }}
          />
          Byte order mark, where accents come out wrong</label
        >
      </div>
      <pre tabindex="0" role="group" aria-label="Its first lines">${this.firstLines}</pre>
      <p class="deeds">
        <button class="first" @click=${this.save}>Save</button>
        <button @click=${this.copy}>Copy supplier’s list as text</button>
        <button @click=${() => this.dialog?.close()}>Close</button>
      </p>
      <p role="status">${this.said}</p>
    </dialog>`;
  }

  private get lists() {
    return this.yard?.lists ?? [];
  }

  private get chosen(): string {
    return this.list === '' ? (this.lists[0]?.id ?? '') : this.list;
  }

  private get firstLines(): string {
    const { yard, job } = this;
    if (!yard || !job) return '';
    const lines = yard.text(job, this.chosen, this.dialect).replace('\ufeff', '').split('\r\n');
    return lines.slice(0, PREVIEW_LINES).join('\n');
  }

  private renderSelect(
    label: string,
    choices: readonly (readonly [string, string])[],
    value: string,
    choose: (text: string) => void,
  ): TemplateResult {
    return html`<label
      >${label}
      <select
        @change=${(event: Event) => {
          choose((event.target as HTMLSelectElement).value);
        }}
      >
        ${choices.map(
          ([text, words]) =>
            html`<option value=${text} .selected=${text === value}>${words}</option>`,
        )}
      </select></label
    >`;
  }

  private change(part: Partial<Dialect>) {
    this.dialect = { ...this.dialect, ...part };
    keepDialect(this.dialect);
  }

  private save() {
    if (this.yard && this.job) this.yard.save(this.job, this.chosen, this.dialect);
    this.said = 'Saved where this browser puts files.';
  }

  private async copy() {
    if (!this.yard || !this.job) return;
    try {
      await navigator.clipboard.writeText(this.yard.message(this.job));
      this.said = 'Copied. Paste it into a message.';
    } catch {
      this.said = 'This browser lets nothing be copied from here. Save the list instead.';
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-yard': Yard;
  }
}
