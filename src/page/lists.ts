import {
  crewTable,
  holeTable,
  materialTable,
  postTable,
  quoteTable,
  returnTable,
  type Dialect,
  type Table,
} from '../output/index.ts';
import type { PrintedPage } from '../ui/index.ts';
import type { BookView } from '../worksheet/index.ts';

/** A list that can be given out as CSV. */
export interface GivenList {
  readonly id: string;
  readonly label: string;
  readonly table: (book: BookView, dialect?: Dialect) => Table;
  /** The page that says the same on paper. */
  readonly page?: PrintedPage;
}

/** Every list, the supplier's first: it has a button of its own. */
export const LISTS: readonly GivenList[] = [
  { id: 'material-list', label: 'Supplier’s list', table: materialTable, page: 'supplier' },
  { id: 'post-list', label: 'Post list as CSV', table: postTable },
  { id: 'hole-schedule', label: 'Hole schedule as CSV', table: holeTable },
  { id: 'crew-sheet', label: 'Crew sheet as CSV', table: crewTable, page: 'crew' },
  { id: 'quote', label: 'Quote as CSV', table: quoteTable, page: 'quote' },
  { id: 'return-visit', label: 'Return visit as CSV', table: returnTable, page: 'return' },
];

/** The table of a list of a book; undefined where no list is called so. */
export function tableOf(id: string, book: BookView, dialect?: Dialect): Table | undefined {
  return LISTS.find((list) => list.id === id)?.table(book, dialect);
}
