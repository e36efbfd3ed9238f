/** A place in the book: a sheet, and maybe a row and a column of it. */
export interface Place {
  readonly sheet: string;
  readonly row?: string | undefined;
  readonly column?: string | undefined;
}

/** Events that elements send up the page, and what they carry. */
export interface BookEvents {
  /** A row became the current one, by key, touch or drawing. */
  'row-current': Place;
  /** Somebody wants to be taken to a place. */
  'go-to': Place;
  /** Somebody wants to see how a cell was worked out. */
  'show-working': Place;
  /** Words for the status line, which screen readers speak. */
  say: string;
  /** Somebody wants to write a formula, or to add a column or sheet of their own. */
  'edit-formula': FormulaPlace;
  /** Somebody wants a sheet as a file to share. */
  'give-sheet': Place;
  /** Somebody wants to bring a file onto a sheet. */
  'bring-onto': Place;
  /** Somebody wants a panel that stands over the page. */
  'open-side': 'what if';
  /** Somebody wants the remedies of a post side by side. */
  'show-remedies': Place;
}

/** The column whose formula is to be written, or what is to be added beside it. */
export interface FormulaPlace extends Place {
  readonly add?: 'column' | 'sheet';
}

/** Sends one of the book's events up through every shadow root. */
export function send<Name extends keyof BookEvents>(
  from: EventTarget,
  name: Name,
  detail: BookEvents[Name],
): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}

declare global {
  interface GlobalEventHandlersEventMap {
    'row-current': CustomEvent<Place>;
    'go-to': CustomEvent<Place>;
    'show-working': CustomEvent<Place>;
    say: CustomEvent<string>;
    'edit-formula': CustomEvent<FormulaPlace>;
    'give-sheet': CustomEvent<Place>;
    'bring-onto': CustomEvent<Place>;
    'open-side': CustomEvent<BookEvents['open-side']>;
    'show-remedies': CustomEvent<Place>;
  }
}
