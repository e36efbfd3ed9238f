import { isProblem, problem, type Problem } from '../units/index.ts';
import type { NotebookDocument } from './document.ts';
import { readingNotebook, toJson, type ReadNotebook } from './json.ts';
import { fields } from './json-parts.ts';
import type { Steps } from './steps.ts';
import { FORMAT } from './upgrade.ts';

/** One job as a backup holds it. */
export interface BackedUpJob {
  readonly id: string;
  readonly document: NotebookDocument;
  /** When it was put with the finished jobs, in milliseconds since 1970. */
  readonly archivedAt?: number | undefined;
}

/** Some jobs as one readable file: one job is a notebook file, several stand in a list of them. */
export function backupText(jobs: readonly BackedUpJob[], madeAt: number): string {
  const [only, ...others] = jobs.map(({ id, document, archivedAt }) => ({
    ...(toJson(document) as object),
    id,
    ...(archivedAt === undefined ? {} : { archivedAt }),
  }));
  if (only && others.length === 0) return readableText(only);
  const made = new Date(madeAt).toISOString();
  const list = only ? [only, ...others] : [];
  return readableText({ backplumb: 'backup', format: FORMAT, made, jobs: list });
}

/** JSON with its parts on lines of their own. */
export function readableText(value: unknown): string {
  return `${JSON.stringify(value, undefined, 1)}\n`;
}

/** One job of a file, as far as it can be read. */
export interface FoundJob {
  /** Absent where the file names none, or one that no build wrote. */
  readonly id: string | undefined;
  readonly archivedAt: number | undefined;
  readonly read: ReadNotebook | Problem;
}

/** Every job of a notebook or backup file, a step at a time; refused where it is neither. */
export function* readBackup(value: unknown): Steps<readonly FoundJob[] | Problem> {
  const parts = fields(value);
  if (parts?.get('backplumb') !== 'backup') {
    const found = yield* foundJob(value);
    return isProblem(found.read) ? found.read : [found];
  }
  const [jobs, format] = [parts.get('jobs'), parts.get('format')];
  if (typeof format === 'number' && format > FORMAT) return NEWER;
  if (!Array.isArray(jobs) || typeof format !== 'number') return DAMAGED;
  const found: FoundJob[] = [];
  for (const job of jobs as unknown[]) found.push(yield* foundJob(job));
  return found;
}

function* foundJob(value: unknown): Steps<FoundJob> {
  const parts = fields(value);
  const [id, archivedAt] = [parts?.get('id'), parts?.get('archivedAt')];
  return {
    id: typeof id === 'string' && ID.test(id) ? id : undefined,
    archivedAt: typeof archivedAt === 'number' ? archivedAt : undefined,
    read: yield* readingNotebook(value),
  };
}

const ID = /^[\w-]{1,64}$/;
const DAMAGED = problem(
  'Backup file',
  'its list of jobs is damaged.',
  'Choose an earlier backup; what is kept here is untouched.',
);
const NEWER = problem(
  'Backup file',
  'it was written by a newer version.',
  'Open it with that version, or reload this page to get it.',
);
