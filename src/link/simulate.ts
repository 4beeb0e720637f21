// Three invented machines with devices as they are: messages get lost, come twice and out of order, the power goes, the link is killed, the
// network is away and people count meanwhile. What passed is known, so that every difference must be explained.
// Method: the link's own desk, spool and files in a folder, under a clock that is played; the tablets' own fold counts.
// Refused: a model of the link, which would show what the model does.

import { applyAll } from '../../shared/floor/fold.ts';
import { checkPayload, type EntryKind, type PayloadOf } from '../../shared/floor/kinds.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { seededChance } from '../../shared/kit/chance.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { openHeld } from './held.ts';
import { openIdentity } from './identity.ts';
import { openSpool } from './spool.ts';
import { type CountMessage, type Now, openStationDesk } from './station-desk.ts';

/** What is played. */
export interface DraftEntry {
  /** An empty folder for the link's files. */
  readonly folder: string;
  readonly panels: number;
  readonly seed: number;
}

/** One machine at the end. `passed` = `counted` + `unseen` + `unsaid` - `covered`, or nothing explains the rest. */
export interface Played {
  readonly line: string;
  readonly keepsTotal: boolean;
  readonly passed: number;
  readonly counted: number;
  /** Passed while the device had no power. */
  readonly unseen: number;
  /** Seen by the device and lost with its memory when the power went, before any message of it came through. */
  readonly unsaid: number;
  /** Of these, what people had counted while nobody heard the device: their count stands where another boot knows less. */
  readonly covered: number;
  readonly unexplained: number;
}

/** What happened, and how it ended. */
export interface Simulated {
  readonly machines: readonly Played[];
  readonly messages: number;
  readonly lost: number;
  /** Not sent, since the network was away. */
  readonly away: number;
  readonly doubled: number;
  readonly late: number;
  readonly powerCuts: number;
  readonly kills: number;
  readonly entries: number;
}

const START_MS = Date.UTC(2026, 2, 2, 6);
const PANEL_MS = 12_000;
const BEAT_MS = 10_000;
const LOST = 0.02;
const DOUBLED = 0.01;
const LATE = 0.03;
const CUT_EVERY_MS = 2 * 3_600_000;
const AWAY_EVERY_MS = 3 * 3_600_000;
const AWAY_MS = 15 * 60_000;
const KILL_EVERY_MS = 90 * 60_000;
const STEP_MS = 1_000;
/** People notice the silence so long after it began. */
const NOTICED_MS = 400_000;
/** At the end nothing passes any more. */
const QUIET_MS = 20 * 60_000;

interface Device {
  readonly line: string;
  readonly keepsTotal: boolean;
  boot: string;
  total: number;
  /** Highest total of this boot that came through. */
  said: number;
  passed: number;
  unseen: number;
  unsaid: number;
  nextPanelMs: number;
  nextBeatMs: number;
  darkUntilMs: number;
  readonly waiting: { readonly atMs: number; readonly message: CountMessage }[];
}

/** A play: devices, the link, people, chance and the clock. */
interface Play {
  readonly clock: { ms: number };
  readonly wanted: number;
  readonly chance: () => number;
  readonly devices: readonly Device[];
  readonly people: ReturnType<typeof tablet>;
  readonly told: Told;
  /** Boots that are over, and how much of each came through. */
  readonly over: Map<string, { said: number }>;
  link: ReturnType<typeof openLink>;
}

type Told = { -readonly [K in Exclude<keyof Simulated, 'machines' | 'entries'>]: number };

/** Plays it. Cost: some 2 ms a panel. */
export async function simulate(wish: DraftEntry): Promise<Simulated> {
  const identity = openIdentity(wish.folder);
  const devices = ['L1', 'L2', 'L3'].map(newDevice);
  const clock = { ms: 0 };
  const now = (): Now => ({ ms: clock.ms, wallMs: START_MS + clock.ms });
  const open = () => openLink(wish.folder, { identity, devices, now });
  const play: Play = {
    clock,
    wanted: Math.ceil(wish.panels / devices.length),
    chance: seededChance(wish.seed),
    devices,
    people: tablet(() => START_MS + clock.ms),
    told: { messages: 0, lost: 0, away: 0, doubled: 0, late: 0, powerCuts: 0, kills: 0 },
    over: new Map(),
    link: open(),
  };
  for (const { line } of devices) {
    const known = { machine: null, at: 'out', means: 'counter', version: 'simulated', address: '' } as const;
    await play.link.spool.write('station.known', { station: `${line}-exit`, line, ...known });
  }
  clock.ms = 10_000;
  for (const { line } of devices) play.people.open(line);
  const isBusy = () => devices.some(({ passed }) => passed < play.wanted);
  for (let quietMs = 0; isBusy() || quietMs < QUIET_MS; clock.ms += STEP_MS) {
    if (!isBusy()) quietMs += STEP_MS;
    await second(play, now, { open, isBusy: isBusy() });
  }
  const entries = await allOf(play.link.spool, identity);
  await play.link.abandon();
  return { ...play.told, entries: entries.length, machines: outcome(play, entries) };
}

function newDevice(line: string, at: number): Device {
  return {
    line,
    keepsTotal: at !== 1,
    boot: `${line}-1`,
    total: 0,
    said: 0,
    passed: 0,
    unseen: 0,
    unsaid: 0,
    nextPanelMs: 180_000 + at * 3_000,
    nextBeatMs: 20_000,
    darkUntilMs: 0,
    waiting: [],
  };
}

/** One second of the plant. */
async function second(
  play: Play,
  now: () => Now,
  at: { readonly open: () => ReturnType<typeof openLink>; readonly isBusy: boolean },
): Promise<void> {
  const { devices, chance } = play;
  const { ms } = play.clock;
  if (at.isBusy && ms % CUT_EVERY_MS === CUT_EVERY_MS / 2)
    for (const device of devices) if (chance() < 0.8) cut(play, device);
  if (ms % KILL_EVERY_MS === KILL_EVERY_MS - STEP_MS) {
    // Killed: nothing is settled; what is on the disk is all there is.
    play.told.kills += 1;
    await play.link.abandon();
    play.link = at.open();
    for (const desk of play.link.desks.values()) await desk.settle();
  }
  if (ms % AWAY_EVERY_MS === AWAY_EVERY_MS - AWAY_MS + NOTICED_MS)
    for (const { line } of devices) play.people.miss(line);
  for (const device of devices) {
    await step(play, device, now);
    await play.link.desks.get(device.line)?.tick(now());
  }
}

/** One second of one machine: panels pass, its device sends. */
async function step(play: Play, device: Device, now: () => Now): Promise<void> {
  const { chance, people } = play;
  const { ms } = play.clock;
  const isAway = ms % AWAY_EVERY_MS > AWAY_EVERY_MS - AWAY_MS;
  const isDark = ms < device.darkUntilMs;
  for (const { message } of device.waiting.filter(({ atMs }) => atMs <= ms))
    await send(play, device, { message, now });
  device.waiting.splice(0, device.waiting.length, ...device.waiting.filter(({ atMs }) => atMs > ms));
  if (ms >= device.nextPanelMs && device.passed < play.wanted) {
    device.nextPanelMs += PANEL_MS * (0.7 + 0.6 * chance());
    device.passed += 1;
    if (isDark) device.unseen += 1;
    else device.total += 1;
    // People miss some too.
    if (isAway && people.stands(device.line, ms) && chance() < 0.97) people.count(device.line);
  }
  const isDue = ms >= device.nextBeatMs || device.total > device.said;
  if (isDark || !isDue || ms < device.nextBeatMs - BEAT_MS + STEP_MS) return;
  device.nextBeatMs = ms + BEAT_MS;
  await speak(play, device, { isAway, now });
}

/** A message goes out, and fares as messages do. */
async function speak(
  play: Play,
  device: Device,
  { isAway, now }: { readonly isAway: boolean; readonly now: () => Now },
): Promise<void> {
  const { chance, told } = play;
  const { ms } = play.clock;
  const { boot, total } = device;
  const message = { boot, total, atMs: START_MS + ms, serial: null, skipped: null, state: null };
  told.messages += 1;
  const luck = chance();
  if (isAway) told.away += 1;
  else if (luck < LOST) told.lost += 1;
  else if (luck < LOST + LATE) {
    told.late += 1;
    device.waiting.push({ atMs: ms + 1_000 + Math.floor(chance() * 25_000), message });
  } else {
    if (luck > 1 - DOUBLED) {
      told.doubled += 1;
      device.waiting.push({ atMs: ms + Math.floor(chance() * 20_000), message });
    }
    await send(play, device, { message, now });
  }
}

async function send(
  play: Play,
  device: Device,
  { message, now }: { readonly message: CountMessage; readonly now: () => Now },
): Promise<void> {
  await play.link.desks.get(device.line)?.take(message, now());
  const { boot, total } = message;
  if (boot === device.boot) {
    device.said = Math.max(device.said, total);
    return;
  }
  // A late word of a boot that is over takes back what was booked as lost with it.
  const over = play.over.get(boot);
  if (!over || total <= over.said) return;
  device.unsaid -= total - over.said;
  over.said = total;
}

/** The power goes, and with it the memory of a device that does not keep its total. */
function cut(play: Play, device: Device): void {
  play.told.powerCuts += 1;
  device.darkUntilMs = play.clock.ms + 5_000 + Math.floor(play.chance() * 15_000);
  device.nextBeatMs = device.darkUntilMs;
  if (device.keepsTotal) return;
  play.over.set(device.boot, { said: device.said });
  device.unsaid += device.total - device.said;
  device.boot = `${device.line}-${play.told.powerCuts + 1}`;
  [device.total, device.said] = [0, 0];
}

/** What the tablets count by the link's log and the people's. */
function outcome({ devices, people }: Play, entries: readonly Entry[]): readonly Played[] {
  const state = applyAll(emptyState(), [...entries, ...people.entries].sort(compareEntries));
  return devices.map(({ line, keepsTotal, passed, unseen, unsaid }) => {
    const counted = state.runs.get(`run-${line}`)?.done ?? 0;
    const covered = (state.counters.get(line)?.both ?? []).reduce(
      (sum, { stands, hand, machine }) => (stands === 'hand' ? sum + hand - machine : sum),
      0,
    );
    const unexplained = passed - counted - unseen - unsaid + covered;
    return { line, keepsTotal, passed, counted, unseen, unsaid, covered, unexplained };
  });
}

function openLink(
  folder: string,
  of: {
    readonly identity: ReturnType<typeof openIdentity>;
    readonly devices: readonly Pick<Device, 'line'>[];
    readonly now: () => Now;
  },
) {
  const spool = openSpool(folder, of.identity, () => of.now().wallMs, false);
  const held = openHeld(folder, false);
  const parts = { held, write: spool.write, start: of.now() };
  const desks = new Map(
    of.devices.map(({ line }) => [line, openStationDesk({ station: `${line}-exit`, line }, parts)]),
  );
  return {
    spool,
    desks,
    abandon: async () => {
      await held.close();
      await spool.close();
    },
  };
}

async function allOf(
  spool: ReturnType<typeof openSpool>,
  identity: ReturnType<typeof openIdentity>,
): Promise<Entry[]> {
  const all: Entry[] = [];
  for (;;) {
    const page = await spool.log.entriesAfter(identity, all.length, 500);
    if (page.length === 0) return all;
    all.push(...page);
  }
}

/** The plant's people: their lines, their runs, and what they count where a station is silent. */
function tablet(wallMs: () => number) {
  const entries: Entry[] = [];
  const missed = new Map<string, number>();
  let hlc = 0;
  const tell = <K extends EntryKind>(kind: K, payload: PayloadOf<K>) => {
    hlc = Math.max(hlc + 1, wallMs());
    const before = entries.at(-1);
    entries.push(
      sealEntry({
        v: 1,
        tablet: 'T1',
        epoch: 'e1',
        seq: entries.length + 1,
        at: new Date(wallMs()).toISOString(),
        hlc: { ms: hlc, n: 0 },
        who: 'p1',
        kind,
        payload: checkPayload(kind, payload),
        prev: before?.hash ?? firstPrev,
      }),
    );
  };
  return {
    entries,
    open: (line: string) => {
      const machines = [{ machine: 'M1', name: 'M1', banks: [{ bank: 'F', name: 'F', positions: 10 }] }];
      tell('line.defined', { line, name: line, zone: 'UTC', machines });
      tell('line.counted-by', { line, station: `${line}-exit` });
      const job = { setup: 's', product: 'p', panelsWanted: 1_000_000, panelPrefix: null };
      tell('run.started', { run: `run-${line}`, line, ...job, panelSeconds: PANEL_MS / 1000, panelSd: 0 });
    },
    miss: (line: string) => {
      missed.set(line, wallMs());
      const since = new Date(wallMs() - NOTICED_MS).toISOString();
      tell('station.silent', { station: `${line}-exit`, line, since, told: 'tablet' });
    },
    /** People count from the silence until the device is heard again. */
    stands: (line: string, ms: number) =>
      missed.has(line) && START_MS + ms - (missed.get(line) ?? 0) < AWAY_MS - NOTICED_MS,
    count: (line: string) =>
      tell('panels.counted', { run: `run-${line}`, line, add: 1, panels: 0, serial: null, via: 'typed' }),
  };
}
