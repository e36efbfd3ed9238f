import type { Change } from '../notebook/index.ts';
import type { ChangedRows } from './view.ts';

/** More rows of a sheet than that are told as all of them. */
const MANY = 1000;

/** Gathers the rows that may show something else since it was last told. */
export class TouchedRows {
  private rows: Map<string, 'all' | Set<string>> | undefined = new Map();

  /** Notes what was typed, which is shown as it was typed even where it comes to the same. */
  edited(changes: readonly Change[]): void {
    for (const change of changes) {
      if (change.edit === 'cell') this.add(change.sheet, change.row);
      else if (change.edit === 'input' && !SHOWN_EVERYWHERE.has(change.name))
        this.add('job', 'job');
      else this.addEverything();
    }
  }

  /** Rows are called by their name or place in what other cells say. */
  addEverything(): void {
    this.rows = undefined;
  }

  add(sheet: string, row: string): void {
    const rows = this.rows?.get(sheet);
    if (rows === 'all' || !this.rows) return;
    if (!rows) this.rows.set(sheet, new Set([row]));
    else if (rows.size < MANY) rows.add(row);
    else this.rows.set(sheet, 'all');
  }

  addAll(sheet: string): void {
    this.rows?.set(sheet, 'all');
  }

  /** Whether it is of no use to name more rows of a sheet. */
  isAll(sheet: string): boolean {
    return !this.rows || this.rows.get(sheet) === 'all';
  }

  take(): ChangedRows | undefined {
    const { rows } = this;
    this.rows = new Map();
    return rows;
  }
}

/** Inputs that say in what units and words everything is shown. */
const SHOWN_EVERYWHERE: ReadonlySet<string> = new Set(['units', 'currency', 'first_yard', 'second_yard']); // prettier-ignore
