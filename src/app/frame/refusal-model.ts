// What a refusal says besides its sentence: where the reel belongs, which reel or feeder is right here, what differs. Pure.

import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import { freeFeeders } from '../../../shared/floor/feeder-fits.ts';
import { slotsWanting } from '../../../shared/floor/fits.ts';
import { placeOf } from '../../../shared/floor/fold-places.ts';
import { sharesSlots } from '../../../shared/floor/lanes.ts';
import { hasOwnId } from '../../../shared/floor/reel-id.ts';
import { shelfFor } from '../../../shared/floor/shelf.ts';
import { type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { wantedElsewhere } from '../../../shared/verdict/early.ts';
import type { ShownVerdict } from '../desk/desk.ts';

/** A slot where a refused reel belongs. */
export interface Home {
  /** Null: the line in hand. */
  readonly line: string | null;
  readonly slot: string;
  readonly isLoaded: boolean;
}

/** Slots that want the refused reel: those of this line first, of them those without a reel. */
export function homesOf(floor: FloorState, line: string, shown: ShownVerdict): readonly Home[] {
  const setup = floor.chosen.get(line);
  const { part, supplierPart } = shown.reel;
  const parts = part !== null ? [part] : (floor.approvals.get(supplierPart ?? '') ?? []);
  const isLoaded = (of: string, slot: string) => floor.slots.has(slotKey(of, slot));
  const here = setup === undefined ? [] : parts.flatMap((each) => slotsWanting(floor, setup, each));
  const others = parts.flatMap((each) => wantedElsewhere(floor, line, each));
  return [
    ...here
      .filter((slot) => slot !== shown.slot)
      .map((slot) => ({ line: null, slot, isLoaded: isLoaded(line, slot) }))
      .sort((a, b) => Number(a.isLoaded) - Number(b.isLoaded)),
    ...others.map(({ line: other, slot }) => ({ line: other, slot, isLoaded: isLoaded(other, slot) })),
  ];
}

/** The reel to fetch for a slot, of those that the log has off the line: the one that the line takes first. */
export interface RightReel {
  readonly part: string;
  /** Null where the log knows none. */
  readonly reel: string | null;
  readonly place: string | null;
  /** Other reels that serve as they are. */
  readonly more: number;
}

/**
 * Which reel is right for the slot of a refusal; null where no slot is known or the setup wants nothing there. Blocked, expired and empty
 * ones, and those that a lead would have to let on, send nobody.
 */
export function rightReelFor(
  floor: FloorState,
  at: { readonly line: string; readonly slot: string | null; readonly nowMs: number },
): RightReel | null {
  const { line, slot, nowMs } = at;
  const setup = floor.chosen.get(line);
  const wanted = slot === null || setup === undefined ? null : wantedOn(floor, setup, slot);
  if (!wanted || setup === undefined) return null;
  const reels = shelfFor(
    floor,
    { line, setup, nowMs },
    lifeOnShelf(floor, line, nowMs),
  )(wanted).filter(
    ({ reel, fit }) => fit.verdict === 'accepted' && (reel.count ?? 0) > 0 && hasOwnId(reel.reel),
  );
  const [first, ...rest] = reels;
  if (first === undefined) return { part: wanted.part, reel: null, place: null, more: 0 };
  const { reel, fit } = first;
  return { part: fit.part ?? wanted.part, reel: reel.reel, place: placeOf(reel), more: rest.length };
}

/** A listed feeder that serves the slot and stands nowhere; null where there is none. */
export function feederFor(floor: FloorState, line: string, slot: string | null): string | null {
  const setup = floor.chosen.get(line);
  const wanted = slot === null || setup === undefined ? null : wantedOn(floor, setup, slot);
  return wanted && (freeFeeders(floor, wanted)[0] ?? null);
}

/** What is to be compared, side by side; null where the reason compares nothing. */
export interface Compared {
  readonly wanted: string;
  readonly found: string;
  /** Slot or other thing whose wish `wanted` is; null: the closest wish of the setup. */
  readonly isClosest: boolean;
  readonly unit: 'part' | 'mm';
}

/** What a refusal compares: two part numbers, or two sizes. */
export function comparedBy(shown: ShownVerdict): Compared | null {
  const [first] = shown.reasons;
  const [wanted, found] = [first?.['wanted'], first?.['found']];
  if (first === undefined || wanted == null || found == null) return null;
  const facts = { wanted: String(wanted), found: String(found) };
  if (first.code === 'wrong-part') return { ...facts, isClosest: false, unit: 'part' };
  if (first.code === 'not-in-setup') return { ...facts, isClosest: true, unit: 'part' };
  const isSize = first.code === 'feeder-width' || first.code === 'feeder-pitch';
  return isSize ? { ...facts, isClosest: false, unit: 'mm' } : null;
}

/** A slot of this line that must be unloaded before the reel can go on; null where that is not what stands in its way. */
export function unloadFirst(line: string, shown: ShownVerdict): string | null {
  const [first] = shown.reasons;
  if (first?.code === 'slot-loaded') return shown.slot;
  const isElsewhere = first?.code === 'reel-elsewhere' || first?.code === 'feeder-elsewhere';
  return isElsewhere && sharesSlots(String(first['line']), line) ? String(first['slot']) : null;
}
