import { existsSync, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { bringIn, intakeColumns, readSite } from '../../../src/intake/index.ts';
import { Notebook } from '../../../src/notebook/index.ts';
import { isProblem } from '../../../src/units/index.ts';
import { openBook, startDocument } from '../../../src/worksheet/index.ts';

// One act in a process of its own: prints its time and the most memory the process ever held.
const [act = '', path = ''] = process.argv.slice(2);
const bytes = new Uint8Array(readFileSync(path));
const columns = openBook(new Notebook(startDocument('bench'))).sheet('posts')?.columns ?? [];
const began = performance.now();
let lines = 0;
if (act === 'papaparse') {
  lines = Papa.parse(new TextDecoder().decode(bytes)).data.length;
} else if (act === 'intake') {
  const notebook = new Notebook(startDocument('bench'));
  const intake = readSite(bytes, 'site.csv', intakeColumns(columns, new Map()));
  if (isProblem(intake)) throw new Error(intake.found);
  bringIn(intake, { name: 'site.csv', bytes }, notebook);
  lines = intake.linesRead;
}
const ms = performance.now() - began;
process.stdout.write(JSON.stringify({ ms, lines, kilobytes: mostHeld() }));

/** The most memory this program held. [kB] */
function mostHeld(): number {
  // Linux counts what the process that started this one held into `maxRSS`; the memory map is its own.
  const status = '/proc/self/status';
  const own = existsSync(status) ? /VmHWM:\s*(\d+)/.exec(readFileSync(status, 'utf8')) : undefined;
  return own ? Number(own[1]) : process.resourceUsage().maxRSS;
}
