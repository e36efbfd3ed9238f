import { css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { BookView, SheetView } from '../../worksheet/index.ts';
import { cellOf, columnOf, jobOf, measureOf, numberOf, wordsOf } from './cells.ts';
import { drawingStyle } from './drawing-style.ts';
import { Drawing } from './drawing.ts';
import { px } from './figures.ts';
import { stack, type Stack } from './stack.ts';

const ROOM = 300;

/**
 * Two stacks of bags of the job's mix: counted for the whole job, and rounded up
 * hole by hole. The bags that only the second needs are drawn open.
 */
@customElement('bp-bags-picture')
export class BagsPicture extends Drawing {
  static override readonly styles = [
    drawingStyle,
    css`
      figcaption p {
        margin: 0;
      }
      .bag {
        fill: var(--drawn-concrete);
        stroke: var(--drawn-ink);
        stroke-width: 1;
      }
      .bag.more {
        fill: none;
        stroke-dasharray: 3 2;
      }
      .pallet {
        fill: none;
        stroke: var(--drawn-wood);
        stroke-width: 4;
      }
      .count {
        font-size: 22px;
        font-weight: 600;
      }
      .ordered {
        font-weight: 600;
      }
    `,
  ];

  protected override render() {
    if (!this.book) return nothing;
    const mix = wordsOf(jobOf(this.book), 0, 'mix');
    const bags = this.book.sheet('bags');
    const row = rowOfMix(bags, mix);
    if (mix === '') return html`<p class="waits">No mix is chosen on the job.</p>`;
    if (!bags || row < 0) return html`<p class="waits">The bags sheet has no mix “${mix}”.</p>`;
    const byJob = numberOf(bags, row, 'by_job');
    const byHole = numberOf(bags, row, 'by_hole');
    if (byJob === undefined || byHole === undefined) {
      return html`<p class="waits">Bags of ${mix}: ${waitingFor(bags, row)}</p>`;
    }
    return this.renderStacks(this.book, mix, { row, byJob, byHole });
  }

  private renderStacks(
    book: BookView,
    mix: string,
    { row, byJob, byHole }: { row: number; byJob: number; byHole: number },
  ): TemplateResult {
    const stacks = stack([byJob, byHole], ROOM);
    const rounding = wordsOf(jobOf(book), 0, 'bag_rounding');
    const weight = measureOf(book.sheet('bags'), row, 'weight');
    const words = [`${String(byJob)} by job`, `${String(byHole)} by hole`];
    return html`<figure>
      <svg
        width=${ROOM}
        height=${stacks.height + 50}
        viewBox="0 0 ${ROOM} ${stacks.height + 50}"
        role="img"
        aria-label="Bags of ${mix}: ${words.join(', ')}"
      >
        ${stacks.stacks.map((one, index) => drawStack(one, stacks.floor, byJob, rounding, index))}
      </svg>
      <figcaption>
        <p>Bags of ${mix}; waste included${stacks.scaled === '' ? '' : `; ${stacks.scaled}`}.</p>
        ${
          weight === ''
            ? nothing
            : html`<p>
                A bag weighs ${weight}. 51 lb is the best-case lift for one person (NIOSH 94-110).
              </p>`
        }
      </figcaption>
    </figure>`;
  }
}

function drawStack(one: Stack, floor: number, byJob: number, rounding: string, index: number) {
  const label = index === 0 ? 'by job' : 'by hole';
  const ordered = rounding === label;
  return svg`
    <path class="pallet" d="M${one.left} ${floor}H${one.right}"></path>
    ${one.bags.map(
      ({ x, y, width, height, from }) =>
        svg`<rect class="bag ${from >= byJob ? 'more' : ''}" x=${x} y=${y} width=${width} height=${height} rx="3"></rect>`,
    )}
    <text class="count" x=${one.left} y=${px(floor + 26)}>${one.count}</text>
    <text class=${ordered ? 'ordered' : 'quiet'} x=${one.left} y=${px(floor + 44)}>${label}${ordered ? ', as ordered' : ''}</text>
  `;
}

function rowOfMix(bags: SheetView | undefined, mix: string): number {
  for (let row = 0; row < (bags?.rowCount ?? 0); row++) {
    if (wordsOf(bags, row, 'mix') === mix) return row;
  }
  return -1;
}

function waitingFor(bags: SheetView, row: number): string {
  const notes = ['by_job', 'by_hole'].flatMap((column) => {
    const cell = cellOf(bags, row, column);
    if (!cell || cell.state === 'known') return [];
    return [
      cell.note === '' ? `${columnOf(bags, column)?.label ?? column} is not known yet` : cell.note,
    ];
  });
  return [...new Set(notes)].join('; ') || 'not counted yet';
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-bags-picture': BagsPicture;
  }
}
