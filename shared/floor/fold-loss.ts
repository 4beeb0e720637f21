// What finished reels showed of a feeder's losses, gathered as the log tells it. Kept raw (what was put on, what was left, what
// was placed) and part by part, so that the law behind it may change without a new log; newest few hundred a part.

import { entryId } from '../log/entry.ts';
import type { EntryOf, PayloadOf } from './kinds.ts';
import { keepEvidence } from './remaining.ts';
import type { FloorState } from './state.ts';

/** Keeps what a count or a full reel shows, and takes away what a corrected entry had shown. */
export function foldLoss(
  state: FloorState,
  entry: EntryOf<'reel.calibrated' | 'reel.counted' | 'entry.corrected'>,
): void {
  if (entry.kind === 'reel.calibrated') {
    calibrate(state, entry.payload);
    return;
  }
  if (entry.kind === 'reel.counted') {
    if (entry.payload.slot === null)
      countedOff(state, entry.payload, { entry: entryId(entry), atMs: entry.hlc.ms });
    return;
  }
  for (const [part, reels] of state.finished) {
    const left = reels.filter((reel) => reel.entry !== entry.payload.of);
    if (left.length !== reels.length) state.finished.set(part, left);
  }
}

/** Measured and weighed figures may come one after the other: what is null leaves the older figure. */
function calibrate(
  state: FloorState,
  { part, parts, outerMm, hubMm, massG, emptyG }: PayloadOf<'reel.calibrated'>,
): void {
  const before = state.fullReels.get(part);
  state.fullReels.set(part, {
    part,
    measured: outerMm !== null && hubMm !== null ? { parts, outerMm, hubMm } : (before?.measured ?? null),
    weighed: massG !== null && emptyG !== null ? { parts, massG, emptyG } : (before?.weighed ?? null),
  });
}

/** A reel that came off uncounted is counted now, away from the line. */
function countedOff(
  state: FloorState,
  facts: PayloadOf<'reel.counted'>,
  at: { readonly entry: string; readonly atMs: number },
): void {
  const reel = facts.reel === null ? undefined : state.reels.get(facts.reel);
  if (!reel?.cameOff || reel.at !== null) return;
  keepEvidence(state, { ...reel.cameOff, ...at, endParts: facts.quantity, endSd: facts.sd, told: 'count' });
  state.reels.set(reel.reel, { ...reel, cameOff: null });
}
