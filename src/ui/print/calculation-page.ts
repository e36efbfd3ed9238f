import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { authority } from '../../output/index.ts';
import type { BookView, CellView, ColumnView, SheetView, Stop } from '../../worksheet/index.ts';
import '../drawings/index.ts';
import { unitWords } from '../drawings/figures.ts';
import { setFractions } from '../fraction.ts';

import { ALL_CAUTIONS } from './cautions.ts';
import { blankLine, cautionList, pageHeader, printedCell, stopList } from './page-parts.ts';
import { pageStyle } from './page-style.ts';
import { tableParts } from './table-parts.ts';
import { followedWorkings } from './followed-working.ts';
import { columnWorkings } from './working-parts.ts';

const SHEETS = ['posts', 'holes'];

/** What a page is of: a whole sheet, or one row on every sheet where it stands. */
export interface PagePart {
  readonly sheet: string;
  readonly row?: string | undefined;
}

/** The working of posts and holes for whoever checks it: inputs, formulas with their sources, values, cautions. */
@customElement('bp-calculation-page')
export class CalculationPage extends LitElement {
  static override readonly styles = pageStyle;

  /** The book the working is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  /** Only the working of this sheet or row; absent means posts and holes whole, with the job's inputs. */
  @property({ attribute: false }) portion: PagePart | undefined;

  protected override render() {
    const { book, portion: part } = this;
    if (!book) return nothing;
    return html`<div class="calculation">
      ${pageHeader(book, calculationTitle(book, part))}
      <dl class="blanks">
        ${blankLine('Address', true)} ${blankLine('Worked by')} ${blankLine('Date')}
        ${blankLine('License')} ${blankLine('Checked by')}
      </dl>
      ${editionsOf(book, part).map((editions) => html`<p class="question">${editions}</p>`)}
      <h2>Stops and cautions</h2>
      ${stopList(book.stops().filter((stop) => !part || bearsOn(stop, part)))}
      ${cautionList(ALL_CAUTIONS)} ${part ? renderPartOf(book, part) : renderWhole(book)}
    </div>`;
  }
}

function renderWhole(book: BookView): TemplateResult {
  const job = book.sheet('job');
  return html`<h2>The run</h2>
    <bp-elevation still .book=${book}></bp-elevation>
    ${job ? html`${renderInputs(job)} ${columnWorkings(book, job, allRows(job))}` : nothing}
    ${SHEETS.map((id) => {
      const sheet = book.sheet(id);
      return sheet && sheet.rowCount > 0
        ? html`${renderValues(sheet, book)} ${columnWorkings(book, sheet, allRows(sheet))}`
        : nothing;
    })}
    ${renderSections(book, drawnHoles(book))}`;
}

function renderPartOf(book: BookView, { sheet: of, row }: PagePart): TemplateResult {
  const sheet = book.sheet(of);
  if (row === undefined || of === 'job') {
    return html`${sheet && of !== 'job' ? renderValues(sheet, book) : nothing}
    ${sheet && of === 'job' ? renderInputs(sheet) : nothing}
    ${sheet ? columnWorkings(book, sheet, allRows(sheet)) : nothing}`;
  }
  const holes = book.sheet('holes');
  const drawn = holes ? allRows(holes).filter((at) => holes.rowId(at) === row) : [];
  return html`${
    (sheet?.follow.length ?? 0) > 0 ? followedWorkings(book, row, of) : renderRow(book, row)
  }
  ${renderSections(
    book,
    drawn.map((at) => ({ id: row, name: holes?.rowName(at) ?? '' })),
  )}`;
}

function renderRow(book: BookView, row: string): TemplateResult {
  return html`${book.sheets.map((view) => {
    const rows = allRows(view).filter((at) => view.rowId(at) === row);
    return rows.length === 0 ? nothing : columnWorkings(book, view, rows);
  })}`;
}

/** What a page is called: `Posts and holes: the working`, `Post 3: the working`. */
export function calculationTitle(book: BookView, part: PagePart | undefined): string {
  return `${part ? partName(book, part) : 'Posts and holes'}: the working`;
}

/** The editions behind the sheets of a page, each said once. */
function editionsOf({ sheets }: BookView, part: PagePart | undefined): readonly string[] {
  const isHole = part?.row !== undefined && part.sheet === 'holes';
  return sheets.flatMap(({ id, editions }) =>
    editions === '' || (isHole && id !== 'holes') ? [] : [editions],
  );
}

function partName(book: BookView, { sheet: of, row }: PagePart): string {
  const sheet = book.sheet(of);
  const at = sheet && allRows(sheet).find((each) => sheet.rowId(each) === row);
  const name = sheet && at !== undefined ? sheet.rowName(at) : '';
  if (name === '') return sheet?.title ?? '';
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}

function bearsOn(stop: Stop, { sheet, row }: PagePart): boolean {
  return row === undefined || sheet === 'job' ? stop.sheet === sheet : stop.row === row;
}

function allRows(sheet: SheetView): readonly number[] {
  return Array.from({ length: sheet.rowCount }, (_, row) => row);
}

function renderSections(
  book: BookView,
  rows: readonly { readonly id: string; readonly name: string }[],
): TemplateResult | typeof nothing {
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
  const stopped = new Set(book.stops({ level: 'stop', sheet: 'holes' }).map(({ row }) => row));
  const [first] = rows;
  const second = rows.find(({ id }) => id !== first?.id && stopped.has(id));
  return [first, second].filter((row) => row !== undefined);
}

function renderInputs(job: SheetView): TemplateResult {
  // What is worked out stands with its formula below.
  const given = job.columns.filter(
    ({ id, formula }) =>
      job.cell(0, id).text !== '' &&
      (formula === undefined || (job.cell(0, id).typed ?? '') !== ''),
  );
  const blank = job.columns.filter(
    ({ id, show }) => show !== 'more' && job.cell(0, id).text === '',
  );
  return html`<h2>${job.title}</h2>
    <p class="question">${job.question}</p>
    <div class="inputs">
      <table>
        <thead>
          <tr>
            <th scope="col">Input</th>
            <th scope="col" class="number">Value</th>
            <th scope="col">Who says so</th>
          </tr>
        </thead>
        <tbody>
          ${given.map(
            ({ id, label, unit, standing, source }) =>
              html`<tr>
                <th scope="row">${label}</th>
                <td class="number">${printedCell(job.cell(0, id), unitWords(unit))}</td>
                <td>${inputAuthority(job.cell(0, id), standing, source)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    ${blank.length === 0 ? nothing : html`<p>Left blank: ${blank.map(({ label }) => label).join(', ')}.</p>`}`;
}

// What nobody typed is the job's starting value, whoever stands behind it.
function inputAuthority({ typed }: CellView, standing: string, source: string): string {
  if ((typed ?? '') !== '') return 'yours';
  return standing === 'yours' ? 'as a job starts' : authority(standing, source);
}

function renderValues(sheet: SheetView, book: BookView): TemplateResult {
  const parts = tableParts(sheet);
  const bearing = book.stops({ level: 'stop', sheet: sheet.id });
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

declare global {
  interface HTMLElementTagNameMap {
    'bp-calculation-page': CalculationPage;
  }
}
