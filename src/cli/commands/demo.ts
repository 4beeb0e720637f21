// `reelward demo`: the app and the sync server with the invented plant loaded, or its simulated shift written to a file.
// What it serves with is what `serve` serves with; only the data is its own.

import { existsSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { logText } from '../../../demo/log.ts';
import { MOST_LINES } from '../../../demo/more-lines.ts';
import { findFreePort, startDemo } from '../../../demo/serve.ts';
import { simulateShift } from '../../../demo/simulate.ts';
import { isoMoment } from '../../../shared/log/entry-schema.ts';
import { CertificateRefused } from '../../server/certificates/refused.ts';
import { makeCode } from '../../server/codes.ts';
import { CannotStart } from '../../server/listen.ts';
import type { RunningServer } from '../../server/main.ts';
import type { ServerSettings } from '../../server/settings.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall } from '../command.ts';
import { readSettings, serveOptions } from '../serve-settings.ts';

const help = `reelward demo [--play SPEED] [--lines N] [--lanes] [--seed N] [--port N] [--host NAME] [--https]
reelward demo --export FILE [--seed N] [--hours H] [--start MOMENT]

Serves the app and the sync server with one invented plant: a line of three machines in the middle
of a shift, 150 slots, three products, people, and labels to practise with (on the screen, or printed
from /demo/labels). What is done in it outlives it only in the browser that it was done in.

  --play SPEED    the shift goes on by itself, SPEED times as fast as the clock (0.1 to 600)
  --lines N       so many lines, each with a shift of its own (1 to 24, default 1)
  --lanes         a small line beside them, whose conveyor has two lanes: two products at once
  --seed N        which shift is played (whole number from 0 to 4294967295, default 1)
  --port N        port to listen on; without it 8080 (8443 with --https), or the next one free
  --host NAME     name or address under which other devices reach this computer;
                  without it, only this computer itself does
  --https, --trust-port N, --cert FILE, --key FILE, --log LEVEL
                  as for reelward serve; cameras of other devices need HTTPS

  --export FILE   serves nothing: plays the shift and writes its log, one entry a line
                  (NDJSON, UTF-8; - for standard output)
  --hours H       hours of the shift that are written (0.01 to 168, default 8)
  --start MOMENT  when its first run starts, ISO 8601 with offset (default 2026-03-02T06:00:00Z)

Exit 0 stopped or written, 2 cannot start, cannot write or not understood.
`;

const served = [
  'play',
  'lines',
  'lanes',
  'port',
  'host',
  'https',
  'trust-port',
  'cert',
  'key',
  'log',
] as const;
const exported = ['hours', 'start'] as const;
const { port, host, https, 'trust-port': trustPort, cert, key, log } = serveOptions;
const options = {
  port,
  host,
  https,
  'trust-port': trustPort,
  cert,
  key,
  log,
  play: { type: 'string' },
  lines: { type: 'string' },
  lanes: { type: 'boolean' },
  seed: { type: 'string' },
  export: { type: 'string' },
  hours: { type: 'string' },
  start: { type: 'string' },
} as const;

type Values = {
  readonly [K in keyof typeof options]?: (typeof options)[K]['type'] extends 'boolean'
    ? boolean | undefined
    : string | undefined;
};

/** Ports tried where none is named and the usual one is taken. */
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
      refuseAny(values, served, '--export');
      return exportShift(values.export, { seed, values }, io);
    }
    refuseAny(values, exported, 'a demo that is served: they belong to --export');
    return serveDemo({ seed, values }, io);
  },
};

function refuseAny(values: Values, names: readonly (keyof Values)[], what: string): void {
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
  const kind = whole ? 'a whole number' : 'a number';
  throw new NotUnderstood(`${name}: expected ${kind} from ${from} to ${to}, found ${text || 'nothing'}`);
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
    const { code } = error as NodeJS.ErrnoException; // as thrown by the file system
    throw new NotUnderstood(`--export: ${file} cannot be written (${code})`);
  }
  return 0;
}

function readMoment(text: string): number {
  if (isoMoment.safeParse(text).success) return Date.parse(text);
  throw new NotUnderstood(
    `--start: expected ISO 8601 with offset, e.g. ${DEFAULT_START}, found ${text || 'nothing'}`,
  );
}

async function serveDemo(
  call: { readonly seed: number; readonly values: Values },
  io: CommandIo,
): Promise<number> {
  const { seed, values } = call;
  const speed =
    values.play === undefined ? null : readNumber(values.play, { name: '--play', from: 0.1, to: 600 });
  const lines = readNumber(values.lines ?? '1', { name: '--lines', whole: true, from: 1, to: MOST_LINES });
  const { play, lines: _lines, lanes = false, seed: _, export: _export, hours, start, ...serving } = values;
  // The shift that plays is all that its log has.
  const { app: _app, ...read } = readSettings({ ...serving, plant: 'Brae Works' });
  const settings = await choosePort(read, values, io);
  if (!existsSync(join(settings.appRoot, 'index.html'))) {
    throw new NotUnderstood(
      `the app is not built: expected ${join(settings.appRoot, 'index.html')}; run "npm run build"`,
    );
  }
  const stopping = untilAsked();
  try {
    const { zone } = { zone: Intl.DateTimeFormat().resolvedOptions().timeZone };
    const demo = await startDemo(settings, { seed, speed, zone, lines, lanes });
    announce(demo.server, speed, io);
    const code = await makeCode(demo.server.store, settings.clock.nowMs());
    io.stderr(`To join a tablet, within ten minutes: ${demo.server.url}${code.path}\n`);
    await stopping;
    await demo.stop();
  } catch (error) {
    if (error instanceof CannotStart || error instanceof CertificateRefused)
      throw new NotUnderstood(error.message);
    throw error;
  }
  return 0;
}

/** The usual port may be taken by something else; a port that was named is left to the server to refuse. */
async function choosePort(settings: ServerSettings, values: Values, io: CommandIo): Promise<ServerSettings> {
  if (values.port !== undefined) return settings;
  const local = values.host === undefined;
  const free = await findFreePort(settings.port, local ? settings.host : '::', PORTS_TRIED);
  if (free === null || free === settings.port) return settings;
  io.stderr(`Port ${settings.port} is taken by another program: using ${free}.\n`);
  return { ...settings, port: free };
}

function announce(server: RunningServer, speed: number | null, io: CommandIo): void {
  if (speed !== null) io.stderr(`The shift plays at ${speed} times the clock.\n`);
  if (server.trust) {
    io.stderr(`How to trust it on a tablet: ${server.trust.url}\nFingerprint: ${server.trust.fingerprint}\n`);
  }
  io.stderr(
    `Reelward with an invented plant: ${server.url}\nLabels to print: ${server.url}/demo/labels\nCtrl-C ends it.\n`,
  );
}

/** Resolves when the process is asked to stop; asked again, it ends at once. */
function untilAsked(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
}
