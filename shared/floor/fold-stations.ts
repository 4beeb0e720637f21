// What stations have told and who counts on a line. Sees a count after the fold of runs: what that one took stands in the run's counts.
// Method: highest totals by boot. Hand counts while a station counts are kept beside; while it is silent they stand in for it.

import { entryId } from '../log/entry.ts';
import { newestRun } from './building.ts';
import {
  BEATS_MISSED,
  countedBefore,
  type Heard,
  LINK_BEAT_MS,
  riseOf,
  runCountedIn,
  stationCounting,
  sumOf,
} from './counters.ts';
import type { EntryOf } from './kinds.ts';
import { recipeKey } from './recipes.ts';
import type { FloorState, Run } from './state.ts';
import { type BootTotal, type Counter, type HandCount, STOOD_KEPT, type Station } from './station-state.ts';

const BOOTS_KEPT = 8;
const ADVANCES_KEPT = 64;
const NOTICES_KEPT = 20;
const HAND_KEPT = 192;
const BOTH_KEPT = 8;

/** Kinds that this fold handles. */
type StationEntry = EntryOf<
  | 'station.known'
  | 'station.counted'
  | 'station.silent'
  | 'station.state'
  | 'station.recipe'
  | 'recipe.known'
  | 'station.doubled'
  | 'station.noticed'
  | 'station.finding-cleared'
  | 'station.named'
  | 'line.counted-by'
  | 'panels.counted'
  | 'panels.corrected'
  | 'run.started'
  | 'entry.corrected'
>;

/** Applies one entry to what is known of stations. */
export function foldStations(state: FloorState, entry: StationEntry): void {
  switch (entry.kind) {
    case 'station.known':
      meet(state, entry);
      return;
    case 'station.counted':
      hear(state, entry);
      return;
    case 'station.silent':
      miss(state, entry);
      return;
    case 'recipe.known': {
      const { line, recipe, product, side } = entry.payload;
      state.recipes.set(recipeKey(line, recipe), { product, side });
      return;
    }
    case 'station.state':
    case 'station.recipe':
    case 'station.doubled':
    case 'station.noticed':
    case 'station.finding-cleared':
    case 'station.named':
      learn(state, entry);
      return;
    case 'line.counted-by':
      choose(state, entry);
      return;
    case 'panels.counted':
      keepHand(state, entry);
      return;
    case 'panels.corrected':
      standIn(state, entryId(entry), state.runs.get(entry.payload.run));
      return;
    case 'run.started': {
      const counter = state.counters.get(entry.payload.line);
      if (counter) state.counters.set(entry.payload.line, { ...counter, beside: 0, besides: [] });
      return;
    }
    case 'entry.corrected':
      takeBack(state, entry.payload.of);
      return;
    default:
      entry satisfies never;
  }
}

function meet(state: FloorState, entry: EntryOf<'station.known'>): void {
  const there = state.stations.get(entry.payload.station);
  const told = there ?? {
    name: null,
    boots: [],
    advances: [],
    foreign: [],
    heardMs: null,
    silentSinceMs: null,
    state: null,
    stood: [],
    recipe: null,
    noticed: [],
    found: [],
  };
  state.stations.set(entry.payload.station, { ...told, ...entry.payload, tablet: entry.tablet });
}

function hear(state: FloorState, entry: EntryOf<'station.counted'>): void {
  const { station: name, line, boot, total } = entry.payload;
  const station = state.stations.get(name);
  if (!station || station.foreign.includes(boot)) return;
  const heard = riseOf(state, entry);
  const run = newestRun(state, line);
  const last = run?.counts.at(-1);
  const add = last?.[0] === entryId(entry) ? last[2] : 0;
  if (heard) keepBack(state, entry, { ...heard, run, add });
  const known = station.boots.find((each) => each.boot === boot);
  const isNew = known === undefined || station.boots.at(-1) === known;
  const isSilent = station.silentSinceMs !== null && !(isNew && total >= (known?.total ?? 0));
  const rose = run !== null && last !== undefined && add > 0 && add === heard?.rise;
  state.stations.set(name, {
    ...station,
    boots: bootsAfter(station, known, { boot, total, run: run?.run ?? null, counted: add }),
    advances: rose
      ? [...station.advances, { boot, to: total, run: run.run, tally: last[3], panels: add }].slice(
          -ADVANCES_KEPT,
        )
      : station.advances,
    heardMs: Math.max(station.heardMs ?? 0, entry.hlc.ms),
    silentSinceMs: isSilent ? station.silentSinceMs : null,
  });
}

/** The boots with what one more message told. */
function bootsAfter(station: Station, known: BootTotal | undefined, told: BootTotal): readonly BootTotal[] {
  if (!known) return [...station.boots, told].slice(-BOOTS_KEPT);
  const counted = (known.run === told.run ? known.counted : 0) + told.counted;
  const next = { ...told, total: Math.max(known.total, told.total), counted };
  return station.boots.map((each) => (each === known ? next : each));
}

/** Ends the while in which people stood in, and keeps what both counted of it. */
function keepBack(
  state: FloorState,
  entry: EntryOf<'station.counted'>,
  heard: Heard & { readonly run: Run | null; readonly add: number },
): void {
  const { counter, run, rise, isBack, isSame, isBlind } = heard;
  const hand = sumOf(counter.standIn);
  const isOver = run === null || run.phase === 'ended';
  const outside = counter.outside + (isOver ? Math.max(0, rise - Math.max(0, heard.add)) : 0);
  if (!isBack) {
    const covered = Math.max(0, counter.covered - rise);
    state.counters.set(entry.payload.line, { ...counter, covered, outside });
    return;
  }
  const stands = !isBlind && (isSame || rise > hand) ? ('machine' as const) : ('hand' as const);
  const told = { run: run?.run ?? '', atMs: entry.hlc.ms, hand, machine: rise, stands };
  state.counters.set(entry.payload.line, {
    ...counter,
    standIn: [],
    covered: isSame ? counter.covered : Math.max(0, hand - rise),
    both: hand > 0 ? [...counter.both, told].slice(-BOTH_KEPT) : counter.both,
    outside,
  });
}

function miss(state: FloorState, { payload, hlc }: EntryOf<'station.silent'>): void {
  const station = state.stations.get(payload.station);
  if (!station || station.silentSinceMs !== null) return;
  // A tablet that was itself away heard nothing; the log that all have by then says that the station counted on.
  const isHeard = station.heardMs !== null && hlc.ms - station.heardMs <= BEATS_MISSED * LINK_BEAT_MS;
  if (payload.told === 'tablet' && isHeard) return;
  const saidMs = Date.parse(payload.since);
  const sinceMs = Number.isNaN(saidMs) ? hlc.ms : Math.min(hlc.ms, saidMs);
  // What it does from then on nobody is told.
  const stood = ended(station.stood, sinceMs);
  state.stations.set(payload.station, { ...station, silentSinceMs: sinceMs, stood });
}

/** An open while ends; never before it began. */
function ended(stood: Station['stood'], atMs: number): Station['stood'] {
  return stood.map((each) => (each[1] === null ? [each[0], Math.max(each[0], atMs), each[2]] : each));
}

/** Classes 2 to 6 of SEMI E58 are all but working; what is beyond them is its maker's own, and says nothing of time. */
function stoodAfter({ stood }: Station, code: number, saidMs: number): Station['stood'] {
  const last = stood.at(-1);
  if (last?.[1] === null && last[2] === code) return stood;
  const atMs = Math.max(saidMs, last?.[1] ?? last?.[0] ?? saidMs);
  const before = ended(stood, atMs);
  const kind = Math.floor(code / 1000);
  return kind >= 2 && kind <= 6 ? [...before, [atMs, null, code] as const].slice(-STOOD_KEPT) : before;
}

function learn(
  state: FloorState,
  entry: EntryOf<
    | 'station.state'
    | 'station.recipe'
    | 'station.doubled'
    | 'station.noticed'
    | 'station.finding-cleared'
    | 'station.named'
  >,
): void {
  const station = state.stations.get(entry.payload.station);
  if (!station) return;
  switch (entry.kind) {
    case 'station.state':
      state.stations.set(station.station, {
        ...station,
        state: entry.payload.code,
        stood: stoodAfter(station, entry.payload.code, entry.hlc.ms - (entry.payload.late ?? 0) * 1000),
      });
      return;
    case 'station.recipe': {
      const { recipe, revision } = entry.payload;
      const told = { recipe, revision, atMs: entry.hlc.ms };
      state.stations.set(station.station, { ...station, recipe: told });
      return;
    }
    case 'station.doubled': {
      const { boot } = entry.payload;
      state.stations.set(station.station, {
        ...station,
        boots: station.boots.filter((each) => each.boot !== boot),
        foreign: [...station.foreign.filter((each) => each !== boot), boot].slice(-BOOTS_KEPT),
      });
      return;
    }
    case 'station.noticed': {
      const { what, said, times } = entry.payload;
      const others = station.noticed.filter((each) => each.what !== what);
      const noticed = [...others, { what, said, times, atMs: entry.hlc.ms }].slice(-NOTICES_KEPT);
      state.stations.set(station.station, { ...station, noticed });
      return;
    }
    case 'station.finding-cleared': {
      const found = station.found.filter((each) => each.entry !== entry.payload.finding);
      state.stations.set(station.station, { ...station, found });
      return;
    }
    case 'station.named':
      state.stations.set(station.station, { ...station, name: entry.payload.name });
      return;
    default:
      entry satisfies never;
  }
}

function choose(state: FloorState, entry: EntryOf<'line.counted-by'>): void {
  const { line, station } = entry.payload;
  if (station === null) {
    state.counters.delete(line);
    return;
  }
  if (state.counters.get(line)?.station === station) return;
  state.counters.set(line, {
    station,
    sinceMs: entry.hlc.ms,
    by: entry.who,
    standIn: [],
    covered: 0,
    beside: 0,
    besides: [],
    both: [],
    outside: 0,
  });
}

/** A hand count on a line with a station: beside it, or in its place while it is silent. */
function keepHand(state: FloorState, entry: EntryOf<'panels.counted'>): void {
  const run = runCountedIn(state, entry.payload);
  const counter = state.counters.get(run?.line ?? '');
  if (!run || !counter) return;
  const id = entryId(entry);
  if (!stationCounting(state, run.line)) {
    standIn(state, id, run);
    return;
  }
  if (countedBefore(state, entry.payload)) return;
  const { add } = entry.payload;
  const besides = [...counter.besides, { entry: id, run: run.run, add }].slice(-HAND_KEPT);
  state.counters.set(run.line, { ...counter, beside: counter.beside + add, besides });
}

/** Keeps what an entry has just added in the place of a silent station. */
function standIn(state: FloorState, id: string, run: Run | undefined): void {
  const counter = state.counters.get(run?.line ?? '');
  const last = run?.counts.at(-1);
  if (!run || !counter || last?.[0] !== id || stationCounting(state, run.line)) return;
  const kept = [...counter.standIn, { entry: id, run: run.run, add: last[2] }];
  state.counters.set(run.line, { ...counter, standIn: squeezed(kept) });
}

/** So many are kept one by one for taking them back; the ones before as one sum of their run. */
function squeezed(counts: readonly HandCount[]): readonly HandCount[] {
  const [first, second] = counts;
  if (counts.length <= HAND_KEPT || !first || !second) return counts;
  if (first.run !== second.run) return counts;
  return [{ entry: '', run: first.run, add: first.add + second.add }, ...counts.slice(2)];
}

function takeBack(state: FloorState, of: string): void {
  for (const [line, counter] of state.counters) {
    const beside = counter.besides.find(({ entry }) => entry === of);
    const isIn = counter.standIn.some(({ entry }) => entry === of);
    if (!beside && !isIn) continue;
    const next: Counter = {
      ...counter,
      standIn: counter.standIn.filter(({ entry }) => entry !== of),
      beside: counter.beside - (beside?.add ?? 0),
      besides: counter.besides.filter(({ entry }) => entry !== of),
    };
    state.counters.set(line, next);
  }
}
