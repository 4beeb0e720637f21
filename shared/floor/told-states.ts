// Since when does a line stand, as a machine tells, and why? The states of the station that speaks for the line, by the numbers of SEMI E58.
// Method: the station that counts the line's panels speaks for it where it tells states; else the only one of the line that does, since of
// several nobody knows which of them holds the line up. Planned and unplanned stops, engineering and time that is not scheduled are no working
// time; standing by is, since a machine waits between any two panels. Panels that pass all the same are believed more than a state.
// Refused: a stop guessed from counts where a machine tells it.

import { BEATS_MISSED, LINK_BEAT_MS } from './counters.ts';
import { mostInLine } from './in-line.ts';
import type { FloorState, Run } from './state.ts';
import { STOOD_KEPT, type Station } from './station-state.ts';

/** Classes of states, the thousands of SEMI E58, in which nothing is made: engineering, planned and unplanned stops, not scheduled. */
const STOPPED_FROM = 3;
const STOPPED_TO = 6;
/** Standing by. */
const WAITING = 2;
/** A total comes into the log so much later than its panels, ms: what comes within it passed before the stop. */
const TOTAL_LATE_MS = 20_000;

/** A while in a state in which nothing is made. Moments in ms since 1970. */
export interface ToldStop {
  readonly fromMs: number;
  /** Null: it lasts, or as far as anybody was told. */
  readonly toMs: number | null;
  /** By SEMI E58. */
  readonly code: number;
}

/** What a machine says of a line's time. */
export interface LineTold {
  readonly station: string;
  /** False where nothing is heard of it any more: then what the line does now is guessed again. */
  readonly isHeard: boolean;
  /** Oldest first, as far back as they are kept. */
  readonly stops: readonly ToldStop[];
  /** They are known from here on: the run's start, or later where older ones are not kept any more. */
  readonly sinceMs: number;
  /** The state in which it stands or waits now; null where it works, is not heard, or panels pass all the same. */
  readonly now: ToldStop | null;
}

/** The station whose states speak for the line; null where none does. */
function tellerOf(state: FloorState, line: string): Station | null {
  const own = state.stations.get(state.counters.get(line)?.station ?? '');
  if (own?.line === line && own.state !== null) return own;
  const tellers = [...state.stations.values()].filter((each) => each.line === line && each.state !== null);
  return tellers.length === 1 ? (tellers[0] ?? null) : null;
}

/** Since when nothing is heard of a station, by the log or by a tablet's clock, ms since 1970; null where it is heard. */
export function silentSince(station: Station, nowMs: number): number | null {
  if (station.silentSinceMs !== null) return station.silentSinceMs;
  const isLate = station.heardMs !== null && nowMs - station.heardMs > BEATS_MISSED * LINK_BEAT_MS;
  return isLate ? station.heardMs : null;
}

/**
 * What a machine says of the time of a line's run. `nowMs`: the tablet's clock, ms since 1970. Null where no station speaks for the line.
 * Never throws.
 */
export function lineTold(state: FloorState, run: Run, nowMs: number): LineTold | null {
  const station = tellerOf(state, run.line);
  if (!station) return null;
  const silentMs = silentSince(station, nowMs);
  const isOwn = state.counters.get(run.line)?.station === station.station;
  // The panel in work, or all that lie behind the machine, come out of a line that stands.
  const after = isOwn ? 1 : mostInLine(state, run.line);
  const all = station.stood.flatMap(([fromMs, toMs, code]): ToldStop[] => {
    const endMs = toMs ?? (silentMs === null ? null : Math.max(fromMs, silentMs));
    const believed = believedUntil(run, { fromMs, endMs, after });
    return endMs !== null && endMs <= run.startedMs ? [] : [{ fromMs, toMs: believed, code }];
  });
  const isStop = ({ code }: ToldStop) => {
    const kind = Math.floor(code / 1000);
    return kind >= STOPPED_FROM && kind <= STOPPED_TO;
  };
  const last = all.at(-1);
  return {
    station: station.station,
    isHeard: silentMs === null,
    sinceMs: Math.max(run.startedMs, station.stood.length < STOOD_KEPT ? 0 : (station.stood[0]?.[0] ?? 0)),
    stops: all.filter((each) => isStop(each) && (each.toMs === null || each.toMs > each.fromMs)),
    now: last && last.toMs === null ? last : null,
  };
}

/** Until when a state holds in which nothing is made: to the panel before the first one that it cannot explain. */
function believedUntil(
  run: Run,
  at: { readonly fromMs: number; readonly endMs: number | null; readonly after: number },
): number | null {
  let panels = 0;
  let lastMs = at.fromMs;
  for (const [, ms, add] of run.counts) {
    if (add <= 0 || ms <= at.fromMs + TOTAL_LATE_MS) continue;
    if (at.endMs !== null && ms > at.endMs) break;
    panels += add;
    if (panels > at.after) return lastMs;
    lastMs = ms;
  }
  return at.endMs;
}

/** True for a state in which a machine waits: for panels, for room behind it, for a person. */
export function isWaiting(code: number): boolean {
  return Math.floor(code / 1000) === WAITING;
}
