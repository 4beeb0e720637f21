// A station link: a tablet without a screen. Hears devices, keeps a log of its own, brings it to the server.

import { mkdirSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { SyncWorld } from '../app/sync/ports.ts';
import { lockFolder } from '../server/stores/sqlite/lock.ts';
import { counterStations, type LinkConfig, LinkRefused, placeOf } from './config.ts';
import { type CounterDoor, createCounter } from './counter.ts';
import { openHeld } from './held.ts';
import { newNonce, openIdentity } from './identity.ts';
import { pushForGood } from './push.ts';
import { openSpool } from './spool.ts';
import { type Now, openStationDesk, type StationDesk } from './station-desk.ts';

const TICK_MS = 1_000;
/** The last push before the end gets so long, ms. */
const LAST_PUSH_MS = 2_000;

/** A link at work. */
export interface RunningLink {
  /** Where it listens, `HOST:PORT`, in the order of the stations. */
  readonly listens: readonly { readonly station: string; readonly at: string }[];
  /** This link's name among the plant's tablets. */
  readonly tablet: string;
  /** Resolves when it ends by itself: never but by a fault, which it throws. */
  readonly done: Promise<void>;
  readonly stop: () => Promise<void>;
}

/** What a link is started with beside its configuration. */
export interface LinkOptions {
  /** The version that it tells. */
  readonly version: string;
  /** A line for people. */
  readonly say: (line: string) => void;
  readonly fetch?: typeof fetch;
}

/** Starts a link; resolves when it listens. Throws `LinkRefused` where it cannot. */
export async function startLink(config: LinkConfig, options: LinkOptions): Promise<RunningLink> {
  const stations = counterStations(config);
  const unlock = takeFolder(config.data);
  const ending = new AbortController();
  try {
    const identity = openIdentity(config.data);
    let offMs = 0;
    const wallMs = () => Date.now() + offMs;
    const spool = openSpool(config.data, identity, wallMs);
    offMs = (await spool.log.readMemory()).clockOffMs;
    const held = openHeld(config.data);
    const now = (): Now => ({ ms: performance.now(), wallMs: wallMs() });
    const desks = new Map<string, StationDesk>();
    const start = now();
    for (const { station, line } of stations)
      desks.set(station, openStationDesk({ station, line }, { held, write: spool.write, start }));
    let fault: (error: unknown) => void = () => undefined;
    const faulted = new Promise<never>((_, reject) => {
      fault = reject;
    });
    const name = `Link ${stations.map(({ station }) => station).join(', ')}`.slice(0, 120);
    if (spool.length() === 0) {
      const opened = { name, app: options.version, key: identity.jwk, previous: null };
      await spool.write('tablet.opened', opened);
    }
    const doors = new Map(
      stations.map(({ station, source }): [string, CounterDoor] => {
        const desk = desks.get(station) as StationDesk; // made above
        return [
          station,
          {
            secret: source.secret,
            take: (message) => desk.take(message, now()),
            notice: (what, said) => desk.notice(what, said, now()),
          },
        ];
      }),
    );
    const servers = await listenAll(stations, doors, fault);
    for (const { station, line, machine, at, source } of stations) {
      const address = servers.get(source.listen)?.at ?? source.listen;
      const known = { station, line, machine, at, means: source.kind, version: options.version, address };
      await spool.write('station.known', known);
      await desks.get(station)?.settle();
    }
    const world: SyncWorld = {
      origin: config.server.replace(/\/$/, ''),
      fetch: options.fetch ?? fetch,
      nowMs: () => Date.now(),
      sawServer: (serverMs) => {
        offMs = serverMs - Date.now();
      },
      chance: () => Math.random(),
      sleep,
      nonce: newNonce,
    };
    const { signal } = ending;
    const pushing = pushForGood({
      spool,
      identity,
      world,
      code: config.code,
      name,
      say: options.say,
      signal,
    });
    const ticker = setInterval(() => {
      for (const desk of desks.values()) desk.tick(now()).catch(fault);
    }, TICK_MS);
    const done = Promise.race([faulted, pushing]);
    done.catch(() => undefined); // whoever started it waits for it
    return {
      tablet: identity.tablet,
      listens: stations.map(({ station, source }) => ({
        station,
        at: servers.get(source.listen)?.at ?? source.listen,
      })),
      done,
      stop: async () => {
        clearInterval(ticker);
        await Promise.all([...servers.values()].map(({ server }) => closed(server)));
        await Promise.all([...desks.values()].map((desk) => desk.settle()));
        const end = Date.now() + LAST_PUSH_MS;
        while (spool.backlog() > 0 && Date.now() < end && !signal.aborted) await sleep(50, signal);
        ending.abort();
        await pushing.catch(() => undefined); // told by `done`
        await held.close();
        await spool.close();
        unlock();
      },
    };
  } catch (error) {
    ending.abort();
    unlock();
    throw error;
  }
}

function takeFolder(folder: string): () => void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const unlock = lockFolder(folder);
    if (unlock) return unlock;
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    throw new LinkRefused(`data: ${folder} cannot be written (${code}); check who owns it`);
  }
  throw new LinkRefused(`data: another link uses ${folder}; give each link a folder of its own`);
}

interface Listening {
  readonly server: Server;
  readonly at: string;
}

/** One server a place; stations at one place share it. */
async function listenAll(
  stations: ReturnType<typeof counterStations>,
  doors: ReadonlyMap<string, CounterDoor>,
  onFault: (error: unknown) => void,
): Promise<Map<string, Listening>> {
  const servers = new Map<string, Listening>();
  for (const [at, { source }] of stations.entries()) {
    if (servers.has(source.listen)) continue;
    const here = stations.filter((each) => each.source.listen === source.listen);
    const own = new Map(
      here.map(({ station }) => [station, doors.get(station) as CounterDoor]), // one for each station
    );
    const server = createCounter(own, onFault);
    const { host, port } = placeOf(source.listen);
    try {
      await new Promise<void>((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, host, resolve);
      });
    } catch (error) {
      for (const { server: open } of servers.values()) open.close();
      const { code = 'unknown' } = error as NodeJS.ErrnoException;
      const why = code === 'EADDRINUSE' ? 'something listens there already' : `cannot listen there (${code})`;
      throw new LinkRefused(`stations[${at}].source.listen: ${source.listen}: ${why}`);
    }
    const { address, family, port: taken } = server.address() as AddressInfo; // it listens at a port
    servers.set(source.listen, {
      server,
      at: `${family === 'IPv6' ? `[${address}]` : address}:${taken}`,
    });
  }
  return servers;
}

function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeIdleConnections();
    // A request that is under way has a moment.
    setTimeout(() => server.closeAllConnections(), 500).unref();
  });
}

/** A wait that ends early when the signal is raised. */
function sleep(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) return resolve();
    const end = () => {
      clearTimeout(timer);
      signal.removeEventListener('abort', end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    signal.addEventListener('abort', end);
  });
}
