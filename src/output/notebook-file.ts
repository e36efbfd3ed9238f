import { readableText, toJson, type NotebookDocument } from '../notebook/index.ts';

/** The notebook as one readable file. */
export function notebookFile(document: NotebookDocument): string {
  return readableText(toJson(document));
}

/** A file name that any system takes, from the name of the job. */
export function fileName(name: string, ending: string): string {
  const plain = name
    .normalize('NFKD')
    .replaceAll(/[^A-Za-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase();
  return `${plain === '' ? 'job' : plain}.${ending}`;
}
