import { once } from 'node:events';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A way out of the browser on which everything it asks for is written down. */
export interface Recorder {
  /** The address of the proxy. */
  readonly address: string;
  /** Every address that was asked for, in order; for an encrypted one, its host. */
  readonly asked: string[];
  close(): Promise<void>;
}

/** Opens a proxy that lets requests to this machine through, and leads all others nowhere. */
export async function recordRequests(): Promise<Recorder> {
  const asked: string[] = [];
  const server = createServer((coming, answer) => {
    const { url = '', method, headers } = coming;
    asked.push(url);
    if (!isLoopback(url)) {
      answer.writeHead(502).end();
      return;
    }
    const going = request(url, { method, headers }, (came) => {
      answer.writeHead(came.statusCode ?? 502, came.headers);
      came.pipe(answer);
    });
    going.on('error', () => answer.destroy());
    coming.pipe(going);
  });
  // Encrypted requests and sockets ask for a tunnel first.
  server.on('connect', ({ url = '' }, socket) => {
    asked.push(url);
    socket.destroy();
  });
  server.on('upgrade', ({ url = '' }, socket) => {
    asked.push(url);
    socket.destroy();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    address: `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`,
    asked,
    async close() {
      server.close();
      server.closeAllConnections();
      await once(server, 'close');
    },
  };
}

/** Whether an address is on this machine; what can't be read as one is not. */
export function isLoopback(url: string): boolean {
  return URL.canParse(url) && new URL(url).hostname === '127.0.0.1';
}
