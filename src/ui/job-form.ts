import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import './field.ts';
import type { FieldKept } from './field.ts';
import { FollowBook } from './follow-book.ts';
import { base } from './tokens.ts';

/** The job's own row. */
const JOB_ROW = 'job';

/**
 * The inputs of the whole job as a form, in the groups of the sheet. A group that holds nothing but
 * what is seldom changed is folded.
 *
 * @fires say - Words for the status line.
 */
@customElement('bp-job-form')
export class JobForm extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        background: var(--sheet);
        padding: 4px 16px 14px;
      }
      fieldset {
        padding-top: 10px;
      }
      fieldset + fieldset {
        margin-top: 12px;
        border-top: 1px solid var(--rule);
      }
      legend {
        float: left;
        width: 100%;
        font: 600 19px/1.3 var(--name-face);
        padding: 0 0 4px;
      }
      .fields {
        clear: both;
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(172px, 1fr));
        gap: 10px 16px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet that holds the inputs. */
  @property() sheet = JOB_ROW;

  protected readonly follow = new FollowBook(this, () => this.book);

  /** Puts the focus on an input. */
  goTo(column: string): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-column='${CSS.escape(column)}']`)?.focus();
  }

  protected override render() {
    const view = this.book?.sheet(this.sheet);
    if (!view) return nothing;
    const groups = [...new Set(view.columns.map(({ group }) => group))];
    return groups.map(
      (group) =>
        html`<fieldset>
          <legend>${group === '' ? 'Other' : group}</legend>
          <div class="fields">
            ${view.columns
              .filter((column) => column.group === group)
              .map((column) => this.renderField(view, column))}
          </div>
        </fieldset>`,
    );
  }

  private renderField(view: SheetView, column: ColumnView): TemplateResult {
    return html`<bp-field
      data-column=${column.id}
      title=${column.help === '' ? nothing : column.help}
      .column=${column}
      .cell=${view.cell(0, column.id)}
      @field-kept=${({ detail }: FieldKept) => {
        this.keep(view, column, detail);
      }}
    ></bp-field>`;
  }

  private keep(view: SheetView, column: ColumnView, text: string) {
    this.book?.type(view.id, view.rowId(0), column.id, text);
    const { state, note } = this.book?.sheet(view.id)?.cell(0, column.id) ?? {};
    if (note !== undefined && (state === 'wrong' || state === 'ask')) send(this, 'say', note);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-job-form': JobForm;
  }
}
