// A cart's code asks only where it can be nothing else; docking writes what goes off before what goes on.

import { beforeAll, describe, expect, test } from 'vitest';
import { dockingOf } from '../../../../../shared/changeover/docking.ts';
import { checkPayload } from '../../../../../shared/floor/kinds.ts';
import { cartIn, dockingEntries, sayUnfit } from '../../../../../src/app/screens/change/cart-model.ts';
import { fetchEveryArea } from '../../../../../src/app/words/fetch.ts';
import {
  beginStory,
  brookSetup,
  type Story,
  started,
  tellPlant,
  verified,
  wantedSlot,
} from '../../../../shared/floor/story.ts';

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

describe('why a place stays on the cart', () => {
  beforeAll(() => fetchEveryArea('en'));

  test('names line and lane as people call them', () => {
    const story = tellCart();
    const line = story.floor().lines.get('L1');
    if (line) story.tell('line.defined', { ...line, line: 'L1~lane2', name: 'Lane 2' });
    story.tell('reel.verified', verified('M1-F-010', 'R-100', { reel: 'K-M1-F-002' }));
    const slots = [wantedSlot('M1-F-001', 'Z-100')];
    const facts = { line: 'L1~lane2', setup: 'fell-top-a' };
    story.tell('setup.taken', { ...brookSetup, ...facts, product: 'Fell', slots });
    story.tell('run.started', started('r', facts));
    const floor = story.floor();
    expect(dockingOf(floor, 'CART-1', asked).unfit.map((unfit) => sayUnfit(floor, unfit))).toEqual([
      'Lane 2 needs M1-F-001. Leave this one on the cart.',
      'Reel K-M1-F-002 is now on Brae line 1 M1-F-010.',
    ]);
  });
});
