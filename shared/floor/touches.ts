// Which slots and reels does an entry touch? Asked of the state before the entry, kind by kind; registry.ts says which answer is a kind's.
// Method: rather too many than too few; where an entry may bring back anything, all is named. The trace compares what is named before
// and after, so that a slot left out would be missing from it.

import { entryId } from '../log/entry.ts';
import type { EntryOf } from './kinds.ts';
import { standingAt } from './lanes.ts';
import { nameByEntry } from './reel-id.ts';
import { type FloorState, slotKey } from './state.ts';
import { tapeSlot } from './tape-slot.ts';
import { turnsWith } from './turns.ts';

/** What an entry touches. */
export interface Touched {
  /** Keys (`slotKey`) of slots on which something else may stand after it, or may be counted otherwise. */
  readonly slots: readonly string[];
  /** Keys of slots that keep what stands on them, and of which only is set down what was used so far. */
  readonly computed: readonly string[];
  /** Reels, by the id under which the state keeps them, whose record may change. */
  readonly reels: readonly string[];
}

const none: Touched = { slots: [], computed: [], reels: [] };

/** No slot and no reel. */
export function nowhere(): Touched {
  return none;
}

/** What each slot of a line has used so far is set down. */
function allOn(state: FloorState, line: string): Touched {
  return { ...none, computed: standingAt(state, line).map((there) => slotKey(there.line, there.slot)) };
}

/** A run begins or ends: what its slots have used so far is set down. */
export function ofLine(
  state: FloorState,
  { payload: { line } }: EntryOf<'run.started' | 'run.ended'>,
): Touched {
  return allOn(state, line);
}

/** Panels counted after their run's end: what its slots have used is set down anew. */
export function ofPanels(
  state: FloorState,
  { payload: { run } }: EntryOf<'panels.counted' | 'panels.corrected'>,
): Touched {
  const named = state.runs.get(run);
  if (named?.phase !== 'ended') return none;
  return allOn(state, named.line);
}

/** As panels counted, by a station: after the end of the line's newest run. */
export function ofStation(
  state: FloorState,
  { payload: { line } }: EntryOf<'station.counted' | 'station.doubled'>,
): Touched {
  if (state.current.has(line)) return none;
  return allOn(state, line);
}

/** The slot of a verdict, the reel, and what stands there. A verdict without a slot touches the reel alone. */
export function ofVerdict(state: FloorState, entry: EntryOf<'reel.verified'>): Touched {
  const { line, slot, reel } = entry.payload;
  const own = reel ?? nameByEntry(entryId(entry));
  return slot === null ? { ...none, reels: [own] } : onSlots(state, line, { slots: [slot], reels: [own] });
}

/** Where the reel that waited for a lead was to go. */
export function ofHold(state: FloorState, entry: EntryOf<'hold.cleared'>): Touched {
  const facts = state.holds.get(entry.payload.of)?.facts;
  if (facts === undefined) return none;
  const reels = [facts.reel ?? nameByEntry(entryId(entry))];
  return facts.slot === null
    ? { ...none, reels }
    : onSlots(state, facts.line, { slots: [facts.slot], reels });
}

/** The slot that was emptied. */
export function ofSlot(state: FloorState, { payload }: EntryOf<'reel.unloaded'>): Touched {
  const { line, slot, reel } = payload;
  return onSlots(state, line, { slots: [slot], reels: reel === null ? [] : [reel] });
}

/** The slot on which a machine saw a joint pass. */
export function ofTape(state: FloorState, { payload }: EntryOf<'tape.changed'>): Touched {
  const there = tapeSlot(state, payload);
  return there ? onSlots(state, payload.line, { slots: [there.slot], reels: [] }) : none;
}

/** The slot on which a reel was counted, or the reel alone. */
export function ofCount(state: FloorState, { payload }: EntryOf<'reel.counted'>): Touched {
  const { line, slot, reel } = payload;
  const reels = reel === null ? [] : [reel];
  return line === null || slot === null ? { ...none, reels } : onSlots(state, line, { slots: [slot], reels });
}

/** A reel off the line. */
export function ofReel(
  _state: FloorState,
  {
    payload: { reel },
  }: EntryOf<
    | 'reel.put'
    | 'reel.sighted'
    | 'reel.aired'
    | 'reel.timed'
    | 'reel.dated'
    | 'reel.measured'
    | 'bake.approved'
    | 'cart.filled'
    | 'feeder.readied'
    | 'material.blocked'
  >,
): Touched {
  return reel === null ? none : { ...none, reels: [reel] };
}

/** A package that was cut in two, or two that were joined. */
export function ofTwoReels(_state: FloorState, { payload }: EntryOf<'reel.split' | 'reel.merged'>): Touched {
  return { ...none, reels: [payload.reel, 'into' in payload ? payload.into : payload.from] };
}

/** A package that gets the plant's id, under either name, and the slot that it is on. */
export function ofNamed(state: FloorState, { payload: { reel, was } }: EntryOf<'reel.named'>): Touched {
  const at = was === null ? null : (state.reels.get(was)?.at ?? null);
  const reels = was === null ? [reel] : [was, reel];
  return { ...none, slots: at === null ? [] : [slotKey(at.line, at.slot)], reels };
}

/** A package that somebody says something of, and the slot that it is on. */
export function ofPacked(state: FloorState, { payload: { reel } }: EntryOf<'reel.packed'>): Touched {
  const at = state.reels.get(reel)?.at ?? null;
  return { ...none, slots: at === null ? [] : [slotKey(at.line, at.slot)], reels: [reel] };
}

/** The slots between which a feeder went. */
export function ofMove(state: FloorState, { payload: { line, from, to } }: EntryOf<'feeder.moved'>): Touched {
  return onSlots(state, line, { slots: [from, to], reels: [] });
}

/** The slots onto which a cart was docked, and what it carried for them. */
export function ofDocking(state: FloorState, entry: EntryOf<'cart.docked'>): Touched {
  const { cart, line, slots } = entry.payload;
  const places = state.carts.get(cart);
  const reels = slots.map((slot) => places?.get(slot)?.reel ?? nameByEntry(entryId(entry)));
  return onSlots(state, line, { slots, reels });
}

/** What is taken back or settled may bring back anything. */
export function everywhere(state: FloorState): Touched {
  const slots = new Set([...state.slots.keys(), ...state.takenOff.keys()]);
  for (const { choices } of state.conflicts.values())
    for (const { line, slot } of choices) slots.add(slotKey(line, slot));
  return { slots: [...slots], computed: [], reels: [...state.reels.keys()] };
}

/** Slots of a line with the reels on them; of slots used in turn with them, what was used so far is set down first. */
function onSlots(
  state: FloorState,
  line: string,
  of: { readonly slots: readonly string[]; readonly reels: readonly string[] },
): Touched {
  const keys = of.slots.map((slot) => slotKey(line, slot));
  const there = keys.flatMap((key) => state.slots.get(key)?.tapes.map(({ reel }) => reel) ?? []);
  const group = new Set(of.slots.flatMap((slot) => [...turnsWith(state, line, slot)]));
  return {
    slots: keys,
    computed: [...group].map((slot) => slotKey(line, slot)),
    reels: [...of.reels, ...there],
  };
}
