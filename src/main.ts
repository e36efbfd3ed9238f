import { address as readingThread } from 'virtual:reading-thread';
import type { CameIn, Comparison, Intake } from './intake/index.ts';
import { fromBase64 } from './notebook/index.ts';
import { keepOffline } from './offline/index.ts';
import {
  accountFor,
  crewTable,
  fileName,
  fileReports,
  holeTable,
  materialTable,
  materialText,
  postTable,
  quoteTable,
  tableCsv,
  writeOptions,
  type Dialect,
  type Table,
} from './output/index.ts';
import { openShelf, type OpenedNotebook, type ShelfEntry } from './storage/index.ts';
import {
  installLook,
  loadNewVersion,
  ownScript,
  pagePace,
  printOnCommand,
  printPage,
  readingOf,
  type BroughtIn,
  type ComparedFile,
  type Desk,
  type KeptJob,
  type OpenJob,
  type PrintedPage,
  type SavedMark,
} from './ui/index.ts';
import { isProblem, sentence, type Problem } from './units/index.ts';
import type { Book, BookView } from './worksheet/index.ts';

/** A job on the screen, with the book behind it. */
interface Job extends OpenJob {
  readonly book: Book;
}

// The engine and the importer are most of the page's weight; the start screen does without them.
const loadEngine = () => import('./worksheet/index.ts');
const loadImporter = () => import('./intake/index.ts');

const DEMO = {
  name: 'Tannery Lane, back run',
  readings: new URL('../demo-data/tannery-lane.csv', import.meta.url),
  job: new URL('../demo-data/tannery-lane.job.json', import.meta.url),
};

const LISTS: Readonly<
  Record<
    string,
    {
      readonly label: string;
      readonly table: (book: BookView) => Table;
      readonly page?: PrintedPage;
    }
  >
> = {
  'material-list': { label: 'Supplier’s list', table: materialTable, page: 'supplier' },
  'post-list': { label: 'Post list as CSV', table: postTable },
  'hole-schedule': { label: 'Hole schedule as CSV', table: holeTable },
  'crew-sheet': { label: 'Crew sheet as CSV', table: crewTable, page: 'crew' },
  quote: { label: 'Quote as CSV', table: quoteTable, page: 'quote' },
};

const YARD_TABLES: Readonly<Record<string, (book: BookView, dialect: Dialect) => Table>> = {
  'material-list': materialTable,
  'post-list': postTable,
  'hole-schedule': holeTable,
  'crew-sheet': crewTable,
  quote: quoteTable,
};

const WHOLE_WORKING = 'whole working';
const PAGES: readonly {
  readonly id: PrintedPage | typeof WHOLE_WORKING;
  readonly label: string;
}[] = [
  { id: 'supplier', label: 'Print the supplier’s list' },
  { id: 'crew', label: 'Print the crew sheet' },
  { id: 'quote', label: 'Print the quote' },
  { id: 'calculation', label: 'Print the working of this sheet' },
  { id: WHOLE_WORKING, label: 'Print the whole working' },
];

const SAVING: SavedMark = { state: 'saving', words: 'Saving' };
const NEWER =
  'A newer Backplumb is open in another window: nothing is saved from here. Reload this page to go on.';
const MOST_ASIDE = 8;
const HALF_A_DAY_MS = 12 * 60 * 60 * 1000;
const CLEARED =
  'This browser cleared what it kept for this page. The job on the screen is kept again; others come back from a backup.';
const SAVED: SavedMark = { state: 'saved', words: 'Saved on this device' };

const savedListeners = new Set<(mark: SavedMark) => void>();
const shelfListeners = new Set<() => void>();
let mark = SAVED;
let current: Job | undefined;

const shelf = await openShelf({
  onTrouble: (trouble) => {
    show(trouble ? { state: 'trouble', words: sentence(trouble), todo: 'save file' } : SAVED);
  },
  onSaving: (isSaving) => {
    // Trouble stays in sight until the shelf takes it back, and what is to be read until it is.
    if (!mark.todo) show(isSaving ? SAVING : SAVED);
  },
  onNewer: () => {
    show({ state: 'trouble', words: NEWER, todo: 'reload' });
  },
  onCleared: () => {
    show({ ...SAVED, words: CLEARED, todo: 'backup' });
  },
  onShelfChanged: () => {
    for (const listener of shelfListeners) listener();
  },
});

const desk: Desk = {
  async list() {
    const entries = await shelf.list();
    return entries.map(keptJob);
  },
  async open(id) {
    const opened = await shelf.open(id);
    if (isProblem(opened)) throw inWords(opened);
    const job = onScreen(await jobOf(opened));
    const { newer, setAside } = opened;
    if (newer) show({ state: 'trouble', words: sentence(newer), todo: 'reload' });
    else tellAside(setAside);
    return job;
  },
  startEmpty: async () => onScreen(await newJob('New job', true)),
  async openDemo() {
    const [readings, settings] = await Promise.all([fetch(DEMO.readings), fetch(DEMO.job)]);
    const { applyJobFile, readJobFile } = await loadEngine();
    const job = await newJob(DEMO.name);
    await take(new Uint8Array(await readings.arrayBuffer()), 'tannery-lane.csv', job, new Map());
    const file = readJobFile(await settings.text());
    const wrong = isProblem(file) ? file : applyJobFile(file, job.book);
    if (wrong) throw inWords(wrong);
    return job;
  },
  async readSite(file, into, { progress }, onto) {
    const { SiteReader, intakeColumns } = await loadImporter();
    const isOpen = into !== undefined && into.id === current?.id;
    const job = isOpen && current ? current : await newJob(file.name.replace(/\.[^.]*$/, ''));
    const merged = isOpen && onto !== undefined && (await mergeOnto(onto, file, job));
    if (merged) return merged;
    const list = await listCameIn(file, job);
    if (list) return list;
    const columns = job.book.sheet('posts')?.columns ?? [];
    return readingOf({
      reader: new SiteReader(new Worker(ownScript(readingThread), { type: 'module' }), progress),
      file,
      columns,
      how: (settled) => intakeColumns(columns, settled),
      take: ({ intake, bytes }, settled) => put(intake, { name: file.name, bytes }, job, settled),
    });
  },
  async openFile(file) {
    const keeping = await shelf.keeping();
    const plan = await keeping.plan(new Uint8Array(await file.arrayBuffer()));
    if (isProblem(plan)) throw inWords({ ...plan, where: file.name });
    const [only, ...others] = plan.jobs;
    const found = only && others.length === 0 ? plan.found.get(only) : undefined;
    if (only?.stands === 'same' && found && !only.isRemoved) return desk.open(only.id);
    if (only?.stands === 'newer' && found) {
      const job = onScreen(await jobOf(await shelf.show(found.document)));
      show({ state: 'trouble', words: only.setAside.join(' '), todo: 'reload' });
      return job;
    }
    if (only?.stands === 'absent' && found) {
      const job = onScreen(await jobOf(await shelf.create(only.id, found.document, true)));
      tellAside(only.setAside);
      return job;
    }
    if (!(await desk.askRestore(plan))) return undefined;
    const done = await keeping.restore(plan);
    if (isProblem(done)) throw inWords(done);
    return undefined;
  },
  // Before a screen is there, nobody can be asked.
  askMerge: () => Promise.resolve('add'),
  askRestore: () => Promise.resolve(false),
  keeping: {
    whole: () => shelf.keeping(),
    mark: (id, which, isOn) => shelf.mark(id, which, isOn),
    erase: (id) => shelf.erase(id),
    acts: (id) => shelf.history(id),
    async lookBack(id, { number, at, label }) {
      const document = await shelf.readAfter(id, number);
      if (isProblem(document)) throw inWords(document);
      const words = `As it was at ${whenInWords(at)}, after “${label}”.`;
      const { openBook } = await loadEngine();
      const book = openBook((await shelf.show(document)).notebook);
      return { book, id, document, words, backLabel: `back to ${whenInWords(at)}` }; // prettier-ignore
    },
  },
  giveFile(text, name) {
    download(text, fileName(name, 'json'));
  },
  lists: Object.entries(LISTS).map(([id, { label, page }]) => ({ id, label, page })),
  saveList({ book }, list) {
    const name = fileName(`${book.name} ${list}`, 'csv');
    const table = LISTS[list]?.table(whole(book));
    if (table) download(tableCsv(table), name);
    return name;
  },
  yard: {
    lists: Object.keys(YARD_TABLES).map((id) => ({
      id,
      label: LISTS[id]?.label.replace(' as CSV', '') ?? id,
    })),
    text: ({ book }, list, dialect) =>
      tableCsv(YARD_TABLES[list]?.(whole(book), dialect) ?? [], writeOptions(dialect)),
    save(job, list, dialect) {
      download(desk.yard.text(job, list, dialect), fileName(`${job.book.name} ${list}`, 'csv'));
    },
    message: ({ book }) => materialText(whole(book)),
  },
  files: {
    reports: ({ id, book }) =>
      current?.id === id ? fileReports(current.book.notebook.document, whole(book).asks()) : [],
    async lineOf({ id }, row) {
      const { lineOfRow } = await loadImporter();
      if (current?.id !== id) return undefined;
      const { notebook } = current.book;
      return lineOfRow(notebook.document, notebook.row('posts', row));
    },
    giveBack({ id }, place) {
      const file = current?.id === id ? current.book.notebook.document.files[place] : undefined;
      if (file) download(fromBase64(file.bytes), file.name);
    },
  },
  pages: PAGES,
  print({ book }, page, sheet) {
    const id = PAGES.find((known) => known.id === page)?.id;
    if (id === WHOLE_WORKING) void printPage('calculation', whole(book));
    else if (id !== undefined)
      void printPage(id, whole(book), id === 'calculation' ? { sheet } : undefined);
  },
  onSaved(listener) {
    savedListeners.add(listener);
    listener(mark);
    return () => savedListeners.delete(listener);
  },
  onShelf(listener) {
    shelfListeners.add(listener);
    return () => shelfListeners.delete(listener);
  },
};

installLook();
printOnCommand(() => current && { which: 'supplier', book: whole(current.book) });
const app = document.createElement('bp-app');
app.desk = desk;
document.body.append(app);
// Ready, and on the device, before anybody opens a job.
void loadEngine();
void loadImporter();
// While the page is being written, the latest one should be seen at every reload.
if (import.meta.env.PROD) {
  void keepOffline({
    worker: ownScript('/service-worker.js'),
    script: new URL(import.meta.url).pathname,
    onNewer: () => void offerNewer(),
  });
}

async function offerNewer(): Promise<void> {
  const { offerNewVersion } = await loadNewVersion();
  offerNewVersion(async () => {
    await shelf.flush();
    return mark.state !== 'trouble';
  });
}

/** A notebook with its book; the shelf keeps every change. */
async function jobOf({ id, notebook }: OpenedNotebook): Promise<Job> {
  const { openBook } = await loadEngine();
  return { id, book: openBook(notebook, pagePace()) };
}

async function newJob(name: string, isKeptNow = false): Promise<Job> {
  const { startDocument } = await loadEngine();
  return jobOf(await shelf.create(crypto.randomUUID(), startDocument(name), isKeptNow));
}

function onScreen(job: Job): Job {
  current = job;
  // What the last job was told of is not said of this one; that nothing is kept is.
  if (mark.todo === 'backup' || mark.todo === 'reload') show(SAVED);
  return job;
}

/** A book with nothing left for later, to be given out. */
function whole<View extends BookView>(book: View): View {
  current?.book.finish();
  return book;
}

function tellAside(setAside: readonly string[]): void {
  if (setAside.length > 0) show({ ...SAVED, words: asideInWords(setAside), todo: 'backup' });
}

function asideInWords(setAside: readonly string[]): string {
  const shown = setAside.slice(0, MOST_ASIDE).join(' ');
  const more = setAside.length - MOST_ASIDE;
  return `Opened without what could not be read. ${shown}${more > 0 ? ` And ${String(more)} more.` : ''}`;
}

/** Reads a short file here and now, and brings it into a job. */
async function take(
  bytes: Uint8Array,
  name: string,
  job: Job,
  settled: Settled,
): Promise<BroughtIn> {
  const { intakeColumns, readSite } = await loadImporter();
  const columns = job.book.sheet('posts')?.columns ?? [];
  const intake = readSite(bytes, name, intakeColumns(columns, settled));
  if (isProblem(intake)) throw inWords(intake);
  return put(intake, { name, bytes }, job, settled);
}

/** Puts a file that was read into a job and accounts for every line of it. */
async function put(intake: Intake, file: CameIn, job: Job, settled: Settled): Promise<BroughtIn> {
  const { bringIn, compareSite, intakeColumns, mergeIn, returnIn } = await loadImporter();
  const { name, bytes } = file;
  const { notebook } = job.book;
  const { columns } = intakeColumns(job.book.sheet('posts')?.columns ?? [], settled);
  const comparison = compareSite(intake, notebook.rows('posts'), columns);
  const isThere = comparison.changed.length + comparison.same.length > 0;
  const choice = isThere ? await desk.askMerge(forPeople(comparison, name, job)) : 'add';
  if (choice === 'leave')
    return { job, questions: [], summary: `${name}: left, nothing of it came in.`, remarks: [] };
  if (choice === 'return') {
    const left = returnIn(intake, file, notebook);
    onScreen(job);
    const remarks = left.map(
      ({ line, post }) =>
        `Line ${String(line)}: post “${post}” is not once in the job and once in the file; nothing was taken of it.`,
    );
    const taken = intake.rows.length - left.length;
    const summary = `${name}: ${String(taken)} posts read again, on the return visit sheet.`;
    return { job, questions: [], summary, remarks: [...remarks, ...remarksOn(intake)] };
  }
  if (choice === 'merge') mergeIn(comparison, intake, file, notebook);
  else bringIn(intake, file, notebook);
  onScreen(job);
  // There is something to lose now, and the person sees why it is asked.
  void shelf.keeping().then((keeping) => keeping.askToStay());
  const questions = intake.asks
    .filter(({ about }) => about === 'header')
    .map(({ question, choices, column }) => ({
      question,
      choices,
      answer: (header: string) => {
        job.book.undo();
        return take(bytes, name, job, new Map([...settled, [header, column]]));
      },
    }));
  return { job, questions, summary: accountInWords(intake, job, name), remarks: remarksOn(intake) };
}

/** The columns that name the rows of a sheet, where it is not the first alone. */
const ROW_NAMES: Readonly<Record<string, readonly string[]>> = {
  prices: ['item', 'size', 'length'],
  temperatures: ['from'],
};

/** Merges a file into the sheet it was put on, once a person has seen what would change; undefined where it does not fit the sheet. */
async function mergeOnto(id: string, file: File, job: Job): Promise<BroughtIn | undefined> {
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
  const choice = await desk.askMerge({
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
async function listCameIn(file: File, job: Job): Promise<BroughtIn | undefined> {
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
  onScreen(job);
  return {
    job,
    questions: [],
    summary: `${file.name}: ${kind}; ${String(log.linesRead)} lines read, ${String(log.rows.length)} taken onto the ${sheet} sheet.`,
    remarks: log.passedOver.map(({ line, why }) => `Line ${String(line)}: ${why}.`),
  };
}

/** A longer file holds posts; looking for a list in it would hold up the page. [byte] */
const LONGEST_LIST = 500_000;

type Settled = ReadonlyMap<string, string | null>;

function forPeople(
  { fresh, changed, same }: Comparison,
  file: string,
  { book }: Job,
): ComparedFile {
  const columns = book.sheet('posts')?.columns ?? [];
  const labelOf = (id: string) => columns.find((column) => column.id === id)?.called ?? id;
  return {
    file,
    fresh: fresh.map(({ cells }) => cells.get('post') ?? ''),
    changed: changed.map(({ post, cells }) => ({
      post,
      cells: cells.map(({ column, before, after }) => ({ label: labelOf(column), before, after })),
    })),
    same,
  };
}

function accountInWords({ linesRead, passedOver }: Intake, { book }: Job, name: string): string {
  const {
    read,
    imported,
    asked,
    passedOver: passed,
  } = accountFor(linesRead, passedOver, whole(book).asks());
  return `${name}: ${String(read)} lines read, ${String(imported)} taken as they are, ${String(asked)} asked about, ${String(passed)} passed over.`;
}

function remarksOn({ notes, passedOver, mapping }: Intake): readonly string[] {
  return [
    ...notes,
    ...passedOver.map(({ line, text, why }) => `Line ${String(line)}, “${text}”: ${why}.`),
    ...mapping.map(({ header, column, why }) =>
      column === null
        ? `Column “${header}” is kept as it is: ${why}.`
        : `Column “${header}” fills ${column}: ${why}.`,
    ),
  ];
}

function show(next: SavedMark): void {
  mark = next;
  for (const listener of savedListeners) listener(mark);
}

function download(content: string | Uint8Array<ArrayBuffer>, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type: 'application/octet-stream' }));
  link.download = name;
  link.click();
  // The download reads the address a moment later.
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 60_000);
}

function keptJob({
  id,
  name,
  savedAt,
  number,
  archivedAt,
  removedAt,
  backedUp,
}: ShelfEntry): KeptJob {
  const isBehind = !backedUp || number > backedUp.number;
  const when = backedUp ? whenInWords(backedUp.at) : '';
  return {
    id,
    name,
    saved: whenInWords(savedAt),
    isFinished: archivedAt !== undefined,
    isRemoved: removedAt !== undefined,
    backup: backedUp ? `the last backup is of ${when}, older than the work` : 'in no backup yet',
    isBehind,
    isDue: isBehind && savedAt < Date.now() - HALF_A_DAY_MS,
  };
}

function whenInWords(time: number): string {
  return new Date(time).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

function inWords(problem: Problem): Error {
  return new Error(sentence(problem));
}
