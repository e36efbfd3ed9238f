import type { Position } from './grid-keys.ts';

/** A block of cells, both corners in it. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** The block between the current cell and the corner the selection began at. */
export function blockOf(at: Position, anchor: Position | undefined): Block {
  const from = anchor ?? at;
  return {
    top: Math.min(at.row, from.row),
    left: Math.min(at.column, from.column),
    bottom: Math.max(at.row, from.row),
    right: Math.max(at.column, from.column),
  };
}

/** Whether a cell lies in the block. */
export function isIn({ top, left, bottom, right }: Block, { row, column }: Position): boolean {
  return row >= top && row <= bottom && column >= left && column <= right;
}

/** Every cell of the block, row by row. */
export function positionsOf({ top, left, bottom, right }: Block): Position[] {
  const positions: Position[] = [];
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) positions.push({ row, column });
  }
  return positions;
}
