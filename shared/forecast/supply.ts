// Which of the reels off the line does each slot take for the rest of the run, and what must the store bring beyond them?
// Method: slot by slot in order of need, reel by reel until the run is done; a reel is counted on for one slot only. Figures in, figures
// out, so that a worker can do it: the page has a scan to answer meanwhile.

import { type ReelEnd, type SlotNeeds, type SpliceParts, slotNeeds, type WaitingReel } from './outlook.ts';
import type { LinePace, SlotLoad } from './run-out.ts';

/**
 * What is asked. `slots`: those that need a splice before the run ends, soonest first, each with the name of the list of
 * reels off the line that it may take and what a splice costs there; `waiting`: those lists by name, in the order to be taken.
 */
export interface SupplyQuestion {
  readonly pace: LinePace;
  readonly slots: readonly {
    readonly load: SlotLoad;
    readonly takes: string;
    readonly splice?: SpliceParts;
  }[];
  readonly waiting: ReadonlyMap<string, readonly WaitingReel[]>;
}

/** One slot's answer, in the order of the question. */
export interface SupplyAnswer {
  readonly ends: readonly ReelEnd[];
  readonly lasts: boolean;
  readonly bring: SlotNeeds['bring'];
  /** Ids of the waiting reels that it takes. */
  readonly takes: readonly string[];
}

/** Shares out the waiting reels and says what is missing. Cost: a forecast for each reel taken, and some twenty for each shortage. */
export function answerSupply({ pace, slots, waiting }: SupplyQuestion): readonly SupplyAnswer[] {
  const taken = new Set<string>();
  return slots.map(({ load, takes: list, splice }) => {
    const takes: WaitingReel[] = [];
    let outlook = slotNeeds(pace, load, takes, splice);
    for (const reel of waiting.get(list) ?? []) {
      if (outlook.lasts) break;
      if (taken.has(reel.reel)) continue;
      taken.add(reel.reel);
      takes.push(reel);
      outlook = slotNeeds(pace, load, takes, splice);
    }
    const { ends, lasts, bring } = outlook;
    return { ends, lasts, bring, takes: takes.map(({ reel }) => reel) };
  });
}
