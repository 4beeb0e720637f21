// Starts the real server with the invented plant in it: the same store, the same sync, the same headers as in a plant.
// Its data lies in a folder of its own that goes with it, so that one demo never meets the entries of another.

import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Entry } from '../shared/log/entry.ts';
import { checkImported } from '../src/server/checked.ts';
import { type RunningServer, startServer } from '../src/server/main.ts';
import type { ServerSettings } from '../src/server/settings.ts';
import { openPlaying } from './playing.ts';
import { addDemoRoutes } from './routes.ts';

/** What is played, and how. */
export interface DemoPlay {
  readonly seed: number;
  /** Plant seconds a real second; null = the shift is told when it is asked for, at the clock's own pace. */
  readonly speed: number | null;
  /** IANA zone of the plant. */
  readonly zone: string;
  /** Lines that play; one where nobody says. */
  readonly lines?: number;
  /** A small line with a conveyor of two lanes plays beside them; default not. */
  readonly lanes?: boolean;
}

/** A demo that is served. */
export interface RunningDemo {
  readonly server: RunningServer;
  readonly stop: () => Promise<void>;
}

/** Starts the demo; rejects as `startServer` does. The folder of `settings` is not used: the demo has its own. */
export async function startDemo(settings: ServerSettings, play: DemoPlay): Promise<RunningDemo> {
  const { nowMs } = settings.clock;
  const { seed, speed, zone, lines = 1, lanes = false } = play;
  const playing = openPlaying({ seed, zone, lines, lanes, openedMs: nowMs(), speed: speed ?? 1 });
  const folder = await mkdtemp(join(tmpdir(), 'reelward-demo-'));
  const clear = () => rm(folder, { recursive: true, force: true });
  let keep: (entries: readonly Entry[]) => Promise<void> = async () => undefined;
  try {
    const server = await startServer({
      ...settings,
      folder,
      database: null,
      addRoutes: (app) =>
        addDemoRoutes(app, {
          playing,
          nowMs,
          appRoot: settings.appRoot,
          live: speed !== null,
          onTold: (entries) => keep(entries),
        }),
    });
    keep = async (entries) => {
      await server.context.appender.append('demo', await checkImported(entries, server.context, nowMs()));
    };
    playing.tell(nowMs());
    await keep(playing.told);
    return { server, stop: () => server.stop().finally(clear) };
  } catch (error) {
    await clear();
    throw error;
  }
}

/** The first free port from `first` on, `tried` of them at most; null where all are taken. */
export async function findFreePort(first: number, host: string, tried: number): Promise<number | null> {
  for (let port = first; port < first + tried; port += 1) if (await isFree(port, host)) return port;
  return null;
}

function isFree(port: number, host: string): Promise<boolean> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(false));
    probe.listen({ port, host, exclusive: true }, () => probe.close(() => resolve(true)));
  });
}
