// Do the parts of the tour together come to all that the source has? Walked after them (`vitest.config.ts`).

import { expect, it } from 'vitest';
import { gaps } from './support/tour/coverage.ts';
import { readStops, tourParts } from './support/tour/stops.ts';

it.skipIf(process.env['REELWARD_TOUR_LEGS'])('the tour comes to all that the source has', async () => {
  expect(tourParts().length).toBeGreaterThan(3);
  expect(gaps(await readStops())).toEqual([]);
});
