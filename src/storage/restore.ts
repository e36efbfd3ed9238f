import {
  actToBytes,
  difference,
  parseSteps,
  readBackup,
  type BackedUpJob,
  type Change,
  type FoundJob,
  type NotebookDocument,
} from '../notebook/index.ts';
import { isProblem, problem, sentence, type Problem } from '../units/index.ts';
import { append } from './append.ts';
import type { KeptShelf } from './keeping.ts';
import { readNow, reopened } from './opened.ts';
import { changeEntry } from './record.ts';
import { shelveAll } from './shelving.ts';
import { inSlices } from './slices.ts';

/** What to do with a job of a file where one of the same id is kept, and differs. */
export type RestoreChoice = 'beside' | 'replace' | 'leave';

/** One job of a file, beside what is kept here. */
export interface PlannedJob {
  readonly id: string;
  readonly name: string;
  readonly rows: number;
  /** `absent` here, kept here the `same`, or kept here and it `differs`; one of a `newer` version, or a damaged one, does not come. */
  readonly stands: 'absent' | 'same' | 'differs' | 'newer' | 'refused';
  /** It is among the removed ones here. */
  readonly isRemoved: boolean;
  /** How many changes lead from the kept one to that of the file. */
  readonly changes: number;
  /** What of it could not be read and would not come; or why it is refused. */
  readonly setAside: readonly string[];
  choice: RestoreChoice;
}

/** A file that was checked whole. */
export interface RestorePlan {
  readonly jobs: readonly PlannedJob[];
  readonly found: ReadonlyMap<PlannedJob, BackedUpJob>;
}

/** What was done. */
export interface Restored {
  readonly added: readonly string[];
  readonly replaced: readonly string[];
  readonly putBack: readonly string[];
}

/** A file of more, packed or unpacked, or of more jobs, is no backup of a shelf that a browser held. [byte] */
const MOST_BYTES = 200_000_000;
const MOST_JOBS = 2000;
const TRIES = 5;

/** Reads a file whole and holds each of its jobs beside what is kept. */
export async function planRestore(file: Blob, shelf: KeptShelf): Promise<RestorePlan | Problem> {
  const text = await textOf(file);
  if (isProblem(text)) return text;
  const jobs = await inSlices(jobsIn(text));
  if (isProblem(jobs)) return jobs;
  if (jobs.length > MOST_JOBS) return TOO_MUCH;
  const found = new Map<PlannedJob, BackedUpJob>();
  const planned: PlannedJob[] = [];
  const seen = new Set<string>();
  for (const job of jobs) {
    const id = job.id === undefined || seen.has(job.id) ? crypto.randomUUID() : job.id;
    seen.add(id);
    const beside = await plannedJob(job, id, shelf);
    planned.push(beside);
    if (isProblem(job.read)) continue;
    found.set(beside, { id, document: job.read.document, archivedAt: job.archivedAt });
  }
  return { jobs: planned, found };
}

/** Does what a plan says: all that is new comes in one transaction, then each replaced one as one act. */
export async function restore(
  { jobs, found }: RestorePlan,
  shelf: KeptShelf,
): Promise<Restored | Problem> {
  const coming = jobs.flatMap((job): BackedUpJob[] => {
    const read = found.get(job);
    if (!read || (job.stands !== 'absent' && job.stands !== 'differs')) return [];
    if (job.stands === 'absent') return job.choice === 'leave' ? [] : [read];
    if (job.choice !== 'beside') return [];
    const document = { ...read.document, name: `${read.document.name}, from the file` };
    return [{ ...read, id: crypto.randomUUID(), document }];
  });
  const trouble = coming.length === 0 ? undefined : await shelveAll(coming, shelf, Date.now());
  if (trouble) return trouble;
  const replaced: string[] = [];
  const putBack: string[] = [];
  for (const job of jobs) {
    const read = found.get(job);
    const isKept = job.stands === 'same' || (job.stands === 'differs' && job.choice === 'replace');
    if (!read || !isKept) continue;
    if (job.isRemoved) {
      await changeEntry(shelf.store, job.id, unremoved);
      putBack.push(job.name);
    }
    if (job.stands === 'same') continue;
    const wrong = await replace(job.id, read.document, shelf);
    if (wrong) return wrong;
    replaced.push(job.name);
  }
  return { added: coming.map(({ document }) => document.name), replaced, putBack };
}

/** Makes a kept notebook into that of a file, as one act at the end of its journal: undo takes it back. */
async function replace(
  id: string,
  document: NotebookDocument,
  { store, format, onScreen, wrote }: KeptShelf,
): Promise<Problem | undefined> {
  const label = 'bring back from a file';
  const live = onScreen();
  if (live?.id === id) {
    live.notebook.do(label, difference(live.notebook.document, document));
    return undefined;
  }
  for (let tried = 0; tried < TRIES; tried += 1) {
    const kept = await readNow(store, id);
    const opened = await reopened(kept);
    if (isProblem(opened)) return opened;
    const changes = difference(opened.notebook.document, document);
    if (changes.length === 0) return undefined;
    const number = opened.number + 1;
    const acts = [actToBytes({ number, at: Date.now(), by: 'file', label, changes })];
    const entry = { id, name: document.name, savedAt: Date.now() };
    const known = opened.number;
    const { came } = await append(store, { entry, known, acts, start: undefined, format });
    if (came === 'written') {
      wrote(id, number, acts);
      return undefined;
    }
  }
  return problem(document.name, 'another window kept writing into it.', 'Close that window and bring the file in again.'); // prettier-ignore
}

async function plannedJob({ read }: FoundJob, id: string, shelf: KeptShelf): Promise<PlannedJob> {
  if (isProblem(read))
    return { ...NOTHING, id, name: 'A job', stands: 'refused', setAside: [sentence(read)] };
  const { document, setAside, newer } = read;
  if (newer)
    return { ...NOTHING, id, name: document.name, stands: 'newer', setAside: [sentence(newer)] };
  const rows = document.sheets.get('posts')?.length ?? 0;
  const told = setAside.map((where) => `Not readable: ${where}.`);
  const about = { ...NOTHING, id, name: document.name, rows, setAside: told };
  const kept = await readNow(shelf.store, id).catch(() => undefined);
  const opened = kept?.entry ? await reopened(kept) : undefined;
  if (!kept || !opened) return about;
  const isRemoved = kept.entry?.removedAt !== undefined;
  // A kept one that can't be opened is left as it lies.
  if (isProblem(opened) || opened.newer) return { ...about, isRemoved, stands: 'differs' };
  const changes = countOf(difference(opened.notebook.document, document));
  return { ...about, isRemoved, changes, stands: changes === 0 ? 'same' : 'differs' };
}

const NOTHING = {
  rows: 0,
  stands: 'absent',
  isRemoved: false,
  changes: 0,
  choice: 'beside',
} as const;

function countOf(changes: readonly Change[]): number {
  return changes.reduce((sum, change) => sum + ('rows' in change ? change.rows.length : 1), 0);
}

function unremoved<T extends { readonly removedAt?: number }>(entry: T): T {
  const { removedAt, ...others } = entry;
  return removedAt === undefined ? entry : (others as T);
}

/** The text of a file, unpacked where it is packed; no more of it is taken in than a backup can have. */
async function textOf(file: Blob): Promise<string | Problem> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer());
  const isPacked = first === 0x1f && second === 0x8b;
  if (file.size > MOST_BYTES) return TOO_MUCH;
  if (!isPacked) return file.text();
  try {
    const decoder = new TextDecoder();
    let text = '';
    let length = 0;
    const reader = file.stream().pipeThrough(new DecompressionStream('gzip')).getReader();
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return text + decoder.decode();
      length += value.length;
      if (length > MOST_BYTES) {
        await reader.cancel();
        return TOO_MUCH;
      }
      text += decoder.decode(value, { stream: true });
    }
  } catch {
    return problem('Packed file', 'it stops before its end, or is damaged.', 'Choose an earlier copy.'); // prettier-ignore
  }
}

const TOO_MUCH = problem(
  'Backup file',
  'it holds more than any backup of this page.',
  'Choose a file that was saved from here.',
);

// What is no JSON is no notebook, and is refused as such.
function* jobsIn(text: string): ReturnType<typeof readBackup> {
  let value: unknown;
  try {
    value = yield* parseSteps(text);
  } catch {
    value = undefined;
  }
  return yield* readBackup(value);
}
