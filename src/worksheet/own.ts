import type { OwnPart } from '../notebook/index.ts';
import { isProblem, problem, type Problem } from '../units/index.ts';
import type { ColumnDefinition, SheetDefinition } from './definition.ts';
import { readOwnColumn, readOwnSheet, type OwnColumn } from './own-definition.ts';
import { refusedColumnName, refusedSheetName } from './own-names.ts';
import { SHEETS } from './sheets.ts';

/** All sheets of a notebook, built in and the user's own. */
export interface Definitions {
  readonly sheets: readonly SheetDefinition[];
  /** Names of sheets and columns that a user made: `site_visit`, `posts.cap`. */
  readonly own: ReadonlySet<string>;
  /** Parts that could not be put to work, by name. */
  readonly problems: ReadonlyMap<string, Problem>;
}

/** The built-in sheets with the user's own columns and sheets among them. What can't be read is left out and told. */
export function definitionsOf(own: ReadonlyMap<string, OwnPart>): Definitions {
  const problems = new Map<string, Problem>();
  const names = new Set<string>();
  let sheets: readonly SheetDefinition[] = SHEETS;
  for (const [name, part] of own) {
    const added = name.includes('.')
      ? withColumn(sheets, name, part)
      : withSheet(sheets, name, part);
    if (isProblem(added)) problems.set(name, added);
    else {
      sheets = added;
      names.add(name);
    }
  }
  return { sheets, own: names, problems };
}

/** Whether a name of a column, such as `posts.cap`, is the user's own, by itself or with its whole sheet. */
export function isOwn(name: string, { own }: Definitions): boolean {
  return own.has(name) || own.has(name.split('.')[0] ?? '');
}

function withColumn(
  sheets: readonly SheetDefinition[],
  name: string,
  part: OwnPart,
): readonly SheetDefinition[] | Problem {
  const [sheetId = '', id = ''] = name.split('.');
  const where = `Your column ${name}`;
  const column = readOwnColumn(part, where);
  if (isProblem(column)) return column;
  const sheet = sheets.find((one) => one.id === sheetId);
  if (!sheet)
    return problem(where, `There is no sheet “${sheetId}”.`, 'Bring that sheet in first.');
  if (column.id !== id)
    return problem(where, `Inside it is called “${column.id}”.`, 'Use one name.');
  const refused = refusedColumnName(id, sheet, sheets) ?? refusedEntry(sheet, column, where);
  if (refused) return refused;
  const changed = { ...sheet, columns: placed(sheet.columns, asYours(column)) };
  return sheets.map((one) => (one === sheet ? changed : one));
}

function withSheet(
  sheets: readonly SheetDefinition[],
  name: string,
  part: OwnPart,
): readonly SheetDefinition[] | Problem {
  const where = `Your sheet ${name}`;
  const sheet = readOwnSheet(part, where);
  if (isProblem(sheet)) return sheet;
  if (sheet.id !== name)
    return problem(where, `Inside it is called “${sheet.id}”.`, 'Use one name.');
  const refused = refusedSheetName(name, sheets);
  if (refused) return refused;
  const all = [...sheets, sheet];
  for (const { id } of sheet.columns) {
    const why = refusedColumnName(id, undefined, all);
    if (why) return { ...why, where: `${where}, ${why.where}` };
  }
  const { rows } = sheet;
  if (rows.from === 'following') {
    const followed = sheets.find(({ id }) => id === rows.sheet);
    if (followed?.rows.from !== 'entered' && followed?.rows.from !== 'following')
      return problem(
        where,
        `Its rows follow “${rows.sheet}”, which has no rows of its own to follow.`,
        'Let it follow posts or another sheet with rows.',
      );
  }
  return [...sheets, { ...sheet, columns: sheet.columns.map(asYours) }];
}

// A list that is made up of lines has nowhere to keep what is typed.
function refusedEntry(
  { rows, id }: SheetDefinition,
  column: OwnColumn,
  where: string,
): Problem | undefined {
  if (rows.from !== 'lines' || column.entry !== true) return undefined;
  return problem(where, `Nothing is typed on the sheet “${id}”.`, 'Give the column a formula.');
}

function asYours(column: ColumnDefinition): ColumnDefinition {
  return { source: 'your own column', ...column, standing: 'yours' };
}

function placed(
  columns: readonly ColumnDefinition[],
  column: OwnColumn,
): readonly ColumnDefinition[] {
  const behind = columns.findIndex(({ id }) => id === column.after);
  const at = behind < 0 ? columns.length : behind + 1;
  return [...columns.slice(0, at), column, ...columns.slice(at)];
}
