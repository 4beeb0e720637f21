// Feeders in a run: what each placed over loads, exchanges, counts and unloads that are taken back, against a sum kept beside; moves; care.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isCareDue, placedBy } from '../../../shared/floor/fold-feeders.ts';
import { recognise } from '../../../shared/floor/recognise.ts';
import { slotEstimate } from '../../../shared/floor/remaining.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { beginStory, counted, idOf, type Story, started, tellPlant, unloaded, verified } from './story.ts';

const slot = 'M1-F-001';
const perPanel = 2;
function plant(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('r1'));
  return story;
}
const put = (story: Story, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, quantity: 100_000, run: 'r1', ...more }));
const build = (story: Story, panels: number) => story.tell('panels.counted', counted('r1', panels));

const acts = fc.array(
  fc.oneof(
    fc.record({ act: fc.constant('build' as const), panels: fc.integer({ min: 1, max: 9 }) }),
    fc.record({ act: fc.constantFrom('exchange', 'count', 'off', 'off-and-back', 'splice', 'cared') }),
  ),
  { maxLength: 20 },
);

describe('what a feeder placed', () => {
  test('adds up in every history, however reels are counted, exchanged, spliced or taken back', () => {
    fc.assert(
      fc.property(acts, (history) => {
        const story = plant();
        const placed = new Map([
          ['F1', 0],
          ['F2', 0],
        ]);
        let on: string | null = 'F1';
        let reel = 0;
        let last = put(story, `R${++reel}`, { feeder: on });
        for (const each of history) {
          if (each.act === 'build' && 'panels' in each) {
            build(story, each.panels);
            if (on !== null) placed.set(on, (placed.get(on) ?? 0) + each.panels * perPanel);
          } else if (each.act === 'cared') {
            story.tell('feeder.cared', { feeder: 'F1', note: '' });
            placed.set('F1', 0);
          } else if (on === null) {
            on = 'F1';
            last = put(story, `R${++reel}`, { feeder: on });
          } else if (each.act === 'exchange') {
            on = on === 'F1' ? 'F2' : 'F1';
            last = put(story, `R${++reel}`, { act: 'exchange', feeder: on, replaces: idOf(last) });
          } else if (each.act === 'splice') {
            last = put(story, `R${++reel}`, { act: 'splice', feeder: on, cut: 0 });
          } else if (each.act === 'count') {
            const facts = { line: 'L1', slot, reel: `R${reel}`, part: 'R-100', lot: null, panels: 0 };
            story.tell('reel.counted', { ...facts, quantity: 90_000, sd: 5, basis: 'machine' });
          } else {
            const off = story.tell(
              'reel.unloaded',
              unloaded(slot, { feeder: on, reel: `R${reel}`, quantity: 5 }),
            );
            if (each.act === 'off') on = null;
            else story.tell('entry.corrected', { of: idOf(off), line: 'L1', slot, reason: 'not done' });
          }
        }
        const floor = story.floor();
        for (const [feeder, sum] of placed) expect(placedBy(floor, feeder)).toBe(sum);
      }),
      { numRuns: 120 },
    );
  });

  test('is due for care at the plant’s figure, and counts anew once it was seen to', () => {
    const story = plant();
    story.tell('feeder.care-ruled', { type: null, placements: 20 });
    put(story, 'A', { feeder: 'F1' });
    build(story, 9);
    expect(isCareDue(story.floor(), 'F1')).toBe(false);
    build(story, 1);
    expect(isCareDue(story.floor(), 'F1')).toBe(true);
    story.tell('feeder.set-aside', { feeder: 'F1', reason: 'loses parts' });
    story.tell('feeder.cared', { feeder: 'F1', note: '' });
    const floor = story.floor();
    expect(isCareDue(floor, 'F1')).toBe(false);
    expect(floor.setAside.has('F1')).toBe(false);
  });
});

describe('a feeder that is moved', () => {
  test('takes its reel and its count along, and comes back where the move is taken back', () => {
    const story = plant();
    put(story, 'A', { feeder: 'F1', quantity: 1000 });
    build(story, 10);
    const facts = { line: 'L1', run: 'r1', feeder: 'F1', reel: 'A', part: 'R-100', panels: 10 };
    const moved = story.tell('feeder.moved', { ...facts, from: slot, to: 'M1-R-003', via: 'typed' });
    build(story, 10);
    const floor = story.floor();
    const there = floor.slots.get(slotKey('L1', 'M1-R-003'));
    expect(floor.slots.has(slotKey('L1', slot))).toBe(false);
    expect(floor.reels.get('A')?.at).toEqual({ line: 'L1', slot: 'M1-R-003' });
    // 10 panels at 2 a panel, then 10 at 4.
    expect(there && slotEstimate(floor, there).parts).toBeCloseTo(940, 0);
    expect(placedBy(floor, 'F1')).toBe(60);
    story.tell('entry.corrected', { of: idOf(moved), line: 'L1', slot, reason: 'not done' });
    const back = story.floor();
    expect(back.slots.get(slotKey('L1', slot))?.tapes.map(({ reel }) => reel)).toEqual(['A']);
    expect(back.slots.has(slotKey('L1', 'M1-R-003'))).toBe(false);
    expect(back.reels.get('A')?.at).toEqual({ line: 'L1', slot });
  });

  describe('and whose move is taken back when more happened since', () => {
    test('can be taken off and put back there, whatever else was moved meanwhile', () => {
      const { story, moved } = movedOn();
      const off = idOf(story.tell('reel.unloaded', unloaded(to, { feeder: 'F1', reel: 'A', quantity: 5 })));
      put(story, 'B', { feeder: 'F2', quantity: 1000 });
      const other = { line: 'L1', run: 'r1', feeder: 'F2', reel: 'B', part: 'R-100', panels: 0 };
      story.tell('feeder.moved', { ...other, from: slot, to: 'M1-F-005', via: 'typed' });
      expect(takenBack(story, moved).on).toEqual([[], []]);
      expect(takenBack(story, off).on).toEqual([[], ['A']]);
    });

    const to = 'M1-R-003';
    function movedOn(): { readonly story: Story; readonly moved: string } {
      const story = plant();
      put(story, 'A', { feeder: 'F1', quantity: 1000 });
      const facts = { line: 'L1', run: 'r1', feeder: 'F1', reel: 'A', part: 'R-100', panels: 0 };
      return { story, moved: idOf(story.tell('feeder.moved', { ...facts, from: slot, to, via: 'typed' })) };
    }
    const takenBack = (story: Story, of: string) => {
      story.tell('entry.corrected', { of, line: 'L1', slot, reason: 'not done' });
      const floor = story.floor();
      return {
        floor,
        on: [slot, to].map(
          (each) => floor.slots.get(slotKey('L1', each))?.tapes.map(({ reel }) => reel) ?? [],
        ),
      };
    };

    test('stays where it went once a reel was joined there', () => {
      const { story, moved } = movedOn();
      const joined = { act: 'splice' as const, reel: 'B', run: 'r1', cut: 0 };
      story.tell('reel.verified', verified(to, 'R-100', joined));
      const { on, floor } = takenBack(story, moved);
      expect(on).toEqual([[], ['A', 'B']]);
      expect(floor.conflicts.size).toBe(0);
    });

    test('stays beside what was loaded where it came from, and a person is asked which stands there', () => {
      const { story, moved } = movedOn();
      put(story, 'B', { feeder: 'F2' });
      const { on, floor } = takenBack(story, moved);
      expect(on).toEqual([['B'], ['A']]);
      const told = [...floor.conflicts.values()];
      expect(told.map(({ kind, slots }) => [kind, slots])).toEqual([['slot-loaded-twice', [slot]]]);
      expect(told[0]?.choices.map(({ tapes }) => tapes[0]?.reel)).toEqual(['A', 'B']);
    });

    test('stays where it went once something was loaded and unloaded where it came from', () => {
      const { story, moved } = movedOn();
      put(story, 'B', { feeder: 'F2' });
      story.tell('reel.unloaded', unloaded(slot, { feeder: 'F2', reel: 'B', run: 'r1', quantity: 5 }));
      expect(takenBack(story, moved).on).toEqual([[], ['A']]);
    });

    test('stays gone once it came off where it went', () => {
      const { story, moved } = movedOn();
      story.tell('reel.unloaded', unloaded(to, { feeder: 'F1', reel: 'A', run: 'r1', quantity: 5 }));
      expect(takenBack(story, moved).on).toEqual([[], []]);
    });
  });

  test('goes nowhere where the other slot is taken', () => {
    const story = plant();
    put(story, 'A', { feeder: 'F1' });
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'B' }));
    const facts = { line: 'L1', run: 'r1', feeder: 'F1', reel: 'A', part: 'R-100', panels: 0 };
    story.tell('feeder.moved', { ...facts, from: slot, to: 'M1-R-003', via: 'typed' });
    const floor = story.floor();
    expect(floor.slots.get(slotKey('L1', slot))?.tapes[0]?.reel).toBe('A');
    expect(floor.slots.get(slotKey('L1', 'M1-R-003'))?.tapes[0]?.reel).toBe('B');
  });
});

describe('a second feeder', () => {
  const ready = (story: Story, feeder = 'F2') =>
    story.tell('feeder.readied', {
      feeder,
      line: 'L1',
      setup: 'brook-top-a',
      slot,
      reel: 'B',
      part: 'R-100',
      supplierPart: null,
      lot: null,
      dateCode: null,
      quantity: 1000,
      of: 't/e/1',
    });

  test('is ready until it goes on, its reel goes on under another, or it is stripped', () => {
    const story = plant();
    ready(story);
    expect(story.floor().ready.get('F2')?.reel).toBe('B');
    expect(recognise(story.floor(), 'L1', 'F2')).toEqual([{ is: 'feeder', feeder: 'F2' }]);
    const first = put(story, 'A', { feeder: 'F1' });
    expect(story.floor().ready.size).toBe(1);
    put(story, 'B', { act: 'exchange', feeder: 'F2', replaces: idOf(first) });
    expect(story.floor().ready.size).toBe(0);
    ready(story);
    story.tell('feeder.stripped', { feeder: 'F2', reason: 'off' });
    expect(story.floor().ready.size).toBe(0);
  });

  test('is not ready any more once its reel is ready under another, or on a cart', () => {
    const story = plant();
    const { of } = ready(story).payload as { of: string };
    ready(story, 'F3');
    expect([...story.floor().ready.keys()]).toEqual(['F3']);
    const facts = { line: 'L1', setup: 'brook-top-a', slot, reel: 'B', part: 'R-100', quantity: 1000 };
    const none = { supplierPart: null, lot: null, dateCode: null };
    story.tell('cart.filled', { ...facts, ...none, cart: 'CART-1', feeder: 'F4', of });
    expect(story.floor().ready.size).toBe(0);
  });

  test('held for a lead is ready once the lead clears it, and on no slot', () => {
    const story = plant();
    const facts = verified(slot, 'R-100', { reel: 'B', feeder: 'F2', verdict: 'held', readying: true });
    const held = story.tell('reel.verified', facts);
    story.tell('hold.cleared', {
      of: idOf(held),
      line: 'L1',
      slot,
      reason: 'right',
      by: 'ana',
      checked: 'tablet',
    });
    const floor = story.floor();
    expect(floor.ready.get('F2')).toMatchObject({ slot, reel: 'B', of: idOf(held) });
    expect(floor.slots.size).toBe(0);
  });
});
