import type { Ask } from '../worksheet/index.ts';

/** The asks of one column. */
export interface AskColumn {
  readonly label: string;
  readonly groups: readonly AskGroup[];
}

/** Asks that are alike: the same text in the same column, with the same number of readings to choose from. */
export interface AskGroup {
  readonly first: Ask;
  readonly all: readonly Ask[];
}

/** The asks column by column, and those that are alike as one. */
export function askColumns(asks: readonly Ask[]): readonly AskColumn[] {
  const columns = new Map<
    string,
    { readonly label: string; readonly groups: Map<string, Ask[]> }
  >();
  for (const ask of asks) {
    const place = `${ask.sheet}/${ask.column}`;
    let column = columns.get(place);
    if (!column) {
      column = { label: ask.columnLabel, groups: new Map() };
      columns.set(place, column);
    }
    const key = likeness(ask);
    const group = column.groups.get(key);
    if (group) group.push(ask);
    else column.groups.set(key, [ask]);
  }
  return [...columns.values()].map(({ label, groups }) => ({
    label,
    groups: [...groups.values()].flatMap((all) => {
      const [first] = all;
      return first ? [{ first, all }] : [];
    }),
  }));
}

/** How many groups the columns have together. */
export function groupCount(columns: readonly AskColumn[]): number {
  return columns.reduce((sum, { groups }) => sum + groups.length, 0);
}

/** The columns with so many groups at most, from the first on. */
export function firstGroups(columns: readonly AskColumn[], most: number): readonly AskColumn[] {
  const shown: AskColumn[] = [];
  let left = most;
  for (const { label, groups } of columns) {
    if (left <= 0) break;
    shown.push({ label, groups: groups.slice(0, left) });
    left -= groups.length;
  }
  return shown;
}

// What has no reading to choose from has an answer of its own in each row, such as a post's number.
function likeness({ id, row, text, choices }: Ask): string {
  if (row === undefined || choices.length === 0) return id;
  return `${String(choices.length)} ${text.trim().toLowerCase()}`;
}
