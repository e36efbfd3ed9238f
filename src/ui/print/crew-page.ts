import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { crewLines, type CrewLine } from '../../output/index.ts';
import type { BookView } from '../../worksheet/index.ts';
import '../drawings/index.ts';
import { setFractions } from '../fraction.ts';
import { CEMENT, LIFTING, PROPS, SERVICES, SILICA } from './cautions.ts';
import { crewStyle } from './crew-style.ts';
import { blankLine, cautionList, pageHeader, saidLine, stopList } from './page-parts.ts';
import { pageStyle } from './page-style.ts';

/** What the crew carries to the fence: post after post, with boxes to tick and room for the gap read after. */
@customElement('bp-crew-page')
export class CrewPage extends LitElement {
  static override readonly styles = [pageStyle, crewStyle];

  /** The book the sheet is drawn from. */
  @property({ attribute: false }) book: BookView | undefined;

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    const lines = crewLines(book);
    return html`
      ${pageHeader(book, 'Crew sheet')}
      <dl class="blanks">
        ${saidLine(book, 'Address', 'site_address', true)} ${blankLine('Date')} ${blankLine('Crew')}
        ${saidLine(book, 'Locate ticket', 'locate_ticket')}
        ${saidLine(book, 'Valid to', 'locate_valid_to')}
      </dl>
      <h2>Before anything else</h2>
      ${cautionList([SERVICES, PROPS, LIFTING, SILICA, CEMENT])}
      ${stopList(book.stops().filter((stop) => stop.level === 'stop' && !lines.some(({ row }) => row === stop.row)))}
      <h2>Post by post</h2>
      ${lines.length === 0 ? html`<p class="hold">No post needs work yet.</p>` : lines.map(renderPost)}
      ${this.renderCuts(book)}
      <h2>At the end of the visit</h2>
      <dl class="blanks">
        ${['Props checked', 'Open holes covered', 'Boards and rails stacked clear', 'Rubble and wood loaded'].map((words) => tickRow(words))}
        ${blankLine('Poured at')} ${blankLine('Left at')}
      </dl>
    `;
  }

  private renderCuts(book: BookView): TemplateResult | typeof nothing {
    if ((book.cuts?.() ?? []).length === 0) return nothing;
    return html`<h2>Cut the stock like this</h2>
      <bp-cutting-plan .book=${book}></bp-cutting-plan>`;
  }
}

function renderPost(line: CrewLine): TemplateResult {
  const facts: readonly (readonly [string, string])[] = [
    ['Because', line.because],
    ['Reads', line.reads],
    ['Old footing', line.oldFooting],
    ['Hole', line.hole],
    ['Gravel', line.gravel],
    ['Bags', line.bags],
    ['Post', line.cut],
    ['Set to', line.setTo],
    ['Props', line.props],
    ['Rail ends', line.railEnds],
    ['Rehang', line.rehangAfter],
  ];
  return html`<section class="post">
    <h3>${line.post}<span>${line.action}${line.way === '' ? '' : `: ${line.way}`}</span></h3>
    ${line.stops.map((words) => html`<p class="stop"><strong>Stop:</strong> ${setFractions(words)}</p>`)}
    <dl>
      ${facts
        .filter(([, said]) => said !== '')
        .map(
          ([name, said]) =>
            html`<div>
              <dt>${name}</dt>
              <dd>${setFractions(said)}</dd>
            </div>`,
        )}
    </dl>
    ${
      line.hazards.length === 0
        ? nothing
        : html`<p class="hazards">
            <strong>Mind:</strong> ${setFractions(line.hazards.join('; '))}
          </p>`
    }
    <dl class="done">${tickRow('Done')} ${blankLine('Gap after')} ${blankLine('Initials')}</dl>
  </section>`;
}

function tickRow(words: string): TemplateResult {
  return html`<div class="blank">
    <dt><i class="tick"></i>${words}</dt>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-crew-page': CrewPage;
  }
}
