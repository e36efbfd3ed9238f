import { isProblem, problem, type Problem } from '../units/index.ts';
import type { ImportedFile, NotebookDocument, OwnPart, PassedLine, Row } from './document.ts';

/** The format this build writes. */
export const FORMAT = 1;

/** The document as plain JSON. Names typed by people become pairs, never keys, so that any name is just text. */
export function toJson(document: NotebookDocument): unknown {
  return {
    backplumb: 'notebook',
    format: FORMAT,
    name: document.name,
    inputs: [...document.inputs],
    sheets: [...document.sheets].map(([sheet, rows]) => ({ sheet, rows: rows.map(rowToJson) })),
    formulas: [...document.formulas],
    assumed: [...document.assumed],
    own: [...document.own],
    files: document.files,
  };
}

/** A document read back from JSON, checked whole before anything is made of it. */
export function fromJson(value: unknown): NotebookDocument | Problem {
  const notebook = fields(value);
  if (notebook?.get('backplumb') !== 'notebook') {
    return refused('this is not a Backplumb notebook', 'Choose a file that was saved from here.');
  }
  const format = notebook.get('format');
  if (typeof format !== 'number' || format > FORMAT) {
    return refused(
      'the notebook was written by a newer version',
      'Open it with that version, or reload this page to get it.',
    );
  }
  if (format !== FORMAT) return refused(`its format is “${String(format)}”`, EARLIER);
  const name = notebook.get('name');
  const inputs = pairs(notebook.get('inputs'));
  const sheets = eachOnce(list(notebook.get('sheets'), sheetFromJson));
  const formulas = pairs(notebook.get('formulas'));
  const assumed = pairs(notebook.get('assumed'));
  const own = eachOnce(list(notebook.get('own') ?? [], ownFromJson));
  const files = list(notebook.get('files'), fileFromJson);
  const parts = { inputs, sheets, formulas, assumed, own, files };
  const damaged = Object.entries(parts).find(([, part]) => part === undefined)?.[0];
  if (typeof name !== 'string' || !inputs || !sheets || !formulas || !assumed || !own || !files) {
    return refused(`its “${damaged ?? 'name'}” part is damaged`, EARLIER);
  }
  return { format: FORMAT, name, inputs, sheets, formulas, assumed, own, files };
}

/** A document read from the text of a notebook file. */
export function fromText(text: string): NotebookDocument | Problem {
  try {
    return fromJson(JSON.parse(text) as unknown);
  } catch (error) {
    if (isProblem(error)) return error;
    return refused('the file stops before its end, or is not a notebook', EARLIER);
  }
}

const EARLIER = 'Open an earlier copy; the notebook on screen is untouched.';

function refused(found: string, fix: string): Problem {
  return problem('Notebook file', found + '.', fix);
}

function rowToJson(row: Row): unknown {
  return {
    id: row.id,
    cells: [...row.cells],
    ...(row.from && { from: row.from }),
    ...(row.kept && { kept: [...row.kept] }),
    ...(row.assumed && { assumed: [...row.assumed] }),
  };
}

function sheetFromJson(value: unknown): [string, Row[]] | undefined {
  const sheet = fields(value);
  const id = sheet?.get('sheet');
  const rows = list(sheet?.get('rows'), rowFromJson);
  if (typeof id !== 'string' || !rows) return undefined;
  // Two rows with one id would make every later edit ambiguous.
  return new Set(rows.map((row) => row.id)).size === rows.length ? [id, rows] : undefined;
}

function ownFromJson(value: unknown): [string, OwnPart] | undefined {
  if (!Array.isArray(value) || value.length !== 2) return undefined;
  const [name, part] = value as unknown[];
  if (typeof name !== 'string' || fields(part) === undefined) return undefined;
  return [name, part as OwnPart];
}

function rowFromJson(value: unknown): Row | undefined {
  const row = fields(value);
  const id = row?.get('id');
  const cells = pairs(row?.get('cells'));
  if (!row || typeof id !== 'string' || !cells) return undefined;
  const from = originFromJson(row.get('from'));
  const kept = pairs(row.get('kept') ?? []);
  const assumed = pairs(row.get('assumed') ?? []);
  if ((!from && row.has('from')) || !kept || !assumed) return undefined;
  return {
    id,
    cells,
    ...(from && { from }),
    ...(row.has('kept') && { kept }),
    ...(row.has('assumed') && { assumed }),
  };
}

function originFromJson(value: unknown): Row['from'] {
  const from = fields(value);
  const file = from?.get('file');
  const line = from?.get('line');
  return typeof file === 'string' && typeof line === 'number' ? { file, line } : undefined;
}

function fileFromJson(value: unknown): ImportedFile | undefined {
  const file = fields(value);
  const name = file?.get('name');
  const bytes = file?.get('bytes');
  const linesRead = file?.get('linesRead');
  const passedOver = list(file?.get('passedOver'), passedFromJson);
  if (typeof name !== 'string' || typeof bytes !== 'string' || !passedOver) return undefined;
  return typeof linesRead === 'number' ? { name, bytes, linesRead, passedOver } : undefined;
}

function passedFromJson(value: unknown): PassedLine | undefined {
  const passed = fields(value);
  const line = passed?.get('line');
  const text = passed?.get('text');
  const why = passed?.get('why');
  if (typeof line !== 'number' || typeof text !== 'string') return undefined;
  return typeof why === 'string' ? { line, text, why } : undefined;
}

function fields(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return new Map<string, unknown>(Object.entries(value));
}

function list<T>(value: unknown, read: (item: unknown) => T | undefined): T[] | undefined {
  if (!Array.isArray(value)) return undefined;
  const items = value.map(read);
  return items.every((item) => item !== undefined) ? items : undefined;
}

function pairs(value: unknown): Map<string, string> | undefined {
  const read = list(value, (pair): [string, string] | undefined => {
    if (!Array.isArray(pair) || pair.length !== 2) return undefined;
    const [key, text] = pair as unknown[];
    return typeof key === 'string' && typeof text === 'string' ? [key, text] : undefined;
  });
  return eachOnce(read);
}

// Of two with one name, one would be lost without a word.
function eachOnce<T>(named: [string, T][] | undefined): Map<string, T> | undefined {
  const map = new Map(named);
  return named && map.size === named.length ? map : undefined;
}
