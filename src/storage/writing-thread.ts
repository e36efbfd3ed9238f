import type { UseStore } from 'idb-keyval';
import { append } from './append.ts';
import { openStore } from './store.ts';
import type { WriterAnswer, WriterAsk } from './writer.ts';

// The thread that writes acts down. The page would hear what the store answers only once it has drawn what was typed;
// here nobody draws, so an act is on the disk while its row is still being painted.

const stores = new Map<string, UseStore>();

self.addEventListener('message', ({ data }: MessageEvent<WriterAsk>) => {
  void write(data);
});
answer({ say: 'ready' });

async function write({ number, database, appending }: WriterAsk): Promise<void> {
  let store = stores.get(database);
  if (!store) {
    store = openStore(database);
    stores.set(database, store);
  }
  try {
    answer({ say: 'appended', number, appended: await append(store, appending) });
  } catch (error) {
    answer({ say: 'refused', number, error });
  }
}

function answer(message: WriterAnswer): void {
  (self as unknown as Pick<Worker, 'postMessage'>).postMessage(message);
}
