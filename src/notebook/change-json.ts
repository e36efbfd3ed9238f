import type { Change } from './change.ts';
import type { Clash, EntryPlace } from './clash.ts';
import {
  fields,
  fileFromJson,
  list,
  ownFromJson,
  rowFromJson,
  rowToJson,
  whole,
} from './json-parts.ts';

/** A change as plain JSON; an entry that is blank is left out. */
export function changeToJson(change: Change): unknown {
  switch (change.edit) {
    case 'add rows':
    case 'remove rows':
      return { ...change, rows: change.rows.map(rowToJson) };
    default:
      return change;
  }
}

/** A change read back, or undefined where any of it is not as this build writes it. */
export function changeFromJson(value: unknown): Change | undefined {
  const parts = fields(value);
  const edit = parts?.get('edit');
  if (!parts) return undefined;
  const [before, after] = [parts.get('before'), parts.get('after')];
  switch (edit) {
    case 'name':
      return typeof before === 'string' && typeof after === 'string'
        ? { edit, before, after }
        : undefined;
    case 'input':
    case 'formula':
    case 'assumed':
    case 'cell': {
      const place = placeFromJson(value);
      if (!place || place.edit === 'name' || !isEntry(before) || !isEntry(after)) return undefined;
      return { ...place, before, after };
    }
    case 'add rows':
    case 'remove rows': {
      const [sheet, at] = [parts.get('sheet'), parts.get('at')];
      const rows = whole((aside) => list(parts.get('rows'), '', aside, rowFromJson));
      if (typeof sheet !== 'string' || !isPlace(at) || !rows) return undefined;
      return { edit, sheet, at, rows };
    }
    case 'own': {
      const then = whole((aside) => list(before, '', aside, ownFromJson));
      const now = whole((aside) => list(after, '', aside, ownFromJson));
      return then && now ? { edit, before: then, after: now } : undefined;
    }
    case 'add file':
    case 'remove file': {
      const file = fileFromJson(parts.get('file'));
      return file ? { edit, file } : undefined;
    }
    default:
      return undefined;
  }
}

/** A clash read back from JSON. */
export function clashFromJson(value: unknown): Clash | undefined {
  const parts = fields(value);
  const place = placeFromJson(parts?.get('place'));
  const [standing, other] = [parts?.get('standing'), parts?.get('other')];
  if (!place || !isEntry(standing) || !isEntry(other)) return undefined;
  return { place, standing, other, rowIsGone: parts?.get('rowIsGone') === true };
}

function placeFromJson(value: unknown): EntryPlace | undefined {
  const parts = fields(value);
  const edit = parts?.get('edit');
  switch (edit) {
    case 'name':
      return { edit };
    case 'input':
    case 'formula':
    case 'assumed': {
      const name = parts?.get('name');
      return typeof name === 'string' ? { edit, name } : undefined;
    }
    case 'cell': {
      const [sheet, row] = [parts?.get('sheet'), parts?.get('row')];
      const column = parts?.get('column');
      if (typeof sheet !== 'string' || typeof row !== 'string') return undefined;
      return typeof column === 'string' ? { edit, sheet, row, column } : undefined;
    }
    default:
      return undefined;
  }
}

function isEntry(value: unknown): value is string | undefined {
  return value === undefined || typeof value === 'string';
}

function isPlace(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0;
}
