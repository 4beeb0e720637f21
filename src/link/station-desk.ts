// What does one message of a device mean, and what of it goes into the log? Highest totals by boot; silence after three missed beats; two
// devices under one name; clocks that are off; totals that fall. Told once each, and counted.
// Method: a total goes into the log at once while the station's budget lasts (log-budget.ts), so that a year of a line stays below a gigabyte;
// a panel's code goes there at once. All is decided before anything is waited for, so that messages at one time do not cross.
// Refused: an entry a beat, and a count that rests on a device's clock.

import { BEATS_MISSED, LINK_BEAT_MS } from '../../shared/floor/counters.ts';
import type { EntryKind, PayloadOf } from '../../shared/floor/kinds.ts';
import type { CounterStation } from './config.ts';
import type { Held, HeldBoot } from './held.ts';
import { type LogBudget, openLogBudget, SPARED_MOST } from './log-budget.ts';
import { type Notices, type NoticeWhat, openNotices } from './notices.ts';

/** A device sends at least so often, ms. */
const DEVICE_BEAT_MS = 10_000;
/** Then it is silent, ms; a beat may come a little late. */
export const SILENT_MS = BEATS_MISSED * DEVICE_BEAT_MS + 2_000;
/** Totals that come closer than this wait for the next second, ms: what a relay had kept comes all at once. */
const TOTALS_APART_MS = 500;
/** Between two states of a station in the log, ms. */
const STATE_EVERY_MS = 17_000;
/** What is left of the budget is kept so often, ms, and after so many totals, the first since a start among them: a link that a power cut ends again and again spends no more. */
const KEEP_SPARED_MS = 3_600_000;
const KEEP_SPARED_TOTALS = 200;
/** An old boot that still rises so long after a new one began is another device, ms: no message is on its way for so long. */
const LATE_MOST_MS = 60_000;
/** How often it must have risen by then, and how far apart, ms: what a relay had kept comes all at once. */
const LATE_RISES = 3;
const LATE_APART_MS = 5_000;
/** A device's clock further off is told, ms. */
const CLOCK_OFF_MS = 5 * 60_000;
/** Messages in a row below the highest total, over so long, ms: it fell, and was not late. */
const FELL_MESSAGES = 3;
const FELL_MS = 20_000;
/** Codes of a boot that are remembered. */
const CODES_KEPT = 2_000;

/** A device's message, checked. */
export interface CountMessage {
  readonly boot: string;
  readonly total: number;
  /** The device's own clock, ms since 1970; null where it has none. */
  readonly atMs: number | null;
  readonly serial: string | null;
  readonly skipped: number | number[] | null;
  readonly state: number | null;
  /** Since when it is in that state, `ms` of `Now`; absent: since this message. */
  readonly stateMs?: number;
  /** The total is the link's own, one panel a message: a code that the run has counted adds nothing. */
  readonly once?: boolean;
}

/** Where entries go; sealed at once, the promise resolves when it is on the disk. */
export type WriteEntry = <K extends EntryKind>(kind: K, payload: PayloadOf<K>) => Promise<unknown>;

/** A moment: `ms` of a clock that never jumps, and the true time as far as it is known. */
export interface Now {
  readonly ms: number;
  readonly wallMs: number;
}

/** One station. */
export interface StationDesk {
  /** Takes a message; resolves with the highest total held of its boot when that is on the disk. */
  readonly take: (message: CountMessage, now: Now) => Promise<{ boot: string; total: number }>;
  /** A message that was not taken. */
  readonly notice: (what: NoticeWhat, said: string, now: Now, times?: number) => Promise<unknown>;
  /** Time passes: what waits goes into the log, and a silence is told. */
  readonly tick: (now: Now) => Promise<unknown>;
  /** All that is held goes into the log. */
  readonly settle: () => Promise<unknown>;
}

/** What is known of a boot since the link started. */
interface Boot {
  readonly firstMs: number;
  hasRisen: boolean;
  /** Rises since a newer boot began, and the last of them. */
  late: number;
  lateMs: number;
  said: boolean;
  logged: number;
  /** Code -> total, as logged. */
  readonly codes: Map<string, number>;
  /** Messages below the highest total, since when, and the least of them. */
  below: { messages: number; readonly sinceMs: number; least: number } | null;
}

const newBoot = (now: Now): Boot => ({
  firstMs: now.ms,
  hasRisen: false,
  late: 0,
  lateMs: Number.NEGATIVE_INFINITY,
  said: false,
  logged: -1,
  codes: new Map(),
  below: null,
});

/** What a desk works on. */
interface Work {
  readonly station: string;
  readonly line: string;
  readonly held: Held;
  readonly write: WriteEntry;
  readonly notices: Notices;
  readonly boots: Map<string, Boot>;
  readonly silentMs: () => number;
  readonly budget: LogBudget;
  sparedKeptMs: number;
  /** Totals in the log since then; null before the first one since the start. */
  sinceSpared: number | null;
  loggedMs: number;
  heard: Now | null;
  isSilent: boolean;
  /** The newest state and since when; which is in the log, when it was written, and since when it was so. */
  state: { code: number; fromMs: number; logged: number | null; atMs: number; loggedFromMs: number } | null;
  readonly isOwnCount: boolean;
}

/** What is to be on the disk before the device is answered. */
type Saving = readonly (Promise<unknown> | null)[];

/** What a desk is opened with. */
export interface DeskParts {
  readonly held: Held;
  readonly write: WriteEntry;
  /** What was heard before is taken as heard then. */
  readonly start: Now;
  /** Without a message for so long the device is silent, ms; absent: as of a device that sends every ten seconds. */
  readonly silentMs?: () => number;
  /** True where the totals are this link's own: no two devices are among them, and none falls. */
  readonly isOwnCount?: boolean;
}

/** Opens the desk of one station. */
export function openStationDesk(
  { station, line }: Pick<CounterStation, 'station' | 'line'>,
  { held, write, start, silentMs = () => SILENT_MS, isOwnCount = false }: DeskParts,
): StationDesk {
  const work: Work = {
    station,
    line,
    held,
    write,
    notices: openNotices({ station, line }, held, write),
    boots: new Map(),
    silentMs,
    budget: openLogBudget(held.spared(station) ?? SPARED_MOST, start.ms),
    sparedKeptMs: start.ms,
    sinceSpared: null,
    loggedMs: Number.NEGATIVE_INFINITY,
    heard: held.boots(station).length > 0 ? start : null,
    isSilent: false,
    state: null,
    isOwnCount,
  };
  return {
    take: (message, now) => take(work, message, now),
    notice: work.notices.add,
    tick: (now) => tick(work, now),
    settle: async () => {
      await settle(work);
      held.keepSpared(station, work.budget.spared());
    },
  };
}

const heldOf = ({ held, station }: Work, boot: string): HeldBoot | undefined =>
  held.boots(station).find((each) => each.boot === boot);

const isForeign = ({ held, station }: Work, boot: string): boolean => held.foreign(station).has(boot);

const newest = (work: Work): HeldBoot | undefined =>
  work.held
    .boots(work.station)
    .filter(({ boot }) => !isForeign(work, boot))
    .at(-1);

const loggedOf = (work: Work, name: string): number =>
  Math.max(heldOf(work, name)?.logged ?? -1, work.boots.get(name)?.logged ?? -1);

/** A total that fell counts on under a name of its own, from where it fell to; unless it is back where it was. */
function nameOf(work: Work, { boot, total }: CountMessage): { readonly name: string; readonly base: number } {
  const fallen = work.held.falls(work.station).get(boot);
  if (!fallen) return { name: boot, base: 0 };
  const name = `${boot}~${fallen.times}`;
  const rise = total - fallen.base - (heldOf(work, name)?.total ?? 0);
  const above = total - (heldOf(work, boot)?.total ?? 0);
  return above >= 0 && above < rise ? { name: boot, base: 0 } : { name, base: fallen.base };
}

async function log(
  work: Work,
  of: { readonly name: string; readonly total: number; readonly now: Now | null },
  more: Partial<Pick<CountMessage, 'serial' | 'skipped' | 'once'>> = {},
): Promise<void> {
  const { station, line, held, write } = work;
  const { name, total, now } = of;
  const { serial = null, skipped = null, once = false } = more;
  if (now) work.loggedMs = now.ms;
  const boot = work.boots.get(name);
  if (boot) boot.logged = Math.max(boot.logged, total);
  // A code goes there whatever it costs, and takes nothing from those that wait.
  if (serial === null) {
    work.budget.told();
    work.sinceSpared = work.sinceSpared === null ? KEEP_SPARED_TOTALS : work.sinceSpared + 1;
    if (work.sinceSpared >= KEEP_SPARED_TOTALS) keepSpared(work);
  }
  const facts = { station, line, boot: name, total, serial, skipped };
  await write('station.counted', once && serial !== null ? { ...facts, once } : facts);
  held.logged(station, name, total);
}

function keepSpared(work: Work): void {
  work.sinceSpared = 0;
  work.held.keepSpared(work.station, work.budget.spared());
}

const mayLog = (work: Work, now: Now): boolean =>
  work.budget.may(now.ms) && now.ms - work.loggedMs >= TOTALS_APART_MS;

function tellSilence(work: Work, sinceMs: number): Promise<unknown> {
  const { station, line } = work;
  work.isSilent = true;
  // What it does meanwhile nobody knows: the state is told anew when it is said again.
  work.state = null;
  const since = new Date(sinceMs).toISOString();
  return work.write('station.silent', { station, line, since, told: 'link' });
}

function hearState(
  work: Work,
  { code, stateMs }: { readonly code: number; readonly stateMs?: number },
  now: Now,
): void {
  const { state } = work;
  if (state?.code === code) return;
  const fromMs = stateMs ?? now.ms;
  const never = Number.NEGATIVE_INFINITY;
  const { logged, atMs, loggedFromMs } = state ?? { logged: null, atMs: never, loggedFromMs: never };
  work.state = { code, fromMs, logged, atMs, loggedFromMs };
}

/** The newest state, not more often than states are of use. */
function sayState(work: Work, now: Now): Promise<unknown> | null {
  const { station, line, state } = work;
  if (!state || state.code === state.logged) return null;
  // What a broker had kept comes at one time: its states are as far apart as they were.
  const isDue = now.ms - state.atMs >= STATE_EVERY_MS || state.fromMs - state.loggedFromMs >= STATE_EVERY_MS;
  if (!isDue) return null;
  state.logged = state.code;
  state.atMs = now.ms;
  state.loggedFromMs = state.fromMs;
  const late = Math.max(0, Math.round((now.ms - state.fromMs) / 1000));
  const facts = { station, line, code: state.code };
  return work.write('station.state', late > 0 ? { ...facts, late } : facts);
}

function settle(work: Work): Promise<unknown> {
  const waiting = work.held
    .boots(work.station)
    .filter(({ boot, total }) => total > loggedOf(work, boot) && !isForeign(work, boot));
  return Promise.all(waiting.map(({ boot, total }) => log(work, { name: boot, total, now: null })));
}

async function take(work: Work, message: CountMessage, now: Now): Promise<{ boot: string; total: number }> {
  const { held, station, notices } = work;
  const saving: (Promise<unknown> | null)[] = [];
  if (message.atMs !== null && Math.abs(message.atMs - now.wallMs) > CLOCK_OFF_MS)
    saving.push(notices.add('clock-off', new Date(message.atMs).toISOString(), now));
  const { name, base } = nameOf(work, message);
  const total = Math.max(0, message.total - base);
  const there = heldOf(work, name);
  const top = there?.total ?? -1;
  const hold = total > top ? held.hold(station, name, total) : null;
  if (isForeign(work, name)) saving.push(hold, notices.add('two-devices', message.boot, now));
  else {
    const boot = work.boots.get(name) ?? newBoot(now);
    work.boots.set(name, boot);
    const isNewest = newest(work)?.boot === name;
    if (total > top && there !== undefined) {
      boot.hasRisen = true;
      if (!isNewest && !work.isOwnCount) saving.push(...lateRise(work, { name, boot }, now));
    }
    if (total >= top) boot.below = null;
    else if (isNewest && !work.isOwnCount)
      saving.push(...fell(work, message, { boot, top: top + base }, now));
    saving.push(...count(work, message, { name, boot, total, top, isNewest }, now));
    // What the log takes it holds as well: one flush is enough.
    if (boot.logged < total) saving.push(hold);
    else hold?.catch(() => undefined);
  }
  await Promise.all(saving);
  return { boot: message.boot, total: base + (heldOf(work, name)?.total ?? total) };
}

/** An older boot rose: late words of it, or another device beside the newest. */
function lateRise(
  work: Work,
  { name, boot }: { readonly name: string; readonly boot: Boot },
  now: Now,
): Saving {
  const { station, line } = work;
  const present = newest(work);
  const other = present && work.boots.get(present.boot);
  if (!present || !other || now.ms - other.firstMs < LATE_MOST_MS) return [];
  if (now.ms - boot.lateMs < LATE_APART_MS) return [];
  boot.late += 1;
  boot.lateMs = now.ms;
  if (boot.late < LATE_RISES || !other.hasRisen) return [];
  return [
    work.held.setForeign(station, present.boot),
    work.write('station.doubled', { station, line, boot: present.boot, kept: name }),
    work.notices.add('two-devices', `${name}, ${present.boot}`, now),
  ];
}

function fell(
  work: Work,
  message: CountMessage,
  { boot, top }: { readonly boot: Boot; readonly top: number },
  now: Now,
): Saving {
  boot.below ??= { messages: 0, sinceMs: now.ms, least: message.total };
  boot.below.messages += 1;
  boot.below.least = Math.min(boot.below.least, message.total);
  const { messages, sinceMs, least } = boot.below;
  if (messages < FELL_MESSAGES || now.ms - sinceMs < FELL_MS) return [];
  boot.below = null;
  return [
    work.held.fall(work.station, message.boot, least),
    work.notices.add('total-fell', `${top} > ${message.total}`, now),
  ];
}

/** Which entries follow from a message of a boot that counts. */
function count(
  work: Work,
  message: CountMessage,
  at: { name: string; boot: Boot; total: number; top: number; isNewest: boolean },
  now: Now,
): Saving {
  const { name, boot, total, top, isNewest } = at;
  const { serial, once = false } = message;
  const saving: (Promise<unknown> | null)[] = [];
  work.heard = now;
  const isBack = work.isSilent && isNewest;
  if (isBack) work.isSilent = false;
  if (message.state !== null) hearState(work, { ...message, code: message.state }, now);
  const known = serial === null ? undefined : boot.codes.get(serial);
  if (serial !== null && known !== undefined && known !== total)
    saving.push(work.notices.add(once ? 'code-again' : 'code-twice', `${serial}: ${known}, ${total}`, now));
  // Whether one that came twice counts is the run's to say.
  const isCoded = serial !== null && (known === undefined || (once && known !== total));
  const sum = Math.max(total, top);
  const isNews = total > top || (once && total > loggedOf(work, name));
  const skipped = isNews ? message.skipped : null;
  const isDue = mayLog(work, now) || skipped !== null;
  // The code of the newest panel is told with its total; of an earlier one behind it.
  if ((!boot.said || isBack || (sum > loggedOf(work, name) && isDue)) && !(isCoded && total === sum))
    saving.push(log(work, { name, total: sum, now }, { skipped }));
  if (isCoded) {
    saving.push(log(work, { name, total, now }, { serial, skipped, once }));
    boot.codes.set(serial, total);
    const [oldest] = boot.codes.keys();
    if (boot.codes.size > CODES_KEPT && oldest !== undefined) boot.codes.delete(oldest);
  }
  boot.said = true;
  saving.push(sayState(work, now));
  return saving;
}

async function tick(work: Work, now: Now): Promise<void> {
  const saving: (Promise<unknown> | null)[] = [...work.notices.tick(now), sayState(work, now)];
  const { heard, isSilent } = work;
  const present = newest(work);
  if (now.ms - work.sparedKeptMs >= KEEP_SPARED_MS) {
    work.sparedKeptMs = now.ms;
    keepSpared(work);
  }
  if (heard && !isSilent && now.ms - heard.ms > work.silentMs()) {
    saving.push(settle(work), tellSilence(work, heard.wallMs));
  } else if (heard && !isSilent && present) {
    const { boot: name, total } = present;
    const waits = total > loggedOf(work, name) && mayLog(work, now);
    const isBeat = work.boots.get(name)?.said === true && now.ms - work.loggedMs >= LINK_BEAT_MS;
    if (waits || isBeat) saving.push(log(work, { name, total, now }));
  }
  await Promise.all(saving);
}
