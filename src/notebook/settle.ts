import type { RowPlaces } from './apply.ts';
import type { Change } from './change.ts';
import { placeOf, type Clashes } from './clash.ts';
import type { ImportedFile, NotebookDocument, OwnPart, Row } from './document.ts';

/**
 * What a change made elsewhere, or earlier, comes to in the document as it is now: the change itself
 * where nothing moved under it. What it would write over, or can no longer write, becomes a clash.
 */
export function settle(
  change: Change,
  document: NotebookDocument,
  places: RowPlaces,
  clashes: Clashes,
): readonly Change[] {
  switch (change.edit) {
    case 'name':
    case 'input':
    case 'formula':
    case 'assumed':
    case 'cell':
      return settleEntry(change, document, places, clashes);
    case 'add rows':
      return settleAdded(change, document, places, clashes);
    case 'remove rows':
      return settleRemoved(change, document, places, clashes);
    case 'own':
      return [{ edit: 'own', before: [...document.own], after: mergedOwn(change, document.own) }];
    case 'add file':
      return [change];
    case 'remove file': {
      const file = document.files.findLast((each) => isSameFile(each, change.file));
      return file ? [{ edit: 'remove file', file }] : [];
    }
  }
}

type EntryEdit = Extract<Change, { edit: 'name' | 'input' | 'formula' | 'assumed' | 'cell' }>;
type RowsEdit = Extract<Change, { edit: 'add rows' | 'remove rows' }>;

function settleEntry(
  change: EntryEdit,
  document: NotebookDocument,
  places: RowPlaces,
  clashes: Clashes,
): readonly Change[] {
  const place = placeOf(change);
  if (!place) return [change];
  const cells = change.edit === 'cell' ? cellsOf(change, document, places) : undefined;
  if (change.edit === 'cell' && !cells) {
    if (change.after === undefined) clashes.drop(place);
    else clashes.add({ place, standing: undefined, other: change.after, rowIsGone: true });
    return [];
  }
  const standing = cells ? cells.get(columnOf(change)) : entryOf(change, document);
  if (standing === change.before) {
    clashes.drop(place);
    return [change];
  }
  if (standing === change.after) return [];
  clashes.add({ place, standing: change.after, other: standing, rowIsGone: false });
  return [{ ...change, before: standing } as EntryEdit];
}

function settleAdded(
  change: RowsEdit,
  document: NotebookDocument,
  places: RowPlaces,
  clashes: Clashes,
): readonly Change[] {
  const { sheet } = change;
  const isHere = ({ id }: Row): boolean => places.find(document, sheet, id) !== undefined;
  const at = Math.min(change.at, document.sheets.get(sheet)?.length ?? 0);
  const here = change.rows.filter(isHere);
  if (here.length === 0) return [at === change.at ? change : { ...change, at }];
  const rows = change.rows.filter((row) => !isHere(row));
  // A row of this id came from another window: its cells meet these one by one.
  const written = here.flatMap(({ id, cells }) =>
    [...cells].flatMap(([column, after]) =>
      settleEntry(
        { edit: 'cell', sheet, row: id, column, before: undefined, after },
        document,
        places,
        clashes,
      ),
    ),
  );
  return rows.length === 0 ? written : [...written, { ...change, at, rows }];
}

function settleRemoved(
  change: RowsEdit,
  document: NotebookDocument,
  places: RowPlaces,
  clashes: Clashes,
): readonly Change[] {
  const { sheet } = change;
  const here = document.sheets.get(sheet) ?? [];
  const found = change.rows
    .flatMap((row) => {
      const at = places.find(document, sheet, row.id);
      const now = at === undefined ? undefined : here[at];
      if (at === undefined || !now) return [];
      for (const [column, text] of now.cells) {
        if (row.cells.get(column) === text) continue;
        const place = { edit: 'cell', sheet, row: row.id, column } as const;
        clashes.add({ place, standing: undefined, other: text, rowIsGone: true });
      }
      return [{ at, row: { ...now, cells: new Map(now.cells) } }];
    })
    .sort((one, other) => one.at - other.at);
  // The last run of rows first, so that the places of the others hold.
  const runs: { at: number; rows: Row[] }[] = [];
  for (const { at, row } of found) {
    const last = runs.at(-1);
    if (last && last.at + last.rows.length === at) last.rows.push(row);
    else runs.push({ at, rows: [row] });
  }
  return runs.reverse().map(({ at, rows }) => ({ edit: 'remove rows', sheet, at, rows }));
}

function mergedOwn(
  { before, after }: Extract<Change, { edit: 'own' }>,
  standing: ReadonlyMap<string, OwnPart>,
): readonly (readonly [string, OwnPart])[] {
  const [then, wanted] = [new Map(before), new Map(after)];
  const kept = [...standing].filter(([name]) => !then.has(name) && !wanted.has(name));
  const same = (name: string): boolean =>
    JSON.stringify(then.get(name)) === JSON.stringify(wanted.get(name));
  const meant = after
    .filter(([name]) => standing.has(name) || !same(name))
    .map(([name, part]) => [name, same(name) ? (standing.get(name) ?? part) : part] as const);
  return [...meant, ...kept];
}

function cellsOf(
  change: { readonly sheet: string; readonly row: string },
  document: NotebookDocument,
  places: RowPlaces,
): ReadonlyMap<string, string> | undefined {
  const at = places.find(document, change.sheet, change.row);
  return at === undefined ? undefined : document.sheets.get(change.sheet)?.[at]?.cells;
}

function columnOf(change: EntryEdit): string {
  return change.edit === 'cell' ? change.column : '';
}

function entryOf(change: EntryEdit, document: NotebookDocument): string | undefined {
  switch (change.edit) {
    case 'name':
      return document.name;
    case 'input':
      return document.inputs.get(change.name);
    case 'formula':
      return document.formulas.get(change.name);
    case 'assumed':
      return document.assumed.get(change.name);
    case 'cell':
      return undefined;
  }
}

function isSameFile(one: ImportedFile, other: ImportedFile): boolean {
  return one === other || (one.name === other.name && one.bytes === other.bytes);
}
