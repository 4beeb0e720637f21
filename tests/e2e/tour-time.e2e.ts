// The tour of what time does, of what others see, of panels of several boards, and of the camera in its states.

import { describe, it } from 'vitest';
import { type FakeLabel, filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { boardLegs } from './support/tour/board-legs.ts';
import { halfLegs, lensLegs } from './support/tour/camera-legs.ts';
import { clockLegs } from './support/tour/clock-legs.ts';
import { lastLegs } from './support/tour/floor-legs.ts';
import { useTour } from './support/tour/use-tour.ts';

const tour = useTour('time');

/** A reel's label that lacks its quantity, each fact a code of its own. */
const half: FakeLabel = {
  part: '22-0603-B',
  codes: ['P22-0603-B', '1TLT-9400-H', '3SR-975002'].map((text) => ({ text, name: text })),
};

describe.concurrent('the tour', { timeout: 600_000 }, () => {
  it('of what time does', () => tour.go(clockLegs));
  it('of what others see, and of a line without a run', () => tour.go(lastLegs));
  it('of panels of several boards', () => tour.go(boardLegs));
  it('of the camera', () => tour.go(lensLegs));
  it('of the camera before half a label', () =>
    tour.go(halfLegs, { by: async () => startBrowser(await filmLabel(tour.browser(), half)) }));
});
