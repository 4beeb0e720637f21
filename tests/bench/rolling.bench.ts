// Another version on the servers of a plant, under writing tablets: three servers of the version before behind HAProxy on one PostgreSQL, replaced by
// three of this one, both as they are built. Whether one after the other or all at once is asked of this version's own `serve check`.
// Wanted: no acknowledged entry lost, none there twice, no push refused but with 503, and no tablet waiting for longer than 15 s.
// REV (HEAD~50): the version before, a commit of this repository. BENCH_TABLETS (60); half of them speak the wire of before, half that of now.

import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { wireVersion } from '../../shared/wire/version.ts';
import { freePort, newFolder, startPostgres } from '../contract/databases.ts';
import { installCluster, startProxy, waitFor } from './failover-cluster.ts';
import { type FleetTablet, newCounts, newFleetTablet } from './fleet-tablet.ts';
import { parameter } from './server-process.ts';

const REV = process.env['REV'] ?? 'HEAD~50';
const TABLETS = parameter('BENCH_TABLETS', 60);
const WRITE_MS = 2_000;
const WANTED_MS = 15_000;
const build = ['vite', 'build', '--config', 'vite.node.config.ts', '--logLevel', 'warn'];

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
const git = (...args: readonly string[]) => execFileSync('git', [...args], { maxBuffer: 2 ** 30 });

/** Builds the program of another commit; returns its command. */
function buildBefore(folder: string): string {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  execFileSync('tar', ['-x', '-C', folder], { input: git('archive', REV) });
  const isSame = git('show', `${REV}:package-lock.json`).equals(readFileSync('package-lock.json'));
  if (isSame) symlinkSync(join(process.cwd(), 'node_modules'), join(folder, 'node_modules'));
  else execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: folder, stdio: 'inherit' });
  execFileSync('npx', build, { cwd: folder, stdio: 'inherit' });
  return join(folder, 'dist', 'cli', 'reelward.js');
}

/** Builds this tree's; returns its command. */
function buildNow(folder: string): string {
  execFileSync('npx', [...build, '--outDir', folder, '--emptyOutDir'], { stdio: 'inherit' });
  return join(folder, 'reelward.js');
}

interface Served {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  readonly told: () => string;
}

function serve(command: string, place: readonly string[]): Served {
  const child = spawn(process.execPath, [command, 'serve', ...place], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let text = '';
  child.stderr?.setEncoding('utf8').on('data', (chunk: string) => {
    text += chunk;
  });
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  return { child, ended, told: () => text };
}

const isUp = (port: number) =>
  fetch(`http://127.0.0.1:${port}/health`, { signal: AbortSignal.timeout(1_000) }).then(
    ({ ok }) => ok,
    () => false,
  );

/** Writes an entry on each tablet every two seconds; the longest that one waited so far, ms. */
function keepWriting(tablets: readonly FleetTablet[], sent: ReadonlyMap<string, number>) {
  let longestMs = 0;
  const writers = tablets.map((tablet) => setInterval(tablet.write, WRITE_MS));
  const look = setInterval(() => {
    for (const { waiting } of tablets) {
      const fromMs = sent.get(waiting[0]?.hash ?? '');
      if (fromMs !== undefined) longestMs = Math.max(longestMs, performance.now() - fromMs);
    }
  }, 50);
  return {
    longestMs: () => longestMs,
    stop: () => {
      for (const timer of writers) clearInterval(timer);
    },
    end: () => clearInterval(look),
  };
}

installCluster();
const builds = join(process.cwd(), '.tmp', 'rolling');
const rev = git('rev-parse', '--short', REV).toString().trim();
const before = buildBefore(join(builds, 'before'));
const now = buildNow(join(builds, 'now'));
const wireBefore = Number(
  /wireVersion = (\d+)/.exec(git('show', `${REV}:shared/wire/version.ts`).toString())?.[1],
);

const folder = newFolder();
const postgres = await startPostgres(true);
const database = await postgres.newDatabase();
const client = new pg.Client({ connectionString: database });
await client.connect();
const schema = async () =>
  (await client.query<{ value: string }>("select value from meta where key = 'schema'")).rows[0]?.value;
const ports = [await freePort(), await freePort(), await freePort()];
const place = (at: number) => [
  '--database',
  database,
  '--data',
  join(folder.path, `s${at}`),
  '--port',
  `${ports[at]}`,
];
const start = async (command: string, at: number) => {
  const served = serve(command, place(at));
  const isGone = served.ended.then(() => true);
  await waitFor(
    `server ${at}`,
    async () => {
      if (await Promise.race([isGone, pause(1)])) throw new Error(`server ${at} ended: ${served.told()}`);
      return isUp(ports[at] ?? 0);
    },
    60_000,
  );
  return served;
};
const servers = [await start(before, 0), await start(before, 1), await start(before, 2)];
const hasReady = (await fetch(`http://127.0.0.1:${ports[0]}/ready`)).ok;
const proxy = await startProxy(folder.path, ports, hasReady ? '/ready' : '/health');
const counts = { ...newCounts(), forgiving: true };
const sent = new Map<string, number>();
const refused = new Map<string, number>();
const tablets = Array.from({ length: TABLETS }, (_, at) =>
  newFleetTablet({
    name: `t${at}`,
    port: () => proxy.port,
    counts,
    sent,
    wire: at % 2 === 0 ? wireBefore : wireVersion,
    onRefused: (status, code) => {
      const name = `${status} ${code}`.trim();
      refused.set(name, (refused.get(name) ?? 0) + 1);
    },
  }),
);
for (const { name, key } of tablets) {
  await client.query('insert into tablets (tablet, name, public_key, enrolled_ms) values ($1, $1, $2, $3)', [
    name,
    key.publicKey,
    Date.now(),
  ]);
  await client.query('insert into tablet_keys (tablet, public_key, since_ms) values ($1, $2, $3)', [
    name,
    key.publicKey,
    Date.now(),
  ]);
}
console.log(
  `\nfrom ${rev} (schema ${await schema()}, wire ${wireBefore}) to this tree (wire ${wireVersion}), ${TABLETS} tablets`,
);
const writing = keepWriting(tablets, sent);
const toldRefused = () => [...refused].map(([name, count]) => `${count} × ${name}`).join(', ') || 'none';
const allAcked = () => tablets.every(({ acked }) => acked.length > 2);
if (wireBefore === wireVersion)
  await waitFor('every tablet', allAcked, 60_000).catch((error: unknown) => {
    console.error(`refused: ${toldRefused()}\n${servers.map(({ told }) => told()).join('')}`);
    throw error;
  });
else await pause(6_000);

const checked = spawnSync(process.execPath, [now, 'serve', 'check', ...place(0)], { encoding: 'utf8' });
const words = checked.stdout.split('\n').find((line) => line.includes(' store: ')) ?? '';
console.log(words);
const isRolling = !words.includes('stop all of them first');
if (!isRolling) {
  const early = serve(now, [...place(0).slice(0, 2), '--data', join(folder.path, 'early'), '--port', '0']);
  console.log(`started beside them it ends with ${await early.ended}: ${early.told().trim()}`);
}
const stop = async (at: number) => {
  servers[at]?.child.kill('SIGTERM');
  await servers[at]?.ended;
};
if (!isRolling) for (const at of ports.keys()) await stop(at);
for (const at of ports.keys()) {
  if (isRolling) await stop(at);
  const fromMs = performance.now();
  servers[at] = await start(now, at);
  console.log(
    `server ${at + 1} of this version serves after ${((performance.now() - fromMs) / 1000).toFixed(1)} s, schema ${await schema()}`,
  );
  await pause(5_000);
}
writing.stop();
await waitFor('all to be acknowledged', () => tablets.every(({ waiting }) => waiting.length === 0), 120_000);
writing.end();
for (const tablet of tablets) tablet.stop();

const { rows } = await client.query<{ tablet: string; seq: string; hash: string }>(
  'select tablet, seq, hash from entries',
);
const found = new Set(rows.map(({ hash }) => hash));
const acked = tablets.flatMap((tablet) => tablet.acked);
const lost = acked.filter((hash) => !found.has(hash)).length;
const twice = rows.length - new Set(rows.map(({ tablet, seq }) => `${tablet}/${seq}`)).size;
const isForgiven = (name: string) =>
  name.startsWith('503') || (wireBefore !== wireVersion && name.includes('wire-too-new'));
const unwanted = [...refused].filter(([name]) => !isForgiven(name));
console.log(`acknowledged ${acked.length}: lost ${lost}, twice ${twice}   (wanted: 0 and 0)`);
console.log(`refused and sent again: ${toldRefused()}`);
console.log(`longest that an entry waited: ${(writing.longestMs() / 1000).toFixed(1)} s`);
for (const at of ports.keys()) await stop(at);
const faults = servers.flatMap(({ told }) =>
  told()
    .split('\n')
    .filter((line) => line.includes('"level":50')),
);
console.log(
  `faults in the logs of this version's servers: ${faults.length}   (wanted: 0)${faults.length > 0 ? `\n${faults.slice(0, 3).join('\n')}` : ''}`,
);
proxy.kill();
await client.end();
await postgres.stop();
folder.remove();
if (existsSync(builds)) rmSync(builds, { recursive: true });
process.exit(
  lost + twice + unwanted.length + faults.length > 0 ||
    (isRolling && writing.longestMs() > WANTED_MS && wireBefore === wireVersion)
    ? 1
    : 0,
);
