import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import { withUnit } from './unit-face.ts';

/** How an input reads in a line of its group; `#` is its value. */
const PHRASES: ReadonlyMap<string, string> = new Map([
  ['fence_height', '# high'],
  ['ground_gap', '# off the ground'],
  ['post_spacing', '# bays'],
  ['post_size', '#'],
  ['rails_per_bay', '# rails'],
  ['rail_size', '# rails'],
  ['local_min_depth', 'at least # deep'],
  ['frost_depth', 'frost #'],
  ['frost_margin', '# below frost'],
  ['soil', '#'],
  ['wind_speed', 'wind #'],
  ['exposure', 'exposure #'],
  ['hole_shape', '#'],
  ['hole_width', '# wide'],
  ['gravel_depth', '# gravel'],
  ['top_of_concrete', 'concrete to #'],
  ['crown_height', '# crown'],
  ['mix', '# bags'],
  ['waste', '# waste'],
  ['units', '#'],
  ['currency', '#'],
]);

/** What a group of inputs holds, in one line; what matters and is blank is named last. */
export interface GroupWords {
  readonly given: string;
  /** Inputs without a value, by their labels. */
  readonly blank: readonly string[];
  /** Whether one of them has to be answered or put right. */
  readonly isAsking: boolean;
}

/** Reads a group of inputs out. */
export function groupWords(view: SheetView, columns: readonly ColumnView[]): GroupWords {
  const usual = columns.filter(({ show }) => show === 'always');
  const typed = usual.filter(({ entered }) => entered);
  const shown = typed.length > 0 ? typed : usual;
  const cells = shown.map((column) => ({ column, cell: view.cell(0, column.id) }));
  return {
    given: cells
      .flatMap(({ column, cell }) => (cell.state === 'known' ? phrase(column, cell) : []))
      .join(', '),
    blank: cells.flatMap(({ column, cell }) =>
      cell.state === 'blank' && column.formula === undefined ? [column.label.toLowerCase()] : [],
    ),
    isAsking: columns.some(({ id }) => ['ask', 'wrong'].includes(view.cell(0, id).state)),
  };
}

// What is answered with no is nothing to read out.
function phrase({ id, label, unit, kind }: ColumnView, { text }: CellView): string | [] {
  const value = withUnit(text, unit);
  const words = PHRASES.get(id);
  if (words !== undefined) return words.replace('#', () => value);
  if (kind.type === 'flag') return text === 'yes' ? label.toLowerCase() : [];
  return `${label.toLowerCase()} ${value}`;
}
