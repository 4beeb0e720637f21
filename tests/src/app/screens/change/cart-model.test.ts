// A cart's code asks only where it can be nothing else; docking writes what goes off before what goes on.

import { describe, expect, test } from 'vitest';
import { dockingOf } from '../../../../../shared/changeover/docking.ts';
import { checkPayload } from '../../../../../shared/floor/kinds.ts';
import { cartIn, dockingEntries } from '../../../../../src/app/screens/change/cart-model.ts';
import { beginStory, type Story, tellPlant, verified } from '../../../../shared/floor/story.ts';

const asked = { line: 'L1', setup: 'brook-top-a' };

function tellCart(cart = 'CART-1'): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'OLD', feeder: 'F-0', lot: 'LT-0' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { feeder: 'F-9' }));
  for (const slot of ['M1-F-001', 'M1-F-002'])
    story.tell('cart.filled', {
      cart,
      line: 'L1',
      setup: 'brook-top-a',
      slot,
      feeder: null,
      reel: `K-${slot}`,
      part: 'R-100',
      supplierPart: null,
      lot: null,
      dateCode: null,
      quantity: 100,
      of: 'x',
    });
  return story;
}

const scanOf = (...texts: string[]) => ({
  codes: texts.map((text) => ({ text, format: null, symbologyId: null })),
});

describe('cartIn()', () => {
  test('names a cart that carries something, alone in its scan', () => {
    const floor = tellCart().floor();
    expect(cartIn(floor, 'L1', scanOf('CART-1'))).toBe('CART-1');
    expect(cartIn(floor, 'L1', scanOf('CART-2'))).toBeNull();
    expect(cartIn(floor, 'L1', scanOf('CART-1', 'R-100'))).toBeNull();
  });

  test('leaves a code that is a feeder as well to the question which it is', () => {
    expect(cartIn(tellCart('F-9').floor(), 'L1', scanOf('F-9'))).toBeNull();
  });
});

describe('dockingEntries()', () => {
  test('takes off what stands there, then loads the cart, and leaves no contradiction', () => {
    const story = tellCart();
    const floor = story.floor();
    const docking = dockingOf(floor, 'CART-1', asked);
    const entries = dockingEntries(floor, 'CART-1', { ...asked, docking });
    expect(entries.map(({ kind }) => kind)).toEqual(['reel.unloaded', 'reel.unloaded', 'cart.docked']);
    expect(entries[0]?.payload).toMatchObject({ slot: 'M1-F-001', feeder: 'F-0', reel: 'OLD', lot: 'LT-0' });
    expect(entries[1]?.payload).toMatchObject({ slot: 'M1-F-002', reel: null, part: 'C-200' });
    for (const { kind, payload } of entries) {
      checkPayload(kind, payload);
      story.tell(kind, payload);
    }
    const after = story.floor();
    expect([...after.slots.values()].map(({ tapes }) => tapes[0]?.reel).sort()).toEqual([
      'K-M1-F-001',
      'K-M1-F-002',
    ]);
    expect(after.reels.get('OLD')?.at).toBeNull();
    expect(after.conflicts.size).toBe(0);
    expect(after.carts.size).toBe(0);
  });
});
