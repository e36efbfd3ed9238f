import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import {
  EXCLUDED,
  moneyText,
  ownExclusions,
  quoteLines,
  quoteOptions,
  quoteSums,
  quoteWaits,
} from '../../output/index.ts';
import type { BookView } from '../../worksheet/index.ts';
import '../drawings/index.ts';
import { setFractions } from '../fraction.ts';
import { blankLine, pageHeader, saidLine } from './page-parts.ts';
import { pageStyle } from './page-style.ts';

/** What the customer reads and signs: what was found, what is done, what it costs and what is left out. */
@customElement('bp-quote-page')
export class QuotePage extends LitElement {
  static override readonly styles = [
    pageStyle,
    css`
      .sums {
        width: 55%;
        margin-inline-start: auto;
        break-inside: avoid;
      }
      .sums tr.total {
        font-weight: 600;
        font-size: 13pt;
      }
      .small {
        margin-top: 4pt;
      }
      .left-out {
        margin: 4pt 0 0;
        padding-inline-start: 14pt;
        columns: 2;
      }
      .signs {
        margin-top: 26pt;
      }
      .remedy h3 {
        margin: 8pt 0 0;
        font-size: 12pt;
        break-after: avoid;
      }
      .soft {
        color: #333;
      }
      .findings {
        margin: 2pt 0 0;
        padding: 0;
        list-style: none;
        columns: 2;
        column-gap: 18pt;
      }
      .findings li {
        padding-inline-start: 22pt;
        text-indent: -22pt;
        break-inside: avoid;
      }
      .findings b {
        display: inline-block;
        min-width: 22pt;
        text-indent: 0;
      }
      .keep {
        break-inside: avoid;
      }
    `,
  ];

  /** The book the quote is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    return html`
      ${pageHeader(book, 'Quote')}
      <dl class="blanks">
        ${saidLine(book, 'Company', 'company')} ${saidLine(book, 'License', 'license')}
        ${saidLine(book, 'Phone', 'company_phone')} ${saidLine(book, 'Date', 'quote_date')}
        ${saidLine(book, 'For', 'customer')} ${saidLine(book, 'Valid until', 'valid_until')}
        ${saidLine(book, 'Address', 'site_address', true)}
      </dl>
      ${this.renderHold(book)}
      <h2>What we found</h2>
      <bp-elevation still .book=${book}></bp-elevation>
      ${this.renderLines(book)}
      <div class="keep">
        <h2>The price</h2>
        ${this.renderSums(book)}
      </div>
      <div class="keep">
        <h2>How it goes</h2>
        ${this.renderVisits(book)}
      </div>
      <div class="keep">
        <h2>Not in this price</h2>
        <ul class="left-out">
          ${[...EXCLUDED, ownExclusions(book)].filter((words) => words !== '').map((words) => html`<li>${words}</li>`)}
        </ul>
        <p class="small">${this.changeWords(book)}</p>
      </div>
      <div class="keep">
        <h2>If you wish instead, or besides</h2>
        ${this.renderChoices(book)}
        <dl class="blanks">${blankLine('Besides', true)} ${blankLine('for')}</dl>
        <dl class="blanks signs">
          ${saidLine(book, 'Warranty', 'warranty', true)} ${blankLine('Start')}
          ${blankLine('Finish')} ${blankLine('Customer’s signature')} ${blankLine('Date')}
          ${blankLine('For the company')} ${blankLine('Date')}
        </dl>
      </div>
    `;
  }

  private renderHold(book: BookView): TemplateResult | typeof nothing {
    const open = quoteLines(book).filter(({ remedy }) => remedy === 'not decided yet').length;
    const waits = quoteWaits(book);
    const asks = book.asks().length;
    const found = [
      waits === '' ? '' : `no price yet: ${waits}`,
      open === 0 ? '' : counted(open, 'post is not decided', 'posts are not decided'),
      asks === 0
        ? ''
        : counted(asks, 'reading is still asked about', 'readings are still asked about'),
    ].filter((words) => words !== '');
    return found.length === 0
      ? nothing
      : html`<p class="hold">Not ready to sign: ${found.join('; ')}.</p>`;
  }

  private renderLines(book: BookView): TemplateResult {
    const lines = quoteLines(book);
    if (lines.length === 0) return html`<p>No post needs work.</p>`;
    const kinds = new Map(lines.map((line) => [line.remedy + line.included, line]));
    return html`${[...kinds].map(([kind, { remedy, included }]) => {
      const alike = lines.filter((line) => line.remedy + line.included === kind);
      return html`<section class="remedy">
        <h3>${capital(remedy)}: ${counted(alike.length, 'post', 'posts')}</h3>
        ${included === '' ? nothing : html`<p class="soft">Included: ${included}.</p>`}
        <ul class="findings">
          ${alike.map(
            ({ post, finding }) =>
              html`<li>
                <b>${post}</b>
                ${setFractions(finding === '' && remedy !== 'not decided yet' ? 'as agreed' : finding)}
              </li>`,
          )}
        </ul>
      </section>`;
    })}`;
  }

  private renderSums(book: BookView): TemplateResult {
    return html`<table class="sums">
      <tbody>
        ${quoteSums(book).map(
          ({ name, amount }) =>
            html`<tr class=${name === 'Total' ? 'total' : ''}>
              <th scope="row">${name}</th>
              <td class="number">
                ${amount === '' ? html`<span class="waits">not known yet</span>` : thousands(amount)}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private renderChoices(book: BookView): TemplateResult | typeof nothing {
    const options = quoteOptions(book);
    if (options.length === 0) return nothing;
    return html`<table>
      <tbody>
        ${options.map(
          ({ name, amount }) =>
            html`<tr>
              <td><i class="tick"></i></td>
              <th scope="row">${name}</th>
              <td class="number">total ${thousands(amount)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private renderVisits(book: BookView): TemplateResult {
    const visits = book.sheet('job')?.cell(0, 'visits').value;
    return visits === 2
      ? html`<p>
          We come twice. On the first visit the posts are set and the fence is propped; it then has
          to stand untouched while the concrete gains strength. On the second visit the rails and
          boards are hung again and the props come down. Please keep people, pets and play away from
          the propped side until then.
        </p>`
      : html`<p>The work is done in one visit.</p>`;
  }

  private changeWords(book: BookView): string {
    const rate = moneyText(book, 'change_rate');
    const price = rate === '' ? 'priced first' : `${rate} an hour`;
    return `Extra work is ${price}, and only done once you have signed for it. Hauling and any permit fee are in the price above.`;
  }
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

// `4722.43 USD` as people read it: 4,722.43 USD.
function thousands(amount: string): string {
  return amount.replace(/\d+(?=\.\d\d)/gu, (whole) => whole.replace(/\B(?=(\d{3})+$)/gu, ','));
}

function counted(count: number, one: string, many: string): string {
  return `${String(count)} ${count === 1 ? one : many}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-quote-page': QuotePage;
  }
}
