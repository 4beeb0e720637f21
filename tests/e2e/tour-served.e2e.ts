// The tour of a plant that begins: with nothing in it, then with a server, people, products and tablets that disagree.

import { it } from 'vitest';
import { startServe } from './support/serve.ts';
import { emptyLegs } from './support/tour/empty-legs.ts';
import { servedLegs } from './support/tour/served-legs.ts';
import { tourMs, useTour } from './support/tour/use-tour.ts';

const tour = useTour('served', startServe);

it('the tour of a plant with nothing in it, and of one with a server', { timeout: tourMs }, () =>
  tour.go([...emptyLegs, ...servedLegs(tour.browser, tour.serving)], { badge: null }),
);
