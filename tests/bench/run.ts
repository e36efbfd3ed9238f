import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { format } from 'prettier';
import { onThePage } from './browser/page.ts';
import { chart } from './chart.ts';
import type { Findings } from './figure.ts';
import { memory } from './graph/memory.ts';
import { oneInput } from './graph/one-input.ts';
import { oneReading } from './graph/one-reading.ts';
import { slips } from './guard.ts';
import { commandLine } from './node/command-line.ts';
import { importing } from './node/import.ts';
import { openingWithoutPage } from './node/open.ts';
import { methods, table } from './table.ts';

// Every figure is held against a floor or a peer measured in the same run. `--quick` measures the
// graph alone, on fewer posts, and ends with 1 where a ratio slipped far beyond its goal.

const RESULTS = join('tests', 'bench', 'results');
const SIZES = [100, 1_000, 10_000, 100_000];

const isQuick = process.argv.includes('--quick');
const parts: Readonly<Record<string, () => Findings | Promise<Findings>>> = isQuick
  ? {
      'one input': () => oneInput([100, 10_000]),
      'one reading': () => oneReading([100, 10_000]),
      memory: () => memory(10_000),
    }
  : {
      'one input': () => oneInput(SIZES),
      'one reading': () => oneReading(SIZES),
      memory: () => memory(100_000),
      'open without a page': () => openingWithoutPage([100, 1_000, 10_000]),
      import: () => importing([1_000, 10_000, 100_000]),
      'command line': commandLine,
      page: onThePage,
    };

const found: Findings[] = [];
const missing: string[] = [];
const began = performance.now();
const spent: Record<string, number> = {};
for (const [name, measure] of Object.entries(parts)) {
  const start = performance.now();
  try {
    found.push(await measure());
  } catch (error) {
    // What can't be measured is said, and leaves the rest of the run standing.
    missing.push(`${name}: ${error instanceof Error ? error.message : String(error)}`);
  }
  spent[name] = Math.round((performance.now() - start) / 1000);
}
const seconds = Math.round((performance.now() - began) / 1000);
const figures = found.flatMap((each) => each.figures);
const curves = found.flatMap((each) => each.curves);

say(table(figures));
const each = Object.entries(spent).map(([name, took]) => `${name} ${String(took)} s`);
say(`\nTook ${String(seconds)} s: ${each.join(', ')}`);
for (const words of missing) say(`Not measured: ${words}`);
if (isQuick) {
  const wrong = slips(figures);
  for (const words of wrong) say(words);
  if (wrong.length > 0) process.exitCode = 1;
} else {
  say(`\nHow each was measured\n${methods(figures)}`);
  mkdirSync(RESULTS, { recursive: true });
  const machine = { node: process.version, processors: cpus().length, model: cpus()[0]?.model };
  const results = { machine, seconds, spent, missing, figures, curves };
  // As everything that is kept here is written.
  const text = await format(JSON.stringify(results), { parser: 'json', printWidth: 100 });
  writeFileSync(join(RESULTS, 'bench.json'), text);
  writeFileSync(
    join(RESULTS, 'growth.svg'),
    chart(curves, 'What a change costs, by the number of posts'),
  );
}

if (missing.length > 0) process.exitCode = 1;

function say(words: string): void {
  process.stdout.write(`${words}\n`);
}
