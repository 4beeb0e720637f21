// The parts of "does this reel serve this slot", each alone: its age, its maker, whether any slot wants it, and what a block finds.

import { describe, expect, test } from 'vitest';
import { blockedTapes } from '../../../shared/floor/blocks.ts';
import { ageReasons, fits, wantsAnywhere } from '../../../shared/floor/fits.ts';
import { wantedOn } from '../../../shared/floor/wanted.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant, verified } from './story.ts';

const setup = 'brook-top-a';
function plant(): Story {
  const story = beginStory();
  tellPlant(story);
  return story;
}
const label = { reel: 'K-1', part: 'R-100', supplierPart: null, lot: null, dateCode: null, expires: null };
const fitOn = (story: Story, slot: string, more: object, today: string | null = '2026-03-02') => {
  const floor = story.floor();
  const wanted = wantedOn(floor, setup, slot)!;
  return fits(floor, { line: 'L1', setup, wanted }, { ...label, ...more }, { today, floorLife: null });
};
const codes = (...args: Parameters<typeof fitOn>) => fitOn(...args).reasons.map(({ code }) => code);

describe('age', () => {
  test('by the date code is asked where the day is known', () => {
    const story = plant();
    story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: 'R', months: 12 }] });
    expect(codes(story, 'M1-F-001', { dateCode: '2401' })).toEqual(['date-code-old']);
    expect(codes(story, 'M1-F-001', { dateCode: '2552' })).toEqual([]);
    expect(codes(story, 'M1-F-001', { dateCode: '2401' }, null)).toEqual([]);
  });

  test('in an oven counts in any air, and says nothing of a floor life that has no end', () => {
    const hotBakes = { hours: 100, most: 96 };
    const of = (leftSeconds: number | null, more = {}) =>
      ageReasons(
        { expires: null },
        { today: '2026-03-02', floorLife: { leftSeconds, neededSeconds: null, hotBakes, ...more } },
      ).map(({ code }) => code);
    expect(of(null)).toEqual(['bake-hours-over']);
    expect(of(1)).toEqual(['bake-hours-over']);
    expect(of(0)).toEqual(['bake-hours-over', 'floor-life-over']);
    expect(of(0, { hotBakes: null, wantsLabelTime: true })).toEqual(['label-time-missing']);
  });
});

describe('the maker’s number beside the site’s', () => {
  test('that stands for another part contradicts it, and says for which', () => {
    const story = plant();
    story.tell('supplier.approved', { supplierPart: 'S-2', part: 'U-300' });
    story.tell('supplier.approved', { supplierPart: 'S-2', part: 'C-200' });
    expect(fitOn(story, 'M1-F-001', { supplierPart: 'S-2' })).toMatchObject({
      verdict: 'held',
      reasons: [
        { code: 'part-contradicts', part: 'R-100', supplierPart: 'S-2', approvedFor: ['C-200', 'U-300'] },
      ],
    });
    expect(codes(story, 'M1-F-002', { part: 'C-200', supplierPart: 'S-2' })).not.toContain(
      'part-contradicts',
    );
  });

  test('is no maker’s number where it is the site’s own once more; two of the site’s contradict each other', () => {
    const story = plant();
    expect(fitOn(story, 'M1-F-001', { supplierPart: 'R-100' }).verdict).toBe('accepted');
    expect(fitOn(story, 'M1-F-002', { part: 'C-201', supplierPart: 'C-200' })).toMatchObject({
      verdict: 'held',
      reasons: expect.arrayContaining([
        expect.objectContaining({ code: 'part-contradicts', approvedFor: ['C-200'] }),
      ]),
    });
  });
});

describe('wantsAnywhere()', () => {
  const wants = (part: string | null, supplierPart: string | null = null, of = setup) => {
    const story = plant();
    story.tell('supplier.approved', { supplierPart: 'S-1', part: 'C-200' });
    story.tell('supplier.approved', { supplierPart: 'S-9', part: 'Z-9' });
    return wantsAnywhere(story.floor(), 'L1', of, { part, supplierPart });
  };

  test('goes by the site’s number where the label has one, whatever the maker’s says', () => {
    expect(wants('R-100')).toEqual({ part: 'R-100', isWanted: true });
    expect(wants('C-201')).toEqual({ part: 'C-201', isWanted: true });
    expect(wants('Z-9', 'S-1')).toEqual({ part: 'Z-9', isWanted: false });
  });

  test('goes by what a maker’s number was approved for where it has none, and knows nothing of others', () => {
    expect(wants(null, 'S-1')).toEqual({ part: 'C-200', isWanted: true });
    expect(wants(null, 'S-9')).toEqual({ part: 'Z-9', isWanted: false });
    expect(wants(null, 'S-?')).toBeNull();
    expect(wants(null)).toBeNull();
    expect(wants('R-100', null, 'a setup that nobody took')).toBeNull();
  });
});

describe('a blocked reel on its slot', () => {
  test('has no panels where nothing is built, and those since it came and since the block where something is', () => {
    const story = plant();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'BAD' }));
    story.tell('material.blocked', { block: 'b', reel: null, lot: 'BAD', part: null, reason: 'bent' });
    const found = () =>
      blockedTapes(story.floor(), 'L1').map(({ line: _, tape: __, block: ___, ...rest }) => rest);
    const none = { slot: 'M1-F-001', run: null, sinceLoaded: 0, sinceBlocked: 0, wasThereBefore: false };
    expect(found()).toEqual([none]);
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 4));
    expect(found()).toEqual([{ ...none, run: 'r1', sinceLoaded: 4, sinceBlocked: 4 }]);
  });
});

describe('what a line is told', () => {
  test('of its air is kept line by line', () => {
    const story = plant();
    story.tell('line.climate-ruled', { line: 'L1', celsius: 24, humidity: 45 });
    expect(story.floor().climates.get('L1')).toEqual({ celsius: 24, humidity: 45 });
    expect(story.floor().climates.has('L2')).toBe(false);
  });

  test('of a stop begins it no sooner than the stop before it ended', () => {
    const story = plant();
    story.tell('run.started', started('r1'), { at: 10 });
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '' }, { at: 100 });
    story.tell('run.resumed', { run: 'r1', line: 'L1' }, { at: 200 });
    const stoodFrom = new Date(startMs + 150_000).toISOString();
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '', stoodFrom }, { at: 300 });
    expect(
      story
        .floor()
        .runs.get('r1')
        ?.stops.map(([from]) => (from - startMs) / 1000),
    ).toEqual([100, 200]);
  });

  test('of a full reel keeps what was measured and what was weighed, each until it is told whole again', () => {
    const story = plant();
    const nothing = { outerMm: null, hubMm: null, massG: null, emptyG: null };
    const tell = (more: Partial<Record<keyof typeof nothing, number>>, parts = 5000) =>
      story.tell('reel.calibrated', { part: 'R-100', parts, ...nothing, ...more });
    const now = () => story.floor().fullReels.get('R-100');
    tell({ massG: 300 }); // the empty reel was not weighed
    expect(now()).toMatchObject({ measured: null, weighed: null });
    tell({ outerMm: 178, hubMm: 60 });
    tell({ massG: 300, emptyG: 90 }, 4000);
    expect(now()).toMatchObject({
      measured: { parts: 5000, outerMm: 178, hubMm: 60 },
      weighed: { parts: 4000, massG: 300, emptyG: 90 },
    });
  });
});
