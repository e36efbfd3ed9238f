import { readSite } from '../../src/intake/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { COLUMNS } from './bring-in.ts';
import { longList } from './long-list.ts';

// Reads a list of so many posts and says how many there are. It is run in a process of its own whose memory is bounded.

const bytes = new TextEncoder().encode(longList(Number(process.argv[2]), ''));
const intake = readSite(bytes, 'long.csv', { columns: COLUMNS, settled: new Map() });
if (isProblem(intake)) throw new Error(intake.found);
process.stdout.write(`${String(intake.rows.length)} posts of ${String(intake.linesRead)} lines`);
