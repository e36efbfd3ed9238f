import { promisifyRequest, type UseStore } from 'idb-keyval';

const STORE = 'shelf';

/**
 * A place for keys and values in this browser, for the verbs of idb-keyval.
 *
 * A transaction is over only when it is flushed to the disk. One whose callback throws leaves
 * nothing behind, and what went wrong comes back as the browser said it. A connection that the
 * browser dropped is opened again; one that another window needs gone is given up. `onLost` is called
 * then: what was kept may have been cleared.
 */
export function openStore(name: string, onLost?: () => void): UseStore {
  let connection: Promise<IDBDatabase> | undefined;

  const forget = (): void => {
    connection = undefined;
  };

  const lose = (): void => {
    forget();
    onLost?.();
  };

  const connect = (): Promise<IDBDatabase> => {
    connection ??= open(name, lose);
    connection.catch(forget);
    return connection;
  };

  const begin = async (mode: IDBTransactionMode): Promise<IDBTransaction> => {
    try {
      return transactionOn(await connect(), mode);
    } catch (error) {
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      // The browser had closed the connection without saying so; nothing was begun, so once more.
      forget();
      return transactionOn(await connect(), mode);
    }
  };

  return async (mode, callback) => whole(await begin(mode), callback);
}

async function open(name: string, lose: () => void): Promise<IDBDatabase> {
  const request = indexedDB.open(name);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(STORE);
  };
  const database = await promisifyRequest(request);
  database.onversionchange = () => {
    database.close();
    lose();
  };
  database.onclose = lose;
  return database;
}

function transactionOn(database: IDBDatabase, mode: IDBTransactionMode): IDBTransaction {
  return database.transaction(STORE, mode, { durability: 'strict' });
}

function whole<T>(
  transaction: IDBTransaction,
  callback: (store: IDBObjectStore) => T | PromiseLike<T>,
): Promise<T> {
  let cause: unknown;
  return new Promise((resolve, reject) => {
    // Listeners, not handler properties: idb-keyval sets those for itself.
    transaction.addEventListener('error', ({ target }) => {
      if (target instanceof IDBRequest) cause ??= target.error;
    });
    transaction.addEventListener('abort', () => {
      reject(asError(cause ?? transaction.error));
    });
    const result = attempt(() => callback(transaction.objectStore(STORE)));
    transaction.addEventListener('complete', () => {
      resolve(result);
    });
    // Without this it would wait for the page to hear of every request, however busy the page is.
    const commit = () => {
      try {
        if (transaction.mode === 'readwrite') transaction.commit();
      } catch {
        // It is over already, or waits for nothing and commits of itself.
      }
    };
    result.then(commit).catch((error: unknown) => {
      cause ??= error;
      try {
        transaction.abort();
      } catch {
        // It was already over, and what ended it is on its way.
        reject(asError(cause));
      }
    });
  });
}

// Not `Promise.resolve().then(...)`: a later turn would find the transaction inactive.
function attempt<T>(act: () => T | PromiseLike<T>): Promise<T> {
  try {
    return Promise.resolve(act());
  } catch (error) {
    return Promise.reject(asError(error));
  }
}

function asError(cause: unknown): Error {
  if (cause instanceof Error) return cause;
  return new DOMException('The transaction was given up by the browser.', 'AbortError');
}
