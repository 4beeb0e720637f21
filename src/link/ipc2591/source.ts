// The door to stations heard by IPC-2591: opens a listener a place and a connection a broker, and brings each message to its machine's station.

import type { AddressInfo } from 'node:net';
import { type Ipc2591Station, LinkRefused, placeOf } from '../config.ts';
import type { FloorWatch } from '../floor.ts';
import type { Held } from '../held.ts';
import type { NoticeWhat } from '../notices.ts';
import { type Now, openStationDesk, type StationDesk, type WriteEntry } from '../station-desk.ts';
import { ask } from './ask.ts';
import { type BrokerSource, brokerPlace, openBroker } from './broker.ts';
import { readEnvelopes } from './envelope.ts';
import { openJournal } from './journal.ts';
import { createListener, type From } from './listener.ts';
import { type Machine, openMachine } from './machine.ts';
import type { CountedBy } from './messages.ts';
import { openWhose, type Whose } from './whose.ts';

/** What the source works with. */
export interface SourceWorld {
  readonly folder: string;
  readonly held: Held;
  readonly write: WriteEntry;
  readonly now: () => Now;
  readonly onFault: (error: unknown) => void;
  /** The floor by the plant's log, for stations that may answer. */
  readonly floor: FloorWatch | null;
  /** As of lines: false only where a power cut is not feared. */
  readonly flush?: boolean;
}

/** Stations that are heard. */
export interface Ipc2591 {
  /** Where a station's machine sends to, or what its messages are taken from. */
  readonly at: (station: string) => string;
  /** Messages are taken from now on. */
  readonly begin: () => void;
  readonly tick: (now: Now) => readonly Promise<unknown>[];
  /** Ends connections; resolves when all that was taken is told. */
  readonly stop: () => Promise<void>;
}

/** One station with all of its own. */
interface Own {
  readonly config: Ipc2591Station;
  readonly index: number;
  readonly desk: StationDesk;
  readonly machine: Machine;
  readonly whose: Whose;
  readonly close: () => Promise<void>;
}

/** Stations that share a listener or a queue. */
interface Door {
  readonly key: string;
  readonly own: readonly Own[];
  readonly at: string;
  readonly isUp: () => boolean;
  readonly close: () => Promise<void>;
}

const defaults: Readonly<Record<Ipc2591Station['at'], CountedBy>> = {
  in: 'units-arrived',
  work: 'work-completed',
  out: 'units-departed',
};

const doorKey = ({ source }: Ipc2591Station): string =>
  source.listen ?? JSON.stringify([source.broker, source.address]);

const keysOf = ({ source: { user, password, tls } }: Ipc2591Station): string =>
  JSON.stringify([user, password, tls]);

/** Opens what the stations are heard by. Throws `LinkRefused` where that cannot be. `all`: every station of the link, for naming one by its number. */
export async function openIpc2591(
  stations: readonly Ipc2591Station[],
  all: readonly { readonly station: string }[],
  world: SourceWorld,
): Promise<Ipc2591> {
  const begun = newGate();
  const doors: Door[] = [];
  /** When each door's broker last was away, ms of `Now`. */
  const awayMs = new Map<string, number>();
  const own = stations.map((config) => openOwn(config, all, { world, awayMs }));
  refuseTwice(own);
  try {
    for (const key of new Set(stations.map(doorKey))) {
      const here = own.filter(({ config }) => doorKey(config) === key);
      awayMs.set(key, world.now().ms);
      doors.push(await openDoor(here, { world, begun: begun.opened, away: (ms) => awayMs.set(key, ms) }));
    }
  } catch (error) {
    await Promise.all([...doors.map((door) => door.close()), ...own.map((each) => each.close())]);
    throw error;
  }
  return {
    at: (station) =>
      doors.find((door) => door.own.some(({ config }) => config.station === station))?.at ?? '',
    begin: () => {
      for (const { desk, machine } of own) {
        machine.resume();
        desk.settle().catch(world.onFault);
      }
      begun.open();
    },
    tick: (now) => {
      world.floor?.tick(now.ms);
      for (const { key, isUp } of doors) if (!isUp()) awayMs.set(key, now.ms);
      for (const { machine } of own) machine.tick(now);
      return own.map(({ desk }) => desk.tick(now));
    },
    stop: async () => {
      begun.open();
      await Promise.all(doors.map((door) => door.close()));
      await Promise.all(own.map(({ machine }) => machine.settle()));
      await Promise.all(own.map(({ desk }) => desk.settle()));
      await Promise.all(own.map((each) => each.close()));
    },
  };
}

function newGate(): { readonly opened: Promise<void>; readonly open: () => void } {
  let open: () => void = () => undefined;
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { opened, open };
}

function openOwn(
  config: Ipc2591Station,
  all: readonly { readonly station: string }[],
  { world, awayMs }: { readonly world: SourceWorld; readonly awayMs: ReadonlyMap<string, number> },
): Own {
  const { folder, held, write, now, onFault, flush = true } = world;
  const { station, line, source } = config;
  const journal = openJournal(folder, station, flush);
  const boot = journal.boot();
  // What was accepted and not handed on before a kill.
  if (boot !== null) held.hold(station, boot, journal.total(boot)).catch(onFault);
  const index = all.findIndex((each) => each.station === station);
  const desk = openStationDesk(
    { station, line },
    { held, write, start: now(), silentMs: () => machine.silentMs(), isOwnCount: true },
  );
  const machine: Machine = openMachine(
    {
      station,
      line,
      counts: source.counts ?? defaults[config.at],
      lane: source.lane ?? null,
      slots: new Map(Object.entries(source.slots ?? {})),
    },
    {
      desk,
      journal,
      write,
      now,
      onFault,
      askLoaded: askerOf(config, 'CFX.Materials.Storage.GetLoadedMaterialsRequest', {
        LocationIdentifiers: [],
      }),
      askWanted: askerOf(config, 'CFX.Production.GetRequiredSetupRequest', {
        Lane: source.lane === undefined ? null : String(source.lane),
        Stage: null,
      }),
      floor: source.answers === true ? world.floor : null,
      brokerAwayMs: source.broker === undefined ? null : () => awayMs.get(doorKey(config)) ?? 0,
    },
  );
  const whose = openWhose(folder, station, source.handle ?? null);
  return { config, index, desk, machine, whose, close: journal.close };
}

/** Asks a station's machine a question of the standard; null where its file does not say where. */
function askerOf(
  { station, source }: Ipc2591Station,
  name: string,
  body: object,
): Parameters<typeof openMachine>[1]['askLoaded'] {
  const { connect, address = source.handle ?? '' } = source.ask ?? {};
  if (connect === undefined) return null;
  return () => ask({ connect, address }, { name, body, from: `reelward.${station}` });
}

/** Two stations that would both count every message of a machine. */
function refuseTwice(own: readonly Own[]): void {
  own.forEach(({ config, index }, at) => {
    const { handle, lane } = config.source;
    const twin = own.slice(0, at).find(({ config: other }) => {
      const isSameLane = lane === undefined || other.source.lane === undefined || lane === other.source.lane;
      const isSame =
        handle === undefined || other.source.handle === undefined || other.source.handle === handle;
      return doorKey(other) === doorKey(config) && isSame && isSameLane;
    });
    if (twin)
      throw new LinkRefused(
        `stations[${index}].source.handle: expected another than of ${twin.config.station}, which is heard there too; give each its own handle, or its own lane`,
      );
  });
}

interface Opening {
  readonly world: SourceWorld;
  readonly begun: Promise<void>;
  readonly away: (ms: number) => void;
}

async function openDoor(own: readonly Own[], opening: Opening): Promise<Door> {
  const [first] = own;
  if (!first) throw new RangeError('Cannot open a door for no station');
  const { source } = first.config;
  const key = doorKey(first.config);
  const { world, begun } = opening;
  const notice = (what: NoticeWhat, said: string) =>
    first.desk.notice(what, said, world.now()).catch(world.onFault);
  const message = async (bytes: Buffer, isGzip: boolean, from: From | null) => {
    await begun;
    await takeMessage(own, { bytes, isGzip, from, notice });
  };
  if (source.broker !== undefined && source.address !== undefined) {
    const { broker, address, ca = null } = source;
    const door: BrokerSource = openBroker(
      { broker, address, ca },
      {
        message: (bytes, isGzip) => message(bytes, isGzip, null),
        noBody: () => notice('not-understood', 'a message without a body'),
        trouble: (what) => void begun.then(() => notice('not-connected', what)),
        back: () => {
          const now = world.now();
          opening.away(now.ms);
          for (const { machine } of own) machine.backAt(now);
        },
      },
    );
    return { key, own, at: brokerPlace({ broker, address }), isUp: door.isUp, close: door.close };
  }
  const other = own.find(({ config }) => keysOf(config) !== keysOf(first.config));
  if (other)
    throw new LinkRefused(
      `stations[${other.index}].source: expected user, password and tls as of ${first.config.station}, which listens there too`,
    );
  const listen = source.listen ?? '';
  const { user = null, password = null, tls = null } = source;
  const { server, close } = createListener(
    { user, password, tls, answers: own.some(({ config }) => config.source.answers === true) },
    {
      message,
      noBody: () => notice('not-understood', 'a message without a body'),
      trouble: (what) => void begun.then(() => notice('not-understood', what)),
      wrongPassword: (name) => void begun.then(() => notice('wrong-secret', name)),
    },
  );
  const { host, port } = placeOf(listen);
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, host, resolve);
    });
  } catch (error) {
    const { code = 'unknown' } = error as NodeJS.ErrnoException;
    const why = code === 'EADDRINUSE' ? 'something listens there already' : `cannot listen there (${code})`;
    throw new LinkRefused(`stations[${first.index}].source.listen: ${listen}: ${why}`);
  }
  server.on('error', world.onFault);
  const { address, family, port: taken } = server.address() as AddressInfo; // it listens at a port
  const at = `${family === 'IPv6' ? `[${address}]` : address}:${taken}`;
  return { key, own, at, isUp: () => true, close };
}

/** Brings a message's envelopes to their stations; resolves when all of them are taken. */
async function takeMessage(
  own: readonly Own[],
  at: {
    readonly bytes: Buffer;
    readonly isGzip: boolean;
    readonly from: From | null;
    readonly notice: (what: NoticeWhat, said: string) => Promise<unknown>;
  },
): Promise<void> {
  const { envelopes, unread } = readEnvelopes(at.bytes, at.isGzip);
  const taking = unread.map((why) => at.notice('not-understood', why));
  for (const envelope of envelopes) {
    const machines = own.filter(({ whose }) => whose.takes(envelope.source));
    if (machines.length === 0) taking.push(at.notice('other-handle', envelope.source));
    for (const { machine } of machines)
      taking.push(machine.take(envelope, at.from?.peer ?? null, at.from?.reply));
  }
  await Promise.all(taking);
}
