// What machines tell of tapes: a joint that passed sets the old reel to none and the new one to its count; where machine and scans differ
// both are kept and nothing is counted; spoiled parts are evidence of a loss. The joint's doubt goes on into the trace.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PayloadOf } from '../../../shared/floor/kinds.ts';
import { lossOn, slotEstimate } from '../../../shared/floor/remaining.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { pickFaults, pickFaultsOn } from '../../../shared/outlook/losses.ts';
import { type PanelBound, traceLog } from '../../../shared/trace/stretches.ts';
import { beginStory, counted, idOf, type Story, started, tellPlant, verified } from './story.ts';

const slot = 'M1-F-001';
const load = (story: Story, reel: string, more: Parameters<typeof verified>[2] = {}) =>
  story.tell('reel.verified', verified(slot, 'R-100', { reel, lot: `LOT-${reel}`, ...more }));
const build = (story: Story, panels: number) => story.tell('panels.counted', counted('r1', panels));

/** A line whose first slot has a tape of 100 and one of 200 joined to it, 40 panels of two parts each built. */
function begun(rules: { readonly loss?: number } = {}): Story {
  const story = beginStory();
  tellPlant(story, { rules });
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '0.1.0', address: '' } as const;
  story.tell('station.known', { station: 'placer', line: 'L1', ...known });
  load(story, 'K1', { quantity: 100 });
  story.tell('run.started', started('r1'));
  build(story, 40);
  load(story, 'K2', { quantity: 200, act: 'splice', run: 'r1' });
  build(story, 7);
  return story;
}

const joint = (story: Story, more: Partial<PayloadOf<'tape.changed'>> = {}): Entry =>
  story.tell(
    'tape.changed',
    {
      station: 'placer',
      line: 'L1',
      slot: 'SLOT1',
      depleted: 'K1',
      active: 'K2',
      feeder: null,
      quantity: 190,
      grey: 0,
      late: 0,
      ...more,
    },
    { tablet: 'LINK', who: null },
  );

function left(story: Story) {
  const floor = story.floor();
  const there = floor.slots.get(`L1/${slot}`);
  if (!there) throw new Error('nothing on the slot');
  const estimate = slotEstimate(floor, there);
  const parts = estimate.parts === null ? null : Math.round(estimate.parts);
  return { ...estimate, parts, exact: estimate.parts, reels: there.tapes.map(({ reel }) => reel) };
}
const found = (story: Story) => story.floor().stations.get('placer')?.found;
const reelOf = (story: Story, reel: string) => story.floor().reels.get(reel);
const bound = ({ sure, possible }: PanelBound) => ({ sure, possible });
const shapes = (story: Story) =>
  traceLog([...story.entries].sort(compareEntries)).stretches.flatMap((stretch) =>
    stretch.slot === slot
      ? [[stretch.reel, bound(stretch.from), stretch.to && bound(stretch.to)] as const]
      : [],
  );

describe('a joint that a machine saw pass', () => {
  test('sets the old reel to none and the new one to its count, whatever was counted down', () => {
    const story = begun();
    expect(left(story)).toMatchObject({ parts: 300 - 94, reels: ['K1', 'K2'] });
    joint(story);
    expect(left(story)).toMatchObject({ parts: 200, reels: ['K2'] });
    expect(reelOf(story, 'K1')).toMatchObject({ count: 0, at: null });
    expect(reelOf(story, 'K2')).toMatchObject({ count: 200, at: { slot } });
    build(story, 10);
    // Less what the tape before has shown to be lost.
    expect(left(story).exact).toBeCloseTo(179.5, 1);
    expect(found(story)).toEqual([]);
  });

  test('shows what the feeder lost on the tapes before it', () => {
    const story = begun();
    joint(story);
    // 47 panels of two parts out of a reel of 100.
    expect(story.floor().finished.get('R-100')).toMatchObject([
      { told: 'count', startParts: 100, endParts: 0, placements: 94 },
    ]);
  });

  test('takes the grey parts as doubt of the count', () => {
    const [sharp, grey] = [begun(), begun()];
    joint(sharp);
    joint(grey, { grey: 30 });
    expect(left(grey).parts).toBe(left(sharp).parts);
    expect(left(grey).sd ** 2 - left(sharp).sd ** 2).toBeCloseTo(300, 6);
  });

  test('takes the machine’s number where no label gave one, and names it so', () => {
    const story = beginStory();
    tellPlant(story);
    load(story, 'K1', { quantity: 100 });
    story.tell('run.started', started('r1'));
    build(story, 40);
    load(story, 'K2', { quantity: null, act: 'splice', run: 'r1' });
    expect(left(story).parts).toBeNull();
    joint(story, { quantity: 190 });
    expect(left(story).parts).toBe(190);
    expect(reelOf(story, 'K2')).toMatchObject({ count: 190, basis: 'machine' });
  });

  test('told again adds nothing, and taken back leaves what was', () => {
    const story = begun();
    const told = joint(story);
    build(story, 10);
    joint(story);
    expect(left(story).exact).toBeCloseTo(179.5, 1);
    expect(found(story)).toEqual([]);
    const alone = begun();
    const wrong = joint(alone);
    alone.tell('entry.corrected', {
      of: idOf(wrong),
      line: 'L1',
      slot: null,
      reason: 'the sensor was dirty',
    });
    expect(left(alone)).toMatchObject({ parts: 300 - 94, reels: ['K1', 'K2'] });
    expect(idOf(told)).not.toBe('');
  });

  test('counts nothing where machine and scans name other reels, or it is told late: both are kept', () => {
    const cases: readonly (readonly [Partial<PayloadOf<'tape.changed'>>, object])[] = [
      [
        { active: 'K9', depleted: 'K1' },
        { what: 'tape-differs', slot, machine: 'K9', here: 'K2' },
      ],
      [{ depleted: 'K8' }, { what: 'tape-differs', slot, machine: 'K2', here: 'K2' }],
      [{ late: 61 }, { what: 'told-late', slot, machine: 'K2' }],
      [
        { active: 'K9', depleted: 'K8' },
        { what: 'tape-differs', slot: 'SLOT1', machine: 'K9', here: null },
      ],
    ];
    for (const [more, says] of cases) {
      const story = begun();
      joint(story, more);
      expect(left(story)).toMatchObject({ parts: 300 - 94, reels: ['K1', 'K2'] });
      expect(found(story)).toMatchObject([says]);
    }
  });

  test('without reels’ names it is the one joint on the slot that the machine names', () => {
    const story = begun();
    joint(story, { depleted: null, active: null, slot });
    expect(left(story)).toMatchObject({ parts: 200, reels: ['K2'] });
  });

  test('ends the trace’s doubt: the panel at work, and those that the grey parts reach', () => {
    const before = begun();
    const [, second] = shapes(before);
    expect(second?.[1].sure).toBeGreaterThan(52);
    const story = begun();
    joint(story);
    expect(shapes(story)).toEqual([
      ['K1', { sure: 1, possible: 1 }, { sure: 47, possible: 48 }],
      ['K2', { sure: 49, possible: 48 }, null],
    ]);
    const grey = begun();
    joint(grey, { grey: 6 });
    build(grey, 20);
    expect(shapes(grey)).toEqual([
      ['K1', { sure: 1, possible: 1 }, { sure: 47, possible: 51 }],
      ['K2', { sure: 52, possible: 48 }, null],
    ]);
  });
});

test('the trace never leaves out the lot that a panel truly carries', () => {
  fc.assert(
    fc.property(
      fc.record({
        off: fc.integer({ min: -3, max: 6 }),
        panels: fc.integer({ min: 30, max: 45 }),
        grey: fc.integer({ min: 0, max: 24 }),
        into: fc.double({ min: 0, max: 1, noNaN: true }),
        after: fc.integer({ min: 13, max: 30 }),
      }),
      ({ off, panels, grey, into, after }) => {
        // The old tape truly gives so many parts more; its label is a little off, or parts were lost.
        const more = Math.round(into * grey);
        const label = 2 * panels + more + off;
        const story = beginStory();
        tellPlant(story);
        story.tell('line.panels-ruled', {
          line: 'L1',
          machines: [{ machine: 'M1', least: 0, most: 0 }],
          missed: 0,
        });
        load(story, 'K1', { quantity: label });
        story.tell('run.started', started('r1'));
        build(story, panels);
        load(story, 'K2', { quantity: 200, act: 'splice', run: 'r1' });
        joint(story, { grey });
        build(story, after);
        // A panel takes two.
        const lastOfOld = panels + Math.ceil(more / 2);
        const firstOfNew = panels + Math.floor(more / 2) + 1;
        const [old, next] = shapes(story);
        expect(old?.[2]?.possible).toBeGreaterThanOrEqual(lastOfOld);
        expect(old?.[2]?.sure).toBeLessThanOrEqual(lastOfOld);
        expect(next?.[1].possible).toBeLessThanOrEqual(firstOfNew);
        expect(next?.[1].sure).toBeGreaterThanOrEqual(firstOfNew);
      },
    ),
  );
});

describe('parts that a machine placed and spoiled', () => {
  const use = (story: Story, used: number, spoiled: number, reel: string | null = 'K1') =>
    story.tell('parts.used', {
      station: 'placer',
      line: 'L1',
      uses: [{ slot: 'SLOT1', reel, feeder: null, used, spoiled }],
    });

  test('are evidence of the loss while the tapes are on, summed, until a count takes their place', () => {
    const story = begun();
    const prior = lossOf(story);
    use(story, 5_000, 50);
    use(story, 4_000, 40);
    expect(story.floor().finished.get('R-100')).toMatchObject([
      { told: 'machine', startParts: 9_090, endParts: 0, placements: 9_000 },
    ]);
    expect(Math.abs(lossOf(story) - 90 / 9_090)).toBeLessThan(0.002);
    expect(lossOf(story)).toBeGreaterThan(prior);
    joint(story);
    expect(story.floor().finished.get('R-100')).toMatchObject([{ told: 'count', startParts: 100 }]);
    use(story, 1_000, 10, 'K2');
    expect(story.floor().finished.get('R-100')).toMatchObject([
      { told: 'count' },
      { told: 'machine', placements: 1_000 },
    ]);
  });

  test('of a reel that the scans know nothing of teach nothing', () => {
    const story = begun();
    use(story, 5_000, 50, 'K9');
    expect(story.floor().finished.get('R-100')).toBeUndefined();
  });

  function lossOf(story: Story): number {
    const { alpha, beta } = lossOn(story.floor(), { line: 'L1', part: 'R-100', feeder: '', slot });
    return alpha / (alpha + beta);
  }
});

describe('what a machine says of moisture-sensitive reels', () => {
  const says = (story: Story, what: PayloadOf<'parts.aired'>['says'], reels: readonly string[], late = 0) =>
    story.tell('parts.aired', { station: 'placer', line: 'L1', says: what, late, reels: [...reels] });

  test('is an exposure of reels that are known here, from when it was; of others nothing', () => {
    const story = begun();
    const opened = says(story, 'opened', ['K1', 'K9'], 60);
    const dry = says(story, 'put-dry', ['K1']);
    const floor = story.floor();
    const told = { celsius: null, humidity: null };
    expect(floor.exposures.get('K1')?.periods).toEqual([
      { air: 'floor', fromMs: opened.hlc.ms - 60_000, entry: idOf(opened), ...told },
      { air: 'dry', fromMs: dry.hlc.ms, entry: idOf(dry), ...told },
    ]);
    expect([floor.exposures.has('K9'), floor.reels.has('K9')]).toEqual([false, false]);
    says(story, 'taken-out', ['K1']);
    expect(
      story
        .floor()
        .exposures.get('K1')
        ?.periods.map(({ air }) => air),
    ).toEqual(['floor', 'dry', 'floor']);
    story.tell('entry.corrected', { of: idOf(dry), line: null, slot: null, reason: 'slip' });
    expect(
      story
        .floor()
        .exposures.get('K1')
        ?.periods.map(({ air }) => air),
    ).toEqual(['floor', 'floor']);
  });

  test('that a time is over, or a reel fit again, is found for people and is no period', () => {
    const story = begun();
    says(story, 'expired', ['K2', 'K9']);
    says(story, 'restored', ['K1']);
    expect(found(story)).toMatchObject([
      { what: 'life-expired', slot, machine: 'K2' },
      { what: 'life-restored', machine: 'K1' },
    ]);
    expect(story.floor().exposures.size).toBe(0);
  });
});

describe('faults of picking that a machine told', () => {
  const miss = (story: Story, times: number, reel: string | null = 'K1', late = 0) =>
    story.tell('parts.missed', {
      station: 'placer',
      line: 'L1',
      late,
      misses: [{ slot: reel === null ? slot : 'SLOT1', reel, feeder: null, times }],
    });

  test('add up by slot since the first of them, and change neither count nor loss', () => {
    const story = begun();
    const before = left(story);
    miss(story, 3, 'K1', 240);
    const firstMs = story.entries.at(-1)?.hlc.ms ?? 0;
    miss(story, 4, null);
    miss(story, 9, 'K9');
    const floor = story.floor();
    expect(pickFaultsOn(floor, 'L1', slot)).toEqual({
      slot,
      feeder: null,
      times: 7,
      sinceMs: firstMs - 240_000,
    });
    expect(pickFaults(floor, 'L1')).toHaveLength(1);
    expect(pickFaults(floor, 'L2')).toEqual([]);
    expect(left(story)).toEqual(before);
    expect(floor.finished.size).toBe(0);
    for (const other of ['F10', 'F2']) {
      story.tell('reel.verified', verified(other, 'X-1', { reel: other }));
      const misses = [{ slot: other, reel: other, feeder: null, times: 1 }];
      story.tell('parts.missed', { station: 'placer', line: 'L1', late: 0, misses });
    }
    expect(
      pickFaults(story.floor(), 'L1').map((each) => each.slot),
      'equal ones in walking order',
    ).toEqual([slot, 'F2', 'F10']);
  });

  test('of another feeder, or of the run before, are not said of what stands there now', () => {
    const story = begun();
    miss(story, 3);
    load(story, 'K5', { quantity: 500, feeder: 'F-7', run: 'r1' });
    expect(pickFaultsOn(story.floor(), 'L1', slot)).toBeNull();
    miss(story, 2, 'K5');
    expect(pickFaultsOn(story.floor(), 'L1', slot)).toMatchObject({ feeder: 'F-7', times: 2 });
    story.tell('run.started', started('r2'));
    expect(pickFaultsOn(story.floor(), 'L1', slot)).toBeNull();
    miss(story, 1, 'K5');
    expect(pickFaultsOn(story.floor(), 'L1', slot)).toMatchObject({ times: 1 });
  });
});

describe('a place that a machine calls empty', () => {
  const empty = (story: Story, reel: string | null, late = 0) =>
    story.tell('tape.empty', { station: 'placer', line: 'L1', slot, reel, feeder: null, late });

  test('is found where the log has parts left, with both; not where it agrees or speaks of a tape before', () => {
    const story = begun();
    empty(story, 'K1');
    expect(found(story)).toEqual([]);
    build(story, 60);
    empty(story, 'K1');
    expect(found(story)).toEqual([]);
    empty(story, 'K2');
    expect(found(story)).toMatchObject([
      { what: 'empty-early', slot, machine: 'K2', here: 'K2', parts: 300 - 214 },
    ]);
    empty(story, 'K7');
    expect(found(story)?.slice(1)).toMatchObject([{ what: 'tape-differs', machine: 'K7', here: 'K2' }]);
    expect(left(story).parts).toBe(300 - 214);
  });

  test('says nothing of now where it is told late', () => {
    const story = begun();
    build(story, 60);
    empty(story, 'K2', 120);
    expect(found(story)).toEqual([]);
  });
});

describe('a finding', () => {
  const clear = (story: Story, finding: string) =>
    story.tell('station.finding-cleared', {
      station: 'placer',
      line: 'L1',
      finding,
      reason: 'looked at: the scan was right',
      by: 'lea',
      checked: 'tablet',
    });

  test('is gone when a lead says that it is done, and only that one; the next of its slot stands again', () => {
    const story = begun();
    const first = joint(story, { active: 'K8', depleted: 'K7' });
    joint(story, { active: 'K9', depleted: 'K7' });
    expect(found(story)?.map(({ machine }) => machine)).toEqual(['K8', 'K9']);
    clear(story, 'nothing of the log');
    clear(story, idOf(first));
    expect(found(story)?.map(({ machine }) => machine)).toEqual(['K9']);
    joint(story, { active: 'K8', depleted: 'K7' });
    expect(found(story)?.map(({ machine }) => machine)).toEqual(['K9', 'K8']);
  });

  test('stands where the station is called otherwise, and its name outlives its link’s next start', () => {
    const story = begun();
    joint(story, { active: 'K8', depleted: 'K7' });
    story.tell('station.named', { station: 'placer', line: 'L1', name: 'First placer' });
    const known = { machine: 'M1', at: 'work', means: 'ipc2591', version: '0.2.0', address: '' } as const;
    story.tell('station.known', { station: 'placer', line: 'L1', ...known });
    expect(story.floor().stations.get('placer')).toMatchObject({ name: 'First placer', version: '0.2.0' });
    expect(found(story)).toHaveLength(1);
    // Nobody knows such a station: nothing is made of it.
    story.tell('station.named', { station: 'ghost', line: 'L1', name: 'Ghost' });
    expect(story.floor().stations.has('ghost')).toBe(false);
  });
});
