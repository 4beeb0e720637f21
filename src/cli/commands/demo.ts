// `reelward demo`: the app and the sync server with the invented plant loaded, or its simulated shift written to a file.
// The server's data lives in a folder of its own that goes when the demo ends.

import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { logText } from '../../../demo/log.ts';
import { openPlaying, type Playing } from '../../../demo/playing.ts';
import { addDemoRoutes } from '../../../demo/routes.ts';
import { simulateShift } from '../../../demo/simulate.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { checkImported } from '../../server/checked.ts';
import { CannotStart, type RunningServer, startServer } from '../../server/main.ts';
import { plantPeople } from '../../server/people/fold.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall } from '../command.ts';

const help = `reelward demo [--port N] [--host NAME] [--play SPEED] [--seed N]
reelward demo --export FILE [--seed N] [--hours H] [--start MOMENT]

Serves the app with one invented plant: a line of three machines in the middle of a shift, 150 slots,
three products, people, and labels to practise with (on the screen, or printed from /demo/labels).
Nothing that is done in it outlives the demo, except in the browser that it was done in.

  --port N        port to listen on; without it 8080, or the next one that is free
  --host NAME     name or address under which other devices reach this computer;
                  without it, only this computer itself does
  --play SPEED    the shift goes on by itself, SPEED times as fast as the clock (0.1 to 600)
  --seed N        which shift is played (whole number, default 1)

  --export FILE   serves nothing: plays the shift and writes its log, one entry a line
                  (NDJSON, UTF-8; - for standard output)
  --hours H       hours of the shift that are written (more than 0, at most 168, default 8)
  --start MOMENT  when its first run starts, ISO 8601 with offset (default 2026-03-02T06:00:00Z)
`;

const options = {
  port: { type: 'string' },
  host: { type: 'string' },
  play: { type: 'string' },
  seed: { type: 'string' },
  export: { type: 'string' },
  hours: { type: 'string' },
  start: { type: 'string' },
} as const;

type Values = { readonly [K in keyof typeof options]?: string | undefined };

const DEFAULT_PORT = 8080;
/** Ports tried after the default one. */
const PORTS_TRIED = 20;
const DEFAULT_START = '2026-03-02T06:00:00Z';

/** The command. */
export const command: Command = {
  name: 'demo',
  summary: 'serve the app with an invented plant, or write its simulated shift',
  help,
  run: async (args, io) => {
    const { values } = parseCall(args, options, { min: 0, max: 0, names: 'options only' });
    const seed = readNumber(values.seed ?? '1', { name: '--seed', whole: true, from: 0, to: 2 ** 32 - 1 });
    if (values.export !== undefined) {
      refuseWith(values, '--export', ['port', 'host', 'play']);
      return exportShift(values.export, { seed, values }, io);
    }
    refuseWith(values, 'the served demo', ['hours', 'start']);
    return serveDemo({ seed, values }, io);
  },
};

function refuseWith(values: Values, what: string, names: readonly (keyof Values)[]): void {
  const found = names.find((name) => values[name] !== undefined);
  if (found !== undefined) throw new NotUnderstood(`--${found}: does not go with ${what}`);
}

function readNumber(
  text: string,
  wanted: { readonly name: string; readonly whole?: boolean; readonly from: number; readonly to: number },
): number {
  const { name, whole = false, from, to } = wanted;
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (value >= from && value <= to && (!whole || Number.isInteger(value))) return value;
  throw new NotUnderstood(
    `${name}: expected a ${whole ? 'whole ' : ''}number from ${from} to ${to}, found ${text === '' ? 'nothing' : text}`,
  );
}

async function exportShift(
  file: string,
  call: { readonly seed: number; readonly values: Values },
  io: CommandIo,
): Promise<number> {
  if (file === '')
    throw new NotUnderstood('--export: expected a file, or - for standard output, found nothing');
  const hours = readNumber(call.values.hours ?? '8', { name: '--hours', from: 0.01, to: 168 });
  const startMs = readMoment(call.values.start ?? DEFAULT_START);
  const text = logText(simulateShift({ seed: call.seed, hours, startMs }).entries);
  if (file === '-') {
    io.stdout(text);
    return 0;
  }
  try {
    await writeFile(file, text);
  } catch (error) {
    throw new NotUnderstood(`--export ${file}: cannot be written (${(error as NodeJS.ErrnoException).code})`);
  }
  return 0;
}

function readMoment(text: string): number {
  const ms = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?(Z|[+-]\d{2}:\d{2})$/.test(text)
    ? Date.parse(text)
    : Number.NaN;
  if (Number.isFinite(ms)) return ms;
  throw new NotUnderstood(`--start: expected ISO 8601 with offset, e.g. ${DEFAULT_START}, found ${text}`);
}

async function serveDemo(
  call: { readonly seed: number; readonly values: Values },
  io: CommandIo,
): Promise<number> {
  const { values, seed } = call;
  const speed =
    values.play === undefined ? null : readNumber(values.play, { name: '--play', from: 0.1, to: 600 });
  const ports =
    values.port === undefined
      ? Array.from({ length: PORTS_TRIED + 1 }, (_, step) => DEFAULT_PORT + step)
      : [readNumber(values.port, { name: '--port', whole: true, from: 0, to: 65_535 })];
  const appRoot = fileURLToPath(new URL('../app', new URL('.', entryUrl())));
  if (!existsSync(join(appRoot, 'index.html')))
    throw new NotUnderstood(
      `the app is not built: expected ${join(appRoot, 'index.html')}; run "npm run build"`,
    );
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const playing = openPlaying({ seed, openedMs: Date.now(), speed: speed ?? 1, zone });
  const folder = await mkdtemp(join(tmpdir(), 'reelward-demo-'));
  try {
    const server = await startOnFreePort(ports, {
      playing,
      folder,
      appRoot,
      host: values.host ?? '127.0.0.1',
      live: speed !== null,
    });
    announce(server, { wanted: ports[0] ?? DEFAULT_PORT, speed }, io);
    await untilAsked();
    await server.stop();
  } catch (error) {
    if (error instanceof CannotStart) throw new NotUnderstood(error.message);
    throw error;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return 0;
}

interface Stage {
  readonly playing: Playing;
  readonly folder: string;
  readonly appRoot: string;
  readonly host: string;
  readonly live: boolean;
}

/** Starts on the first of the ports that is free. */
async function startOnFreePort(ports: readonly number[], stage: Stage): Promise<RunningServer> {
  for (const [index, port] of ports.entries()) {
    try {
      return await startStage(port, stage);
    } catch (error) {
      const last = index === ports.length - 1;
      if (last || !(error instanceof CannotStart) || !/^port \d+ is taken/.test(error.message)) throw error;
    }
  }
  throw new RangeError('Cannot start as a port must be given: current value is none');
}

async function startStage(port: number, stage: Stage): Promise<RunningServer> {
  const { playing, folder, appRoot, host, live } = stage;
  const nowMs = () => Date.now();
  let keep: (entries: readonly Entry[]) => Promise<void> = async () => undefined;
  const server = await startServer({
    ...{ folder, database: null, host, port, plant: 'Brae Works', appRoot, clock: { nowMs } },
    ...{ people: plantPeople, logLevel: 'warn', https: null },
    addRoutes: (app) =>
      addDemoRoutes(app, { playing, appRoot, nowMs, live, onTold: (entries) => keep(entries) }),
  });
  keep = async (entries) => {
    await server.context.appender.append('demo', await checkImported(entries, server.store, nowMs()));
  };
  playing.tell(nowMs());
  await keep(playing.told);
  return server;
}

function announce(
  server: RunningServer,
  asked: { readonly wanted: number; readonly speed: number | null },
  io: CommandIo,
): void {
  if (asked.wanted !== 0 && server.port !== asked.wanted)
    io.stderr(`Port ${asked.wanted} is taken by another program: using ${server.port}.\n`);
  if (asked.speed !== null) io.stderr(`The shift plays at ${asked.speed} times the clock.\n`);
  io.stderr(
    `Reelward with an invented plant: ${server.url}\nLabels to print: ${server.url}/demo/labels\nCtrl-C ends it.\n`,
  );
}

/** Where the entry file lies: chunks lie one folder deeper, and sources elsewhere. */
function entryUrl(): string {
  const built = /^(.*\/dist\/cli\/)/.exec(import.meta.url)?.[1];
  return built ?? new URL('../../../dist/cli/', import.meta.url).href;
}

/** Resolves on the first request to stop; a second one ends the process at once. */
function untilAsked(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
