// A checklist is on the screen and one of its scan steps is next: does a scan answer it, or is it the desk's own? The desk decides, so that
// camera, scanner and typing do the same. Refused: giving the step whatever comes, since a reel's label from a supplier that the plant
// does not know yet would be kept as a stencil.

import { siteRules } from '../floor/fold-labels.ts';
import { judgeStepScan, type StepAsks, type StepScan } from '../floor/step-scan.ts';
import { parseLabel } from '../labels/label.ts';
import type { Scan } from '../labels/scan.ts';
import type { Desk, DeskView } from './model.ts';
import { expectation } from './take-scan.ts';

/** A scan step that is next on the screen. */
export interface OpenStep {
  /** The checklist's line. */
  readonly line: string;
  readonly asks: StepAsks;
  /** True while a person is in its field: whatever is scanned is meant for it. */
  readonly isMeant: boolean;
}

/** The answer to keep, or what was scanned instead; null where the scan goes its normal way. */
export function offerToStep(seen: DeskView, desk: Desk, step: OpenStep, scan: Scan): StepScan | null {
  const texts = scan.codes.map(({ text }) => text);
  const judged = judgeStepScan(seen.floor, step.line, step.asks, texts);
  if (step.isMeant) return judged;
  // What is in hand waits for its own next code.
  if (!isIdle(desk) || !judged.ok) return null;
  const { wants, expects } = step.asks;
  const isOfThePlant = wants === 'feeder' || wants === 'slot' || wants === 'reel';
  return isOfThePlant || expects !== null || !isReelLabel(seen, texts) ? judged : null;
}

function isIdle({ slot, feeder, reel, partial, question }: Desk): boolean {
  return slot === null && feeder === null && reel === null && partial === null && question === null;
}

/** True where codes read like the label of a reel, whether or not the plant knows its part. */
function isReelLabel(seen: DeskView, texts: readonly string[]): boolean {
  const options = { expected: expectation(seen), rules: siteRules(seen.floor) };
  const { part, supplierPart, quantity } = parseLabel([...texts], options);
  return part !== null || supplierPart !== null || quantity !== null;
}
