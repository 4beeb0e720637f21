// Where joints and stays lie when things come in another order than they were done: counts entered late or many at once, entries taken
// back, runs that go on. Told by hand; one machine, counted where it lets panels go unless said otherwise.

import { describe, expect, test } from 'vitest';
import type { PanelBound } from '../../../shared/trace/stretches.ts';
import { brookSetup, counted, idOf, type Story, started, unloaded, wantedSlot } from '../floor/story.ts';
import { begun, build, end, enter, indexOf, load, placesOf, slot, splice } from './line-story.ts';

const INFINITE = Number.POSITIVE_INFINITY;

/** A true count of what is on the slot, to the part. */
const count = (story: Story, quantity: number, panels: number) =>
  story.tell('reel.counted', {
    line: 'L1',
    slot,
    reel: null,
    part: 'R-100',
    lot: null,
    quantity,
    sd: 0,
    basis: 'machine',
    panels,
  });

const bound = (of: PanelBound | null) => of && [of.sure, of.possible];
const stays = (story: Story, run?: string) =>
  indexOf(story)
    .stretches.filter((stretch) => stretch.slot === slot && (run === undefined || stretch.run === run))
    .map(({ reel, from, to }) => [reel, bound(from), bound(to)]);

describe('a joint', () => {
  test('keeps what may have happened when a later count says that it comes later', () => {
    const story = begun();
    load(story, 'K1', { quantity: 100 });
    story.tell('run.started', started('r1'));
    build(story, 40);
    splice(story, 'K2', { quantity: 1000 });
    // One deviation is a part: 100 − 4.75 − 80 ÷ 0.9 = 6.36 parts are two panels, 24.75 are 12.4, and one may have been at work.
    expect(stays(story)).toEqual([
      ['K1', [1, 1], [42, 54]],
      ['K2', [55, 43], null],
    ]);
    // Two panels later 100 parts are counted on the first: the joint lies 45 to 51 panels from there, and may have passed at 42 all the same.
    build(story, 2);
    count(story, 100, 42);
    expect(stays(story)).toEqual([
      ['K1', [1, 1], [42, 93]],
      ['K2', [94, 43], null],
    ]);
  });

  test('keeps what may have happened when a later count says that it came sooner', () => {
    const story = begun();
    load(story, 'K1', { quantity: 100 });
    story.tell('run.started', started('r1'));
    build(story, 40);
    splice(story, 'K2', { quantity: 1000 });
    build(story, 2);
    // Four parts are left on the first: two panels and the one at work. It was told as late as 54.
    count(story, 4, 42);
    expect(stays(story)).toEqual([
      ['K1', [1, 1], [42, 54]],
      ['K2', [55, 43], null],
    ]);
  });

  test('told before panels that are entered many at once may lie as much later', () => {
    const told = (isTogether: boolean) => {
      const story = begun();
      load(story, 'K1', { quantity: null });
      story.tell('run.started', started('r1'));
      build(story, 20);
      story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1' }));
      load(story, 'K2', { run: 'r1' });
      if (isTogether) enter(story, 10);
      else build(story, 10);
      return [...placesOf(story, 'K1'), ...placesOf(story, 'K2')];
    };
    expect(told(false)).toEqual([
      ['r1', [1, 20], [1, 21]],
      ['r1', [22, 30], [21, 30]],
    ]);
    expect(told(true)).toEqual([
      ['r1', [1, 20], [1, 30]],
      ['r1', null, [21, 30]],
    ]);
  });

  test('by a count that has only begun hangs on what is entered next', () => {
    const told = (...adds: readonly number[]) => {
      const story = begun();
      load(story, 'K1', { quantity: 100 });
      story.tell('run.started', started('r1'));
      build(story, 1);
      count(story, 20, 1);
      splice(story, 'K2', { quantity: 1000 });
      for (const add of adds) enter(story, add);
      return placesOf(story, 'K1')[0]?.[2];
    };
    // 20 parts are ten panels; one was counted, one at work.
    expect(told(...Array.from({ length: 20 }, () => 1))).toEqual([1, 12]);
    // Five entered at once: four of them may have passed before the count.
    expect(told(5, ...Array.from({ length: 15 }, () => 1))).toEqual([1, 16]);
  });
});

describe('a held reel that a lead cleared', () => {
  test('may have been put on as soon as it was held', () => {
    const story = begun();
    load(story, 'K1', { quantity: 1000 });
    story.tell('run.started', started('r1'));
    build(story, 5);
    story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1' }));
    const held = load(story, 'K2', {
      verdict: 'held',
      reasons: [{ code: 'expired' }],
      run: 'r1',
      quantity: 100,
    });
    build(story, 7);
    story.tell('hold.cleared', {
      of: idOf(held),
      line: 'L1',
      slot,
      reason: 'good',
      by: 'lead',
      checked: 'tablet',
    });
    build(story, 60);
    // Held after five panels, cleared after twelve; the one at work in doubt.
    expect(placesOf(story, 'K2')).toEqual([['r1', [14, 72], [6, 72]]]);
    expect(placesOf(story, 'K1')).toEqual([['r1', [1, 5], [1, 6]]]);
    // 95.25 parts at least less 120 ÷ 0.9 ended 19 panels ago, and seven more may have drawn on it before it was counted on: 72 − 26 = 46.
    splice(story, 'K3', { quantity: 500 });
    build(story, 3);
    expect(placesOf(story, 'K3')[0]?.[2]).toEqual([46, 75]);
  });
});

describe('runs one after the other', () => {
  test('what came on where panels are counted first concerns the last of the run before, if that went on', () => {
    const told = (setup: string, at: number) => {
      const story = begun(-3, 0);
      story.tell('setup.taken', { ...brookSetup, setup: 'other' });
      load(story, 'K1', { quantity: 5000 });
      story.tell('run.started', started('r1'));
      build(story, 10);
      end(story, 'r1', 10);
      story.tell('run.started', started('r2', { setup }));
      build(story, at, 'r2');
      story.tell('reel.unloaded', unloaded(slot, { run: 'r2', reel: 'K1' }));
      load(story, 'K2', { run: 'r2', setup });
      build(story, 5, 'r2');
      return [placesOf(story, 'K1'), placesOf(story, 'K2')];
    };
    // One of the next run was counted; it and two of the run before may not have been at the machine yet.
    expect(told('brook-top-a', 1)).toEqual([
      [
        ['r1', [1, 7], [1, 10]],
        ['r2', null, [1, 2]],
      ],
      [
        ['r1', null, [9, 10]],
        ['r2', [3, 3], [1, 6]],
      ],
    ]);
    // After four none of the run before is left before it.
    expect(told('brook-top-a', 4)[1]).toEqual([['r2', [6, 6], [2, 9]]]);
    // A line that starts another setup is empty.
    expect(told('other', 1)[1]).toEqual([['r2', [3, 3], [1, 6]]]);
  });

  test('what came on before a run’s first count reaches past a short run into the one before it', () => {
    const story = begun(-3, 0);
    load(story, 'K1', { quantity: 5000 });
    for (const [run, panels] of [
      ['r1', 5],
      ['r2', 1],
    ] as const) {
      story.tell('run.started', started(run));
      build(story, panels, run);
      end(story, run, panels);
    }
    story.tell('run.started', started('r3'));
    story.tell('reel.unloaded', unloaded(slot, { run: 'r3', reel: 'K1' }));
    load(story, 'K2', { run: 'r3' });
    build(story, 5, 'r3');
    // Three panels were counted and had not reached the machine: the one of the second run, and the last two of the first.
    expect(placesOf(story, 'K2').map(([run, , possible]) => [run, possible])).toEqual([
      ['r1', [4, 5]],
      ['r2', [1, 1]],
      ['r3', [1, 5]],
    ]);
  });

  test('panels of an ended run that are counted late carry what stood there', () => {
    const story = begun(0, 2);
    load(story, 'K1', { quantity: 5000 });
    story.tell('run.started', started('r1'), { at: 100 });
    build(story, 10);
    end(story, 'r1', 10);
    story.tell('run.started', started('r2'), { at: 200 });
    build(story, 3, 'r2');
    story.tell('panels.counted', counted('r1', 2), { at: 190, tablet: 'T2' });
    expect(placesOf(story, 'K1')).toEqual([
      ['r1', [1, 12], [1, 12]],
      ['r2', [1, 3], [1, 3]],
    ]);
  });

  test('what went off late is on the first panels of a run that goes on, and on none of another setup', () => {
    const told = (setup: string, isTogether = false) => {
      const story = begun(0, 2);
      story.tell('setup.taken', { ...brookSetup, setup: 'other' });
      load(story, 'K1', { quantity: 5000 });
      story.tell('run.started', started('r1'));
      build(story, 10);
      story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1' }));
      load(story, 'K2', { run: 'r1', quantity: 5000 });
      end(story, 'r1', 10);
      story.tell('run.started', started('r2', { setup }));
      if (isTogether) story.tell('panels.counted', counted('r2', 8));
      else build(story, 8, 'r2');
      return [placesOf(story, 'K1'), placesOf(story, 'K2')];
    };
    // Ten were counted, two more had passed and one was at work as K1 came off.
    expect(told('brook-top-a')).toEqual([
      [
        ['r1', [1, 10], [1, 10]],
        ['r2', null, [1, 3]],
      ],
      [
        ['r1', null, null],
        ['r2', [4, 8], [1, 8]],
      ],
    ]);
    // Had seven of the eight passed before they were entered, it came off as much later.
    expect(told('brook-top-a', true)[0]?.[1]).toEqual(['r2', null, [1, 8]]);
    expect(told('other')).toEqual([
      [['r1', [1, 10], [1, 10]]],
      [
        ['r1', null, null],
        ['r2', [1, 8], [1, 8]],
      ],
    ]);
  });
});

test('slots used in turn leave a joint open, however the counts stand', () => {
  const story = begun();
  const slots = [wantedSlot(slot, 'R-100', { turn: 1 }), wantedSlot('M1-F-002', 'R-100', { turn: 2 })];
  story.tell('setup.taken', { ...brookSetup, setup: 'turns', slots });
  story.tell('setup.chosen', { line: 'L1', setup: 'turns' });
  load(story, 'K1', { quantity: 20, setup: 'turns' });
  story.tell('run.started', started('r1', { setup: 'turns' }));
  build(story, 5);
  splice(story, 'K2', { quantity: 500, setup: 'turns' });
  build(story, 50);
  expect(stays(story)).toEqual([
    ['K1', [INFINITE, 1], [5, INFINITE]],
    ['K2', [INFINITE, 6], null],
  ]);
});
