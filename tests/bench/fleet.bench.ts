// A plant's worth of tablets: 300, an entry a second each, every one listening to all others, against each store. Then the
// server is killed again and again under that load. Wanted: 95 % of appends within 50 ms, 95 % of live entries within 250 ms,
// no error; after the kills every acknowledged entry is there, once. The baseline of the same run is a single tablet.
// BENCH_TABLETS, BENCH_SECONDS, BENCH_KILLS and BENCH_STORES (sqlite,postgres) change the size.

import { join } from 'node:path';
import type { Entry } from '../../shared/log/entry.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { freePort, newFolder, startPostgres } from '../contract/databases.ts';
import { type FleetTablet, newCounts, newFleetTablet, type SentTimes } from './fleet-tablet.ts';
import {
  cpuSeconds,
  isServerProcess,
  parameter,
  quantile,
  type ServerProcess,
  startServerProcess,
} from './server-process.ts';

const TABLETS = parameter('BENCH_TABLETS', 300);
const SECONDS = parameter('BENCH_SECONDS', 60);
const KILLS = parameter('BENCH_KILLS', 20);
const WARM_SECONDS = 3;

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** Each writes once a second, spread over the second. */
async function load(tablets: readonly FleetTablet[], seconds: number): Promise<void> {
  const startMs = performance.now();
  const turns = tablets.map((tablet, at) => ({ tablet, atMs: startMs + (at * 1000) / tablets.length }));
  const endMs = startMs + seconds * 1000;
  while (performance.now() < endMs) {
    const nowMs = performance.now();
    for (const turn of turns) {
      if (turn.atMs > nowMs) continue;
      turn.tablet.write();
      turn.atMs += 1000;
    }
    await pause(5);
  }
}

function liveQuantile(histogram: Uint32Array, share: number): number {
  const total = histogram.reduce((sum, count) => sum + count, 0);
  let seen = 0;
  for (const [ms, count] of histogram.entries()) {
    seen += count;
    if (seen >= share * total) return ms;
  }
  return Number.NaN;
}

async function settle(tablets: readonly FleetTablet[]): Promise<void> {
  const endMs = performance.now() + 60_000;
  while (tablets.some((tablet) => tablet.waiting.length > 0)) {
    if (performance.now() > endMs) throw new Error('the fleet does not settle');
    await pause(50);
  }
}

async function measure(count: number, seconds: number, place: Place) {
  const counts = newCounts();
  const sent: SentTimes = new Map();
  let server: ServerProcess | null = null;
  const port = await freePort();
  const tablets = Array.from({ length: count }, (_, at) =>
    newFleetTablet({ name: `${place.prefix}${at}`, port: () => port, counts, sent }),
  );
  const store = await openStore({ ...place, nowMs: Date.now });
  for (const { name, key } of tablets)
    await store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
  await store.close();
  server = await startServerProcess(import.meta.url, { ...place, port });
  for (const tablet of tablets) {
    tablet.listen();
    await pause(5);
  }
  counts.forgiving = true;
  await load(tablets, WARM_SECONDS);
  counts.forgiving = false;
  const before = { server: await server.cpuSeconds(), fleet: cpuSeconds() };
  await load(tablets, seconds);
  const used = { server: (await server.cpuSeconds()) - before.server, fleet: cpuSeconds() - before.fleet };
  await settle(tablets);
  return { counts, tablets, server, port, used };
}

interface Place {
  readonly folder: string;
  readonly database: string | null;
  readonly prefix: string;
}

async function run(dialect: string, newPlace: (prefix: string) => Promise<Place>): Promise<void> {
  const alone = await measure(1, Math.min(10, SECONDS), await newPlace('one'));
  for (const tablet of alone.tablets) tablet.stop();
  await alone.server.stop();
  const place = await newPlace('t');
  const fleet = await measure(TABLETS, SECONDS, place);
  const { counts, tablets } = fleet;
  const peak = await fleet.server.peakBytes();
  const show = (ms: number) => `${ms.toFixed(1)} ms`;
  const base = quantile(alone.counts.appendMs, 0.95);
  const p95 = quantile(counts.appendMs, 0.95);
  console.log(`\n${dialect}: ${TABLETS} tablets, an entry a second each, ${SECONDS} s`);
  console.log(`appends                  ${counts.appendMs.length}, errors ${counts.errors}   (wanted: 0)`);
  console.log(
    `append p50 / p95 / p99   ${show(quantile(counts.appendMs, 0.5))} / ${show(p95)} / ${show(quantile(counts.appendMs, 0.99))}   (wanted: p95 at most 50 ms)`,
  );
  console.log(`one tablet alone, p95    ${show(base)}   ratio ${(p95 / base).toFixed(1)} x`);
  const live = counts.liveMs;
  console.log(
    `live p50 / p95 / p99     ${liveQuantile(live, 0.5)} / ${liveQuantile(live, 0.95)} / ${liveQuantile(live, 0.99)} ms over ${live.reduce((sum, n) => sum + n, 0)} deliveries   (wanted: p95 at most 250 ms)`,
  );
  const { used } = fleet;
  console.log(
    `processor, of one core    server ${((100 * used.server) / SECONDS).toFixed(0)} %, tablets ${((100 * used.fleet) / SECONDS).toFixed(0)} %`,
  );
  console.log(`server's memory at most  ${(peak / 1e6).toFixed(0)} MB`);

  counts.forgiving = true;
  let { server } = fleet;
  for (let kill = 0; kill < KILLS; kill += 1) {
    await load(tablets, 0.5 + Math.random());
    await server.kill();
    server = await startServerProcess(import.meta.url, { ...place, port: fleet.port });
  }
  await load(tablets, 1);
  await settle(tablets);
  for (const tablet of tablets) tablet.stop();
  await server.stop();
  const store = await openStore({ ...place, nowMs: Date.now });
  const held = new Map<string, number>();
  for (let pos = 0; ; ) {
    const rows = await store.page(pos, 5_000);
    for (const row of rows) {
      const { hash } = JSON.parse(row.text) as Entry; // as the store wrote it
      held.set(hash, (held.get(hash) ?? 0) + 1);
      pos = row.pos;
    }
    if (rows.length === 0) break;
  }
  await store.close();
  const acked = tablets.flatMap((tablet) => tablet.acked);
  const lost = acked.filter((hash) => !held.has(hash)).length;
  const twice = [...held.values()].filter((times) => times > 1).length;
  console.log(
    `killed ${KILLS} times          acknowledged ${acked.length}, held ${held.size}, lost ${lost}, twice ${twice}   (wanted: 0 and 0)`,
  );
  if (lost > 0 || twice > 0) process.exitCode = 1;
}

if (!(await isServerProcess())) {
  const stores = (process.env['BENCH_STORES'] ?? 'sqlite,postgres').split(',');
  const root = newFolder();
  let made = 0;
  if (stores.includes('sqlite')) {
    await run('SQLite', async (prefix) => ({
      folder: join(root.path, `s${++made}`),
      database: null,
      prefix,
    }));
  }
  if (stores.includes('postgres')) {
    const postgres = await startPostgres(true);
    await run('PostgreSQL', async (prefix) => ({
      folder: join(root.path, `p${++made}`),
      database: await postgres.newDatabase(),
      prefix,
    }));
    await postgres.stop();
  }
  root.remove();
  process.exit();
}
