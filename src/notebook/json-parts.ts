import type { ImportedFile, OwnPart, PassedLine, Row } from './document.ts';
import type { Steps } from './steps.ts';

/** Rows read at one go. */
const AT_A_TIME = 200;

/** Hears of every piece that could not be read: where it stood, in words. */
export type Aside = (where: string) => void;

/** Rows as plain JSON. */
export function rowToJson(row: Row): unknown {
  return {
    id: row.id,
    cells: [...row.cells],
    ...(row.from && { from: row.from }),
    ...(row.kept && { kept: [...row.kept] }),
    ...(row.assumed && { assumed: [...row.assumed] }),
  };
}

/** An object's own fields; undefined for anything else. */
export function fields(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return new Map<string, unknown>(Object.entries(value));
}

/** The items of a list that can be read; the others are told by their place, from 1 and after those `before`. */
export function list<T>(
  value: unknown,
  where: string,
  aside: Aside,
  read: (item: unknown, where: string) => T | undefined,
  before = 0,
): T[] {
  if (!Array.isArray(value)) {
    aside(where);
    return [];
  }
  return (value as unknown[]).flatMap((item, index) => {
    const place = `${where}, ${String(before + index + 1)}`;
    const one = read(item, place);
    if (one === undefined) aside(place);
    return one === undefined ? [] : [one];
  });
}

/** Pairs of a name and a text. Of two with one name the first is read and the other told. */
export function pairs(value: unknown, where: string, aside: Aside): Map<string, string> {
  return eachOnce(list(value, where, aside, pair), where, aside);
}

/** Sheets by id, with those of their rows that can be read. */
export function* sheets(value: unknown, where: string, aside: Aside): Steps<Map<string, Row[]>> {
  const lists = new Map<Row[], readonly [unknown, string]>();
  const read = list(value, where, aside, (item, place): [string, Row[]] | undefined => {
    const sheet = fields(item);
    const id = sheet?.get('sheet');
    if (typeof id !== 'string') return undefined;
    const rows: Row[] = [];
    lists.set(rows, [sheet?.get('rows'), place]);
    return [id, rows];
  });
  for (const [rows, [written, place]] of lists) {
    const ids = new Set<string>();
    const length = Array.isArray(written) ? written.length : 1;
    for (let at = 0; at < length; at += AT_A_TIME) {
      const some: unknown = Array.isArray(written) ? written.slice(at, at + AT_A_TIME) : written;
      for (const row of list(some, `${place}, rows`, aside, rowFromJson, at)) {
        // Two rows with one id would make every later edit ambiguous.
        if (ids.has(row.id)) aside(`${place}, a second row of one id`);
        else rows.push(row);
        ids.add(row.id);
      }
      yield;
    }
  }
  return eachOnce(read, where, aside);
}

/** Columns and sheets of the user's own, by name. */
export function ownParts(value: unknown, where: string, aside: Aside): Map<string, OwnPart> {
  return eachOnce(list(value, where, aside, ownFromJson), where, aside);
}

/** Files that were brought in. */
export function importedFiles(value: unknown, where: string, aside: Aside): ImportedFile[] {
  return list(value, where, aside, fileFromJson);
}

/** One row, whole or not at all. */
export function rowFromJson(value: unknown): Row | undefined {
  const row = fields(value);
  const id = row?.get('id');
  if (!row || typeof id !== 'string') return undefined;
  const cells = wholePairs(row.get('cells'));
  const from = originFromJson(row.get('from'));
  const kept = wholePairs(row.get('kept') ?? []);
  const assumed = wholePairs(row.get('assumed') ?? []);
  if (!cells || (!from && row.has('from')) || !kept || !assumed) return undefined;
  return {
    id,
    cells,
    ...(from && { from }),
    ...(row.has('kept') && { kept }),
    ...(row.has('assumed') && { assumed }),
  };
}

/** One file, whole or not at all. */
export function fileFromJson(value: unknown): ImportedFile | undefined {
  const file = fields(value);
  const name = file?.get('name');
  const bytes = file?.get('bytes');
  const linesRead = file?.get('linesRead');
  const passedOver = whole((aside) => list(file?.get('passedOver'), '', aside, passedFromJson));
  if (typeof name !== 'string' || typeof bytes !== 'string' || !passedOver) return undefined;
  return isCount(linesRead) ? { name, bytes, linesRead, passedOver } : undefined;
}

/** One own part with its name. */
export function ownFromJson(value: unknown): [string, OwnPart] | undefined {
  if (!Array.isArray(value) || value.length !== 2) return undefined;
  const [name, part] = value as unknown[];
  if (typeof name !== 'string' || fields(part) === undefined) return undefined;
  return isShallow(part, OWN_DEPTH) ? [name, part as OwnPart] : undefined;
}

/** What a reader made of a list, where it had nothing to set aside. */
export function whole<T>(read: (aside: Aside) => T): T | undefined {
  const missing: string[] = [];
  const result = read((where) => missing.push(where));
  return missing.length === 0 ? result : undefined;
}

// A column or a sheet goes five deep; what goes deeper was made to exhaust whoever walks it.
const OWN_DEPTH = 12;

function isShallow(value: unknown, depth: number): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return depth > 0 && Object.values(value).every((each) => isShallow(each, depth - 1));
}

function wholePairs(value: unknown): Map<string, string> | undefined {
  return whole((aside) => pairs(value, '', aside));
}

function pair(value: unknown): [string, string] | undefined {
  if (!Array.isArray(value) || value.length !== 2) return undefined;
  const [key, text] = value as unknown[];
  return typeof key === 'string' && typeof text === 'string' ? [key, text] : undefined;
}

// Of two with one name, one would be lost without a word.
function eachOnce<T>(named: readonly [string, T][], where: string, aside: Aside): Map<string, T> {
  const map = new Map<string, T>();
  for (const [name, value] of named) {
    if (map.has(name)) aside(`${where}, a second “${name}”`);
    else map.set(name, value);
  }
  return map;
}

// `1e999` in a file is past all numbers, and would be written back as nothing.
function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}

function originFromJson(value: unknown): Row['from'] {
  const from = fields(value);
  const file = from?.get('file');
  const line = from?.get('line');
  return typeof file === 'string' && isCount(line) ? { file, line } : undefined;
}

function passedFromJson(value: unknown): PassedLine | undefined {
  const passed = fields(value);
  const line = passed?.get('line');
  const text = passed?.get('text');
  const why = passed?.get('why');
  if (!isCount(line) || typeof text !== 'string') return undefined;
  return typeof why === 'string' ? { line, text, why } : undefined;
}
