import { parseUnit } from '../units/index.ts';
import type { SheetView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, shownIn, type Dialect } from './export-dialect.ts';

/** A cell as a list for people has it: rounded, with its unit, as the dialect wants it; blank where it is not known. The one row of the job is called `job`. */
export function measureIn(
  dialect: Dialect,
  sheet: SheetView | undefined,
  row: string,
  column: string,
): string {
  const at = sheet ? placeOf(sheet, row) : undefined;
  const head = sheet?.columns.find(({ id }) => id === column);
  if (!sheet || at === undefined || !head) return '';
  const { state, text, value } = sheet.cell(at, column);
  if (state !== 'known' || text === '') return '';
  const shown = head.unit === '' || /['"′″]/u.test(text) ? text : `${text} ${head.unit}`;
  const unit = head.kind.type === 'quantity' ? parseUnit(head.unit) : undefined;
  return unit && typeof value === 'number' && dialect !== PLAIN_DIALECT
    ? shownIn(value, shown, head.kind, unit, dialect)
    : shown;
}

function placeOf(sheet: SheetView, row: string): number | undefined {
  for (let at = 0; at < sheet.rowCount; at++) if (sheet.rowId(at) === row) return at;
  return undefined;
}
