// The tour of the plant's pages: each with its forms, questions and faults.

import { describe, it } from 'vitest';
import { labelLegs } from './support/tour/label-legs.ts';
import { plantLegs } from './support/tour/plant-legs.ts';
import { storeLegs } from './support/tour/store-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';
import { wayLegs } from './support/tour/way-legs.ts';

const tour = useTour('plant');

describe.concurrent('the tour', { timeout: tourMs }, () => {
  it('of the plant’s pages', () => tour.go(plantLegs));
  it('of the part list and the store', () => tour.go(storeLegs));
  it('of labels, sheets and practice', () => tour.go([...labelLegs, ...wayLegs]));
});
