// A year of a plant: a million entries on the server. Exported to CSV as a stream, read by a client that keeps nothing; and traced
// by lot over the network. Wanted: at most 150 MB of memory for the export, and at most 200 ms for the trace of one lot. The
// baselines of the same run: an export that holds all rows at once, and a trace that folds the log at each question, both on a
// part and computed for the whole. BENCH_ENTRIES and BENCH_STORES (sqlite,postgres) change the size; BENCH_FOLDER keeps the
// year, and with BENCH_KEEP_TRACE the index that it has is not made anew.

import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Entry } from '../../shared/log/entry.ts';
import { csvHeader, itemToCsv } from '../../shared/log/export-rows.ts';
import { tracePlaces } from '../../shared/trace/ask.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import { tracedSchema } from '../../shared/wire/messages-trace.ts';
import { enrolTablet } from '../../src/app/sync/enrol.ts';
import { makeTicket } from '../../src/server/codes.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { restoreInto } from '../../src/server/stores/restore.ts';
import { logFile } from '../../src/server/stores/sqlite/open.ts';
import { startPostgres } from '../contract/databases.ts';
import { newTablet, type TestTablet } from '../src/server/tablets.ts';
import { isServerProcess, parameter, quantile, startServerProcess } from './server-process.ts';
import { yearFolder } from './year.ts';

const COUNT = parameter('BENCH_ENTRIES', 1_000_000);
const QUESTIONS = 300;
/** Entries of the part on which the baselines are measured. */
const PART = Math.min(COUNT, 50_000);

const mb = (size: number) => `${(size / 1e6).toFixed(0)} MB`;
const ms = (time: number) => `${time.toFixed(1)} ms`;

/** Reads an answer without keeping it. */
async function drain(response: Response): Promise<{ bytes: number; lines: number }> {
  let bytes = 0;
  let lines = 0;
  if (!response.ok || !response.body) throw new Error(`the export answers ${response.status}`);
  for await (const chunk of response.body as unknown as AsyncIterable<Uint8Array>) {
    bytes += chunk.length;
    for (const byte of chunk) if (byte === 10) lines += 1;
  }
  return { bytes, lines };
}

/** Most memory used so far by the processes that a process started, bytes; NaN where the system does not tell. */
function peakOfChildren(pid: number | undefined): number {
  try {
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ');
    const peaks = children.map(
      (child) => /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${child}/status`, 'utf8'))?.[1],
    );
    return peaks.reduce((sum, peak) => sum + Number(peak) * 1024, 0);
  } catch {
    return Number.NaN;
  }
}

async function askLot(tablet: TestTablet, lot: string) {
  const answer = await tablet.caller.call('/api/trace', tracedSchema, { json: { lot } });
  if (!answer.ok) throw new Error(answer.error.code);
  return answer.value;
}

/** Entries that the trace's index lacks; all of them while its process starts. */
async function behind(tablet: TestTablet): Promise<number> {
  const answer = await tablet.caller.call('/api/trace', tracedSchema, { json: { lot: 'none' } });
  return answer.ok ? answer.value.behind : COUNT;
}

/** Waits until the trace's index holds the whole log; seconds. */
async function caughtUp(tablet: TestTablet): Promise<number> {
  const startMs = performance.now();
  while ((await behind(tablet)) > 0) await new Promise((resolve) => setTimeout(resolve, 200));
  return (performance.now() - startMs) / 1000;
}

async function measure(
  dialect: string,
  place: { readonly folder: string; readonly database: string | null },
) {
  const store = await openStore({ ...place, nowMs: Date.now });
  const rows = await store.page(0, PART);
  const part = rows.map((row) => JSON.parse(row.text) as Entry); // as the store wrote it
  const lots = [
    ...new Set(part.flatMap(({ payload }) => (typeof payload['lot'] === 'string' ? [payload['lot']] : []))),
  ];
  const every = Math.max(1, Math.floor(lots.length / QUESTIONS));
  const asked = lots.filter((_, at) => at % every === 0);
  console.log(`\n${dialect}: ${COUNT} entries`);

  // Made anew, to see how long that takes; the year's folder has it already.
  if (process.env['BENCH_KEEP_TRACE'] === undefined)
    await store.moveTrace({ from: null, to: '{}', put: [], drop: [], stretches: [], serials: [] });
  let server = await startServerProcess(import.meta.url, place);
  const tablet = await newTablet('bench', server.url);
  await enrolTablet(tablet, { code: await server.code(), name: 'Bench' });
  const madeSeconds = await caughtUp(tablet);
  const makingPeak = peakOfChildren(server.child.pid);
  await server.stop();
  server = await startServerProcess(import.meta.url, place);
  const again = await newTablet('again', server.url);
  await enrolTablet(again, { code: await server.code(), name: 'Again' });
  const readSeconds = await caughtUp(again);
  const times: number[] = [];
  let places = 0;
  for (const lot of asked) {
    const startMs = performance.now();
    places += (await askLot(again, lot)).places.length;
    times.push(performance.now() - startMs);
  }
  if (places < asked.length) throw new Error(`${asked.length} lots were found in ${places} places only`);
  console.log(
    `trace of one lot, p50 / p95 / most   ${ms(quantile(times, 0.5))} / ${ms(quantile(times, 0.95))} / ${ms(Math.max(...times))} over ${asked.length} lots in ${places} places   (wanted: at most 200 ms)`,
  );
  let startMs = performance.now();
  const index = traceLog(part);
  tracePlaces(index, { lot: asked[0] ?? '' });
  const foldMs = ((performance.now() - startMs) / part.length) * COUNT;
  console.log(
    `folding the log at each question     ${(foldMs / 1000).toFixed(0)} s (computed from ${part.length})   ratio ${(foldMs / quantile(times, 0.95)).toFixed(0)} x`,
  );
  console.log(
    `the trace's index                    made in ${madeSeconds.toFixed(0)} s behind the work in hand, read at a start in ${readSeconds.toFixed(1)} s; its own process takes at most ${mb(makingPeak)} while it is made, ${mb(peakOfChildren(server.child.pid))} when asked`,
  );

  const { path } = await makeTicket(store, { format: 'csv', from: null, to: null, line: null }, Date.now());
  await store.close();
  const before = await server.peakBytes();
  startMs = performance.now();
  const { bytes, lines } = await drain(
    await fetch(server.url + path, { headers: { 'accept-encoding': 'identity' } }),
  );
  const exportSeconds = (performance.now() - startMs) / 1000;
  const peak = await server.peakBytes();
  await server.stop();
  if (lines !== COUNT + 1) throw new Error(`the export has ${lines} lines`);
  console.log(
    `CSV streamed                         ${exportSeconds.toFixed(1)} s, ${mb(bytes)}, ${(COUNT / exportSeconds).toFixed(0)} entries/s`,
  );
  console.log(
    `server's memory at most              ${mb(peak)}, ${mb(peak - before)} more than before the export   (wanted: at most 150 MB)`,
  );
  const held = process.memoryUsage().rss;
  const text = csvHeader() + part.map((item) => itemToCsv(item)).join('');
  const whole = (process.memoryUsage().rss - held + JSON.stringify(part).length) * (COUNT / part.length);
  console.log(
    `all rows at once                     ${mb(whole)} more (computed from ${mb(text.length)} of text)   ratio ${(whole / Math.max(1e6, peak - before)).toFixed(0)} x`,
  );
}

if (!(await isServerProcess())) {
  const stores = (process.env['BENCH_STORES'] ?? 'sqlite,postgres').split(',');
  const year = await yearFolder(COUNT);
  const folder = mkdtempSync(join(tmpdir(), 'reelward-bench-million-'));
  if (stores.includes('sqlite')) {
    const own = join(folder, 'sqlite');
    cpSync(year.path, own, { recursive: true });
    await measure('SQLite', { folder: own, database: null });
  }
  if (stores.includes('postgres')) {
    const postgres = await startPostgres(true);
    const place = { folder: join(folder, 'postgres'), database: await postgres.newDatabase() };
    await restoreInto({ ...place, file: join(year.path, logFile), replace: false, nowMs: Date.now });
    await measure('PostgreSQL', place);
    await postgres.stop();
  }
  year.remove();
  rmSync(folder, { recursive: true, force: true });
  process.exit();
}
