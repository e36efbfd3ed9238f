import { performance } from 'node:perf_hooks';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import Papa from 'papaparse';
import { readSite } from '../../src/intake/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { COLUMNS } from '../intake/bring-in.ts';
import { longList } from '../intake/long-list.ts';

// How long a file of 100,000 lines takes the importer, as a multiple of papaparse alone (`header: false`, the same text,
// mostly distinct cells) in the same run; and the memory that what was read takes, against the size of the file.
// Run it with: npx tsx tests/bench/import.ts

const LINES = 100_000;
const ROUNDS = 9;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

for (const [name, mark] of [
  ['units in the headers', ''],
  ['inch marks in the cells', '"'],
] as const) {
  const text = longList(LINES, mark);
  const bytes = new TextEncoder().encode(text);
  const read = () => readSite(bytes, 'site.csv', { columns: COLUMNS, settled: new Map() });
  // What was read keeps places in the file's text; here every entry is made a text too, as papaparse makes its cells.
  const readOut = () => {
    const intake = read();
    if (isProblem(intake)) throw new Error(intake.found);
    let letters = 0;
    for (const { cells } of intake.rows) cells.forEach((entry) => (letters += entry.length));
    return letters;
  };
  const alone: Spent[] = [];
  const whole: Spent[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    alone.push(spent(() => Papa.parse(text, { header: false })));
    whole.push(spent(readOut));
  }
  const ratio = (of: keyof Spent): string => (median(whole, of) / median(alone, of)).toFixed(2);
  process.stdout.write(
    `${name}: ${String(Math.round((1000 * LINES) / median(whole, 'wall')))} lines a second; ` +
      `${ratio('wall')} times papaparse alone, ${ratio('processor')} in processor time; ` +
      `the rows take ${(memoryOf(read) / bytes.length).toFixed(1)} times the file\n`,
  );
}

interface Spent {
  readonly wall: number;
  /** Of all threads, which other work on the machine hardly changes. */
  readonly processor: number;
}

function spent(deed: () => unknown): Spent {
  collect();
  const before = process.cpuUsage();
  const started = performance.now();
  deed();
  const wall = performance.now() - started;
  const { user, system } = process.cpuUsage(before);
  return { wall, processor: (user + system) / 1000 };
}

function memoryOf(read: () => ReturnType<typeof readSite>): number {
  collect();
  const before = used();
  const intake = read();
  collect();
  const after = used();
  if (isProblem(intake) || intake.rows.length !== LINES) throw new Error('The file was not read.');
  return after - before;
}

function used(): number {
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

function median(all: readonly Spent[], of: keyof Spent): number {
  const sorted = all.map((one) => one[of]).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
