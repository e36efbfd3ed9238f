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
export { offerNewVersion } from './new-version.ts';
export { pagePace } from './page-pace.ts';
export { installLook } from './theme.ts';
export { printOnCommand, printPage, type PrintedPage } from './print/index.ts';
