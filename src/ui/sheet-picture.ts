import { html, nothing, type TemplateResult } from 'lit';
import type { BookView } from '../worksheet/index.ts';
import './drawings/index.ts';
import type { RowPick } from './drawings/index.ts';

/** Whether a sheet's picture stands above its rows, the whole width, or beside them. */
export function pictureSide(sheet: string): 'above' | 'beside' | 'none' {
  if (sheet === 'posts') return 'above';
  return sheet === 'holes' || sheet === 'bags' ? 'beside' : 'none';
}

/** The picture of a sheet, drawn from the same cells; picking a part of it makes its row current. */
export function sheetPicture(
  book: BookView,
  sheet: string,
  current: string,
  pick: (row: string) => void,
): TemplateResult | typeof nothing {
  const picked = ({ detail }: RowPick) => {
    pick(detail.row);
  };
  switch (sheet) {
    case 'posts':
      return html`<bp-elevation
        .book=${book}
        .current=${current}
        @row-pick=${picked}
      ></bp-elevation>`;
    case 'holes':
      return html`<bp-hole-section
        .book=${book}
        .current=${current}
        @row-pick=${picked}
      ></bp-hole-section>`;
    case 'bags':
      return html`<bp-bags-picture
        .book=${book}
        .current=${current}
        @row-pick=${picked}
      ></bp-bags-picture>`;
  }
  return nothing;
}
