// The tour of the floor: every state of line, loading, verdicts, dock, store and log, from all sides.

import { describe, it } from 'vitest';
import { dockLegs, floorLegs } from './support/tour/floor-legs.ts';
import { kindLegs } from './support/tour/kinds-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('floor');

// Two tablets at a time: one waits for its next stop while the other is looked at.
describe.concurrent('the tour', { timeout: tourMs }, () => {
  it('of line, loading and log', () => tour.go(floorLegs));
  it('of splices, dock and store', () => tour.go(dockLegs));
  it('of packages and feeders', () => tour.go(kindLegs));
});
