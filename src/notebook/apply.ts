import type { Change } from './change.ts';
import type { NotebookDocument, Row } from './document.ts';

/** Where each row stands in its sheet; kept beside the document so that one edit need not search 100,000 rows. */
export class RowPlaces {
  private readonly bySheet = new Map<string, Map<string, number>>();

  /** The place of a row, or undefined where the sheet has no such row. */
  find(document: NotebookDocument, sheet: string, row: string): number | undefined {
    let places = this.bySheet.get(sheet);
    if (!places) {
      places = new Map((document.sheets.get(sheet) ?? []).map(({ id }, index) => [id, index]));
      this.bySheet.set(sheet, places);
    }
    return places.get(row);
  }

  /** Forgets a sheet whose rows moved. */
  forget(sheet: string): void {
    this.bySheet.delete(sheet);
  }
}

/** Makes one change to the document. A change that does not fit the document is wrong code, and throws. */
export function apply(document: NotebookDocument, change: Change, places: RowPlaces): void {
  switch (change.edit) {
    case 'name':
      document.name = change.after;
      return;
    case 'input':
      put(document.inputs, change.name, change.after);
      return;
    case 'formula':
      put(document.formulas, change.name, change.after);
      return;
    case 'assumed':
      put(document.assumed, change.name, change.after);
      return;
    case 'own':
      document.own.clear();
      for (const [name, part] of change.after) document.own.set(name, part);
      return;
    case 'cell': {
      const at = places.find(document, change.sheet, change.row);
      const row = at === undefined ? undefined : rowsOf(document, change.sheet)[at];
      if (!row) throw new Error(`No row ${change.row} on sheet ${change.sheet}.`);
      put(row.cells, change.column, change.after);
      return;
    }
    case 'add rows': {
      const rows = rowsOf(document, change.sheet);
      document.sheets.set(change.sheet, [
        ...rows.slice(0, change.at),
        // The document owns its rows: a redo must not see edits made since.
        ...change.rows.map((row) => ({ ...row, cells: new Map(row.cells) })),
        ...rows.slice(change.at),
      ]);
      places.forget(change.sheet);
      return;
    }
    case 'remove rows':
      rowsOf(document, change.sheet).splice(change.at, change.rows.length);
      places.forget(change.sheet);
      return;
    case 'add file':
      document.files.push(change.file);
      return;
    case 'remove file':
      document.files.splice(document.files.lastIndexOf(change.file), 1);
      return;
  }
}

/** The change that takes another back. */
export function inverse(change: Change): Change {
  switch (change.edit) {
    case 'add rows':
      return { ...change, edit: 'remove rows' };
    case 'remove rows':
      return { ...change, edit: 'add rows' };
    case 'add file':
      return { ...change, edit: 'remove file' };
    case 'remove file':
      return { ...change, edit: 'add file' };
    default:
      return { ...change, before: change.after, after: change.before } as Change;
  }
}

function rowsOf(document: NotebookDocument, sheet: string): Row[] {
  let rows = document.sheets.get(sheet);
  if (!rows) {
    rows = [];
    document.sheets.set(sheet, rows);
  }
  return rows;
}

function put(entries: Map<string, string>, key: string, value: string | undefined): void {
  if (value === undefined) entries.delete(key);
  else entries.set(key, value);
}
