// A server and tablets for tests: the real server on a free port, tablets with the app's own sync over an in-memory log.

import { pbkdf2Sync } from 'node:crypto';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { chainId, type Entry, entryId, type JsonObject } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { sleep } from '../../../src/app/sync/backoff.ts';
import { enrolTablet } from '../../../src/app/sync/enrol.ts';
import { createCaller } from '../../../src/app/sync/http.ts';
import { createSyncKey, newNonce } from '../../../src/app/sync/key.ts';
import { startSync } from '../../../src/app/sync/loop.ts';
import {
  emptyMemory,
  type SyncKey,
  type SyncLog,
  type SyncMemory,
  type SyncStatus,
  type SyncWorld,
} from '../../../src/app/sync/ports.ts';
import type { BroughtHead } from '../../../src/app/sync/witness.ts';
import { makeCode } from '../../../src/server/codes.ts';
import { type RunningServer, startServer } from '../../../src/server/main.ts';
import { plantPeople } from '../../../src/server/people/fold.ts';
import type { ServerSettings } from '../../../src/server/settings.ts';
import { newFolder } from '../../contract/databases.ts';
import { makeChain } from '../../contract/entries.ts';

/** A clock that a test may set off. */
export interface TestClock {
  readonly nowMs: () => number;
  shiftMs: number;
}

export function newClock(): TestClock {
  const clock = { shiftMs: 0, nowMs: () => Date.now() + clock.shiftMs };
  return clock;
}

/** Settings of a server that only this computer reaches. */
export function settingsFor(folder: string, change: Partial<ServerSettings> = {}): ServerSettings {
  return {
    folder,
    database: null,
    host: '127.0.0.1',
    port: 0,
    plant: 'Brae Works',
    appRoot: join(folder, 'app'),
    clock: newClock(),
    people: plantPeople,
    logLevel: 'silent',
    https: null,
    ...change,
  };
}

/** A running server with its folder. */
export interface TestServer {
  running: RunningServer;
  readonly folder: string;
  readonly settings: ServerSettings;
  /** Stops and starts on the same folder and port; `between` runs while it is down. */
  readonly restart: (between?: () => Promise<void> | void) => Promise<void>;
  readonly stop: () => Promise<void>;
}

export async function startTestServer(change: Partial<ServerSettings> = {}): Promise<TestServer> {
  const folder = newFolder();
  const settings = settingsFor(folder.path, change);
  const server: TestServer = {
    running: await startServer(settings),
    folder: folder.path,
    settings,
    restart: async (between) => {
      const { port } = server.running;
      await server.running.stop();
      await between?.();
      server.running = await startServer({ ...settings, port });
      // Connections of before are known to be closed by the time that one of now has answered.
      await until('an answer after the restart', () =>
        fetch(`${server.running.url}/health`).then(
          () => true,
          () => false,
        ),
      );
    },
    stop: async () => {
      await server.running.stop();
      rmSync(folder.path, { recursive: true, force: true });
    },
  };
  return server;
}

/** A log in memory that behaves as the tablet's does. */
export interface MemoryLog extends SyncLog {
  readonly entries: () => readonly Entry[];
  memory: SyncMemory;
  /** The plant's list of keys as it was kept last. */
  plantKeys: string | null;
  /** Writes own entries. */
  readonly write: (count: number, payload?: (seq: number) => JsonObject, kind?: string) => readonly Entry[];
  readonly onTaken: (listener: (entries: readonly Entry[]) => void) => void;
}

export function newMemoryLog(tablet: string, epoch = 'e1'): MemoryLog {
  const byId = new Map<string, Entry>();
  const chains = new Map<string, Entry[]>();
  const appendListeners = new Set<() => void>();
  const takenListeners = new Set<(entries: readonly Entry[]) => void>();
  const add = (entry: Entry) => {
    if (byId.has(entryId(entry))) return false;
    byId.set(entryId(entry), entry);
    const chain = chains.get(chainId(entry)) ?? [];
    const late = (chain.at(-1)?.seq ?? 0) > entry.seq;
    chain.push(entry);
    if (late) chain.sort((a, b) => a.seq - b.seq);
    chains.set(chainId(entry), chain);
    return true;
  };
  const log: MemoryLog = {
    memory: emptyMemory,
    plantKeys: null,
    entries: () => [...byId.values()].sort(compareEntries),
    heads: async () =>
      [...chains.values()].flatMap((chain) => {
        const head = chain.at(-1);
        return head ? [{ tablet: head.tablet, epoch: head.epoch, seq: head.seq, hash: head.hash }] : [];
      }),
    // Halved, as an index does it: a walk over the whole chain for each page would weigh on a bench.
    entriesAfter: async (chain, seq, limit) => {
      const entries = chains.get(chainId(chain)) ?? [];
      let [low, high] = [0, entries.length];
      while (low < high) {
        const middle = (low + high) >> 1;
        if ((entries[middle]?.seq ?? 0) > seq) high = middle;
        else low = middle + 1;
      }
      return entries.slice(low, low + limit);
    },
    takeIn: async (entries) => {
      const fresh = entries.filter(add);
      if (fresh.length > 0) for (const listener of takenListeners) listener(fresh);
    },
    firstOf: async (chain) => byId.get(entryId({ ...chain, seq: 1 })) ?? null,
    readMemory: async () => log.memory,
    writeMemory: async (memory) => {
      log.memory = memory;
    },
    keepPlantKeys: async (keys) => {
      log.plantKeys = keys;
    },
    onAppend: (listener) => {
      appendListeners.add(listener);
      return () => appendListeners.delete(listener);
    },
    write: (count, payload, kind) => {
      const after = chains.get(`${tablet}/${epoch}`)?.at(-1);
      const entries = makeChain({
        tablet,
        epoch,
        count,
        ...(after ? { after } : {}),
        ...(payload ? { payload } : {}),
        ...(kind ? { kind } : {}),
      });
      for (const entry of entries) add(entry);
      for (const listener of appendListeners) listener();
      return entries;
    },
    onTaken: (listener) => {
      takenListeners.add(listener);
    },
  };
  return log;
}

/** The world as a test tablet sees it. */
export function newWorld(origin: string, clock: TestClock = newClock()): SyncWorld {
  return {
    origin,
    fetch: (...args) => fetch(...args),
    nowMs: clock.nowMs,
    chance: () => 0.05,
    sleep,
    nonce: newNonce,
  };
}

export async function newSyncKey(tablet: string): Promise<SyncKey> {
  const pair = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, [
    'sign',
    'verify',
  ]);
  return createSyncKey(tablet, pair);
}

/** A tablet that may be enrolled and may sync. */
export interface TestTablet {
  readonly name: string;
  readonly key: SyncKey;
  readonly log: MemoryLog;
  readonly world: SyncWorld;
  readonly status: () => SyncStatus | null;
  readonly start: () => void;
  readonly stop: () => Promise<void>;
  readonly now: () => void;
  /** A person took note of what is wrong with the server's log. */
  readonly tookNote: () => void;
  /** Somebody brings the head that another tablet was shown. */
  readonly bring: (note: string) => Promise<BroughtHead>;
  readonly caller: ReturnType<typeof createCaller>;
}

export async function newTablet(name: string, origin: string, clock?: TestClock): Promise<TestTablet> {
  const key = await newSyncKey(name);
  const log = newMemoryLog(name);
  const world = newWorld(origin, clock);
  let status: SyncStatus | null = null;
  let running: { loop: ReturnType<typeof startSync>; controller: AbortController } | null = null;
  return {
    name,
    key,
    log,
    world,
    caller: createCaller(world, key),
    status: () => status,
    now: () => running?.loop.now(),
    tookNote: () => running?.loop.tookNote(),
    bring: async (note) => (await running?.loop.bring(note)) ?? 'no-server',
    start: () => {
      const controller = new AbortController();
      const onStatus = (next: SyncStatus) => {
        status = next;
      };
      running = { controller, loop: startSync({ log, key, world, onStatus, signal: controller.signal }) };
    },
    stop: async () => {
      running?.controller.abort();
      await running?.loop.done;
      running = null;
    },
  };
}

/** Enrols a tablet by a code made at the server. */
export async function enrolAt(server: RunningServer, tablet: TestTablet): Promise<void> {
  const { code } = await makeCode(server.store, server.context.nowMs());
  const enrolled = await enrolTablet(tablet, { code, name: `Tablet ${tablet.name}` });
  if (!enrolled.ok) throw new Error(`not enrolled: ${enrolled.error.code}`);
}

/** What checks a PIN, as an entry or a tablet tells it; few rounds keep the tests fast, the number travels with the PIN. */
export function pinRecord(pin: string, salt = 'salt') {
  const rounds = 1_000;
  return { salt, rounds, hash: pbkdf2Sync(pin, salt, rounds, 32, 'sha256').toString('hex') };
}

/** Waits until something holds; fails naming what was awaited. */
export async function until(
  what: string,
  holds: () => boolean | Promise<boolean>,
  limitMs = 60_000,
): Promise<void> {
  const endMs = performance.now() + limitMs;
  while (!(await holds())) {
    if (performance.now() > endMs) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}

/** A lead and an engineer of a plant, each with a PIN. */
export const boss = {
  person: 'boss',
  name: 'Bea',
  role: 'lead',
  badge: 'B-2',
  pin: pinRecord('2222'),
} as const;
export const maker = {
  person: 'maker',
  name: 'Max',
  role: 'engineer',
  badge: 'B-3',
  pin: pinRecord('3333'),
} as const;
