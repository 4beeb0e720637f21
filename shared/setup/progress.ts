// How far a line is made ready for its setup: slot by slot, in walking order, and what to do next.

import { compareSlots } from './address.ts';
import type { SetupSlot } from './kinds.ts';
import { wantedOn } from './left.ts';
import { type FloorState, type SlotState, slotKey } from './state.ts';

/** What a slot of the setup still needs. `other` = something else is on it; `held` = waits for a lead. */
export const slotPhases = ['missing', 'held', 'verified', 'other'] as const;
export type SlotPhase = (typeof slotPhases)[number];

/** One slot of the setup against the floor. */
export interface SlotProgress {
  readonly slot: string;
  readonly wanted: SetupSlot;
  readonly phase: SlotPhase;
  readonly loaded: SlotState | null;
}

/** A line against its setup. */
export interface SetupProgress {
  readonly setup: string | null;
  /** In walking order. */
  readonly slots: readonly SlotProgress[];
  readonly verified: number;
  readonly held: number;
  /** The first slot in walking order that still needs a reel. */
  readonly next: SlotProgress | null;
  /** Loaded slots that the setup does not use. */
  readonly unwanted: readonly SlotState[];
}

/** A setup's slots in walking order, sorted once: a setup never changes once it was taken in. */
const orders = new WeakMap<object, readonly SetupSlot[]>();

function walkingOrder(setup: { readonly slots: readonly SetupSlot[] } | undefined): readonly SetupSlot[] {
  if (!setup) return [];
  const known = orders.get(setup);
  if (known) return known;
  const sorted = [...setup.slots].sort((a, b) => compareSlots(a.slot, b.slot));
  orders.set(setup, sorted);
  return sorted;
}

/** Looks at slots of a line's setup, one by one: what is on them, and what they still need. */
function slotLook(
  state: FloorState,
  line: string,
  setup: string | null,
): (wanted: SetupSlot) => SlotProgress {
  const held = new Set<string | null>();
  for (const { facts } of state.holds.values()) if (facts.line === line) held.add(facts.slot);
  return (wanted) => {
    const { slot } = wanted;
    const loaded = state.slots.get(slotKey(line, slot)) ?? null;
    return { slot, wanted, loaded, phase: phaseOf(wanted, loaded, { setup, held: held.has(slot) }) };
  };
}

/** What one slot of the line's setup still needs; null where the setup does not use it. The same as in `setupProgress`. */
export function slotPhase(state: FloorState, line: string, slot: string): SlotPhase | null {
  const setup = state.chosen.get(line) ?? null;
  const wanted = setup === null ? null : wantedOn(state, setup, slot);
  return wanted && slotLook(state, line, setup)(wanted).phase;
}

/** The first slot in walking order that still needs a reel; null where there is none. The same as `setupProgress(…).next`. */
export function nextMissing(state: FloorState, line: string): string | null {
  const id = state.chosen.get(line) ?? null;
  const look = slotLook(state, line, id);
  const order = walkingOrder(id === null ? undefined : state.setups.get(id));
  return order.find((wanted) => look(wanted).phase === 'missing')?.slot ?? null;
}

/** Compares a line with the setup chosen for it. Cost: linear in slots, and their sorting. */
export function setupProgress(state: FloorState, line: string): SetupProgress {
  const id = state.chosen.get(line) ?? null;
  const setup = id === null ? undefined : state.setups.get(id);
  const slots = walkingOrder(setup).map(slotLook(state, line, id));
  const unwanted = [...state.slots.values()]
    .filter((slot) => slot.line === line && (id === null || wantedOn(state, id, slot.slot) === null))
    .sort((a, b) => compareSlots(a.slot, b.slot));
  return {
    setup: id,
    slots,
    verified: slots.filter((slot) => slot.phase === 'verified').length,
    held: slots.filter((slot) => slot.phase === 'held').length,
    next: slots.find((slot) => slot.phase === 'missing') ?? null,
    unwanted,
  };
}

function phaseOf(
  wanted: SetupSlot,
  loaded: SlotState | null,
  { setup, held }: { readonly setup: string | null; readonly held: boolean },
): SlotPhase {
  if (!loaded) return held ? 'held' : 'missing';
  const tape = loaded.tapes.at(-1);
  if (!tape) return 'missing';
  const fits = tape.part === wanted.part || wanted.alternates.includes(tape.part);
  // What was taken for the wanted part in this very setup stands: by rule, or by a lead's word. Another setup asks anew.
  const stands = tape.setup === setup && tape.forPart === wanted.part;
  return fits || stands ? 'verified' : 'other';
}
