// Slots of one part used one after the other: which of them feeds, and what has each taken so far?
// Method: the first slot in turn that has parts takes all; what a slot has taken follows from what those before it could give since the
// last entry that touched one of them. Asking the machine was refused: nothing tells the log when it changes over.

import type { SetupSlot } from './kinds.ts';
import { runsBuilding } from './lanes.ts';
import type { FloorState, Setup, SlotState } from './state.ts';
import { slotKey } from './state.ts';
import { perPanelOf } from './wanted.ts';

// A setup's record never changes, so its groups are made once and go with it.
const groupsBySetup = new WeakMap<Setup, ReadonlyMap<string, readonly SetupSlot[]>>();

/** The slots of a setup that are used in turn with this one, itself among them, first in turn first; empty where it shares otherwise. */
export function turnGroup(setup: Setup, slot: string): readonly SetupSlot[] {
  let groups = groupsBySetup.get(setup);
  if (!groups) {
    const byPart = new Map<string, SetupSlot[]>();
    for (const each of setup.slots) {
      if (each.turn === undefined) continue;
      const part = each.part.toUpperCase();
      byPart.set(part, [...(byPart.get(part) ?? []), each]);
    }
    const found = new Map<string, readonly SetupSlot[]>();
    for (const group of byPart.values()) {
      group.sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0));
      if (group.length > 1) for (const each of group) found.set(each.slot, group);
    }
    groups = found;
    groupsBySetup.set(setup, groups);
  }
  return groups.get(slot) ?? [];
}

/**
 * The slots whose use hangs on that of this one, itself among them, by address: those that any lane building from them uses in turn with it, and with
 * those in turn. Empty where no lane uses it so. What is set down of one must be set down of all at once.
 */
export function turnsWith(
  state: Pick<FloorState, 'current' | 'runs' | 'setups'>,
  line: string,
  slot: string,
): ReadonlySet<string> {
  const setups = runsBuilding(state, line).flatMap((run) => state.setups.get(run.setup) ?? []);
  const found = new Set<string>();
  const add = (address: string) => {
    for (const setup of setups)
      for (const each of turnGroup(setup, address)) {
        if (found.has(each.slot)) continue;
        found.add(each.slot);
        add(each.slot);
      }
  };
  add(slot);
  return found;
}

/** Placements that a slot's tapes could still give when its figures were last set; Infinity where a count is unknown. */
function capacity(state: FloorState, slot: SlotState): number {
  const loss = state.rules.get(slot.line)?.loss ?? 0;
  let parts = 0;
  for (const tape of slot.tapes) {
    if (tape.count === null) return Number.POSITIVE_INFINITY;
    parts += tape.count;
  }
  return Math.max(0, parts * (1 - loss) - slot.usedBefore);
}

/** Panels of a setup, built since the figures of the slot asked for were set; fractions where boards were skipped. */
export interface BuiltFromTurns {
  readonly setup: string;
  readonly panels: number;
}

/** Placements that panels took from a slot whose lanes may use it in turn with others. `before`: those groups alone that come before this place in `built`. */
export function takenFrom(
  state: FloorState,
  slot: SlotState,
  built: readonly BuiltFromTurns[],
  before = built.length,
): number {
  let taken = 0;
  // Lanes that use the same slots in turn take from them together; other groups one after the other, each what the one before has left.
  const groups = new Map<string, { group: readonly SetupSlot[]; all: number; at: number }>();
  for (const [at, { setup, panels }] of built.entries()) {
    const known = state.setups.get(setup);
    const group = known ? turnGroup(known, slot.slot) : [];
    const all = panels * perPanelOf(state, setup, slot.slot);
    const key = JSON.stringify(group.map((each) => each.slot));
    const there = groups.get(key);
    if (group.length === 0) taken += all;
    else if (there) there.all += all;
    else groups.set(key, { group, all, at });
  }
  for (const { group, all, at } of groups.values()) {
    const room = (other: SlotState) => capacity(state, other) - takenFrom(state, other, built, at);
    if (at < before) taken += takenInTurn(state, slot, { group, all, room });
  }
  return taken;
}

/** Placements of a slot out of `all` that its group took: what is left by the slots before it, and no more than it has where another waits behind it. */
function takenInTurn(
  state: FloorState,
  slot: SlotState,
  of: {
    readonly group: readonly SetupSlot[];
    readonly all: number;
    readonly room: (slot: SlotState) => number;
  },
): number {
  const own = of.group.findIndex((each) => each.slot === slot.slot);
  let left = of.all;
  for (const { slot: address } of of.group.slice(0, own)) {
    const other = state.slots.get(slotKey(slot.line, address));
    if (other) left -= Math.max(0, of.room(other));
  }
  const isFollowed = of.group.slice(own + 1).some((each) => state.slots.has(slotKey(slot.line, each.slot)));
  return Math.max(0, isFollowed ? Math.min(left, of.room(slot)) : left);
}

/** Placements per panel of one part over its slots: those used side by side add up, of those used in turn one feeds at a time. */
export function partPerPanel(slots: readonly Pick<SetupSlot, 'perPanel' | 'turn'>[]): number {
  let beside = 0;
  let inTurn = 0;
  for (const { perPanel, turn } of slots) {
    if (turn === undefined) beside += perPanel;
    else inTurn = Math.max(inTurn, perPanel);
  }
  return beside + inTurn;
}
