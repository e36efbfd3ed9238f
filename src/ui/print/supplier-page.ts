import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ColumnView } from '../../worksheet/index.ts';
import { unitWords } from '../drawings/figures.ts';
import { CEMENT, CODE, LIFTING, SERVICES } from './cautions.ts';
import {
  blankLine,
  cautionList,
  pageHeader,
  printedCell,
  saidLine,
  stopList,
  tickLine,
} from './page-parts.ts';
import { pageStyle } from './page-style.ts';
import { supplierGroups, type SupplierGroup, type SupplierLine } from './supplier-list.ts';

const ALWAYS = ['size', 'length', 'quantity', 'unit'];
const WHERE_FILLED = [
  'width',
  'needed',
  'species',
  'grade',
  'finish',
  'treatment',
  'pack_quantity',
  'detail',
  'note',
];
const CONCRETE = /bag|concrete|mix|cement/iu;

/** The list a yard's clerk fills: stock pieces by item, largest first, with blanks for the delivery. */
@customElement('bp-supplier-page')
export class SupplierPage extends LitElement {
  static override readonly styles = pageStyle;

  /** The book the list is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    if (!this.book) return nothing;
    const groups = supplierGroups(this.book);
    return html`
      ${pageHeader(this.book, 'Supplier’s list')}
      <dl class="blanks">
        ${saidLine(this.book, 'Company', 'company')} ${blankLine('Account or PO')}
        ${blankLine('Contact')} ${saidLine(this.book, 'Phone', 'company_phone')}
        ${tickLine('This is', ['a quote', 'an order'])} ${blankLine('Needed by')}
      </dl>
      ${this.renderHold(groups)} ${this.renderTable(groups)}
      <dl class="blanks">
        ${blankLine('Ground-contact treatment class, as the yard and local code require', true)}
        ${tickLine('Substitutes', ['yes', 'ask first', 'no'])}
        ${tickLine('Handing over', ['delivery', 'pick-up'])} ${blankLine('Delivery address', true)}
        ${blankLine('Date')} ${blankLine('Time window')} ${blankLine('Drop point')}
        ${blankLine('Truck access')}
      </dl>
      <h2>Before it is ordered and used</h2>
      ${stopList(this.book.stops().filter(({ sheet, level }) => level === 'stop' || sheet === 'materials'))}
      ${cautionList([SERVICES, CODE])}
    `;
  }

  private renderHold(groups: readonly SupplierGroup[]) {
    const lines = groups.flatMap((group) => group.lines);
    const open = lines.filter((line) => line.cell('quantity')?.state !== 'known').length;
    const asks = this.book?.asks().length ?? 0;
    const found = [
      open === 0 ? '' : `${counted(open, 'line waits', 'lines wait')} for a quantity`,
      asks === 0 ? '' : `${counted(asks, 'reading is', 'readings are')} still asked about`,
    ].filter((part) => part !== '');
    if (lines.length === 0) {
      return html`<p class="hold">Nothing on the list yet: no post needs material.</p>`;
    }
    if (found.length === 0) return nothing;
    return html`<p class="hold">
      Not complete: ${found.join(', ')}. Settle these before ordering.
    </p>`;
  }

  private renderTable(groups: readonly SupplierGroup[]): TemplateResult | typeof nothing {
    if (groups.length === 0) return nothing;
    const columns = this.shownColumns(groups);
    return html`<table>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Item</th>
          ${columns.map(
            (column) =>
              html`<th scope="col" class=${isNumber(column) ? 'number' : ''}>
                ${column.label}${column.unit === '' ? nothing : html`<small>${unitWords(column.unit)}</small>`}
              </th>`,
          )}
          ${
            columns.some(({ id }) => id === 'treatment')
              ? nothing
              : html`<th scope="col" class="hand">Treatment<small>for the yard</small></th>`
          }
          <th scope="col">Got</th>
        </tr>
      </thead>
      ${groups.map((group, index) => this.renderGroup(group, columns, linesBefore(groups, index)))}
    </table>`;
  }

  private renderGroup(group: SupplierGroup, columns: readonly ColumnView[], before: number) {
    const hand = columns.some(({ id }) => id === 'treatment')
      ? nothing
      : html`<td class="hand"></td>`;
    return html`<tbody>
      ${group.lines.map(
        (line, index) =>
          html`<tr>
            <td>${before + index + 1}</td>
            <th scope="row">${group.item}</th>
            ${columns.map((column) => renderCell(line, column))}${hand}
            <td><i class="tick"></i></td>
          </tr>`,
      )}
      ${
        CONCRETE.test(group.item)
          ? html`<tr class="beside">
              <td></td>
              <td colspan=${columns.length + 3}>
                ${LIFTING.words} ${CEMENT.words}
                <small>${LIFTING.authority}; ${CEMENT.authority}</small>
              </td>
            </tr>`
          : nothing
      }
    </tbody>`;
  }

  private shownColumns(groups: readonly SupplierGroup[]): readonly ColumnView[] {
    const columns = this.book?.sheet('materials')?.columns ?? [];
    const lines = groups.flatMap((group) => group.lines);
    const filled = (id: string) => lines.some((line) => (line.cell(id)?.text ?? '') !== '');
    return [...ALWAYS, ...WHERE_FILLED.filter(filled)].flatMap((id) =>
      columns.filter((column) => column.id === id),
    );
  }
}

function renderCell(line: SupplierLine, column: ColumnView) {
  const cell = line.cell(column.id);
  const classes = [isNumber(column) ? 'number' : '', column.id === 'quantity' ? 'quantity' : ''];
  return html`<td class=${classes.join(' ')}>
    ${cell ? printedCell(column.id === 'unit' ? { ...cell, text: unitWords(cell.text) } : cell) : nothing}
  </td>`;
}

function isNumber({ kind }: ColumnView): boolean {
  return kind.type === 'quantity';
}

function linesBefore(groups: readonly SupplierGroup[], index: number): number {
  return groups.slice(0, index).reduce((count, { lines }) => count + lines.length, 0);
}

function counted(count: number, one: string, many: string): string {
  return `${String(count)} ${count === 1 ? one : many}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-supplier-page': SupplierPage;
  }
}
