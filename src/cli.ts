import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { EMPTY_SCOPE, isFormula, readFormula, reckon, workingLines } from './formula/index.ts';
import {
  bringIn,
  bringInPrices,
  bringInTemperatures,
  fileNotes,
  intakeColumns,
  readPriceList,
  readSite,
  readTemperatureLog,
  type Intake,
} from './intake/index.ts';
import { Notebook } from './notebook/index.ts';
import {
  crewTable,
  hasAsks,
  holeTable,
  materialTable,
  notebookFile,
  postTable,
  quoteTable,
  tableCsv,
  takeoffJson,
  takeoffText,
  workingText,
  type Takeoff,
} from './output/index.ts';
import { isProblem, problem, sentence, type Problem } from './units/index.ts';
import {
  EMPTY_JOB,
  applyJobFile,
  openBook,
  readJobFile,
  startDocument,
  type Book,
  type JobFile,
} from './worksheet/index.ts';

const DONE = 0;
const NOT_DONE = 1;
const MUST_ASK = 2;

const HOW_TO_RECKON =
  "Write: npm run -s reckon -- '2 ft + 3 in to in' [--digits 4] [--working], or --file FORMULAS.txt, or of a job: cure.rehang_after --working --site SITE.csv [--job JOB.json] [--temperatures LOG.csv] [--row POST]";
const HOW_TO_TAKE_OFF =
  'Write: npm run -s takeoff -- SITE.csv [--job JOB.json] [--prices PRICES.csv] [--temperatures LOG.csv] [--out DIR] [--json]';
/** The files of a job beside its readings. */
const JOB_FILES = ['job', 'prices', 'temperatures'];

/** What stands after the named options of a command line. */
type Values = ReadonlyMap<string, string>;

/** A take-off whose book is still at hand. */
interface BookTakeoff extends Takeoff {
  readonly book: Book;
}

/** Runs one command and says how it ended. */
async function run([command, ...given]: readonly string[]): Promise<number> {
  if (command === 'reckon') return runReckon(given);
  if (command === 'takeoff') return runTakeoff(given);
  return complain(`${HOW_TO_RECKON}\n${HOW_TO_TAKE_OFF}`);
}

async function runReckon(given: readonly string[]): Promise<number> {
  const named = ['digits', 'file', 'site', 'row', ...JOB_FILES];
  const { values, flags, others } = commandLine(given, named, ['working']);
  const digits = Number(values.get('digits') ?? 4);
  if (!Number.isInteger(digits) || digits < 1 || digits > 17) {
    return complain(`--digits “${values.get('digits') ?? ''}” is not a whole number from 1 to 17.`);
  }
  const file = values.get('file');
  if (file !== undefined) return reckonFile(file, digits);
  const [text] = others;
  if (text === undefined || others.length > 1) return complain(HOW_TO_RECKON);
  const site = values.get('site');
  if (site !== undefined) return reckonCells(text, site, values);
  const result = flags.has('working') ? working(text, digits) : reckon(text, { digits });
  if (isProblem(result)) return complain(sentence(result));
  console.log(result);
  return DONE;
}

function working(text: string, digits: number): string | Problem {
  const formula = readFormula(text, EMPTY_SCOPE);
  return isFormula(formula) ? workingLines(formula, digits).join('\n') : formula;
}

async function reckonFile(path: string, digits: number): Promise<number> {
  const file = await bytesOf(path);
  if (isProblem(file)) return complain(sentence(file));
  const formulas = new TextDecoder()
    .decode(file)
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '' && !line.startsWith('#'));
  const results = formulas.map((text) => reckon(text, { digits }));
  for (const result of results) {
    console.log(isProblem(result) ? `error: ${sentence(result)}` : result);
  }
  return results.some(isProblem) ? NOT_DONE : DONE;
}

/** Prints the working of cells of a job, as the page shows it. */
async function reckonCells(name: string, site: string, values: Values): Promise<number> {
  const taken = await takeOff(site, values);
  if (isProblem(taken)) return complain(sentence(taken));
  const text = workingText(taken.book, name, values.get('row'));
  if (isProblem(text)) return complain(sentence(text));
  console.log(text);
  return DONE;
}

async function runTakeoff(given: readonly string[]): Promise<number> {
  const { values, flags, others } = commandLine(given, ['out', ...JOB_FILES], ['json']);
  const [site] = others;
  if (site === undefined || others.length > 1) return complain(HOW_TO_TAKE_OFF);
  const taken = await takeOff(site, values);
  if (isProblem(taken)) return complain(sentence(taken));
  const folder = values.get('out');
  if (folder !== undefined) {
    const wrong = await writeOut(folder, taken.book);
    if (wrong) return complain(sentence(wrong));
  }
  console.log(flags.has('json') ? JSON.stringify(takeoffJson(taken)) : takeoffText(taken));
  return hasAsks(taken) ? MUST_ASK : DONE;
}

/** Brings a site file into a new notebook, and what stands beside it. */
async function takeOff(site: string, values: Values): Promise<BookTakeoff | Problem> {
  const jobPath = values.get('job');
  const job = jobPath === undefined ? EMPTY_JOB : await jobFrom(jobPath);
  if (isProblem(job)) return job;
  const bytes = await bytesOf(site);
  if (isProblem(bytes)) return bytes;
  const name = basename(site);
  const book = openBook(new Notebook(startDocument(name.replace(/\.[^.]*$/, ''))));
  const columns = book.sheet('posts')?.columns ?? [];
  const intake = readSite(bytes, name, intakeColumns(columns, job.columns));
  if (isProblem(intake)) return intake;
  if (intake.rows.length === 0) return noRows(name, intake);
  bringIn(intake, { name, bytes }, book.notebook);
  const wrong =
    applyJobFile(job, book) ??
    (await takePrices(values.get('prices'), book.notebook)) ??
    (await takeTemperatures(values.get('temperatures'), book.notebook));
  if (wrong) return wrong;
  return {
    book,
    linesRead: intake.linesRead,
    passedOver: intake.passedOver,
    notes: fileNotes(intake),
    looseAsks: intake.asks
      .filter(({ about }) => about === 'header')
      .map(({ column, header, question }) => ({ column, text: header, question })),
  };
}

function noRows(name: string, { linesRead, passedOver }: Intake): Problem {
  const lines = passedOver.map(({ line, why }) => `line ${String(line)} is ${why}`);
  return problem(
    name,
    `Of its ${String(linesRead)} lines none lists a post: ${lines.slice(0, 5).join(', ')}${lines.length > 5 ? ', …' : ''}.`,
    'Look whether its readings were saved with it.',
  );
}

async function takePrices(path: string | undefined, to: Notebook): Promise<Problem | undefined> {
  if (path === undefined) return undefined;
  const bytes = await bytesOf(path);
  if (isProblem(bytes)) return bytes;
  const list = readPriceList(bytes);
  if (list === undefined) {
    return problem(path, 'No line heads an item and a price.', 'Head the columns Item and Price.');
  }
  if (isProblem(list)) return list;
  bringInPrices(list, basename(path), to);
  return undefined;
}

async function takeTemperatures(
  path: string | undefined,
  to: Notebook,
): Promise<Problem | undefined> {
  if (path === undefined) return undefined;
  const bytes = await bytesOf(path);
  if (isProblem(bytes)) return bytes;
  const log = readTemperatureLog(bytes);
  if (log === undefined) {
    const fix = 'Head the columns Hour and Temperature (F), or Time and Temperature (C).';
    return problem(path, 'No line heads a temperature and a time.', fix);
  }
  if (isProblem(log)) return log;
  bringInTemperatures(log, basename(path), to);
  return undefined;
}

async function writeOut(folder: string, book: Book): Promise<Problem | undefined> {
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, 'material-list.csv'), tableCsv(materialTable(book)));
    await writeFile(join(folder, 'post-list.csv'), tableCsv(postTable(book)));
    await writeFile(join(folder, 'hole-schedule.csv'), tableCsv(holeTable(book)));
    await writeFile(join(folder, 'crew-sheet.csv'), tableCsv(crewTable(book)));
    await writeFile(join(folder, 'quote.csv'), tableCsv(quoteTable(book)));
    await writeFile(join(folder, 'notebook.json'), notebookFile(book.notebook.document));
    return undefined;
  } catch (error) {
    return problem(
      folder,
      `Nothing can be written there (${codeOf(error)}).`,
      'Name a folder you may write to.',
    );
  }
}

async function jobFrom(path: string): Promise<JobFile | Problem> {
  const bytes = await bytesOf(path);
  return isProblem(bytes) ? bytes : readJobFile(new TextDecoder().decode(bytes));
}

async function bytesOf(path: string): Promise<Uint8Array | Problem> {
  try {
    return await readFile(path);
  } catch (error) {
    const found =
      codeOf(error) === 'ENOENT'
        ? 'There is no such file.'
        : `It can't be read (${codeOf(error)}).`;
    return problem(path, found, 'Look at the path and the name.');
  }
}

/** What stands on a command line; a formula may begin with a minus, so only known names are options. */
function commandLine(
  given: readonly string[],
  named: readonly string[],
  flagged: readonly string[],
): {
  readonly values: Values;
  readonly flags: ReadonlySet<string>;
  readonly others: readonly string[];
} {
  const values = new Map<string, string>();
  const flags = new Set<string>();
  const others: string[] = [];
  for (let at = 0; at < given.length; at++) {
    const word = given[at] ?? '';
    const [, name = '', joined] = /^--([a-z]+)(?:=(.*))?$/.exec(word) ?? [];
    if (flagged.includes(name)) flags.add(name);
    else if (named.includes(name)) {
      values.set(name, joined ?? given[at + 1] ?? '');
      if (joined === undefined) at += 1;
    } else others.push(word);
  }
  return { values, flags, others };
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}

function complain(message: string): number {
  console.error(message);
  return NOT_DONE;
}

process.exitCode = await run(process.argv.slice(2));
