// What machines tell of tapes: the joint of two that has passed, an empty place, parts placed and spoiled.
// Method: a joint that passes is a true count of both sides: the tapes before it are used up, the one behind it has what it had, and of the
// grey parts either may be true. It is taken only where machine and scans name the same reels; where they differ both are kept, and nothing
// is counted. Parts spoiled are evidence of the feeder's loss until a count of the same tapes takes their place.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import { emptyReel } from './recount.ts';
import { ownIdOf } from './reel-id.ts';
import {
  countMark,
  endLedger,
  keepEvidence,
  labelShareOf,
  placedSinceLedger,
  settleTurns,
  slotEstimate,
  startLedger,
  tapeSd,
} from './remaining.ts';
import { type FloorState, type Ledger, type SlotState, slotKey, type Tape } from './state.ts';
import type { Found } from './station-state.ts';
import { tapeSlot } from './tape-slot.ts';

const FOUND_KEPT = 12;
/** What comes later than this says nothing of how far the line was counted when it happened, s. */
const LATE_MOST_S = 60;
/** Deviations by which a count must exceed none before an empty place contradicts it, and parts. */
const DEVIATIONS = 3;
const FEW_PARTS = 10;

/** Applies one entry of a machine to the tapes. */
export function foldTapes(
  state: FloorState,
  entry: EntryOf<'tape.changed' | 'tape.empty' | 'parts.used' | 'parts.missed' | 'parts.aired'>,
): void {
  switch (entry.kind) {
    case 'tape.changed':
      change(state, entry);
      return;
    case 'tape.empty':
      empty(state, entry);
      return;
    case 'parts.used':
      use(state, entry);
      return;
    case 'parts.aired':
      findLife(state, entry);
      return;
    case 'parts.missed':
      miss(state, entry);
      return;
    default:
      entry satisfies never;
  }
}

/** Keeps what both sides say. */
function find(state: FloorState, name: string, found: Found): void {
  const station = state.stations.get(name);
  if (station) state.stations.set(name, { ...station, found: [...station.found, found].slice(-FOUND_KEPT) });
}

const reelOf = (tape: Tape | undefined): string | null => ownIdOf(tape?.reel);

/**
 * Where the tape that begins now stands on its slot: from 1 on. 0: it is known already that it feeds; null: the scans know nothing of such a joint.
 */
export function joinedAt(
  there: SlotState,
  { depleted, active }: Pick<EntryOf<'tape.changed'>['payload'], 'depleted' | 'active'>,
): number | null {
  const { tapes } = there;
  if (active === null)
    return tapes.length === 2 && (depleted === null || reelOf(tapes[0]) === depleted) ? 1 : null;
  const place = tapes.findIndex((tape) => tape.reel === active);
  if (place < 0) return null;
  if (place > 0 && depleted !== null && tapes[place - 1]?.reel !== depleted) return null;
  return place;
}

function change(state: FloorState, entry: EntryOf<'tape.changed'>): void {
  const { station, line, depleted, active, grey, quantity, late } = entry.payload;
  const there = tapeSlot(state, entry.payload);
  const place = there && joinedAt(there, entry.payload);
  const none = { entry: entryId(entry), parts: null, sd: null, atMs: entry.hlc.ms };
  const slot = there?.slot ?? entry.payload.slot ?? '';
  if (!there || place === null) {
    const here = reelOf(there?.tapes.at(-1));
    find(state, station, { what: 'tape-differs', slot, machine: active ?? depleted, here, ...none });
    return;
  }
  if (place === 0) return;
  if (late > LATE_MOST_S) {
    find(state, station, {
      what: 'told-late',
      slot,
      machine: active,
      here: reelOf(there.tapes[place]),
      ...none,
    });
    return;
  }
  settleTurns(state, line, there.slot);
  const now = state.slots.get(slotKey(line, there.slot)) ?? there;
  const [first, ...rest] = now.tapes.slice(place);
  if (!first) return;
  const begins: Tape =
    first.count === null && quantity !== null && quantity > 0
      ? { ...first, count: Math.round(quantity), sd: 0, basis: 'machine' }
      : first;
  const tapes = [begins, ...rest];
  endBefore(state, now, { entry, behind: now.tapes.slice(place) });
  for (const gone of now.tapes.slice(0, place)) emptyReel(state, gone, now);
  const id = entryId(entry);
  const ledger = startLedger(tapes, id, labelShareOf(state, line));
  state.slots.set(slotKey(line, now.slot), {
    ...now,
    tapes,
    // Anywhere within the grey parts the old tape may have ended: the new one has up to so many more.
    ledger: { ...ledger, variance: ledger.variance + (grey * grey) / 3 },
    usedBefore: 0,
    ...countMark(state, line),
    entry: id,
    atMs: entry.hlc.ms,
    before: { ...now, before: null },
  });
  const reel = state.reels.get(begins.reel);
  if (reel) state.reels.set(reel.reel, { ...reel, count: begins.count, basis: begins.basis });
}

/** The tapes before the joint have ended: what they had is gone, and shows what the feeder lost. */
function endBefore(
  state: FloorState,
  there: SlotState,
  { entry, behind }: { readonly entry: EntryOf<'tape.changed'>; readonly behind: readonly Tape[] },
): void {
  const share = labelShareOf(state, there.line);
  let { parts, variance } = there.ledger;
  for (const tape of behind) {
    parts = parts === null || tape.count === null ? null : parts - tape.count;
    variance = Math.max(0, variance - tapeSd(tape, share) ** 2);
  }
  const ledger: Ledger = { ...there.ledger, parts, variance };
  const { grey } = entry.payload;
  endLedger(
    state,
    { ...there, ledger },
    {
      entry: entryId(entry),
      atMs: entry.hlc.ms,
      placed: placedSinceLedger(state, there),
      told: 'count',
      endParts: 0,
      endSd: grey / Math.sqrt(3),
    },
  );
}

function empty(state: FloorState, entry: EntryOf<'tape.empty'>): void {
  const there = tapeSlot(state, entry.payload);
  if (!there || entry.payload.late > LATE_MOST_S) return;
  const { running, runningIndex, sd } = slotEstimate(state, there);
  const { station, reel } = entry.payload;
  const here = there.tapes[runningIndex];
  const isOther = reel !== null && !there.tapes.some((tape) => tape.reel === reel);
  const common = { entry: entryId(entry), atMs: entry.hlc.ms };
  if (isOther) {
    const found = { ...common, slot: there.slot, machine: reel, here: reelOf(here), parts: null, sd: null };
    find(state, station, { what: 'tape-differs', ...found });
    return;
  }
  // An earlier tape of the chain may be what has ended.
  if (
    reel !== null &&
    here?.reel !== reel &&
    there.tapes.findIndex((tape) => tape.reel === reel) < runningIndex
  )
    return;
  if (running === null || running <= Math.max(FEW_PARTS, DEVIATIONS * sd)) return;
  find(state, station, {
    ...common,
    what: 'empty-early',
    slot: there.slot,
    machine: reel,
    here: reelOf(here),
    parts: Math.round(running),
    sd: Math.round(sd),
  });
}

function use(state: FloorState, entry: EntryOf<'parts.used'>): void {
  for (const each of entry.payload.uses) {
    const there = tapeSlot(state, { ...each, line: entry.payload.line });
    const isOther = each.reel !== null && !there?.tapes.some((tape) => tape.reel === each.reel);
    if (!there || isOther || each.used <= 0) continue;
    const key = slotKey(there.line, there.slot);
    const { chain } = there.ledger;
    const before = state.partsUsed.get(key);
    const sums = before?.chain === chain ? before : { chain, used: 0, spoiled: 0 };
    const [used, spoiled] = [sums.used + each.used, sums.spoiled + each.spoiled];
    state.partsUsed.set(key, { chain, used, spoiled });
    const part = there.tapes.at(-1)?.part ?? '';
    if (part === '') continue;
    keepEvidence(state, {
      chain,
      line: there.line,
      slot: there.slot,
      feeder: there.feeder ?? '',
      part,
      startParts: used + spoiled,
      startSd: 0,
      endParts: 0,
      endSd: 0,
      placements: used,
      entry: entryId(entry),
      atMs: entry.hlc.ms,
      told: 'machine',
    });
  }
}

/** Faults of picking count by run and feeder: of another feeder, or of last week, they say nothing of now. */
function miss(state: FloorState, { payload, hlc }: EntryOf<'parts.missed'>): void {
  const { line, late, misses } = payload;
  const run = state.current.get(line) ?? null;
  for (const each of misses) {
    const there = tapeSlot(state, { ...each, line });
    if (!there) continue;
    const key = slotKey(line, there.slot);
    const before = state.pickFaults.get(key);
    const isSame = before?.run === run && before.feeder === there.feeder;
    const fromMs = hlc.ms - late * 1000;
    state.pickFaults.set(key, {
      run,
      feeder: there.feeder,
      times: (isSame ? before.times : 0) + each.times,
      sinceMs: isSame ? Math.min(before.sinceMs, fromMs) : fromMs,
    });
  }
}

/** A machine's word on a reel's floor life that is no period of it: somebody looks at the reel. */
function findLife(state: FloorState, entry: EntryOf<'parts.aired'>): void {
  const { station, says, reels } = entry.payload;
  if (says !== 'expired' && says !== 'restored') return;
  for (const reel of reels) {
    const known = state.reels.get(reel);
    if (!known) continue;
    const told = { entry: entryId(entry), parts: null, sd: null, atMs: entry.hlc.ms };
    find(state, station, {
      what: `life-${says}`,
      slot: known.at?.slot ?? reel,
      machine: reel,
      here: null,
      ...told,
    });
  }
}
