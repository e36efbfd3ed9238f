import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { decode, records } from '../../src/csv/index.ts';
import { isProblem } from '../../src/units/index.ts';

const require = createRequire(import.meta.url);

describe('the public set csv-spectrum', () => {
  // csv-spectrum 2.0.0 (BSD-2-Clause), a public set of CSV files, each with what it holds as JSON.
  const home = dirname(require.resolve('csv-spectrum'));
  // Its own JSON disagrees with its CSV: the degree signs of the CSV are no UTF-8, those of the JSON are lost.
  const names = readdirSync(join(home, 'csvs'))
    .map((file) => file.replace(/\.csv$/, ''))
    .filter((name) => name !== 'location_coordinates');

  it('has its eleven files', () => {
    expect(names).toHaveLength(11);
  });

  it.each(names)('is read as its JSON has it: %s', (name) => {
    const decoded = decode(readFileSync(join(home, 'csvs', `${name}.csv`)));
    if (isProblem(decoded)) throw new Error(decoded.found);
    const [head, ...rows] = records(decoded.text).records;
    const objects = rows.map(({ cells }) =>
      Object.fromEntries((head?.cells ?? []).map((header, at) => [header, cells[at] ?? ''])),
    );
    const json = readFileSync(join(home, 'json', `${name}.json`), 'utf8');
    // We give every line end within a cell as LF.
    expect(objects).toEqual(JSON.parse(json.replaceAll('\\r\\n', '\\n')));
  });
});

interface ParserCase {
  readonly description: string;
  readonly input: unknown;
  readonly config?: Readonly<Record<string, unknown>>;
  readonly expected: { readonly data: readonly string[][]; readonly errors: readonly unknown[] };
}

describe('the public parser cases of papaparse', () => {
  // papaparse 5.7.1 (MIT), tests/test-cases.js: what a CSV holds, as its authors wrote it down.
  const source = readFileSync(
    join(dirname(require.resolve('papaparse')), 'tests', 'test-cases.js'),
    'utf8',
  );
  const mocha = Object.assign(() => undefined, { skip: () => undefined });
  const cases = runInNewContext(`${source}; [...CORE_PARSER_TESTS, ...PARSE_TESTS]`, {
    module: { exports: {} },
    require: () => ({}),
    describe: mocha,
    it: mocha,
  }) as readonly ParserCase[];
  // A case with settings asks for another dialect, and one with errors is no CSV; what we do with those is our own.
  const plain = cases.filter(
    ({ input, config, expected }) =>
      typeof input === 'string' &&
      Object.keys(config ?? {}).length === 0 &&
      (expected.errors as readonly unknown[] | undefined)?.length === 0,
  );
  // A crew's file may end its lines in several ways at once.
  const KEEPS_A_LINE_END = 'Mixed slash n and slash r should choose first as precident';

  it('has so many that need no settings', () => {
    expect(plain.length).toBeGreaterThan(60);
  });

  it.each(plain.filter(({ description }) => description !== KEEPS_A_LINE_END))(
    'is read as its authors read it: $description',
    ({ input, expected }) => {
      const read = records(String(input)).records.map(({ cells }) => cells);
      // Lines with nothing on them are no records of ours, and every line end within a cell is LF.
      const filled = expected.data
        .map((cells) => [...cells].map((cell) => cell.replace(/\r\n?/g, '\n')))
        .filter((cells) => cells.some((cell) => cell.trim() !== ''));
      expect(read).toEqual(filled);
    },
  );
});
