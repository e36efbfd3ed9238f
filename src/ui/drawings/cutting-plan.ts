import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { parseUnit, writeQuantity, writeTape } from '../../units/index.ts';
import type { BookView, CutList } from '../../worksheet/index.ts';
import { jobOf, wordsOf } from './cells.ts';
import { drawingStyle } from './drawing-style.ts';
import { Drawing } from './drawing.ts';
import { drawnFigures, px } from './figures.ts';

const ROW = 26;
const HEAD = 96;
const WIDEST = 640;

/** What is cut from which piece of stock: a bar for each, with how often it is cut so, and the offcut left open. */
@customElement('bp-cutting-plan')
export class CuttingPlanPicture extends Drawing {
  static override readonly styles = [
    drawingStyle,
    css`
      figure {
        break-inside: avoid;
      }
      figure + figure {
        margin-top: 12px;
      }
      figcaption {
        margin-bottom: 2px;
      }
      .piece {
        fill: var(--drawn-wood);
        fill-opacity: 0.55;
        stroke: var(--drawn-ink);
        stroke-width: 1;
      }
      .offcut {
        fill: none;
        stroke: var(--drawn-ink);
        stroke-width: 1;
        stroke-dasharray: 3 2;
      }
    `,
  ];

  protected override render() {
    const { book } = this;
    if (!book) return nothing;
    const lists = book.cuts?.() ?? [];
    return lists.map((list) => this.renderList(book, list));
  }

  private renderList(book: BookView, list: CutList): TemplateResult {
    const isMetric = wordsOf(jobOf(book), 0, 'units') === 'metric';
    const long = (metres: number): string => written(metres, isMetric);
    const room = Math.min(WIDEST, Math.max(280, this.room || WIDEST)) - HEAD;
    const longest = Math.max(...list.bars.map(({ stock }) => stock));
    const scale = room / longest;
    const height = list.bars.length * ROW + 4;
    return html`<figure>
      <figcaption>
        ${nameOf(list)}: ${list.byPrice ? 'cut for the least cost' : 'cut for the least length'},
        ${sumOf(list, list.total, book, long)} in all;
        ${proofOf(list, sumOf(list, list.bound, book, long))}.
      </figcaption>
      <svg
        width=${HEAD + room}
        height=${height}
        viewBox="0 0 ${HEAD + room} ${height}"
        role="img"
        aria-label=${list.bars.map((bar) => spoken(bar, long)).join('; ')}
      >
        ${list.bars.map((bar, at) => drawBar(bar, at * ROW + 2, scale, long))}
      </svg>
    </figure>`;
  }
}

function drawBar(
  bar: CutList['bars'][number],
  y: number,
  scale: number,
  long: (m: number) => string,
) {
  let x = HEAD;
  const pieces = bar.pieces.map((length) => {
    const width = length * scale;
    const left = x;
    x += width;
    return svg`
      <rect class="piece" x=${px(left)} y=${y} width=${px(width)} height=${ROW - 6}></rect>
      ${width < 44 ? nothing : svg`<text x=${px(left + width / 2)} y=${y + 15} text-anchor="middle">${drawnFigures(long(length))}</text>`}
    `;
  });
  const end = HEAD + bar.stock * scale;
  return svg`
    <text x="0" y=${y + 15}>${bar.count} of ${drawnFigures(long(bar.stock))}</text>
    ${end - x < 1 ? nothing : svg`<rect class="offcut" x=${px(x)} y=${y} width=${px(end - x)} height=${ROW - 6}></rect>`}
    ${pieces}
  `;
}

function spoken(bar: CutList['bars'][number], long: (m: number) => string): string {
  const cuts = bar.pieces.map(long).join(', ');
  return `${String(bar.count)} of ${long(bar.stock)} cut into ${cuts}`;
}

function nameOf({ item, size }: CutList): string {
  const name = [size, item].filter((part) => part !== '').join(' ');
  return `${name}s`;
}

function sumOf(
  { byPrice }: CutList,
  sum: number,
  book: BookView,
  long: (metres: number) => string,
): string {
  if (!byPrice) return long(sum);
  return `${sum.toFixed(2)} ${wordsOf(jobOf(book), 0, 'currency')}`.trim();
}

function proofOf({ isLeast, total, bound }: CutList, least: string): string {
  if (isLeast) return 'no plan takes less';
  const over = Math.ceil((total / bound - 1) * 1000 - 1e-6) / 10;
  return `within ${String(over)}% of ${least}, the least any plan could take`;
}

function written(metres: number, isMetric: boolean): string {
  const unit = parseUnit('mm');
  return isMetric && unit ? `${writeQuantity(metres, unit)} mm` : writeTape(metres);
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-cutting-plan': CuttingPlanPicture;
  }
}
