// What does one message of a device mean, and what of it goes into the log? Highest totals by boot; silence after three missed beats; two
// devices under one name; clocks that are off; totals that fall. Told once each, and counted.
// Method: a total goes into the log at once, and then at most every seventeen seconds, so that a year of a line stays below a gigabyte;
// a panel's code goes there at once. All is decided before anything is waited for, so that messages at one time do not cross.
// Refused: an entry a beat, and a count that rests on a device's clock.

import { BEATS_MISSED, LINK_BEAT_MS } from '../../shared/floor/counters.ts';
import type { EntryKind, PayloadOf } from '../../shared/floor/kinds.ts';
import type { CounterStation } from './config.ts';
import type { Held, HeldBoot } from './held.ts';
import { type NoticeWhat, openNotices } from './notices.ts';

/** A device sends at least so often, ms. */
const DEVICE_BEAT_MS = 10_000;
/** Then it is silent, ms; a beat may come a little late. */
export const SILENT_MS = BEATS_MISSED * DEVICE_BEAT_MS + 2_000;
/** Between two totals of a station in the log, ms: a year of them is 1.9 million entries of some 500 bytes. */
export const LOG_EVERY_MS = 17_000;
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
  readonly notice: (what: NoticeWhat, said: string, now: Now) => Promise<unknown>;
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

/** Opens the desk of one station; `start`: what was heard before is taken as heard then. */
export function openStationDesk(
  of: Pick<CounterStation, 'station' | 'line'>,
  parts: { readonly held: Held; readonly write: WriteEntry; readonly start: Now },
): StationDesk {
  const { station, line } = of;
  const { held, write, start } = parts;
  const notices = openNotices(of, held, write);
  const boots = new Map<string, Boot>();
  let loggedMs = Number.NEGATIVE_INFINITY;
  let heard: Now | null = held.boots(station).length > 0 ? start : null;
  let isSilent = false;
  let state: { code: number; logged: number | null; atMs: number } | null = null;

  const heldOf = (boot: string) => held.boots(station).find((each) => each.boot === boot);
  const isForeign = (boot: string) => held.foreign(station).has(boot);
  const newest = (): HeldBoot | undefined =>
    held
      .boots(station)
      .filter(({ boot }) => !isForeign(boot))
      .at(-1);
  const loggedOf = (name: string) => Math.max(heldOf(name)?.logged ?? -1, boots.get(name)?.logged ?? -1);

  /** A total that fell counts on under a name of its own, from where it fell to; unless it is back where it was. */
  const nameOf = ({ boot, total }: CountMessage): { readonly name: string; readonly base: number } => {
    const fallen = held.falls(station).get(boot);
    if (!fallen) return { name: boot, base: 0 };
    const name = `${boot}~${fallen.times}`.slice(-64);
    const rise = total - fallen.base - (heldOf(name)?.total ?? 0);
    const above = total - (heldOf(boot)?.total ?? 0);
    return above >= 0 && above < rise ? { name: boot, base: 0 } : { name, base: fallen.base };
  };

  const log = async (name: string, total: number, now: Now | null, more: Partial<CountMessage> = {}) => {
    const { serial = null, skipped = null } = more;
    if (now) loggedMs = now.ms;
    const boot = boots.get(name);
    if (boot) boot.logged = Math.max(boot.logged, total);
    await write('station.counted', { station, line, boot: name, total, serial, skipped });
    await held.logged(station, name, total);
  };

  const tellSilence = (sinceMs: number) => {
    isSilent = true;
    return write('station.silent', { station, line, since: new Date(sinceMs).toISOString(), told: 'link' });
  };

  /** The newest state, as seldom as totals. */
  const sayState = (now: Now) => {
    if (!state || state.code === state.logged || now.ms - state.atMs < LOG_EVERY_MS) return null;
    state.logged = state.code;
    state.atMs = now.ms;
    return write('station.state', { station, line, code: state.code });
  };

  const settle = () =>
    Promise.all(
      held
        .boots(station)
        .filter(({ boot, total }) => total > loggedOf(boot) && !isForeign(boot))
        .map(({ boot, total }) => log(boot, total, null)),
    );

  const take: StationDesk['take'] = async (message, now) => {
    const work: (Promise<unknown> | null)[] = [];
    if (message.atMs !== null && Math.abs(message.atMs - now.wallMs) > CLOCK_OFF_MS)
      work.push(notices.add('clock-off', new Date(message.atMs).toISOString(), now));
    const { name, base } = nameOf(message);
    const total = Math.max(0, message.total - base);
    const top = heldOf(name)?.total ?? -1;
    const isFirst = heldOf(name) === undefined;
    if (total > top) work.push(held.hold(station, name, total));
    if (isForeign(name)) work.push(notices.add('two-devices', message.boot, now));
    else {
      const boot = boots.get(name) ?? newBoot(now);
      boots.set(name, boot);
      const isNewest = newest()?.boot === name;
      if (total > top && !isFirst) {
        boot.hasRisen = true;
        if (!isNewest) work.push(...lateRise(name, boot, now));
      }
      if (total >= top) boot.below = null;
      else if (isNewest) work.push(...fell(message, { boot, top: top + base }, now));
      work.push(...count(message, { name, boot, total, top, isNewest }, now));
    }
    await Promise.all(work);
    return { boot: message.boot, total: base + (heldOf(name)?.total ?? total) };
  };

  /** An older boot rose: late words of it, or another device beside the newest. */
  const lateRise = (name: string, boot: Boot, now: Now): Promise<unknown>[] => {
    const present = newest();
    const other = present && boots.get(present.boot);
    if (!present || !other || now.ms - other.firstMs < LATE_MOST_MS) return [];
    if (now.ms - boot.lateMs < LATE_APART_MS) return [];
    boot.late += 1;
    boot.lateMs = now.ms;
    if (boot.late < LATE_RISES || !other.hasRisen) return [];
    const said = `${name}, ${present.boot}`;
    return [
      held.setForeign(station, present.boot),
      write('station.doubled', { station, line, boot: present.boot, kept: name }),
      notices.add('two-devices', said, now),
    ];
  };

  const fell = (
    message: CountMessage,
    { boot, top }: { readonly boot: Boot; readonly top: number },
    now: Now,
  ): Promise<unknown>[] => {
    boot.below ??= { messages: 0, sinceMs: now.ms, least: message.total };
    boot.below.messages += 1;
    boot.below.least = Math.min(boot.below.least, message.total);
    const { messages, sinceMs, least } = boot.below;
    if (messages < FELL_MESSAGES || now.ms - sinceMs < FELL_MS) return [];
    boot.below = null;
    return [
      held.fall(station, message.boot, least),
      notices.add('total-fell', `${top} > ${message.total}`, now),
    ];
  };

  /** Which entries follow from a message of a boot that counts. */
  const count = (
    message: CountMessage,
    at: { name: string; boot: Boot; total: number; top: number; isNewest: boolean },
    now: Now,
  ): (Promise<unknown> | null)[] => {
    const { name, boot, total, top, isNewest } = at;
    const work: (Promise<unknown> | null)[] = [];
    heard = now;
    const isBack = isSilent && isNewest;
    if (isBack) isSilent = false;
    if (message.state !== null) state = { logged: null, atMs: 0, ...state, code: message.state };
    const { serial, skipped } = message;
    const known = serial === null ? undefined : boot.codes.get(serial);
    if (serial !== null && known !== undefined && known !== total)
      work.push(notices.add('code-twice', `${serial}: ${known}, ${total}`, now));
    const isCoded = serial !== null && known === undefined;
    const sum = Math.max(total, top);
    const isDue = now.ms - loggedMs >= LOG_EVERY_MS || (skipped !== null && total > top);
    // The code of the newest panel is told with its total; of an earlier one behind it.
    if ((!boot.said || isBack || (sum > loggedOf(name) && isDue)) && !(isCoded && total === sum))
      work.push(log(name, sum, now, { skipped: total > top ? skipped : null }));
    if (isCoded) {
      work.push(log(name, total, now, { serial, skipped: total > top ? skipped : null }));
      boot.codes.set(serial, total);
      const [oldest] = boot.codes.keys();
      if (boot.codes.size > CODES_KEPT && oldest !== undefined) boot.codes.delete(oldest);
    }
    boot.said = true;
    work.push(sayState(now));
    return work;
  };

  const tick = async (now: Now) => {
    const work: (Promise<unknown> | null)[] = [...notices.tick(now), sayState(now)];
    const present = newest();
    if (heard && !isSilent && now.ms - heard.ms > SILENT_MS) work.push(settle(), tellSilence(heard.wallMs));
    else if (heard && !isSilent && present) {
      const waits = present.total > loggedOf(present.boot) && now.ms - loggedMs >= LOG_EVERY_MS;
      const isBeat = boots.get(present.boot)?.said === true && now.ms - loggedMs >= LINK_BEAT_MS;
      if (waits || isBeat) work.push(log(present.boot, present.total, now));
    }
    await Promise.all(work);
  };

  return { take, notice: notices.add, tick, settle };
}
