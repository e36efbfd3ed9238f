export { Book, openBook } from './book.ts';
export type { SheetDefinition } from './definition.ts';
export { kindNamed } from './kinds.ts';
export { SHEETS } from './sheets.ts';
export { startDocument } from './start.ts';
export type * from './view.ts';
