import { isProblem, problem } from '../units/index.ts';
import type { Intake } from './intake.ts';
import type { ReaderAnswer, ReaderAsk, Reading } from './messages.ts';
import { readSite } from './site.ts';
import { ownRow } from './stored-rows.ts';

// The thread that reads a file, so that the page stays quick however long the file is. It holds one file and what was
// read of it; to stop it is to forget both.

const FIRST_ROWS = 6;

let bytes = new Uint8Array();
let name = '';
let intake: Intake | undefined;

self.addEventListener('message', ({ data }: MessageEvent<ReaderAsk>) => {
  void follow(data);
});
answer({ say: 'ready' });

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
    const { rows, asks, passedOver, mapping, shape, turned, layout, linesRead, notes } = result;
    const first = rows.slice(0, FIRST_ROWS).map(ownRow);
    const rest = { asks, passedOver, mapping, shape, turned, layout, linesRead, notes };
    answer({ say: 'read', overview: { ...rest, rowCount: rows.length, first } });
  }
}

function sendRows(): void {
  if (!intake) return;
  const { stored } = intake;
  const places = stored.columns.flatMap(({ from, to }) => [from.buffer, to.buffer]);
  // Given away and not copied: nothing is asked of this thread after it.
  answer({ say: 'all', stored, bytes }, [bytes.buffer, stored.lines.buffer, ...places]);
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
