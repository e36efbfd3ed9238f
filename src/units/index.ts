export * from './dimension.ts';
export * from './kind.ts';
export * from './problem.ts';
export * from './reading.ts';
export * from './unit.ts';
