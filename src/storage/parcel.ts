import {
  clashFromJson,
  readNotebook,
  seal,
  toJson,
  unseal,
  type Clash,
  type NotebookDocument,
} from '../notebook/index.ts';
import { isProblem, problem, type Problem } from '../units/index.ts';

/** A whole notebook as it lies in the store: as it was after one act, in sealed pieces. */
export interface Snapshot {
  /** The last act that is in it. */
  readonly number: number;
  /** When it was made, in milliseconds since 1970. */
  readonly at: number;
  /** The first piece holds everything but rows and files; a damaged later piece loses only what is in it. */
  readonly pieces: readonly Uint8Array<ArrayBuffer>[];
}

/** What a snapshot held. */
export interface Unpacked {
  readonly document: NotebookDocument;
  readonly clashes: readonly Clash[];
  readonly setAside: readonly string[];
  readonly newer: Problem | undefined;
}

const PIECE_ROWS = 500;

interface SheetJson {
  readonly sheet: string;
  readonly rows: readonly unknown[];
}

/** Seals a notebook piece by piece; whoever asks for the pieces may let the page breathe between two. */
export function* pack(
  document: NotebookDocument,
  clashes: readonly Clash[],
): Generator<Uint8Array<ArrayBuffer>> {
  const { sheets, files, ...head } = toJson(document) as {
    readonly sheets: readonly SheetJson[];
    readonly files: readonly unknown[];
  };
  const lengths = sheets.map(({ sheet, rows }) => [sheet, rows.length]);
  yield seal({ ...head, lengths, files: files.length, clashes });
  for (const { sheet, rows } of sheets) {
    for (let at = 0; at < rows.length; at += PIECE_ROWS)
      yield seal({ sheet, rows: rows.slice(at, at + PIECE_ROWS) });
  }
  for (const file of files) yield seal({ file });
}

/** Opens a snapshot as far as it is whole; a problem where its first piece is not. */
export function unpack({ pieces }: Pick<Snapshot, 'pieces'>): Unpacked | Problem {
  const [first, ...others] = pieces.map((piece) => unseal(piece)?.value);
  const head = asObject(first);
  if (!head) return problem('Kept notebook', 'its first part was not written whole.', 'Go on with an earlier copy.'); // prettier-ignore
  const lost: string[] = [];
  const rows = new Map<string, unknown[]>();
  for (const [name] of pairsOf(head['lengths'])) rows.set(name, []);
  const files: unknown[] = [];
  for (const [index, other] of others.entries()) {
    const piece = asObject(other);
    if (!piece) lost.push(`Part ${String(index + 2)} of the kept notebook was not written whole.`);
    else if ('file' in piece) files.push(piece['file']);
    else if (typeof piece['sheet'] === 'string' && Array.isArray(piece['rows']))
      rows.set(piece['sheet'], [...(rows.get(piece['sheet']) ?? []), ...(piece['rows'] as unknown[])]); // prettier-ignore
  }
  for (const [name, length] of pairsOf(head['lengths'])) {
    const missing = length - (rows.get(name)?.length ?? 0);
    if (missing > 0) lost.push(`${String(missing)} rows of the sheet “${name}” are missing.`);
  }
  const sheets = [...rows].map(([sheet, each]) => ({ sheet, rows: each }));
  const read = readNotebook({ ...head, sheets, files });
  if (isProblem(read)) return read;
  const clashes = Array.isArray(head['clashes']) ? (head['clashes'] as unknown[]) : [];
  return {
    document: read.document,
    clashes: clashes.map(clashFromJson).filter((clash) => clash !== undefined),
    setAside: [...lost, ...read.setAside.map((where) => `Not readable: ${where}.`)],
    newer: read.newer,
  };
}

function asObject(value: unknown): Record<string, unknown> | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return value as Record<string, unknown>;
}

function pairsOf(value: unknown): [string, number][] {
  if (!Array.isArray(value)) return [];
  return (value as unknown[]).filter(
    (pair): pair is [string, number] =>
      Array.isArray(pair) && typeof pair[0] === 'string' && typeof pair[1] === 'number',
  );
}
