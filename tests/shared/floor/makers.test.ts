// Are makers approved for the product that names them, and for no other? And what a withdrawal and a later approval do to that.

import { describe, expect, test } from 'vitest';
import { makersApproved } from '../../../shared/floor/maker-lists.ts';
import { copyForPractice } from '../../../shared/floor/practice-copy.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { verifyReel } from '../../../shared/verdict/verify.ts';
import { beginStory, brookSetup, type Story, tellPlant, wantedSlot } from './story.ts';

/** Two products of one plant with lists of their own for R-100, and one without. */
function plant(): Story {
  const story = beginStory();
  tellPlant(story);
  for (const [setup, supplierParts] of [
    ['fell', ['MPN-X', 'MPN-Y']],
    ['gill', ['MPN-Y']],
    ['hay', []],
  ] as const)
    story.tell('setup.taken', {
      ...brookSetup,
      setup,
      product: setup,
      slots: [wantedSlot('M1-F-001', 'R-100', { supplierParts: [...supplierParts] })],
    });
  return story;
}

function ask(floor: FloorState, setup: string, supplierPart: string, part: string | null = 'R-100') {
  return verifyReel(floor, {
    act: 'load',
    line: 'L1',
    setup,
    slot: 'M1-F-001',
    feeder: null,
    today: '2026-03-02',
    reel: { reel: 'K-1', part, supplierPart, quantity: 100, lot: null },
  });
}
const codes = (answer: ReturnType<typeof ask>) => answer.reasons.map(({ code }) => code);

describe('makers of a product', () => {
  test('a maker approved for one product is held on another that has a list, with either number on the label', () => {
    const floor = plant().floor();
    for (const part of ['R-100', null]) {
      expect(ask(floor, 'fell', 'MPN-X', part).verdict).toBe('accepted');
      const held = ask(floor, 'gill', 'MPN-X', part);
      expect(held.verdict).toBe('held');
      expect(held.reasons[0]).toEqual({
        code: 'maker-not-listed',
        supplierPart: 'MPN-X',
        part: 'R-100',
        listed: ['MPN-Y'],
        approvedFor: ['fell'],
      });
      expect(ask(floor, 'gill', 'MPN-Y', part).verdict).toBe('accepted');
    }
  });

  test('a product without a list takes the site’s number with any maker, and a maker’s number alone only by hand', () => {
    const story = plant();
    expect(codes(ask(story.floor(), 'hay', 'MPN-Z'))).toEqual([]);
    expect(codes(ask(story.floor(), 'hay', 'MPN-X', null))).toEqual(['maker-not-listed']);
    story.tell('supplier.approved', { supplierPart: 'MPN-X', part: 'R-100' });
    expect(codes(ask(story.floor(), 'hay', 'MPN-X', null))).toEqual(['by-supplier-part']);
    // What is approved by hand is for products without a list.
    expect(codes(ask(story.floor(), 'gill', 'MPN-X', null))).toEqual(['maker-not-listed']);
  });

  test('a withdrawn maker is held, though it was the only one of the list; approved again it is taken', () => {
    const story = plant();
    story.tell('supplier.withdrawn', { supplierPart: 'MPN-Y', part: 'R-100' });
    expect(codes(ask(story.floor(), 'gill', 'MPN-Y'))).toEqual(['maker-not-listed']);
    expect(codes(ask(story.floor(), 'gill', 'MPN-Y', null))).toEqual(['supplier-part-not-approved']);
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'isle',
      product: 'isle',
      slots: [wantedSlot('M1-F-001', 'R-100', { supplierParts: ['MPN-Y'] })],
    });
    // Another product's sheet of a later day speaks for that product alone.
    expect(ask(story.floor(), 'isle', 'MPN-Y').verdict).toBe('accepted');
    expect(ask(story.floor(), 'gill', 'MPN-Y').verdict).toBe('held');
    story.tell('supplier.approved', { supplierPart: 'MPN-Y', part: 'R-100' });
    expect(ask(story.floor(), 'gill', 'MPN-Y').verdict).toBe('accepted');
  });

  test('the site’s number in the maker’s field too is no maker’s number', () => {
    expect(codes(ask(plant().floor(), 'gill', 'R-100'))).toEqual([]);
  });

  test('a practice floor has the same lists', () => {
    const story = plant();
    story.tell('supplier.withdrawn', { supplierPart: 'MPN-Y', part: 'R-100' });
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'isle',
      product: 'isle',
      slots: [wantedSlot('M1-F-001', 'R-100', { supplierParts: ['MPN-Y'] })],
    });
    const copy = beginStory();
    for (const { kind, payload } of copyForPractice(story.floor(), 'L1')) copy.tell(kind, payload as never);
    for (const setup of ['fell', 'gill', 'hay', 'isle'])
      expect(makersApproved(copy.floor(), setup, 'R-100'), setup).toEqual(
        makersApproved(story.floor(), setup, 'R-100'),
      );
    expect(copy.floor().approvedByHand).toEqual(story.floor().approvedByHand);
  });
});
