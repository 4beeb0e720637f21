// A line against its setup, slot by slot.

import { describe, expect, test } from 'vitest';
import { isAllLoaded, nextMissing, setupProgress, slotPhase } from '../../../shared/floor/progress.ts';
import { beginStory, brookSetup, idOf, type Story, tellPlant, verified, wantedSlot } from './story.ts';

const walk = ['M1-F-001', 'M1-F-002', 'M1-F-010', 'M1-R-003'];
const phases = (story: Story) => setupProgress(story.floor(), 'L1').slots.map(({ phase }) => phase);

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

describe('setupProgress()', () => {
  test('lists the slots in walking order, all missing at first', () => {
    const progress = setupProgress(begun().floor(), 'L1');
    expect(progress.slots.map(({ slot }) => slot)).toEqual(walk);
    expect(progress).toMatchObject({
      setup: 'brook-top-a',
      verified: 0,
      held: 0,
      next: { slot: 'M1-F-001' },
      unwanted: [],
    });
  });

  test('says verified, held, other and missing, and points at the next missing slot', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100'));
    story.tell('reel.verified', verified('M1-F-002', 'C-201'));
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { verdict: 'held' }));
    story.tell('reel.verified', verified('M1-F-020', 'R-100'));
    const progress = setupProgress(story.floor(), 'L1');
    expect(progress.slots.map(({ phase }) => phase)).toEqual(['verified', 'verified', 'held', 'missing']);
    expect(progress).toMatchObject({ verified: 2, held: 1, next: { slot: 'M1-R-003' } });
    expect(nextMissing(story.floor(), 'L1')).toBe('M1-R-003');
    story.tell('reel.verified', verified('M1-R-003', 'R-100'));
    expect(nextMissing(story.floor(), 'L1')).toBe(setupProgress(story.floor(), 'L1').next?.slot ?? null);
    expect(nextMissing(story.floor(), 'L9')).toBeNull();
    expect(progress.unwanted.map(({ slot }) => slot)).toEqual(['M1-F-020']);
  });

  test('with no slot empty it is all loaded only once nothing waits for a lead', () => {
    const story = begun();
    for (const [slot, part] of [
      ['M1-F-001', 'R-100'],
      ['M1-F-002', 'C-201'],
      ['M1-R-003', 'R-100'],
    ] as const)
      story.tell('reel.verified', verified(slot, part, { reel: `K-${slot}` }));
    expect(isAllLoaded(story.floor(), 'L1')).toBe(false);
    const held = story.tell('reel.verified', verified('M1-F-010', 'U-300', { verdict: 'held', reel: 'K-9' }));
    expect(nextMissing(story.floor(), 'L1')).toBeNull();
    expect(isAllLoaded(story.floor(), 'L1')).toBe(false);
    const cleared = { line: 'L1', slot: null, reason: 'ok', by: 'lea', checked: 'tablet' } as const;
    story.tell('hold.cleared', { of: idOf(held), ...cleared });
    expect(phases(story)).toEqual(['verified', 'verified', 'verified', 'verified']);
    expect(isAllLoaded(story.floor(), 'L1')).toBe(true);
    expect(isAllLoaded(story.floor(), 'L9')).toBe(false);
  });

  test('counts a reel that a lead cleared as verified, in this setup alone', () => {
    const story = begun();
    const held = story.tell('reel.verified', verified('M1-F-001', 'R-777', { verdict: 'held' }));
    story.tell('hold.cleared', {
      of: idOf(held),
      line: 'L1',
      slot: null,
      reason: 'ok',
      by: 'lea',
      checked: 'tablet',
    });
    expect(phases(story)[0]).toBe('verified');
    story.tell('setup.taken', { ...brookSetup, setup: 'brook-top-b', revision: 'B' });
    story.tell('setup.chosen', { line: 'L1', setup: 'brook-top-b' });
    expect(phases(story)[0]).toBe('other');
  });

  test('asks anew for an alternate that the next setup does not approve', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-002', 'C-201'));
    expect(phases(story)[1]).toBe('verified');
    const slots = [wantedSlot('M1-F-002', 'C-200')];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell', product: 'Fell', slots });
    story.tell('setup.chosen', { line: 'L1', setup: 'fell' });
    expect(phases(story)).toEqual(['other']);
  });

  test('judges a spliced slot by its newest tape', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('reel.verified', verified('M1-F-001', 'X-1', { reel: 'K2', act: 'splice', setup: 'another' }));
    expect(phases(story)[0]).toBe('other');
  });

  test('without a setup everything loaded is unwanted', () => {
    const story = beginStory();
    story.tell('reel.verified', verified('M1-F-001', 'R-100'));
    expect(setupProgress(story.floor(), 'L1')).toMatchObject({
      setup: null,
      slots: [],
      next: null,
      unwanted: [{ slot: 'M1-F-001' }],
    });
  });

  test('keeps lines apart', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { line: 'L2' }));
    expect(setupProgress(story.floor(), 'L1')).toMatchObject({ verified: 0, unwanted: [] });
  });
});

describe('one slot alone', () => {
  test('is what the whole line says of it, and nothing where the setup does not use it or there is none', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
    story.tell('reel.verified', verified('M1-F-020', 'R-100', { reel: 'K2' }));
    const floor = story.floor();
    for (const { slot, phase } of setupProgress(floor, 'L1').slots)
      expect(slotPhase(floor, 'L1', slot), slot).toBe(phase);
    expect(slotPhase(floor, 'L1', 'M1-F-020')).toBeNull();
    expect(slotPhase(floor, 'L9', 'M1-F-001')).toBeNull();
    expect(nextMissing(floor, 'L1')).toBe(setupProgress(floor, 'L1').next?.slot);
    expect(nextMissing(floor, 'L9')).toBeNull();
  });
});
