import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ColumnView, Stop } from '../../worksheet/index.ts';
import { unitWords } from '../drawings/figures.ts';
import { CEMENT, CODE, LIFTING, SERVICES } from './cautions.ts';
import {
  blankLine,
  cautionList,
  pageHeader,
  printedCell,
  saidIn,
  saidLine,
  stopList,
  tickLine,
} from './page-parts.ts';
import { pageStyle } from './page-style.ts';
import { supplierGroups, type SupplierGroup, type SupplierLine } from './supplier-list.ts';

const ALWAYS = ['quantity', 'unit', 'size', 'length'];
const WHERE_FILLED = [
  'longer',
  'other_mix',
  'other_quantity',
  'width',
  'treatment',
  'species',
  'grade',
  'finish',
  'pack_quantity',
  'detail',
  'note',
];
/** Sheets whose stops may change what is ordered, each told in full. */
const ORDERED = ['holes', 'bags', 'materials'];

/** The list a yard's clerk fills: stock pieces by item, largest first, and what the delivery needs. */
@customElement('bp-supplier-page')
export class SupplierPage extends LitElement {
  static override readonly styles = pageStyle;

  /** The book the list is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    const groups = supplierGroups(book);
    const stops = book.stops();
    return html`
      ${pageHeader(book, 'Supplier’s list')}
      <dl class="blanks">
        ${saidLine(book, 'Company', 'company')} ${saidLine(book, 'Account or PO', 'account')}
        ${saidLine(book, 'Phone', 'company_phone')} ${saidLine(book, 'Contact', 'yard_contact')}
        ${tickLine(book, 'This is', 'order_kind', ['a request for prices', 'an order'])}
        ${saidLine(book, 'Needed by', 'needed_by')}
      </dl>
      ${this.renderHold(groups, stops)} ${this.renderTable(groups)}
      <h2>Delivery</h2>
      <dl class="blanks">
        ${tickLine(book, 'Handing over', 'handing_over', ['delivery', 'pick-up'])}
        ${tickLine(book, 'Substitutes', 'substitutes', ['yes', 'ask first', 'no'])}
        ${saidLine(book, 'Delivery address', placeOf(book), true)}
        ${saidLine(book, 'Date', 'delivery_date')}
        ${saidLine(book, 'Time window', 'delivery_window')}
        ${saidLine(book, 'Drop point', 'drop_point')}
        ${saidLine(book, 'Truck access', 'truck_access')} ${loadLine(book)}
      </dl>
      <h2>Before it is lifted and used</h2>
      ${stopList(stops.filter(({ sheet, level }) => (level === 'stop' ? ORDERED.includes(sheet) : sheet === 'materials')))}
      ${cautionList([LIFTING, CEMENT, SERVICES, CODE])}
    `;
  }

  private renderHold(groups: readonly SupplierGroup[], stops: readonly Stop[]) {
    const lines = groups.flatMap((group) => group.lines);
    const open = lines.filter((line) => line.cell('quantity')?.state !== 'known').length;
    const asks = this.book?.asks().length ?? 0;
    const stopped = [
      ...new Set(stops.flatMap(({ level, rowName }) => (level === 'stop' ? [rowName] : []))),
    ];
    const found = [
      open === 0 ? '' : `${counted(open, 'line waits', 'lines wait')} for a quantity`,
      asks === 0 ? '' : `${counted(asks, 'reading is', 'readings are')} still asked about`,
      stopped.length === 0
        ? ''
        : `${counted(stopped.length, 'stop', 'stops')} at ${listed(stopped)}`,
    ].filter((part) => part !== '');
    if (lines.length === 0) {
      return html`<p class="hold">Nothing on the list yet: no post needs material.</p>`;
    }
    if (found.length === 0) return nothing;
    return html`<p class="hold">
      Not ready to order: ${found.join(', ')}. Settle these first; the list may change.
    </p>`;
  }

  private renderTable(groups: readonly SupplierGroup[]): TemplateResult | typeof nothing {
    if (groups.length === 0) return nothing;
    const columns = this.shownColumns(groups);
    const byHand = !columns.some(({ id }) => id === 'treatment');
    return html`<table>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col">Item</th>
          ${columns.map(
            (column) =>
              html`<th scope="col" class=${isNumber(column) ? 'number' : ''}>
                ${column.label}${headNote(column)}
              </th>`,
          )}
          ${byHand ? html`<th scope="col" class="hand">Treatment<small>for the yard</small></th>` : nothing}
          <th scope="col">Got</th>
        </tr>
      </thead>
      ${groups.map((group, index) => renderGroup(group, columns, linesBefore(groups, index), byHand))}
    </table>`;
  }

  private shownColumns(groups: readonly SupplierGroup[]): readonly ColumnView[] {
    const { book } = this;
    const columns = book?.sheet('materials')?.columns ?? [];
    const lines = groups.flatMap((group) => group.lines);
    const taken = book && saidIn(book, 'substitutes') === 'no' ? ['longer'] : [];
    const filled = (id: string) =>
      !taken.includes(id) && lines.some((line) => (line.cell(id)?.text ?? '') !== '');
    return [...ALWAYS, ...WHERE_FILLED.filter(filled)].flatMap((id) =>
      columns.filter((column) => column.id === id),
    );
  }
}

function renderGroup(
  group: SupplierGroup,
  columns: readonly ColumnView[],
  before: number,
  byHand: boolean,
): TemplateResult {
  return html`<tbody class="group">
    ${group.lines.map(
      (line, index) =>
        html`<tr>
          <td>${before + index + 1}</td>
          <th scope="row">${group.item}</th>
          ${columns.map((column) => renderCell(line, column))}
          ${byHand ? html`<td class="hand"></td>` : nothing}
          <td><i class="tick"></i></td>
        </tr>`,
    )}
  </tbody>`;
}

function renderCell(line: SupplierLine, column: ColumnView) {
  const cell = line.cell(column.id);
  const classes = [isNumber(column) ? 'number' : '', column.id === 'quantity' ? 'quantity' : ''];
  return html`<td class=${classes.join(' ')}>
    ${cell ? printedCell(column.id === 'unit' ? { ...cell, text: unitWords(cell.text) } : cell) : nothing}
  </td>`;
}

function headNote({ hint, unit }: ColumnView): TemplateResult | typeof nothing {
  const said = [hint, unitWords(unit)].filter((part) => part !== '').join(', ');
  return said === '' ? nothing : html`<small>${said}</small>`;
}

/** What the truck has to carry; the wood is not weighed. */
function loadLine(book: BookView): TemplateResult {
  const unit = book.sheet('job')?.columns.find(({ id }) => id === 'delivery_weight')?.unit ?? '';
  const said = saidIn(book, 'delivery_weight');
  if (said === '' || said === '0') return blankLine('Bags weigh');
  return html`<div class="blank">
    <dt>Bags weigh</dt>
    <dd>${said} ${unit}, besides the wood</dd>
  </div>`;
}

function placeOf(book: BookView): string {
  return saidIn(book, 'delivery_address') === '' ? 'site_address' : 'delivery_address';
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

function listed(names: readonly string[]): string {
  const shown = names.slice(0, 6).join(', ');
  return names.length > 6 ? `${shown} and ${String(names.length - 6)} more` : shown;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-supplier-page': SupplierPage;
  }
}
