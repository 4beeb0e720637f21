// What is left on a slot, by all that the log has shown (`slotEstimate`) and for a loss that is given (`slotLeft`).
// Method: counted down from the last true count to the newest splice, cut to the window in which a splice can be made (a normal
// law truncated on both sides), counted down again since. Counting down alone was refused: its error grows with every reel.

import { holdsLoose, kindOnSlot, moreBy } from '../packs.ts';
import type { FloorState, SlotState } from '../state.ts';
import { countedDown, truncated } from './law.ts';
import { assumedLoss, lossOn } from './learnt.ts';
import type { LossLearnt } from './loss.ts';
import { placedDoubt, placedSinceLedger, usedPlacements } from './placed.ts';
import { doubtSince, doubtVariance, type PlacedDoubt } from './skips.ts';
import { costVariance, type SpliceCost, spliceCost, tapeWidthOn } from './splices.ts';

/** What is left on a slot. `parts` null where a count is unknown. */
export interface SlotLeft {
  readonly parts: number | null;
  readonly sd: number;
  /** Parts left on the running tape alone. */
  readonly running: number | null;
  /** Index of the running tape in the slot's tapes, by the expected count. */
  readonly runningIndex: number;
  readonly used: number;
}

/** What is left on a slot, and the loss it was computed with. Parts; `parts` null where a count is unknown. */
export interface SlotEstimate {
  readonly parts: number | null;
  readonly sd: number;
  /** Deviation of the count that this was computed from, without what losses since have added. Parts. */
  readonly countSd: number;
  /** Parts left on the running tape alone; null where that is unknown. */
  readonly running: number | null;
  /** Which of the slot's tapes runs. */
  readonly runningIndex: number;
  readonly loss: LossLearnt;
  /** Placements counted down with that loss since the last count or splice: the doubt of the loss runs through all of them. */
  readonly computed: number;
  /** True where the count says that the old tape's end cannot have been where it was spliced. */
  readonly contradicts: boolean;
  /** True where panels of several boards were counted and nobody ever entered a skipped one: every board counts as built. */
  readonly skipsUnknown: boolean;
  /** What each splice on it is taken to cost, and where that comes from. */
  readonly splice: SpliceCost;
}

/** What a splice costs: as entered for the width of the tape on the slot, else as the part's reels have shown on the line. */
export function spliceCostFor(
  state: FloorState,
  of: { readonly line: string; readonly slot: string; readonly feeder: string | null; readonly part: string },
): SpliceCost {
  const { line, part } = of;
  return spliceCost(state, { line, part, tapeWidthMm: tapeWidthOn(state, of) }, assumedLoss(state, line));
}

function spliceCostOn(state: FloorState, { line, slot, feeder, tapes }: SlotState): SpliceCost {
  // Nothing hangs on a joint where there is none.
  if (moreBy(kindOnSlot({ tapes })) !== 'splice') return { parts: 0, sd: 0, from: 'entered' };
  return spliceCostFor(state, { line, slot, feeder, part: tapes.at(-1)?.part ?? '' });
}

/** The share of picks that end on a panel. */
export function keptShare({ alpha, beta }: LossLearnt): number {
  return beta / (alpha + beta);
}

/** What is left on a slot now. Cost: linear in the finished reels of its part. */
export function slotEstimate(state: FloorState, slot: SlotState): SlotEstimate {
  const { ledger, tapes } = slot;
  const part = tapes.at(-1)?.part ?? '';
  const loss = lossOn(state, { line: slot.line, part, feeder: slot.feeder ?? '', slot: slot.slot });
  const { count: placed, doubt } = placedSinceLedger(state, slot);
  const cost = spliceCostOn(state, slot);
  const last = tapes.length - 1;
  const { joint } = ledger;
  if (joint === null || last === 0) return plainEstimate(slot, { loss, placed, doubt, cost });
  const before = ledger.splices - joint.uncosted;
  const start =
    ledger.parts === null || joint.tail === null ? null : ledger.parts - joint.tail - before * cost.parts;
  const ofDoubt = (each: PlacedDoubt) => doubtVariance(each) / keptShare(loss) ** 2;
  const atJoint =
    start === null
      ? null
      : countedDown(
          {
            mean: start,
            variance:
              Math.max(0, ledger.variance - joint.tailVariance) +
              costVariance(cost, before) +
              ofDoubt(joint.doubt),
          },
          joint.placed,
          loss,
        );
  const bounded =
    atJoint === null
      ? { mean: (joint.low + joint.high) / 2, variance: (joint.high - joint.low) ** 2 / 12, believed: true }
      : truncated(atJoint, joint.low, joint.high);
  const sinceJoint = ofDoubt(doubtSince(doubt, joint.doubt));
  const toJoint = countedDown(
    { mean: bounded.mean, variance: bounded.variance + sinceJoint },
    placed - joint.placed,
    loss,
  );
  const tailVariance = joint.tailVariance + costVariance(cost, joint.uncosted);
  const isJoined = toJoint.mean > 0;
  const all = joint.tail === null ? null : toJoint.mean + joint.tail - joint.uncosted * cost.parts;
  return {
    parts: all === null ? null : Math.max(0, all),
    sd: Math.sqrt(toJoint.variance + tailVariance),
    countSd: Math.sqrt(bounded.variance + sinceJoint + tailVariance),
    running: isJoined ? toJoint.mean : all === null ? null : Math.max(0, all),
    runningIndex: isJoined ? last - 1 : last,
    loss,
    computed: placed - joint.placed,
    contradicts: !bounded.believed,
    skipsUnknown: doubt.unknown,
    splice: cost,
  };
}

function plainEstimate(
  slot: SlotState,
  of: {
    readonly loss: LossLearnt;
    readonly placed: number;
    readonly doubt: PlacedDoubt;
    readonly cost: SpliceCost;
  },
): SlotEstimate {
  const { ledger, tapes } = slot;
  const { loss, placed, doubt, cost } = of;
  const countVariance =
    ledger.variance + doubtVariance(doubt) / keptShare(loss) ** 2 + costVariance(cost, ledger.splices);
  const law =
    ledger.parts === null
      ? null
      : countedDown(
          { mean: ledger.parts - ledger.splices * cost.parts, variance: countVariance },
          placed,
          loss,
        );
  let behind = 0;
  let runningIndex = tapes.length - 1;
  const isLoose = holdsLoose(slot);
  // From the newest tape back: the running one is the first whose followers hold less than what is left.
  while (
    !isLoose &&
    law !== null &&
    runningIndex > 0 &&
    law.mean > behind + (tapes[runningIndex]?.count ?? 0)
  ) {
    behind += tapes[runningIndex]?.count ?? 0;
    runningIndex -= 1;
  }
  return {
    parts: law === null ? null : Math.max(0, law.mean),
    sd: law === null ? 0 : Math.sqrt(law.variance),
    countSd: Math.sqrt(countVariance),
    running: law === null ? null : Math.max(0, law.mean - behind),
    runningIndex,
    loss,
    computed: placed,
    contradicts: false,
    skipsUnknown: doubt.unknown,
    splice: cost,
  };
}

/**
 * Parts left on a slot for a given loss (fraction of picks that end nowhere, 0 <= loss < 1): label count less placements divided by the
 * share of picks that end on a panel (placements K of R parts ~ Binomial(R, 1 - loss), so U placements took about U / (1 - loss)
 * parts with variance U loss / (1 - loss)^2, the negative binomial's).
 */
export function slotLeft(state: FloorState, slot: SlotState, loss: number): SlotLeft {
  const used = usedPlacements(state, slot);
  const taken = used / (1 - loss);
  const cost = spliceCostOn(state, slot);
  const splices = slot.tapes.length - 1;
  let variance = (used * loss + doubtVariance(placedDoubt(state, slot))) / (1 - loss) ** 2;
  variance += costVariance(cost, splices);
  let total = -splices * cost.parts;
  let known = true;
  for (const tape of slot.tapes) {
    if (tape.count === null) known = false;
    else total += tape.count;
    variance += tape.sd * tape.sd;
  }
  let runningIndex = 0;
  let before = 0;
  while (runningIndex < slot.tapes.length - 1) {
    const count = slot.tapes[runningIndex]?.count ?? null;
    if (count === null || before + count > taken) break;
    before += count;
    runningIndex += 1;
  }
  const runningCount = slot.tapes[runningIndex]?.count ?? null;
  return {
    parts: known ? Math.max(0, total - taken) : null,
    sd: Math.sqrt(variance),
    running: runningCount === null ? null : Math.max(0, before + runningCount - taken),
    runningIndex,
    used,
  };
}
