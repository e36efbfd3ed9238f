import type { BookView, SheetView } from '../../worksheet/index.ts';
import {
  cellOf,
  columnOf,
  jobOf,
  measureOf,
  numberOf,
  sizeOf,
  withUnit,
  wordsOf,
} from './cells.ts';
import { rowOf } from '../row-of.ts';

/** A length and the text it is shown as. */
export interface Measured {
  /** [m] */
  readonly size: number;
  readonly text: string;
}

/** One hole as its sheets have it. */
export interface HoleReadings {
  /** What it is called aloud: `post 4`. */
  readonly name: string;
  readonly depth: Measured | undefined;
  readonly reached: Measured | undefined;
  readonly width: Measured | undefined;
  readonly shape: string;
  readonly post: Measured | undefined;
  readonly gravel: Measured | undefined;
  readonly embedment: Measured | undefined;
  readonly crown: Measured | undefined;
  /** Above grade; negative below it. [m] */
  readonly concreteTop: number | undefined;
  readonly concreteTopText: string;
  readonly frost: Measured | undefined;
  /** How much embedment is wanting; blank where none is. */
  readonly shortBy: string;
  readonly stoppedBy: string;
  readonly rule: string;
  /** What can't be drawn yet, and what each waits for. */
  readonly waits: readonly string[];
}

/** The readings of one post's hole, or why there is no hole to draw. */
export function readHole(book: BookView, current: string | undefined): HoleReadings | string {
  const holes = book.sheet('holes');
  const posts = book.sheet('posts');
  const row = rowOf(holes, current);
  if (!holes || holes.rowCount === 0)
    return 'No post is set to be replaced, so there is no hole to dig.';
  if (current === undefined) return 'Pick a post to see its hole.';
  if (row < 0) return noHole(posts, current);
  const job = jobOf(book);
  const post = rowOf(posts, current);
  const shortfall = numberOf(holes, row, 'shortfall') ?? 0;
  const top = cellOf(job, 0, 'top_of_concrete');
  return {
    name: holes.rowName(row),
    depth: measured(holes, row, 'depth'),
    reached: measured(holes, row, 'depth_reached') ?? measured(posts, post, 'depth_reached'),
    width: measured(holes, row, 'width'),
    shape: wordsOf(job, 0, 'hole_shape'),
    post: measured(holes, row, 'post_width'),
    gravel: measured(holes, row, 'gravel'),
    embedment: measured(holes, row, 'embedment'),
    crown: measured(job, 0, 'crown_height'),
    concreteTop: numberOf(job, 0, 'top_of_concrete'),
    concreteTopText: withUnit(
      (top?.text ?? '').replace(/^[-−]/u, ''),
      columnOf(job, 'top_of_concrete')?.unit ?? '',
    ),
    frost: measured(job, 0, 'frost_depth'),
    shortBy: shortfall > 0 ? measureOf(holes, row, 'shortfall') : '',
    stoppedBy: wordsOf(posts, post, 'stopped_by'),
    rule: wordsOf(holes, row, 'governing_rule'),
    waits: ['depth', 'width', 'post_width'].flatMap((column) => waitOf(holes, row, column)),
  };
}

function noHole(posts: SheetView | undefined, current: string): string {
  const row = rowOf(posts, current);
  if (!posts || row < 0) return 'Pick a post to see its hole.';
  const name = posts.rowName(row);
  const remedy = cellOf(posts, row, 'remedy');
  if (remedy && remedy.state !== 'known') {
    return `No hole for ${name} yet: its remedy is not known${remedy.note === '' ? '' : `, ${remedy.note}`}.`;
  }
  return `No hole for ${name}: its remedy is ${remedy?.text ?? 'not known'}.`;
}

function measured(sheet: SheetView | undefined, row: number, column: string): Measured | undefined {
  const size = sizeOf(sheet, row, column);
  return size === undefined ? undefined : { size, text: measureOf(sheet, row, column) };
}

function waitOf(sheet: SheetView, row: number, column: string): readonly string[] {
  const cell = cellOf(sheet, row, column);
  if (!cell || cell.state === 'known') return [];
  const label = columnOf(sheet, column)?.label ?? column;
  return [`${label}: ${cell.note === '' ? 'not entered' : cell.note}`];
}
