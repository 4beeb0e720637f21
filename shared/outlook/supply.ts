// What the run still needs beyond what is on the line: slot by slot how long reels last, and the store's pick list. Pure.

import type { FitLife } from '../floor/fits.ts';
import { comparePlaces } from '../floor/place-order.ts';
import { labelShareOf, tapeSd } from '../floor/remaining.ts';
import { type ShelfReel, shelfFor } from '../floor/shelf.ts';
import type { FloorState, Reel } from '../floor/state.ts';
import { pocketsOf } from '../floor/tray.ts';
import { turnGroup } from '../floor/turns.ts';
import { type PickLine, pickList, type WaitingReel } from '../forecast/outlook.ts';
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

/** The line's supply. */
export interface Supply {
  /** Slots that need at least one reel more, soonest first. */
  readonly slots: readonly SlotSupply[];
  readonly picks: readonly PickLine[];
}

/** Reels on the shelf that a slot may take as they are and that have parts, in the order to be taken. */
export function waitingReels(shelf: readonly ShelfReel[]): readonly Reel[] {
  return shelf.flatMap(({ reel, fit }) =>
    fit.verdict === 'accepted' && (reel.count ?? 0) > 0 ? [reel] : [],
  );
}

/** Parts on a full reel of one part or another, as the log has seen them: the largest count. The reels are walked once, for all parts. */
export function fullReels(floor: FloorState): (part: string) => number {
  const largest = new Map<string, number>();
  const saw = (part: string | null, count: number | null) => {
    if (part !== null && (count ?? 0) > (largest.get(part) ?? 0)) largest.set(part, count ?? 0);
  };
  for (const { part, count } of floor.reels.values()) saw(part, count);
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

/**
 * What the line's supply asks, as figures alone, so that a worker can answer it. `slots`: in the order of the question's. `lifeOf`: what is
 * left of a reel's floor life as a part.
 */
export function supplyQuestion(
  floor: FloorState,
  outlook: Outlook,
  lifeOf?: (reel: Reel, part: string) => FitLife | null,
): { readonly question: SupplyQuestion; readonly slots: readonly SlotOutlook[] } {
  // Slots used in turn are one long tape: what they need is asked of the last that has parts.
  const slots = outlook.slots.filter((slot) => !slot.forecast.outlasts && slot.turn?.backup == null);
  const labelShare = labelShareOf(floor, outlook.line);
  const shelf = shelfFor(
    floor,
    { line: outlook.line, setup: outlook.run.setup, nowMs: outlook.pace.nowMs },
    lifeOf,
  );
  const waiting = new Map<string, readonly WaitingReel[]>();
  const loads = slots.map(({ load, wanted, estimate: { splice } }) => {
    // Slots that take the same parts share one list.
    const takes = JSON.stringify([wanted.part, ...wanted.alternates]);
    if (!waiting.has(takes)) {
      const reels = waitingReels(shelf(wanted));
      waiting.set(
        takes,
        reels.map((reel) => ({ reel: reel.reel, parts: reel.count ?? 0, sd: tapeSd(reel, labelShare) })),
      );
    }
    return { load, takes, splice };
  });
  return { question: { pace: outlook.basis, slots: loads, waiting }, slots };
}

/** The answer, with the slots and reels that it speaks of; a reel that is gone by now is left out. */
export function toSupply(
  floor: FloorState,
  outlook: Outlook,
  of: { readonly answer: readonly SupplyAnswer[]; readonly slots: readonly SlotOutlook[] },
  lifeOf?: (reel: Reel, part: string) => FitLife | null,
): Supply {
  const shelf = shelfFor(
    floor,
    { line: outlook.line, setup: outlook.run.setup, nowMs: outlook.pace.nowMs },
    lifeOf,
  );
  const slots = of.slots.flatMap((slot, at): SlotSupply[] => {
    const found = of.answer[at];
    if (!found) return [];
    const { ends, lasts, bring } = found;
    return [
      { slot, ends, lasts, bring, waiting: found.takes.flatMap((reel) => floor.reels.get(reel) ?? []) },
    ];
  });
  const fullReel = fullReels(floor);
  const needs = slots.flatMap(({ slot, bring }) =>
    bring === null
      ? []
      : [
          {
            part: slot.wanted.part,
            slot: slotNames(floor, outlook, slot),
            parts: bring.parts,
            reelQuantity: fullPackageOf(floor, slot, fullReel),
            byMs: Math.max(outlook.pace.nowMs, bring.byMs),
            place: uncountedPlace(shelf(slot.wanted)),
            ...(slot.feeds === 'tape' ? {} : { comesIn: slot.feeds }),
          },
        ],
  );
  return { slots, picks: pickList(needs) };
}

/** The slot; where it is used in turn, all slots of its part, since a reel may go to any. */
function slotNames(floor: FloorState, outlook: Outlook, { slot }: SlotOutlook): string {
  const setup = floor.setups.get(outlook.run.setup);
  const group = setup ? turnGroup(setup, slot) : [];
  return group.length === 0 ? slot : group.map((each) => each.slot).join(' ');
}

/** Where a reel lies that the slot may take and whose count nobody knows, so that it could not be counted on; empty where none does. */
function uncountedPlace(shelf: readonly ShelfReel[]): string {
  const places = shelf
    .filter(({ reel, fit }) => reel.count === null && fit.verdict === 'accepted')
    .map(({ reel }) => reel.place ?? '');
  return places.sort(comparePlaces)[0] ?? '';
}
