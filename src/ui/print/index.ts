export type { PagePart } from './calculation-page.ts';
export { printOnCommand, printPage, type PrintedPage } from './print-page.ts';
