// Four weeks without a server: how large does a link's folder grow, how soon does it listen again, and how long does it take to bring all of it
// when the server is back, with how much memory? A station counts a panel every twenty seconds day and night. BENCH_DAYS: how many are played.

import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { startLink } from '../../src/link/link.ts';
import { keepSmall } from '../../src/link/small.ts';
import { bytesIn, playAway } from '../src/link/away.ts';

const ROLE = 'link-process';
const DAYS = Number(process.env['BENCH_DAYS'] ?? 28);

/** In the child: a link on that folder. */
async function beLink(server: string, code: string, data: string): Promise<void> {
  keepSmall();
  const source = { kind: 'counter' as const, listen: '127.0.0.1:0', secret: 'a secret of the bench' };
  const link = await startLink(
    { server, code, data, stations: [{ station: 'exit', line: 'L1', machine: null, at: 'out', source }] },
    { version: 'bench', say: (line) => console.error(line) },
  );
  process.on('message', (ask) => {
    if (ask === 'peak') process.send?.({ peak: process.resourceUsage().maxRSS * 1024 });
    if (ask === 'stop') void link.stop().then(() => process.exit(0));
  });
  process.on('disconnect', () => process.exit(1));
  process.send?.({ listens: performance.now() });
}

function told(child: ChildProcess, key: string, ask: string | null = null): Promise<number> {
  return new Promise((resolve) => {
    const take = (message: Record<string, number>) => {
      if (!(key in message)) return;
      child.off('message', take);
      resolve(message[key] ?? Number.NaN);
    };
    child.on('message', take);
    if (ask !== null) child.send(ask);
  });
}

async function measure(): Promise<void> {
  const { isServerProcess, startServerProcess } = await import('./server-process.ts');
  if (await isServerProcess()) return;
  // Not in the link's process: what a store needs would count as its memory.
  const { openStore } = await import('../../src/server/stores/open.ts');
  const folder = mkdtempSync(join(tmpdir(), 'reelward-weeks-bench-'));
  const data = mkdtempSync(join(folder, 'link-'));
  const startMs = Date.now() - DAYS * 86_400_000;
  const { panels, entries } = await playAway({ folder: data, days: DAYS, panelSeconds: 20, startMs });
  console.log(
    `${DAYS} days without a server: ${panels} panels, ${entries} entries, ${(bytesIn(data) / 1e6).toFixed(1)} MB on the link's disk`,
  );
  const server = await startServerProcess(import.meta.url, { folder: join(folder, 'server') });
  const code = await server.code();
  const beganMs = performance.now();
  const child = fork(new URL(import.meta.url).pathname, [ROLE, server.url, code, data]);
  const listensMs = await told(child, 'listens');
  // Asked beside the server, as a backup would be.
  const store = await openStore({ folder: join(folder, 'server'), database: null, nowMs: Date.now });
  while ((await store.head()).pos < entries + 1) await new Promise((resolve) => setTimeout(resolve, 20));
  const seconds = (performance.now() - beganMs) / 1000;
  const peak = await told(child, 'peak', 'peak');
  const last = JSON.parse((await store.page(entries - 1, 1))[0]?.text ?? '{}') as {
    readonly payload?: { readonly total?: number };
  };
  await store.close();
  console.log(
    `  listens ${(listensMs / 1000).toFixed(2)} s after its start; all is at the server after ${seconds.toFixed(1)} s, ${Math.round(entries / seconds)} entries a second; ` +
      `memory at its peak ${Math.round(peak / 1e6)} MB; total told last ${last.payload?.total} of ${panels}; load ${loadavg()[0]?.toFixed(1)}`,
  );
  child.send('stop');
  await new Promise((resolve) => child.once('exit', resolve));
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
}

const [, , role, server = '', code = '', data = ''] = process.argv;
if (role === ROLE) await beLink(server, code, data);
else await measure();
