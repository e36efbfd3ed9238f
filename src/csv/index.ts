export { CellPlaces } from './cell-places.ts';
export { decode, type Decoded, type Encoding, type Heard } from './decode.ts';
export { RecordList, type CsvRecord, type RecordRun } from './record-list.ts';
export { recordList, records, type Records } from './records.ts';
export { writeCsv, type CsvField, type WriteOptions } from './write.ts';
