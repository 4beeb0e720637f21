// What packages come in, as the fold keeps it: exchange, refill, purge, counts.

import { describe, expect, test } from 'vitest';
import { kindComing, kindOfReel, kindOnSlot, looseIn } from '../../../shared/floor/packs.ts';
import { slotEstimate } from '../../../shared/floor/remaining.ts';
import { slotKey } from '../../../shared/floor/state.ts';
import { payloadExamples } from './examples.ts';
import { beginStory, counted, idOf, type Story, started, tellPlant, unloaded, verified } from './story.ts';

const slot = 'M1-F-001';
function plant(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('r1'));
  return story;
}
const put = (story: Story, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, lot: `LOT-${reel}`, ...more }));
const there = (story: Story) => story.floor().slots.get(slotKey('L1', slot));
const leftOn = (story: Story) => {
  const floor = story.floor();
  const loaded = floor.slots.get(slotKey('L1', slot));
  return loaded ? slotEstimate(floor, loaded) : null;
};

describe('a tray', () => {
  test('is exchanged: what stood there is off with what it has left, and nothing contradicts', () => {
    const story = plant();
    const first = put(story, 'A', { comesIn: 'tray', quantity: 90, basis: 'one-by-one' });
    story.tell('panels.counted', counted('r1', 10));
    put(story, 'B', { act: 'exchange', comesIn: 'tray', replaces: idOf(first), quantity: 90, run: 'r1' });
    const floor = story.floor();
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['B']);
    expect(floor.reels.get('A')).toMatchObject({ at: null, count: 70, basis: 'counted-down' });
    expect(floor.conflicts.size).toBe(0);
  });

  test('exchanged by two tablets that had not heard of each other is told', () => {
    const story = plant();
    const first = put(story, 'A', { comesIn: 'tray' });
    put(story, 'B', { act: 'exchange', comesIn: 'tray', replaces: idOf(first) });
    put(story, 'C', { act: 'exchange', comesIn: 'tray', replaces: idOf(first) });
    expect([...story.floor().conflicts.values()].map(({ kind }) => kind)).toEqual(['slot-loaded-twice']);
  });

  test('an exchange that is taken back brings back what stood there', () => {
    const story = plant();
    const first = put(story, 'A', { comesIn: 'tray', quantity: 90 });
    const second = put(story, 'B', { act: 'exchange', comesIn: 'tray', replaces: idOf(first) });
    story.tell('entry.corrected', { of: idOf(second), line: 'L1', slot, reason: 'not done' });
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['A']);
    expect(story.floor().reels.get('A')?.at).toEqual({ line: 'L1', slot });
    expect(story.floor().reels.get('B')?.at).toBeNull();
  });

  test('counted by its pockets is known for certain: no spread', () => {
    const story = plant();
    put(story, 'A', { comesIn: 'tray', quantity: 90, basis: 'label' });
    const facts = { line: 'L1', slot, reel: 'A', part: 'R-100', lot: null, panels: 0 };
    story.tell('reel.counted', { ...facts, quantity: 56, sd: 0, basis: 'one-by-one' });
    expect(leftOn(story)).toMatchObject({ parts: 56, sd: 0 });
    story.tell('panels.counted', counted('r1', 3));
    expect(leftOn(story)?.parts).toBeCloseTo(50, 2);
    expect(leftOn(story)?.countSd).toBe(0);
  });
});

describe('what a package is', () => {
  test('said of it while it stands on a slot holds for the slot', () => {
    const story = plant();
    put(story, 'A');
    story.tell('reel.packed', {
      reel: 'A',
      part: 'R-100',
      comesIn: 'tube',
      tube: { tubes: 3, parts: 50 },
      via: 'typed',
    });
    expect(kindOnSlot(there(story) ?? { tapes: [] })).toBe('tube');
    expect(story.floor().packs.get('A')).toEqual({ comesIn: 'tube', tube: { tubes: 3, parts: 50 } });
    story.tell('reel.packed', { reel: 'A', part: 'R-100', comesIn: 'tape', via: 'typed' });
    expect(kindOnSlot(there(story) ?? { tapes: [] })).toBe('tape');
  });

  test('comes of the package, else of the sheet, else of what stands there', () => {
    const story = plant();
    const asked = { act: 'load' as const, line: 'L1', setup: 'brook-top-a', slot, feeder: 'F1', reel: 'A' };
    expect(kindComing(story.floor(), asked)).toBe('tape');
    const [example] = payloadExamples['parts.listed'].parts;
    if (example === undefined) throw new Error('a part must be listed');
    const list = (comesIn: 'tape' | 'bulk') =>
      story.tell('parts.listed', { source: 'list', parts: [{ ...example, part: 'R-100', comesIn }] });
    list('bulk');
    expect(kindComing(story.floor(), asked)).toBe('bulk');
    list('tape');
    expect(kindComing(story.floor(), asked)).toBe('tape');
    const lengths = { hubToPickMm: null, intakeToPickMm: null, trailerMm: null, leaderMm: null };
    story.tell('feeder-type.known', {
      type: 'stick',
      lanes: 3,
      drive: null,
      pocketMm: null,
      comesIn: 'tube',
      ...lengths,
    });
    story.tell('feeder.typed', { feeder: 'F1', type: 'stick', ...lengths });
    expect(kindComing(story.floor(), asked)).toBe('tube');
    story.tell('feeder.typed', { feeder: 'F1', type: null, ...lengths });
    put(story, 'Z', { comesIn: 'bulk' });
    expect(kindComing(story.floor(), asked)).toBe('bulk');
    story.tell('reel.packed', { reel: 'A', part: null, comesIn: 'tray', via: 'typed' });
    expect(kindComing(story.floor(), asked)).toBe('tray');
  });

  test('off the line it counts as somebody said of it, else as the list says of its part, else as tape', () => {
    const story = beginStory();
    tellPlant(story);
    const ic = { reel: 'K9', part: 'IC-7' };
    expect(kindOfReel(story.floor(), ic)).toBe('tape');
    const parts = payloadExamples['parts.listed'].parts.map((example) => ({
      ...example,
      part: ic.part,
      comesIn: 'tray' as const,
    }));
    story.tell('parts.listed', { source: 'list', parts });
    expect(kindOfReel(story.floor(), ic)).toBe('tray');
    story.tell('reel.packed', { reel: 'K9', part: 'IC-7', comesIn: 'cut-tape', via: 'typed' });
    expect(kindOfReel(story.floor(), ic)).toBe('cut-tape');
  });
});

describe('what lies loose', () => {
  test('is never used up by the count: the first lot stays under the second', () => {
    const story = plant();
    put(story, 'A', { comesIn: 'bulk', quantity: 20 });
    story.tell('panels.counted', counted('r1', 12));
    put(story, 'B', { act: 'refill', comesIn: 'bulk', quantity: 1000 });
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['A', 'B']);
  });

  test('stays loose though a package that is poured in came on tape', () => {
    const story = plant();
    put(story, 'A', { comesIn: 'bulk', quantity: 20 });
    put(story, 'B', { act: 'refill', quantity: 100 });
    story.tell('reel.packed', { reel: 'B', part: 'R-100', comesIn: 'tape', via: 'typed' });
    story.tell('panels.counted', counted('r1', 40));
    put(story, 'C', { act: 'refill', quantity: 100 });
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['A', 'B', 'C']);
  });

  test('is counted in one: the figure is of all, whoever is named', () => {
    const story = plant();
    put(story, 'A', { comesIn: 'bulk', quantity: 500 });
    put(story, 'B', { act: 'refill', comesIn: 'bulk', quantity: 1000 });
    expect(leftOn(story)?.parts).toBe(1500);
    const facts = { line: 'L1', slot, reel: 'B', part: 'R-100', lot: null, panels: 0 };
    story.tell('reel.counted', { ...facts, quantity: 1200, sd: 10, basis: 'weighed' });
    expect(leftOn(story)?.parts).toBe(1200);
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['A', 'B']);
  });

  test('stays in its feeder when that comes off, and is there at its next load', () => {
    const story = plant();
    put(story, 'A', { comesIn: 'bulk', feeder: 'F1', quantity: 500 });
    story.tell('reel.unloaded', unloaded(slot, { feeder: 'F1', reel: 'A', quantity: 40 }));
    expect(looseIn(story.floor(), { line: 'L1', slot, feeder: 'F1' }).map(({ reel }) => reel)).toEqual(['A']);
    put(story, 'B', { comesIn: 'bulk', feeder: 'F1', quantity: 1000 });
    expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['A', 'B']);
    expect(leftOn(story)?.parts).toBe(1040);
  });

  test('is gone once the feeder was emptied out, with the unload or later', () => {
    for (const later of [false, true]) {
      const story = plant();
      put(story, 'A', { comesIn: 'bulk', feeder: 'F1' });
      const off = unloaded(slot, { feeder: 'F1', reel: 'A', quantity: 0 });
      story.tell('reel.unloaded', later ? off : { ...off, purged: true });
      if (later)
        story.tell('bulk.purged', { line: 'L1', slot, feeder: 'F1', run: null, panels: 0, via: 'typed' });
      put(story, 'B', { comesIn: 'bulk', feeder: 'F1' });
      expect(there(story)?.tapes.map(({ reel }) => reel)).toEqual(['B']);
    }
  });
});
