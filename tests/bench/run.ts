import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
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
import { table } from './table.ts';

// Every figure is held against a floor or a peer measured in the same run. `--quick` measures the
// graph alone, on fewer posts, and ends with 1 where a ratio slipped far beyond its goal.

const RESULTS = join('tests', 'bench', 'results');
const SIZES = [100, 1_000, 10_000, 100_000];

const isQuick = process.argv.includes('--quick');
const parts: readonly (() => Findings | Promise<Findings>)[] = isQuick
  ? [() => oneInput([100, 10_000]), () => oneReading([100, 10_000]), () => memory(10_000)]
  : [
      () => oneInput(SIZES),
      () => oneReading(SIZES),
      () => memory(100_000),
      () => openingWithoutPage([100, 1_000, 10_000]),
      () => importing([1_000, 10_000, 100_000]),
      commandLine,
      onThePage,
    ];

const found: Findings[] = [];
for (const part of parts) found.push(await part());
const figures = found.flatMap((each) => each.figures);
const curves = found.flatMap((each) => each.curves);

say(table(figures));
if (isQuick) {
  const wrong = slips(figures);
  for (const words of wrong) say(words);
  process.exitCode = wrong.length === 0 ? 0 : 1;
} else {
  mkdirSync(RESULTS, { recursive: true });
  const machine = { node: process.version, processors: cpus().length, model: cpus()[0]?.model };
  const results = { machine, figures, curves };
  writeFileSync(join(RESULTS, 'bench.json'), `${JSON.stringify(results, undefined, 2)}\n`);
  writeFileSync(
    join(RESULTS, 'growth.svg'),
    chart(curves, 'What a change costs, by the number of posts'),
  );
}

function say(words: string): void {
  process.stdout.write(`${words}\n`);
}
