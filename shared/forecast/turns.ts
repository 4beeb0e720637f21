// When does a slot run out that feeds only once the slots before it are empty?
// Method: its own tape joined behind all of theirs: their placements come first, with their spread. Taking each slot alone was refused:
// the second would seem to run out while it rests.

import { placementMoments } from './placements.ts';
import type { SlotLoad } from './run-out.ts';

/**
 * The load of a slot used in turn, `before`: the slots of its part that feed before it. Placements of those count as parts of its own
 * loss; their spread becomes the count's. Loss must be below 1.
 * Example: 12 per panel, 1200 parts before it and 2400 on it, no loss: it runs out after 300 panels, as one tape of 3600.
 */
export function loadInTurn(load: SlotLoad, before: readonly SlotLoad[]): SlotLoad {
  if (before.length === 0) return load;
  const kept = 1 - load.loss;
  let mean = 0;
  let variance = 0;
  for (const each of before) {
    const moments = placementMoments(each);
    mean += moments.mean;
    variance += moments.variance;
  }
  return { ...load, left: load.left + mean / kept, sd: Math.hypot(load.sd, Math.sqrt(variance) / kept) };
}
