import type { SheetComparison } from '../intake/index.ts';
import type { BroughtIn, ComparedFile } from '../ui/index.ts';
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
  { askMerge }: Hands,
): Promise<BroughtIn | undefined> {
  const { book } = job;
  const view = book.sheet(id);
  // Posts have an importer of their own, which reads crews' heads and tape.
  if (!view || id === 'posts' || file.size > LONGEST_LIST) return undefined;
  const { readSheetFile } = await loadImporter();
  const { columns } = view;
  const keys = ROW_NAMES[id] ?? columns.slice(0, 1).map((column) => column.id);
  const read = readSheetFile(new Uint8Array(await file.arrayBuffer()), columns, keys);
  if (!read) return undefined;
  const { changed, fresh, same } = await comparison(read.rows, keys, view);
  const choice = await askMerge(forPeople(file.name, { changed, fresh, same }, keys, view));
  const isIn = choice === 'merge';
  if (isIn) {
    const entries = changed.flatMap(({ row, cells }) =>
      cells.map(({ column, after }) => ({ sheet: id, row, column, text: after })),
    );
    const added = view.growable ? fresh.map(({ cells }) => cells) : [];
    book.rows.put(`merge ${file.name}`, id, undefined, added, entries);
  }
  const added = view.growable ? fresh.length : 0;
  const what = isIn ? inCounts(changed.length, added, same.length) : LEFT;
  return { job, questions: [], summary: `${file.name}: ${what}.`, remarks: read.passedOver };
}

/** How the rows of a file stand to those of a sheet. */
async function comparison(
  rows: readonly { readonly cells: ReadonlyMap<string, string> }[],
  keys: readonly string[],
  view: SheetView,
): Promise<SheetComparison> {
  const { compareSheet } = await loadImporter();
  const standing = Array.from({ length: view.rowCount }, (_, row) => ({
    id: view.rowId(row),
    text: (column: string) => {
      const { typed, text } = view.cell(row, column);
      return typed ?? text;
    },
  }));
  return compareSheet(rows, standing, view.columns, keys);
}

function forPeople(
  file: string,
  { fresh, changed, same }: SheetComparison,
  keys: readonly string[],
  view: SheetView,
): ComparedFile {
  const labelOf = (column: string) =>
    view.columns.find((one) => one.id === column)?.called ?? column;
  return {
    file,
    rows: view.rowCount > 0 ? (view.rowName(0).split(' ')[0] ?? 'row') : 'row',
    sheet: view.title,
    isGrowable: view.growable,
    fresh: fresh.map(({ cells }) => keys.flatMap((key) => cells.get(key) ?? []).join(' ')),
    changed: changed.map(({ name, cells }) => ({
      post: name,
      cells: cells.map(({ column, ...texts }) => ({ label: labelOf(column), ...texts })),
    })),
    same,
  };
}

const LEFT = 'left, nothing of it came in';

function inCounts(changed: number, added: number, same: number): string {
  return `${String(changed)} changed, ${String(added)} added, ${String(same)} the same`;
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
    const found = await comparison(rows, PRICE_NAMES, view);
    const { changed, fresh, same } = found;
    if ((await hands.askMerge(forPeople(file.name, found, PRICE_NAMES, view))) !== 'merge')
      return told(LEFT);
    bringInPrices(log, file.name, notebook);
    hands.onScreen(job);
    return told(inCounts(changed.length, fresh.length, same.length));
  }
  (prices ? bringInPrices : bringInTemperatures)(log, file.name, notebook);
  hands.onScreen(job);
  return told(`${String(log.rows.length)} taken onto the ${sheet} sheet`);
}
