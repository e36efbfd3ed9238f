import type { SheetView, Working } from '../../src/worksheet/index.ts';

/** As much of a cell's working as a book without an engine can tell: its value, formula and source. */
export function fakeWorking(
  sheet: SheetView | undefined,
  row: string,
  column: string,
): Working | undefined {
  const view = sheet?.columns.find(({ id }) => id === column);
  const at = Array.from({ length: sheet?.rowCount ?? 0 }, (_, place) => place).find(
    (place) => sheet?.rowId(place) === row,
  );
  if (!sheet || !view || at === undefined) return undefined;
  const cell = sheet.cell(at, column);
  return {
    place: { sheet: sheet.id, row, column },
    title: `${view.label}, ${sheet.rowName(at)}`,
    state: cell.state,
    value: `${cell.text} ${view.unit}`.trim(),
    si: '',
    typed: cell.typed,
    note: cell.note,
    help: view.help,
    standing: view.standing,
    source: view.source,
    formula: view.formula,
    inNumbers: '',
    taken: cell.state === 'known' ? (view.formula ?? '') : '',
    takenInNumbers: '',
    worked: cell.state === 'known' && view.formula !== undefined ? cell.text : '',
    isOverruled: cell.suggested !== undefined,
    steps: [],
    rules: [],
    gathered: [],
    waits: [],
    problems: [],
    usedBy: [],
  };
}
