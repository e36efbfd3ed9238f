export * from './shelf.ts';
