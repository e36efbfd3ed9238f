import { once } from 'node:events';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

/** One address behind which stands now this server, now that, or none. */
export interface Switch {
  readonly address: string;
  /** The address it leads to; undefined leads nowhere: every connection is broken off. */
  to: string | undefined;
  close(): Promise<void>;
}

/** Opens a switch on a free port. */
export async function switchBetween(): Promise<Switch> {
  let target: string | undefined;
  const open = new Set<Socket>();
  const breakOff = (): void => {
    for (const socket of open) socket.destroy();
  };
  const server = createServer((near) => {
    open.add(near.on('error', () => undefined).on('close', () => open.delete(near)));
    if (target === undefined) {
      near.destroy();
      return;
    }
    const { hostname, port } = new URL(target);
    const far = connect(Number(port), hostname, () => near.pipe(far).pipe(near));
    far.on('error', () => near.destroy()).on('close', () => near.destroy());
    near.on('close', () => far.destroy());
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    address: `http://127.0.0.1:${String((server.address() as AddressInfo).port)}/`,
    get to() {
      return target;
    },
    set to(address) {
      target = address;
      // A connection that was kept open would go on leading to the server before.
      breakOff();
    },
    async close() {
      breakOff();
      server.close();
      await once(server, 'close');
    },
  };
}
