// What a plant costs the computers that serve it: processor time, memory, journal, disk and connections, by figures that a busy machine bends least. One server on PostgreSQL, its
// tablets speaking the real wire. The server's trace works in a process of its own and is not counted. BENCH_TABLETS (60), BENCH_ENTRIES (6000).

import { readdirSync, readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { openStore } from '../../src/server/stores/open.ts';
import { newFolder, startPostgres } from '../contract/databases.ts';
import { waitFor } from './failover-cluster.ts';
import { newCounts, newFleetTablet } from './fleet-tablet.ts';
import { isServerProcess, parameter, startServerProcess } from './server-process.ts';

const TABLETS = parameter('BENCH_TABLETS', 60);
const ENTRIES = parameter('BENCH_ENTRIES', 6_000);
/** Ticks of a processor in a second, as Linux counts them for people. */
const TICKS = 100;

/** Processor time of PostgreSQL with all that it started, and what its processes hold for themselves. */
function costOfPostgres(postmaster: number): {
  readonly seconds: number;
  readonly privateBytes: readonly number[];
} {
  const stat = (pid: number | string) =>
    readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  const children = readdirSync('/proc').filter((pid) => {
    try {
      return /^\d+$/.test(pid) && Number(stat(pid)[1]) === postmaster;
    } catch {
      return false; // gone meanwhile
    }
  });
  const ticks = (fields: readonly string[], some: readonly number[]) =>
    some.reduce((sum, at) => sum + Number(fields[at] ?? 0), 0);
  let all = ticks(stat(postmaster), [11, 12, 13, 14]);
  const privateBytes: number[] = [];
  for (const pid of children) {
    try {
      all += ticks(stat(pid), [11, 12]);
      const told = readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8');
      const own = [...told.matchAll(/^Private_(?:Clean|Dirty): +(\d+) kB$/gm)];
      privateBytes.push(own.reduce((sum, [, kilobytes]) => sum + 1024 * Number(kilobytes), 0));
    } catch {
      // gone meanwhile
    }
  }
  return { seconds: all / TICKS, privateBytes };
}

async function bench(): Promise<void> {
  const folder = newFolder();
  const postgres = await startPostgres(true);
  const database = await postgres.newDatabase();
  const store = await openStore({ folder: folder.path, database, nowMs: Date.now });
  const client = new pg.Client({ connectionString: database });
  await client.connect();
  const one = async (text: string) => Number((await client.query<{ n: string }>(text)).rows[0]?.n);
  const place =
    (await client.query<{ data_directory: string }>('show data_directory')).rows[0]?.data_directory ?? '';
  const postmaster = Number(readFileSync(join(place, 'postmaster.pid'), 'utf8').split('\n')[0]);
  const before = await one('select count(*) as n from pg_stat_activity where datname = current_database()');
  const server = await startServerProcess(import.meta.url, { folder: folder.path, database });
  const counts = { ...newCounts(), forgiving: true };
  const sent = new Map<string, number>();
  const tablets = Array.from({ length: TABLETS }, (_, at) =>
    newFleetTablet({ name: `t${at}`, port: () => server.port, counts, sent }),
  );
  for (const { name, key } of tablets)
    await store.enrolTablet({ tablet: name, name, publicKey: key.publicKey }, Date.now());
  const connections = async () =>
    (await one('select count(*) as n from pg_stat_activity where datname = current_database()')) - before;
  const idle = await connections();
  let most = idle;

  const look = async () => ({
    server: await server.cpuSeconds(),
    postgres: costOfPostgres(postmaster).seconds,
    journal: await one("select pg_current_wal_lsn() - '0/0'::pg_lsn as n"),
    disk: await one('select pg_database_size(current_database()) as n'),
  });
  /** Writes so many entries in all, each tablet `atOnce` at a time and the next when those are acknowledged; 0: one tablet after the other, one entry. */
  const write = async (entries: number, atOnce: number) => {
    for (let written = 0; atOnce === 0 && written < entries; written += 1) {
      const tablet = tablets[written % TABLETS];
      tablet?.write();
      await waitFor('it', () => tablet?.waiting.length === 0, 120_000);
    }
    if (atOnce === 0) return server.allSigned();
    for (let written = 0; written < entries; written += TABLETS * atOnce) {
      for (const tablet of tablets) for (let count = 0; count < atOnce; count += 1) tablet.write();
      await waitFor('all', () => tablets.every(({ waiting }) => waiting.length === 0), 120_000);
      most = Math.max(most, await connections());
    }
    await server.allSigned();
  };
  const measure = async (what: string, entries: number, atOnce: number) => {
    const from = await look();
    const count = atOnce === 0 ? entries : Math.ceil(entries / (TABLETS * atOnce)) * TABLETS * atOnce;
    await write(entries, atOnce);
    const to = await look();
    const each = (key: keyof typeof from, factor: number) => ((to[key] - from[key]) * factor) / count;
    console.log(
      `${what.padEnd(34)} ${count} entries: server ${each('server', 1e3).toFixed(2)} ms, PostgreSQL ${each('postgres', 1e3).toFixed(2)} ms of a processor, journal ${each('journal', 1).toFixed(0)} bytes, disk ${each('disk', 1).toFixed(0)} bytes an entry`,
    );
    return { server: each('server', 1e3) };
  };
  console.log(`\n${TABLETS} tablets, load ${loadavg()[0]?.toFixed(1)}`);
  await write(TABLETS * 2, 1);
  await measure('one entry a page, all at once', ENTRIES / 3, 1);
  const alone = await measure('one by one, nobody listens', ENTRIES / 20, 0);
  await measure('a backlog, 200 a page', ENTRIES * 2, 200);
  for (const tablet of tablets) tablet.listen();
  // A listener is one where it got its first frame; entries until then tell nothing.
  await write(TABLETS * 4, 1);
  const heard = await measure(`one by one, ${TABLETS} listen`, ENTRIES / 20, 0);
  console.log(
    `to each that listens: ${((1e3 * (heard.server - alone.server)) / TABLETS).toFixed(1)} µs of a processor an entry`,
  );
  const { privateBytes } = costOfPostgres(postmaster);
  const each = privateBytes.reduce((sum, bytes) => sum + bytes, 0) / privateBytes.length;
  console.log(
    `server's memory at most ${((await server.peakBytes()) / 1e6).toFixed(0)} MB; connections ${idle} idle, ${most} at most, its trace's included; a process of PostgreSQL's has ${(each / 1e6).toFixed(1)} MB for itself`,
  );
  for (const tablet of tablets) tablet.stop();
  await server.stop();
  await client.end();
  await store.close();
  await postgres.stop();
  folder.remove();
  process.exit(0);
}

if (!(await isServerProcess())) await bench();
