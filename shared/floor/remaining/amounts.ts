// Amounts of parts with what is not known of them: is what is there enough for what is needed?

import { panelsToGo } from '../building.ts';
import { runsBuilding } from '../lanes.ts';
import type { FloorState, Reel, SlotState } from '../state.ts';
import { perPanelOf } from '../wanted.ts';
import { keptShare, slotEstimate } from './estimate.ts';
import { below as chanceBelow, lossSpread } from './law.ts';
import { labelShareOf, tapeSd } from './ledger.ts';
import type { LossLearnt } from './loss.ts';
import { usageOf } from './skips.ts';

/**
 * Parts, as far as they are known: what is `sd` rests on the losses, which all parts of a kind share, and adds up plainly; `variance` is
 * each one's own. Negative where parts are taken.
 */
export interface Amount {
  readonly parts: number;
  readonly variance: number;
  readonly sd: number;
}

/** Several amounts together. */
export function sumAmounts(amounts: readonly Amount[]): Amount {
  return amounts.reduce(
    (sum, { parts, variance, sd }) => ({
      parts: sum.parts + parts,
      variance: sum.variance + variance,
      sd: sum.sd + sd,
    }),
    { parts: 0, variance: 0, sd: 0 },
  );
}

/** The chance that an amount is none or more: of what is there less what is needed, the chance that it is enough. */
export function chanceOfEnough({ parts, variance, sd }: Amount): number {
  const spread = Math.sqrt(variance + sd * sd);
  return spread === 0 ? Number(parts >= 0) : chanceBelow(parts / spread);
}

/** The share of chances at which a thing is called enough. */
export const ENOUGH = 0.95;
/** Deviations of the normal law up to that share. */
const ENOUGH_SD = 1.645;

/** Whole parts that an amount lacks so that it is surely enough (95 %); 0 where it is. */
export function partsShort({ parts, variance, sd }: Amount): number {
  return Math.max(0, Math.ceil(ENOUGH_SD * Math.sqrt(variance + sd * sd) - parts - 1e-9));
}

/** What a reel off the line holds, by its count and the spread of that; null where nobody counted it. */
export function reelAmount(
  state: FloorState,
  line: string,
  reel: Pick<Reel, 'count' | 'sd' | 'basis'>,
): Amount | null {
  if (reel.count === null) return null;
  return { parts: reel.count, variance: tapeSd(reel, labelShareOf(state, line)) ** 2, sd: 0 };
}

/** What so many panels take from slots that want `perPanel` together: losses and the share of skipped boards with it. Parts. */
export function takenBy(
  state: FloorState,
  of: {
    readonly setup: string;
    readonly perPanel: number;
    readonly panels: number;
    readonly loss: LossLearnt;
  },
): Amount {
  const kept = keptShare(of.loss);
  const usage = usageOf(state, of.setup, of.perPanel);
  return picksFor(usage.perPanel * of.panels, usage.sdOf(of.panels) / kept, of.loss);
}

/** Parts that placements take; `doubt`: one deviation of that from elsewhere, parts. */
function picksFor(placements: number, doubt: number, loss: LossLearnt): Amount {
  const kept = keptShare(loss);
  const { ofPicks, ofLoss } = lossSpread(placements, loss);
  return { parts: placements / kept, variance: ofPicks + doubt * doubt, sd: ofLoss };
}

/** What is left on a slot once the panels that every lane's run still has to build are done; null where its count is not known. */
export function leftAfterRun(state: FloorState, slot: SlotState): Amount | null {
  const { parts, countSd, computed, loss } = slotEstimate(state, slot);
  if (parts === null) return null;
  const since = lossSpread(computed, loss);
  let left: Amount = { parts, variance: countSd ** 2 + since.ofPicks, sd: since.ofLoss };
  for (const run of runsBuilding(state, slot.line)) {
    const perPanel = perPanelOf(state, run.setup, slot.slot);
    const taken = takenBy(state, { setup: run.setup, perPanel, panels: panelsToGo(run), loss });
    left = {
      parts: left.parts - taken.parts,
      variance: left.variance + taken.variance,
      sd: left.sd + taken.sd,
    };
  }
  return left.parts > 0 ? left : { ...left, parts: 0 };
}
