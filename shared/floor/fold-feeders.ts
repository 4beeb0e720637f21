// Feeders while a job runs: made ready away from the line, moved, set aside and seen to, and what each has placed. Method: what a feeder placed on
// slots that it left is a sum; what stands on it now is asked of the slot, so that a count that is corrected later is corrected here too. A ledger that is taken
// back is counted once. Picks are not counted, placements are: a part that was picked and lost is in the losses.

import { entryId } from '../log/entry.ts';
import { addLoadedSince, dropConflicts } from './conflicts.ts';
import { typeOf } from './feeder-types.ts';
import type { EntryOf, FloorEntry } from './kinds.ts';
import { placedSinceLedger, settleTurns, settleUse } from './remaining.ts';
import { type FeederWork, type FloorState, type Hold, type SlotState, slotKey } from './state.ts';

/** Kinds that this fold handles. */
type FeederEntry = EntryOf<
  | 'feeder.readied'
  | 'feeder.stripped'
  | 'feeder.moved'
  | 'feeder.set-aside'
  | 'feeder.cared'
  | 'feeder.care-ruled'
>;

/** Applies one entry to feeders. */
export function foldRunFeeders(state: FloorState, entry: FeederEntry): void {
  switch (entry.kind) {
    case 'feeder.readied':
      dropReady(state, entry.payload);
      state.ready.set(entry.payload.feeder, { ...entry.payload, atMs: entry.hlc.ms });
      return;
    case 'feeder.stripped':
      state.ready.delete(entry.payload.feeder);
      return;
    case 'feeder.moved':
      move(state, entry);
      return;
    case 'feeder.set-aside':
      state.setAside.set(entry.payload.feeder, { reason: entry.payload.reason, atMs: entry.hlc.ms });
      return;
    case 'feeder.cared': {
      const { feeder } = entry.payload;
      state.setAside.delete(feeder);
      const before = standingOn(state, feeder).map(
        (slot) => [slot.ledger.chain, placedSinceLedger(state, slot).count] as const,
      );
      state.work.set(feeder, { placed: 0, ended: [], caredMs: entry.hlc.ms, before });
      return;
    }
    case 'feeder.care-ruled': {
      const { type, placements } = entry.payload;
      if (placements === null) state.careRules.delete(type ?? '');
      else state.careRules.set(type ?? '', placements);
      return;
    }
    default:
      entry satisfies never;
  }
}

/** A held reel that a lead has cleared is ready on its feeder, by the verdict that held it. */
export function putReady(state: FloorState, { facts, entry, atMs }: Hold): void {
  const { feeder, line, setup, slot, reel, part, supplierPart, lot, dateCode, quantity } = facts;
  if (feeder === null || slot === null || state.ready.has(feeder)) return;
  const told = { feeder, line, setup, slot, reel, part: part ?? '', supplierPart, lot, dateCode, quantity };
  dropReady(state, told);
  state.ready.set(feeder, { ...told, of: entry, atMs });
}

/** What goes onto a slot, a cart or another feeder is not ready where it was any more: neither its feeder nor, under another, its reel. */
export function dropReady(
  state: FloorState,
  { feeder, reel }: { readonly feeder: string | null; readonly reel: string | null },
): void {
  for (const [key, ready] of state.ready)
    if (key === feeder || (reel !== null && ready.reel === reel)) state.ready.delete(key);
}

/** What stands on a slot goes to another one, its count with it. Where that is taken, or nothing stands there, nothing goes. */
function move(state: FloorState, entry: EntryOf<'feeder.moved'>): void {
  const { line, from, to } = entry.payload;
  if (!state.slots.has(slotKey(line, from)) || state.slots.has(slotKey(line, to))) return;
  const mark = { entry: entryId(entry), atMs: entry.hlc.ms };
  settleTurns(state, line, from);
  settleTurns(state, line, to);
  const there = state.slots.get(slotKey(line, from));
  if (!there) return;
  const settled = settleUse(state, there);
  state.slots.delete(slotKey(line, from));
  state.takenOff.set(slotKey(line, from), { entry: mark.entry, was: { ...there, before: null } });
  state.slots.set(slotKey(line, to), { ...settled, slot: to, ...mark, before: null });
  forgetMoves(state);
  state.moves.set(mark.entry, { line, from, to });
  for (const { reel } of there.tapes) {
    const known = state.reels.get(reel);
    if (known?.at && known.at.line === there.line && known.at.slot === from)
      state.reels.set(reel, { ...known, at: { line: there.line, slot: to } });
  }
  dropConflicts(state, there, mark.entry);
}

/** Forgets moves whose slots have both gone on: taking one back changes nothing any more, nor does an unload that could be taken back rest on it. */
function forgetMoves(state: FloorState): void {
  for (const [of, { line, from, to }] of state.moves) {
    const isLast = state.slots.get(slotKey(line, to))?.entry === of;
    if (state.takenOff.get(slotKey(line, to))?.was.entry === of) continue;
    if (!isLast && state.takenOff.get(slotKey(line, from))?.entry !== of) state.moves.delete(of);
  }
}

/**
 * Takes a move back: `back` where nothing else happened on either slot since, `newer` where something did and everything stays where it is,
 * `no-move` where the entry told of none.
 */
export function moveBack(state: FloorState, of: string): 'back' | 'newer' | 'no-move' {
  const moved = state.moves.get(of);
  if (moved === undefined) return 'no-move';
  const [from, to] = [slotKey(moved.line, moved.from), slotKey(moved.line, moved.to)];
  const now = state.slots.get(to);
  const taken = state.takenOff.get(from);
  if (now?.entry !== of || now.before !== null || taken?.entry !== of) return 'newer';
  const { was } = taken;
  const there = state.slots.get(from);
  if (there) {
    addLoadedSince(state, was, there);
    return 'newer';
  }
  settleTurns(state, moved.line, moved.from);
  settleTurns(state, moved.line, moved.to);
  const settled = settleUse(state, state.slots.get(to) ?? now);
  state.moves.delete(of);
  state.slots.delete(to);
  state.takenOff.delete(from);
  state.slots.set(from, { ...settled, slot: was.slot, entry: was.entry, atMs: was.atMs });
  for (const { reel } of was.tapes) {
    const known = state.reels.get(reel);
    if (known?.at && known.at.line === now.line && known.at.slot === now.slot)
      state.reels.set(reel, { ...known, at: { line: was.line, slot: was.slot } });
  }
  return 'back';
}

function standingOn(state: FloorState, feeder: string): SlotState[] {
  return [...state.slots.values()].filter((slot) => slot.feeder === feeder);
}

const noWork: FeederWork = { placed: 0, ended: [], caredMs: null, before: [] };
/** Ledgers of a feeder that may still be taken back. */
const ENDED_KEPT = 6;

const placedIn = (list: readonly (readonly [string, number])[], chain: string): number =>
  list.find(([each]) => each === chain)?.[1] ?? 0;

/** A ledger of a slot is over, or its feeder left: what it placed since the feeder was seen to is counted in. */
export function endWork(state: FloorState, there: SlotState, placed: number): void {
  if (there.feeder === null) return;
  const { chain } = there.ledger;
  const work = state.work.get(there.feeder) ?? noWork;
  const own = Math.max(0, placed - placedIn(work.before, chain));
  const others = work.ended.filter(([each]) => each !== chain);
  state.work.set(there.feeder, {
    ...work,
    placed: work.placed - placedIn(work.ended, chain) + own,
    ended: [...others, [chain, own] as const].slice(-ENDED_KEPT),
  });
}

/** Slots whose ledgers an entry may end, with what they had placed. */
export type Working = ReadonlyMap<string, { readonly slot: SlotState; readonly placed: number }>;

/** What stands on a line's slots before an entry that may end ledgers. Cost: linear in the slots named. */
export function workingBefore(state: FloorState, keys: Iterable<string>): Working {
  const found = new Map<string, { slot: SlotState; placed: number }>();
  for (const key of keys) {
    const slot = state.slots.get(key);
    if (slot && slot.feeder !== null) found.set(key, { slot, placed: placedSinceLedger(state, slot).count });
  }
  return found;
}

/** Counts in what ended between: another ledger stands on the slot, or another feeder, or nothing. */
export function keepWork(state: FloorState, before: Working): void {
  for (const [key, { slot, placed }] of before) {
    const now = state.slots.get(key);
    if (now?.ledger.chain !== slot.ledger.chain || now.feeder !== slot.feeder) endWork(state, slot, placed);
  }
}

/** Entries that end ledgers of slots. */
export const endsWork: ReadonlySet<FloorEntry['kind']> = new Set([
  'reel.verified',
  'hold.cleared',
  'reel.unloaded',
  'reel.counted',
  'tape.changed',
  'feeder.moved',
] as const);

/** What a feeder has placed since it was seen to last (else since the log began), about: skipped boards may be in it. */
export function placedBy(state: FloorState, feeder: string): number {
  const work = state.work.get(feeder) ?? noWork;
  let placed = work.placed;
  for (const slot of standingOn(state, feeder)) {
    const { chain } = slot.ledger;
    placed +=
      Math.max(0, placedSinceLedger(state, slot).count - placedIn(work.before, chain)) -
      placedIn(work.ended, chain);
  }
  return Math.max(0, Math.round(placed));
}

/** After how many placements a feeder is due for care; null where the plant gave no figure. */
export function careAfter(state: FloorState, feeder: string): number | null {
  const type = typeOf(state, feeder)?.type;
  return (type === undefined ? undefined : state.careRules.get(type)) ?? state.careRules.get('') ?? null;
}

/** True where a feeder has placed as much as the plant lets one place between two cares. */
export function isCareDue(state: FloorState, feeder: string): boolean {
  const after = careAfter(state, feeder);
  return after !== null && placedBy(state, feeder) >= after;
}
