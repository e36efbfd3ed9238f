/** A sample as a grid of cells, its header first. */
export type Grid = readonly (readonly string[])[];

/** Something a crew, a program or a mail can do to a list, at a place that `at` picks. */
export interface Mutation {
  readonly does: string;
  /** The file it makes of a grid; undefined where the grid has nothing to do it to. */
  readonly file: (grid: Grid, at: number) => string | Uint8Array | undefined;
  /** Rows it adds to those of the grid, by their place. */
  readonly adds?: (grid: Grid, at: number) => readonly number[];
  /** The rows come in another order: the place of each in the grid. */
  readonly order?: (grid: Grid) => readonly number[];
}

/** A grid as CSV with quotes only where the cell needs them. */
export function csv(grid: Grid, by = ',', end = '\n'): string {
  return grid.map((row) => row.map((cell) => quotedCell(cell, by)).join(by)).join(end);
}

export const MUTATIONS: readonly Mutation[] = [
  text('is left alone', (written) => written),
  text('gets a byte order mark', (written) => `\ufeff${written}`),
  text('gets CRLF', (written) => written.replaceAll('\n', '\r\n')),
  text('gets CR', (written) => written.replaceAll('\n', '\r')),
  text('gets several line ends', (written) => written.replace('\n', '\r\n')),
  text('ends in blank lines', (written) => `${written}\n\n\n`),
  {
    does: 'goes through UTF-16',
    file: (grid) =>
      Uint8Array.from(
        Array.from(`\ufeff${csv(grid)}`).flatMap((letter) => {
          const code = letter.charCodeAt(0);
          return [code & 255, code >> 8];
        }),
      ),
  },
  {
    does: 'goes through Windows-1252',
    file: (grid) => {
      const written = csv(edit(grid, (cell) => cell.replaceAll('1/2', '½').replaceAll('1/4', '¼')));
      const codes = Array.from(written, (letter) => letter.charCodeAt(0));
      return codes.every((code) => code < 256) ? Uint8Array.from(codes) : undefined;
    },
  },
  { does: 'is parted by semicolons', file: (grid) => csv(grid, ';') },
  { does: 'is parted by tabs', file: (grid) => csv(grid, '\t') },
  { does: 'is parted by pipes', file: (grid) => csv(grid, '|') },
  { does: 'names its separator', file: (grid) => `sep=;\n${csv(grid, ';')}` },
  {
    does: 'gets decimal commas',
    file: (grid) =>
      csv(
        edit(grid, (cell) => cell.replace(/(\d)\.(\d)/g, '$1,$2')),
        ';',
      ),
  },
  {
    does: 'has every cell in quotes',
    file: (grid) =>
      grid.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',')).join('\n'),
  },
  {
    does: 'has each line in quotes',
    file: (grid) =>
      csv(grid)
        .split('\n')
        .map((line) => `"${line.replaceAll('"', '""')}"`)
        .join('\n'),
  },
  lines('gets title lines', (all) => ['Oak Street, rear', 'Crew 2', '', ...all]),
  lines('gets titles as wide as the table', (all, _, grid) => [
    ['Job', 'Oak', ...blanks(grid).slice(2)].join(','),
    ...all,
  ]),
  lines('gets blank lines between', (all) => all.flatMap((line) => [line, ''])),
  lines('gets lines of separators', (all, _, grid) =>
    all.flatMap((line) => [line, blanks(grid).join(',')]),
  ),
  lines('repeats its header', (all, at) => put(all, at, [all[0] ?? ''])),
  lines('repeats its header in capitals', (all, at) =>
    put(all, at, [(all[0] ?? '').toUpperCase()]),
  ),
  lines('gets a subtotal', (all, at) => put(all, at, ['Subtotal,12,1/2,,'])),
  lines('gets a total that looks like a post', (all, _, grid) => [
    ...all,
    [
      'Total 9',
      ...(grid[1] ?? [])
        .slice(1)
        .map((cell) => cell.replaceAll('"', '""'))
        .map((cell) => `"${cell}"`),
    ].join(','),
  ]),
  lines('gets an average', (all) => [...all, 'Average,,7/8,,']),
  lines('gets a ruled line', (all) => put(all, 0, ['-----,-----,-----'])),
  lines('gets a remark between', (all, at) => put(all, at, ['Dog in the yard'])),
  lines('gets a run between', (all, at) => put(all, at, ['North side,,'])),
  lines('gets a footer', (all) => [...all, '', 'Measured by: JS', 'Date: 5/8/2025', 'Page 1 of 1']),
  edited('gets trailing empty columns', (row) => [...row, '', '', '']),
  edited('loses its trailing blanks', (row) => {
    const last = row.findLastIndex((cell) => cell !== '');
    return row.slice(0, last + 1);
  }),
  edited('gets a column of photos', (row, at) => [
    ...row,
    at === 0 ? 'Photo No' : `IMG_${String(40 + at)}`,
  ]),
  edited('gets a column of photos in its middle', (row, at) => [
    ...row.slice(0, 2),
    at === 0 ? 'Photo No' : `IMG_${String(40 + at)}`,
    ...row.slice(2),
  ]),
  edited('has its columns turned round', (row) => [...row].reverse()),
  edited('has its first column last', (row) => [...row.slice(1), row[0] ?? '']),
  { does: 'lies on its side', file: (grid) => csv(transposed(grid)) },
  {
    does: 'has its rows turned round',
    file: ([head = [], ...rows]) => csv([head, ...rows.reverse()]),
    order: ([, ...rows]) => [...rows.keys()].reverse(),
  },
  {
    does: 'has a post twice',
    file: ([head = [], ...rows], at) => csv([head, ...rows, rows[at % rows.length] ?? []]),
    adds: ([, ...rows], at) => [at % rows.length],
  },
  headers('has headers in capitals', (header) => header.toUpperCase()),
  headers('has headers with spaces', (header) => `  ${header.replaceAll(' ', '   ')} `),
  headers('has headers over two lines', (header) => header.replace(' ', '\n')),
  headers('has headers with underscores', (header) => header.replaceAll(' ', '_')),
  headers('has units in brackets', (header) => header.replace(/ \(?(in|mm|m|ft)\)?$/, ' ($1)')),
  {
    does: 'has its units in a row of their own',
    file: ([head = [], ...rows]) => {
      const units = head.map((header) => /\(?\b(in|mm|m|ft)\)?$/.exec(header)?.[1] ?? '');
      if (units.every((unit) => unit === '')) return undefined;
      return csv([
        head.map((header) => header.replace(/ \(?(in|mm|m|ft)\)?$/, '')),
        units,
        ...rows,
      ]);
    },
  },
  {
    does: 'has its units in the cells',
    file: ([head = [], ...rows]) => {
      const units = head.map((header) => /\(?\b(in|mm|m|ft)\)?$/.exec(header)?.[1] ?? '');
      if (units.every((unit) => unit === '')) return undefined;
      const bare = head.map((header) => header.replace(/ \(?(in|mm|m|ft)\)?$/, ''));
      const withUnits = rows.map((row) =>
        row.map((cell, at) =>
          /^[\d., /]+$/.test(cell) && units[at] !== '' ? `${cell} ${units[at] ?? ''}` : cell,
        ),
      );
      return csv([bare, ...withUnits]);
    },
  },
  {
    does: 'loses the units of its headers',
    file: ([head = [], ...rows]) =>
      csv([head.map((header) => header.replace(/ \(?(in|mm|m|ft)\)?$/, '')), ...rows]),
  },
  {
    does: 'loses its header for one column',
    file: ([head = [], ...rows], at) =>
      csv([
        head.map((header, place) => (place === 1 + (at % (head.length - 1)) ? '' : header)),
        ...rows,
      ]),
  },
  cells('has no-break spaces', (cell) => cell.replaceAll(' ', '\u00a0')),
  cells('has thin spaces in its fractions', (cell) => cell.replace(/(\d) (\d+\/)/g, '$1\u2009$2')),
  cells('has hyphens in its fractions', (cell) => cell.replace(/^(\d+) (\d+\/\d+"?)$/, '$1-$2')),
  cells('has fraction signs', (cell) =>
    cell.replace(
      / ?\b(1\/4|1\/2|3\/4|1\/8|3\/8|5\/8|7\/8)\b/g,
      (_, sign: string) => SIGNS[sign] ?? sign,
    ),
  ),
  cells('has fraction slashes', (cell) => cell.replace(/(\d)\/(\d)/g, '$1⁄$2')),
  cells('has primes', (cell) => cell.replace(/(\d)"/g, '$1″').replace(/(\d)'/g, '$1′')),
  cells('has curled quotes', (cell) => cell.replace(/(\d)"/g, '$1”').replace(/(\d)'/g, '$1’')),
  cells('has two single marks for inches', (cell) => cell.replace(/(\d)"/g, "$1''")),
  cells('has words for inches', (cell) =>
    cell.replace(/^([\d ./]+)"$/, '$1 in').replace(/^([\d ./]+)'$/, '$1 ft'),
  ),
  cells('has spaces round its cells', (cell) => `  ${cell} `),
  cells('has about-signs', (cell) =>
    /^[\d ./]+"?$/.test(cell) && cell !== '0' && cell.includes('/') ? `~${cell}` : cell,
  ),
  {
    does: 'has a quote that nothing closes',
    file: (grid, at) => onRow(csv(grid), at, (line) => line.replace(/,(?=[^,"]*$)/, ',"')),
  },
  {
    does: 'has a quote that opens at a reading',
    file: (grid, at) => onRow(csv(grid), at, (line) => line.replace(/,(\d+ ?\d*\/?\d*),/, ',"$1,')),
  },
  oneCell('has a fraction turned into a date', (cell) => {
    const [, top, bottom] = /^(\d+)\/(\d+)"?$/.exec(cell) ?? [];
    return top === undefined ? undefined : `${bottom ?? ''}-${MONTHS[Number(top)] ?? 'Jan'}`;
  }),
  oneCell('has a reading that was not taken', (cell) => (/\d/.test(cell) ? '?' : undefined)),
  oneCell('has a reading with a word for it', (cell) => (/^0"?$/.test(cell) ? 'plumb' : undefined)),
  oneCell('has a reading nobody can read', (cell) =>
    /^\d.*["/]/.test(cell) ? 'smudged' : undefined,
  ),
  {
    does: 'has ditto marks',
    file: ([head = [], ...rows]) =>
      csv([
        head,
        ...rows.map((row, at) =>
          row.map((cell, place) =>
            place > 0 && cell !== '' && at > 0 && rows[at - 1]?.[place] === cell ? '"' : cell,
          ),
        ),
      ]),
  },
];

const SIGNS: Readonly<Record<string, string>> = {
  '1/4': '¼',
  '1/2': '½',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};
const MONTHS = ['', 'Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep'];

function quotedCell(cell: string, by: string): string {
  const needed = cell.includes(by) || cell.startsWith('"') || /[\n\r]/.test(cell);
  return needed ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function text(does: string, change: (written: string) => string): Mutation {
  return { does, file: (grid) => change(csv(grid)) };
}

function lines(
  does: string,
  change: (all: readonly string[], at: number, grid: Grid) => readonly string[],
): Mutation {
  return { does, file: (grid, at) => change(csv(grid).split('\n'), at, grid).join('\n') };
}

function edited(
  does: string,
  change: (row: readonly string[], at: number) => readonly string[],
): Mutation {
  return { does, file: (grid) => csv(grid.map(change)) };
}

function headers(does: string, change: (header: string) => string): Mutation {
  return { does, file: ([head = [], ...rows]) => csv([head.map(change), ...rows]) };
}

function cells(does: string, change: (cell: string) => string): Mutation {
  return { does, file: (grid) => csv(edit(grid, change)) };
}

/** Changes one cell below the header, the first from `at` on that can be changed. */
function oneCell(does: string, change: (cell: string) => string | undefined): Mutation {
  return {
    does,
    file: (grid, at) => {
      const places = grid
        .flatMap((row, y) => row.map((_, x) => [y, x] as const))
        .filter(([y, x]) => y > 0 && x > 0);
      const turned = [...places.slice(at % places.length), ...places.slice(0, at % places.length)];
      const found = turned.find(([y, x]) => change(grid[y]?.[x] ?? '') !== undefined);
      if (!found) return undefined;
      const [y, x] = found;
      return csv(
        grid.map((row, atY) =>
          row.map((cell, atX) => (atY === y && atX === x ? (change(cell) ?? cell) : cell)),
        ),
      );
    },
  };
}

function edit([head = [], ...rows]: Grid, change: (cell: string) => string): Grid {
  return [head, ...rows.map((row) => row.map(change))];
}

function put(all: readonly string[], at: number, added: readonly string[]): readonly string[] {
  const place = 1 + (at % all.length);
  return [...all.slice(0, place), ...added, ...all.slice(place)];
}

function onRow(written: string, at: number, change: (line: string) => string): string {
  const all = written.split('\n');
  const place = 1 + (at % (all.length - 1));
  return all.map((line, index) => (index === place ? change(line) : line)).join('\n');
}

function blanks([head = []]: Grid): string[] {
  return head.map(() => '');
}

function transposed(grid: Grid): Grid {
  return (grid[0] ?? []).map((_, at) => grid.map((row) => row[at] ?? ''));
}
