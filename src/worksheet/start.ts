import { FORMAT, type NotebookDocument, type Row } from '../notebook/index.ts';
import { SHEETS } from './sheets.ts';

/** An empty notebook, with the rows that sheets start with. */
export function startDocument(name: string): NotebookDocument {
  let id = 0;
  const sheets = new Map<string, Row[]>();
  for (const { id: sheet, starting } of SHEETS) {
    if (!starting) continue;
    sheets.set(
      sheet,
      starting.map((cells) => {
        id += 1;
        return { id: `r${String(id)}`, cells: new Map(Object.entries(cells)) };
      }),
    );
  }
  return {
    format: FORMAT,
    name,
    inputs: new Map(),
    sheets,
    formulas: new Map(),
    assumed: new Map(),
    own: new Map(),
    files: [],
  };
}
