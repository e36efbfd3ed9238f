import { html, nothing, type TemplateResult } from 'lit';
import { moneyStep, stepWords } from '../output/index.ts';
import type { PriceChange } from '../worksheet/index.ts';

/** Why a price moved: the entries that did, with what each does to the total alone, and every line before and now. */
export function changeTable({ moves, before, now }: PriceChange, since: string): TemplateResult {
  if (moves.length === 0) return html`<p>Nothing has changed since ${since}.</p>`;
  return html`<div
    class="table"
    tabindex="0"
    role="region"
    aria-label="What changed since ${since}"
  >
    <table>
      <thead>
        <tr>
          <th scope="col">Changed</th>
          <th scope="col">Was</th>
          <th scope="col">Is</th>
          <th scope="col" class="sum">Total, by this alone</th>
        </tr>
      </thead>
      <tbody>
        ${moves.map(
          ({ label, before: was, after, alone }) =>
            html`<tr>
              <th scope="row">${label}</th>
              <td>${was === '' ? 'blank' : was}</td>
              <td>${after === '' ? 'blank' : after}</td>
              <td class="sum">${alone === undefined ? '' : stepWords(alone)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <table>
      <thead>
        <tr>
          <th scope="col">Line</th>
          <th scope="col" class="sum">${since}</th>
          <th scope="col" class="sum">Now</th>
          <th scope="col" class="sum">Moved</th>
        </tr>
      </thead>
      <tbody>
        ${now.map((line, at) => {
          const then = before[at];
          if (then?.text === line.text && line.part !== 'Total') return nothing;
          return html`<tr class=${line.part === 'Total' ? 'total' : ''}>
            <th scope="row">${line.part}</th>
            <td class="sum">${then?.text === '' ? 'waits' : then?.text}</td>
            <td class="sum">${line.text === '' ? 'waits' : line.text}</td>
            <td class="sum">${moneyStep(then?.money, line.money)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}
