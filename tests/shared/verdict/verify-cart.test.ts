// A cart's place is judged as the slot it is for, yet a feeder that is in use elsewhere is never taken for free.

import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import type { VerifyQuestion } from '../../../shared/verdict/verify.ts';
import { verifyForCart } from '../../../shared/verdict/verify-cart.ts';
import { beginStory, brookSetup, type Story, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const ask = (feeder: string | null, slot = 'M1-F-001'): VerifyQuestion => ({
  act: 'load',
  line: 'L1',
  setup: 'brook-top-a',
  slot,
  feeder,
  today: '2026-03-02',
  reel: { reel: 'K-new', part: 'R-100', supplierPart: null, quantity: 5000, lot: 'lot-7' },
});

function loaded(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'F-1' }));
  return story;
}

describe('verifyForCart()', () => {
  test('asks for the slot as if the line stood empty', () => {
    expect(verifyForCart(loaded().floor(), ask('F-2'), 'CART-1').verdict).toBe('accepted');
    expect(verifyForCart(loaded().floor(), ask(null), 'CART-1').verdict).toBe('accepted');
  });

  test.each(['M1-F-001', 'M1-R-003'])('refuses a feeder that is on the line now, for %s', (slot) => {
    const answer = verifyForCart(loaded().floor(), ask('F-1', slot), 'CART-1');
    expect(answer).toMatchObject({
      verdict: 'refused',
      reasons: [{ code: 'feeder-elsewhere', feeder: 'F-1', slot: 'M1-F-001', line: 'L1' }],
    });
  });

  const filled = (more: Partial<PayloadOf<'cart.filled'>> = {}) => {
    const story = loaded();
    story.tell('cart.filled', {
      cart: 'CART-1',
      line: 'L1',
      setup: 'brook-top-a',
      slot: 'M1-R-003',
      feeder: 'F-9',
      reel: 'K-9',
      part: 'R-100',
      supplierPart: null,
      lot: null,
      dateCode: null,
      quantity: 100,
      of: 'e',
      ...more,
    });
    return story.floor();
  };
  const firstReason = (more: Partial<PayloadOf<'cart.filled'>>, question: VerifyQuestion, cart = 'CART-2') =>
    verifyForCart(filled(more), question, cart).reasons[0];
  const carried = { ...ask(null), reel: { ...ask(null).reel, reel: 'K-9' } };

  test('refuses a feeder that another cart carries', () => {
    const reason = { code: 'feeder-on-cart', feeder: 'F-9', cart: 'CART-1' };
    expect(firstReason({}, ask('F-9'))).toEqual({ ...reason, slot: 'M1-R-003' });
    const otherSetup = { slot: 'M1-F-001', setup: 'other' };
    expect(firstReason(otherSetup, ask('F-9'))).toEqual({ ...reason, slot: 'M1-F-001' });
  });

  test('counts the lanes of a feeder on the cart: no more reels than its type has', () => {
    const none = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };
    const codes = (lanes: number) => {
      const story = loaded();
      story.tell('feeder-type.known', { type: 'laned', lanes, drive: null, pocketMm: null, ...none });
      story.tell('feeder.typed', { feeder: 'F-9', type: 'laned', ...none });
      story.tell('setup.taken', {
        ...brookSetup,
        setup: 'lanes',
        slots: ['A', 'B'].map((lane) => wantedSlot(`M1-F-005${lane}`, 'R-100')),
      });
      const place = { reel: 'K-9', part: 'R-100', supplierPart: null, lot: null, dateCode: null };
      const where = { cart: 'CART-1', line: 'L1', setup: 'lanes', slot: 'M1-F-005A', feeder: 'F-9' };
      story.tell('cart.filled', { ...place, ...where, quantity: 100, of: 'e' });
      const question = { ...ask('F-9', 'M1-F-005B'), setup: 'lanes' };
      return verifyForCart(story.floor(), question, 'CART-1').reasons.map(({ code }) => code);
    };
    expect(codes(1)).toEqual(['feeder-lanes']);
    expect(codes(2)).toEqual([]);
  });

  test('refuses a reel that lies on a cart already, whatever slot it is for', () => {
    const reason = { code: 'reel-on-cart', reel: 'K-9', cart: 'CART-1' };
    expect(firstReason({}, carried)).toEqual({ ...reason, slot: 'M1-R-003' });
    expect(firstReason({ slot: 'M1-F-001' }, carried)).toEqual({ ...reason, slot: 'M1-F-001' });
    expect(verifyForCart(filled(), carried, 'CART-2').verdict).toBe('refused');
  });

  test('refuses a slot that a cart has ready for this setup; one for another setup only on the same cart', () => {
    const place = { slot: 'M1-F-001' };
    const reason = { code: 'slot-on-cart', cart: 'CART-1', slot: 'M1-F-001' };
    expect(firstReason(place, ask(null))).toEqual(reason);
    expect(firstReason({ ...place, setup: 'other' }, ask(null))).toBeUndefined();
    expect(firstReason({ ...place, setup: 'other' }, ask(null), 'CART-1')).toEqual(reason);
  });

  test('keeps the lanes of a feeder on one cart: another cart cannot carry it for the slot beside', () => {
    const beside = { slot: 'M1-F-005A' };
    const codes = (feeder: string | null, cart: string) =>
      verifyForCart(filled(beside), ask(feeder, 'M1-F-005B'), cart).reasons.map(({ code }) => code);
    expect(codes('F-9', 'CART-2')).toContain('feeder-on-cart');
    expect(codes('F-9', 'CART-1')).not.toContain('feeder-on-cart');
    expect(codes('F-8', 'CART-2')).not.toContain('feeder-on-cart');
    expect(codes(null, 'CART-2')).not.toContain('feeder-on-cart');
  });

  test('refuses the reel that is on the line', () => {
    const question = ask('F-2', 'M1-R-003');
    const answer = verifyForCart(
      loaded().floor(),
      { ...question, reel: { ...question.reel, reel: 'K1' } },
      'CART-1',
    );
    expect(answer.reasons.map(({ code }) => code)).toContain('reel-elsewhere');
  });
});
