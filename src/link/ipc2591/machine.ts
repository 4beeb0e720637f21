// What does a machine's stream of messages come to? One running total for its station, splice points, parts used, and what was not taken.
// Method: a panel is on the disk, under its message's name, before the message is accepted; so that what is lost with a connection is sent
// again, and counts once. Counting goes on under one name as long as nothing can have been missed: where a broker keeps what was said, or the
// machine was heard all the time. After a silence it goes on under a new name, since nobody knows what passed; what the machine says later of
// that while goes under the old one. Everything is decided in the order of arrival before anything is waited for.
// Refused: one name for good, since counts by hand of a silence would be replaced by a number that does not know of it.

import { BEATS_MISSED } from '../../../shared/floor/counters.ts';
import type { FloorWatch } from '../floor.ts';
import type { Now, StationDesk, WriteEntry } from '../station-desk.ts';
import { type Asides, openAsides } from './asides.ts';
import type { Answered } from './ask.ts';
import { openAskedDesks, slotOf } from './asked-desks.ts';
import type { Envelope } from './envelope.ts';
import type { Journal } from './journal.ts';
import type { LoadedDesk } from './loaded.ts';
import { type CountedBy, type Place, readSaid, type Said } from './messages.ts';
import type { OfferedDesk } from './offered.ts';
import { type Count, openSteps, type Steps, tellLate } from './steps.ts';
import { openUnused, type Unused } from './unused.ts';
import { openUses, type Uses } from './uses.ts';
import { openValidator, type Reply, VALIDATE } from './validate.ts';

/** A machine beats so often where it does not say, ms; at the least so often, as the standard has it. */
export const BEAT_MS = 60_000;
const BEAT_MOST_MS = 300_000;
const BEAT_LEAST_MS = 1_000;
/** Over a silence, a beat may come so late, ms. */
const LATE_BEAT_MS = 2_000;
/** What happened so long before it came was kept, ms. */
const OLD_MS = 5_000;
/** Words of a silence may come so long after it, ms. */
const AFTER_MOST_MS = 600_000;
/** A message that happened so long before a silence ended is of it, ms. */
const OF_SILENCE_MS = 5_000;
/** A machine's clock further off is told, ms. */
const CLOCK_OFF_MS = 300_000;
const LAGS_KEPT = 16;

/** What a station of this kind is told. */
export interface MachineConfig {
  readonly station: string;
  readonly line: string;
  readonly counts: CountedBy;
  /** Only what is said of this lane; null: of any. */
  readonly lane: number | null;
  /** The machine's name of a place -> the line's slot. */
  readonly slots: ReadonlyMap<string, string>;
}

/** Who sends: one connection. */
export interface Peer {
  readonly host: string;
  readonly isOpen: () => boolean;
}

/** What a machine works with. */
export interface MachineWorld {
  readonly desk: StationDesk;
  readonly journal: Journal;
  readonly write: WriteEntry;
  readonly now: () => Now;
  /** The last moment at which a broker's messages could not come in, ms of `Now`; null: no broker stands between. */
  readonly brokerAwayMs: (() => number) | null;
  /** Asks the machine what it has loaded; null where it may not be asked. */
  readonly askLoaded: (() => Promise<Answered>) | null;
  /** Asks it which setup it wants; likewise. */
  readonly askWanted: (() => Promise<Answered>) | null;
  /** The floor by the plant's log, to answer the machine by; null where it may not be answered. */
  readonly floor: FloorWatch | null;
  readonly onFault: (error: unknown) => void;
}

/** One machine. */
export interface Machine {
  /** Takes an envelope; resolves when all of it that counts is on the disk. `peer`: who sent it; null: a broker; `reply`: to who asked. */
  readonly take: (envelope: Envelope, peer: Peer | null, reply?: Reply) => Promise<unknown>;
  /** Tells what was taken before a kill and may not be in the log. */
  readonly resume: () => void;
  /** A broker's messages come in from now on: what it has kept comes first. */
  readonly backAt: (now: Now) => void;
  /** Without a message for so long it is silent, ms. */
  readonly silentMs: () => number;
  readonly tick: (now: Now) => void;
  /** Resolves when all that was taken is told. */
  readonly settle: () => Promise<unknown>;
}

interface Work extends MachineWorld {
  readonly config: MachineConfig;
  readonly uses: Uses;
  readonly asides: Asides;
  readonly loaded: LoadedDesk;
  readonly offered: OfferedDesk;
  beatMs: number;
  heardMs: number | null;
  sender: { readonly peer: Peer; heardMs: number } | null;
  /** The newest silence: when it ended, and the clock as known before it. */
  silence: { readonly endMs: number; readonly endWallMs: number; readonly offMs: number | null } | null;
  lags: number[];
  readonly steps: Steps;
  readonly unused: Unused;
  /** Names of messages whose effect is not on the disk yet. */
  readonly open: Set<string>;
}

/** Opens one machine's books. */
export function openMachine(config: MachineConfig, world: MachineWorld): Machine {
  const offMs = world.journal.offMs();
  const work: Work = {
    ...world,
    config,
    uses: openUses(),
    asides: openAsides(config, world.write),
    ...openAskedDesks(config, world),
    beatMs: BEAT_MS,
    heardMs: null,
    sender: null,
    silence: null,
    lags: offMs === null ? [] : [offMs],
    steps: openSteps({ ...world, told: world.journal.told }),
    unused: openUnused(world.desk),
    open: new Set(),
  };
  const { station, line } = config;
  const slotOfPlace = (place: Place) => slotOf(config, place);
  const { floor, write, desk } = world;
  const validator =
    floor && openValidator({ station, line, floor, slotOf: slotOfPlace, write, notice: desk.notice });
  return {
    take: (envelope, peer, reply) => {
      const isQuestion = envelope.name === VALIDATE && validator !== null && reply !== undefined;
      return isQuestion ? validator.answer(envelope, reply, work.now()) : take(work, envelope, peer);
    },
    resume: () => {
      for (const [key, { boot, total, code: serial, skipped }] of world.journal.untold())
        work.steps.put(null, {
          count: { key, boot, total, serial, skipped: skipped && [...skipped], state: null },
        });
    },
    backAt: (now) => {
      const isLong = work.heardMs === null || now.ms - work.heardMs > silentMs(work);
      work.steps.gather(now, isLong);
    },
    silentMs: () => silentMs(work),
    tick: (now) => {
      tick(work, now);
      validator?.tick(now, false).catch(work.onFault);
    },
    settle: async () => {
      const now = work.now();
      await work.steps.settle();
      await Promise.all([
        tellUses(work, now, true),
        work.unused.tick(now, true),
        work.asides.tick(now, true),
        validator?.tick(now, true),
      ]);
    },
  };
}

const silentMs = (work: Work): number => BEATS_MISSED * work.beatMs + LATE_BEAT_MS;

async function take(work: Work, envelope: Envelope, peer: Peer | null): Promise<unknown> {
  const { journal, desk } = work;
  const now = work.now();
  if (peer && isOther(work, peer, now))
    return desk.notice('two-devices', `${envelope.source}: ${work.sender?.peer.host}, ${peer.host}`, now);
  const said = readSaid(envelope);
  const saving: Promise<unknown>[] = [];
  saving.push(...hear(work, envelope, now));
  saving.push(...readClock(work, envelope, said, now));
  if (said.is === 'beat') {
    if (said.everyMs !== null) work.beatMs = Math.min(BEAT_MOST_MS, Math.max(BEAT_LEAST_MS, said.everyMs));
    work.steps.put(null, { count: present(work) });
  } else if (journal.has(envelope.key) || work.open.has(envelope.key))
    work.steps.put(null, { count: present(work) });
  else saving.push(...act(work, { envelope, said, now }));
  return Promise.all(saving);
}

/** True where another sender under the same handle is being heard: the first one counts. */
function isOther(work: Work, peer: Peer, now: Now): boolean {
  const { sender } = work;
  const isHeard = sender?.peer.isOpen() && now.ms - sender.heardMs <= silentMs(work);
  if (sender && isHeard && sender.peer.host !== peer.host) return true;
  work.sender = { peer, heardMs: now.ms };
  return false;
}

/** The machine is heard: after a silence, or a start, in which something may have been missed it counts under a new name. */
function hear(work: Work, envelope: Envelope, now: Now): readonly Promise<unknown>[] {
  const { journal, brokerAwayMs, heardMs } = work;
  work.heardMs = now.ms;
  work.loaded.heard(now);
  work.offered.heard(now);
  if (wasKept(work, envelope, now)) work.steps.keptMore(now);
  const isFirst = journal.boot() === null;
  const wasSilent = heardMs !== null && now.ms - heardMs > silentMs(work);
  // A broker keeps what is said while this link is away, not what a machine that is away itself does not say.
  const isMissed = brokerAwayMs
    ? wasSilent && brokerAwayMs() <= (heardMs ?? 0)
    : wasSilent || heardMs === null;
  if (!isFirst && !isMissed) return [];
  const offMs = work.lags.length === 0 ? null : Math.min(...work.lags);
  if (!isFirst) work.silence = { endMs: now.ms, endWallMs: now.wallMs, offMs };
  const { saved } = journal.begin();
  // None, before the first panel: so that it is a rise.
  work.steps.put(saved, { count: present(work) });
  return [saved];
}

/** True where it happened a while ago, by the machine's clock as it is known: a broker has kept it. */
function wasKept({ lags }: Work, { atMs }: Envelope, now: Now): boolean {
  return atMs !== null && lags.length > 0 && now.wallMs - atMs - Math.min(...lags) > OLD_MS;
}

/** The total as it stands, with nothing new. */
function present({ journal }: Work): Count {
  const boot = journal.boot() ?? '';
  return { boot, total: journal.total(boot), serial: null, skipped: null, state: null };
}

/** How far the machine's clock is off: by the least that any of its newest messages was late. */
function readClock(work: Work, { atMs }: Envelope, said: Said, now: Now): readonly Promise<unknown>[] {
  if (atMs === null) return [];
  work.lags = [...work.lags, now.wallMs - atMs].slice(-LAGS_KEPT);
  const offMs = Math.min(...work.lags);
  const known = work.journal.offMs();
  if (known === null || Math.abs(known - offMs) > 2_000) work.journal.setOff(offMs);
  const isOff = said.is === 'beat' && !work.steps.isGathering() && Math.abs(offMs) > CLOCK_OFF_MS;
  return isOff ? [work.desk.notice('clock-off', new Date(atMs).toISOString(), now)] : [];
}

/** How long ago it happened, by the machine's clock as it is known, ms. */
function lateMs({ lags }: Work, { atMs }: Envelope, now: Now): number {
  const offMs = lags.length === 0 ? 0 : Math.min(...lags);
  return atMs === null ? 0 : Math.max(0, now.wallMs - atMs - offMs);
}

/** True where it was said of a while that had passed before the newest silence ended. */
function isOfSilence({ silence, journal }: Work, { atMs }: Envelope, now: Now): boolean {
  if (!silence || silence.offMs === null || atMs === null || journal.bootBefore() === null) return false;
  return now.ms - silence.endMs < AFTER_MOST_MS && atMs + silence.offMs < silence.endWallMs - OF_SILENCE_MS;
}

interface Heard {
  readonly envelope: Envelope;
  readonly said: Exclude<Said, { readonly is: 'beat' }>;
  readonly now: Now;
}

function act(work: Work, heard: Heard): readonly Promise<unknown>[] {
  const { journal, config, desk } = work;
  const { envelope, said, now } = heard;
  const { key, name } = envelope;
  switch (said.is) {
    case 'started':
      if (said.work === null || isOtherLane(config, said.lane)) return [];
      if (said.code !== null) tellLate(work.steps, journal.uncoded(said.work), said.code);
      return [journal.work(key, said.work, said)];
    case 'panel':
      if (said.by !== config.counts) return noUse(work, name, now);
      return isOtherLane(config, said.lane) ? [] : countPanel(work, { ...heard, said });
    case 'no-panel':
      return [];
    case 'state':
      work.steps.put(null, {
        count: { ...present(work), state: said.code, stateMs: now.ms - lateMs(work, envelope, now) },
      });
      return [];
    case 'splice':
    case 'empty':
      return [tellTape(work, { ...heard, said })];
    case 'used':
      return use(work, { ...heard, said });
    case 'pick-fault':
    case 'cleared':
    case 'aired':
    case 'recipe':
      return [journal.key(key), work.asides.take(said, { now, atMs: now.ms - lateMs(work, envelope, now) })];
    case 'loaded':
      // Nobody here asked for it: it may be of some places only.
      return [work.loaded.take({ places: said.places, whole: false }, now)];
    case 'wanted':
      return [work.offered.take(said.wanted)];
    case 'wants-other':
      if (work.askWanted === null) return noUse(work, name, now);
      work.offered.changed(now);
      return [];
    case 'moved':
      if (work.askLoaded === null) return noUse(work, name, now);
      work.loaded.moved(now);
      return [];
    case 'unused':
      return noUse(work, name, now);
    case 'unread':
      return [desk.notice('not-understood', `${name}: ${said.why}`, now)];
    default:
      return said satisfies never;
  }
}

const isOtherLane = ({ lane }: MachineConfig, said: number | null): boolean =>
  lane !== null && said !== null && said !== lane;

type HeardOf<I extends Said['is']> = Heard & { readonly said: Extract<Said, { readonly is: I }> };

function countPanel(work: Work, { envelope, said, now }: HeardOf<'panel'>): readonly Promise<unknown>[] {
  const { journal } = work;
  const boot = (isOfSilence(work, envelope, now) ? journal.bootBefore() : journal.boot()) ?? '';
  const began = said.work === null ? null : journal.workOf(said.work);
  const serial = said.code ?? began?.code ?? null;
  const skips = said.skipped ?? began?.skipped ?? null;
  const { key } = envelope;
  const { total, saved } = journal.panel(key, boot, { code: serial, skipped: skips }, said.work);
  const skipped = skips === null ? null : [...skips];
  work.steps.put(saved, { count: { key, boot, total, serial, skipped, state: null } });
  return [saved];
}

/** A splice point, or an empty tape: into the log behind all panels counted so far. */
function tellTape(work: Work, { envelope, said, now }: HeardOf<'splice' | 'empty'>): Promise<unknown> {
  const { write, journal, desk, open } = work;
  const { station, line } = work.config;
  const late = Math.round(lateMs(work, envelope, now) / 1000);
  const entries =
    said.is === 'splice'
      ? [
          () => {
            const { from, to } = said;
            const slot = slotOf(work.config, to) ?? slotOf(work.config, from);
            const grey = Math.max(from.grey, to.grey);
            const facts = {
              depleted: from.reel,
              active: to.reel,
              feeder: to.feeder ?? from.feeder,
              quantity: to.quantity,
            };
            return write('tape.changed', { station, line, slot, ...facts, grey, late });
          },
        ]
      : said.places.map((place) => () => {
          const { reel, feeder } = place;
          return write('tape.empty', { station, line, slot: slotOf(work.config, place), reel, feeder, late });
        });
  open.add(envelope.key);
  return new Promise((done, failed) => {
    const told = async () => {
      await Promise.all([desk.settle(), ...entries.map((tell) => tell())]);
      await journal.key(envelope.key);
      open.delete(envelope.key);
    };
    work.steps.put(null, { act: () => told().then(() => done(undefined), failed) });
  });
}

/** Parts used: by what the machine consumed, where it ever tells that; else by what it installed. */
function use(work: Work, { envelope, said, now }: HeardOf<'used'>): readonly Promise<unknown>[] {
  const { journal, uses } = work;
  if (said.by === 'consumed' && !journal.tellsConsumed()) {
    journal.setConsumed();
    uses.clear();
  }
  if (said.by === 'installed' && journal.tellsConsumed()) return [];
  uses.add(said.uses, ({ place }) => slotOf(work.config, place), now.ms);
  return [journal.key(envelope.key)];
}

function noUse(work: Work, name: string, now: Now): readonly Promise<unknown>[] {
  work.unused.add(name, now);
  return [];
}

function tick(work: Work, now: Now): void {
  work.steps.tick(now);
  work.loaded.tick(now);
  work.offered.tick(now);
  const telling = [
    tellUses(work, now, false),
    work.asides.tick(now, false),
    work.unused.tick(now, false),
    // Words of a silence are of the name before: the desk beats with the newest alone.
    work.silence ? work.desk.settle() : null,
  ];
  if (work.silence && now.ms - work.silence.endMs >= AFTER_MOST_MS) work.silence = null;
  for (const each of telling) each?.catch(work.onFault);
}

function tellUses(work: Work, now: Now, isEnd: boolean): Promise<unknown> | null {
  const { station, line } = work.config;
  const rows = work.uses.due(now.ms, isEnd);
  return Promise.all(rows.map((uses) => work.write('parts.used', { station, line, uses: [...uses] })));
}
