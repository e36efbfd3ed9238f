import type { Column } from './column.ts';
import type { Rows } from './rows.ts';

/** The rows of a column that changed: all of them, or these. */
export type Changed = 'all' | ReadonlySet<number>;

/** How far a pass over all columns has come. */
export interface Pass {
  /** The place in the order of the column it is at, and the first row that is still to do. */
  next: number;
  row: number;
  different: Changed | undefined;
  readonly changed: Map<Column, Changed>;
  readonly stale: ReadonlyMap<Column, Changed>;
  readonly moved: Set<Rows>;
  readonly waiting: ReadonlyMap<Rows, boolean>;
}

/** Rows between two looks at the time. */
const SLICE = 4096;
const FEW = 16;

/** Works a column out; false where time was over before its last row. */
export function recompute(
  column: Column,
  rows: Changed,
  pass: Pass,
  isOver: (() => boolean) | undefined,
): boolean {
  const count = column.rows.count;
  // A single value is compared, so that work stops where a total comes out as it was.
  if (rows !== 'all' || count === 1) {
    pass.different = compared(column, rows === 'all' ? [0] : rows);
    return true;
  }
  column.fit();
  const { computation, values, states } = column;
  const slice = isOver ? sliceOf(column) : count;
  while (pass.row < count) {
    const to = Math.min(count, pass.row + slice);
    computation.run(values, states, pass.row, to);
    pass.row = to;
    if (to < count && isOver?.()) return false;
  }
  pass.row = 0;
  pass.different = 'all';
  return true;
}

// Each run goes through the whole columns it reads: few rows are worked one at a time, many at once.
function sliceOf({ rows, computation }: Column): number {
  const isThrough = computation.inputs.some(
    ({ reach, column }) => reach === 'whole' && column.rows.count > 1,
  );
  if (!isThrough) return SLICE;
  return rows.count <= FEW ? 1 : rows.count;
}

function compared(column: Column, rows: Iterable<number>): Changed | undefined {
  column.fit();
  const { computation, values, states } = column;
  const count = column.rows.count;
  const different = new Set<number>();
  for (const row of rows) {
    if (row >= count) continue;
    const value = values[row];
    const state = states[row];
    computation.run(values, states, row, row + 1);
    if (!Object.is(values[row], value) || states[row] !== state || (state ?? 0) > 1) {
      different.add(row);
    }
  }
  return different.size === 0 ? undefined : different;
}
