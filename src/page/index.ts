export { readSite, take } from './crew-file.ts';
export { loadEngine, loadImporter, type Hands, type Job } from './job.ts';
export { LISTS, tableOf } from './lists.ts';
export { SavedWords } from './saved-words.ts';
export { inWords, whenInWords } from './words.ts';
