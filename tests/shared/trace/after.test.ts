// What was placed after a moment, and what a reel is on where panels are counted before they reach the machine, or where it came when the
// run was over.

import { describe, expect, test } from 'vitest';
import { entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { tracePlaces } from '../../../shared/trace/ask.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';

const slot = 'M1-F-001';

/** A reel on its slot, a run begun; so many panels lie between the machine and the count. */
function begun(least: number, most: number): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', { line: 'L1', machines: [{ machine: 'M1', least, most }], missed: 0 });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', lot: 'LA', quantity: 50_000 }));
  story.tell('run.started', started('r1'), { at: 100 });
  return story;
}
const scan = (story: Story, from: number, to: number, run = 'r1') => {
  for (let panel = from; panel <= to; panel++)
    story.tell('panels.counted', counted(run, 1, `PN${panel}`), { at: 200 + panel });
};
const indexOf = (story: Story) => traceLog([...story.entries].sort(compareEntries));
const placedAfter = (story: Story, second: number) =>
  suspectPanels(indexOf(story), {
    cause: 'floor-life',
    material: { reel: 'K1' },
    afterMs: startMs + second * 1000,
  }).runs.map(({ run, possible, sure }) => ({ run, possible, sure }));

describe('what was placed after a moment', () => {
  test('is all of a run that began later, and nothing of one that was over before', () => {
    const story = begun(0, 2);
    scan(story, 1, 5);
    expect(placedAfter(story, 50)).toEqual([
      { run: 'r1', possible: { first: 1, last: 8 }, sure: { first: 1, last: 5 } },
    ]);
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 5, note: '' }, { at: 300 });
    expect(placedAfter(story, 301)).toEqual([]);
  });

  test('is sure only from behind the panels that had passed uncounted; before the first count none had been', () => {
    const story = begun(0, 2);
    scan(story, 1, 9);
    // The first was counted next; two more may have passed and one been at work.
    expect(placedAfter(story, 150)).toMatchObject([{ possible: { first: 1 }, sure: { first: 5, last: 9 } }]);
    expect(placedAfter(story, 204)).toMatchObject([{ possible: { first: 5 }, sure: { first: 9, last: 9 } }]);
  });

  test('may be any panel where the counts of that time are no longer kept', () => {
    const story = begun(0, 2);
    scan(story, 1, 600);
    const kept = story.floor().runs.get('r1')?.counts.length ?? 0;
    expect(kept).toBeLessThan(600);
    expect(placedAfter(story, 210)).toMatchObject([{ possible: { first: 1 }, sure: null }]);
  });
});

describe('where a reel is', () => {
  test('is not sure for panels that are counted before they reach the machine, while the run goes on', () => {
    const story = begun(-3, 0);
    scan(story, 1, 10);
    const sure = () => tracePlaces(indexOf(story), { reel: 'K1' })[0]?.sure;
    expect(sure()).toMatchObject({ last: 7 });
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 10, note: '' }, { at: 300 });
    expect(sure()).toMatchObject({ last: 10 });
  });

  test('is told without a panel where it came in the run, and not at all where it came when that was over', () => {
    const story = begun(0, 0);
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LB', run: 'r1' }), {
      at: 150,
    });
    const runs = (reel: string) => tracePlaces(indexOf(story), { reel }).map(({ run }) => run);
    expect(runs('K2')).toEqual(['r1']);
    scan(story, 1, 3);
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 3, note: '' }, { at: 300 });
    story.tell('reel.unloaded', unloaded(slot, { reel: 'K1', part: 'R-100', lot: 'LA' }), { at: 310 });
    story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K3', lot: 'LC' }), { at: 320 });
    expect(runs('K1')).toEqual(['r1']);
    expect(runs('K3')).toEqual([]);
  });
});

describe('a wrong reel found after the next run began', () => {
  /** Ten panels, then the next run: right at its start, wrong after two panels more. */
  const foundIn = (least: number, setup: string, between: (story: Story) => void = () => undefined) => {
    const story = begun(least, 0);
    scan(story, 1, 10);
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 10, note: '' }, { at: 300 });
    between(story);
    story.tell('setup.taken', { ...brookSetup, setup: 'other' }, { at: 330 });
    story.tell('run.started', started('r2', { setup }), { at: 340 });
    const sweep = (reel: string, more = {}) =>
      story.tell(
        'reel.verified',
        verified(slot, 'R-100', { act: 'sweep', reel, lot: 'LA', setup, ...more }),
        {
          at: 350,
        },
      );
    sweep('K1');
    for (const panel of [1, 2])
      story.tell('panels.counted', counted('r2', 1, `QN${panel}`), { at: 360 + panel });
    const finding = entryId(sweep('X1', { part: 'C-200', lot: 'LX', verdict: 'refused' }));
    return suspectPanels(indexOf(story), { cause: 'wrong-reel', finding }).runs.map(({ run, possible }) => ({
      run,
      possible,
    }));
  };

  test('may be on the last panels of the run before, where they are counted first and the run went on', () => {
    expect(foundIn(-3, 'brook-top-a')).toEqual([
      { run: 'r1', possible: { first: 8, last: 10 } },
      { run: 'r2', possible: { first: 1, last: 3 } },
    ]);
  });

  test('is on none of them where panels are counted last, where the setup is another, or where a run lay between', () => {
    const inNext = (runs: ReturnType<typeof foundIn>) => runs.map(({ run }) => run);
    expect(inNext(foundIn(0, 'brook-top-a'))).toEqual(['r2']);
    expect(inNext(foundIn(-3, 'other'))).toEqual(['r2']);
    const rx = (story: Story) => {
      story.tell('run.started', started('rx'), { at: 310 });
      story.tell('panels.counted', counted('rx', 5), { at: 315 });
      story.tell('run.ended', { run: 'rx', line: 'L1', panels: 5, note: '' }, { at: 320 });
    };
    expect(inNext(foundIn(-3, 'brook-top-a', rx))).toEqual(['rx', 'r2']);
  });
});
