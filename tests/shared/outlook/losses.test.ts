// A loss beyond what is likely is set aside: shown with its share, and learnt by nothing that computes with losses.

import { expect, test } from 'vitest';
import { lossOn, unlikelyLoss } from '../../../shared/floor/remaining.ts';
import { feederLosses, unlikelyLosses } from '../../../shared/outlook/losses.ts';
import { beginStory, counted, started, tellPlant, unloaded, verified } from '../floor/story.ts';

/** One reel on feeder FD-1, 2 parts a panel: `left` of 5000 after 1000 panels. */
function finished(left: number) {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1', { panelsWanted: 2000 }));
  const facts = { reel: 'K1', lot: 'A', feeder: 'FD-1', quantity: 5000, run: 'run-1' };
  story.tell('reel.verified', verified('M1-F-001', 'R-100', facts));
  story.tell('panels.counted', counted('run-1', 1000));
  story.tell(
    'reel.unloaded',
    unloaded('M1-F-001', { reel: 'K1', quantity: left, basis: 'typed', run: 'run-1' }),
  );
  return story.floor();
}
const place = { line: 'L1', part: 'R-100', feeder: 'FD-1', slot: 'M1-F-001' };

test('56 % from one reel is set aside, and 2 % is learnt', () => {
  const odd = finished(450); // 4550 gone, 2000 placed: 56 % lost
  const [unlikely] = unlikelyLosses(odd, 'L1');
  expect(unlikely?.share).toBeCloseTo(2550 / 4550, 9);
  expect(feederLosses(odd, 'L1')).toEqual([]);
  expect(lossOn(odd, place).reels).toBe(0);
  const usual = finished(2960); // 2040 gone: 2 %
  expect(unlikelyLosses(usual, 'L1')).toEqual([]);
  expect(unlikelyLosses(odd, 'L2')).toEqual([]);
  expect(lossOn(usual, place).reels).toBe(1);
  expect([...usual.finished.values()].flat().map((reel) => unlikelyLoss(reel))).toEqual([null]);
});
