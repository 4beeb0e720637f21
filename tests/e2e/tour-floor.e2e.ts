// The tour of the floor, and what time does to it: every state of line, loading, verdicts, dock, store and log, from all sides.

import { describe, it } from 'vitest';
import { clockLegs } from './support/tour/clock-legs.ts';
import { floorLegs, lastLegs } from './support/tour/floor-legs.ts';
import { useTour } from './support/tour/use-tour.ts';

const tour = useTour('floor');

// Two tablets at a time: one waits for its next stop while the other is looked at.
describe.concurrent('the tour', { timeout: 600_000 }, () => {
  it('of the floor', () => tour.go(floorLegs));
  it('of what time does', () => tour.go(clockLegs));
  it('of what others see, and of a line without a run', () => tour.go(lastLegs));
});
