// What the run still needs beyond what is on the line: slot by slot how long reels last, and the store's pick list. Pure. Asked and answered in steps, since
// a store has thousands of packages and the page that asks goes on drawing between them; the floor must not change meanwhile.

import type { FitLife } from '../floor/fits.ts';
import { placeOf } from '../floor/fold-places.ts';
import { comparePlaces, sortByPlaceSteps } from '../floor/place-order.ts';
import { labelShareOf, tapeSd } from '../floor/remaining.ts';
import { type ShelfReel, shelfFor } from '../floor/shelf.ts';
import type { FloorState, Reel } from '../floor/state.ts';
import { pocketsOf } from '../floor/tray.ts';
import { turnGroup } from '../floor/turns.ts';
import { type PickLine, type PickNeed, pickList, type WaitingReel } from '../forecast/outlook.ts';
import type { SupplyAnswer, SupplyQuestion } from '../forecast/supply.ts';
import type { Outlook, SlotOutlook } from './line.ts';

/** Parts on a full reel where the log has never seen one of the part. */
const USUAL_REEL = 5000;

/** One slot's reels to the end of the run. */
export interface SlotSupply {
  readonly slot: SlotOutlook;
  readonly ends: SupplyAnswer['ends'];
  readonly lasts: boolean;
  readonly bring: SupplyAnswer['bring'];
  readonly waiting: readonly Reel[];
}

/** A reel off the line that a slot takes for the rest of the run. */
export interface ReelOnHand {
  readonly reel: Reel;
  readonly slot: string;
}

/** The line's supply. */
export interface Supply {
  /** Slots that need at least one reel more, soonest first. */
  readonly slots: readonly SlotSupply[];
  /** The reels that wait for all of them, in walking order of the store. */
  readonly onHand: readonly ReelOnHand[];
  readonly picks: readonly PickLine[];
}

/** Reels on the shelf that a slot may take as they are and that have parts, in the order to be taken. */
export function waitingReels(shelf: readonly ShelfReel[]): readonly Reel[] {
  return shelf.flatMap(({ reel, fit }) =>
    fit.verdict === 'accepted' && (reel.count ?? 0) > 0 ? [reel] : [],
  );
}

/** Reels that a step looks at. */
const AT_ONCE = 1000;

/** Parts on a full reel of one part or another, as the log has seen them: the largest count. The reels are walked once, for all parts, in steps. */
export function* fullReelSteps(floor: FloorState): Generator<undefined, (part: string) => number> {
  const largest = new Map<string, number>();
  const saw = (part: string | null, count: number | null) => {
    if (part !== null && (count ?? 0) > (largest.get(part) ?? 0)) largest.set(part, count ?? 0);
  };
  let at = 0;
  for (const { part, count } of floor.reels.values()) {
    at += 1;
    if (at % AT_ONCE === 0) yield;
    saw(part, count);
  }
  for (const { tapes } of floor.slots.values()) for (const { part, count } of tapes) saw(part, count);
  return (part) => {
    const { measured, weighed } = floor.fullReels.get(part) ?? {};
    return Math.max(measured?.parts ?? weighed?.parts ?? 0, largest.get(part) ?? 0) || USUAL_REEL;
  };
}

/** Parts on what is to be brought: a full reel, or for trays and tubes as many as what feeds now holds when full. */
function fullPackageOf(
  floor: FloorState,
  { loaded, wanted }: SlotOutlook,
  fullReel: (part: string) => number,
): number {
  const { tray, tube } = floor.packs.get(loaded.tapes.at(-1)?.reel ?? '') ?? {};
  if (tray !== undefined) return pocketsOf(tray);
  return tube === undefined ? fullReel(wanted.part) : tube.tubes * tube.parts;
}

/** What is asked of a line's supply; `slots`: in the order of the question's. */
export interface SupplyAsk {
  readonly question: SupplyQuestion;
  readonly slots: readonly SlotOutlook[];
}

/** What is left of a reel's floor life as a part. */
type LifeOf = (reel: Reel, part: string) => FitLife | null;

/** What the line's supply asks, as figures alone, so that a worker can answer it: a step for each list of reels. */
export function* supplyQuestionSteps(
  floor: FloorState,
  outlook: Outlook,
  lifeOf?: LifeOf,
): Generator<undefined, SupplyAsk> {
  // Slots used in turn are one long tape: what they need is asked of the last that has parts.
  const slots = outlook.slots.filter((slot) => !slot.forecast.outlasts && slot.turn?.backup == null);
  const labelShare = labelShareOf(floor, outlook.line);
  const shelf = shelfOf(floor, outlook, lifeOf);
  const waiting = new Map<string, readonly WaitingReel[]>();
  const loads: SupplyQuestion['slots'][number][] = [];
  for (const { load, wanted, estimate } of slots) {
    // Slots that take the same parts share one list.
    const takes = JSON.stringify([wanted.part, ...wanted.alternates]);
    if (!waiting.has(takes)) {
      yield;
      const reels = waitingReels(shelf(wanted));
      waiting.set(
        takes,
        reels.map((reel) => ({ reel: reel.reel, parts: reel.count ?? 0, sd: tapeSd(reel, labelShare) })),
      );
    }
    loads.push({ load, takes, splice: estimate.splice });
  }
  return { question: { pace: outlook.basis, slots: loads, waiting }, slots };
}

function shelfOf(floor: FloorState, { line, run, pace }: Outlook, lifeOf: LifeOf | undefined) {
  return shelfFor(floor, { line, setup: run.setup, nowMs: pace.nowMs }, lifeOf);
}

/** The answer, with the slots and reels that it speaks of, slot by slot; a reel that is gone by now is left out. */
export function* supplySteps(
  floor: FloorState,
  outlook: Outlook,
  of: { readonly answer: readonly SupplyAnswer[]; readonly slots: readonly SlotOutlook[] },
  lifeOf?: LifeOf,
): Generator<undefined, Supply> {
  const slots = of.slots.flatMap((slot, at): SlotSupply[] => {
    const found = of.answer[at];
    if (!found) return [];
    const { ends, lasts, bring } = found;
    return [
      { slot, ends, lasts, bring, waiting: found.takes.flatMap((reel) => floor.reels.get(reel) ?? []) },
    ];
  });
  yield;
  const fullReel = yield* fullReelSteps(floor);
  yield;
  const shelf = shelfOf(floor, outlook, lifeOf);
  const needs: PickNeed[] = [];
  for (const { slot, bring } of slots) {
    if (bring === null) continue;
    yield;
    needs.push({
      part: slot.wanted.part,
      slot: slotNames(floor, outlook, slot),
      parts: bring.parts,
      reelQuantity: fullPackageOf(floor, slot, fullReel),
      byMs: Math.max(outlook.pace.nowMs, bring.byMs),
      place: uncountedPlace(shelf(slot.wanted)),
      ...(slot.feeds === 'tape' ? {} : { comesIn: slot.feeds }),
    });
  }
  yield;
  const picks = pickList(needs);
  const waiting = slots.flatMap(({ slot, waiting: reels }) =>
    reels.map((reel) => ({ reel, slot: slot.slot })),
  );
  const onHand = yield* sortByPlaceSteps(waiting, ({ reel }) => placeOf(reel) ?? '');
  return { slots, onHand, picks };
}

/** The slot; where it is used in turn, all slots of its part, since a reel may go to any. */
function slotNames(floor: FloorState, outlook: Outlook, { slot }: SlotOutlook): string {
  const setup = floor.setups.get(outlook.run.setup);
  const group = setup ? turnGroup(setup, slot) : [];
  return group.length === 0 ? slot : group.map((each) => each.slot).join(' ');
}

/** Where a reel lies that the slot may take and whose count nobody knows, so that it could not be counted on; empty where none does. */
function uncountedPlace(shelf: readonly ShelfReel[]): string {
  let first = '';
  for (const { reel, fit } of shelf) {
    const { place = '' } = reel;
    if (reel.count === null && fit.verdict === 'accepted' && comparePlaces(place, first) < 0) first = place;
  }
  return first;
}
