export { decode, type Decoded, type Encoding } from './decode.ts';
export { records, type CsvRecord, type Records } from './records.ts';
export { writeCsv, type CsvField, type WriteOptions } from './write.ts';
