// Practice labels do what their words say: read by the app's own reader, judged by its own verdict.

import { describe, expect, test } from 'vitest';
import { parseLabel } from '../../../../../shared/labels/label.ts';
import { type VerifyQuestion, verifyReel } from '../../../../../shared/verdict/verify.ts';
import { practiceLabels } from '../../../../../src/app/screens/plant/practice-labels.ts';
import { beginStory, tellPlant, verified } from '../../../../shared/floor/story.ts';

function plant() {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'PR-M1-F-001-1' }));
  return story.floor();
}

const verdictOf = (id: string) => {
  const floor = plant();
  const label = practiceLabels(floor, 'L1').find((each) => each.id === id);
  if (!label?.slot) throw new Error(`no label ${id}`);
  const { part, supplierPart, quantity, lot, dateCode, reel } = parseLabel(label.codes);
  return verifyReel(floor, {
    act: 'load',
    line: 'L1',
    setup: 'brook-top-a',
    slot: label.slot,
    feeder: null,
    today: '2026-03-02',
    reel: { part, supplierPart, quantity, lot, dateCode, reel },
  } as VerifyQuestion).verdict;
};

describe('practiceLabels()', () => {
  test('has a slot and its reel for what is missing and for what runs out', () => {
    const ids = practiceLabels(plant(), 'L1').map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining(['slot-M1-F-002', 'reel-M1-F-002', 'slot-M1-F-001', 'reel-M1-F-001']),
    );
  });

  test('gives a reel that the floor knows no second time', () => {
    const label = practiceLabels(plant(), 'L1').find(({ id }) => id === 'reel-M1-F-001');
    expect(parseLabel(label?.codes ?? [])).toMatchObject({
      part: 'R-100',
      reel: 'PR-M1-F-001-2',
      quantity: 5000,
    });
  });

  test.each([
    ['reel-M1-F-002', 'accepted'],
    ['reel-wrong', 'refused'],
    ['reel-foreign', 'refused'],
    ['reel-bare', 'held'],
  ])('%s is %s', (id, verdict) => {
    expect(verdictOf(id)).toBe(verdict);
  });

  test('a slot to load gets a feeder of its own that the verdict takes: of any pitch, on no cart and not set aside', () => {
    const story = beginStory();
    tellPlant(story);
    for (const feeder of ['F-1', 'F-2', 'F-3', 'F-4'])
      story.tell('feeder.known', { feeder, tapeWidthMm: 8, pitchesMm: [], positions: 1 });
    story.tell('feeder.set-aside', { feeder: 'F-1', reason: 'loses parts' });
    const place = { cart: 'CART-1', line: 'L1', setup: 'brook-top-a', slot: 'M1-R-003', feeder: 'F-2' };
    const on = { reel: 'K-9', part: 'R-100', supplierPart: null, lot: null, dateCode: null, quantity: 100 };
    story.tell('cart.filled', { ...place, ...on, of: 'e' });
    const feeders = practiceLabels(story.floor(), 'L1').filter(({ what }) => what === 'feeder');
    expect(feeders.map(({ slot, codes }) => [slot, ...codes])).toEqual([
      ['M1-F-001', 'F-3'],
      ['M1-F-002', 'F-4'],
    ]);
  });
});
