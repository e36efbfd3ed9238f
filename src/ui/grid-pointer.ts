import type { WorkedGrid } from './grid-deeds.ts';
import type { Position } from './grid-keys.ts';

/** What a mouse or finger does on a grid: choosing a cell, a block, a column; setting a width. */
export class GridPointer {
  private readonly grid: WorkedGrid & HTMLElement;
  private focusedBefore: Element | null = null;
  private dragged = false;

  constructor(grid: WorkedGrid & HTMLElement) {
    this.grid = grid;
  }

  readonly press = (event: PointerEvent): void => {
    this.focusedBefore = this.grid.shadowRoot?.activeElement ?? null;
    this.dragged = false;
    const touched = event.target as HTMLElement;
    const edge = touched.dataset['edge'];
    if (edge !== undefined) {
      this.dragEdge(event, touched, edge);
      return;
    }
    // A finger scrolls; only a mouse or a pen draws a block.
    const from = positionOf(touched);
    if (event.pointerType === 'touch' || event.button !== 0 || event.shiftKey || !from) return;
    if (touched.closest('.editor')) return;
    this.drawBlock(from);
  };

  /** The first touch chooses a cell, the second opens it; a column's head chooses the column. */
  readonly click = (event: MouseEvent): void => {
    const touched = event.target as HTMLElement;
    const { hand } = this.grid;
    if (this.dragged || touched.dataset['edge'] !== undefined || touched.closest('.editor')) return;
    const head = touched.closest<HTMLElement>('[role=columnheader]');
    if (head) {
      hand.at = { ...hand.at, column: Number(head.dataset['column']) };
      hand.selectColumn();
      return;
    }
    const cell = touched.closest<HTMLElement>('.cell[data-row]');
    const to = positionOf(touched);
    if (!cell || !to) return;
    if (cell === this.focusedBefore && !event.shiftKey) {
      hand.open();
      return;
    }
    hand.anchor = event.shiftKey ? (hand.anchor ?? hand.at) : undefined;
    hand.goTo(to);
  };

  private drawBlock(from: Position): void {
    const { hand } = this.grid;
    const root = this.grid.shadowRoot;
    const move = (event: PointerEvent): void => {
      const at = root?.elementFromPoint(event.clientX, event.clientY);
      const to = at ? positionOf(at) : undefined;
      if (!to || (!this.dragged && to.row === from.row && to.column === from.column)) return;
      this.dragged = true;
      hand.anchor = from;
      hand.goTo(to);
    };
    const end = (): void => {
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', end);
      removeEventListener('pointercancel', end);
    };
    addEventListener('pointermove', move);
    addEventListener('pointerup', end);
    addEventListener('pointercancel', end);
  }

  private dragEdge(event: PointerEvent, edge: HTMLElement, column: string): void {
    event.preventDefault();
    edge.setPointerCapture(event.pointerId);
    const start = event.clientX;
    const width = this.grid.shownWidth(column);
    const move = (moved: PointerEvent): void => {
      this.dragged = true;
      this.grid.habits.setWidth(column, width + moved.clientX - start);
      this.grid.requestUpdate();
    };
    edge.addEventListener('pointermove', move);
    edge.addEventListener(
      'lostpointercapture',
      () => {
        edge.removeEventListener('pointermove', move);
      },
      { once: true },
    );
  }
}

function positionOf(touched: Element): Position | undefined {
  const cell = touched.closest<HTMLElement>('.cell[data-row]');
  if (!cell) return undefined;
  return { row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) };
}
