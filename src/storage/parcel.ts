import {
  clashFromJson,
  readingNotebook,
  rowToJson,
  seal,
  toJson,
  unseal,
  type Clash,
  type NotebookDocument,
  type Steps,
} from '../notebook/index.ts';
import { isProblem, problem, type Problem } from '../units/index.ts';
import { inSlices } from './slices.ts';

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

/** Seals a notebook piece by piece; whoever asks for the pieces may let the page breathe between two. */
export function* pack(
  document: NotebookDocument,
  clashes: readonly Clash[],
): Generator<Uint8Array<ArrayBuffer>> {
  const { sheets, files } = document;
  const head = toJson({ ...document, sheets: new Map() }) as object;
  const lengths = [...sheets].map(([sheet, rows]) => [sheet, rows.length]);
  yield seal({ ...head, sheets: undefined, lengths, files: files.length, clashes });
  for (const [sheet, rows] of sheets) {
    for (let at = 0; at < rows.length; at += PIECE_ROWS)
      yield seal({ sheet, rows: rows.slice(at, at + PIECE_ROWS).map(rowToJson) });
  }
  for (const file of files) yield seal({ file });
}

/** A notebook as it was after act `number`, made while the page goes on; nothing may be changed in it meanwhile. */
export function packed(
  document: NotebookDocument,
  clashes: readonly Clash[],
  number: number,
): Promise<Snapshot> {
  return inSlices(snapshotOf(document, clashes, number));
}

/** A notebook as it was after act `number`, a piece at a time. */
export function* snapshotOf(
  document: NotebookDocument,
  clashes: readonly Clash[],
  number: number,
): Steps<Snapshot> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  for (const piece of pack(document, clashes)) {
    pieces.push(piece);
    yield;
  }
  return { number, at: Date.now(), pieces };
}

/** Opens a snapshot, a piece at a time, as far as it is whole; a problem where its first piece is not. */
export function* unpack({ pieces }: Pick<Snapshot, 'pieces'>): Steps<Unpacked | Problem> {
  const opened: unknown[] = [];
  for (const piece of pieces) {
    opened.push(unseal(piece)?.value);
    yield;
  }
  const [first, ...others] = opened;
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
    else if (typeof piece['sheet'] === 'string' && Array.isArray(piece['rows'])) {
      const before = rows.get(piece['sheet']);
      if (before) for (const row of piece['rows'] as unknown[]) before.push(row);
      else rows.set(piece['sheet'], [...(piece['rows'] as unknown[])]);
    }
  }
  for (const [name, length] of pairsOf(head['lengths'])) {
    const missing = length - (rows.get(name)?.length ?? 0);
    if (missing > 0) lost.push(`${String(missing)} rows of the sheet “${name}” are missing.`);
  }
  const sheets = [...rows].map(([sheet, each]) => ({ sheet, rows: each }));
  const read = yield* readingNotebook({ ...head, sheets, files });
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
