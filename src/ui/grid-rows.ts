import { html, nothing, type TemplateResult } from 'lit';
import type { DirectiveResult } from 'lit/directive.js';
import { guard } from 'lit/directives/guard.js';
import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import { cellContent } from './cell.ts';
import { setFractions } from './fraction.ts';
import { cellEditor } from './grid-editor.ts';
import type { Position } from './grid-keys.ts';
import { isSettled, type RowFreshness } from './row-freshness.ts';
import type { Sorting } from './row-sorting.ts';
import { isIn, type Block } from './selection.ts';
import { headWords, isFigures, manner } from './shown-columns.ts';
import { unitFace } from './unit-face.ts';

/** All that the rows of a grid are drawn from. */
export interface GridSight {
  readonly view: SheetView;
  readonly columns: readonly ColumnView[];
  readonly sorting: Sorting | undefined;
  readonly at: Position;
  /** The id of the row that is current on the page; blank where none is. */
  readonly current: string;
  /** The chosen cells, where more than one is. */
  readonly block: Block | undefined;
  /** The text an edit begins with; undefined while the grid is walked. */
  readonly editing: string | undefined;
  /** Columns of the cells that changed a moment ago, by row. */
  readonly changed: ReadonlyMap<string, ReadonlySet<string>>;
  readonly fresh: RowFreshness;
  /** The columns whose width somebody set. */
  readonly set: string;
  /** Whether a cell has more to show than its column has room for. */
  readonly isLong: (column: ColumnView, cell: CellView) => boolean;
  /** Ids of the rows where a stop stands. */
  readonly stopped: ReadonlySet<string>;
}

/** The heads of the columns: the name, and under it the unit and a hint, said once. */
export function gridHead({ columns, at, sorting }: GridSight): TemplateResult {
  return html`<div role="row" class="head" aria-rowindex="1">
    ${columns.map((column, place) => {
      const under = [unitFace(column.unit), column.hint, mine(column)]
        .filter((part) => part !== '')
        .join(', ');
      const classes = [...columnClasses(columns, place), place === at.column && 'current'];
      return html`<div
        role="columnheader"
        aria-colindex=${place + 1}
        aria-sort=${sorting?.column === column.id ? sorting.way : nothing}
        class=${listed([...classes, column.own !== undefined && 'own'])}
        data-column=${place}
      >
        <span class="edge" aria-hidden="true" data-edge=${column.id}></span
        ><span>${column.label}</span>${' '}${
          under === ''
            ? nothing
            : html`<span class=${under.length > 10 ? 'unit long' : 'unit'}
                >${setFractions(under)}</span
              >`
        }
      </div>`;
    })}
  </div>`;
}

function mine({ own }: ColumnView): string {
  if (own === undefined) return '';
  return own === 'column' ? 'yours' : 'your formula';
}

/** One row of cells, drawn again only where something it is drawn from is another. */
export function gridRow(sight: GridSight, row: number): DirectiveResult {
  const { view, columns, at, block, editing, current, stopped, changed, fresh, set } = sight;
  const id = view.rowId(row);
  const isHere = at.row === row;
  const chosen = block && row >= block.top && row <= block.bottom;
  const from = [
    ...[id, row, fresh.of(id), columns, set, changed.get(id), current === id, stopped.has(id)],
    ...[isHere && at.column, isHere && editing, chosen && block.left, chosen && block.right],
  ];
  return guard(from, () => drawnRow(sight, row, id));
}

function drawnRow(sight: GridSight, row: number, id: string): TemplateResult {
  const { view, columns, current, stopped, fresh } = sight;
  const classes = [current === id && 'row-current', stopped.has(id) && 'stopped'];
  const cells = columns.map((column) => view.cell(row, column.id));
  fresh.drawn(id, cells.every((cell, place) => columns[place] && isSettled(columns[place], cell))); // prettier-ignore
  return html`<div role="row" aria-rowindex=${row + 2} class=${listed(classes)}>
    ${cells.map((cell, place) => gridCell(sight, id, cell, { row, column: place }))}
  </div>`;
}

/** The totals under the columns they belong to; nothing where nothing is totalled. */
export function gridTotals({ view, columns }: GridSight): TemplateResult | typeof nothing {
  const totals = view.totals();
  if (!columns.some(({ id }) => totals.has(id))) return nothing;
  return html`<div class="totals" role="group" aria-label="${view.title}, totals">
    ${columns.map((column, place) => {
      const total = totals.get(column.id);
      const classes = listed(['cell', ...columnClasses(columns, place)]);
      if (total === undefined)
        return html`<span class=${classes}>${place === 0 ? 'Total' : ''}</span>`;
      return html`<span class=${classes}
        ><span class="spoken">${column.label} </span>${total}</span
      >`;
    })}
  </div>`;
}

function gridCell(
  { view, columns, at, block, editing, changed, isLong }: GridSight,
  rowId: string,
  cell: CellView,
  position: Position,
): TemplateResult | typeof nothing {
  const column = columns[position.column];
  if (!column) return nothing;
  const isCurrent = position.row === at.row && position.column === at.column;
  const chosen = block !== undefined && isIn(block, position);
  const classes = [
    'cell',
    manner(cell),
    ...columnClasses(columns, position.column),
    isLong(column, cell) && 'long',
    isCurrent && 'current',
    chosen && 'chosen',
    changed.get(rowId)?.has(column.id) === true && 'flash',
  ];
  return html`<div
    role=${position.column === 0 ? 'rowheader' : 'gridcell'}
    aria-colindex=${position.column + 1}
    aria-readonly=${String(!column.entered)}
    aria-selected=${String(isCurrent || chosen)}
    aria-invalid=${cell.state === 'wrong' || cell.state === 'ask' ? 'true' : nothing}
    aria-describedby=${isCurrent && cell.note !== '' ? 'note' : nothing}
    tabindex=${isCurrent ? 0 : -1}
    data-row=${position.row}
    data-column=${position.column}
    class=${listed(classes)}
  >
    ${cellContent(cell)}${
      isCurrent && editing !== undefined
        ? cellEditor(column, editing, `${headWords(column)}, ${view.rowName(position.row)}`)
        : nothing
    }
  </div>`;
}

/** A choice that a formula makes and a person may overrule: the answer of its row. */
function isCall({ entered, formula, kind }: ColumnView): boolean {
  return entered && formula !== undefined && kind.type === 'choice';
}

/** Figures line up on the right; the row's name and its answer stay in sight however wide the sheet is. */
function columnClasses(columns: readonly ColumnView[], place: number): readonly (string | false)[] {
  const column = columns[place];
  if (!column) return [];
  return [
    isFigures(column) && 'figures',
    isCall(column) && 'call',
    place === 0 && 'first',
    place > 0 && place === columns.findLastIndex(isCall) && 'answer',
  ];
}

function listed(names: readonly (string | false)[]): string {
  return names.filter((name) => name !== false).join(' ');
}
