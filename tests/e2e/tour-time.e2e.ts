// The tour of what time does, of what others see, of panels of several boards, and of the camera in its states.

import { describe, it } from 'vitest';
import { type FakeLabel, filmLabel, filmPan } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { reelLabel } from './support/floor.ts';
import { boardLegs } from './support/tour/board-legs.ts';
import { halfLegs, lensLegs, passLegs } from './support/tour/camera-legs.ts';
import { clockLegs } from './support/tour/clock-legs.ts';
import { lastLegs } from './support/tour/floor-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('time');

/** A reel's label that lacks its quantity, each fact a code of its own. */
const half: FakeLabel = {
  part: '22-0603-B',
  codes: ['P22-0603-B', '1TLT-9400-H', '3SR-975002'].map((text) => ({ text, name: text })),
};

/** A slot with a reel that does not belong on it, and two reels beside: near enough to be seen upright too. */
const bank = [
  { text: 'M1-F-001', print: 'M1-F-001', x: 590, y: 40 },
  {
    text: reelLabel({ P: '77-000-X', Q: '900', '1T': 'LT-0', '3S': 'R-979000' }),
    print: '77-000-X',
    x: 580,
    y: 180,
  },
  {
    text: reelLabel({ P: '22-0603-B', Q: '900', '1T': 'LT-1', '3S': 'R-979001' }),
    print: '22-0603-B',
    x: 500,
    y: 360,
  },
  {
    text: reelLabel({ P: '22-0603-B', Q: '900', '1T': 'LT-2', '14D': '20200101' }),
    print: '22-0603-B',
    x: 680,
    y: 360,
  },
];

describe.concurrent('the tour', { timeout: tourMs }, () => {
  it('of what time does', () => tour.go(clockLegs));
  it('of what others see, and of a line without a run', () => tour.go(lastLegs));
  it('of panels of several boards', () => tour.go(boardLegs));
  it('of the camera', () => tour.go(lensLegs));
  it('of the camera before half a label', () =>
    tour.go(halfLegs, { by: async () => startBrowser(await filmLabel(tour.browser(), half)) }));
  it('of the camera passed over a bank', () =>
    tour.go(passLegs, {
      by: async () => startBrowser(await filmPan(tour.browser(), bank, [{ x: 0, y: 0 }])),
    }));
});
