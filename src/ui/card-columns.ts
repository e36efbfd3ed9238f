import type { ColumnView, SheetView } from '../worksheet/index.ts';

/** The readings in the order a tape and a level go. */
const TAPE_ORDER = [
  'lean_gap',
  'level_length',
  'lean_toward',
  'rock_test',
  'probe_depth',
  'station',
  'collar',
  'note',
];

/** What a post's card shows, from top to bottom. */
export interface CardColumns {
  readonly readings: readonly ColumnView[];
  readonly results: readonly ColumnView[];
  /** The other readings, folded away until one is wanted. */
  readonly more: readonly ColumnView[];
}

/** Sorts a sheet's columns for a card. */
export function cardColumns({ columns }: SheetView): CardColumns {
  const [name, ...rest] = columns;
  const readings = TAPE_ORDER.flatMap((id) => rest.find((column) => column.id === id) ?? []);
  const others = rest.filter((column) => !readings.includes(column));
  return {
    readings,
    results: others.filter(({ formula, show }) => formula !== undefined && show !== 'more'),
    more: [...(name ? [name] : []), ...others.filter(({ entered }) => entered)],
  };
}

/** Whether a tape's keypad types here. */
export function isTaped({ kind, entered }: ColumnView): boolean {
  return entered && kind.type === 'quantity';
}

/** Whether a field may share its line with another. */
export function isHalf({ id }: ColumnView): boolean {
  return ['station', 'probe_depth', 'lean_gap', 'level_length'].includes(id);
}
