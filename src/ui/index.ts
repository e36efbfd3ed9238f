import './fonts.ts';

export { App } from './app.ts';
export type {
  BroughtIn,
  Desk,
  FileQuestion,
  Handout,
  KeptJob,
  OpenJob,
  SavedMark,
} from './desk.ts';
export { installLook } from './theme.ts';
export * from './print/index.ts';
