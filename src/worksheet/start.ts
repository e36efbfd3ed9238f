import { FORMAT, type NotebookDocument, type Row } from '../notebook/index.ts';
import { SHEETS } from './sheets.ts';

/**
 * An empty notebook, with the rows that sheets start with. Where another job is given, what is the
 * user's own in it goes over: company details, rates, and the yard's prices.
 */
export function startDocument(name: string, like?: NotebookDocument): NotebookDocument {
  let id = 0;
  const sheets = new Map<string, Row[]>();
  for (const { id: sheet, starting, carried } of SHEETS) {
    const kept = carried === true ? like?.sheets.get(sheet) : undefined;
    const rows = kept?.map(({ cells }) => cells) ?? starting?.map(cellsOf);
    if (!rows) continue;
    sheets.set(
      sheet,
      rows.map((cells) => {
        id += 1;
        return { id: `r${String(id)}`, cells: new Map(cells) };
      }),
    );
  }
  return {
    format: FORMAT,
    name,
    inputs: new Map([...(like?.inputs ?? [])].filter(([input]) => OWN.has(input))),
    sheets,
    formulas: new Map(),
    assumed: new Map(),
    own: new Map(),
    files: [],
  };
}

/** Job inputs that go from job to job. */
const OWN = new Set(
  SHEETS.filter(({ id }) => id === 'job').flatMap(({ columns }) =>
    columns.filter(({ carried }) => carried === true).map(({ id }) => id),
  ),
);

function cellsOf(cells: Readonly<Record<string, string>>): ReadonlyMap<string, string> {
  return new Map(Object.entries(cells));
}
