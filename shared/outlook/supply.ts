// What the run still needs beyond what is on the line: slot by slot how long reels last, and the store's pick list. Pure.

import { comparePlaces } from '../floor/fold-places.ts';
import { labelShareOf, tapeSd } from '../floor/ledger.ts';
import type { FloorState, Reel } from '../floor/state.ts';
import { turnGroup } from '../floor/turns.ts';
import { type PickLine, pickList, type WaitingReel } from '../forecast/outlook.ts';
import type { SlotSupply as SlotAnswer, SupplyQuestion } from '../forecast/supply.ts';
import { compareText } from '../log/order.ts';
import type { Outlook, SlotOutlook } from './line.ts';

/** Parts on a full reel where the log has never seen one of the part. */
const USUAL_REEL = 5000;

/** One slot's reels to the end of the run. */
export interface SlotSupply {
  readonly slot: SlotOutlook;
  readonly ends: SlotAnswer['ends'];
  readonly lasts: boolean;
  readonly bring: SlotAnswer['bring'];
  readonly waiting: readonly Reel[];
}

/** The line's supply. */
export interface Supply {
  /** Slots that need at least one reel more, soonest first. */
  readonly slots: readonly SlotSupply[];
  readonly picks: readonly PickLine[];
}

/** Opened or waiting reels of a part that are off the line, fullest first, blocked ones left out. */
export function waitingReels(floor: FloorState, part: string): readonly Reel[] {
  const blocks = [...floor.blocks.values()];
  return [...floor.reels.values()]
    .filter((reel) => reel.at === null && reel.part === part && (reel.count ?? 0) > 0)
    .filter((reel) => !blocks.some((block) => isUnder(block, reel)))
    .sort((a, b) => (b.count ?? 0) - (a.count ?? 0) || compareText(a.reel, b.reel));
}

/** True where a block names the reel, its lot or its part. */
export function isUnder(
  block: { readonly reel: string | null; readonly lot: string | null; readonly part: string | null },
  reel: Pick<Reel, 'reel' | 'lot' | 'part'>,
): boolean {
  const named = block.reel !== null || block.lot !== null || block.part !== null;
  const fits = (wanted: string | null, found: string | null) => wanted === null || wanted === found;
  return named && fits(block.reel, reel.reel) && fits(block.lot, reel.lot) && fits(block.part, reel.part);
}

/** Parts on a full reel of a part, as the log has seen them: the largest count. */
export function fullReelOf(floor: FloorState, part: string): number {
  let largest = floor.fullReels.get(part)?.measured?.parts ?? floor.fullReels.get(part)?.weighed?.parts ?? 0;
  for (const reel of floor.reels.values())
    if (reel.part === part) largest = Math.max(largest, reel.count ?? 0);
  for (const slot of floor.slots.values())
    for (const tape of slot.tapes) if (tape.part === part) largest = Math.max(largest, tape.count ?? 0);
  return largest > 0 ? largest : USUAL_REEL;
}

/** What the line's supply asks, as figures alone, so that a worker can answer it. `slots`: in the order of the question's. */
export function supplyQuestion(
  floor: FloorState,
  outlook: Outlook,
): { readonly question: SupplyQuestion; readonly slots: readonly SlotOutlook[] } {
  // Slots used in turn are one long tape: what they need is asked of the last that has parts.
  const slots = outlook.slots.filter((slot) => !slot.forecast.outlasts && slot.turn?.backup == null);
  const labelShare = labelShareOf(floor, outlook.line);
  const parts = new Set(slots.map((slot) => slot.wanted.part));
  const waiting = new Map(
    [...parts].map((part): [string, readonly WaitingReel[]] => [
      part,
      waitingReels(floor, part).map((reel) => ({
        ...{ reel: reel.reel, parts: reel.count ?? 0, sd: tapeSd(reel, labelShare) },
      })),
    ]),
  );
  const loads = slots.map((slot) => ({ load: slot.load, part: slot.wanted.part }));
  return { question: { pace: outlook.basis, slots: loads, waiting }, slots };
}

/** The answer, with the slots and reels that it speaks of; a reel that is gone by now is left out. */
export function toSupply(
  floor: FloorState,
  outlook: Outlook,
  of: { readonly answer: readonly SlotAnswer[]; readonly slots: readonly SlotOutlook[] },
): Supply {
  const slots = of.slots.flatMap((slot, at): SlotSupply[] => {
    const found = of.answer[at];
    if (!found) return [];
    const { ends, lasts, bring } = found;
    return [
      { slot, ends, lasts, bring, waiting: found.takes.flatMap((reel) => floor.reels.get(reel) ?? []) },
    ];
  });
  const needs = slots.flatMap(({ slot, bring }) =>
    bring === null
      ? []
      : [
          {
            part: slot.wanted.part,
            slot: slotNames(floor, outlook, slot),
            parts: bring.parts,
            reelQuantity: fullReelOf(floor, slot.wanted.part),
            byMs: Math.max(outlook.pace.nowMs, bring.byMs),
            place: uncountedPlace(floor, slot.wanted.part),
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

/** Where a reel of a part lies whose count nobody knows, so that it could not be counted on; empty where none does. */
function uncountedPlace(floor: FloorState, part: string): string {
  const places = [...floor.reels.values()]
    .filter((reel) => reel.part === part && reel.at === null && reel.count === null)
    .map((reel) => reel.place ?? '');
  return places.sort(comparePlaces)[0] ?? '';
}
