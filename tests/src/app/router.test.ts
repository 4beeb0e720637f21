// Moves that wait for something: they leave a person where they went meanwhile.

import { afterEach, expect, it, vi } from 'vitest';

const location = { hash: '#/plant/setups' };
vi.stubGlobal('location', location);
const { fromHereTo } = await import('../../../src/app/router.ts');

afterEach(() => {
  location.hash = '#/plant/setups';
});

it('moves on from where it was asked', () => {
  const goOn = fromHereTo('load');
  goOn();
  expect(location.hash).toBe('#/load');
});

it('leaves who has gone elsewhere while it waited', () => {
  const goOn = fromHereTo('stock', 'reels');
  location.hash = '#/log';
  goOn();
  expect(location.hash).toBe('#/log');
});
