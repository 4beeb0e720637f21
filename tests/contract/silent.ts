// A way to a database that falls silent: it takes connections and bytes, and hands nothing on.

import { connect, createServer, type Socket } from 'node:net';

export interface SilentWay {
  /** The address of the same database by this way. */
  readonly url: string;
  /** From now on nothing passes, in either direction. */
  readonly fallSilent: () => void;
  /** Drops every connection, and each new one as it comes. */
  readonly refuse: () => void;
  /** What is sent to the database and holds this text is lost. */
  readonly lose: (text: string) => void;
  /** What was held back passes, and all that follows. */
  readonly speak: () => void;
  /** How many have come in. */
  readonly came: () => number;
  readonly close: () => Promise<void>;
}

/** Opens a way to the database at `url`; `isSilent`: from the start. */
export async function openWay(url: string, isSilent = false): Promise<SilentWay> {
  const target = new URL(url);
  const sockets = new Set<Socket>();
  let silent = isSilent;
  let came = 0;
  let refusing = false;
  let lost: string | null = null;
  const server = createServer((near) => {
    came += 1;
    if (refusing) {
      near.destroy();
      return;
    }
    const far = connect(Number(target.port), target.hostname);
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(from);
      from.on('data', (bytes) => {
        if (from === far || lost === null || !bytes.includes(lost)) to.write(bytes);
      });
      from.on('close', () => {
        sockets.delete(from);
        to.destroy();
      });
      from.on('error', () => to.destroy());
      if (silent) from.pause();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  const way = new URL(url);
  way.host = `127.0.0.1:${address.port}`;
  const close = () =>
    new Promise<void>((resolve) => {
      for (const socket of sockets) socket.destroy();
      server.close(() => resolve());
    });
  return {
    url: way.href,
    fallSilent: () => {
      silent = true;
      for (const socket of sockets) socket.pause();
    },
    refuse: () => {
      refusing = true;
      for (const socket of sockets) socket.destroy();
    },
    lose: (text) => {
      lost = text;
    },
    speak: () => {
      lost = null;
      silent = false;
      refusing = false;
      for (const socket of sockets) socket.resume();
    },
    came: () => came,
    close,
  };
}
