// From entries to the floor, told as short stories: what stands on the line after each.

import { describe, expect, test } from 'vitest';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { usedPlacements } from '../../../shared/floor/remaining.ts';
import {
  copyState,
  emptyState,
  type FloorState,
  needKey,
  type SlotState,
  slotKey,
} from '../../../shared/floor/state.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
} from './story.ts';

const slotOf = (floor: FloorState, slot: string, line = 'L1') => floor.slots.get(slotKey(line, slot));
const reelsOn = (slot: SlotState | undefined) => slot?.tapes.map((tape) => tape.reel) ?? null;
const whereIs = (floor: FloorState, reel: string) => floor.reels.get(reel)?.at ?? null;
const load = (story: Story, slot: string, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, ...more }));

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}

describe('a plant', () => {
  test('keeps lines, rules, feeders, people and tablets as they were last described', () => {
    const story = begun();
    story.tell('tablet.named', { name: 'Line 1 rear' });
    story.tell('tablet.opened', { name: 'again', app: '0.2.0', key: null, previous: null }, { tablet: 'T2' });
    story.tell('feeder.known', { feeder: 'F-7', tapeWidthMm: 8, pitchesMm: [4], positions: 1 });
    story.tell('feeder.known', { feeder: 'F-8', tapeWidthMm: 12, pitchesMm: [], positions: 2 });
    story.tell('feeder.withdrawn', { feeder: 'F-7', reason: 'worn' });
    const floor = story.floor();
    expect([...floor.feeders.keys()]).toEqual(['F-8']);
    expect(floor.lines.get('L1')?.machines[0]?.banks).toHaveLength(2);
    expect(floor.rules.get('L1')?.leadSeconds).toBe(600);
    expect([...floor.tablets.values()].map(({ name, epochs }) => [name, epochs])).toEqual([
      ['Line 1 rear', ['T1-life-1']],
      ['again', ['T2-life-1']],
    ]);
  });

  test('approves suppliers by setup and by word, and forgets what was withdrawn', () => {
    const story = begun();
    story.tell('supplier.approved', { supplierPart: 'SUP-300', part: 'U-301' });
    story.tell('supplier.approved', { supplierPart: 'SUP-9', part: 'R-100' });
    expect(story.floor().approvals.get('SUP-300')).toEqual(['U-300', 'U-301']);
    story.tell('supplier.withdrawn', { supplierPart: 'SUP-300', part: 'U-300' });
    story.tell('supplier.withdrawn', { supplierPart: 'SUP-9', part: 'R-100' });
    story.tell('supplier.withdrawn', { supplierPart: 'SUP-none', part: 'R-100' });
    expect([...story.floor().approvals]).toEqual([['SUP-300', ['U-301']]]);
  });

  test('chooses only a setup that it has taken', () => {
    const story = begun();
    story.tell('setup.chosen', { line: 'L1', setup: 'never-taken' });
    expect(story.floor().chosen.get('L1')).toBe('brook-top-a');
  });
});

describe('an entry that this version cannot read', () => {
  test('changes nothing and is told', () => {
    const story = begun();
    const floor = story.floor();
    const before = copyState(floor);
    const [first] = story.entries;
    if (!first) throw new TypeError('Cannot test as the story must have entries');
    expect(applyEntry(floor, { ...first, kind: 'reel.painted' })).toBe(false);
    expect(applyEntry(floor, { ...first, kind: 'reel.verified' })).toBe(false);
    expect(floor).toEqual(before);
    expect(applyEntry(emptyState(), first)).toBe(true);
  });
});

describe('loading', () => {
  test('puts an accepted reel on its slot, a refused one nowhere', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1', { lot: 'A', feeder: 'F-7' });
    load(story, 'M1-F-002', 'K2', { verdict: 'refused', reasons: [{ code: 'wrong-part' }] });
    const floor = story.floor();
    expect(slotOf(floor, 'M1-F-001')).toMatchObject({
      feeder: 'F-7',
      usedBefore: 0,
      sinceRun: null,
      before: null,
    });
    expect(slotOf(floor, 'M1-F-001')?.tapes).toMatchObject([
      { reel: 'K1', forPart: 'R-100', lot: 'A', count: 1000 },
    ]);
    expect(whereIs(floor, 'K1')).toEqual({ line: 'L1', slot: 'M1-F-001' });
    expect(floor.slots.size).toBe(1);
    expect(floor.reels.has('K2')).toBe(false);
  });

  test('names a reel without an id after its entry', () => {
    const story = begun();
    const entry = story.tell('reel.verified', verified('M1-F-001', 'R-100'));
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual([`~${idOf(entry)}`]);
  });

  test('without a slot changes nothing', () => {
    const story = begun();
    story.tell('reel.verified', verified(null, 'R-100', { reel: 'K1' }));
    expect(story.floor().slots.size).toBe(0);
  });
});

describe('unloading', () => {
  test('frees the slot and gives the reel what was counted down', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1');
    story.tell('panels.counted', counted('run-1', 100));
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    const floor = story.floor();
    expect(slotOf(floor, 'M1-F-001')).toBeUndefined();
    // 1000 parts, 2 placements a panel, 100 panels.
    expect(floor.reels.get('K1')).toMatchObject({ at: null, count: 800, basis: 'counted-down' });
  });

  test('believes a person’s count over the counted-down one', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    story.tell('reel.unloaded', unloaded('M1-F-001', { quantity: 640, basis: 'weighed' }));
    expect(story.floor().reels.get('K1')).toMatchObject({ at: null, count: 640, sd: 0, basis: 'weighed' });
  });

  test('of an empty slot changes nothing', () => {
    const story = begun();
    const before = story.floor();
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    expect(story.floor()).toEqual(before);
  });
});

describe('splicing', () => {
  test('joins the new tape behind the running one and keeps the use so far', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1');
    story.tell('panels.counted', counted('run-1', 100));
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    const slot = slotOf(story.floor(), 'M1-F-001');
    expect(reelsOn(slot)).toEqual(['K1', 'K2']);
    expect(slot).toMatchObject({ usedBefore: 200, sinceRun: 'run-1', sinceDone: 100 });
    expect(slot?.tapes[1]?.fromPanels).toBe(100);
  });

  test('drops a tape that the count says is used up, and its reel is empty and off the line', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1', { quantity: 100 });
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    story.tell('panels.counted', counted('run-1', 60));
    load(story, 'M1-F-001', 'K3', { act: 'splice' });
    const floor = story.floor();
    expect(reelsOn(slotOf(floor, 'M1-F-001'))).toEqual(['K2', 'K3']);
    expect(slotOf(floor, 'M1-F-001')?.usedBefore).toBe(20);
    expect(floor.reels.get('K1')).toMatchObject({ at: null, count: 0 });
  });

  test('keeps a tape of unknown count: nothing says that it is used up', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1', { quantity: null });
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    story.tell('panels.counted', counted('run-1', 5000));
    load(story, 'M1-F-001', 'K3', { act: 'splice' });
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual(['K1', 'K2', 'K3']);
  });

  test('on an empty slot is a load', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1', { act: 'splice' });
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual(['K1']);
  });
});

describe('counting a reel', () => {
  const count = (story: Story, slot: string | null, reel: string | null, quantity: number) =>
    story.tell('reel.counted', {
      line: slot === null ? null : 'L1',
      slot,
      reel,
      part: null,
      lot: null,
      quantity,
      sd: 3,
      basis: 'weighed',
      panels: 0,
    });

  test('on a slot starts the count-down anew', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1');
    story.tell('panels.counted', counted('run-1', 100));
    count(story, 'M1-F-001', null, 790);
    const floor = story.floor();
    expect(slotOf(floor, 'M1-F-001')).toMatchObject({ usedBefore: 0, sinceDone: 100 });
    expect(slotOf(floor, 'M1-F-001')?.tapes).toMatchObject([
      { reel: 'K1', count: 790, sd: 3, basis: 'weighed' },
    ]);
    expect(floor.reels.get('K1')).toMatchObject({ count: 790, sd: 3 });
  });

  test('that is joined behind says that the tapes before it are used up', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    count(story, 'M1-F-001', 'K2', 900);
    const floor = story.floor();
    expect(reelsOn(slotOf(floor, 'M1-F-001'))).toEqual(['K2']);
    expect(floor.reels.get('K1')).toMatchObject({ at: null, count: 0 });
  });

  test('that is not on the slot leaves the slot as it is', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    load(story, 'M1-R-003', 'K9');
    count(story, 'M1-F-001', 'K9', 12);
    const floor = story.floor();
    expect(slotOf(floor, 'M1-F-001')?.tapes).toMatchObject([{ reel: 'K1', count: 1000 }]);
    expect(floor.reels.get('K9')?.count).toBe(12);
  });

  test('off the line changes the reel alone', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    count(story, null, 'K1', 333);
    expect(story.floor().reels.get('K1')).toMatchObject({ count: 333, at: null });
  });
});

describe('taking back', () => {
  const takeBack = (story: Story, entry: Parameters<typeof idOf>[0]) =>
    story.tell('entry.corrected', { of: idOf(entry), line: 'L1', slot: null, reason: 'slip' });

  test('a load empties the slot and frees the reel', () => {
    const story = begun();
    takeBack(story, load(story, 'M1-F-001', 'K1'));
    const floor = story.floor();
    expect(floor.slots.size).toBe(0);
    expect(floor.reels.get('K1')).toMatchObject({ at: null, count: 1000 });
  });

  test('a splice leaves the slot as it was, with the use of the run since', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1');
    story.tell('panels.counted', counted('run-1', 10));
    const splice = load(story, 'M1-F-001', 'K2', { act: 'splice' });
    story.tell('panels.counted', counted('run-1', 10));
    story.tell('run.started', started('run-2'));
    story.tell('panels.counted', counted('run-2', 5));
    takeBack(story, splice);
    const floor = story.floor();
    const slot = slotOf(floor, 'M1-F-001');
    expect(reelsOn(slot)).toEqual(['K1']);
    expect(slot && usedPlacements(floor, slot)).toBe(2 * 25);
    expect(whereIs(floor, 'K2')).toBeNull();
  });

  test('a splice brings back a tape that it had dropped as used up', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    load(story, 'M1-F-001', 'K1', { quantity: 100 });
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    story.tell('panels.counted', counted('run-1', 60));
    takeBack(story, load(story, 'M1-F-001', 'K3', { act: 'splice' }));
    const floor = story.floor();
    expect(reelsOn(slotOf(floor, 'M1-F-001'))).toEqual(['K1', 'K2']);
    expect(whereIs(floor, 'K1')).toEqual({ line: 'L1', slot: 'M1-F-001' });
  });

  test('an unload puts the reel back, unless the slot was loaded since', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    const off = story.tell('reel.unloaded', unloaded('M1-F-001', { quantity: 5, basis: 'typed' }));
    takeBack(story, off);
    expect(story.floor().reels.get('K1')).toMatchObject({
      count: 1000,
      at: { line: 'L1', slot: 'M1-F-001' },
    });
    const again = story.tell('reel.unloaded', unloaded('M1-F-001'));
    load(story, 'M1-F-001', 'K2');
    takeBack(story, again);
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual(['K2']);
  });

  test('what something newer stands on changes nothing', () => {
    const story = begun();
    const first = load(story, 'M1-F-001', 'K1');
    load(story, 'M1-F-001', 'K2', { act: 'splice' });
    takeBack(story, first);
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual(['K1', 'K2']);
  });

  test('a count of panels subtracts it, once', () => {
    const story = begun();
    story.tell('run.started', started('run-1'));
    story.tell('panels.counted', counted('run-1', 10));
    const slip = story.tell('panels.counted', counted('run-1', 100));
    takeBack(story, slip);
    takeBack(story, slip);
    expect(story.floor().runs.get('run-1')?.done).toBe(10);
  });

  test('an entry that nobody wrote changes nothing but the list of corrections', () => {
    const story = begun();
    const before = story.floor();
    story.tell('entry.corrected', { of: 'T9/e/9', line: null, slot: null, reason: 'slip' });
    expect(story.floor()).toEqual({ ...before, corrected: new Set(['T9/e/9']) });
  });
});

describe('a held reel', () => {
  const hold = (story: Story) =>
    load(story, 'M1-F-001', 'K1', { verdict: 'held', reasons: [{ code: 'no-quantity' }], part: 'R-777' });
  const clear = (story: Story, of: string) =>
    story.tell('hold.cleared', { of, line: 'L1', slot: null, reason: 'seen', by: 'lea', checked: 'tablet' });

  test('waits, and goes on the slot once a lead clears it', () => {
    const story = begun();
    const entry = hold(story);
    expect(story.floor().holds.get(idOf(entry))).toMatchObject({
      who: 'ana',
      reasons: [{ code: 'no-quantity' }],
    });
    expect(story.floor().slots.size).toBe(0);
    const cleared = clear(story, idOf(entry));
    const floor = story.floor();
    expect(floor.holds.size).toBe(0);
    expect(slotOf(floor, 'M1-F-001')).toMatchObject({
      entry: idOf(cleared),
      tapes: [{ part: 'R-777', forPart: 'R-100' }],
    });
  });

  test('goes nowhere when declined or taken back, also if cleared afterwards', () => {
    const declined = begun();
    const one = idOf(hold(declined));
    declined.tell('hold.declined', { of: one, line: 'L1', slot: null, by: 'lea', reason: 'no' });
    clear(declined, one);
    expect(declined.floor()).toMatchObject({ holds: new Map(), slots: new Map() });
    const back = begun();
    const two = idOf(hold(back));
    back.tell('entry.corrected', { of: two, line: 'L1', slot: null, reason: 'slip' });
    clear(back, two);
    expect(back.floor()).toMatchObject({ holds: new Map(), slots: new Map() });
  });

  test('cleared though its lot is blocked is told as a conflict', () => {
    const story = begun();
    const entry = load(story, 'M1-F-001', 'K1', { verdict: 'held', lot: 'bad' });
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'bad', part: null, reason: 'quality' });
    clear(story, idOf(entry));
    expect([...story.floor().conflicts.values()]).toMatchObject([
      { kind: 'cleared-though-blocked', slots: ['M1-F-001'] },
    ]);
  });

  test('may be cleared once the block is released', () => {
    const story = begun();
    const entry = load(story, 'M1-F-001', 'K1', { verdict: 'held', lot: 'bad' });
    story.tell('material.blocked', { block: 'b1', reel: null, lot: 'bad', part: null, reason: 'quality' });
    story.tell('material.released', { block: 'b1', reason: 'fine', by: 'lea' });
    clear(story, idOf(entry));
    expect(story.floor()).toMatchObject({ conflicts: new Map(), blocks: new Map() });
  });
});

describe('a sweep', () => {
  test('collects the slots seen while it lasts, each once', () => {
    const story = begun();
    load(story, 'M1-F-001', 'K1');
    story.tell('sweep.started', { line: 'L1', sweep: 's1' });
    load(story, 'M1-F-001', 'K1', { act: 'sweep' });
    load(story, 'M1-F-001', 'K1', { act: 'sweep' });
    load(story, 'M1-F-002', 'K2', { act: 'sweep', verdict: 'refused' });
    load(story, 'M1-R-003', 'K3');
    story.tell('sweep.ended', { line: 'L1', sweep: 'another', seen: 0, missing: [] });
    expect(story.floor().sweeps.get('L1')).toMatchObject({ seen: ['M1-F-001', 'M1-R-003'], endedMs: null });
    story.tell('sweep.ended', { line: 'L1', sweep: 's1', seen: 2, missing: [] });
    load(story, 'M1-F-010', 'K4');
    expect(story.floor().sweeps.get('L1')).toMatchObject({
      seen: ['M1-F-001', 'M1-R-003'],
      endedMs: expect.any(Number),
    });
    expect(reelsOn(slotOf(story.floor(), 'M1-F-001'))).toEqual(['K1']);
  });
});

describe('a warning', () => {
  test('keeps the newest level raised and who took note of which', () => {
    const story = begun();
    const at = { line: 'L1', slot: 'M1-F-001', need: 'splice' };
    story.tell('warning.raised', { ...at, level: 'soon', due: '2026-03-02T07:00:00Z' });
    story.tell('warning.acknowledged', { ...at, level: 'soon' }, { who: 'bo' });
    story.tell('warning.raised', { ...at, level: 'due', due: '2026-03-02T06:50:00Z' });
    const floor = story.floor();
    expect(floor.raised.get(needKey('L1', 'M1-F-001', 'splice'))).toMatchObject({
      level: 'due',
      due: '2026-03-02T06:50:00Z',
    });
    expect(floor.acknowledged.get(needKey('L1', 'M1-F-001', 'splice'))).toMatchObject({
      level: 'soon',
      by: 'bo',
    });
  });
});

test('taking a setup twice keeps the newer record under its name', () => {
  const story = begun();
  story.tell('setup.taken', { ...brookSetup, revision: 'B', slots: [] });
  expect(story.floor().setups.get('brook-top-a')).toMatchObject({ revision: 'B', slots: [] });
});
