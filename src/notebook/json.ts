import { isProblem, problem, type Problem } from '../units/index.ts';
import type { NotebookDocument } from './document.ts';
import { fields, importedFiles, ownParts, pairs, rowToJson, sheets } from './json-parts.ts';
import { atOnce, type Steps } from './steps.ts';
import { FORMAT, upgraded, type Parts } from './upgrade.ts';

export { FORMAT } from './upgrade.ts';

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

/** A notebook as far as it can be read. */
export interface ReadNotebook {
  readonly document: NotebookDocument;
  /** Where each piece stood that could not be read. */
  readonly setAside: readonly string[];
  /** Why it may be looked at but not changed: a newer version wrote it, and knows more than is read here. */
  readonly newer: Problem | undefined;
}

/** Whatever of a notebook can be read from JSON, with a list of what can't; refused where it is no notebook at all. */
export function readNotebook(value: unknown): ReadNotebook | Problem {
  return atOnce(readingNotebook(value));
}

/** The same a step at a time. */
export function* readingNotebook(value: unknown): Steps<ReadNotebook | Problem> {
  const written = fields(value);
  if (written?.get('backplumb') !== 'notebook') {
    return refused('this is not a Backplumb notebook', 'Choose a file that was saved from here.');
  }
  const parts = upgraded(written);
  if (!parts) return refused(`its format is “${inShort(written.get('format'))}”`, EARLIER);
  const setAside: string[] = [];
  const document = yield* documentFrom(parts, (where) => setAside.push(where));
  return { document, setAside, newer: Number(parts.get('format')) > FORMAT ? NEWER : undefined };
}

/** A document read back from JSON, checked whole before anything is made of it. */
export function fromJson(value: unknown): NotebookDocument | Problem {
  const read = readNotebook(value);
  if (isProblem(read)) return read;
  if (read.newer) return read.newer;
  const [damaged] = read.setAside;
  if (damaged === undefined) return read.document;
  return refused(`its “${damaged.replace(/,.*$/s, '')}” part is damaged`, EARLIER);
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
const NEWER = refused(
  'the notebook was written by a newer version',
  'Open it with that version, or reload this page to get it.',
);

function* documentFrom(parts: Parts, aside: (where: string) => void): Steps<NotebookDocument> {
  const name = parts.get('name');
  if (typeof name !== 'string') aside('name');
  return {
    format: FORMAT,
    name: typeof name === 'string' ? name : 'Job without a name',
    inputs: pairs(parts.get('inputs'), 'inputs', aside),
    sheets: yield* sheets(parts.get('sheets'), 'sheets', aside),
    formulas: pairs(parts.get('formulas'), 'formulas', aside),
    assumed: pairs(parts.get('assumed'), 'assumed', aside),
    own: ownParts(parts.get('own'), 'own', aside),
    files: importedFiles(parts.get('files'), 'files', aside),
  };
}

// Not String(...): an object's own `toString` may be anything.
function inShort(value: unknown): string {
  return value === undefined ? '' : JSON.stringify(value).slice(0, 40);
}

function refused(found: string, fix: string): Problem {
  return problem('Notebook file', found + '.', fix);
}
