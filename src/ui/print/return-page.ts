import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { proofWords, returnLines, type ReturnLine } from '../../output/index.ts';
import type { BookView } from '../../worksheet/index.ts';
import { setFractions } from '../fraction.ts';
import { blankLine, pageHeader, saidIn, saidLine } from './page-parts.ts';
import { pageStyle } from './page-style.ts';

/** Snags to be written in by hand. */
const BLANK_ROWS = [1, 2, 3, 4, 5];

/** The return visit: every gap read again beside the first, what is still to be put right, and the proof of plumb. */
@customElement('bp-return-page')
export class ReturnPage extends LitElement {
  static override readonly styles = [
    pageStyle,
    css`
      .again {
        min-width: 62pt;
      }
      .out td,
      .out th {
        font-weight: 600;
      }
      .blank-row td {
        height: 20pt;
        width: 20%;
      }
      .blank-row td:nth-child(2) {
        width: 60%;
      }
      .signs {
        margin-top: 22pt;
      }
      .keep {
        break-inside: avoid;
      }
    `,
  ];

  /** The book the page is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    const lines = returnLines(book);
    const tolerance = saidIn(book, 'plumb_tolerance');
    const unit = book.sheet('job')?.columns.find(({ id }) => id === 'plumb_tolerance')?.unit ?? '';
    return html`
      ${pageHeader(book, 'Return visit')}
      <dl class="blanks">
        ${saidLine(book, 'Company', 'company')} ${saidLine(book, 'For', 'customer')}
        ${saidLine(book, 'Address', 'site_address', true)} ${blankLine('Date')}
        ${blankLine('Read by')}
      </dl>
      <h2>The same gaps, read again</h2>
      <p>
        Same face, same level, same way as the first time. ${proofWords(lines)} Plumb is within
        ${setFractions(`${tolerance} ${unit.replace('/', ' per ')}`)}.
      </p>
      ${renderGaps(lines)}
      <div class="keep">
        <h2>Still to be put right</h2>
        ${renderSnags(lines)}
      </div>
      <dl class="blanks signs keep">
        ${blankLine('Seen by the customer')} ${blankLine('Date')} ${blankLine('For the company')}
        ${blankLine('Date')}
      </dl>
    `;
  }
}

function renderGaps(lines: readonly ReturnLine[]): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        ${[
          'Post',
          'Work done',
          'Gap first',
          'Gap again',
          'Change',
          'Proof of plumb',
          'Read on',
        ].map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${lines.map(
        (line) =>
          html`<tr class=${line.proof === 'out' ? 'out' : ''}>
            <th scope="row">${line.post}</th>
            <td>${line.work}</td>
            <td>${setFractions(line.first)}</td>
            <td class="again">${setFractions(line.again)}</td>
            <td>${setFractions(line.change)}</td>
            <td>${line.proof === 'not read' ? html`<i class="tick"></i>` : line.proof}</td>
            <td>${line.readOn}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function renderSnags(lines: readonly ReturnLine[]): TemplateResult {
  const snags = lines.filter(({ isOpen, snag }) => isOpen || snag !== '');
  return html`<table>
    <thead>
      <tr>
        <th scope="col">Post</th>
        <th scope="col">Snag</th>
        <th scope="col">Put right</th>
      </tr>
    </thead>
    <tbody>
      ${snags.map(
        ({ post, snag, proof, again, isPutRight }) =>
          html`<tr>
            <th scope="row">${post}</th>
            <td>
              ${setFractions(
                [proof === 'out' ? `out, reads ${again}` : '', snag]
                  .filter((words) => words !== '')
                  .join('; '),
              )}
            </td>
            <td>${isPutRight ? 'yes' : html`<i class="tick"></i>`}</td>
          </tr>`,
      )}
      ${
        // What is found on site is written here by hand.
        snags.length > 0 && lines.every(({ proof }) => proof !== 'not read')
          ? nothing
          : BLANK_ROWS.map(
              () =>
                html`<tr class="blank-row">
                  <td></td>
                  <td></td>
                  <td><i class="tick"></i></td>
                </tr>`,
            )
      }
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-return-page': ReturnPage;
  }
}
