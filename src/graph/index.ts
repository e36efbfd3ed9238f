export * from './column.ts';
export * from './graph.ts';
export * from './order.ts';
export * from './rows.ts';
export * from './state.ts';
export * from './words.ts';
