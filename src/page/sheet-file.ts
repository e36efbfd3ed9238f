import type { BroughtIn } from '../ui/index.ts';
import { isProblem } from '../units/index.ts';
import type { SheetView } from '../worksheet/index.ts';
import { loadImporter, type Hands, type Job } from './job.ts';
import { inWords } from './words.ts';

/** A longer file holds posts; looking for a list in it would hold up the page. [byte] */
const LONGEST_LIST = 500_000;

/** The columns that name the rows of a sheet, where it is not the first alone. */
const PRICE_NAMES = ['item', 'size', 'length'];
const ROW_NAMES: Readonly<Record<string, readonly string[]>> = {
  prices: PRICE_NAMES,
  temperatures: ['from'],
};

/** Merges a file into the sheet it was put on, once a person has seen what would change; undefined where it does not fit the sheet. */
export async function mergeOnto(
  id: string,
  file: File,
  job: Job,
  hands: Hands,
): Promise<BroughtIn | undefined> {
  const view = job.book.sheet(id);
  // Posts have an importer of their own, which reads crews' heads and tape.
  if (!view || id === 'posts' || file.size > LONGEST_LIST) return undefined;
  const { readSheetFile } = await loadImporter();
  const { columns } = view;
  const keys = ROW_NAMES[id] ?? columns.slice(0, 1).map((column) => column.id);
  const read = readSheetFile(new Uint8Array(await file.arrayBuffer()), columns, keys);
  if (!read) return undefined;
  const what = await mergeRows(read.rows, keys, view, file.name, job, hands);
  return { job, questions: [], summary: `${file.name}: ${what}.`, remarks: read.passedOver };
}

/** Merges rows of a file into a sheet once a person has seen what would change, and says what came of it. */
async function mergeRows(
  rows: readonly { readonly cells: ReadonlyMap<string, string> }[],
  keys: readonly string[],
  view: SheetView,
  file: string,
  { book }: Job,
  { askMerge }: Hands,
): Promise<string> {
  const { compareSheet } = await loadImporter();
  const { columns, growable, title } = view;
  const standing = Array.from({ length: view.rowCount }, (_, row) => ({
    id: view.rowId(row),
    text: (column: string) => {
      const { typed, text } = view.cell(row, column);
      return typed ?? text;
    },
  }));
  const { fresh, changed, same } = compareSheet(rows, standing, columns, keys);
  const labelOf = (column: string) => columns.find((one) => one.id === column)?.called ?? column;
  const choice = await askMerge({
    file,
    rows: view.rowCount > 0 ? (view.rowName(0).split(' ')[0] ?? 'row') : 'row',
    sheet: title,
    isGrowable: growable,
    fresh: fresh.map(({ cells }) => keys.flatMap((key) => cells.get(key) ?? []).join(' ')),
    changed: changed.map(({ name, cells }) => ({
      post: name,
      cells: cells.map(({ column, ...texts }) => ({ label: labelOf(column), ...texts })),
    })),
    same,
  });
  if (choice !== 'merge') return 'left, nothing of it came in';
  const entries = changed.flatMap(({ row, cells }) =>
    cells.map(({ column, after }) => ({ sheet: view.id, row, column, text: after })),
  );
  const added = growable ? fresh.map(({ cells }) => cells) : [];
  book.rows.put(`merge ${file}`, view.id, undefined, added, entries);
  return `${String(changed.length)} changed, ${String(added.length)} added, ${String(same.length)} the same`;
}

/** Puts a yard's price list or a temperature log on its sheet, prices once a person has seen what would change; undefined where the file is neither. */
export async function listCameIn(
  file: File,
  job: Job,
  hands: Hands,
): Promise<BroughtIn | undefined> {
  if (file.size > LONGEST_LIST) return undefined;
  const { bringInPrices, bringInTemperatures, readPriceList, readTemperatureLog } =
    await loadImporter();
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { notebook } = job.book;
  const prices = readPriceList(bytes);
  const log = prices ?? readTemperatureLog(bytes);
  if (log === undefined) return undefined;
  if (isProblem(log)) throw inWords(log);
  const [kind, sheet] = prices ? ['a price list', 'prices'] : ['a temperature log', 'temperatures'];
  const remarks = log.passedOver.map(({ line, why }) => `Line ${String(line)}: ${why}.`);
  const told = (what: string): BroughtIn => ({
    job,
    questions: [],
    summary: `${file.name}: ${kind}; ${String(log.linesRead)} lines read, ${what}.`,
    remarks,
  });
  const view = prices && job.book.sheet(sheet);
  if (view && view.rowCount > 0) {
    const rows = log.rows.map((cells) => ({ cells }));
    const what = await mergeRows(rows, PRICE_NAMES, view, file.name, job, hands);
    hands.onScreen(job);
    return told(what);
  }
  (prices ? bringInPrices : bringInTemperatures)(log, file.name, notebook);
  hands.onScreen(job);
  return told(`${String(log.rows.length)} taken onto the ${sheet} sheet`);
}
