import type { Change } from './change.ts';
import type { NotebookDocument, Row } from './document.ts';

/** The changes that make one document into another; none where both hold the same. */
export function difference(from: NotebookDocument, to: NotebookDocument): readonly Change[] {
  const changes: Change[] = [];
  if (from.name !== to.name) changes.push({ edit: 'name', before: from.name, after: to.name });
  for (const [edit, then, now] of [
    ['input', from.inputs, to.inputs],
    ['formula', from.formulas, to.formulas],
    ['assumed', from.assumed, to.assumed],
  ] as const) {
    for (const [name, before, after] of entries(then, now)) changes.push({ edit, name, before, after }); // prettier-ignore
  }
  if (JSON.stringify([...from.own]) !== JSON.stringify([...to.own]))
    changes.push({ edit: 'own', before: [...from.own], after: [...to.own] });
  for (const sheet of new Set([...from.sheets.keys(), ...to.sheets.keys()]))
    changes.push(...rowChanges(sheet, from.sheets.get(sheet) ?? [], to.sheets.get(sheet) ?? []));
  const isIn = (files: NotebookDocument['files'], bytes: string, name: string): boolean =>
    files.some((file) => file.bytes === bytes && file.name === name);
  for (const file of from.files)
    if (!isIn(to.files, file.bytes, file.name)) changes.push({ edit: 'remove file', file });
  for (const file of to.files)
    if (!isIn(from.files, file.bytes, file.name)) changes.push({ edit: 'add file', file });
  return changes;
}

function rowChanges(sheet: string, from: readonly Row[], to: readonly Row[]): readonly Change[] {
  const sameRows =
    from.length === to.length && from.every((row, at) => standingOf(row) === standingOf(to[at]));
  if (sameRows) {
    return from.flatMap((row, at) =>
      entries(row.cells, to[at]?.cells ?? new Map()).map(
        ([column, before, after]): Change => ({ edit: 'cell', sheet, row: row.id, column, before, after }), // prettier-ignore
      ),
    );
  }
  const changes: Change[] = [];
  if (from.length > 0) changes.push({ edit: 'remove rows', sheet, at: 0, rows: copies(from) });
  if (to.length > 0) changes.push({ edit: 'add rows', sheet, at: 0, rows: copies(to) });
  return changes;
}

function entries(
  from: ReadonlyMap<string, string>,
  to: ReadonlyMap<string, string>,
): [string, string | undefined, string | undefined][] {
  return [...new Set([...from.keys(), ...to.keys()])]
    .map((name): [string, string | undefined, string | undefined] => [
      name,
      from.get(name),
      to.get(name),
    ]) // prettier-ignore
    .filter(([, before, after]) => before !== after);
}

// Everything of a row but its cells.
function standingOf(row: Row | undefined): string {
  return JSON.stringify([
    row?.id,
    row?.from?.file,
    row?.from?.line,
    [...(row?.kept ?? [])],
    [...(row?.assumed ?? [])],
  ]);
}

function copies(rows: readonly Row[]): readonly Row[] {
  return rows.map((row) => ({ ...row, cells: new Map(row.cells) }));
}
