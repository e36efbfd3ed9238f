import { isProblem, problem } from '../units/index.ts';
import type { Intake } from './intake.ts';
import type { ReaderAnswer, ReaderAsk, Reading } from './messages.ts';
import { packed } from './packed-rows.ts';
import { readSite } from './site.ts';

// The thread that reads a file, so that the page stays quick however long the file is. It holds one file and what was
// read of it; to stop it is to forget both.

const FIRST_ROWS = 6;
/** Rows sent at once: few enough that the page hardly notices each. */
const ROWS_AT_ONCE = 2000;

let bytes = new Uint8Array();
let name = '';
let intake: Intake | undefined;

self.addEventListener('message', ({ data }: MessageEvent<ReaderAsk>) => {
  void follow(data);
});

async function follow(asked: ReaderAsk): Promise<void> {
  if (asked.ask === 'rows') {
    sendRows();
    return;
  }
  if (asked.ask === 'read') {
    name = asked.name;
    try {
      bytes = await bytesOf(asked.file);
    } catch {
      const gone = problem(name, 'The file can’t be read any more.', 'Choose it again.');
      answer({ say: 'refused', problem: gone });
      return;
    }
  }
  read(asked.how);
}

function read(how: Reading): void {
  const progress = (share: number): void => {
    answer({ say: 'progress', share: 0.2 + 0.8 * share });
  };
  const result = readSite(bytes, name, { ...how, progress });
  intake = isProblem(result) ? undefined : result;
  if (isProblem(result)) answer({ say: 'refused', problem: result });
  else {
    const { rows, ...rest } = result;
    const first = packed(rows.slice(0, FIRST_ROWS));
    answer({ say: 'read', overview: { ...rest, rowCount: rows.length, first } });
  }
}

function sendRows(): void {
  const rows = intake?.rows ?? [];
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    const part = rows.slice(from, from + ROWS_AT_ONCE);
    answer({ say: 'rows', rows: packed(part), share: (from + part.length) / rows.length });
  }
  answer({ say: 'all', bytes }, [bytes.buffer]);
  bytes = new Uint8Array();
}

/** The bytes of a file, read piece by piece. */
async function bytesOf(file: Blob): Promise<Uint8Array<ArrayBuffer>> {
  const whole = new Uint8Array(file.size);
  const pieces = file.stream().getReader();
  let at = 0;
  for (;;) {
    const { done, value } = await pieces.read();
    if (done) return whole.subarray(0, at);
    whole.set(value, at);
    at += value.length;
    answer({ say: 'progress', share: (0.2 * at) / Math.max(1, file.size) });
  }
}

function answer(message: ReaderAnswer, given: Transferable[] = []): void {
  (self as unknown as Pick<Worker, 'postMessage'>).postMessage(message, given);
}
