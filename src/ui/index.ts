export { App } from './app.ts';
export type { BroughtIn, Desk, KeptJob, OpenJob, PrintChoice, SavedMark } from './desk.ts';
export { installLook } from './theme.ts';
export * from './print/index.ts';
