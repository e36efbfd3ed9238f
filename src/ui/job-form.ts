import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { seenIn, type Field, type FieldKept } from './field.ts';
import { FollowBook } from './follow-book.ts';
import { setFractions } from './fraction.ts';
import { groupWords } from './job-words.ts';
import { base } from './tokens.ts';

/** The job's own row. */
const JOB_ROW = 'job';

/**
 * The inputs of the whole job as a form, in the groups of the sheet. A group is folded to one line
 * that reads its values out, unless the job is empty or something in it is to be answered.
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
        padding: 4px 16px;
        overflow: hidden;
        container-type: inline-size;
      }
      .groups {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        column-gap: 32px;
      }
      @container (min-width: 880px) {
        .groups {
          grid-template-columns: repeat(2, minmax(0, 1fr));
        }
        [open] {
          grid-column: 1 / -1;
        }
      }
      details {
        min-width: 0;
        border-bottom: 1px solid var(--rule);
        margin-bottom: -1px;
      }
      summary {
        display: flex;
        align-items: center;
        gap: 12px;
        min-height: var(--target);
        padding: 3px 0;
        cursor: pointer;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary::before {
        content: '';
        flex: none;
        border: 5px solid transparent;
        border-left-color: var(--chalk);
        transform: translate(2px, 1px);
      }
      [open] > summary::before {
        transform: rotate(90deg) translate(1px, -2px);
      }
      h3 {
        flex: none;
        min-width: 8.2em;
        font-size: 18px;
      }
      .read {
        min-width: 0;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .read em {
        color: var(--soft);
      }
      .asking {
        color: var(--paint);
        font-weight: 600;
      }
      @media (max-width: 599px) {
        summary {
          flex-wrap: wrap;
          gap: 0 12px;
        }
        h3 {
          flex: 1 1 0;
          min-width: 0;
        }
        .read {
          flex: 1 1 100%;
          padding-left: 22px;
          white-space: normal;
        }
      }
      .fields {
        display: grid;
        padding: 4px 0 14px;
        grid-template-columns: repeat(auto-fill, minmax(172px, 1fr));
        gap: 10px 16px;
      }
    `,
  ];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet that holds the inputs. */
  @property() sheet = JOB_ROW;

  protected readonly follow = new FollowBook(this, () => this.book);

  /** Groups that a person opened or folded. */
  private readonly chosen = new Map<string, boolean>();

  /** Puts the focus on an input, and opens its group. */
  goTo(column: string): void {
    const group = this.book?.sheet(this.sheet)?.columns.find(({ id }) => id === column)?.group;
    if (group !== undefined) this.chosen.set(group, true);
    this.requestUpdate();
    this.performUpdate();
    const field = this.renderRoot.querySelector<Field>(`[data-column='${CSS.escape(column)}']`);
    void field?.updateComplete.then(() => {
      field.focus();
    });
  }

  protected override render() {
    const view = this.book?.sheet(this.sheet);
    if (!view) return nothing;
    const groups = [...new Set(view.columns.map(({ group }) => group))];
    return html`<div class="groups">
      ${groups.map((group) =>
        this.renderGroup(
          view,
          group,
          view.columns.filter((column) => column.group === group),
        ),
      )}
    </div>`;
  }

  private renderGroup(
    view: SheetView,
    group: string,
    columns: readonly ColumnView[],
  ): TemplateResult {
    const { given, blank, isAsking } = groupWords(view, columns);
    const open = this.chosen.get(group) ?? (isAsking || this.isEmptyJob());
    return html`<details
      .open=${open}
      @toggle=${(event: Event) => {
        const { open: now } = event.target as HTMLDetailsElement;
        if (now !== open) this.chosen.set(group, now);
        this.requestUpdate();
      }}
    >
      <summary>
        <h3>${group === '' ? 'Your own' : group}</h3>
        ${
          open
            ? nothing
            : html`<span class="read" title=${given}
                >${isAsking ? html`<span class="asking">To be answered. </span>` : nothing}${setFractions(given)}${
                  blank.length === 0
                    ? nothing
                    : html`<em>${given === '' ? '' : '; '}not given: ${blank.join(', ')}</em>`
                }</span
              >`
        }
      </summary>
      ${
        open
          ? html`<div class="fields">
              ${columns.map((column) => this.renderField(view, column))}
            </div>`
          : nothing
      }
    </details>`;
  }

  /** A job without posts is being set up: its inputs are what there is to do. */
  private isEmptyJob(): boolean {
    return (this.book?.sheet('posts')?.rowCount ?? 0) === 0;
  }

  private renderField(view: SheetView, column: ColumnView): TemplateResult {
    return html`<bp-field
      data-column=${column.id}
      title=${column.help === '' ? nothing : column.help}
      .column=${column}
      .cell=${view.cell(0, column.id)}
      @field-kept=${({ detail, currentTarget }: FieldKept) => {
        this.keep(view, column, detail, seenIn(currentTarget));
      }}
    ></bp-field>`;
  }

  private keep(view: SheetView, column: ColumnView, text: string, seen?: string) {
    this.book?.type(view.id, view.rowId(0), column.id, text, seen);
    const { state, note } = this.book?.sheet(view.id)?.cell(0, column.id) ?? {};
    if (note !== undefined && (state === 'wrong' || state === 'ask')) send(this, 'say', note);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-job-form': JobForm;
  }
}
