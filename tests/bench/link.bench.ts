// How many messages of devices does a station link take on one core, and with how much memory? The link and the server are processes of
// their own; devices send over HTTP, some at a time. A core's worth is messages by the link's own processor time, so that a busy machine
// does not change it. Bare totals, then each with a panel's code, which is an entry each.

import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type RunningLink, startLink } from '../../src/link/link.ts';
import { keepSmall } from '../../src/link/small.ts';

const ROLE = 'link-process';
const SECRET = 'a secret of the bench';
const STATIONS = 8;
const MESSAGES = 10_000;
const A_SECOND = 500;
const AT_ONCE = 64;

interface Figures {
  readonly cpuSeconds: number;
  readonly peakBytes: number;
  readonly nowBytes: number;
}

/** In the child: a link of some stations. */
async function beLink(server: string, code: string, data: string): Promise<void> {
  keepSmall();
  const stations = Array.from({ length: STATIONS }, (_, at) => ({
    station: `S${at}`,
    line: `L${at}`,
    machine: null,
    at: 'out' as const,
    source: { kind: 'counter' as const, listen: '127.0.0.1:0', secret: SECRET },
  }));
  const link: RunningLink = await startLink(
    { server, code, data, stations },
    { version: 'bench', say: (line) => console.error(line) },
  );
  process.on('message', (ask) => {
    const { user, system } = process.cpuUsage();
    if (ask === 'figures')
      process.send?.({
        figures: {
          cpuSeconds: (user + system) / 1e6,
          peakBytes: process.resourceUsage().maxRSS * 1024,
          nowBytes: process.memoryUsage.rss(),
        },
      });
    if (ask === 'stop') void link.stop().then(() => process.exit(0));
  });
  process.on('disconnect', () => process.exit(1));
  process.send?.({ at: link.listens[0]?.at });
}

function answerOf<T>(child: ChildProcess, ask: string | null, key: string): Promise<T> {
  return new Promise((resolve) => {
    const take = (message: Record<string, T>) => {
      if (!(key in message)) return;
      child.off('message', take);
      resolve(message[key] as T); // just seen
    };
    child.on('message', take);
    if (ask !== null) child.send(ask);
  });
}

function post(agent: Agent, at: string, station: number, message: object): Promise<number> {
  const [host, port] = at.split(':');
  const body = JSON.stringify(message);
  return new Promise((resolve, reject) => {
    const call = request(
      {
        host,
        port,
        agent,
        method: 'POST',
        path: `/api/stations/S${station}/count`,
        headers: { authorization: `Bearer ${SECRET}`, 'content-length': body.length },
      },
      (response) => {
        response.resume();
        response.on('end', () => resolve(response.statusCode ?? 0));
      },
    );
    call.on('error', reject);
    call.end(body);
  });
}

/** Sends so many messages at the pace wanted; gives the seconds that it took. */
async function send(at: string, boot: string, hasCodes: boolean): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: AT_ONCE });
  const startMs = performance.now();
  let next = 0;
  const sender = async () => {
    while (next < MESSAGES) {
      const dueMs = startMs + (next * 1000) / A_SECOND;
      if (performance.now() < dueMs)
        await new Promise((resolve) => setTimeout(resolve, dueMs - performance.now()));
      if (next >= MESSAGES) return;
      const total = Math.floor(next / STATIONS);
      const station = next % STATIONS;
      next += 1;
      const status = await post(agent, at, station, {
        boot,
        total,
        at: new Date().toISOString(),
        serial: hasCodes ? `${boot}-${station}-${total}` : null,
        skipped: null,
        state: 1100,
      });
      if (status !== 200) throw new Error(`answered ${status}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, sender));
  agent.destroy();
  return (performance.now() - startMs) / 1000;
}

if (process.argv[2] === ROLE) {
  const [server = '', code = '', data = ''] = process.argv.slice(3);
  await beLink(server, code, data);
} else {
  await measure();
}

async function measure(): Promise<void> {
  // Not in the link's process: what a server needs would count as its memory.
  const { isServerProcess, startServerProcess } = await import('./server-process.ts');
  if (await isServerProcess()) return;
  const folder = mkdtempSync(join(tmpdir(), 'reelward-link-bench-'));
  const server = await startServerProcess(import.meta.url, { folder: join(folder, 'server') });
  const code = await server.code();
  const args = [ROLE, `http://127.0.0.1:${server.port}`, code, join(folder, 'link')];
  const child = fork(new URL(import.meta.url).pathname, args);
  const at = await answerOf<string>(child, null, 'at');
  for (const hasCodes of [false, true]) {
    const before = await answerOf<Figures>(child, 'figures', 'figures');
    const seconds = await send(at, hasCodes ? 'coded' : 'bare', hasCodes);
    const after = await answerOf<Figures>(child, 'figures', 'figures');
    const cpu = after.cpuSeconds - before.cpuSeconds;
    console.log(
      `${hasCodes ? 'with codes' : 'bare totals'}: ${MESSAGES} messages, ${Math.round(MESSAGES / seconds)} a second (wanted ${A_SECOND}), ` +
        `${Math.round(MESSAGES / cpu)} a second and core; memory ${Math.round(after.nowBytes / 1e6)} MB, peak ${Math.round(after.peakBytes / 1e6)} MB`,
    );
  }
  child.send('stop');
  await new Promise((resolve) => child.once('exit', resolve));
  await server.stop();
  rmSync(folder, { recursive: true, force: true });
}
