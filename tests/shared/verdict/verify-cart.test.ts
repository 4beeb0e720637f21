// A cart's place is judged as the slot it is for, yet a feeder that is in use elsewhere is never taken for free.

import { describe, expect, test } from 'vitest';
import type { VerifyQuestion } from '../../../shared/verdict/verify.ts';
import { verifyForCart } from '../../../shared/verdict/verify-cart.ts';
import { beginStory, type Story, tellPlant, verified } from '../setup/story.ts';

const ask = (feeder: string | null, slot = 'M1-F-001'): VerifyQuestion => ({
  ...{ act: 'load', line: 'L1', setup: 'brook-top-a', slot, feeder, today: '2026-03-02' },
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
    expect(verifyForCart(loaded().floor(), ask('F-2')).verdict).toBe('accepted');
    expect(verifyForCart(loaded().floor(), ask(null)).verdict).toBe('accepted');
  });

  test.each(['M1-F-001', 'M1-R-003'])('refuses a feeder that is on the line now, for %s', (slot) => {
    const answer = verifyForCart(loaded().floor(), ask('F-1', slot));
    expect(answer).toMatchObject({
      verdict: 'refused',
      reasons: [{ code: 'feeder-elsewhere', feeder: 'F-1', slot: 'M1-F-001', line: 'L1' }],
    });
  });

  test('refuses a feeder that another cart carries', () => {
    const story = loaded();
    story.tell('cart.filled', {
      ...{ cart: 'CART-1', line: 'L1', setup: 'brook-top-a', slot: 'M1-R-003', feeder: 'F-9', reel: 'K-9' },
      ...{ part: 'R-100', supplierPart: null, lot: null, dateCode: null, quantity: 100, of: 'e' },
    });
    expect(verifyForCart(story.floor(), ask('F-9')).reasons[0]).toEqual({
      ...{ code: 'feeder-on-cart', feeder: 'F-9', cart: 'CART-1', slot: 'M1-R-003' },
    });
  });

  test('refuses the reel that is on the line', () => {
    const question = ask('F-2', 'M1-R-003');
    const answer = verifyForCart(loaded().floor(), { ...question, reel: { ...question.reel, reel: 'K1' } });
    expect(answer.reasons.map(({ code }) => code)).toContain('reel-elsewhere');
  });
});
