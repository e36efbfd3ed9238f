import { bringIn, intakeColumns, readSite } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';
import { longList } from './long-list.ts';

// Brings a list of so many posts into a notebook and says how many of them have a remedy. It is run in a process of its
// own whose memory is bounded.

const bytes = new TextEncoder().encode(longList(Number(process.argv[2]), ''));
const notebook = new Notebook(startDocument('Long list'));
const book = openBook(notebook);
const columns = book.sheet('posts')?.columns ?? [];
const intake = readSite(bytes, 'long.csv', intakeColumns(columns, new Map()));
if (isProblem(intake)) throw new Error(intake.found);
bringIn(intake, { name: 'long.csv', bytes }, notebook);
const posts = book.sheet('posts');
let decided = 0;
for (let row = 0; row < (posts?.rowCount ?? 0); row++)
  if (posts?.cell(row, 'remedy').state === 'known') decided++;
process.stdout.write(`${String(posts?.rowCount)} posts, ${String(decided)} decided`);
