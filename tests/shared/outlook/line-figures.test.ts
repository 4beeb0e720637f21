// The figures that a line's outlook is made of, worked out by hand: its pace, the order of its slots, when it warns, and what it asks of
// the forecast.

import { describe, expect, test } from 'vitest';
import type { Run } from '../../../shared/floor/state.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { neverStopping, workingTime } from '../../../shared/forecast/working-time.ts';
import { type LookAt, lineOutlook, openWarnings, type SlotOutlook } from '../../../shared/outlook/line.ts';
import { measuringTime, runPace } from '../../../shared/outlook/run-pace.ts';
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

const at = (second: number) => startMs + second * 1000;
const [one, two, three] = ['M1-F-001', 'M1-F-002', 'M1-F-003'] as const;

/** Three slots of one part, told from the last to the first; 500 panels of two placements at 30 s. */
function begun(
  counts: readonly (number | null)[],
  rules: NonNullable<Parameters<typeof tellPlant>[1]>['rules'] = {},
  boardsPerPanel = 1,
): Story {
  const story = beginStory();
  tellPlant(story, { rules });
  story.tell('line.tape-ruled', { line: 'L1', trailerMm: 0, leaderMm: null });
  story.tell('setup.taken', {
    setup: 'back-to-front',
    product: 'Brook',
    side: 'top',
    revision: 'B',
    line: 'L1',
    source: 'test',
    boardsPerPanel,
    slots: [three, two, one].map((slot) => wantedSlot(slot, 'R-100')),
  });
  story.tell('setup.chosen', { line: 'L1', setup: 'back-to-front' });
  counts.forEach((quantity, place) => {
    const slot = [one, two, three][place] ?? one;
    story.tell(
      'reel.verified',
      verified(slot, 'R-100', { reel: `K${place}`, quantity, setup: 'back-to-front' }),
    );
  });
  story.tell('run.started', started('r1', { setup: 'back-to-front', panelSd: 3 }), { at: 60 });
  return story;
}

function look(story: Story, nowMs: number, more: Partial<LookAt> = {}) {
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs), ...more });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return outlook;
}
const slotAt = (story: Story, nowMs: number, more: Partial<LookAt> = {}): SlotOutlook =>
  look(story, nowMs, more).slots.find(({ slot }) => slot === one)!;

describe('the order of slots', () => {
  test('is that of their run-outs, of equal ones that of their names; what is empty or uncounted stands as people walk', () => {
    const equal = look(begun([1000, 1000, 900]), at(60));
    expect(equal.slots.map(({ slot }) => slot)).toEqual([three, one, two]);
    expect(look(begun([null, null, 900]), at(60)).unknown).toEqual([one, two]);
    expect(look(begun([]), at(60)).empty).toEqual([one, two, three]);
  });
});

describe('the pace', () => {
  test('is as planned until counts show it: its spread with it, and the end of the run from it', () => {
    const { pace, runEndMs } = look(begun([9000]), at(60));
    expect(pace).toMatchObject({ panelSeconds: 30, panelSd: 3, panelsLeft: 500 });
    expect('panelMeanSd' in pace).toBe(false);
    expect(runEndMs).toBe(at(60 + 500 * 30));
  });

  test('has the spread that counts show, then, and none of what was planned', () => {
    const story = begun([9000]);
    // 20 and 22 s in turn: the mean is 21 s, one deviation √(8 ÷ 7) s, that of the mean 1/√8 of it.
    let second = 60;
    for (let panel = 0; panel < 8; panel++) {
      second += panel % 2 === 0 ? 20 : 22;
      story.tell('panels.counted', counted('r1', 1), { at: second });
    }
    const { pace, basis } = look(story, at(second + 5));
    expect(pace.panelSeconds).toBeCloseTo(21, 9);
    expect(pace.panelSd).toBeCloseTo(Math.sqrt(8 / 7), 9);
    expect(pace.panelMeanSd).toBeCloseTo(Math.sqrt(1 / 7), 9);
    expect([pace.nowMs, basis.nowMs]).toEqual([at(second + 5), at(second)]);
  });

  const runOf = (done: number, adds: readonly (readonly [second: number, add: number])[]): Run =>
    ({
      startedMs: at(0),
      done,
      panelSeconds: 20,
      stops: [],
      counts: adds.map(([second, add]) => ['', at(second), add, 0]),
    }) as unknown as Run; // what is looked at

  test('begins with the run’s start, where its counts reach back so far', () => {
    const kept = [
      [40, 1],
      [60, 1],
      [80, 1],
      [100, 1],
    ] as const;
    // The first took 40 s, twice as long as usual: left aside as a stop.
    expect(runPace(runOf(4, kept), neverStopping)).toMatchObject({
      seconds: 20,
      basis: { used: 3, ignored: 1 },
    });
    // One that is no longer kept came before: nobody knows when.
    expect(runPace(runOf(5, kept), neverStopping)).toMatchObject({
      seconds: 20,
      basis: { used: 3, ignored: 0 },
    });
    // A count taken back is no panel.
    const back = [...kept, [101, -1]] as const;
    expect(runPace(runOf(3, back), neverStopping)).toMatchObject({ seconds: 20, basis: { ignored: 1 } });
    expect(runPace(runOf(2, kept.slice(0, 2)), neverStopping).seconds).toBeNull();
  });

  test('is measured without the line’s stops and the run’s own, the one that lasts till now among them', () => {
    const run = {
      stops: [
        [at(10), at(20)],
        [at(30), at(30)],
        [at(80), null],
      ],
    } as unknown as Run; // what is looked at
    const planned = workingTime([{ fromMs: at(15), toMs: at(40) }]);
    const { fromMs, toMs } = measuringTime(planned, run, { nowMs: at(100), told: null });
    expect([fromMs, toMs]).toEqual([
      [at(10), at(80)],
      [at(40), at(100)],
    ]);
    expect(measuringTime(planned, run, { nowMs: at(80), told: null }).fromMs).toEqual([at(10)]);
  });
});

describe('what is asked of the forecast', () => {
  test('is what is left with its spread, what was placed since, the loss with its weight, and the lengths of tape', () => {
    const story = begun([1000], { loss: 0.02, labelShare: 0.01, hubToPickMm: 800, intakeToPickMm: 260 });
    story.tell('panels.counted', counted('r1', 98), { at: 3000 });
    const { load, loss, turn } = slotAt(story, at(3000));
    // 98 panels of two placements, 2 % of the picks lost: 200 of 1000 are gone.
    expect(load).toMatchObject({
      slot: one,
      perPanel: 2,
      left: 800,
      sd: 10,
      taken: 196,
      pitchMm: 4,
      hubToPickMm: 800,
      intakeToPickMm: 260,
    });
    expect([load.loss, load.lossStrength]).toEqual([loss.mean, loss.strength]);
    expect([loss.mean, loss.strength, loss.reels, turn]).toEqual([0.02, 150, 0, null]);
    expect('pitchMm' in slotAt(begun([1000]), at(60)).load).toBe(false);
  });

  test('doubts what panels of several boards take, where boards are skipped now and then', () => {
    const told = (skipped: readonly number[]) => {
      const story = begun([100_000], { labelShare: 0.0001, loss: 0.5 }, 2);
      skipped.forEach((boards, panel) => {
        story.tell('panels.counted', { ...counted('r1', 1), skipped: boards }, { at: 100 + panel * 30 });
      });
      return slotAt(story, at(2000)).load;
    };
    const [never, often] = [told([0, 0, 0, 0, 0, 0, 0, 0]), told([0, 1, 0, 1, 0, 1, 0, 1])];
    expect(often.perPanel).toBeLessThan(never.perPanel);
    expect(often.sd).toBeGreaterThan(never.sd);
  });
});

describe('a warning', () => {
  const levelsAt = (story: Story, ...moments: readonly number[]) =>
    moments.map((moment) => slotAt(story, moment).warning.level);

  test('comes the lead and the spread before the window opens; due while it is open, late once it has closed', () => {
    const story = begun([800], { hubToPickMm: 800, intakeToPickMm: 260 });
    const { windowMs, runOutMs } = slotAt(story, at(60)).forecast;
    const { opens, closes } = windowMs!;
    // 800 − 200 parts are 300 panels of 30 s, 800 − 65 are 367.5; a hundredth of a percent is lost.
    expect([opens, closes].map((ms) => Math.round((ms - at(60)) / 100_000))).toEqual([90, 110]);
    const soonMs = opens - (runOutMs.expected - runOutMs.early) - 600_000;
    expect(opens - soonMs).toBeGreaterThan(700_000);
    expect(levelsAt(story, soonMs - 1, soonMs + 1, opens - 1, opens + 1, closes - 1, closes + 1)).toEqual([
      'quiet',
      'soon',
      'soon',
      'due',
      'due',
      'late',
    ]);
  });

  test('without lengths of tape comes the lead before the early run-out, and is late past the mean', () => {
    const story = begun([800], { labelShare: 0.02 });
    const { early, expected } = slotAt(story, at(60)).forecast.runOutMs;
    expect(expected - early).toBeGreaterThan(300_000);
    const soonMs = early - 600_000;
    expect(
      levelsAt(
        story,
        soonMs - 1000,
        soonMs + 1000,
        early - 1000,
        early + 1000,
        expected - 1000,
        expected + 1000,
      ),
    ).toEqual(['quiet', 'soon', 'soon', 'due', 'due', 'late']);
  });

  test('is for the newest tape: a splice makes a new need, of which nobody took note', () => {
    const story = begun([30]);
    const first = slotAt(story, at(60));
    expect(first.need).toBe(first.loaded.tapes[0]?.entry);
    const note = (level: 'soon' | 'late') =>
      story.tell('warning.acknowledged', { line: 'L1', slot: one, need: first.need, level }, { at: 60 });
    expect(first.warning.level).toBe('soon');
    note('soon');
    expect(slotAt(story, at(60)).acknowledged).toBe('soon');
    expect(openWarnings(look(story, at(60)))).toEqual([]);
    // At its next level it is open again.
    expect(openWarnings(look(story, at(1000))).map(({ warning }) => warning.level)).toEqual(['late']);
    story.tell(
      'reel.verified',
      verified(one, 'R-100', { reel: 'N', quantity: 30, act: 'splice', setup: 'back-to-front', run: 'r1' }),
      { at: 60 },
    );
    const next = slotAt(story, at(60));
    expect(next.need).toBe(next.loaded.tapes.at(-1)?.entry);
    expect(next.need).not.toBe(first.need);
    expect(next.acknowledged).toBeNull();
  });

  test('goes on from what was remembered, else from what a tablet raised', () => {
    const story = begun([30]);
    const { need, warning } = slotAt(story, at(60));
    expect(warning).toMatchObject({ level: 'soon', sinceMs: at(60), announce: true });
    story.tell(
      'warning.raised',
      { line: 'L1', slot: one, need, level: 'soon', due: new Date(at(60)).toISOString() },
      { at: 70 },
    );
    const raised = slotAt(story, at(80)).warning;
    expect(raised).toMatchObject({ level: 'soon', sinceMs: at(70), announce: false, announced: 'soon' });
    const remembered = new Map([[raised.need, { ...raised, sinceMs: at(65) }]]);
    expect(slotAt(story, at(80), { remembered }).warning.sinceMs).toBe(at(65));
  });
});
