import type { SheetView } from '../worksheet/index.ts';
import type { WorkedGrid } from './grid-deeds.ts';
import type { HandledGrid } from './grid-hand.ts';

/** What the parts of a grid need of the element they belong to. */
export type GridHost = HTMLElement & HandledGrid & WorkedGrid & GridParts;

interface GridParts {
  /** The sheet with its rows as they were read. */
  readonly whole: SheetView | undefined;
  readonly renderRoot: HTMLElement | DocumentFragment;
  /** The current cell as it is drawn. */
  readonly currentCell: HTMLElement | null;
  bringIntoView(): void;
}
