import type { Overview, SiteReader, WholeFile } from '../intake/index.ts';
import { isProblem, sentence, type Problem } from '../units/index.ts';
import type { ColumnView } from '../worksheet/index.ts';
import type { BroughtIn } from './desk.ts';
import type { Preview, Reading } from './import-desk.ts';
import { rememberSettled, settledBefore, type Settled } from './import-memory.ts';

/** What a reading is made with. */
export interface PreviewParts {
  readonly reader: SiteReader;
  readonly file: File;
  /** The columns of the posts sheet. */
  readonly columns: readonly ColumnView[];
  /** How the file is read with these headers settled. */
  readonly how: (settled: Settled) => Parameters<SiteReader['again']>[0];
  /** Takes the whole file into the job, unless it is stopped before. */
  readonly take: (whole: WholeFile, settled: Settled, stopped: AbortSignal) => Promise<BroughtIn>;
}

/** The same, and what stops it. */
interface StoppableParts extends PreviewParts {
  readonly stopped: AbortSignal;
}

/** Reads a file, as it was settled for the last one with the same headers. */
export function readingOf(parts: PreviewParts): Reading {
  const stop = new AbortController();
  return {
    preview: firstPreview({ ...parts, stopped: stop.signal }),
    cancel: () => {
      parts.reader.cancel();
      stop.abort(new DOMException('Stopped.', 'AbortError'));
    },
  };
}

async function firstPreview(parts: StoppableParts): Promise<Preview> {
  const { reader, file, how } = parts;
  const read = sure(await reader.read(file, file.name, how(NOTHING)), file.name);
  const before = settledBefore(read.shape);
  if (before.size === 0) return previewOf(read, NOTHING, parts, false);
  const again = await reader.again(how(before));
  if (!isProblem(again)) return previewOf(again, before, parts, true);
  // What was settled then may name a column that this job does not have.
  return previewOf(sure(await reader.again(how(NOTHING)), file.name), NOTHING, parts, false);
}

const NOTHING: Settled = new Map();

function previewOf(
  read: Overview,
  settled: Settled,
  parts: StoppableParts,
  remembered: boolean,
): Preview {
  const { reader, file, columns, how, take, stopped } = parts;
  return {
    name: file.name,
    summary: inWords(read),
    notes: [
      ...read.notes,
      ...read.asks.filter(({ about }) => about === 'header').map(({ question }) => question),
    ],
    headers: read.mapping,
    columns: fillable(columns),
    rows: firstRows(read, columns),
    remembered,
    async settle(header, column) {
      const next = new Map(settled).set(header, column);
      const again = sure(await reader.again(how(next)), file.name);
      rememberSettled(read.shape, next);
      return previewOf(again, next, parts, false);
    },
    bringIn: async () => take(await reader.all(), settled, stopped),
  };
}

function inWords({ linesRead, rowCount, passedOver, turned, layout }: Overview): string {
  const what = layout === 'holes' ? 'hole' : 'post';
  const rows = `${String(rowCount)} ${what}${rowCount === 1 ? '' : 's'}`;
  const over = `${String(passedOver.length)} line${passedOver.length === 1 ? '' : 's'} passed over`;
  return `${String(linesRead)} lines read: ${rows}${turned ? ' side by side' : ''}, ${over}.`;
}

function fillable(columns: readonly ColumnView[]): Preview['columns'] {
  const entered = columns.filter(({ entered }) => entered);
  const hasFooting = entered.some(({ id }) => id === 'footing_width');
  return [
    ...entered.map(({ id, called }) => ({ id, label: called })),
    ...(hasFooting ? [{ id: 'footing', label: 'Old footing, width x depth' }] : []),
  ];
}

/** The first rows as they would stand on the sheet, and beside it. */
function firstRows({ first }: Overview, columns: readonly ColumnView[]): Preview['rows'] {
  const used = columns.filter(({ id }) => first.some(({ cells }) => cells.has(id)));
  const beside = [...new Set(first.flatMap(({ kept }) => [...kept.keys()]))];
  const heads = [...used.map(({ called }) => called), ...beside.map((header) => `(${header})`)];
  const rows = first.map(({ line, cells, kept }) => [
    String(line),
    ...used.map(({ id }) => cells.get(id) ?? ''),
    ...beside.map((header) => kept.get(header) ?? ''),
  ]);
  return [['Line', ...heads], ...rows];
}

function sure(read: Overview | Problem, name: string): Overview {
  if (isProblem(read)) throw new Error(sentence({ ...read, where: read.where || name }));
  return read;
}
