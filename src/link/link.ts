// A station link: a tablet without a screen. Hears devices, keeps a log of its own, brings it to the server.

import { mkdirSync } from 'node:fs';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { PayloadOf } from '../../shared/floor/kinds.ts';
import { sleep } from '../app/sync/backoff.ts';
import type { SyncWorld } from '../app/sync/ports.ts';
import { lockFolder } from '../server/stores/sqlite/lock.ts';
import {
  type CounterStation,
  counterStations,
  type HermesStation,
  hermesStations,
  ipc2591Stations,
  type LinkConfig,
  LinkRefused,
  placeOf,
} from './config.ts';
import { type CounterDoor, createCounter } from './counter.ts';
import type { FloorWatch, FollowParts } from './floor.ts';
import { openHeld } from './held.ts';
import { type HermesParts, type HermesSource, openHermes } from './hermes/source.ts';
import { newNonce, openIdentity } from './identity.ts';
import { type Ipc2591, openIpc2591 } from './ipc2591/source.ts';
import { plainFetch, plainGzip } from './plain-fetch.ts';
import { pushForGood } from './push.ts';
import { openSpool, type Spool } from './spool.ts';
import { type Now, openStationDesk, SILENT_MS, type StationDesk } from './station-desk.ts';

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
  /** A clock that only goes on, ms; absent: this process's own. */
  readonly clockMs?: () => number;
  /** The true time, ms since 1970; absent: this computer's, put right by the server's. */
  readonly wallMs?: () => number;
}

/** Starts a link; resolves when it listens. Throws `LinkRefused` where it cannot. */
export async function startLink(config: LinkConfig, options: LinkOptions): Promise<RunningLink> {
  const unlock = takeFolder(config.data);
  try {
    return await open(config, { ...options, unlock });
  } catch (error) {
    unlock();
    throw error;
  }
}

async function open(
  config: LinkConfig,
  options: LinkOptions & { readonly unlock: () => void },
): Promise<RunningLink> {
  const ending = new AbortController();
  const identity = openIdentity(config.data);
  let offMs = 0;
  const wallMs = options.wallMs ?? (() => Date.now() + offMs);
  const spool = openSpool(config.data, identity, wallMs);
  offMs = (await spool.log.readMemory()).clockOffMs;
  const held = openHeld(config.data);
  const clockMs = options.clockMs ?? (() => performance.now());
  const now = (): Now => ({ ms: clockMs(), wallMs: wallMs() });
  const start = now();
  const stations = counterStations(config);
  const called = new Map<string, HermesSource>();
  const desks = new Map(
    [...stations, ...hermesStations(config)].map((heard) => {
      const silentMs = () => called.get(heard.station)?.silentMs() ?? SILENT_MS;
      return [heard.station, openStationDesk(heard, { held, write: spool.write, start, silentMs })];
    }),
  );
  let fault: (error: unknown) => void = () => undefined;
  const faulted = new Promise<never>((_, reject) => {
    fault = reject;
  });
  const name = nameOf(config);
  const { version, say } = options;
  if (spool.length() === 0)
    await spool.write('tablet.opened', { name, app: version, key: identity.jwk, previous: null });
  const common = { folder: config.data, now, onFault: fault };
  openCalled(hermesStations(config), called, { ...common, say, desks });
  const world = worldOf(config.server, (serverMs) => {
    offMs = serverMs - Date.now();
  });
  const { signal } = ending;
  const floor = await floorFor(config, { folder: config.data, identity, world, signal, spool, say });
  const telling = { ...common, held, write: spool.write, floor };
  const machines = await openIpc2591(ipc2591Stations(config), config.stations, telling);
  const servers = await listenAll(config, doorsOf(stations, desks, now), fault).catch(async (error) => {
    await machines.stop();
    throw error;
  });
  const placeAt = (each: LinkConfig['stations'][number]) => placeOfStation(each, { servers, machines });
  for (const each of config.stations) {
    await spool.write('station.known', knownAs(each, { version, address: placeAt(each) }));
    await called.get(each.station)?.recall();
    await desks.get(each.station)?.settle();
  }
  machines.begin();
  for (const machine of called.values()) machine.start();
  const pushing = pushForGood({ spool, identity, world, code: config.code, name, say, signal });
  const ticker = setInterval(() => {
    const ticks = [...desks.values()].map((desk) => desk.tick(now()));
    for (const tick of [...ticks, ...machines.tick(now())]) tick.catch(fault);
  }, TICK_MS);
  const done = Promise.race([faulted, pushing]);
  done.catch(() => undefined); // whoever started it waits for it
  return {
    tablet: identity.tablet,
    listens: config.stations.map((each) => ({ station: each.station, at: placeAt(each) })),
    done,
    stop: async () => {
      clearInterval(ticker);
      try {
        const ends = [machines, ...called.values()].map((machine) => machine.stop());
        await Promise.all([...ends, ...[...servers.values()].map(({ server }) => closed(server))]);
        await Promise.all([...desks.values()].map((desk) => desk.settle()));
        const end = Date.now() + LAST_PUSH_MS;
        while (spool.backlog() > 0 && Date.now() < end) await sleep(50, signal);
      } finally {
        ending.abort();
        await pushing.catch(() => undefined); // told by `done`
        await held.close();
        await spool.close();
        options.unlock();
      }
    },
  };
}

/** The floor by the plant's log; null where no station of the file may answer its machine. */
async function floorFor(
  config: LinkConfig,
  { spool, ...parts }: Omit<FollowParts, 'serverKey'> & { readonly spool: Spool },
): Promise<FloorWatch | null> {
  if (!ipc2591Stations(config).some(({ source }) => source.answers === true)) return null;
  const serverKey = async () => (await spool.log.readMemory()).enrolled?.serverKey ?? null;
  // Most links answer nobody and need no memory for it.
  const { followFloor } = await import('./floor.ts');
  return followFloor({ ...parts, serverKey });
}

/** Where a station's messages are taken from. */
function placeOfStation(
  { station, source }: LinkConfig['stations'][number],
  at: { readonly servers: ReadonlyMap<string, Listening>; readonly machines: Pick<Ipc2591, 'at'> },
): string {
  if (source.kind === 'hermes') return source.connect;
  return source.kind === 'counter'
    ? (at.servers.get(source.listen)?.at ?? source.listen)
    : at.machines.at(station);
}

/** What the link is called among the plant's tablets. */
function nameOf({ stations }: LinkConfig): string {
  return `Link ${stations.map(({ station }) => station).join(', ')}`.slice(0, 120);
}

/** Machines that the link calls on their supervisory channel; each gets its desk. */
function openCalled(
  stations: readonly HermesStation[],
  called: Map<string, HermesSource>,
  parts: Omit<HermesParts, 'desk'> & { readonly desks: ReadonlyMap<string, StationDesk> },
): void {
  const { desks, ...rest } = parts;
  for (const heard of stations) {
    const desk = desks.get(heard.station);
    if (desk) called.set(heard.station, openHermes(heard, { ...rest, desk }));
  }
}

/** What the log is told of a station. */
function knownAs(
  { station, line, machine, at, source }: LinkConfig['stations'][number],
  more: { readonly version: string; readonly address: string },
): PayloadOf<'station.known'> {
  const means = source.kind === 'cfx' ? 'ipc2591' : source.kind;
  const known = { station, line, machine, at, means, ...more };
  return 'answers' in source && source.answers === true ? { ...known, answers: true } : known;
}

/** The stations' doors, each with its own secret. */
function doorsOf(
  stations: readonly CounterStation[],
  desks: ReadonlyMap<string, StationDesk>,
  now: () => Now,
): ReadonlyMap<string, CounterDoor> {
  const doors = new Map<string, CounterDoor>();
  for (const { station, source } of stations) {
    const desk = desks.get(station);
    if (!desk) continue;
    doors.set(station, {
      secret: source.secret,
      take: (message) => desk.take(message, now()),
      notice: (what, said) => desk.notice(what, said, now()),
    });
  }
  return doors;
}

/** The outside world, as a tablet's sync asks for it. */
function worldOf(server: string, sawServer: (serverMs: number) => void): SyncWorld {
  return {
    origin: server.replace(/\/$/, ''),
    // Sync reads no more of an answer than this gives.
    fetch: plainFetch as unknown as typeof fetch,
    gzip: plainGzip,
    nowMs: () => Date.now(),
    sawServer,
    chance: () => Math.random(),
    sleep,
    nonce: newNonce,
  };
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
  config: LinkConfig,
  doors: ReadonlyMap<string, CounterDoor>,
  onFault: (error: unknown) => void,
): Promise<Map<string, Listening>> {
  const servers = new Map<string, Listening>();
  const stations = counterStations(config);
  for (const { station: name, source } of stations) {
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
      const at = config.stations.findIndex(({ station }) => station === name);
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
