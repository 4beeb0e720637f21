// How long does a weekend's backlog of one tablet take? The app's own sync over loopback into a server process with durable
// SQLite, every entry hashed and the head of every page, which the tablet signs as it sends it, checked before its answer, against PouchDB
// replicating the same documents between two in-memory databases in the same run. How long the walk along the log takes afterwards is told
// beside: it has nothing left to check. Wanted: 50 000 entries within 20 s, and at least 5 times faster than the baseline.

import { createRequire } from 'node:module';
import path from 'node:path';
import { entryId } from '../../shared/log/entry.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { newFolder } from '../contract/databases.ts';
import { makeChain } from '../contract/entries.ts';
import { newTablet, until } from '../src/server/tablets.ts';
import {
  cpuSeconds,
  isServerProcess,
  parameter,
  startServerProcess,
  verdictPayload,
} from './server-process.ts';

/** The few calls that are made of the database compared with, which stands in this folder's own list of packages. */
interface Baseline {
  bulkDocs(docs: readonly object[]): Promise<unknown>;
  info(): Promise<{ readonly doc_count: number }>;
  readonly replicate: { to(target: Baseline, options: object): Promise<unknown> };
}
interface BaselineClass {
  new (name: string, options: { readonly adapter: string }): Baseline;
  plugin(plugin: unknown): void;
}

/** Seconds that replicating the documents takes. */
async function baseline(docs: readonly object[]): Promise<number> {
  const require = createRequire(path.resolve('tests/bench/package.json'));
  const PouchDB = require('pouchdb') as BaselineClass;
  PouchDB.plugin(require('pouchdb-adapter-memory'));
  const source = new PouchDB('bench-source', { adapter: 'memory' });
  const target = new PouchDB('bench-target', { adapter: 'memory' });
  for (let at = 0; at < docs.length; at += 1_000) await source.bulkDocs(docs.slice(at, at + 1_000));
  const startMs = performance.now();
  await source.replicate.to(target, { batch_size: 500, batches_limit: 10 });
  const seconds = (performance.now() - startMs) / 1000;
  const { doc_count } = await target.info();
  if (doc_count !== docs.length) throw new Error(`the baseline wrote ${doc_count} of ${docs.length}`);
  return seconds;
}

async function main(): Promise<void> {
  const count = parameter('BENCH_ENTRIES', 50_000);
  const folder = newFolder();
  const server = await startServerProcess(import.meta.url, { folder: folder.path });
  const tablet = await newTablet('bench', server.url);
  await enrolTablet(tablet, { code: await server.code(), name: 'Bench' });
  const entries = makeChain({ tablet: 'bench', count, payload: verdictPayload });
  await tablet.log.takeIn(entries);

  const before = { tablet: cpuSeconds(), server: await server.cpuSeconds() };
  const startMs = performance.now();
  tablet.start();
  await until('the backlog', () => tablet.log.memory.acked['bench/e1'] === count, 300_000);
  const seconds = (performance.now() - startMs) / 1000;
  const cpu = { tablet: cpuSeconds() - before.tablet, server: (await server.cpuSeconds()) - before.server };
  await tablet.stop();
  await server.allSigned();
  const signedSeconds = (performance.now() - startMs) / 1000;
  const signedCpu = (await server.cpuSeconds()) - before.server;
  const health = (await (await fetch(`${server.url}/health`)).json()) as { entries: number };
  if (health.entries !== count) throw new Error(`the server holds ${health.entries} of ${count}`);
  const peak = await server.peakBytes();
  await server.stop();
  folder.remove();

  const bytes = JSON.stringify(entries).length;
  const docs = entries.map((entry) => ({ _id: entryId(entry), ...entry }));
  const pouchBefore = cpuSeconds();
  const pouch = await baseline(docs);
  const pouchCpu = cpuSeconds() - pouchBefore;
  console.log(`entries                         ${count} (${(bytes / count).toFixed(0)} bytes each as JSON)`);
  console.log(
    `sync to durable SQLite          ${seconds.toFixed(2)} s   ${(count / seconds).toFixed(0)} entries/s   (wanted: at most ${(20 * count) / 50_000} s)`,
  );
  console.log(
    `until every signature is checked ${signedSeconds.toFixed(2)} s   (server's processor time ${signedCpu.toFixed(2)} s in all)`,
  );
  console.log(`server's memory at most         ${(peak / 1e6).toFixed(0)} MB`);
  console.log(
    `PouchDB, memory to memory       ${pouch.toFixed(2)} s   ${(count / pouch).toFixed(0)} entries/s`,
  );
  console.log(
    `processor time                  server ${cpu.server.toFixed(2)} s, tablet ${cpu.tablet.toFixed(2)} s, PouchDB (filling included) ${pouchCpu.toFixed(2)} s`,
  );
  console.log(`ratio                           ${(pouch / seconds).toFixed(1)} x   (wanted: at least 5 x)`);
}

if (!(await isServerProcess())) {
  await main();
  process.exit(0);
}
