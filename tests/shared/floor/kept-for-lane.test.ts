// Two lanes that want different parts on one slot: what stands there for one is neither to be taken out nor right for the other.

import { describe, expect, test } from 'vitest';
import { dockingOf } from '../../../shared/changeover/docking.ts';
import { openWork } from '../../../shared/changeover/open-work.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { nextMissing, setupProgress, slotPhase } from '../../../shared/floor/progress.ts';
import { slotKeptFor, slotRight } from '../../../shared/floor/slot-right.ts';
import { beginStory, brookSetup, type Story, started, tellPlant, verified, wantedSlot } from './story.ts';

const lane2 = laneLine('L1', 2);
const slot = 'M1-F-001';

/** Lane 1 has its reel on the slot; lane 2 wants `part` there and another slot for itself. */
function begun(part = 'Z-100'): Story {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  story.tell('line.defined', { ...line, line: lane2, name: 'Lane 2' });
  const slots = [wantedSlot(slot, part), wantedSlot('M1-F-019', 'Z-900')];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell-top-a', product: 'Fell', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'fell-top-a' });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1' }));
  return story;
}

describe('a reel that another lane needs', () => {
  test('is kept for that lane, counted apart from what is to be taken out and from what is right', () => {
    const story = begun();
    const { slots, verified: right, next, unwanted } = setupProgress(story.floor(), lane2);
    expect(slots.map((each) => [each.slot, each.phase, each.keptFor])).toEqual([
      [slot, 'kept', 'L1'],
      ['M1-F-019', 'missing', null],
    ]);
    expect([right, next?.slot, unwanted.length]).toEqual([0, 'M1-F-019', 0]);
    expect(slotPhase(story.floor(), lane2, slot)).toBe('kept');
    expect(nextMissing(story.floor(), lane2)).toBe('M1-F-019');
    expect(slotRight(story.floor(), lane2, 'fell-top-a', slot)).toBe('other-part');
    // The lane that it stands for sees it as its own.
    expect(slotPhase(story.floor(), 'L1', slot)).toBe('verified');
    expect(slotKeptFor(story.floor(), 'L1', 'brook-top-a', slot)).toBeNull();
  });

  test('is asked of what that lane builds, also while its next setup is chosen', () => {
    const story = begun();
    story.tell('run.started', started('a'));
    const slots = [wantedSlot(slot, 'Z-100')];
    story.tell('setup.taken', { ...brookSetup, setup: 'next', product: 'Next', slots });
    story.tell('setup.chosen', { line: 'L1', setup: 'next' });
    expect(slotPhase(story.floor(), lane2, slot)).toBe('kept');
    story.tell('run.ended', { run: 'a', line: 'L1', panels: 0, note: '' });
    // Now both want what is not there.
    expect(slotPhase(story.floor(), lane2, slot)).toBe('other');
  });

  test('is kept no more once it is blocked, or right for both', () => {
    const story = begun();
    story.tell('material.blocked', { block: 'b', reel: 'K1', lot: null, part: null, reason: 'quality' });
    expect(slotPhase(story.floor(), lane2, slot)).toBe('other');
    expect(slotPhase(begun('R-100').floor(), lane2, slot)).toBe('verified');
  });

  test('is still open work of a changeover', () => {
    const story = begun();
    story.tell('changeover.began', {
      changeover: 'x',
      line: lane2,
      setup: 'fell-top-a',
      from: null,
      product: 'Fell',
      lastPanel: null,
    });
    const change = story.floor().changeovers.get('x');
    if (!change) throw new Error('no changeover');
    const open = openWork(story.floor(), change, { moves: [], steps: [] });
    expect(
      open.filter((item) => item.slot === slot && item.what !== 'unchecked').map(({ what }) => what),
    ).toEqual(['slot-other']);
  });

  test('stays when a cart docks for the other lane, and what stands there for nobody goes off', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-F-019', 'X-1', { setup: 'another', reel: 'K9' }));
    for (const [at, part] of [
      [slot, 'Z-100'],
      ['M1-F-019', 'Z-900'],
    ] as const)
      story.tell('cart.filled', {
        cart: 'C',
        line: lane2,
        setup: 'fell-top-a',
        slot: at,
        feeder: null,
        reel: null,
        part,
        supplierPart: null,
        lot: null,
        dateCode: null,
        quantity: 1,
        of: 'x',
      });
    const { ready, off, unfit } = dockingOf(story.floor(), 'C', { line: lane2, setup: 'fell-top-a' });
    expect(ready.map((place) => place.slot)).toEqual(['M1-F-019']);
    expect(off.map((there) => there.slot)).toEqual(['M1-F-019']);
    expect(unfit.map(({ place, why, at }) => [place.slot, why, at])).toEqual([
      [slot, 'other-lane', { line: 'L1', slot }],
    ]);
  });
});
