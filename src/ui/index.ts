import './app.ts';
import './fonts.ts';

export type {
  AskMerge,
  BroughtIn,
  ComparedFile,
  Desk,
  KeptJob,
  OpenJob,
  SavedMark,
} from './desk.ts';
export { download } from './download.ts';
export type { Progress, Reading, ReadingWatch } from './import-desk.ts';
export { readingOf } from './import-preview.ts';
export { ownScript } from './own-script.ts';
export { pagePace } from './page-pace.ts';
export { installLook } from './theme.ts';
export { printOnCommand, printPage, type PrintedPage } from './print/index.ts';

/** The line that offers a new version; rarely needed, so fetched when it is. */
export const loadNewVersion = () => import('./new-version.ts');
