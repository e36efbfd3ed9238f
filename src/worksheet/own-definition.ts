import {
  isProblem,
  nearest,
  parseUnit,
  problem,
  sameDimension,
  type Kind,
  type Problem,
} from '../units/index.ts';
import type { ColumnDefinition, SheetDefinition } from './definition.ts';
import { kindNamed, kindNames } from './kinds.ts';

/** A column that a user made: it may say behind which other it stands. */
export interface OwnColumn extends ColumnDefinition {
  readonly after?: string;
}

/** A column read from JSON and checked by itself; its name and formula are checked among the sheets. */
export function readOwnColumn(value: unknown, where: string): OwnColumn | Problem {
  const read = readFields(value, COLUMN_FIELDS, where);
  if (isProblem(read)) return read;
  const column = Object.fromEntries(read) as unknown as OwnColumn;
  const called = `${where}, ${typeof column.id === 'string' ? column.id : 'a column'}`;
  if (!column.id || !column.label || !column.kind)
    return problem(called, 'It lacks its id, label or kind.', 'Give it all three.');
  const kind = kindNamed(column.kind, column.choices);
  if (!kind) {
    const meant = nearest(column.kind, kindNames());
    return problem(
      called,
      `There is no kind “${column.kind}”.`,
      meant === undefined
        ? `Use one of these: ${kindNames().join(', ')}.`
        : `Did you mean ${meant}?`,
    );
  }
  if (column.kind === 'choice' && (column.choices ?? []).length === 0)
    return problem(called, 'It is a choice of nothing.', 'List what may be chosen.');
  if (column.entry !== true && column.formula === undefined)
    return problem(called, 'Nothing fills it.', 'Let people type in it, or give it a formula.');
  for (const unit of [column.unit, column.metric]) {
    if (unit === undefined || fits(unit, kind)) continue;
    return problem(
      called,
      `“${unit}” is no unit of a ${column.kind}.`,
      'Write a unit such as in, ft^3, lb or USD, or leave it out.',
    );
  }
  if (column.total !== undefined && kind.type !== 'quantity')
    return problem(called, `A ${column.kind} has no total.`, 'Leave the total out.');
  return column;
}

/** A sheet read from JSON and checked by itself. */
export function readOwnSheet(value: unknown, where: string): SheetDefinition | Problem {
  const read = readFields(value, SHEET_FIELDS, where);
  if (isProblem(read)) return read;
  const { format, id, title, rows } = Object.fromEntries(read) as Partial<SheetDefinition>;
  const called = `${where}, ${id ?? 'a sheet'}`;
  if (format !== 1)
    return problem(called, `Its format is “${String(format)}”.`, 'Use a file of format 1.');
  if (!id || !title) return problem(called, 'It lacks its id or title.', 'Give it both.');
  const columns: OwnColumn[] = [];
  for (const each of read.get('columns') as readonly unknown[]) {
    const column = readOwnColumn(each, called);
    if ('found' in column) return column;
    if (columns.some((other) => other.id === column.id))
      return problem(called, `It has two columns “${column.id}”.`, 'Rename one.');
    columns.push(column);
  }
  if (!rows || !columns.some((column) => 'key' in rows && column.id === rows.key))
    return problem(
      called,
      'Its rows are named by no column of it.',
      'Let rows.key be the id of a column.',
    );
  return {
    ...(Object.fromEntries(read) as unknown as SheetDefinition),
    question: questionOf(read),
    columns,
  };
}

type Reader = (value: unknown) => boolean;

const text = (longest: number): Reader => {
  return (value) => typeof value === 'string' && value.trim() !== '' && value.length <= longest;
};
const flag: Reader = (value) => typeof value === 'boolean';
const texts: Reader = (value) => isList(value, 200, text(200));
const oneOf = (...names: readonly string[]): Reader => {
  return (value) => typeof value === 'string' && names.includes(value);
};

const COLUMN_FIELDS: Readonly<Record<string, Reader>> = {
  id: text(40),
  label: text(60),
  hint: text(60),
  called: text(60),
  group: text(60),
  kind: text(40),
  choices: texts,
  unit: text(20),
  metric: text(20),
  percent: flag,
  entry: flag,
  formula: text(2000),
  start: text(200),
  startMetric: text(200),
  help: text(500),
  source: text(300),
  standing: text(60),
  show: oneOf('always', 'when filled', 'more'),
  wide: flag,
  total: oneOf('sum'),
  suggest: texts,
  after: text(40),
};

const SHEET_FIELDS: Readonly<Record<string, Reader>> = {
  format: (value) => value === 1,
  id: text(40),
  title: text(60),
  question: (value) => typeof value === 'string' && value.length <= 200,
  rows: isRows,
  columns: (value) => isList(value, 200, () => true) && (value as readonly unknown[]).length > 0,
  starting: (value) => isList(value, 500, isTexts),
  stops: (value) => isList(value, 50, isStop),
};

function readFields(
  value: unknown,
  known: Readonly<Record<string, Reader>>,
  where: string,
): ReadonlyMap<string, unknown> | Problem {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return problem(where, 'This is no description of a sheet or column.', 'Choose another file.');
  const read = new Map<string, unknown>(Object.entries(value));
  for (const [name, field] of read) {
    const reader = Object.hasOwn(known, name) ? known[name] : undefined;
    if (!reader) {
      const meant = nearest(name, Object.keys(known));
      return problem(
        where,
        `Nothing here is called “${name.slice(0, 40)}”.`,
        meant === undefined ? 'Take it out.' : `Did you mean “${meant}”?`,
      );
    }
    if (!reader(field))
      return problem(
        `${where}, ${name}`,
        `“${JSON.stringify(field).slice(0, 60)}” can't stand there.`,
        'Look at a sheet that was shared from here.',
      );
  }
  return read;
}

function isRows(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const rows = new Map<string, unknown>(Object.entries(value));
  const isText = (name: string) => text(200)(rows.get(name));
  const isCalled = rows.get('called') === '' || isText('called');
  if (!isText('key') || !isCalled) return false;
  if (rows.get('from') === 'entered') return rows.size === 3;
  const where = rows.has('where') ? isText('where') : true;
  return rows.get('from') === 'following' && isText('sheet') && where;
}

function isStop(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const { rule, level, when, message, source } = value as Record<string, unknown>;
  return (
    oneOf('stop', 'caution')(level) && [rule, message, source].every(text(500)) && text(2000)(when)
  );
}

function isTexts(value: unknown): boolean {
  return (
    typeof value === 'object' &&
    value !== null &&
    Object.values(value).every((each) => typeof each === 'string')
  );
}

function isList(value: unknown, most: number, item: Reader): boolean {
  return Array.isArray(value) && value.length <= most && value.every(item);
}

function fits(unit: string, kind: Kind): boolean {
  const read = parseUnit(unit);
  const of = kind.type === 'list' ? kind.of : kind;
  return (
    read !== undefined && of.type === 'quantity' && sameDimension(read.dimension, of.dimension)
  );
}

function questionOf(read: ReadonlyMap<string, unknown>): string {
  const question = read.get('question');
  return typeof question === 'string' ? question : '';
}
