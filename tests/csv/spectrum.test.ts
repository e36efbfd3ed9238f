import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { decode, records } from '../../src/csv/index.ts';
import { isProblem } from '../../src/units/index.ts';

// csv-spectrum 2.0.0 (BSD-2-Clause), a public set of CSV files, each with what it holds as JSON.
const require = createRequire(import.meta.url);
const home = dirname(require.resolve('csv-spectrum'));

/** Its own JSON disagrees with its CSV: the degree signs of the CSV are no UTF-8, those of the JSON are lost. */
const CONTRADICTS_ITSELF = 'location_coordinates';

const names = readdirSync(join(home, 'csvs'))
  .map((file) => file.replace(/\.csv$/, ''))
  .filter((name) => name !== CONTRADICTS_ITSELF);

describe('the public conformance set', () => {
  it('has its eleven files', () => {
    expect(names).toHaveLength(11);
  });

  it.each(names)('reads %s as its JSON has it', (name) => {
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
