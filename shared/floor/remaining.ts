// What is left on this slot? The one door to counts with their spread, the loss learnt, and what was placed; everything behind it
// (`remaining/`) is private. Two answers: `slotEstimate` by all that the log has shown, and `slotLeft` for a loss that is given.
// Method: counted down from the last true count to the newest splice, cut to the window in which a splice can be made (a normal
// law truncated on both sides), counted down again since. Counting down alone was refused: its error grows with every reel.

import { panelsToGo } from './building.ts';
import { below as chanceBelow, countedDown, lossSpread, truncated } from './remaining/law.ts';
import { assumedLoss, lossOn } from './remaining/learnt.ts';
import { labelShareOf, tapeSd } from './remaining/ledger.ts';
import type { LossLearnt } from './remaining/loss.ts';
import { placedDoubt, placedSinceLedger, usedPlacements } from './remaining/placed.ts';
import { doubtSince, doubtVariance, type PlacedDoubt, usageOf } from './remaining/skips.ts';
import { costVariance, type SpliceCost, spliceCost, tapeWidthOn } from './remaining/splices.ts';
import type { FloorState, Reel, SlotState } from './state.ts';
import { perPanelOf } from './wanted.ts';

export { endLedger, keepEvidence, openEvidence } from './remaining/finished.ts';
export {
  ASSUMED_STRENGTH,
  assumedLoss,
  lossOn,
  shownOn,
  toEvidence,
  unlikelyLoss,
  unlikelyOn,
} from './remaining/learnt.ts';
export {
  isPrinted,
  joinLedger,
  LABEL_SHARE,
  labelShareOf,
  startLedger,
  tapeSd,
  windowOf,
} from './remaining/ledger.ts';
export {
  type LossEvidence,
  type LossLearnt,
  lossPrior,
  type PlacedEvidence,
  UNLIKELY_LOSS,
  updateLoss,
} from './remaining/loss.ts';
export {
  countMark,
  placedDoubt,
  placedSinceLedger,
  settleTurns,
  settleUse,
  usedPlacements,
} from './remaining/placed.ts';
export {
  boardsOf,
  boardsSkipped,
  noSkips,
  type PlacedDoubt,
  panelsBuilt,
  type SkipShare,
  skipShare,
  type Usage,
  usageOf,
} from './remaining/skips.ts';
export { costVariance, type SpliceCost } from './remaining/splices.ts';

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
  return spliceCostFor(state, { line, slot, feeder, part: tapes.at(-1)?.part ?? '' });
}

/** The share of picks that end on a panel. */
function keptShare({ alpha, beta }: LossLearnt): number {
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
  // From the newest tape back: the running one is the first whose followers hold less than what is left.
  while (law !== null && runningIndex > 0 && law.mean > behind + (tapes[runningIndex]?.count ?? 0)) {
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

/** What is left on a slot once the panels that its line's run still has to build are done; null where its count is not known. */
export function leftAfterRun(state: FloorState, slot: SlotState): Amount | null {
  const { parts, countSd, computed, loss } = slotEstimate(state, slot);
  if (parts === null) return null;
  const run = state.runs.get(state.current.get(slot.line) ?? '');
  const since = lossSpread(computed, loss);
  const now: Amount = { parts, variance: countSd ** 2 + since.ofPicks, sd: since.ofLoss };
  if (!run) return now;
  const perPanel = perPanelOf(state, run.setup, slot.slot);
  const taken = takenBy(state, { setup: run.setup, perPanel, panels: panelsToGo(run), loss });
  const after = {
    parts: now.parts - taken.parts,
    variance: now.variance + taken.variance,
    sd: now.sd + taken.sd,
  };
  return after.parts > 0 ? after : { parts: 0, variance: after.variance, sd: after.sd };
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
