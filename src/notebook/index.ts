export * from './base64.ts';
export * from './change.ts';
export * from './document.ts';
export * from './json.ts';
export * from './notebook.ts';
