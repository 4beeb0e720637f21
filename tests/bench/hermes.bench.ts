// How many messages of machines by IPC-HERMES-9852 does a station link take on one core, and with how much memory? The link is a process of
// its own, without a server; eight machines here talk to it as fast as it reads. Beats, then boards with codes, which are flushed one by one
// and are an entry each. A core's worth is messages by the link's own processor time, so that a busy machine does not change it.

import { type ChildProcess, fork } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startLink } from '../../src/link/link.ts';
import { keepSmall } from '../../src/link/small.ts';
import { departed, guid, hermes, type Machine, startMachine } from '../src/link/hermes/machine.ts';

const ROLE = 'link-process';
const MACHINES = 8;
const BEATS = 40_000;
const BOARDS = 8_000;

interface Figures {
  readonly cpuSeconds: number;
  readonly peakBytes: number;
}

/** In the child: a link of some stations; nobody answers at its server. */
async function beLink(data: string, places: readonly string[]): Promise<void> {
  keepSmall();
  const stations = places.map((connect, at) => {
    const source = { kind: 'hermes' as const, connect };
    return { station: `S${at}`, line: `L${at}`, machine: null, at: 'out' as const, source };
  });
  await startLink(
    { server: 'http://127.0.0.1:9', code: 'AAAAA-AAAAA', data, stations },
    { version: 'bench', say: () => undefined },
  );
  process.on('message', () => {
    const { user, system } = process.cpuUsage();
    process.send?.({ cpuSeconds: (user + system) / 1e6, peakBytes: process.resourceUsage().maxRSS * 1024 });
  });
  process.on('disconnect', () => process.exit(0));
}

function figuresOf(child: ChildProcess): Promise<Figures> {
  return new Promise((resolve) => {
    child.once('message', (figures) => resolve(figures as Figures));
    child.send('figures');
  });
}

const pause = () => new Promise((resolve) => setTimeout(resolve, 20));

/** All that was sent to the link is read. */
async function read(machines: readonly Machine[], id: string): Promise<void> {
  for (const machine of machines) machine.tell(`<CheckAlive Type="1" Id="${id}"/>`);
  while (!machines.every((machine) => machine.said().includes(`Type="2" Id="${id}"`))) await pause();
}

async function measure(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'reelward-hermes-bench-'));
  const machines = await Promise.all(Array.from({ length: MACHINES }, () => startMachine()));
  const places = machines.map(({ at }) => at);
  const child = fork(new URL(import.meta.url).pathname, [ROLE, folder, ...places]);
  while (!machines.every((machine) => machine.clients() > 0)) await pause();
  const kinds = [
    { name: 'beats', messages: BEATS, text: () => hermes('<CheckAlive/>') },
    {
      name: 'boards with codes',
      messages: BOARDS,
      text: (at: number) => hermes(departed({ BoardId: guid(at), TopBarcode: `SN-${at}` })),
    },
  ];
  for (const { name, messages, text } of kinds) {
    await read(machines, `before ${name}`);
    const before = await figuresOf(child);
    const startMs = performance.now();
    for (let at = 0; at < messages; at += 1) machines[at % MACHINES]?.send(text(at));
    await read(machines, `after ${name}`);
    const seconds = (performance.now() - startMs) / 1000;
    const after = await figuresOf(child);
    const cpu = after.cpuSeconds - before.cpuSeconds;
    console.log(
      `${name}: ${messages} messages, ${Math.round(messages / seconds)} a second, ` +
        `${Math.round(messages / cpu)} a second and core; peak memory ${Math.round(after.peakBytes / 1e6)} MB`,
    );
  }
  child.disconnect();
  await new Promise((resolve) => child.once('exit', resolve));
  await Promise.all(machines.map((machine) => machine.stop()));
  rmSync(folder, { recursive: true, force: true });
}

if (process.argv[2] === ROLE) {
  const [data = '', ...places] = process.argv.slice(3);
  await beLink(data, places);
} else {
  await measure();
}
