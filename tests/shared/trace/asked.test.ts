// What the trace answers to who asks: of a panel, of a reel found where it should not be, of what was placed after a moment. Told by hand.

import { describe, expect, test } from 'vitest';
import { tracePanel, tracePlaces } from '../../../shared/trace/ask.ts';
import { suspectPanels } from '../../../shared/trace/suspects.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';
import { begun, build, end, indexOf, load, slot } from './line-story.ts';

describe('who asks', () => {
  test('of a panel built twice is told of the run that is asked for', () => {
    const story = begun();
    load(story, 'K1');
    for (const run of ['r1', 'r2']) {
      story.tell('run.started', started(run));
      story.tell('panels.counted', counted(run, 1, 'PN1'));
      end(story, run, 1);
    }
    const runs = (run?: string) => tracePanel(indexOf(story), 'PN1', run)?.runs.map((each) => each.run);
    expect([runs(), runs('r1'), runs('r2'), runs('r3')]).toEqual([['r1', 'r2'], ['r1'], ['r2'], undefined]);
  });

  test('of a reel without an id is told its lot', () => {
    const story = begun();
    load(story, null, { lot: 'LX' });
    story.tell('run.started', started('r1'));
    build(story, 3);
    expect(tracePlaces(indexOf(story), { lot: 'lx' })).toMatchObject([
      { reel: null, sure: { first: 1, last: 3 } },
    ]);
  });

  test('is told where a range in the line was guessed, and of one board that nothing hangs on boards', () => {
    const story = beginStory();
    tellPlant(story);
    load(story, 'K1');
    story.tell('run.started', started('r1'));
    build(story, 3);
    const sweep = verified(slot, 'C-200', { act: 'sweep', reel: 'X1', run: 'r1', verdict: 'refused' });
    const finding = idOf(
      story.tell('reel.verified', { ...sweep, reasons: [{ code: 'not-the-loaded-reel' }] }),
    );
    const guessed = () => suspectPanels(indexOf(story), { cause: 'wrong-reel', finding }).guessed;
    const guessedOf = (reel: string) => tracePlaces(indexOf(story), { reel })[0]?.guessed;
    expect(guessed()).toEqual(['in-line']);
    // The reel that stood there before the run and stands there yet hangs on no range.
    expect([guessedOf('X1'), guessedOf('K1')]).toEqual([['in-line'], []]);
    const swap = (off: string, on: string) => {
      story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: off }));
      load(story, on, { run: 'r1' });
    };
    swap('K1', 'K2');
    expect([guessedOf('K1'), guessedOf('K2')]).toEqual([['in-line'], ['in-line']]);
    story.tell('line.panels-ruled', {
      line: 'L1',
      machines: [{ machine: 'M1', least: 0, most: 0 }],
      missed: 0,
    });
    swap('K2', 'K3');
    swap('K3', 'K4');
    expect([guessed(), guessedOf('X1'), guessedOf('K3'), guessedOf('K4')]).toEqual([[], [], [], []]);
  });
});

describe('a wrong reel', () => {
  const found = (story: Story, at: string) => {
    const sweep = verified(at, 'C-200', { act: 'sweep', reel: 'X1', run: 'r1', verdict: 'refused' });
    const finding = idOf(
      story.tell('reel.verified', { ...sweep, reasons: [{ code: 'not-the-loaded-reel' }] }),
    );
    return () =>
      suspectPanels(indexOf(story), { cause: 'wrong-reel', finding }).runs.map(({ run, possible }) => [
        run,
        possible.first,
        possible.last,
      ]);
  };

  test('that was taken off before the end is on the first panels of a run that goes on, and of no other', () => {
    const told = (...setups: readonly string[]) => {
      const story = begun(0, 2);
      story.tell('setup.taken', { ...brookSetup, setup: 'other' });
      load(story, 'K1', { quantity: 5000 });
      story.tell('run.started', started('r1'));
      build(story, 10);
      const suspects = found(story, slot);
      story.tell('reel.unloaded', unloaded(slot, { run: 'r1', reel: 'K1' }));
      end(story, 'r1', 10);
      setups.forEach((setup, at) => {
        story.tell('run.started', started(`r${at + 2}`, { setup }));
        build(story, 6, `r${at + 2}`);
        end(story, `r${at + 2}`, 6);
      });
      return suspects();
    };
    // Two panels had passed uncounted, and one been at work: those are counted late, or in the next run.
    const own = ['r1', 1, 13];
    expect(told('brook-top-a')).toEqual([own, ['r2', 1, 3]]);
    expect(told('brook-top-a', 'brook-top-a')).toEqual([own, ['r2', 1, 3]]);
    expect(told('other')).toEqual([own]);
    expect(told('other', 'brook-top-a')).toEqual([own]);
  });

  test('is on no panel where the setup places nothing from its slot', () => {
    const story = begun();
    story.tell('run.started', started('r1'));
    build(story, 3);
    expect(found(story, 'M1-F-019')()).toEqual([]);
  });
});

describe('what was placed after a moment', () => {
  const at = (second: number) => startMs + second * 1000;
  const placedAfter = (story: Story, second: number) =>
    suspectPanels(indexOf(story), {
      cause: 'floor-life',
      material: { reel: 'K1' },
      afterMs: at(second),
    }).runs.map(({ possible, sure }) => [possible.first, possible.last, sure?.first ?? null]);

  test('of a run that is over is what was counted after it, and nothing after its end', () => {
    for (const [least, first] of [
      [0, 3],
      [-2, 1],
    ] as const) {
      const story = begun(least, 1);
      load(story, 'K1', { quantity: 5000 });
      story.tell('run.started', started('r1'), { at: 100 });
      for (let panel = 1; panel <= 6; panel++)
        story.tell('panels.counted', counted('r1', 1), { at: 100 + panel });
      story.tell('run.ended', { run: 'r1', line: 'L1', panels: 6, note: '' }, { at: 200 });
      // Two were counted by then, one more may have passed and one been at work, and the next was counted as the third.
      expect(placedAfter(story, 102)).toEqual([[first, 6, 6]]);
      expect(placedAfter(story, 250)).toEqual([]);
      expect(placedAfter(story, 99)).toEqual([[1, 6, 1]]);
    }
  });

  test('hangs on the stay, where it is asked of each', () => {
    const story = begun();
    const first = load(story, 'K1', { quantity: 5000 });
    story.tell('run.started', started('r1'), { at: 100 });
    build(story, 3);
    const ask = (more: object) =>
      suspectPanels(indexOf(story), { cause: 'floor-life', ...more }).runs.map(
        ({ possible }) => possible.first,
      );
    expect(ask({ material: { reel: 'K1' }, afterMs: () => null })).toEqual([]);
    expect(ask({ material: { reel: 'K1' }, afterMs: () => at(50) })).toEqual([1]);
    expect(ask({ entry: idOf(first) })).toEqual([1]);
    expect(ask({ entry: 'T1/none/1' })).toEqual([]);
    expect([ask({}), ask({ material: {} })]).toEqual([[], []]);
  });

  test('goes on where one of its stays does, in the order in which the runs began', () => {
    const story = begun();
    load(story, 'K1', { quantity: 5000 });
    story.tell('run.started', started('rB'));
    build(story, 3, 'rB');
    end(story, 'rB', 3);
    story.tell('run.started', started('rA'));
    build(story, 2, 'rA');
    const found = () => suspectPanels(indexOf(story), { cause: 'blocked', material: { reel: 'K1' } });
    expect([found().goesOn, found().runs.map(({ run }) => run)]).toEqual([true, ['rB', 'rA']]);
    end(story, 'rA', 2);
    expect(found().goesOn).toBe(false);
    story.tell('run.started', started('rC'));
    story.tell('reel.unloaded', unloaded(slot, { run: 'rC', reel: 'K1' }));
    expect(found().goesOn).toBe(false);
    // What came off long before the run’s end is on no panel after it.
    build(story, 9, 'rC');
    expect(found().runs.at(-1)).toMatchObject({ run: 'rC', sure: null, possible: { first: 1, last: 1 } });
  });
});
