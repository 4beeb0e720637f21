// What happens when a cart docks: which of its places load, what stands on the line in those slots and goes off, and what the log has
// put elsewhere since the cart was filled, and which wide feeders would stand in another's place. Only places made ready for the setup
// asked for count; a verdict for another setup says nothing. Lanes of one feeder dock together or stay on the cart together, and what hung on the
// lanes of the feeder before them goes off with it, unless another lane of the conveyor needs it.

import { compareSlots, feederKey, isLaneBeside, positionsUnder } from '../floor/address.ts';
import { blockOn } from '../floor/blocks.ts';
import { takenAs } from '../floor/fits.ts';
import { sharesSlots, standingAt } from '../floor/lanes.ts';
import { isKeptFrom, neededBy, slotKeptFor } from '../floor/slot-right.ts';
import type { CartPlace, FloorState, SlotState } from '../floor/state.ts';
import { lanesWanting } from '../floor/wanted.ts';
import { loadedFeeders, widthOf } from './loaded.ts';

/**
 * A place that does not fit. `feeder-loaded`, `reel-loaded`: it stands on the slot `at`. `blocked`: its material was blocked since (`at` null).
 * `neighbour`: its feeder takes a position of the feeder on `at`, which stands there and stays or comes with the cart too. `lane-beside`: another lane
 * of its feeder, for `at`, does not fit or is for something else. `other-lane`: another lane of the conveyor, `at.line`, needs the slot `at` for
 * something else, or for what stands there.
 */
export interface UnfitPlace {
  readonly place: CartPlace;
  readonly why: 'feeder-loaded' | 'reel-loaded' | 'blocked' | 'neighbour' | 'lane-beside' | 'other-lane';
  readonly at: { readonly line: string; readonly slot: string } | null;
}

/** What docking would do; all lists in walking order. */
export interface Docking {
  /** Every place of the cart for this line and setup. */
  readonly places: readonly CartPlace[];
  readonly ready: readonly CartPlace[];
  /** What stands in the slots of `ready` now, on every lane: it goes off with the bank that the cart replaces. */
  readonly off: readonly SlotState[];
  readonly unfit: readonly UnfitPlace[];
  /** Places for another setup or line; they stay on the cart. */
  readonly others: number;
}

/** Tells what docking a cart on a line would do, for one setup. A cart that the log does not know has no places. */
export function dockingOf(
  state: FloorState,
  cart: string,
  more: { readonly line: string; readonly setup: string },
): Docking {
  const all = [...(state.carts.get(cart)?.values() ?? [])];
  const places = all
    .filter((place) => place.line === more.line && place.setup === more.setup)
    .sort((a, b) => compareSlots(a.slot, b.slot));
  const unfit = places.flatMap((place) => unfitOf(state, place) ?? []);
  const stays = (place: CartPlace) => unfit.some((one) => one.place === place);
  let ready = places.filter((place) => !stays(place));
  // What is left out leaves its slot as it is, which may be in the way of the next, and keeps the other lanes of its feeder back.
  for (;;) {
    const clash =
      firstTorn(all, ready, more.line) ??
      firstKept(state, ready, more.line) ??
      firstClash(state, ready, more);
    if (clash === null) break;
    unfit.push(clash);
    ready = ready.filter((place) => place !== clash.place);
  }
  unfit.sort((a, b) => compareSlots(a.place.slot, b.place.slot));
  const filled = new Set(ready.map(({ slot }) => feederKey(slot)));
  const off = standingAt(state, more.line)
    .filter(({ slot }) => filled.has(feederKey(slot)))
    .sort((a, b) => compareSlots(a.slot, b.slot));
  return { places, ready, off, unfit, others: all.length - places.length };
}

/** The first place whose feeder has another lane that stays on the cart: the feeder goes on with all of its lanes or not at all. */
function firstTorn(all: readonly CartPlace[], ready: readonly CartPlace[], line: string): UnfitPlace | null {
  for (const place of ready) {
    const beside = all.find(
      (other) =>
        sharesSlots(other.line, line) && isLaneBeside(other.slot, place.slot) && !ready.includes(other),
    );
    if (beside) return { place, why: 'lane-beside', at: { line, slot: beside.slot } };
  }
  return null;
}

/** The first place whose feeder would take off what another lane of the conveyor needs, on a slot of the place that no feeder of the cart fills. */
function firstKept(state: FloorState, ready: readonly CartPlace[], line: string): UnfitPlace | null {
  const filled = new Set(ready.map(({ slot }) => slot));
  const there = standingAt(state, line).filter(({ slot }) => !filled.has(slot));
  for (const place of ready) {
    for (const { slot } of there) {
      const lane = feederKey(slot) === feederKey(place.slot) ? neededBy(state, line, slot) : null;
      if (lane !== null) return { place, why: 'other-lane', at: { line: lane, slot } };
    }
  }
  return null;
}

/** The first place whose feeder takes a position of a neighbour; as in `setupFaults`, only addresses with numbers have neighbours. */
function firstClash(
  state: FloorState,
  ready: readonly CartPlace[],
  { line, setup }: { readonly line: string; readonly setup: string },
): UnfitPlace | null {
  const replaced = new Set(ready.map(({ slot }) => feederKey(slot)));
  const taken = new Map<string, string>();
  for (const { slot, width } of loadedFeeders(state, line)) {
    if (!replaced.has(feederKey(slot)))
      for (const position of positionsUnder(slot, width)) taken.set(position, slot);
  }
  for (const place of ready) {
    const positions = positionsUnder(place.slot, widthOf(state, place, [setup]));
    const neighbour = positions
      .map((position) => taken.get(position))
      .find((slot) => slot !== undefined && !isLaneBeside(slot, place.slot));
    if (neighbour !== undefined) return { place, why: 'neighbour', at: { line, slot: neighbour } };
    for (const position of positions) taken.set(position, place.slot);
  }
  return null;
}

function unfitOf(state: FloorState, place: CartPlace): UnfitPlace | null {
  for (const { line, slot, feeder, tapes } of state.slots.values()) {
    const at = { line, slot };
    if (place.feeder !== null && place.feeder === feeder) return { place, why: 'feeder-loaded', at };
    if (place.reel !== null && tapes.some((tape) => tape.reel === place.reel))
      return { place, why: 'reel-loaded', at };
  }
  if (blockOn(state, place) !== null) return { place, why: 'blocked', at: null };
  const { line, setup, slot } = place;
  const lane = leftTo(state, place) ?? slotKeptFor(state, line, setup, slot);
  return lane === null ? null : { place, why: 'other-lane', at: { line: lane, slot } };
}

/** The lane of the conveyor that wants something else on the place's slot: it may have been chosen, or begun, since the cart was filled; null = none. */
function leftTo(state: FloorState, { line, slot, part, setup }: CartPlace): string | null {
  const lane = lanesWanting(state, line, slot).find(
    (each) =>
      each.setup !== setup &&
      takenAs(state, each.line, each.wanted, part) === null &&
      !isKeptFrom(state, each),
  );
  return lane?.line ?? null;
}
