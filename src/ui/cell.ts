import { css, html, nothing, type TemplateResult } from 'lit';
import type { CellView } from '../worksheet/index.ts';
import { setFractions } from './fraction.ts';

/** What a cell shows: its value, what it waits for, or what stands in the way, always in words. */
export function cellContent(cell: CellView): TemplateResult | string {
  switch (cell.state) {
    case 'known':
      return html`<span class=${cell.note === '' ? 'value' : 'value noted'}
          >${setFractions(cell.text)}</span
        >${suggestion(cell)}`;
    case 'ask':
      return html`<span class="value"
          >${setFractions(cell.text)}${cell.text.endsWith('?') ? '' : '?'}</span
        ><span class="spoken"> to be answered</span>`;
    case 'wrong':
      return html`<span class="value"
          >${setFractions(cell.text === '' ? cell.note : cell.text)}</span
        ><span class="spoken"> to be put right</span>`;
    case 'waiting':
      return html`<span class="value">${cell.note}</span>`;
    case 'blank':
      return '';
  }
}

/** The look of a cell's content, by the manner that `manner()` names. */
export const cellStyles = css`
  .typed {
    color: var(--chalk);
  }
  .worked,
  .blank {
    color: var(--ink);
  }
  .noted {
    text-decoration: underline dotted var(--soft);
    text-underline-offset: 4px;
  }
  .waiting .value {
    color: var(--soft);
    font-style: italic;
    font-size: 14.5px;
  }
  .ask .value,
  .wrong .value {
    color: var(--paint);
    font-weight: 600;
  }
  .suggested {
    color: var(--soft);
    font-size: 14px;
    margin-left: 6px;
  }
`;

function suggestion({ suggested }: CellView): TemplateResult | typeof nothing {
  if (suggested === undefined) return nothing;
  return html`<span class="suggested">suggested ${setFractions(suggested)}</span>`;
}
