import { address as readingThread } from 'virtual:reading-thread';
import { address as writingThread } from 'virtual:writing-thread';
import { fromBase64 } from './notebook/index.ts';
import { keepOffline } from './offline/index.ts';
import { fileName, fileReports, materialText, tableCsv, writeOptions } from './output/index.ts';
import {
  inWords,
  LISTS,
  loadEngine,
  loadImporter,
  readSite,
  tableOf,
  SavedWords,
  take,
  whenInWords,
  type Hands,
  type Job,
} from './page/index.ts';
import { openShelf, type OpenedNotebook, type ShelfEntry } from './storage/index.ts';
import {
  download,
  installLook,
  offerNewVersion,
  ownScript,
  pagePace,
  printOnCommand,
  printPage,
  type Desk,
  type KeptJob,
  type PrintedPage,
  type Progress,
} from './ui/index.ts';
import { isProblem, sentence } from './units/index.ts';
import type { BookView } from './worksheet/index.ts';

const DEMO = {
  name: 'Tannery Lane, back run',
  readings: new URL('../demo-data/tannery-lane.csv', import.meta.url),
  job: new URL('../demo-data/tannery-lane.job.json', import.meta.url),
};

const WHOLE_WORKING = 'whole working';
const PAGES: readonly {
  readonly id: PrintedPage | typeof WHOLE_WORKING;
  readonly label: string;
}[] = [
  { id: 'supplier', label: 'Print the supplier’s list' },
  { id: 'crew', label: 'Print the crew sheet' },
  { id: 'quote', label: 'Print the quote' },
  { id: 'return', label: 'Print the return visit' },
  { id: 'calculation', label: 'Print the working of this sheet' },
  { id: WHOLE_WORKING, label: 'Print the whole working' },
];

/** After so many acts there is something to lose, and the browser is asked to keep it. */
const REAL_WORK = 12;
const HALF_A_DAY_MS = 12 * 60 * 60 * 1000;

const saved = new SavedWords();
const shelfListeners = new Set<() => void>();
/** Acts since the page was opened. */
let worked = 0;
let current: Job | undefined;

const shelf = await openShelf(
  {
    onTrouble: (trouble) => saved.refused(trouble),
    onSaving: (isSaving) => {
      if (isSaving) worked += 1;
      if (isSaving && worked === REAL_WORK) hands.askToStay();
      saved.saving(isSaving);
    },
    onNewer: () => saved.tooOld(),
    onCleared: () => saved.cleared(),
    onShelfChanged: () => {
      for (const listener of shelfListeners) listener();
    },
  },
  { startWriting: () => new Worker(ownScript(writingThread), { type: 'module' }) },
);

const desk: Desk = {
  async list() {
    const entries = await shelf.list();
    return entries.map(keptJob);
  },
  async open(id, progress) {
    const opened = await shelf.open(id);
    if (isProblem(opened)) throw inWords(opened);
    const job = onScreen(await jobOf(opened, progress));
    const { newer, setAside } = opened;
    if (newer) saved.tooOld(sentence(newer));
    else tellAside(setAside, job);
    return job;
  },
  pattern: '',
  startEmpty: async () => onScreen(await newJob('New job', desk.pattern, true)),
  async openDemo() {
    const [readings, settings] = await Promise.all([fetch(DEMO.readings), fetch(DEMO.job)]);
    const { applyJobFile, readJobFile } = await loadEngine();
    const job = await newJob(DEMO.name, '');
    const bytes = new Uint8Array(await readings.arrayBuffer());
    // Nothing of the example can be lost.
    const atEase: Hands = { ...hands, askToStay: () => undefined };
    await take(bytes, 'tannery-lane.csv', job, new Map(), atEase);
    const file = readJobFile(await settings.text());
    const wrong = isProblem(file) ? file : applyJobFile(file, job.book);
    if (wrong) throw inWords(wrong);
    return job;
  },
  readSite: (file, into, { progress }, onto) => readSite(file, into, progress, onto, hands),
  async openFile(file, progress) {
    const keeping = await shelf.keeping();
    const plan = await keeping.plan(file);
    if (isProblem(plan)) throw inWords({ ...plan, where: file.name });
    const [only, ...others] = plan.jobs;
    const found = only && others.length === 0 ? plan.found.get(only) : undefined;
    if (only?.stands === 'same' && found && !only.isRemoved) return desk.open(only.id, progress);
    if (only?.stands === 'newer' && found) {
      const job = onScreen(await jobOf(await shelf.show(found.document), progress));
      saved.tooOld(only.setAside.join(' '));
      return job;
    }
    if (only?.stands === 'absent' && found) {
      const job = onScreen(
        await jobOf(await shelf.create(only.id, found.document, true), progress),
      );
      tellAside(only.setAside, job);
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
  lists: LISTS,
  saveList({ book }, list) {
    const name = fileName(`${book.name} ${list}`, 'csv');
    const table = tableOf(list, whole(book));
    if (table) download(tableCsv(table), name);
    return name;
  },
  yard: {
    lists: LISTS.map(({ id, label }) => ({ id, label: label.replace(' as CSV', '') })),
    text: ({ book }, list, dialect) =>
      tableCsv(tableOf(list, whole(book), dialect) ?? [], writeOptions(dialect)),
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
  onSaved: (listener) => saved.subscribe(listener),
  onShelf(listener) {
    shelfListeners.add(listener);
    return () => shelfListeners.delete(listener);
  },
};

/** What the files that come in may ask. */
const hands: Hands = {
  current: () => current,
  newJob,
  onScreen,
  whole,
  askMerge: (compared) => desk.askMerge(compared),
  askToStay: () => void shelf.keeping().then((keeping) => keeping.askToStay()),
  startReading: () => new Worker(ownScript(readingThread), { type: 'module' }),
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
    onNewer: offerNewer,
  });
}

function offerNewer(): void {
  offerNewVersion(async () => {
    await shelf.flush();
    return !saved.isTrouble;
  });
}

/** A notebook with its book; the shelf keeps every change. */
async function jobOf({ id, notebook }: OpenedNotebook, progress?: Progress): Promise<Job> {
  const { openBook } = await loadEngine();
  const book = openBook(notebook, pagePace());
  await book.worked(progress);
  return { id, book };
}

/** A new job with the details of another; of none where the pattern is blank. */
async function newJob(name: string, pattern = desk.pattern, isKeptNow = false): Promise<Job> {
  const { startDocument } = await loadEngine();
  const like = pattern === '' ? undefined : await shelf.read(pattern);
  const document = startDocument(name, like && !isProblem(like) ? like : undefined);
  return jobOf(await shelf.create(crypto.randomUUID(), document, isKeptNow));
}

function onScreen(job: Job): Job {
  current = job;
  saved.nextJob();
  return job;
}

/** A book with nothing left for later, to be given out. */
function whole<View extends BookView>(book: View): View {
  current?.book.finish();
  return book;
}

/** Says what of a job could not be read, or not put to work. */
function tellAside(unread: readonly string[], { book }: Job): void {
  saved.setAside([...unread, ...book.own.problems().map(sentence)]);
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
    isDemo: name === DEMO.name,
    isFinished: archivedAt !== undefined,
    isRemoved: removedAt !== undefined,
    backup: backedUp ? `the last backup is of ${when}, older than the work` : 'in no backup yet',
    isBehind,
    isDue: isBehind && savedAt < Date.now() - HALF_A_DAY_MS,
  };
}
