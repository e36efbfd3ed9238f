import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookView, ColumnView, SheetView } from '../../worksheet/index.ts';
import '../drawings/index.ts';
import { unitWords } from '../drawings/figures.ts';
import { setFractions } from '../fraction.ts';
import { ALL_CAUTIONS } from './cautions.ts';
import { blankLine, cautionList, pageHeader, printedCell, stopList } from './page-parts.ts';
import { pageStyle } from './page-style.ts';
import { tableParts } from './table-parts.ts';

const SHEETS = ['posts', 'holes'];

/** The working of posts and holes for whoever checks it: inputs, formulas with their sources, values, cautions. */
@customElement('bp-calculation-page')
export class CalculationPage extends LitElement {
  static override readonly styles = pageStyle;

  /** The book the working is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    const job = book.sheet('job');
    return html`
      ${pageHeader(book, 'Posts and holes: the working')}
      <dl class="blanks">
        ${blankLine('Address', true)} ${blankLine('Worked by')} ${blankLine('Date')}
        ${blankLine('License')} ${blankLine('Checked by')}
      </dl>
      <h2>Stops and cautions</h2>
      ${stopList(book.stops())} ${cautionList(ALL_CAUTIONS)}
      <h2>The run</h2>
      <bp-elevation still .book=${book}></bp-elevation>
      ${job ? renderInputs(job) : nothing}
      ${SHEETS.map((id) => {
        const sheet = book.sheet(id);
        return sheet && sheet.rowCount > 0
          ? html`${renderValues(sheet, book)} ${renderRules(sheet)}`
          : nothing;
      })}
      ${renderSections(book)}
    `;
  }
}

function renderSections(book: BookView): TemplateResult | typeof nothing {
  const rows = drawnHoles(book);
  if (rows.length === 0) return nothing;
  return html`<div class="sections">
    ${rows.map(
      ({ id, name }) =>
        html`<section>
          <h3>The hole for ${name}, in section</h3>
          <bp-hole-section .book=${book} .current=${id}></bp-hole-section>
        </section>`,
    )}
  </div>`;
}

// The first hole stands for those like it; beside it the first that is stopped.
function drawnHoles(book: BookView): readonly { readonly id: string; readonly name: string }[] {
  const holes = book.sheet('holes');
  if (!holes) return [];
  const rows = Array.from({ length: holes.rowCount }, (_, row) => ({
    id: holes.rowId(row),
    name: holes.rowName(row),
  }));
  const stopped = new Set(
    book
      .stops()
      .flatMap(({ sheet, row, level }) => (sheet === 'holes' && level === 'stop' ? [row] : [])),
  );
  const [first] = rows;
  const second = rows.find(({ id }) => id !== first?.id && stopped.has(id));
  return [first, second].filter((row) => row !== undefined);
}

function renderInputs(job: SheetView): TemplateResult {
  const given = job.columns.filter(({ id }) => job.cell(0, id).text !== '');
  const blank = job.columns.filter(
    ({ id, show }) => show !== 'more' && job.cell(0, id).text === '',
  );
  return html`<h2>${job.title}</h2>
    <p class="question">${job.question}</p>
    <table>
      <thead>
        <tr>
          <th scope="col">Input</th>
          <th scope="col" class="number">Value</th>
          <th scope="col">Standing</th>
          <th scope="col">Source</th>
        </tr>
      </thead>
      <tbody>
        ${given.map(
          ({ id, label, unit, standing, source }) =>
            html`<tr>
              <th scope="row">${label}</th>
              <td class="number">${printedCell(job.cell(0, id), unitWords(unit))}</td>
              <td>${standing}</td>
              <td>${source}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${blank.length === 0 ? nothing : html`<p>Left blank: ${blank.map(({ label }) => label).join(', ')}.</p>`}`;
}

function renderValues(sheet: SheetView, book: BookView): TemplateResult {
  const parts = tableParts(sheet);
  const bearing = book.stops().filter((stop) => stop.sheet === sheet.id && stop.level === 'stop');
  return html`<h2>${sheet.title}</h2>
    <p class="question">${sheet.question}</p>
    ${stopList(bearing)} ${parts.map((columns) => renderPart(sheet, columns))}`;
}

function renderPart(sheet: SheetView, columns: readonly ColumnView[]): TemplateResult {
  const rows = Array.from({ length: sheet.rowCount }, (_, row) => row);
  const totals = sheet.totals();
  const totalled = columns.some(({ id }) => totals.has(id));
  return html`<table class=${columns.length < 4 ? 'narrow' : ''}>
    <thead>
      <tr>
        <th scope="col">Row</th>
        ${columns.map(
          ({ label, hint, unit, kind }) =>
            html`<th scope="col" class=${kind.type === 'quantity' ? 'number' : ''}>
              ${label}<small
                >${[hint, unitWords(unit)].filter((part) => part !== '').join(', ')}</small
              >
            </th>`,
        )}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) =>
          html`<tr>
            <th scope="row">${sheet.rowName(row)}</th>
            ${columns.map(({ id, kind }) => {
              const cell = sheet.cell(row, id);
              return html`<td class=${kind.type === 'quantity' ? 'number' : ''}>
                ${printedCell(cell)}
              </td>`;
            })}
          </tr>`,
      )}
      ${
        totalled
          ? html`<tr>
              <th scope="row">total</th>
              ${columns.map(({ id }) => html`<td class="number">${setFractions(totals.get(id) ?? '')}</td>`)}
            </tr>`
          : nothing
      }
    </tbody>
  </table>`;
}

function renderRules(sheet: SheetView): TemplateResult | typeof nothing {
  const worked = sheet.columns.filter(({ formula }) => formula !== undefined);
  if (worked.length === 0) return nothing;
  return html`<table>
    <thead>
      <tr>
        <th scope="col">${sheet.title}: worked out</th>
        <th scope="col">Formula in force</th>
        <th scope="col">Standing and source</th>
      </tr>
    </thead>
    <tbody>
      ${worked.map(
        ({ label, formula, standing, source, entered }) =>
          html`<tr>
            <th scope="row">${label}</th>
            <td class="formula">
              ${formula}${entered ? html`<small>an entry stands over it</small>` : nothing}
            </td>
            <td>${standing}${source === '' ? nothing : html`<small>${source}</small>`}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-calculation-page': CalculationPage;
  }
}
