export { Book, openBook } from './book.ts';
export type { SheetDefinition } from './definition.ts';
export { EMPTY_JOB, applyJobFile, readJobFile, type JobFile } from './job-file.ts';
export { kindNamed } from './kinds.ts';
export { SHEETS } from './sheets.ts';
export { startDocument } from './start.ts';
export type * from './own-view.ts';
export type * from './view.ts';
export type * from './working-view.ts';
