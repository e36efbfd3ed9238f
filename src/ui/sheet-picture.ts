import { html, nothing, type TemplateResult } from 'lit';
import type { BookView, CurveView } from '../worksheet/index.ts';
import './drawings/index.ts';
import type { RowPick } from './drawings/index.ts';
import { rowOf } from './row-of.ts';

/** Whether a sheet's picture stands above its rows, the whole width, or beside them. */
export function pictureSide(sheet: string): 'above' | 'beside' | 'none' {
  if (sheet === 'posts' || sheet === 'materials') return 'above';
  return ['holes', 'bags', 'cure'].includes(sheet) ? 'beside' : 'none';
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
        ></bp-hole-section>
        ${curve(book.capacityCurve(current))}`;
    case 'cure':
      return curve(book.strengthCurve(pouredRow(book, current)));
    case 'materials':
      return html`<bp-cutting-plan .book=${book}></bp-cutting-plan>`;
    case 'bags':
      return html`<bp-bags-picture
        .book=${book}
        .current=${current}
        @row-pick=${picked}
      ></bp-bags-picture>`;
  }
  return nothing;
}

/** The row whose pour is drawn: the current one, else the first. */
function pouredRow(book: BookView, current: string): string | undefined {
  const cure = book.sheet('cure');
  if (!cure || cure.rowCount === 0) return undefined;
  return cure.rowId(Math.max(0, rowOf(cure, current)));
}

function curve(view: CurveView | undefined): TemplateResult | typeof nothing {
  if (!view) return nothing;
  return html`<bp-curve
    .heading=${view.heading}
    .x=${view.x}
    .y=${view.y}
    .lines=${view.lines}
    .marks=${view.marks}
    .levels=${view.levels}
    .stretches=${view.stretches}
    .notes=${view.notes}
    .waits=${view.waits}
  ></bp-curve>`;
}
