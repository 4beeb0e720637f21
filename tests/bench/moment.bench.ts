// Back to a moment: PostgreSQL of Debian's with base backup and journal by the very files that an administrator is given (`src/server/deploy/cluster`), put back
// to a moment under a plant of tablets with the app's own sync. Wanted: all that was acknowledged before the moment is there before any tablet is heard; the log has another name; each
// tablet is told, and brings what is lacking, also of one that is gone for good. BENCH_TABLETS (12).

import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { type RunningServer, startServer } from '../../src/server/main.ts';
import { freePort, newFolder } from '../contract/databases.ts';
import { enrolAt, newTablet, settingsFor } from '../src/server/tablets.ts';
import { installCluster, postgresUser, waitFor } from './failover-cluster.ts';
import { parameter } from './server-process.ts';

const TABLETS = parameter('BENCH_TABLETS', 12);
const WRITE_MS = 500;
const deploy = 'src/server/deploy/cluster';
const bin = '/usr/lib/postgresql/15/bin';

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
const seconds = (fromMs: number) => `${((performance.now() - fromMs) / 1000).toFixed(1)} s`;

installCluster();
const folder = newFolder();
chmodSync(folder.path, 0o777);
const user = postgresUser();
const [port, webPort] = [await freePort(), await freePort()];
const kept = join(folder.path, 'kept');
const data = join(folder.path, 'brae');
const tools = join(folder.path, 'tools');
const asPostgres = (program: string, ...args: readonly string[]) =>
  execFileSync(program, [...args], {
    cwd: folder.path,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, HOME: folder.path, PGHOST: folder.path, PGPORT: String(port), PGUSER: 'postgres' },
    ...user,
  });
mkdirSync(tools);
for (const name of ['base-backup', 'restore-moment']) cpSync(join(deploy, name), join(tools, name));
asPostgres('mkdir', '-p', join(kept, 'wal'));
asPostgres(
  join(bin, 'initdb'),
  '--pgdata',
  data,
  '--username=postgres',
  '--auth=trust',
  '--data-checksums',
  '--encoding=UTF8',
  '--locale=C',
);
const settings = readFileSync(join(deploy, 'archive.conf'), 'utf8').replaceAll(
  '/var/backups/postgresql',
  kept,
);
writeFileSync(
  join(data, 'postgresql.conf'),
  `${settings}port = ${port}\nlisten_addresses = '127.0.0.1'\nunix_socket_directories = '${folder.path}'\nwal_level = replica\n`,
);
asPostgres(join(bin, 'pg_ctl'), '--pgdata', data, '--log', join(folder.path, 'first.log'), '--wait', 'start');
const ask = async <T extends pg.QueryResultRow>(text: string, database = 'brae') => {
  const client = new pg.Client({ connectionString: `postgres://postgres@127.0.0.1:${port}/${database}` });
  await client.connect();
  const { rows } = await client.query<T>(text);
  await client.end();
  return rows;
};
await ask('create database brae', 'postgres');

const database = `postgres://postgres@127.0.0.1:${port}/brae`;
const serve = (): Promise<RunningServer> =>
  startServer(settingsFor(join(folder.path, 'server'), { database, port: webPort, app: '1.0.0' }));
const before = await serve();
const tablets = await Promise.all(
  Array.from({ length: TABLETS }, async (_, at) => newTablet(`t${at}`, before.url)),
);
for (const tablet of tablets) {
  await enrolAt(before, tablet);
  tablet.start();
}
const writers = tablets.map((tablet) =>
  setInterval(() => {
    tablet.log.write(2);
  }, WRITE_MS),
);
const ackedOf = () => tablets.map(({ name, log }) => log.memory.acked[`${name}/e1`] ?? 0);
const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
const heldNow = async () => {
  const rows = await ask<{ tablet: string; seq: string }>(
    "select tablet, max(seq) as seq from entries where epoch = 'e1' group by tablet",
  );
  return tablets.map(({ name }) => Number(rows.find(({ tablet }) => tablet === name)?.seq ?? 0));
};
await waitFor('every tablet', () => ackedOf().every((seq) => seq > 4), 60_000);

let fromMs = performance.now();
const base = asPostgres('sh', join(tools, 'base-backup'), kept).trim().split('\n').at(-1) ?? '';
console.log(`\nbase backup under ${TABLETS} writing tablets, read back: ${seconds(fromMs)}`);
await pause(4_000);
const acked = ackedOf();
const [{ moment = '' } = {}] = await ask<{ moment: string }>('select clock_timestamp()::text as moment');
await pause(4_000);
// One of them is gone for good: what it wrote after the moment is on the others only.
const [gone] = tablets;
clearInterval(writers[0]);
await waitFor(
  'its last',
  () => ackedOf()[0] === gone?.log.entries().filter(({ tablet }) => tablet === gone.name).length,
  60_000,
);
const goneSeq = ackedOf()[0] ?? 0;
await pause(2_000);
await gone?.stop();
for (const writer of writers) clearInterval(writer);
await waitFor(
  'all',
  async () =>
    sum(await heldNow()) ===
    sum(tablets.map(({ log, name }) => log.entries().filter(({ tablet }) => tablet === name).length)),
  60_000,
);
const after = await heldNow();
const faults = tablets.map((tablet) => tablet.status()?.headFault ?? null);
await ask('select pg_switch_wal()');
await pause(1_000);

// The mishap: the servers stop, PostgreSQL is killed, its folder moved away.
await before.stop();
asPostgres(join(bin, 'pg_ctl'), '--pgdata', data, '--mode=immediate', 'stop');
renameSync(data, `${data}-lost`);
fromMs = performance.now();
const restored = spawnSync('sh', [join(tools, 'restore-moment'), base, moment, data, kept], {
  cwd: folder.path,
  encoding: 'utf8',
  ...user,
});
console.log(`${restored.stdout.trim().split('\n').at(-1)}${restored.stderr}   (${seconds(fromMs)})`);
const there = await heldNow();
const missing = acked.filter((seq, at) => (there[at] ?? 0) < seq).length;
console.log(
  `acknowledged before the moment ${sum(acked)}, there ${sum(there)}: tablets of which one lacks ${missing}   (wanted: 0)`,
);
console.log(
  `acknowledged after it and taken back: ${sum(after) - sum(there)}   (wanted: more than 0, else nothing was tried)`,
);
fromMs = performance.now();
const again = await serve();
const isRenamed = again.context.serverEpoch !== before.context.serverEpoch;
console.log(`the log has another name: ${isRenamed}   (wanted: true)`);
const others = tablets.slice(1);
for (const tablet of others) tablet.log.write(1);
for (const tablet of others) tablet.now();
await waitFor(
  'all from the tablets',
  async () => sum(await heldNow()) === sum(after) + others.length,
  120_000,
);
console.log(
  `all that tablets hold is there again after ${seconds(fromMs)}, ${(await heldNow())[0] === goneSeq ? 'also' : 'NOT'} of the one that is gone`,
);
await waitFor(
  'that all are told',
  () => others.every((tablet) => tablet.status()?.rolledBackMs != null),
  60_000,
);
const rows = await ask<{ n: string }>(
  'select count(*) as n from (select 1 from entries group by tablet, epoch, seq having count(*) > 1) as twice',
);
const forked = [...faults, ...others.map((tablet) => tablet.status()?.headFault ?? null)].filter(
  (fault) => fault !== null,
).length;
console.log(
  `tablets told that the log went back: ${others.filter((tablet) => tablet.status()?.rolledBackMs != null).length} of ${others.length}; called a forged log: ${forked}; twice: ${rows[0]?.n}   (wanted: all, 0 and 0)`,
);
console.log(`journal kept: ${readdirSync(join(kept, 'wal')).length} files`);
await Promise.all(others.map((tablet) => tablet.stop()));
await again.stop();
asPostgres(join(bin, 'pg_ctl'), '--pgdata', data, '--mode=immediate', 'stop');
const isGood =
  restored.status === 0 &&
  missing === 0 &&
  isRenamed &&
  forked === 0 &&
  rows[0]?.n === '0' &&
  sum(after) > sum(there);
folder.remove();
process.exit(isGood ? 0 : 1);
