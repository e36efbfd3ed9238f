export * from './dimension.ts';
export * from './first-names.ts';
export * from './kind.ts';
export * from './nearest.ts';
export * from './problem.ts';
export * from './reading.ts';
export * from './size.ts';
export * from './unit.ts';
export { readDirection } from './direction.ts';
export { readEntry } from './entry.ts';
export {
  fractionText,
  numberText,
  plainDecimal,
  writeDate,
  writeDuration,
  writeQuantity,
  writeTape,
  writeWithUnit,
  type WritingStyle,
} from './write.ts';
export { writeExact } from './write-exact.ts';
export { wordedUnit } from './unit-words.ts';
