import type { BroughtIn } from '../ui/index.ts';
import { isProblem } from '../units/index.ts';
import { loadImporter, type Hands, type Job } from './job.ts';
import { inWords } from './words.ts';

/** A longer file holds posts; looking for a list in it would hold up the page. [byte] */
const LONGEST_LIST = 500_000;

/** The columns that name the rows of a sheet, where it is not the first alone. */
const ROW_NAMES: Readonly<Record<string, readonly string[]>> = {
  prices: ['item', 'size', 'length'],
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
  const { compareSheet, readSheetFile } = await loadImporter();
  const { columns } = view;
  const keys = ROW_NAMES[id] ?? columns.slice(0, 1).map((column) => column.id);
  const read = readSheetFile(new Uint8Array(await file.arrayBuffer()), columns, keys);
  if (!read) return undefined;
  const standing = Array.from({ length: view.rowCount }, (_, row) => ({
    id: view.rowId(row),
    text: (column: string) => {
      const { typed, text } = view.cell(row, column);
      return typed ?? text;
    },
  }));
  const { fresh, changed, same } = compareSheet(read, standing, columns, keys);
  const labelOf = (column: string) => columns.find((one) => one.id === column)?.called ?? column;
  const nameOf = (cells: ReadonlyMap<string, string>) =>
    keys.flatMap((key) => cells.get(key) ?? []).join(' ');
  const choice = await askMerge({
    file: file.name,
    rows: view.rowCount > 0 ? (view.rowName(0).split(' ')[0] ?? 'row') : 'row',
    sheet: view.title,
    isGrowable: view.growable,
    fresh: fresh.map(({ cells }) => nameOf(cells)),
    changed: changed.map(({ name, cells }) => ({
      post: name,
      cells: cells.map(({ column, ...texts }) => ({ label: labelOf(column), ...texts })),
    })),
    same,
  });
  const isIn = choice === 'merge';
  if (isIn) {
    const entries = changed.flatMap(({ row, cells }) =>
      cells.map(({ column, after }) => ({ sheet: id, row, column, text: after })),
    );
    const added = view.growable ? fresh.map(({ cells }) => cells) : [];
    book.rows.put(`merge ${file.name}`, id, undefined, added, entries);
  }
  const what = isIn
    ? `${String(changed.length)} changed, ${String(view.growable ? fresh.length : 0)} added, ${String(same.length)} the same`
    : 'left, nothing of it came in';
  return { job, questions: [], summary: `${file.name}: ${what}.`, remarks: read.passedOver };
}

/** Puts a yard's price list or a temperature log on its sheet; undefined where the file is neither. */
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
  (prices ? bringInPrices : bringInTemperatures)(log, file.name, notebook);
  hands.onScreen(job);
  return {
    job,
    questions: [],
    summary: `${file.name}: ${kind}; ${String(log.linesRead)} lines read, ${String(log.rows.length)} taken onto the ${sheet} sheet.`,
    remarks: log.passedOver.map(({ line, why }) => `Line ${String(line)}: ${why}.`),
  };
}
