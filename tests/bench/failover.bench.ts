// No single computer to lose: etcd, two PostgreSQL under Patroni, three servers behind HAProxy and a plant's tablets on this computer; then, over and
// over, the primary, a server and the proxy are killed, a server and the synchronous copy stand still, and a node is cut off without a word. Wanted: no acknowledged entry lost, none there
// twice, every tablet acknowledged again within 15 s. Each tablet writes one entry every two seconds.
// BENCH_TABLETS (60) and BENCH_ROUNDS (1: each of the six once) change the size; BENCH_ONLY names some of them.

import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { entryId } from '../../shared/log/entry.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { freePort, newFolder } from '../contract/databases.ts';
import {
  type Cluster,
  installCluster,
  isPrimary,
  startCluster,
  startProxy,
  waitFor,
} from './failover-cluster.ts';
import { type FleetTablet, newCounts, newFleetTablet } from './fleet-tablet.ts';
import { isServerProcess, parameter, type ServerProcess, startServerProcess } from './server-process.ts';

const TABLETS = parameter('BENCH_TABLETS', 60);
const ROUNDS = parameter('BENCH_ROUNDS', 1);
const WRITE_MS = 2_000;
/** How long something stands still, ms. */
const STILL_MS = 15_000;
const WANTED_MS = 15_000;

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

interface Stage {
  readonly cluster: Cluster;
  readonly servers: ServerProcess[];
  readonly proxy: { readonly kill: () => void; readonly start: () => void };
  readonly again: (at: number) => Promise<void>;
}

/** What is done, and what follows before the next is. */
const events: Readonly<Record<string, (stage: Stage) => Promise<(() => Promise<void>) | 'not-run'>>> = {
  'primary killed': async ({ cluster }) => {
    const primary = await nodeOf(cluster, isPrimary);
    await primary.kill();
    return async () => primary.start();
  },
  'server killed': async ({ servers, again }) => {
    await servers[0]?.kill();
    return () => again(0);
  },
  'server stands still': async ({ servers }) => {
    servers[1]?.child.kill('SIGSTOP');
    await pause(STILL_MS);
    return async () => void servers[1]?.child.kill('SIGCONT');
  },
  'copy stands still': async ({ cluster }) => {
    const copy = await nodeOf(cluster, (role) => role === 'replica');
    copy.pause();
    await pause(STILL_MS);
    return async () => copy.resume();
  },
  'proxy killed': async ({ proxy }) => {
    proxy.kill();
    await pause(STILL_MS / 5);
    proxy.start();
    return async () => undefined;
  },
  // The copy or the primary, as it comes: cut off from the other, from etcd and from all servers, without a word.
  'node cut off': async ({ cluster }) => {
    const node = cluster.nodes.find(({ network }) => network !== null);
    if (!node) return 'not-run';
    console.log(`${node.name} is the ${await node.role()}`);
    node.network?.cut();
    await pause(2 * STILL_MS);
    return async () => node.network?.join();
  },
};

async function nodeOf({ nodes }: Cluster, is: (role: string | null) => boolean) {
  for (const node of nodes) if (is(await node.role())) return node;
  throw new Error('no such node just now');
}

/** Writes an entry on each tablet, spread over time, until stopped. */
function keepWriting(tablets: readonly FleetTablet[]): () => void {
  const timers = tablets.map((tablet, at) => {
    let timer = setTimeout(
      function next() {
        tablet.write();
        timer = setTimeout(next, WRITE_MS);
      },
      (at * WRITE_MS) / tablets.length,
    );
    return () => clearTimeout(timer);
  });
  return () => {
    for (const stop of timers) stop();
  };
}

/** How long each tablet waits for its next acknowledgement from now on, ms: resolves when the last has one. */
async function untilBusy(tablets: readonly FleetTablet[]): Promise<number> {
  const before = tablets.map(({ acked }) => acked.length);
  return waitFor(
    'every tablet to be acknowledged again',
    () => tablets.every(({ acked }, at) => acked.length > (before[at] ?? 0) + 1),
    120_000,
  );
}

async function bench(): Promise<void> {
  installCluster();
  const folder = newFolder();
  // PostgreSQL's own user has to reach what lies inside.
  chmodSync(folder.path, 0o755);
  const cluster = await startCluster(join(folder.path, 'cluster'));
  const database = cluster.url('brae');
  const admin = new pg.Client({
    connectionString: cluster.url('postgres', await nodeOf(cluster, isPrimary)),
  });
  await admin.connect();
  await admin.query('create database brae');
  await admin.end();

  const ports = [await freePort(), await freePort(), await freePort()];
  const serve = (at: number) =>
    startServerProcess(import.meta.url, {
      folder: join(folder.path, `server-${at}`),
      database,
      port: ports[at] ?? 0,
    });
  const servers = [await serve(0), await serve(1), await serve(2)];
  const again = async (at: number) => {
    servers[at] = await serve(at);
  };
  const proxy = await startProxy(join(folder.path, 'cluster'), ports);
  const store = await openStore({ folder: folder.path, database, nowMs: Date.now });
  const counts = { ...newCounts(), forgiving: true };
  const sent = new Map<string, number>();
  const tablets = Array.from({ length: TABLETS }, (_, at) =>
    newFleetTablet({ name: `t${at}`, port: () => proxy.port, counts, sent }),
  );
  for (const { name, key } of tablets)
    await store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
  const stopWriting = keepWriting(tablets);
  await untilBusy(tablets);

  console.log(`\n${TABLETS} tablets, an entry every ${WRITE_MS / 1000} s each, ${ROUNDS} rounds`);
  let longest = 0;
  const only = process.env['BENCH_ONLY']?.split(',');
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [name, act] of Object.entries(events)) {
      if (only && !only.includes(name)) continue;
      const fromMs = performance.now();
      const busy = untilBusy(tablets);
      const after = await act({ cluster, servers, proxy, again });
      if (after === 'not-run') {
        console.log(`${name.padEnd(22)} NOT RUN: no network of its own could be made`);
        await busy;
        continue;
      }
      const tookMs = await busy;
      longest = Math.max(longest, tookMs);
      console.log(
        `${name.padEnd(22)} all busy again after ${(tookMs / 1000).toFixed(1)} s   (wanted: at most 15 s)`,
      );
      await after();
      await waitFor('both databases', () => isWhole(cluster), 120_000);
      await untilBusy(tablets);
      console.log(`${''.padEnd(22)} whole again after ${((performance.now() - fromMs) / 1000).toFixed(1)} s`);
    }
  stopWriting();
  await waitFor(
    'all to be acknowledged',
    () => tablets.every(({ waiting }) => waiting.length === 0),
    120_000,
  );
  const acked = tablets.flatMap((tablet) => tablet.acked);
  const found = new Map<string, number>();
  const names = new Map<string, number>();
  for (let pos = 0; ; ) {
    const rows = await store.sealedPage(pos, 5_000);
    for (const row of rows) {
      found.set(row.hash, (found.get(row.hash) ?? 0) + 1);
      names.set(entryId(row), (names.get(entryId(row)) ?? 0) + 1);
    }
    const last = rows.at(-1);
    if (!last) break;
    pos = last.pos;
  }
  const lost = acked.filter((hash) => !found.has(hash)).length;
  const twice = [...names.values()].filter((count) => count > 1).length;
  console.log(`acknowledged ${acked.length}: lost ${lost}, twice ${twice}   (wanted: 0 and 0)`);
  console.log(
    `longest until every tablet was busy again: ${(longest / 1000).toFixed(1)} s   (wanted: at most ${WANTED_MS / 1000} s)`,
  );
  for (const tablet of tablets) tablet.stop();
  await store.close();
  for (const server of servers) await server.kill();
  proxy.kill();
  await cluster.stop();
  folder.remove();
  process.exit(lost + twice > 0 || longest > WANTED_MS ? 1 : 0);
}

async function isWhole({ nodes }: Cluster): Promise<boolean> {
  const roles = await Promise.all(nodes.map((node) => node.role()));
  const syncs = await Promise.all(nodes.map((node) => node.isSync()));
  return roles.some(isPrimary) && syncs.some(Boolean);
}

if (!(await isServerProcess())) await bench();
