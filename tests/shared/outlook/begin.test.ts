// Reels that begin short, by hand-worked times: lead 10 min, 2 placements a panel at 30 s a panel, so a panel takes 2 parts.

import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { beginsShort, lastRunLike } from '../../../shared/outlook/begin.ts';

import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const [one, two] = ['M1-F-001', 'M1-F-002'] as const;
const nowMs = startMs + 3600_000;

function loaded(counts: readonly [number | null, number]): Story {
  const story = beginStory();
  tellPlant(story, { rules: { loss: 0.0001 } });
  story.tell('setup.taken', {
    setup: 'small',
    product: 'brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    slots: [wantedSlot(one, 'R-100'), wantedSlot(two, 'R-200')],
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'small' });
  [one, two].forEach((slot, at) => {
    const facts = verified(slot, at === 0 ? 'R-100' : 'R-200', {
      reel: `K${at}`,
      quantity: counts[at] ?? null,
    });
    story.tell('reel.verified', { ...facts, setup: 'small' });
  });
  return story;
}

function short(story: Story, planned?: { panelsWanted: number; panelSeconds: number }): readonly string[] {
  const floor = story.floor();
  const at = { nowMs, calendar: lineCalendar(floor, 'L1', nowMs), ...(planned && { planned }) };
  return beginsShort(floor, 'L1', at).map(({ slot }) => slot);
}

describe('before a run', () => {
  test('a reel that lasts less than the lead begins short; one that lasts longer does not', () => {
    // 20 parts are 10 panels, 5 min; 200 parts are 100 panels, 50 min.
    expect(short(loaded([20, 200]), { panelsWanted: 500, panelSeconds: 30 })).toEqual([one]);
  });

  test('none does where the run is done before, or a panel takes longer', () => {
    expect(short(loaded([20, 200]), { panelsWanted: 5, panelSeconds: 30 })).toEqual([]);
    // 10 panels at 5 min are 50 min.
    expect(short(loaded([20, 200]), { panelsWanted: 500, panelSeconds: 300 })).toEqual([]);
  });

  test('the last panel wanted is the one that decides, none of them built yet', () => {
    const story = loaded([20, 4000]);
    const certain = {
      line: 'L1',
      slot: one,
      reel: 'K0',
      part: 'R-100',
      lot: null,
      panels: 0,
      sd: 0,
    } as const;
    story.tell('reel.counted', { ...certain, quantity: 20, basis: 'machine' });
    // 20 parts, counted for certain, are 10 panels.
    expect(short(story, { panelsWanted: 10, panelSeconds: 30 })).toEqual([]);
    expect(short(story, { panelsWanted: 11, panelSeconds: 30 })).toEqual([one]);
  });

  test('speaks of the soonest first, and takes a line that never built for one at 30 s a panel', () => {
    // 38 and 20 parts are 19 and 10 panels: 570 s and 300 s, less than the lead of 600 s.
    expect(short(loaded([38, 20]))).toEqual([two, one]);
    // 41 parts are 615 s, and 590 s where the label is a part and a half off.
    expect(short(loaded([41, 4000]))).toEqual([one]);
    // 60 parts are 900 s.
    expect(short(loaded([60, 4000]))).toEqual([]);
  });

  test('says nothing where no setup is chosen', () => {
    const story = beginStory();
    tellPlant(story);
    const floor = story.floor();
    floor.chosen.clear();
    expect(beginsShort(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) })).toEqual([]);
  });

  test('a reel kept from the last run counts with what that took', () => {
    const story = loaded([200, 4000]);
    const run = started('run-1', { setup: 'small', panelsWanted: 100, panelSeconds: 30 });
    story.tell('run.started', run);
    story.tell('panels.counted', counted('run-1', 90));
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 90, note: '' });
    // 200 less 180 are 10 panels. Without a plan the next run is taken to be like the last: 100 panels at 30 s.
    expect(short(story)).toEqual([one]);
    expect(lastRunLike(story.floor(), 'L1')?.run).toBe('run-1');
  });

  test('a reel without a count says nothing', () => {
    expect(short(loaded([null, 20]), { panelsWanted: 500, panelSeconds: 30 })).toEqual([two]);
  });
});

describe('the last run like the next', () => {
  test('is the newest of the chosen setup before any newer one of another', () => {
    const story = loaded([4000, 4000]);
    for (const [run, setup] of [
      ['run-1', 'small'],
      ['run-2', 'small'],
      ['run-3', 'other'],
    ] as const)
      story.tell('run.started', started(run, { setup, panelsWanted: 100 }));
    story.tell('setup.chosen', { line: 'L1', setup: 'small' });
    expect(lastRunLike(story.floor(), 'L1')?.run).toBe('run-2');
  });

  test('is the newest of the line where none had the chosen setup, and never another line’s', () => {
    const story = loaded([4000, 4000]);
    story.tell('run.started', started('run-1', { setup: 'old' }));
    story.tell('run.started', started('run-2', { setup: 'other' }));
    story.tell('run.started', started('run-3', { setup: 'third' }));
    story.tell('run.started', started('run-x', { line: 'L2', setup: 'small' }));
    story.tell('setup.chosen', { line: 'L1', setup: 'small' });
    expect(lastRunLike(story.floor(), 'L1')?.run).toBe('run-3');
  });

  test('is none on a line that never built', () => {
    expect(lastRunLike(loaded([1, 1]).floor(), 'L1')).toBeNull();
  });
});
