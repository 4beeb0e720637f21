// The tour of what the desk asks, refuses and tells, and of what reels teach.

import { describe, it } from 'vitest';
import { deskLegs } from './support/tour/desk-legs.ts';
import { reelLegs } from './support/tour/reel-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('desk');

describe.concurrent('the tour', { timeout: tourMs }, () => {
  it('of what the desk asks, refuses and tells', () => tour.go(deskLegs));
  it('of what reels teach', () => tour.go(reelLegs));
});
