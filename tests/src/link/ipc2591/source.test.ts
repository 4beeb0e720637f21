// Stations heard by IPC-2591 from outside: a listener of its own that a client library's machine sends to, and everything else that can be
// sent to a port; a small broker that goes away.

import { generateKeyPairSync } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Connection, Sender } from 'rhea';
import * as library from 'rhea';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Ipc2591Station } from '../../../../src/link/config.ts';
import type { FloorWatch } from '../../../../src/link/floor.ts';
import { openHeld } from '../../../../src/link/held.ts';
import { type Ipc2591, openIpc2591 } from '../../../../src/link/ipc2591/source.ts';
import { freePort, newFolder } from '../../../contract/databases.ts';
import { until } from '../../server/tablets.ts';
import * as said from './said.ts';

const rhea = (library as unknown as { readonly default: typeof library }).default;

let folder: ReturnType<typeof newFolder>;
let held: ReturnType<typeof openHeld>;
let source: Ipc2591 | null = null;
let entries: [string, Record<string, unknown>][] = [];
let faults: unknown[] = [];
/** The floor that a machine is answered by; null: none is. */
let floor: FloorWatch | null = null;
let connections: Connection[] = [];
let ticker: NodeJS.Timeout;

const now = () => ({ ms: performance.now(), wallMs: Date.now() });

beforeEach(() => {
  folder = newFolder();
  held = openHeld(folder.path, false);
  [entries, faults, connections, floor] = [[], [], [], null];
  ticker = setInterval(() => {
    for (const tick of source?.tick(now()) ?? []) tick.catch((fault) => faults.push(fault));
  }, 50);
});
afterEach(async () => {
  clearInterval(ticker);
  for (const connection of connections) hang(connection);
  await source?.stop();
  source = null;
  await held.close();
  folder.remove();
  expect(faults).toEqual([]);
});

function hang(connection: Connection): void {
  connection.set_reconnect(false);
  (connection as unknown as { socket?: { destroy: () => void } }).socket?.destroy();
}

const station = (more: Partial<Ipc2591Station['source']> = {}, name = 'L1-placer'): Ipc2591Station => ({
  station: name,
  line: 'L1',
  machine: 'M1',
  at: 'work',
  source: { kind: 'ipc2591', listen: '127.0.0.1:0', handle: 'L1.Placer', ...more },
});

async function open(...stations: Ipc2591Station[]): Promise<string> {
  source = await openIpc2591(stations, stations, {
    folder: folder.path,
    held,
    floor,
    write: async (kind, payload) => void entries.push([kind, payload as Record<string, unknown>]),
    now,
    onFault: (fault) => faults.push(fault),
    flush: false,
  });
  source.begin();
  return source.at(stations[0]?.station ?? '');
}

/** A machine: sends texts or bytes to an address of its own settings; resolves when they are accepted. */
async function machine(at: string, more: object = {}) {
  const [host = '', port = ''] = at.split(':');
  const container = rhea.create_container();
  let accepted = 0;
  let refused: string | null = null;
  container.on('accepted', () => {
    accepted += 1;
  });
  for (const event of ['disconnected', 'connection_error', 'error', 'protocol_error'])
    container.on(event, (context: { error?: { message?: string; condition?: string } }) => {
      refused ??= context.error?.condition ?? context.error?.message ?? event;
    });
  const connection = container.connect({ host, port: Number(port), reconnect: false, ...more });
  connections.push(connection);
  const sender: Sender = connection.open_sender('/whatever/it/says');
  const ready = new Promise<void>((resolve) => container.once('sendable', () => resolve()));
  let sent = 0;
  return {
    ready,
    refused: () => refused,
    connection,
    send: async (value: unknown, pack = true) => {
      await ready;
      const bytes = Buffer.isBuffer(value) ? value : Buffer.from(JSON.stringify(value));
      sender.send({
        body: rhea.message.data_section(pack ? gzipSync(bytes) : bytes),
        content_type: 'application/json; charset="utf-8"',
        ...(pack ? { content_encoding: 'gzip' } : {}),
      });
      sent += 1;
      await until('an accepted message', () => accepted === sent);
    },
  };
}

const of = (kind: string) => entries.flatMap(([each, payload]) => (each === kind ? [payload] : []));
const highest = () => Math.max(-1, ...of('station.counted').map(({ total }) => Number(total)));
const noticed = () => of('station.noticed').map(({ what }) => what);
const settled = async () => {
  await source?.stop();
  source = null;
};

describe('a listener for machines', () => {
  test('counts packed and plain messages, alone and in arrays, and tells what it is not for', async () => {
    const placer = await machine(await open(station()));
    await placer.send(said.heartbeat());
    await placer.send(said.workCompleted('w1'), false);
    await placer.send([said.workCompleted('w2'), said.workCompleted('w3'), { odd: 1 }]);
    await placer.send(said.envelope('Heartbeat', {}, { Source: 'L1.Oven' }));
    await placer.send(Buffer.from('not a message'), false);
    await settled();
    expect(highest()).toBe(3);
    const told = of('station.noticed').map(({ what, said: text }) => [what, text]);
    expect(told).toHaveLength(3);
    expect(told).toContainEqual(['not-understood', 'an envelope without MessageName']);
    expect(told).toContainEqual(['other-handle', 'L1.Oven']);
    expect(noticed()).toContain('clock-off');
  });

  test('without a handle in the file takes the first machine that is heard, after a restart too, and tells others', async () => {
    const { handle: _, ...anybody } = { ...station().source, kind: 'cfx' as const };
    const one = { ...station(), source: anybody };
    const told: string[] = [];
    for (const first of ['L1.Placer', 'L1.Oven']) {
      entries = [];
      const sender = await machine(await open(one));
      const other = first === 'L1.Placer' ? 'L1.Oven' : 'L1.Placer';
      await sender.send(said.workCompleted(`of ${first}`, 'Completed', { Source: first }));
      await sender.send(said.workCompleted(`of ${other}`, 'Completed', { Source: other }));
      await settled();
      expect(of('station.counted').filter(({ total }) => Number(total) > 0)).toHaveLength(1);
      told.push(...of('station.noticed').map(({ what, said: text }) => `${what} ${text}`));
    }
    // Told once, counted never.
    expect(told.filter((each) => each.startsWith('other-handle'))).toEqual(['other-handle L1.Oven']);
    await expect(open(one, station({}, 'L1-other'))).rejects.toThrow(
      'stations[1].source.handle: expected another than of L1-placer',
    );
  });

  test('asks for a name and a password where they are set, and tells a wrong one', async () => {
    const at = await open(station({ user: 'placer', password: 'a long secret' }));
    const none = await machine(at);
    await until('no entry without a name', () => none.refused() !== null);
    const wrong = await machine(at, { username: 'placer', password: 'guessed it' });
    await until('no entry with a wrong password', () => wrong.refused() !== null);
    await until('the word of it', () => noticed().includes('wrong-secret'));
    const right = await machine(at, { username: 'placer', password: 'a long secret' });
    await right.send(said.workCompleted('w1'));
    await settled();
    expect(highest()).toBe(1);
  });

  test('two stations share a place by their handles or lanes, and may not share both', async () => {
    const one = station({ lane: 1 }, 'lane-1');
    const two = station({ lane: 2 }, 'lane-2');
    const placer = await machine(await open(one, two));
    await placer.send(said.unitsDeparted('P-1'));
    await placer.send(
      said.envelope('Production.WorkCompleted', { TransactionID: 'w', Result: 'Completed', Lane: 2 }),
    );
    await settled();
    const top = (name: string) =>
      Math.max(
        ...of('station.counted').flatMap((each) => (each['station'] === name ? [Number(each['total'])] : [])),
      );
    expect([top('lane-1'), top('lane-2')]).toEqual([0, 1]);
    await expect(open(station(), station({}, 'again'))).rejects.toThrow(
      /stations\[1\]\.source\.handle: expected another than of L1-placer/,
    );
  });

  test('lives through whatever comes to its port, and a machine beside it goes on counting', async () => {
    const at = await open(station());
    const placer = await machine(at);
    await placer.send(said.workCompleted('w1'));
    const frame = (size: number, rest = '') => {
      const head = Buffer.alloc(4);
      head.writeUInt32BE(size);
      return Buffer.concat([
        Buffer.from('AMQP\x00\x01\x00\x00', 'latin1'),
        head,
        Buffer.from(rest, 'latin1'),
      ]);
    };
    const bad = [
      Buffer.from('GET / HTTP/1.1\r\nHost: x\r\n\r\n'),
      Buffer.alloc(100_000, 0xa5),
      Buffer.alloc(300_000),
      frame(0),
      frame(7),
      frame(0xffffffff),
      frame(300_000),
      frame(16, '\x02\x00\x00\x00\x00\x53\x99\x45\x00\x00\x00\x00'),
      frame(12, '\x02\x00\x00\x00\x00\x53\x18\x45'),
      Buffer.from(
        'AMQP\x03\x01\x00\x00\x00\x00\x00\x14\x02\x01\x00\x00\x00\x53\x41\xc0\x07\x01\xa3\x0bconstructor',
        'latin1',
      ),
      Buffer.from('AMQP', 'latin1'),
    ];
    const [, port = ''] = at.split(':');
    for (const bytes of bad)
      await new Promise<void>((resolve) => {
        const socket = connect(Number(port), '127.0.0.1', () => socket.end(bytes));
        socket.on('error', () => resolve());
        socket.on('close', () => resolve());
      });
    await placer.send(Buffer.alloc(50_000_000));
    await placer.send(said.workCompleted('w2'));
    await settled();
    expect(highest()).toBe(2);
    expect(noticed().filter((what) => what === 'not-understood')).toHaveLength(1);
  });

  test('cuts a connection that never ends its message, or opens sessions without end', async () => {
    const at = await open(station());
    const endless = await machine(at);
    await endless.ready;
    const socket = (
      endless.connection as unknown as { socket: { write: (bytes: Buffer) => void; destroyed: boolean } }
    ).socket;
    // A transfer (0x14) of handle 0, delivery 0, its tag, format 0, not settled, more to come; again and again.
    const performative = Buffer.from('\x00\x53\x14\xc0\x0b\x06\x43\x43\xa0\x01a\x43\x42\x41', 'latin1');
    const frame = Buffer.concat([Buffer.alloc(8), performative, Buffer.alloc(200_000)]);
    frame.writeUInt32BE(frame.length);
    frame.writeUInt8(2, 4);
    for (let at = 0; at < 15; at += 1) socket.write(frame);
    await until('the end of it', () => endless.refused() !== null || socket.destroyed);
    const [cut] = of('station.noticed');
    expect(cut).toMatchObject({ said: expect.stringContaining('bytes without a message') });
    const many = await machine(at);
    await many.ready;
    for (let at = 0; at < 20; at += 1) many.connection.create_session().begin();
    await until('the end of that', () => many.refused() !== null);
    const placer = await machine(at);
    await placer.send(said.workCompleted('w1'));
    await settled();
    expect(highest()).toBe(1);
  });

  test('says what is wrong with a place or a certificate', async () => {
    const at = await open(station());
    await expect(
      openIpc2591([station({ listen: at })], [station()], {
        folder: folder.path,
        held,
        write: async () => undefined,
        now,
        onFault: () => undefined,
        floor: null,
      }),
    ).rejects.toThrow(/stations\[0\]\.source\.listen: .*: something listens there already/);
    const file = join(folder.path, 'key.pem');
    writeFileSync(
      file,
      generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey.export({ type: 'pkcs8', format: 'pem' }),
    );
    await expect(
      openIpc2591([station({ tls: { cert: file, key: file } })], [station()], {
        folder: folder.path,
        held,
        write: async () => undefined,
        now,
        onFault: () => undefined,
        floor: null,
      }),
    ).rejects.toThrow(/source\.tls: /);
  });
});

describe('a broker', () => {
  test('is waited for, comes again, and what it sends twice counts once', async () => {
    const port = await freePort();
    await open(station({ listen: undefined, broker: `amqp://127.0.0.1:${port}`, address: '/queue/line-1' }));
    const messages = Array.from({ length: 6 }, (_, at) => said.workCompleted(`w${at}`));
    const broker = async (send: readonly object[]) => {
      const container = rhea.create_container();
      const sockets: { destroy: () => void }[] = [];
      let accepted = 0;
      let address: unknown = null;
      for (const event of ['error', 'connection_error', 'protocol_error', 'disconnected'])
        container.on(event, () => undefined);
      container.on('connection_open', ({ connection }) =>
        sockets.push((connection as unknown as { socket: { destroy: () => void } }).socket),
      );
      container.on('sender_open', ({ sender }) => {
        address = sender?.source?.address;
        sender?.set_source({ address: sender.source?.address ?? '' });
      });
      container.once('sendable', ({ sender }) => {
        for (const message of send)
          sender?.send({ body: rhea.message.data_section(Buffer.from(JSON.stringify(message))) });
      });
      container.on('accepted', () => {
        accepted += 1;
      });
      const server = container.listen({ port, host: '127.0.0.1' });
      return {
        all: () => accepted === send.length,
        address: () => address,
        kill: async () => {
          for (const socket of sockets) socket.destroy();
          await new Promise((resolve) => server.close(resolve));
        },
      };
    };
    const first = await broker([said.heartbeat(), ...messages.slice(0, 4)]);
    await until('four panels taken', first.all);
    expect(first.address()).toBe('/queue/line-1');
    await first.kill();
    const second = await broker(messages.slice(2));
    await until('the others taken', second.all);
    await settled();
    await second.kill();
    expect(highest()).toBe(6);
    expect(new Set(of('station.counted').map(({ boot }) => boot)).size).toBe(1);
    expect(noticed()).toContain('not-connected');
  }, 30_000);
});
