// Is this slot right for this setup? The one answer that the load list, the map, the changeover's moves, the start of a run and its
// release are built on. Method: the newest tape decides, as it is the one that will be picked. What was taken for the wanted part in
// this very setup stands, by rule or by a lead's word; what was loaded for another setup must carry a part that this one takes, on a
// feeder that can feed it. Blocked material is right nowhere. What is wrong here and right for another lane that feeds from the slot is kept for that.
// Refused: asking the change list whether a feeder stays and the load list whether its reel fits; the two came apart.

import { compareSlots, placesTaken } from './address.ts';
import { feederFits } from './feeder-fits.ts';
import { blockReasons, takenAs } from './fits.ts';
import type { SetupSlot } from './kinds.ts';
import { type LaneSetup, lanesTaking, standingAt } from './lanes.ts';
import { type FloorState, type SlotState, slotKey, type Tape } from './state.ts';
import { type LaneWant, lanesWanting, wantedOn } from './wanted.ts';

/** How a slot stands against a setup. `held`: nothing is on it, and a reel for it waits for a lead. */
export const slotAnswers = ['right', 'empty', 'held', 'other-part', 'wrong-feeder', 'blocked'] as const;
export type SlotAnswer = (typeof slotAnswers)[number];

/** One slot that a setup uses, against the floor. */
export interface SlotLook {
  readonly slot: string;
  readonly wanted: SetupSlot;
  readonly loaded: SlotState | null;
  readonly is: SlotAnswer;
  /** The lane that what stands there is right for, where it is wrong for this one: it stays; null = for none. */
  readonly keptFor: string | null;
}

/** A loaded slot that the setup does not use. */
export interface Surplus {
  readonly loaded: SlotState;
  /** Its feeder takes a position that a slot of the setup needs, so it must come out; else it may stay. */
  readonly isInTheWay: boolean;
}

/** A line against a setup, chosen for it or not; both lists in walking order. */
export interface LineLook {
  readonly setup: string | null;
  readonly slots: readonly SlotLook[];
  readonly surplus: readonly Surplus[];
}

/** Answers for slots of one line and one setup, one by one. Cost: one walk over the holds, then a few look-ups a slot. */
export function slotLooker(state: FloorState, line: string, setup: string): (wanted: SetupSlot) => SlotLook {
  const held = new Set<string | null>();
  for (const { facts } of state.holds.values())
    if (facts.line === line && facts.setup === setup) held.add(facts.slot);
  let lanes: readonly LaneSetup[] | null = null;
  const keeper = (loaded: SlotState) => {
    lanes ??= lanesTaking(state, line);
    return keeperOf(state, loaded, lanesWanting(state, line, loaded.slot, lanes));
  };
  return (wanted) => {
    const { slot } = wanted;
    const loaded = state.slots.get(slotKey(line, slot)) ?? null;
    if (loaded === null)
      return { slot, wanted, loaded, is: held.has(slot) ? 'held' : 'empty', keptFor: null };
    const is = loadedIs(state, loaded, { wanted, setup });
    return { slot, wanted, loaded, is, keptFor: is === 'right' ? null : keeper(loaded) };
  };
}

/** The answer for one slot; null where the setup wants nothing there or is not known. */
export function slotRight(state: FloorState, line: string, setup: string, slot: string): SlotAnswer | null {
  const wanted = wantedOn(state, setup, slot);
  return wanted && slotLooker(state, line, setup)(wanted).is;
}

/** The other lane of the conveyor that what stands on a slot is right for: it is no surplus of this one's, and stays; null = for none. */
export function neededBy(state: FloorState, line: string, slot: string): string | null {
  const lanes = lanesWanting(state, line, slot);
  return keeperOf(state, state.slots.get(slotKey(line, slot)), lanes);
}

function keeperOf(
  state: FloorState,
  loaded: SlotState | undefined,
  lanes: readonly LaneWant[],
): string | null {
  const lane = loaded && lanes.find((want) => loadedIs(state, loaded, want) === 'right');
  return lane?.line ?? null;
}

/** The lane that a slot is kept for, though the setup of this one wants something else there; null where it is not. */
export function slotKeptFor(state: FloorState, line: string, setup: string, slot: string): string | null {
  const wanted = wantedOn(state, setup, slot);
  return wanted && slotLooker(state, line, setup)(wanted).keptFor;
}

/** True where a lane that builds nothing wants a slot that is kept for another lane: it has no say there, or the lane that runs would run dry. */
export function isKeptFrom(state: FloorState, { line, setup, wanted }: LaneWant): boolean {
  return !state.current.has(line) && slotKeptFor(state, line, setup, wanted.slot) !== null;
}

/** Looks at a whole line; without a known setup all that is loaded is surplus and in nobody's way. Cost: linear in slots, and sorting. */
export function lookAtLine(state: FloorState, line: string, setup: string | null): LineLook {
  const slots = setup === null ? [] : walkingOrder(state, setup).map(slotLooker(state, line, setup ?? ''));
  const isInTheWay = placesTaken(slots.map(({ slot, wanted }) => ({ slot, width: wanted.positions })));
  const lanes = lanesTaking(state, line);
  const surplus = standingAt(state, line)
    .filter(
      (loaded) =>
        (setup === null || wantedOn(state, setup, loaded.slot) === null) &&
        keeperOf(state, loaded, lanesWanting(state, line, loaded.slot, lanes)) === null,
    )
    .map((loaded) => ({
      loaded,
      isInTheWay: isInTheWay(loaded.slot, feederPositions(state, loaded) ?? 1),
    }))
    .sort((a, b) => compareSlots(a.loaded.slot, b.loaded.slot));
  return { setup, slots, surplus };
}

/**
 * Positions that the feeder on a slot takes: as its own record says, else as the setup that it was loaded for says; null where neither
 * does.
 */
export function feederPositions(state: FloorState, loaded: SlotState): number | null {
  const known = state.feeders.get(loaded.feeder ?? '')?.positions;
  const setup = loaded.tapes.at(-1)?.setup;
  return known ?? (setup === undefined ? null : (wantedOn(state, setup, loaded.slot)?.positions ?? null));
}

/**
 * True where the feeder that stands on a slot can feed what a setup wants, there (`isThere`) or on another slot. Besides what is asked of any
 * feeder, it takes as many positions as are wanted, where that is known.
 */
export function feederServes(
  state: FloorState,
  loaded: SlotState,
  wanted: SetupSlot,
  at: { readonly isThere?: boolean } = {},
): boolean {
  const positions = feederPositions(state, loaded);
  if (positions !== null && positions !== wanted.positions) return false;
  return loaded.feeder === null || feederFits(state, loaded.feeder, wanted, at).fits;
}

/** True where the newest tape on a slot falls under a block. */
export function isBlocked(state: FloorState, loaded: SlotState): boolean {
  const tape = loaded.tapes.at(-1);
  return tape !== undefined && blockReasons(state, tape).length > 0;
}

/** What a setup wants of a slot. */
type Want = { readonly wanted: SetupSlot; readonly setup: string };

/** True where a tape was let onto its slot for what this very setup wants there, by rule or by a lead's word. */
const isLetFor = (tape: Tape, { wanted, setup }: Want): boolean =>
  tape.setup === setup && tape.forPart === wanted.part;

/** True where a tape counts as what a setup wants on its slot, whatever its own number: it was let there for it, or this setup takes its part. */
export function countsAsWanted(state: FloorState, line: string, tape: Tape, want: Want): boolean {
  return isLetFor(tape, want) || takenAs(state, line, want.wanted, tape.part) !== null;
}

function loadedIs(state: FloorState, loaded: SlotState, { wanted, setup }: Want): SlotAnswer {
  const tape = loaded.tapes.at(-1);
  if (tape === undefined) return 'empty';
  if (isBlocked(state, loaded)) return 'blocked';
  if (isLetFor(tape, { wanted, setup })) return 'right';
  if (takenAs(state, loaded.line, wanted, tape.part) === null) return 'other-part';
  return feederServes(state, loaded, wanted, { isThere: true }) ? 'right' : 'wrong-feeder';
}

/** A setup's slots in walking order, sorted once: a setup never changes once it was taken in. */
const orders = new WeakMap<object, readonly SetupSlot[]>();

/** The slots of a setup in walking order; none where it is not known. */
export function walkingOrder(state: FloorState, setup: string): readonly SetupSlot[] {
  const taken = state.setups.get(setup);
  if (!taken) return [];
  const known = orders.get(taken);
  if (known) return known;
  const sorted = [...taken.slots].sort((a, b) => compareSlots(a.slot, b.slot));
  orders.set(taken, sorted);
  return sorted;
}
