export { intakeColumns } from './columns.ts';
export { readSite } from './site.ts';
export { withUnit } from './length-entry.ts';
export { SiteReader, type ReadingThread, type WholeFile } from './reader.ts';
export type { Overview, ReaderAnswer, ReaderAsk } from './messages.ts';
export { lineOfRow, linesOf } from './stood.ts';
export type {
  FileAsk,
  HeaderMapping,
  Intake,
  IntakeColumn,
  IntakeOptions,
  IntakeRow,
} from './intake.ts';
export { fileNotes } from './file-notes.ts';
export { bringIn, type CameIn } from './bring-in.ts';
export { compareSite, mergeIn, type ChangedRow, type Comparison } from './merge.ts';
export { returnIn } from './return-visit.ts';
export { bringInPrices, readPriceList, type PriceList } from './price-list.ts';
export { compareSheet, readSheetFile } from './sheet-file.ts';
export { bringInTemperatures, readTemperatureLog, type TemperatureLog } from './temperature-log.ts';
