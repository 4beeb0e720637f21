// A listener that machines send to without a broker: AMQP 1.0 over TCP or TLS, ANONYMOUS or with a name and a password. It takes messages
// for whatever address, and offers none, but for answers to who asked where the link's file allows them.
// Method: the library speaks the protocol; before it stands a watch over the bytes of each connection, since the library itself keeps
// whatever a frame's head announces. Refused: to trust a peer because it stands in the machines' network.

import { timingSafeEqual } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import type { Connection, ConnectionOptions, Container, EventContext, Message, Sender } from 'rhea';
import { LinkRefused } from '../config.ts';
import { bytesOf, CREDIT, dataOf, FRAME_MOST, MACHINE_IDLE_MS, newContainer } from './amqp.ts';
import { MESSAGE_MOST } from './envelope.ts';
import type { Peer } from './machine.ts';

const CONNECTIONS_MOST = 64;
const SESSIONS_MOST = 8;
const LINKS_MOST = 16;
/** A connection must be open after so long, ms. */
const OPEN_WITHIN_MS = 10_000;
/** Bytes of a connection from message to message: a message in parts, and what is said about it. */
const BETWEEN_MOST = 2 * MESSAGE_MOST;
/** The first frame of a listener's peer, before it is known, is small. */
const FIRST_FRAME_MOST = 4_096;

/** How peers prove who they are, and the certificate that is shown to them. */
export interface ListenerDoor {
  readonly user: string | null;
  readonly password: string | null;
  /** Files; null: no TLS. */
  readonly tls: { readonly cert: string; readonly key: string } | null;
  /** True where a machine may be answered: it may attach a link for answers. */
  readonly answers: boolean;
}

/** Who sent a message, and how an answer goes back there; false where it cannot. */
export interface From {
  readonly peer: Peer;
  readonly reply: (envelope: object) => boolean;
}

/** What a listener tells. */
export interface ListenerEars {
  /** A message's bytes; it is accepted when this resolves. Never rejects but for a fault of this side. */
  readonly message: (bytes: Buffer, isGzip: boolean, from: From) => Promise<unknown>;
  readonly noBody: (peer: Peer) => Promise<unknown>;
  readonly trouble: (what: string) => void;
  readonly wrongPassword: (user: string) => void;
}

/** A connection, as it is watched. */
interface Watched {
  readonly peer: Peer;
  readonly socket: Socket;
  between: number;
  sessions: number;
  links: number;
  /** Links for answers, by where they lead. */
  readonly answers: Map<string, Sender>;
}

/** Makes a server; it does not listen yet. `close` ends its connections. Throws `LinkRefused` where a certificate cannot be read. */
export function createListener(
  door: ListenerDoor,
  ears: ListenerEars,
): { readonly server: Server; readonly close: () => Promise<void> } {
  const container = newContainer((what) => ears.trouble(what));
  proveBy(container, door, ears);
  const watched = new Map<Connection, Watched>();
  listenTo(container, watched, { ...ears, answers: door.answers });
  const options = {
    max_frame_size: FRAME_MOST,
    channel_max: SESSIONS_MOST,
    idle_time_out: MACHINE_IDLE_MS,
    require_sasl: door.user !== null,
    reconnect: false,
    // The names of the library's options for what a peer attaches.
    receiver_options: { autoaccept: false, credit_window: CREDIT, max_message_size: MESSAGE_MOST },
  };
  const accept = (socket: Socket) => {
    const connection = container.create_connection(options as unknown as ConnectionOptions); // the typings lack the listening side
    const { remoteAddress = '?', remotePort = 0 } = socket;
    const peer = { host: remoteAddress, port: remotePort, isOpen: () => !socket.destroyed };
    const watch: Watched = { peer, socket, between: 0, sessions: 0, links: 0, answers: new Map() };
    watched.set(connection, watch);
    const cut = (why: string) => {
      ears.trouble(`${remoteAddress}: ${why}`);
      socket.destroy();
    };
    const late = setTimeout(() => {
      if (!connection.is_open()) cut('no AMQP 1.0 within ten seconds');
    }, OPEN_WITHIN_MS).unref();
    socket.on('close', () => {
      clearTimeout(late);
      watched.delete(connection);
    });
    socket.on('error', () => socket.destroy());
    // Before the library's own ear.
    socket.on('data', watchBytes(watch, cut));
    (connection as unknown as { accept: (socket: Socket) => void }).accept(socket); // as above
  };
  const server = door.tls ? tlsServer(door.tls, accept) : createServer(accept);
  server.maxConnections = CONNECTIONS_MOST;
  server.on('tlsClientError', (error: Error) => ears.trouble(`TLS: ${error.message.slice(0, 120)}`));
  return {
    server,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        for (const connection of watched.keys()) connection.close();
        setTimeout(() => {
          for (const { socket } of watched.values()) socket.destroy();
        }, 300);
      }),
  };
}

function tlsServer(
  files: { readonly cert: string; readonly key: string },
  accept: (socket: Socket) => void,
): Server {
  try {
    const [cert, key] = [readFileSync(files.cert), readFileSync(files.key)];
    return createTlsServer({ cert, key, minVersion: 'TLSv1.2', handshakeTimeout: OPEN_WITHIN_MS }, accept);
  } catch (error) {
    throw new LinkRefused(
      `source.tls: ${(error as Error).message}; give the files of a certificate and its key, PEM`,
    );
  }
}

const isSame = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
};

function proveBy(container: Container, { user, password }: ListenerDoor, ears: ListenerEars): void {
  if (user === null || password === null) {
    container.sasl_server_mechanisms.enable_anonymous();
    return;
  }
  container.sasl_server_mechanisms.enable_plain((name: string | null, said: string | null) => {
    const isRight = isSame(name ?? '', user) && isSame(said ?? '', password);
    if (!isRight) ears.wrongPassword((name ?? '').slice(0, 60));
    return isRight;
  });
}

/** What comes up on connections. */
function listenTo(
  container: Container,
  watched: ReadonlyMap<Connection, Watched>,
  ears: ListenerEars & Pick<ListenerDoor, 'answers'>,
): void {
  const of = ({ connection }: EventContext) => watched.get(connection);
  container.on('session_open', (context: EventContext) => {
    const watch = of(context);
    if (watch && ++watch.sessions > SESSIONS_MOST) watch.socket.destroy();
  });
  container.on('session_close', (context: EventContext) => {
    const watch = of(context);
    if (watch) watch.sessions -= 1;
  });
  container.on('receiver_open', (context: EventContext) => {
    const watch = of(context);
    if (watch && ++watch.links > LINKS_MOST) watch.socket.destroy();
    // Whatever the address: the machine's own settings name it.
    context.receiver?.set_target({ address: context.receiver.target?.address ?? '' });
  });
  container.on('receiver_close', (context: EventContext) => {
    const watch = of(context);
    if (watch) watch.links -= 1;
  });
  container.on('sender_open', (context: EventContext) => {
    const watch = of(context);
    const to = targetOf(context.sender);
    if (ears.answers && watch && context.sender && to !== null) {
      if (++watch.links > LINKS_MOST) return watch.socket.destroy();
      context.sender.set_source({ address: context.sender.source?.address ?? '' });
      watch.answers.set(to, context.sender);
      return;
    }
    context.sender?.close({
      condition: 'amqp:not-allowed',
      description: 'this listener only takes messages',
    });
  });
  container.on('sender_close', (context: EventContext) => {
    const watch = of(context);
    const to = targetOf(context.sender);
    if (watch && to !== null && watch.answers.delete(to)) watch.links -= 1;
  });
  container.on('message', (context: EventContext) => {
    const { message, delivery } = context;
    const watch = of(context);
    if (!message || !delivery || !watch) return;
    watch.between = 0;
    const body = bytesOf(message);
    const taken = body
      ? ears.message(body.bytes, body.isGzip, fromOf(watch, message))
      : ears.noBody(watch.peer);
    // What is not understood is accepted and told: a machine that sends it again and again would get no further.
    taken.then(
      () => delivery.accept(),
      () => delivery.release({ delivery_failed: true }),
    );
  });
}

/** Where a link's messages go at the peer; null where it does not say. */
function targetOf(sender: Sender | undefined): string | null {
  const { target } = (sender ?? {}) as { readonly target?: { readonly address?: unknown } | null }; // not in the typings
  return typeof target?.address === 'string' && target.address !== '' ? target.address : null;
}

/** An answer goes to where the message says, on its own connection. */
function fromOf({ peer, answers }: Watched, message: Message): From {
  const to = typeof message.reply_to === 'string' ? message.reply_to : '';
  return {
    peer,
    reply: (envelope) => {
      const sender = answers.get(to);
      if (!sender?.is_open() || !sender.sendable()) return false;
      sender.send({
        body: dataOf(envelope),
        content_type: 'application/json; charset="utf-8"',
        // From memory: the published library names the question's message, not the answer's.
        message_id: 'command-response',
        to,
      });
      return true;
    },
  };
}

/** Follows the frames of a connection, and cuts it where a frame, or what comes without a message, is too large. */
function watchBytes(watch: Watched, cut: (why: string) => void): (chunk: Buffer) => void {
  let head = Buffer.alloc(0);
  /** Bytes of the present frame, or of the protocol's head, that are still to come. */
  let rest = 8;
  let frames = 0;
  return (chunk) => {
    watch.between += chunk.length;
    if (watch.between > BETWEEN_MOST) {
      cut(`${BETWEEN_MOST} bytes without a message`);
      return;
    }
    let at = 0;
    while (at < chunk.length) {
      if (rest > 0) {
        const step = Math.min(rest, chunk.length - at);
        at += step;
        rest -= step;
        continue;
      }
      const need = 4 - head.length;
      head = Buffer.concat([head, chunk.subarray(at, at + need)]);
      at += need;
      if (head.length < 4) return;
      // After the proof of who it is the protocol's head comes once more.
      const isHead = head.toString('latin1') === 'AMQP';
      const size = isHead ? 8 : head.readUInt32BE(0);
      head = Buffer.alloc(0);
      frames += 1;
      if (size < 8 || size > (frames <= 2 ? FIRST_FRAME_MOST : FRAME_MOST)) {
        cut(`a frame of ${size} bytes`);
        return;
      }
      rest = size - 4;
    }
  };
}
