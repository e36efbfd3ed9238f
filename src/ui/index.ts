import './app.ts';
import './fonts.ts';

export type { BroughtIn, Desk, OpenJob, SavedMark } from './desk.ts';
export { installLook } from './theme.ts';
export { printOnCommand, printPage, type PrintedPage } from './print/index.ts';
