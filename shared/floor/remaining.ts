// What is left on this slot? The one door to counts with their spread, the loss learnt, and what was placed; everything behind it
// (`remaining/`) is private. Two answers: `slotEstimate` by all that the log has shown, and `slotLeft` for a loss that is given.
// Method: counted down from the last true count to the newest splice, cut to the window in which a splice can be made (a normal
// law truncated on both sides), counted down again since. Counting down alone was refused: its error grows with every reel.

export {
  type Amount,
  chanceOfEnough,
  ENOUGH,
  leftAfterRun,
  partsShort,
  reelAmount,
  sumAmounts,
  takenBy,
} from './remaining/amounts.ts';
export { countedLeft } from './remaining/counted-left.ts';
export {
  type SlotEstimate,
  type SlotLeft,
  slotEstimate,
  slotLeft,
  spliceCostFor,
} from './remaining/estimate.ts';
export { endLedger, keepEvidence, keptSd, openEvidence } from './remaining/finished.ts';
export { comeBack, neverStood, setDown, settleTurns } from './remaining/instead.ts';
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
