// What does an entry count, and in which run? The one door for runs, skipped boards, held panels and the trace: a person's +1, a device's
// running total and a corrected number all come through here as so many panels more or less.
// Method: of a device's total only what is above the highest known of the same boot counts, so that what comes twice or late adds nothing.
// Hand counts made while the station was silent stand until it is back: the same boot knows of that while, and what it says replaces them;
// another boot cannot know all of it, so the larger of both stands. Refused: to add both, and a total that a run's end would cut.

import { entryId } from '../log/entry.ts';
import { newestRun } from './building.ts';
import { mostInLine } from './in-line.ts';
import type { EntryOf } from './kinds.ts';
import type { FloorState, Run } from './state.ts';
import type { BootTotal, Counter, HandCount, Station } from './station-state.ts';
import { type CountedCode, codeKey } from './tally.ts';

/** Kinds that count panels. */
export type CountingEntry = EntryOf<
  'panels.counted' | 'panels.corrected' | 'station.counted' | 'station.doubled'
>;

/** What an entry counts. */
export interface PanelsAdded {
  /** The run in which it counts. */
  readonly run: Run;
  /** Panels more, or less. */
  readonly add: number;
  /** The code of the last of them; where nothing is added, of the panel at `place`. */
  readonly serial: string | null;
  /** A code that came late: the place of its panel; absent: the newest. */
  readonly place?: number;
}

/** A station is taken as silent by a tablet when neither it nor its link was heard for so long, ms: three beats of a link. */
export const LINK_BEAT_MS = 120_000;
/** Beats that must be missed. */
export const BEATS_MISSED = 3;

/** What the entry counts; null where nothing. Ask before it is folded. */
export function countOf(state: FloorState, entry: CountingEntry): PanelsAdded | null {
  switch (entry.kind) {
    case 'panels.counted':
      return byHand(state, entry);
    case 'panels.corrected': {
      const run = state.runs.get(entry.payload.run);
      const add = run ? entry.payload.panels - run.done : 0;
      return run && add !== 0 ? { run, add, serial: null } : null;
    }
    case 'station.counted':
      return byStation(state, entry);
    case 'station.doubled': {
      const station = state.stations.get(entry.payload.station);
      const boot = station?.boots.find((each) => each.boot === entry.payload.boot);
      const run = state.runs.get(boot?.run ?? '');
      const isOurs = state.counters.get(entry.payload.line)?.station === entry.payload.station;
      if (!isOurs || !run || !boot || boot.counted <= 0) return null;
      return run === newestRun(state, entry.payload.line) ? { run, add: -boot.counted, serial: null } : null;
    }
    default:
      return entry satisfies never;
  }
}

/**
 * The run in which a count by hand adds: the one it names, also after its end while no other runs on the line; else the line's present one,
 * unless the panel's code says whose it is. Undefined where the run is not known.
 */
export function runCountedIn(
  state: Pick<FloorState, 'runs' | 'current'>,
  { run: named, serial }: Pick<EntryOf<'panels.counted'>['payload'], 'run' | 'serial'>,
): Run | undefined {
  const run = state.runs.get(named);
  if (run?.phase !== 'ended') return run;
  const now = state.runs.get(state.current.get(run.line) ?? '');
  const isCodeOf = ({ panelPrefix }: Run) =>
    panelPrefix !== null && (serial?.startsWith(panelPrefix) ?? false);
  return now === undefined || (isCodeOf(run) && !isCodeOf(now)) ? run : now;
}

/** The earlier count of a panel's code: in the run that this one would add to, or in the run that it names. */
export function countedBefore(
  state: Pick<FloorState, 'runs' | 'current' | 'codes'>,
  facts: Pick<EntryOf<'panels.counted'>['payload'], 'run' | 'serial'>,
): CountedCode | undefined {
  const { run, serial } = facts;
  if (serial === null) return undefined;
  const own = runCountedIn(state, facts)?.run ?? run;
  return state.codes.get(codeKey(own, serial)) ?? state.codes.get(codeKey(run, serial));
}

/** The station that counts on a line and is heard by the log; null where people count. Hand counts then stand beside it. */
export function stationCounting(
  state: Pick<FloorState, 'counters' | 'stations'>,
  line: string,
): Station | null {
  const station = state.stations.get(state.counters.get(line)?.station ?? '');
  return station && station.line === line && station.silentSinceMs === null && station.heardMs !== null
    ? station
    : null;
}

function byHand(state: FloorState, entry: EntryOf<'panels.counted'>): PanelsAdded | null {
  const run = runCountedIn(state, entry.payload);
  if (!run || countedBefore(state, entry.payload) || stationCounting(state, run.line)) return null;
  return { run, add: entry.payload.add, serial: entry.payload.serial };
}

/** What a station's message says against what is known. */
export interface Heard {
  readonly station: Station;
  readonly counter: Counter;
  /** The same boot as known; absent for a new one. */
  readonly known: BootTotal | undefined;
  /** The newest boot, which knows of a silence of its own; another cannot know all of it. */
  readonly isSame: boolean;
  /** True where it says something of now: not a late message of a lower total, or of a boot before. */
  readonly isBack: boolean;
  /** True where nothing says when the panels of its total passed. */
  readonly isBlind: boolean;
  /** Panels above the highest total known of the boot; none where it is blind. */
  readonly rise: number;
}

/** How far a message rises above what is known; null where the station does not count on the line, or the boot is another device's. */
export function riseOf(state: FloorState, entry: EntryOf<'station.counted'>): Heard | null {
  const { station: name, line, boot, total } = entry.payload;
  const counter = state.counters.get(line);
  const station = state.stations.get(name);
  if (!counter || !station || counter.station !== name || station.foreign.includes(boot)) return null;
  const known = station.boots.find((each) => each.boot === boot);
  // What passed before the station was the line's counter, or before anybody heard of it, is not known to be of this run.
  const isFirst =
    station.heardMs === null ||
    (station.heardMs < counter.sinceMs && counter.sinceMs - station.heardMs > BEATS_MISSED * LINK_BEAT_MS);
  // A device that was switched on again may have counted since long before this run.
  const isOfOther = known === undefined && (newestRun(state, line)?.startedMs ?? 0) > (station.heardMs ?? 0);
  const isSame = known !== undefined && station.boots.at(-1) === known;
  const isBack = isSame ? total >= known.total : known === undefined;
  const isBlind = isFirst || isOfOther;
  const isTwice = isCountedBefore(state, entry, isSame && isBack ? counter.standIn : []);
  const rise = isBlind ? 0 : Math.max(0, total - (known?.total ?? 0) - (isTwice ? 1 : 0));
  return { station, counter, known, isSame, isBack, isBlind, rise };
}

/** A panel that the link itself counted, by a code that the run has from another count: not from one whose place this one takes, or took. */
function isCountedBefore(
  state: FloorState,
  entry: EntryOf<'station.counted'>,
  replaced: readonly HandCount[],
): boolean {
  const { line, serial, once } = entry.payload;
  const run = newestRun(state, line);
  if (once !== true || serial === null || !run) return false;
  const counted = state.codes.get(codeKey(run.run, serial));
  if (!counted || counted.entry === entryId(entry)) return false;
  const wasReplaced = run.counts.some(([id, , , tally]) => id === '' && tally === counted.tally);
  return !wasReplaced && !replaced.some((each) => each.entry === counted.entry);
}

function byStation(state: FloorState, entry: EntryOf<'station.counted'>): PanelsAdded | null {
  const { line, serial } = entry.payload;
  const heard = riseOf(state, entry);
  const run = newestRun(state, line);
  if (!heard || !run) return null;
  const add = addOf(state, { ...heard, run });
  if (add === 0) return lateCode(state, heard, entry);
  return { run, add, serial: add > 0 ? freshCode(state, run, serial) : null };
}

/** A code names one panel of a run: seen again it names no second one. */
function freshCode(state: FloorState, run: Run, serial: string | null): string | null {
  return serial !== null && state.codes.has(codeKey(run.run, serial)) ? null : serial;
}

/** What a rise adds to the run: less what people counted for the station, and less what lies outside of any run. */
function addOf(state: FloorState, at: Heard & { readonly run: Run }): number {
  const { counter, run, rise, isSame, isBack } = at;
  if (at.isBlind) return 0;
  const add = !isBack
    ? Math.max(0, rise - counter.covered)
    : isSame
      ? replaced(counter, run, rise)
      : Math.max(0, rise - sumOf(counter.standIn));
  if (run.phase !== 'ended') return Math.max(-run.done, add);
  // Panels that were still in the line come out after the end; what goes beyond that is of no run.
  const after = run.counts.reduce((sum, [, ms, panels]) => (ms > run.sinceMs ? sum + panels : sum), 0);
  return Math.min(add, Math.max(0, mostInLine(state, run.line) - after));
}

/** The boot knows of the while in which people stood in: its own number takes the place of theirs, in this run. */
function replaced({ standIn }: Counter, run: Run, rise: number): number {
  const own = sumOf(standIn.filter((each) => each.run === run.run));
  return Math.max(0, rise - (sumOf(standIn) - own)) - own;
}

/** Net panels that people counted, never less than none. */
export function sumOf(counts: readonly HandCount[]): number {
  return Math.max(
    0,
    counts.reduce((sum, { add }) => sum + add, 0),
  );
}

/** The code of a panel whose total was passed already: its place is known as long as the rise over it is. */
function lateCode(
  state: FloorState,
  { station }: Heard,
  { payload: { boot, total, serial } }: EntryOf<'station.counted'>,
): PanelsAdded | null {
  if (serial === null) return null;
  const over = station.advances.find(
    (each) => each.boot === boot && total <= each.to && total > each.to - each.panels,
  );
  const run = state.runs.get(over?.run ?? '');
  if (!over || !run || freshCode(state, run, serial) === null) return null;
  return { run, add: 0, serial, place: over.tally - (over.to - total) };
}

/** Who counts on a line at a moment, for people. */
export type CountedBy =
  | { readonly by: 'hand' }
  | { readonly by: 'station'; readonly station: Station; readonly counter: Counter }
  /** It should count and is not heard; people count until it is back. `isTold`: the log has it already. */
  | {
      readonly by: 'silent';
      readonly station: Station | null;
      readonly name: string;
      readonly counter: Counter;
      readonly sinceMs: number;
      readonly isTold: boolean;
    };

/** Who counts on the line now. `nowMs`: the tablet's clock; it may find a station silent before the log says so. */
export function countedBy(state: FloorState, line: string, nowMs: number): CountedBy {
  const counter = state.counters.get(line);
  if (!counter) return { by: 'hand' };
  const name = counter.station;
  const heard = stationCounting(state, line);
  const known = state.stations.get(name) ?? null;
  if (!heard) {
    const sinceMs = known?.silentSinceMs ?? known?.heardMs ?? counter.sinceMs;
    return { by: 'silent', station: known, name, counter, sinceMs, isTold: true };
  }
  const sinceMs = heard.heardMs ?? counter.sinceMs;
  if (nowMs - sinceMs > BEATS_MISSED * LINK_BEAT_MS)
    return { by: 'silent', station: heard, name, counter, sinceMs, isTold: false };
  return { by: 'station', station: heard, counter };
}
