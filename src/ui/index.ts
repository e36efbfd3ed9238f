import './app.ts';
import './fonts.ts';

export type { BroughtIn, ComparedFile, Desk, OpenJob, SavedMark } from './desk.ts';
export { readingOf } from './import-preview.ts';
export { ownScript } from './own-script.ts';
export { installLook } from './theme.ts';
export { printOnCommand, printPage, type PrintedPage } from './print/index.ts';
