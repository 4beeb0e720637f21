// The tour of a tablet that serves two lines of a plant.

import { it } from 'vitest';
import { startDemo } from './support/demo.ts';
import { twoLineLegs } from './support/tour/two-line-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('lines', () => startDemo(['--lines', '2']));

it('the tour of a tablet that serves two lines', { timeout: tourMs }, () => tour.go(twoLineLegs));
