/** The part of a key press that decides what it does. */
export type KeyPress = Pick<
  KeyboardEvent,
  'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey' | 'isComposing' | 'keyCode'
>;

/** Where the grid stands: display row and shown column, from 0. */
export interface Position {
  readonly row: number;
  readonly column: number;
}

/** How large the grid is, and how many rows a page key goes. */
export interface GridSize {
  readonly rows: number;
  readonly columns: number;
  readonly page: number;
}

/** Ways to move; `extend` keeps the far corner of the selection where it is. */
export interface Move {
  readonly do: 'move';
  readonly by: keyof typeof STEPS;
  readonly extend: boolean;
}

/** What a key asks of the grid beside moving and typing. */
export type Deed =
  | 'open'
  | 'edit'
  | 'clear'
  | 'undo'
  | 'redo'
  | 'showWorking'
  | 'selectColumn'
  | 'selectRow'
  | 'selectAll'
  | 'keep'
  | 'keepAndGoDown'
  | 'keepInAll'
  | 'keepAndGoOn'
  | 'keepAndGoBack'
  | 'restore';

/** What a key asks of the sheet: its rows, its columns, what is shown of it. */
export type SheetDeed =
  | 'repeatDown'
  | 'runOn'
  | 'moveUp'
  | 'moveDown'
  | 'double'
  | 'insertBelow'
  | 'removeRows'
  | 'narrower'
  | 'wider'
  | 'openMenu'
  | 'find'
  | 'findNext'
  | 'findBefore';

/** What a key asks of the grid. */
export type GridAction =
  | Move
  | { readonly do: 'type'; readonly text: string }
  | { readonly do: Deed }
  | { readonly ask: SheetDeed };

/**
 * What a key does while the grid is being walked (WAI-ARIA APG, Grid pattern, data grids).
 * Undefined leaves the key to the browser: Tab leaves the grid, Ctrl+C copies.
 */
export function walkingKey(press: KeyPress): GridAction | undefined {
  const control = press.ctrlKey || press.metaKey;
  const asked =
    SHEET_KEYS[
      `${control ? 'Ctrl+' : ''}${press.altKey ? 'Alt+' : ''}${press.shiftKey ? 'Shift+' : ''}${press.key}`
    ];
  if (asked !== undefined) return { ask: asked };
  const move = MOVES[`${control ? 'Ctrl+' : ''}${press.key}`];
  if (move !== undefined && !press.altKey) return { do: 'move', by: move, extend: press.shiftKey };
  if (press.altKey) return press.key === 'Enter' ? { do: 'showWorking' } : undefined;
  if (control) return controlKey(press);
  switch (press.key) {
    case 'Enter':
      return { do: 'open' };
    case 'F2':
      return { do: 'edit' };
    case 'Delete':
    case 'Backspace':
      return { do: 'clear' };
    case ' ':
      return press.shiftKey ? { do: 'selectRow' } : { do: 'open' };
  }
  // Keys of an input method and dead keys write into the field that opens for them.
  if (isOfInputMethod(press) || press.key === 'Dead') return { do: 'type', text: '' };
  return isOneSign(press.key) ? { do: 'type', text: press.key } : undefined;
}

/** What a key does while a cell is being typed into; undefined leaves it to the field. */
export function typingKey(press: KeyPress): GridAction | undefined {
  // Enter and Escape belong to the input method while it composes.
  if (isOfInputMethod(press)) return undefined;
  switch (press.key) {
    case 'Enter':
      return { do: press.ctrlKey || press.metaKey ? 'keepInAll' : 'keepAndGoDown' };
    case 'F2':
      return { do: 'keep' };
    case 'Escape':
      return { do: 'restore' };
    case 'Tab':
      return { do: press.shiftKey ? 'keepAndGoBack' : 'keepAndGoOn' };
  }
  return undefined;
}

// Safari ends a composition with a key press that only the number 229 tells from any other.
function isOfInputMethod(press: KeyPress): boolean {
  // eslint-disable-next-line @typescript-eslint/no-deprecated
  return press.isComposing || press.keyCode === 229;
}

/** Names of keys such as `F5` and `Shift` are longer than one sign. */
function isOneSign(key: string): boolean {
  return /^.$/su.test(key);
}

/** Where a move leads; it stops at the edges. */
export function stepFrom(from: Position, by: Move['by'], size: GridSize): Position {
  const to = STEPS[by](from, size);
  return {
    row: within(to.row, size.rows),
    column: within(to.column, size.columns),
  };
}

const STEPS = {
  nowhere: (at: Position) => at,
  left: ({ row, column }: Position) => ({ row, column: column - 1 }),
  right: ({ row, column }: Position) => ({ row, column: column + 1 }),
  up: ({ row, column }: Position) => ({ row: row - 1, column }),
  down: ({ row, column }: Position) => ({ row: row + 1, column }),
  'page up': ({ row, column }: Position, { page }: GridSize) => ({ row: row - page, column }),
  'page down': ({ row, column }: Position, { page }: GridSize) => ({ row: row + page, column }),
  'row start': ({ row }: Position) => ({ row, column: 0 }),
  'row end': ({ row }: Position, { columns }: GridSize) => ({ row, column: columns - 1 }),
  'sheet start': () => ({ row: 0, column: 0 }),
  'sheet end': (_: Position, size: GridSize) => ({ row: size.rows - 1, column: size.columns - 1 }),
  top: ({ column }: Position) => ({ row: 0, column }),
  bottom: ({ column }: Position, { rows }: GridSize) => ({ row: rows - 1, column }),
} as const;

const MOVES: Readonly<Record<string, Move['by']>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  'Ctrl+ArrowLeft': 'row start',
  'Ctrl+ArrowRight': 'row end',
  'Ctrl+ArrowUp': 'top',
  'Ctrl+ArrowDown': 'bottom',
  PageUp: 'page up',
  PageDown: 'page down',
  Home: 'row start',
  End: 'row end',
  'Ctrl+Home': 'sheet start',
  'Ctrl+End': 'sheet end',
};

const SHEET_KEYS: Readonly<Record<string, SheetDeed>> = {
  'Ctrl+Enter': 'repeatDown',
  'Ctrl+Shift+Enter': 'runOn',
  'Alt+ArrowUp': 'moveUp',
  'Alt+ArrowDown': 'moveDown',
  'Alt+Shift+ArrowDown': 'double',
  'Alt+Shift+Enter': 'insertBelow',
  'Alt+Delete': 'removeRows',
  'Alt+Backspace': 'removeRows',
  'Alt+Shift+ArrowLeft': 'narrower',
  'Alt+Shift+ArrowRight': 'wider',
  'Shift+F10': 'openMenu',
  ContextMenu: 'openMenu',
  'Ctrl+f': 'find',
  F3: 'findNext',
  'Shift+F3': 'findBefore',
};

function controlKey({ key, shiftKey }: KeyPress): GridAction | undefined {
  switch (key.toLowerCase()) {
    case ' ':
      return { do: 'selectColumn' };
    case 'z':
      return { do: shiftKey ? 'redo' : 'undo' };
    case 'y':
      return { do: 'redo' };
    case 'a':
      return { do: 'selectAll' };
  }
  return undefined;
}

function within(place: number, count: number): number {
  return Math.max(0, Math.min(count - 1, place));
}
