// The tour of what the desk asks, refuses and tells, of what reels teach, and of the camera.

import { describe, it } from 'vitest';
import { type FakeLabel, filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { halfLegs, lensLegs } from './support/tour/camera-legs.ts';
import { deskLegs } from './support/tour/desk-legs.ts';
import { reelLegs } from './support/tour/reel-legs.ts';
import { useTour } from './support/tour/use-tour.ts';

const tour = useTour('desk');

/** A reel's label that lacks its quantity, each fact a code of its own. */
const half: FakeLabel = {
  part: '22-0603-B',
  codes: ['P22-0603-B', '1TLT-9400-H', '3SR-975002'].map((text) => ({ text, name: text })),
};

describe.concurrent('the tour', { timeout: 600_000 }, () => {
  it('of what the desk asks, refuses and tells', () => tour.go(deskLegs));
  it('of what reels teach', () => tour.go(reelLegs));
  it('of the camera', () => tour.go(lensLegs));
  it('of the camera before half a label', () =>
    tour.go(halfLegs, { by: async () => startBrowser(await filmLabel(tour.browser(), half)) }));
});
