// `reelward link` from outside: starts, counts, is killed and goes on, does without its server, is shut out, ends when asked.

import { createHmac } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Entry } from '../../shared/log/entry.ts';
import { hashDraft } from '../../shared/log/seal.ts';
import { entryText } from '../../shared/wire/signing.ts';
import { readEnrolCode } from '../../src/app/sync/enrol.ts';
import { makeCode } from '../../src/server/codes.ts';
import { signatureHolds } from '../../src/server/keys.ts';
import { freePort } from '../contract/databases.ts';
import { clock, departed, guid, startMachine } from '../src/link/hermes/machine.ts';
import {
  enrolAt,
  newTablet,
  startTestServer,
  type TestServer,
  type TestTablet,
  until,
} from '../src/server/tablets.ts';
import { type Running, useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
const { run } = cli;
const SECRET = 'a secret of the exit';
let server: TestServer;
let tablet: TestTablet;

beforeEach(async () => {
  server = await startTestServer();
  tablet = await newTablet('T1', server.running.url);
  await enrolAt(server.running, tablet);
  tablet.start();
});
afterEach(async () => {
  cli.killAll();
  await tablet.stop();
  await server.stop();
});

const config = (change: object = {}) => ({
  server: server.running.url,
  data: join(cli.folder, 'link'),
  stations: [
    {
      station: 'L1-exit',
      line: 'L1',
      machine: null,
      at: 'out',
      source: { kind: 'counter', listen: '127.0.0.1:0', secret: SECRET },
    },
  ],
  ...change,
});

function write(value: unknown): string {
  const file = join(cli.folder, 'link.json');
  writeFileSync(file, JSON.stringify(value));
  return file;
}

async function start(change: object = {}): Promise<Running & { readonly at: string }> {
  const running = run('link', '--config', write(config(change)));
  await until('a listening link', () => running.out().includes('\n') || running.child.exitCode !== null);
  const at = / at (127\.0\.0\.1:\d+)\n$/.exec(running.out())?.[1];
  if (at === undefined) throw new Error(running.err());
  return { ...running, at };
}

async function post(at: string, message: object, headers: Record<string, string> | null = null) {
  const body = JSON.stringify(message);
  const response = await fetch(`http://${at}/api/stations/L1-exit/count`, {
    method: 'POST',
    body,
    headers: headers ?? { authorization: `Bearer ${SECRET}` },
  });
  return { status: response.status, answer: (await response.json()) as unknown };
}

const counted = (): readonly Entry[] => tablet.log.entries().filter(({ kind }) => kind === 'station.counted');
const highest = () => Math.max(-1, ...counted().map(({ payload }) => Number(payload['total'])));

/** What the link wrote is one chain that holds, its heads and its end signed by the key that its first entry names. */
function expectChain(): void {
  const own = tablet.log.entries().filter((entry) => entry.tablet.startsWith('link-'));
  const { x, y } = (own[0]?.payload['key'] ?? { x: '', y: '' }) as { x: string; y: string };
  const point = Buffer.concat([Buffer.from([4]), Buffer.from(x, 'base64url'), Buffer.from(y, 'base64url')]);
  own
    .sort((a, b) => a.seq - b.seq)
    .forEach((entry, at) => {
      expect(entry.seq).toBe(at + 1);
      expect(entry.hash).toBe(hashDraft(entry));
      if (at > 0) expect(entry.prev).toBe(own[at - 1]?.hash);
      if (entry.sig === null && at < own.length - 1) return;
      expect(signatureHolds(point.toString('base64url'), entryText(entry.hash), entry.sig ?? '')).toBe(true);
    });
}

const code = async () => (await makeCode(server.running.store, Date.now())).code;

describe('reelward link', () => {
  it('counts, is killed, goes on, does without its server and its code, and ends when asked', async () => {
    const first = await start({ code: await code() });
    expect(first.out()).toMatch(/^reelward link link-\S+ listens: L1-exit at 127\.0\.0\.1:\d+\n$/);
    expect(await post(first.at, { boot: 'b1', total: 7, at: new Date().toISOString() })).toEqual({
      status: 200,
      answer: { boot: 'b1', total: 7 },
    });
    await until('the first total', () => highest() === 7);
    // Told and not in the log yet: it is on the disk when the device is answered.
    expect((await post(first.at, { boot: 'b1', total: 9 })).answer).toEqual({ boot: 'b1', total: 9 });
    expect((await post(first.at, { boot: 'b1', total: 8 })).answer).toEqual({ boot: 'b1', total: 9 });
    first.child.kill('SIGKILL');
    await first.ended;

    const second = await start();
    await until('what the killed one held', () => highest() === 9);
    let third: Awaited<ReturnType<typeof start>> | null = null;
    await server.restart(async () => {
      const body = JSON.stringify({ boot: 'b1', total: 30, serial: 'SN-30' });
      const mac = createHmac('sha256', SECRET).update(body).digest('hex');
      const proved = await post(second.at, JSON.parse(body), { 'reelward-mac': `sha256=${mac}` });
      expect(proved).toEqual({ status: 200, answer: { boot: 'b1', total: 30 } });
      second.child.kill('SIGKILL');
      await second.ended;
      third = await start();
      await post(third.at, { boot: 'b1', total: 31, serial: 'SN-31' });
    });
    const last = third as unknown as Awaited<ReturnType<typeof start>>; // set while the server was away
    await until('what was counted without a server', () => highest() === 31);
    await post(last.at, { boot: 'b1', total: 32 });
    last.child.kill('SIGTERM');
    expect(await last.ended).toBe(0);
    await until('the last total', () => highest() === 32);
    expectChain();
  });

  it('is shut out like a tablet, says so, and keeps counting on its disk', async () => {
    const link = await start({ code: await code() });
    await post(link.at, { boot: 'b1', total: 1 });
    await until('the first total', () => highest() === 1);
    const name = /link-\S+/.exec(link.out())?.[0] ?? '';
    await server.running.store.revokeTablet(name, Date.now());
    await server.running.store.tell({ kind: 'revoked', tablet: name });
    expect((await post(link.at, { boot: 'b1', total: 2, serial: 'SN-2' })).status).toBe(200);
    await until('the word of it', () => link.err().includes('this link was shut out'));
    expect(highest()).toBe(1);
    link.child.kill('SIGTERM');
    expect(await link.ended).toBe(0);
    expect(readFileSync(join(cli.folder, 'link', 'log-000000000001.ndjson'), 'utf8')).toContain('SN-2');
  });

  it('refuses what it cannot follow: what, where, what to do', async () => {
    const [station] = config().stations;
    const of = (change: object) => config({ stations: [{ ...station, ...change }] });
    const cases: readonly (readonly [unknown, RegExp])[] = [
      [
        of({ source: { kind: 'hermes', connect: '10.0.0.5:50101' } }),
        /stations\[0\]\.source\.connect: expected the machine’s SupervisorySystemPort; 50101 is for its neighbour/,
      ],
      [of({ source: { kind: 'hermes', connect: '10.0.0.5' } }), /source\.connect: expected HOST:PORT/],
      [of({ source: { kind: 'hermes', connect: '10.0.0.5:50200', lane: 0 } }), /source\.lane: /],
      [
        of({
          source: { kind: 'ipc2591', listen: '127.0.0.1:5672', broker: 'amqp://b', handle: 'L1.Placer' },
        }),
        /stations\[0\]\.source\.listen: expected either "listen" or "broker"/,
      ],
      [
        of({ source: { kind: 'cfx', listen: '127.0.0.1' } }),
        /stations\[0\]\.source\.listen: expected HOST:PORT/,
      ],
      [
        of({ source: { kind: 'cfx', broker: 'amqp://b' } }),
        /stations\[0\]\.source\.address: expected the address of a queue/,
      ],
      [of({ at: 'exit' }), /stations\[0\]\.at: /],
      [of({ lines: 'L1' }), /stations\[0\]\.lines: key not known here/],
      [{ ...config(), server: 'reelward' }, /server: expected http/],
      [config({ stations: [station, station] }), /stations\[1\]\.station: expected another name/],
      [config(), /code: expected a one-time code at the first start/],
      [config({ code: 'AAAAA-AAAAA' }), /code: refused by the server/],
    ];
    for (const [value, says] of cases) {
      const link = run('link', '--config', write(value));
      expect(await link.ended, link.err()).toBe(2);
      expect(link.err()).toMatch(says);
      expect(link.err().trim().split('\n')).toHaveLength(1);
    }
    expect(await call(['link'])).toMatchObject({ code: 2 });
  }, 120_000);

  it('hears a machine on its supervisory channel, is killed, and counts no board twice that is told again', async () => {
    const machine = await startMachine();
    clock.ms = Date.now();
    const [station] = config().stations;
    const stations = [{ ...station, source: { kind: 'hermes', connect: machine.at } }];
    try {
      const first = run('link', '--config', write(config({ code: await code(), stations })));
      await until('the link at the machine', () => machine.clients() === 1);
      const tell = (...boards: number[]) => {
        for (const at of boards) machine.tell(departed({ BoardId: guid(at), TopBarcode: `SN-${at}` }));
      };
      tell(1, 2);
      await until('its boards', () => highest() === 2);
      expect(first.out()).toContain(`L1-exit at ${machine.at}`);
      first.child.kill('SIGKILL');
      await first.ended;
      await until('the machine to notice', () => machine.clients() === 0);
      const second = run('link', '--config', write(config({ stations })));
      await until('the link again', () => machine.clients() === 1);
      tell(1, 2, 3);
      const serials = () => counted().flatMap(({ payload }) => payload['serial'] ?? []);
      await until('the third', () => serials().includes('SN-3'));
      expect(new Set(serials()).size).toBe(3);
      const third = counted().find(({ payload }) => payload['serial'] === 'SN-3');
      expect(third?.payload).toMatchObject({ total: 1, once: true });
      const noticed = tablet.log.entries().filter(({ kind }) => kind === 'station.noticed');
      expect(noticed.map(({ payload }) => payload['what'])).toEqual(['not-heard', 'board-twice']);
      second.child.kill('SIGTERM');
      expect(await second.ended).toBe(0);
      expectChain();
    } finally {
      await machine.stop();
    }
  });

  it('is started beside a server, and again where it was killed, while the server goes on', async () => {
    const port = await freePort();
    const data = join(cli.folder, 'data');
    const made = run('serve', 'enrol', '--data', data);
    await made.ended;
    const file = write(
      config({
        server: `http://127.0.0.1:${port}`,
        code: readEnrolCode(/Code (\S+),/.exec(made.err())?.[1] ?? ''),
      }),
    );
    const served = run('serve', '--port', String(port), '--data', data, '--links', file);
    const listens = () =>
      [...served.err().matchAll(/ listens: L1-exit at (127\.0\.0\.1:\d+)/g)].map(([, at]) => at ?? '');
    await until('the link', () => listens().length === 1);
    expect((await post(listens()[0] ?? '', { boot: 'b1', total: 3 })).status).toBe(200);
    // Killed with its code spent and nothing noted of it, it would need another one.
    await until('it has joined', () => existsSync(join(cli.folder, 'link', 'sync.json')));
    const child = readFileSync(`/proc/${served.child.pid}/task/${served.child.pid}/children`, 'utf8')
      .trim()
      .split(' ')
      .find((pid) => readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('\0link\0'));
    process.kill(Number(child), 'SIGKILL');
    await until('the link again', () => listens().length === 2);
    expect((await fetch(`http://127.0.0.1:${port}/api/info`)).status).toBe(200);
    expect((await post(listens()[1] ?? '', { boot: 'b1', total: 2 })).answer).toEqual({
      boot: 'b1',
      total: 3,
    });
    served.child.kill('SIGTERM');
    expect(await served.ended).toBe(0);
  });
});
