export { accountFor, type Account } from './account.ts';
export { chaptersOf, restsOn, unexplained, withoutPassing, type Chapter } from './chapters.ts';
export { crewLines, crewTable, type CrewLine } from './crew-list.ts';
export { PLAIN_DIALECT, writeOptions, type Dialect } from './export-dialect.ts';
export { fileReports, type FileReport } from './file-reports.ts';
export { holeTable, postTable } from './lists.ts';
export {
  materialLines,
  materialTable,
  materialText,
  readMaterialList,
  type MaterialLine,
} from './material-list.ts';
export { moneyStep, stepWords } from './money-step.ts';
export { fileName, notebookFile } from './notebook-file.ts';
export {
  EXCLUDED,
  moneyText,
  ownExclusions,
  quoteLines,
  quoteOptions,
  quoteSums,
  quoteTable,
  quoteWaits,
} from './quote.ts';
export { proofWords, returnLines, returnTable, type ReturnLine } from './return-visit.ts';
export { rowsInWords, stopsAlike, type SharedStop } from './stops-alike.ts';
export { tableCsv, type Table } from './table.ts';
export { hasAsks, takeoffJson, takeoffText, type LooseAsk, type Takeoff } from './takeoff.ts';
export { workingText } from './working-text.ts';
export { authority, cameBy } from './working-words.ts';
