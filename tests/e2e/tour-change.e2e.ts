// The tour of a change of product: order of jobs, making ready, the line stands, release.

import { describe, it } from 'vitest';
import { changeLegs } from './support/tour/change-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('change');

describe.concurrent('the tour', { timeout: tourMs }, () => {
  it('of a change of product', () => tour.go(changeLegs));
});
