import type { CameIn, Comparison, Intake } from '../intake/index.ts';
import { fileReports } from '../output/index.ts';
import {
  readingOf,
  type BroughtIn,
  type ComparedFile,
  type OpenJob,
  type Reading,
  type ReadingWatch,
} from '../ui/index.ts';
import { isProblem } from '../units/index.ts';
import type { Book } from '../worksheet/index.ts';
import { loadImporter, type Hands, type Job } from './job.ts';
import { listCameIn, mergeOnto } from './sheet-file.ts';
import { inWords } from './words.ts';

type Settled = ReadonlyMap<string, string | null>;

/** Reads a file onto the sheet it was put on, as a list of its own kind, or as a crew's readings to be looked at first. */
export async function readSite(
  file: File,
  into: OpenJob | undefined,
  progress: ReadingWatch['progress'],
  onto: string | undefined,
  hands: Hands,
): Promise<Reading | BroughtIn> {
  const { SiteReader, intakeColumns } = await loadImporter();
  const current = hands.current();
  const open = current?.id === into?.id ? current : undefined;
  const job = open ?? (await hands.newJob(file.name.replace(/\.[^.]*$/, '')));
  const merged = open && onto !== undefined && (await mergeOnto(onto, file, job, hands));
  if (merged) return merged;
  const list = await listCameIn(file, job, hands);
  if (list) return list;
  const columns = job.book.sheet('posts')?.columns ?? [];
  return readingOf({
    reader: new SiteReader(hands.startReading(), progress),
    file,
    columns,
    how: (settled) => intakeColumns(columns, settled),
    take: ({ intake, bytes }, settled, stopped) =>
      put(intake, { name: file.name, bytes }, job, settled, hands, { progress, stopped }),
  });
}

/** Reads a short file here and now, and brings it into a job. */
export async function take(
  bytes: Uint8Array,
  name: string,
  job: Job,
  settled: Settled,
  hands: Hands,
): Promise<BroughtIn> {
  const { intakeColumns, readSite } = await loadImporter();
  const columns = job.book.sheet('posts')?.columns ?? [];
  const intake = readSite(bytes, name, intakeColumns(columns, settled));
  if (isProblem(intake)) throw inWords(intake);
  return put(intake, { name, bytes }, job, settled, hands);
}

/** How the coming in of a file is followed and stopped. */
interface Watch {
  readonly progress: (share: number) => void;
  readonly stopped: AbortSignal;
}

/** Puts a file that was read into a job and accounts for every line of it; stopped, the job is as it was. */
async function put(
  intake: Intake,
  file: CameIn,
  job: Job,
  settled: Settled,
  hands: Hands,
  watch?: Watch,
): Promise<BroughtIn> {
  const { bringIn, compareSite, intakeColumns, mergeIn, returnIn } = await loadImporter();
  const { name, bytes } = file;
  const { notebook } = job.book;
  const { columns } = intakeColumns(job.book.sheet('posts')?.columns ?? [], settled);
  const comparison = compareSite(intake, notebook.rows('posts'), columns);
  const isThere = comparison.changed.length + comparison.same.length > 0;
  const choice = isThere ? await hands.askMerge(forPeople(comparison, name, job)) : 'add';
  if (choice === 'leave')
    return { job, questions: [], summary: `${name}: left, nothing of it came in.`, remarks: [] };
  if (choice === 'return') {
    const left = await workedOut(job, watch, () => returnIn(intake, file, notebook));
    hands.onScreen(job);
    const remarks = left.map(
      ({ line, post }) =>
        `Line ${String(line)}: post “${post}” is not once in the job and once in the file; nothing was taken of it.`,
    );
    const taken = intake.rows.length - left.length;
    const summary = `${name}: ${String(taken)} posts read again, on the return visit sheet.`;
    return { job, questions: [], summary, remarks: [...remarks, ...remarksOn(intake)] };
  }
  await workedOut(job, watch, () => {
    if (choice === 'merge') mergeIn(comparison, intake, file, notebook);
    else bringIn(intake, file, notebook);
  });
  hands.onScreen(job);
  // There is something to lose now, and the person sees why it is asked.
  hands.askToStay();
  const questions = intake.asks
    .filter(({ about }) => about === 'header')
    .map(({ question, choices, column }) => ({
      question,
      choices,
      answer: (header: string) => {
        job.book.undo();
        return take(bytes, name, job, new Map([...settled, [header, column]]), hands);
      },
    }));
  return {
    job,
    questions,
    summary: accountInWords(job.book, name),
    remarks: remarksOn(intake),
  };
}

/** Does what a file comes in with, and waits until the job is worked out with it; stopped before, the job is as if it had never been done. */
async function workedOut<T>({ book }: Job, watch: Watch | undefined, deed: () => T): Promise<T> {
  if (!watch) {
    const done = deed();
    book.finish();
    return done;
  }
  const { progress, stopped } = watch;
  stopped.throwIfAborted();
  const held = book.notebook.hold();
  try {
    const done = deed();
    await new Promise<void>((resolve, reject) => {
      stopped.onabort = () => {
        reject(stopped.reason as Error);
      };
      void book.worked(progress).then(resolve);
    });
    held.keep();
    return done;
  } catch (error) {
    held.drop();
    throw error;
  } finally {
    stopped.onabort = null;
  }
}

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

/** What became of each line of the file that came in last, as its report in the job says it too. */
function accountInWords(book: Book, name: string): string {
  const report = fileReports(book.notebook.document, book.asks()).at(-1);
  return report ? `${name}: ${report.words}` : name;
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
