// Who may hold a connection open, and for how long? Counted by address as the connection comes, before a byte of it is read: no name is
// known by then. Refused: one number for all, which a single computer takes up; proof before a connection, which nothing on the way asks for.

import { BlockList, isIP, type Socket } from 'node:net';
import type { FastifyInstance } from 'fastify';
import type { ServerContext } from '../context.ts';
import { createAmounts } from './amounts.ts';
import type { SecurityEvents } from './events.ts';
import { askerOf } from './passed.ts';

/** More than some hundred tablets ever open; further ones are closed as they come. */
const CONNECTIONS_MOST = 2_000;
/** Of one address: 300 tablets behind one, with a live stream and a connection to ask by, leave room. */
const ADDRESS_MOST = Math.floor(CONNECTIONS_MOST / 3);

/** How long a connection may wait for its next request, ms, once a tablet proved itself on it. */
export const provedIdleMs = 72_000;
/** And before that: as long as a page takes from one file to the next. Common practice: five seconds. */
const STRANGER_IDLE_MS = 5_000;

/** Bounds the connections of the app. A proxy that is named brings everybody's, and is not counted: it counts by itself. */
export function limitConnections(app: FastifyInstance, context: ServerContext, events: SecurityEvents): void {
  const isProxy = proxiesOf(context.settings.trustProxy ?? []);
  limitNumber(app, isProxy, events);
  limitIdle(app, isProxy);
}

function limitNumber(
  app: FastifyInstance,
  isProxy: (address: string) => boolean,
  events: SecurityEvents,
): void {
  const open = createAmounts();
  app.server.maxConnections = CONNECTIONS_MOST;
  app.server.on('drop', (told) => events.dropped(app.log, 'connections-full', told?.remoteAddress));
  app.server.on('connection', (socket: Socket) => {
    const address = socket.remoteAddress;
    if (address === undefined || isProxy(address)) return;
    open.add(address, 1);
    socket.once('close', () => open.add(address, -1));
    if (open.of(address) <= ADDRESS_MOST) return;
    events.dropped(app.log, 'connections-of-address', address);
    // Once all who listen have it in hand, so that they see it end as any other.
    process.nextTick(() => socket.destroy());
  });
}

function limitIdle(app: FastifyInstance, isProxy: (address: string) => boolean): void {
  const proved = new WeakSet<Socket>();
  // By now an older tablet's signature was checked too, with its body.
  const isStranger = (socket: Socket) => !proved.has(socket) && !isProxy(socket.remoteAddress ?? '');
  app.addHook('onSend', async (request, reply) => {
    const { socket } = request.raw;
    if (askerOf(request).isProved) proved.add(socket);
    // Else the answer would name the longer time.
    if (isStranger(socket)) reply.header('keep-alive', `timeout=${STRANGER_IDLE_MS / 1000}`);
  });
  app.addHook('onResponse', async (request) => {
    const { socket } = request.raw;
    // A time is set only while nothing is asked; the next request takes it away.
    if (socket.timeout && isStranger(socket)) socket.setTimeout(STRANGER_IDLE_MS);
  });
}

/** Whether an address is that of a proxy that is named. `named`: addresses, and networks with their bits. */
function proxiesOf(named: readonly string[]): (address: string) => boolean {
  const list = new BlockList();
  for (const each of named) {
    const [net = '', bits] = each.split('/');
    const family = isIP(net) === 6 ? 'ipv6' : 'ipv4';
    if (bits === undefined) list.addAddress(net, family);
    else list.addSubnet(net, Number(bits), family);
  }
  return (address) => isIP(address) !== 0 && list.check(address, isIP(address) === 6 ? 'ipv6' : 'ipv4');
}
