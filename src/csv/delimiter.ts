/** What parts the cells of a file, and how many cells most of its lines have. */
export interface Delimiter {
  readonly delimiter: string;
  readonly cells: number;
}

// Where two fit equally well the earlier one is taken: a comma is also a decimal mark, a tab hardly ever anything else.
const CANDIDATES = ['\t', ';', '|', ','] as const;

/** The delimiter that parts most of some filled lines into the same number of cells. */
export function guessDelimiter(sample: readonly string[]): Delimiter {
  let best: Delimiter & { readonly score: number } = { delimiter: ',', cells: 1, score: 0 };
  for (const delimiter of CANDIDATES) {
    const { cells, lines: agreeing } = usualCells(sample, delimiter);
    const score = cells < 2 ? 0 : (agreeing / sample.length) * (1 - 1 / cells);
    if (score > best.score + 1e-9) best = { delimiter, cells, score };
  }
  return best;
}

/**
 * The commonest number of cells above one, and how many lines have it. A quoted note may run over
 * several lines and an inch mark may look like one, so both ways are tried and the one taken in which more lines agree.
 */
export function usualCells(
  lines: readonly string[],
  delimiter: string,
): { readonly cells: number; readonly lines: number } {
  const [byLine, byRecord] = [false, true].map((joined) =>
    commonest(cellCounts(lines, delimiter, joined)),
  );
  if (!byLine || !byRecord) return { cells: 1, lines: 0 };
  return byRecord.lines > byLine.lines ? byRecord : byLine;
}

/** The most lines that a note is followed over while guessing. */
const LONGEST_NOTE = 8;

/** How many lines belong to records of so many cells. */
function cellCounts(
  lines: readonly string[],
  delimiter: string,
  joined: boolean,
): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (let at = 0; at < lines.length; at++) {
    let { cells, open } = walkLine(lines[at] ?? '', delimiter, false);
    const first = cells;
    let last = at;
    while (joined && open && last + 1 < lines.length && last - at < LONGEST_NOTE) {
      last += 1;
      const more = walkLine(lines[last] ?? '', delimiter, true);
      cells += more.cells - 1;
      open = more.open;
    }
    // A quote that nothing closes is no quote.
    if (open) [cells, last] = [first, at];
    if (cells > 1) counts.set(cells, (counts.get(cells) ?? 0) + 1 + last - at);
    at = last;
  }
  return counts;
}

function commonest(counts: ReadonlyMap<number, number>): { cells: number; lines: number } {
  let usual = { cells: 1, lines: 0 };
  for (const [cells, found] of counts) {
    if (found > usual.lines || (found === usual.lines && cells > usual.cells)) {
      usual = { cells, lines: found };
    }
  }
  return usual;
}

/**
 * How many cells end or begin on a line, and whether a quoted cell is still open at its end. Only a quote that starts a
 * cell opens it, and only one that ends a cell closes it, so that inch marks stay inch marks.
 */
export function walkLine(
  line: string,
  delimiter: string,
  openBefore: boolean,
): { readonly cells: number; readonly open: boolean } {
  let cells = 1;
  let at = 0;
  let open = openBefore;
  for (;;) {
    if (!open && line[at] === '"') {
      open = true;
      at++;
    }
    if (open) {
      const end = closingQuote(line, delimiter, at);
      if (end === undefined) return { cells, open: true };
      open = false;
      at = end + 1;
    }
    const next = line.indexOf(delimiter, at);
    if (next === -1) return { cells, open: false };
    cells++;
    at = next + 1;
  }
}

/** Where the quote stands that closes a cell which is open at `from`; undefined where the line has none. */
export function closingQuote(line: string, delimiter: string, from: number): number | undefined {
  let at = from;
  for (;;) {
    const quote = line.indexOf('"', at);
    if (quote === -1) return undefined;
    if (line[quote + 1] === '"') {
      at = quote + 2;
      continue;
    }
    let after = quote + 1;
    while (line[after] === ' ' && delimiter !== ' ') after++;
    if (after >= line.length || line[after] === delimiter) return quote;
    at = quote + 1;
  }
}
