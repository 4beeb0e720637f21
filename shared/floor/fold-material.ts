// Reels and slots: what is on the line, what waits for a lead, and what contradicts. An accepted verdict, or a held one that
// a lead cleared, puts a reel on a slot; a refused one changes nothing but stays in the log.

import { entryId } from '../log/entry.ts';
import { blockOn } from './blocks.ts';
import { noteCame, settleCame } from './came.ts';
import {
  addConflict,
  addTwice,
  addUnloaded,
  dropConflicts,
  dropEmptied,
  dropOnce,
  isOlderTape,
  settle,
} from './conflicts.ts';
import { settleDropped } from './dropped-change.ts';
import { dropReady, putReady } from './fold-feeders.ts';
import { backInUse, goneAs } from './gone-reels.ts';
import { clearedFacts, closeAnswered, sameReelThere } from './holds.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { feedersOf, linesFeeding } from './lanes.ts';
import { comingIn, holdsLoose, keepLoose, kindOfPackage, looseIn } from './packs.ts';
import { emptyReel, recount } from './recount.ts';
import { nameByEntry } from './reel-id.ts';
import { elsewhere, freeReels, isAt, type Mark } from './reel-places.ts';
import {
  countMark,
  endLedger,
  joinLedger,
  keptSd,
  labelShareOf,
  openEvidence,
  placedSinceLedger,
  settleTurns,
  slotEstimate,
  startLedger,
  usedPlacements,
  windowOf,
} from './remaining.ts';
import { type FloorState, type Hold, type SlotState, slotKey, type Tape } from './state.ts';
import { takeBack } from './take-back.ts';
import { joins, type PackageKind } from './vocabulary.ts';
import { wantedOn } from './wanted.ts';

type Verified = PayloadOf<'reel.verified'>;

/** Kinds that this fold handles. */
type MaterialEntry = EntryOf<
  | 'reel.verified'
  | 'hold.cleared'
  | 'hold.declined'
  | 'reel.unloaded'
  | 'reel.counted'
  | 'entry.corrected'
  | 'conflict.settled'
>;

/** Applies one entry to the material. */
export function foldMaterial(state: FloorState, entry: MaterialEntry): void {
  const mark: Mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  switch (entry.kind) {
    case 'reel.verified':
      closeAnswered(state, entry.payload);
      if (entry.payload.verdict === 'accepted') place(state, entry.payload, mark);
      else if (entry.payload.verdict === 'held') {
        state.holds.set(mark.entry, {
          ...mark,
          facts: entry.payload,
          who: entry.who,
          reasons: entry.payload.reasons,
        });
      }
      return;
    case 'hold.cleared': {
      const hold = state.holds.get(entry.payload.of);
      if (!hold) return;
      state.holds.delete(entry.payload.of);
      const block = blockOn(state, hold.facts);
      if (block !== null) {
        addConflict(state, {
          kind: 'cleared-though-blocked',
          line: feedersOf(hold.facts.line),
          slots: hold.facts.slot === null ? [] : [hold.facts.slot],
          lines: hold.facts.slot === null ? [] : [feedersOf(hold.facts.line)],
          reel: hold.facts.reel,
          entries: [block, mark.entry],
          atMs: mark.atMs,
        });
      }
      const facts = clearedFacts(state, hold.facts);
      if (facts.readying) putReady(state, { ...hold, facts });
      else if (facts.cart === undefined) place(state, facts, { ...mark, cleared: hold.entry });
      else putOnCart(state, facts.cart, { ...hold, facts });
      return;
    }
    case 'hold.declined':
      state.holds.delete(entry.payload.of);
      return;
    case 'reel.unloaded':
      unload(state, entry.payload, mark);
      return;
    case 'reel.counted':
      recount(state, entry.payload, mark);
      dropOnce(state, mark.entry);
      return;
    case 'entry.corrected':
      takeBack(state, entry.payload.of, mark.entry);
      return;
    case 'conflict.settled':
      settleDropped(state, entry.payload);
      settleCame(state, entry.payload);
      settle(state, entry.payload, mark);
      return;
    default:
      entry satisfies never;
  }
}

/**
 * Puts an accepted reel where its verdict says: a new load, or a tape joined to the running one. A reel that stands there already by an
 * earlier entry stays as it is. `cleared`: the verdict that had held it.
 */
export function place(
  state: FloorState,
  facts: Verified,
  { cleared, ...mark }: Mark & { readonly cleared?: string },
): void {
  if (facts.slot === null) return;
  if (facts.act === 'sweep') {
    seeInSweep(state, facts.line, facts.slot);
    return;
  }
  dropReady(state, facts);
  const same = sameReelThere(state, facts, mark);
  if (same !== null) {
    stayOn(state, same);
    return;
  }
  settleTurns(state, facts.line, facts.slot);
  const key = slotKey(facts.line, facts.slot);
  const there = state.slots.get(key);
  const done = state.runs.get(state.current.get(facts.line) ?? '')?.done ?? 0;
  const forPart = wantedOn(state, facts.setup, facts.slot)?.part ?? null;
  const told: Tape = {
    ...tapeOf(facts, mark, done),
    ...knownSpread(state, facts),
    forPart,
    ...(cleared === undefined ? {} : { cleared }),
  };
  const tape = comingIn(told, kindPutOn(state, facts, told.reel));
  const isJoined = joins(facts.act);
  const isExchange = facts.act === 'exchange';
  // Somebody else's hands were there in between: what came off is not what was to come off.
  const isOther =
    isExchange && there !== undefined && (facts.replaces ?? null) !== (there.tapes.at(-1)?.entry ?? null);
  if (there && !isOther && (isJoined || isExchange)) noteCame(state, there, { facts, mark, cleared });
  if (isExchange && there && !isOther) {
    keepLoose(state, there, { purged: false, left: slotEstimate(state, there).parts });
    takeTapesOff(state, there, { quantity: null, sd: 0, basis: null });
    dropConflicts(state, there, mark.entry);
  }
  const placed =
    isJoined && there
      ? joinTape(state, there, {
          tape,
          mark,
          cut: facts.act === 'refill' ? 0 : (facts.cut ?? null),
          setup: facts.setup,
        })
      : standNew(state, facts.slot, { facts, tape, mark, there: there ?? null });
  if ((facts.act === 'load' || isOther) && there) {
    addConflict(state, {
      kind: 'slot-loaded-twice',
      line: feedersOf(facts.line),
      slots: [facts.slot],
      lines: [feedersOf(facts.line)],
      reel: null,
      entries: [there.entry, mark.entry],
      choices: [there, { ...placed, before: null }],
      atMs: mark.atMs,
    });
  }
  if (there && (facts.act === 'load' || isOther)) freeReels(state, there);
  state.slots.set(key, placed);
  const off = state.takenOff.get(key);
  if (!isJoined) dropEmptied(state, placed, mark.entry);
  else if (!there && off) {
    addUnloaded(state, placed, { entries: [off.entry, mark.entry], atMs: mark.atMs });
  }
  seeOnLanes(state, placed);
  putReel(state, tape, placed);
  dropOnce(state, mark.entry);
}

/** What comes on: what is poured over something loose lies loose with it, whatever it came in. */
function kindPutOn(state: FloorState, { act, comesIn }: Verified, reel: string): PackageKind {
  return act === 'refill' ? 'bulk' : (comesIn ?? kindOfPackage(state, reel) ?? 'tape');
}

/** A slot on which something new stands; what lay loose in its feeder before may still be there, under it. */
function standNew(
  state: FloorState,
  slot: string,
  of: {
    readonly facts: Verified;
    readonly tape: Tape;
    readonly mark: Mark;
    readonly there: SlotState | null;
  },
): SlotState {
  const { facts, tape, mark, there } = of;
  const { line, feeder } = facts;
  const loose = tape.comesIn === 'bulk' ? looseIn(state, { line, slot, feeder }) : [];
  const tapes = [...loose.filter(({ reel }) => reel !== tape.reel), tape];
  return {
    line: feedersOf(line),
    slot,
    feeder,
    tapes,
    usedBefore: 0,
    ...countMark(state, line),
    ledger: startLedger(tapes, mark.entry, labelShareOf(state, line)),
    ...mark,
    before: there ? { ...there, before: null } : null,
  };
}

/** A reel that is on its slot already stays there, with what is known of it by now. */
function stayOn(state: FloorState, slot: SlotState): void {
  const last = slot.tapes.at(-1);
  const reel = state.reels.get(last?.reel ?? '');
  state.slots.set(slotKey(slot.line, slot.slot), slot);
  seeOnLanes(state, slot);
  if (last && reel)
    state.reels.set(reel.reel, { ...reel, count: last.count, sd: last.sd, basis: last.basis });
}

/**
 * Puts a held reel that a lead has cleared where it was to go: onto its cart, by the verdict that held it. A place that the cart got
 * for the slot in between stays; the held reel then stands nowhere.
 */
function putOnCart(state: FloorState, cart: string, hold: Hold): void {
  const { line, setup, slot, feeder, reel, part, supplierPart, lot, dateCode, quantity } = hold.facts;
  if (slot === null) return;
  const facts = { line, setup, slot, feeder, reel, part: part ?? '', supplierPart, lot, dateCode, quantity };
  const places = new Map(state.carts.get(cart));
  if (places.has(slot)) return;
  dropReady(state, facts);
  state.carts.set(cart, places.set(slot, { ...facts, cart, of: hold.entry, atMs: hold.atMs }));
}

function tapeOf(facts: Verified, mark: Mark, done: number): Omit<Tape, 'forPart'> {
  return {
    setup: facts.setup,
    reel: facts.reel ?? nameByEntry(mark.entry),
    part: facts.part ?? '',
    supplierPart: facts.supplierPart,
    lot: facts.lot,
    dateCode: facts.dateCode,
    count: facts.quantity,
    sd: 0,
    basis: facts.basis ?? 'label',
    entry: mark.entry,
    atMs: mark.atMs,
    fromPanels: done,
  };
}

/** The spread of a reel's count that the log knows already: what was counted down or measured keeps it. */
function knownSpread(state: FloorState, facts: Verified): { sd?: number } {
  const known = facts.reel === null ? undefined : state.reels.get(facts.reel);
  const same = known !== undefined && known.count === facts.quantity && known.basis === facts.basis;
  return same ? { sd: known.sd } : {};
}

/** Joins a tape behind the running one; tapes that the count or the splice itself says are gone are dropped from the slot. */
function joinTape(
  state: FloorState,
  there: SlotState,
  joining: { readonly tape: Tape; readonly mark: Mark; readonly cut: number | null; readonly setup: string },
): SlotState {
  const { tape, mark, cut } = joining;
  const loss = state.rules.get(there.line)?.loss ?? 0;
  const all = usedPlacements(state, there);
  const taken = placedSinceLedger(state, there);
  const { count: placed, doubt } = taken;
  const isRefill = holdsLoose({ tapes: [...there.tapes, tape] });
  const window = isRefill ? null : windowOf(state, there, joining.setup);
  const ledger = joinLedger(there.ledger, tape, {
    placed,
    doubt,
    cut,
    window,
    labelShare: labelShareOf(state, there.line),
  });
  if (window !== null) {
    endLedger(state, there, {
      ...mark,
      placed: taken,
      told: 'splice',
      endParts: (window.opens + window.closes) / 2 + (cut ?? 0),
      endSd: (window.opens - window.closes) / Math.sqrt(12),
    });
  }
  let used = all;
  const tapes = [...there.tapes];
  // What lies loose under the rest is never known to be used up.
  while (tapes.length > 1 && !isRefill) {
    const count = tapes[0]?.count ?? null;
    const behind = tapes.slice(1).reduce((sum, each) => sum + (each.count ?? 0), 0);
    const pulledThrough = window !== null && behind >= window.opens;
    if (!pulledThrough && (count === null || count * (1 - loss) > used)) break;
    used = Math.max(0, used - (count ?? used) * (1 - loss));
    const gone = tapes.shift();
    if (gone) emptyReel(state, gone, there);
  }
  return {
    ...there,
    tapes: [...tapes, tape],
    ledger: { ...ledger, dropped: placed - used },
    usedBefore: used,
    ...countMark(state, there.line),
    ...mark,
    before: { ...there, before: null },
  };
}

function putReel(state: FloorState, tape: Tape, placed: SlotState): void {
  const { reel, part, supplierPart, lot, dateCode, count, sd, basis } = tape;
  const there = state.reels.get(reel);
  if (there?.at && !isAt(there.at, placed)) addTwice(state, placed, reel);
  const told = { reel, part, supplierPart, lot, dateCode, count, sd, basis, ...goneAs(state, reel) };
  state.reels.set(reel, { ...told, at: { line: placed.line, slot: placed.slot } });
  backInUse(state, reel);
}

function unload(state: FloorState, facts: PayloadOf<'reel.unloaded'>, mark: Mark): void {
  const key = slotKey(facts.line, facts.slot);
  settleTurns(state, facts.line, facts.slot);
  const there = state.slots.get(key);
  if (!there) return;
  const left = slotEstimate(state, there).parts;
  const placed = placedSinceLedger(state, there);
  keepLoose(state, there, { purged: facts.purged === true, left: facts.quantity ?? left });
  if (facts.quantity !== null) {
    endLedger(state, there, {
      ...mark,
      placed,
      told: 'count',
      endParts: facts.quantity,
      endSd: facts.sd ?? 0,
    });
  }
  takeTapesOff(state, there, facts);
  state.slots.delete(key);
  state.takenOff.set(key, { entry: mark.entry, was: { ...there, before: null } });
  dropConflicts(state, there, mark.entry);
  const last = there.tapes.at(-1);
  if (last && isOlderTape(state, there, facts)) {
    addUnloaded(state, there, { entries: [last.entry, mark.entry], atMs: mark.atMs });
  }
}

/** The reels of a slot are off it, with what was counted on them, else what is reckoned to be left. */
function takeTapesOff(
  state: FloorState,
  there: SlotState,
  facts: Pick<PayloadOf<'reel.unloaded'>, 'quantity' | 'sd' | 'basis'>,
): void {
  const left = slotEstimate(state, there);
  const placed = placedSinceLedger(state, there);
  for (const tape of there.tapes) {
    const reel = state.reels.get(tape.reel);
    if (!reel || !isAt(reel.at, there)) continue;
    // Joined tapes hang together: what is left goes with the last one.
    const last = tape === there.tapes.at(-1);
    const counted = last ? (facts.quantity ?? left.parts) : 0;
    state.reels.set(tape.reel, {
      ...reel,
      count: counted === null ? null : Math.round(counted),
      sd: facts.quantity === null ? keptSd(left.sd) : (facts.sd ?? 0),
      basis: facts.quantity === null ? 'counted-down' : (facts.basis ?? 'typed'),
      at: elsewhere(state, tape.reel, there),
      cameOff: last && facts.quantity === null ? openEvidence(there, there.ledger, placed) : null,
    });
  }
}

/** What is put on a slot was verified for every lane that feeds from it. */
function seeOnLanes(state: FloorState, { line, slot }: SlotState): void {
  for (const lane of linesFeeding(state, line)) seeInSweep(state, lane, slot);
}

function seeInSweep(state: FloorState, line: string, slot: string): void {
  const sweep = state.sweeps.get(line);
  if (!sweep || sweep.endedMs !== null || sweep.seen.includes(slot)) return;
  state.sweeps.set(line, { ...sweep, seen: [...sweep.seen, slot] });
}
