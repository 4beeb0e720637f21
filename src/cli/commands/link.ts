// `reelward link`: a station link in a process of its own, or the played plant that shows what such a link counts.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { LinkRefused, linkConfigSchema } from '../../link/config.ts';
import { startLink } from '../../link/link.ts';
import { simulate } from '../../link/simulate.ts';
import { keepSmall } from '../../link/small.ts';
import { type Command, type CommandIo, NotUnderstood, parseCall, printJson, readJson } from '../command.ts';
import { ownVersion } from '../version.ts';

const help = `reelward link --config FILE
reelward link --simulate [--panels N] [--seed N]

Hears stations on a line that tell how many panels have passed, keeps a sealed log of its own,
and brings it to the server like a tablet: enrolled once, shut out by a lead, good for weeks
without a server.

  --config FILE   JSON: {"server": "http://localhost:8080", "code": "ABCDE-FGHIJ",
                  "data": "link-data", "stations": [{"station": "L1-exit", "line": "L1",
                  "machine": null, "at": "out", "source": {"kind": "counter",
                  "listen": "127.0.0.1:8090", "secret": "at least 8 characters"}}]}
                  code: needed at the first start only; make it with reelward serve enrol.
                  at: in, work or out, where on the line the station looks.
                  Devices then send POST /api/stations/L1-exit/count to that address.
                  A machine that speaks IPC-2591 (AMQP 1.0): "source": {"kind": "cfx",
                  "handle": "L1.Placer", "listen": "127.0.0.1:5672"}, or "broker" with
                  "address" instead of "listen"; README.md has all of its keys.
                  A machine by IPC-HERMES-9852 is called instead: "source":
                  {"kind": "hermes", "connect": "10.0.0.5:50200"}, its supervisory port.
                  machineId, lane, counts ("departed" or "arrived") may stand there too.

  --simulate      needs no server: plays three machines whose messages get lost, doubled and
                  late, with power cuts, a killed link and people who count meanwhile, and
                  prints as JSON what passed, what was counted, and what explains the rest
  --panels N      panels that pass (3 to 1000000, default 3000)
  --seed N        which play (whole number from 0 to 4294967295, default 1)

Says one line on standard output when it listens. Exit 0 stopped or all is explained, 1 the played
plant has a difference that nothing explains, 2 cannot start, cannot go on or not understood.
`;

const options = {
  config: { type: 'string' },
  simulate: { type: 'boolean' },
  panels: { type: 'string' },
  seed: { type: 'string' },
} as const;

/** The command. */
export const command: Command = {
  name: 'link',
  summary: 'hear stations that count panels, and bring that to the server',
  help,
  run: async (args, io) => {
    const { values } = parseCall(args, options, { min: 0, max: 0, names: 'no file' });
    if (values.simulate === true) {
      if (values.config !== undefined) throw new NotUnderstood('--simulate: expected without --config');
      return play(values, io);
    }
    if (values.config === undefined) throw new NotUnderstood('expected --config FILE, or --simulate');
    if (values.panels !== undefined || values.seed !== undefined)
      throw new NotUnderstood('--panels, --seed: expected with --simulate only');
    return serveLink(values.config, io);
  },
};

async function serveLink(file: string, io: CommandIo): Promise<number> {
  keepSmall();
  // Whatever is written is for the user who runs it alone.
  process.umask(0o077);
  const config = await readJson(file, linkConfigSchema, io);
  const stopping = untilAsked();
  try {
    const link = await startLink(config, {
      version: ownVersion(),
      say: (line) => io.stderr(`reelward link: ${line}\n`),
    });
    const places = link.listens.map(({ station, at }) => `${station} at ${at}`).join(', ');
    io.stdout(`reelward link ${link.tablet} listens: ${places}\n`);
    try {
      await Promise.race([stopping, link.done]);
    } catch (error) {
      // The fault itself is told; what the end of it says adds nothing.
      await link.stop().catch(() => undefined);
      throw error;
    }
    await link.stop();
    return 0;
  } catch (error) {
    if (error instanceof LinkRefused) throw new NotUnderstood(`${file}: ${error.message}`);
    throw diskFault(error) ?? error;
  }
}

/** A disk that does not take what is to be kept: the device sends its total again when the link is back. */
function diskFault(error: unknown): NotUnderstood | null {
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'ENOSPC') return new NotUnderstood('data: the disk is full; make room and start again');
  if (code === 'EROFS' || code === 'EACCES' || code === 'EIO')
    return new NotUnderstood(`data: the disk cannot be written (${code})`);
  return null;
}

/** Resolves when the process is asked to stop, or when the server that started it is gone; asked again, it ends at once. */
function untilAsked(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    process.once('disconnect', () => resolve());
    // Listened to, the channel alone would keep this process going.
    process.channel?.unref();
  });
}

async function play(
  values: { readonly panels?: string | undefined; readonly seed?: string | undefined },
  io: CommandIo,
): Promise<number> {
  const panels = readWhole(values.panels ?? '3000', '--panels', { least: 3, most: 1_000_000 });
  const seed = readWhole(values.seed ?? '1', '--seed', { least: 0, most: 4_294_967_295 });
  const folder = mkdtempSync(join(tmpdir(), 'reelward-link-'));
  try {
    const played = await simulate({ folder, panels, seed });
    printJson(played, io);
    return played.machines.every(({ unexplained }) => unexplained === 0) ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function readWhole(
  text: string,
  name: string,
  bounds: { readonly least: number; readonly most: number },
): number {
  const { least, most } = bounds;
  const value = /^\d{1,10}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new NotUnderstood(`${name}: expected a whole number from ${least} to ${most}, found ${text}`);
}
