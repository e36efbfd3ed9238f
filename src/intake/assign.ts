import type { FileAsk, IntakeOptions } from './intake.ts';
import type { Matcher, TableHead } from './header-rows.ts';
import { FITS_NONE } from './match.ts';
import type { ValuesShow } from './meanings.ts';
import { isDirection, valuesShow } from './values.ts';
import { foldedText } from './words.ts';

/** One column of the file: the posts column it fills, and how its numbers are to be read. */
export interface FileColumn {
  readonly index: number;
  readonly header: string;
  /** A column of the posts sheet, `footing` for a width and a depth in one cell, or null where it fits none. */
  readonly column: string | null;
  readonly unit: string | undefined;
  /** Its header says one unit and the row of units another. */
  readonly disputed: boolean;
  readonly over: string | undefined;
  readonly below: boolean;
  readonly why: string;
}

/** Gives each column of a table its place on the posts sheet, and asks where two headers want the same one. */
export function assignColumns(
  head: TableHead,
  rows: readonly (readonly string[])[],
  match: Matcher,
  { settled, workedOut = [] }: Pick<IntakeOptions, 'settled' | 'workedOut'>,
): { readonly columns: readonly FileColumn[]; readonly asks: readonly FileAsk[] } {
  const claims = head.headers.map((header, index) => claim(header, index, head, match, settled));
  const cells = (index: number): string[] => rows.map((row) => row[index] ?? '');

  const ours = new Set(workedOut.map(foldedText));
  const printed = claims.filter(
    ({ header, rank }) => rank < OWN_NAME && ours.has(foldedText(header)),
  );
  if (printed.length > 1) {
    for (const one of printed)
      Object.assign(one, { column: null, weak: [], why: 'the sheets work it out' });
  }
  for (const one of claims) {
    if (one.column === 'lean_gap' && one.rank < SETTLED && onlyDirections(cells(one.index))) {
      Object.assign(one, { column: 'lean_toward', why: 'its values are directions' });
    }
  }
  for (const one of claims) {
    const taken = new Set(claims.map(({ column }) => column));
    const borneOut = one.weak.find(
      ({ column, values }) =>
        !taken.has(column) &&
        (values !== 'numbers' || taken.has('depth_wanted') || taken.has('depth_reached')) &&
        valuesShow(values, cells(one.index)),
    );
    if (one.column === null && borneOut) {
      Object.assign(one, {
        column: borneOut.column,
        why: /^column \d+$/.test(one.header)
          ? 'it has no header, and its values show it'
          : 'its header and its values together say so',
      });
    }
  }
  const asks = [...new Set(claims.map(({ column }) => column))].flatMap((column) =>
    column === null ? [] : settleRivals(column, claims, cells),
  );
  return { columns: claims, asks: [...asks, ...levelsToAsk(claims, asks, cells)] };
}

/** Asks whether a column of one length that levels have is the level, where no header says what the level was. */
function levelsToAsk(
  claims: readonly Claim[],
  asks: readonly FileAsk[],
  cells: (index: number) => string[],
): FileAsk[] {
  const taken = new Set([...claims, ...asks].map(({ column }) => column));
  if (taken.has('level_length') || !taken.has('lean_gap')) return [];
  return claims
    .filter(({ column, why, over }) => column === null && why === FITS_NONE && over === undefined)
    .filter(({ index }) => {
      const filled = cells(index).filter((cell) => cell.trim() !== '');
      return filled.length > 2 && valuesShow('level', filled);
    })
    .map(({ header, index }) => ({
      about: 'header',
      column: 'level_length',
      header,
      question: `“${header}” is ${cells(index).find((cell) => cell.trim() !== '') ?? ''} in every row. Is it the length of the level?`,
      choices: [{ label: 'yes, the level', entry: header }],
    }));
}

/** What a column without a header may be, where its values alone show it. */
const BLANK_HEADER: Claim['weak'] = [
  { column: 'post', values: 'posts' },
  { column: 'station', values: 'rising' },
  { column: 'level_length', values: 'level' },
  { column: 'lean_toward', values: 'directions' },
  { column: 'rock_test', values: 'outcomes' },
];

const SETTLED = 3;
const OWN_NAME = 2;

interface Claim extends FileColumn {
  column: string | null;
  why: string;
  /** How sure the claim is: settled by a person 3, the column's own name 2, its words 1, else 0. */
  readonly rank: number;
  readonly face: boolean;
  weak: readonly { readonly column: string; readonly values: ValuesShow }[];
}

function claim(
  header: string,
  index: number,
  head: TableHead,
  match: Matcher,
  settled: ReadonlyMap<string, string | null>,
): Claim {
  const read = match(header.replace(/ \(\d+\)$/, ''));
  const fromRow = head.units[index];
  const disputed = read.unit !== undefined && fromRow !== undefined && read.unit !== fromRow;
  const unit = disputed ? undefined : (read.unit ?? fromRow);
  const { over, below, face } = read;
  const shared = { index, header, unit, disputed, over, below, face };
  const told = settledFor(header, settled);
  if (told !== undefined) {
    const why = told === null ? 'set aside by you' : 'settled by you';
    return { ...shared, column: told, why, rank: SETTLED, weak: [] };
  }
  const blank = header === `column ${String(index + 1)}` ? BLANK_HEADER : [];
  const rank = read.column === undefined ? 0 : read.why.includes('own name') ? OWN_NAME : 1;
  return {
    ...shared,
    column: read.column ?? null,
    why: read.why,
    rank,
    weak: [...read.weak, ...blank.filter(({ column }) => index === 0 || column !== 'post')],
  };
}

/** What a person settled for a header, whatever its case and spacing; undefined where nobody did. */
export function settledFor(
  header: string,
  settled: ReadonlyMap<string, string | null>,
): string | null | undefined {
  const exact = settled.get(header);
  if (exact !== undefined) return exact;
  if (settled.size === 0) return undefined;
  const folded = foldedText(header);
  for (const [name, column] of settled) if (foldedText(name) === folded) return column;
  return undefined;
}

/** Leaves a column to the surest header; where none is surer, to nobody, and asks. */
function settleRivals(
  column: string,
  claims: readonly Claim[],
  cells: (index: number) => string[],
): FileAsk[] {
  const all = claims.filter((one) => one.column === column);
  const faces = all.filter(({ face }) => face);
  if (all.length < 2 || (column === 'probe_depth' && faces.length === all.length)) return [];
  const surest = Math.max(...all.map(({ rank }) => rank));
  let left = all.filter(({ rank }) => rank === surest);
  const filled = left.filter(({ index }) => cells(index).some((cell) => cell.trim() !== ''));
  if (filled.length > 0) left = filled;
  const named = left.filter(({ header }) => foldedText(header).includes('post'));
  if (column === 'post' && named.length > 0) left = named;
  const [winner] = left;
  const same = left.every(
    ({ index }) => cells(index).join('\n') === cells(winner?.index ?? 0).join('\n'),
  );
  const decided = left.length === 1 || same || column === 'note' || column === 'post';
  for (const one of all) {
    if (decided && one === winner) continue;
    Object.assign(one, {
      column: null,
      why: decided
        ? `“${winner?.header ?? ''}” is taken for that column`
        : 'another header fits the same column',
    });
  }
  if (decided) return [];
  const headers = left.map(({ header }) => header);
  return [
    {
      about: 'header',
      column,
      header: headers.join(', '),
      question: `${headers.map((header) => `“${header}”`).join(' and ')} could be the same column. Which of them is it?`,
      choices: headers.map((header) => ({ label: header, entry: header })),
    },
  ];
}

function onlyDirections(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  return filled.length > 0 && filled.every(isDirection);
}
