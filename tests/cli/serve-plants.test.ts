// Several plants on one computer, as they are run: each a process of its own, one on a folder and one on a database, found by host name through a
// proxy. One is killed and the other notices nothing; what two must not share is told before it does harm.

import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enrolTablet, readEnrolCode } from '../../src/app/sync/enrol.ts';
import { freePort, startPostgres, type TestPostgres } from '../contract/databases.ts';
import { newTablet, until } from '../src/server/tablets.ts';
import { type Running, useBuiltCli } from './built.ts';
import { call } from './call.ts';

const cli = useBuiltCli();
const deploy = 'src/server/deploy';
const haproxy = '/usr/sbin/haproxy';
let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

interface Site {
  readonly port: number;
  readonly metricsPort: number;
  readonly file: string;
}

/** A plant's file of settings in the folder of all of them. */
async function writePlant(name: string, plant: string, more: object = {}): Promise<Site> {
  const folder = join(cli.folder, 'etc');
  mkdirSync(folder, { recursive: true });
  const [port, metricsPort] = [await freePort(), await freePort()];
  const file = join(folder, `${name}.json`);
  writeFileSync(file, JSON.stringify({ plant, port, 'metrics-port': metricsPort, ...more }), { mode: 0o600 });
  return { port, metricsPort, file };
}

/** The options that say which plant a command is about. */
const place = ({ file }: Site, name: string) => ['--config', file, '--data', join(cli.folder, 'data', name)];

async function start(name: string, site: Site): Promise<Running> {
  const running = cli.run('serve', ...place(site, name));
  // The code of its first tablet is told last.
  await until(`${name} to serve`, () => readEnrolCode(running.err()) !== null);
  return running;
}

const plants = () => call(['serve', 'plants', join(cli.folder, 'etc'), '--data', join(cli.folder, 'data')]);

/** What a plant says of itself to whoever asks by a host name. */
function infoBy(host: string, port: number): Promise<{ readonly status: number; readonly text: string }> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path: '/api/info', headers: { host } }, (answer) => {
      let text = '';
      answer.on('data', (chunk) => {
        text += chunk;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('two plants on one computer', { timeout: 240_000 }, () => {
  it('serve, are watched, backed up and looked at each by itself, and one goes on without the other', async () => {
    const database = await postgres?.newDatabase();
    const [one, two] = [
      await writePlant('brae', 'Brae Works'),
      await writePlant('tarn', 'Tarn Works', { database }),
    ];
    const [brae, tarn] = [await start('brae', one), await start('tarn', two)];
    const tablet = await newTablet('t1', `http://127.0.0.1:${two.port}`);
    expect(
      await enrolTablet(tablet, { code: readEnrolCode(tarn.err()) ?? '', name: 'Line 1' }),
    ).toMatchObject({ ok: true });
    tablet.log.write(3);
    tablet.start();
    await until('three', () => tablet.log.memory.acked['t1/e1'] === 3);
    brae.child.kill('SIGKILL');
    await brae.ended;
    tablet.log.write(2);
    await until('two more', () => tablet.log.memory.acked['t1/e1'] === 5);
    await tablet.stop();

    const health = async ({ port }: Site) => (await fetch(`http://127.0.0.1:${port}/health`)).json();
    expect(await health(two)).toMatchObject({ ok: true, plant: 'Tarn Works', store: 'postgres' });
    const metrics = await (await fetch(`http://127.0.0.1:${two.metricsPort}/metrics`)).text();
    const own = metrics.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
    expect(own.filter((line) => !line.includes('plant="Tarn Works"'))).toEqual([]);

    const looked = await plants();
    expect([looked.code, looked.err]).toEqual([0, '']);
    const lines = looked.out.split('\n');
    expect(lines).toContain('brae  WARNING server: does not run');
    // What the server wrote of the tablet and of its own chain's beginning is in the log too.
    expect(lines.find((line) => line.startsWith('tarn  good    server'))).toMatch(/runs, \d+ entries$/);

    const nights = join(cli.folder, 'nights');
    mkdirSync(nights);
    const made = await call(['serve', 'backup', join(nights, 'tarn.sqlite'), ...place(two, 'tarn')]);
    expect([made.code, made.err]).toEqual([0, expect.stringContaining('and read them back')]);
    // Put into the other plant by mistake.
    const mixed = await call([
      'serve',
      'restore',
      join(nights, 'tarn.sqlite'),
      '--replace',
      ...place(one, 'brae'),
    ]);
    expect([mixed.code, mixed.err]).toEqual([
      2,
      expect.stringContaining('a backup of “Tarn Works”, and this is the store of “Brae Works”'),
    ]);
    await start('brae', one);
    expect(await health(one)).toMatchObject({ ok: true, plant: 'Brae Works' });
  });

  it('are told apart where their settings would have them share something', async () => {
    const one = await writePlant('brae', 'Brae Works');
    await writePlant('fell', 'Brae Works', { port: one.port });
    await writePlant('moor', 'Moor Works', { prot: 1 });
    await writePlant('tarn', 'Tarn Works', { database: 'postgres://tarn@127.0.0.1:9/x' });
    await writePlant('wold', 'Wold Works', { plant: undefined, database: 'postgres://wold@127.0.0.1:9/x' });
    const { code, out } = await plants();
    expect(code).toBe(1);
    const wrong = out.split('\n').filter((line) => line.includes('WRONG   configuration'));
    expect(wrong).toEqual([
      'brae  WRONG   configuration: “Brae Works” is what fell is called too',
      `brae  WRONG   configuration: port ${one.port} is fell’s too`,
      'fell  WRONG   configuration: “Brae Works” is what brae is called too',
      `fell  WRONG   configuration: port ${one.port} is brae’s too`,
      expect.stringContaining('prot: key not known here'),
      'tarn  WRONG   configuration: the database is wold’s too: each plant has one of its own',
      'wold  WRONG   configuration: no "plant" in it: its store could be taken for another’s',
      'wold  WRONG   configuration: the database is tarn’s too: each plant has one of its own',
    ]);
    expect((await call(['serve', 'plants', join(cli.folder, 'nowhere')])).err).toContain(
      'expected a folder with a file of settings for each plant',
    );
  });

  it('take no port of each other’s for their own', async () => {
    const one = await writePlant('brae', 'Brae Works');
    const two = await writePlant('tarn', 'Tarn Works', { port: one.port });
    await start('brae', one);
    const check = (site: Site, name: string) => call(['serve', 'check', ...place(site, name)]);
    expect((await check(one, 'brae')).out).toContain(
      `good    port: ${one.port} is this server's, which runs`,
    );
    expect((await check(two, 'tarn')).out).toContain(
      `WRONG   port: port ${one.port} is that of “Brae Works”, which runs; name another port`,
    );
  });

  it.runIf(existsSync(haproxy))('are found by their host names, and by no other', async () => {
    const [one, two] = [await writePlant('brae', 'Brae Works'), await writePlant('tarn', 'Tarn Works')];
    const [brae] = [await start('brae', one), await start('tarn', two)];
    const port = await freePort();
    const file = join(cli.folder, 'plants.cfg');
    writeFileSync(
      file,
      readFileSync(`${deploy}/plants.cfg`, 'utf8')
        .replace('bind :443 ssl crt /etc/haproxy/plants/', `bind 127.0.0.1:${port}`)
        .replace('127.0.0.1:8101', `127.0.0.1:${one.port}`)
        .replace('127.0.0.1:8102', `127.0.0.1:${two.port}`),
    );
    execFileSync(haproxy, ['-c', '-f', file], { stdio: 'ignore' });
    const proxy = spawn(haproxy, ['-db', '-f', file], { stdio: 'ignore' });
    try {
      await until('the proxy', () =>
        infoBy('brae.example', port).then(
          () => true,
          () => false,
        ),
      );
      expect((await infoBy('brae.example', port)).text).toContain('"plant":"Brae Works"');
      expect((await infoBy('Tarn.Example:443', port)).text).toContain('"plant":"Tarn Works"');
      expect((await infoBy('fell.example', port)).status).toBe(503);
      brae.child.kill('SIGKILL');
      await brae.ended;
      expect((await infoBy('brae.example', port)).status).toBe(503);
      expect((await infoBy('tarn.example', port)).text).toContain('"plant":"Tarn Works"');
    } finally {
      proxy.kill('SIGKILL');
    }
  });

  it('have each a database that the other’s user does not reach, as the page makes them', async () => {
    const address = (await postgres?.newDatabase()) ?? '';
    const [, block = ''] = /```sql\n([\s\S]*?)```/.exec(readFileSync(`${deploy}/README.md`, 'utf8')) ?? [];
    const client = new pg.Client({ connectionString: address });
    await client.connect();
    for (const statement of block.trim().split('\n')) {
      await client.query(statement);
      await client.query(statement.replaceAll('tarn', 'brae'));
    }
    for (const name of ['tarn', 'brae']) await client.query(`alter role ${name} password '${name}'`);
    await client.end();
    const { host } = new URL(address);
    const as = (user: string, database: string) => `postgres://${user}:${user}@${host}/${database}`;
    const site = await writePlant('tarn', 'Tarn Works', { database: as('tarn', 'tarn') });
    await start('tarn', site);
    const wrong = await call(['serve', 'check', '--database', as('brae', 'tarn'), '--data', cli.folder]);
    expect([wrong.code, wrong.out]).toEqual([1, expect.stringContaining('WRONG   store: --database:')]);
  });
});
