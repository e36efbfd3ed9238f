import type { Change } from './change.ts';

/** Where one entry stands: an input or a formula by name, or a cell. */
export type EntryPlace =
  | { readonly edit: 'name' }
  | { readonly edit: 'input' | 'formula' | 'assumed'; readonly name: string }
  | {
      readonly edit: 'cell';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
    };

/** Two entries that two windows wrote in one place, neither knowing of the other. */
export interface Clash {
  readonly place: EntryPlace;
  /** What stands there now; undefined where it was cleared, or its row is gone. */
  readonly standing: string | undefined;
  /** What was written there too, and would otherwise be lost. */
  readonly other: string | undefined;
  /** The row was removed in one window while the other wrote in it. */
  readonly rowIsGone: boolean;
}

/** The clashes of a notebook that nobody has settled yet. */
export class Clashes {
  private open = new Map<string, Clash>();
  private readonly listeners = new Set<() => void>();

  /** All of them, the oldest first. */
  all(): readonly Clash[] {
    return [...this.open.values()];
  }

  /** Keeps one until somebody writes in its place, or has it dropped. */
  add(clash: Clash): void {
    this.open.set(keyOf(clash.place), clash);
    this.tell();
  }

  /** Somebody chose what stands there now. */
  drop(place: EntryPlace): void {
    if (this.open.delete(keyOf(place))) this.tell();
  }

  /** Takes the place of all that are here. */
  reset(clashes: readonly Clash[]): void {
    if (this.open.size === 0 && clashes.length === 0) return;
    this.open = new Map(clashes.map((clash) => [keyOf(clash.place), clash]));
    this.tell();
  }

  /** Calls back when they change; returns how to stop. */
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

/** The place of the one entry that a change writes; undefined for rows, files and own parts. */
export function placeOf(change: Change): EntryPlace | undefined {
  switch (change.edit) {
    case 'name':
      return { edit: 'name' };
    case 'input':
    case 'formula':
    case 'assumed':
      return { edit: change.edit, name: change.name };
    case 'cell':
      return { edit: 'cell', sheet: change.sheet, row: change.row, column: change.column };
    default:
      return undefined;
  }
}

function keyOf(place: EntryPlace): string {
  switch (place.edit) {
    case 'name':
      return 'name';
    case 'cell':
      return JSON.stringify([place.sheet, place.row, place.column]);
    default:
      return JSON.stringify([place.edit, place.name]);
  }
}
