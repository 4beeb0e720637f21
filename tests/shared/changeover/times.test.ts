import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  changeTimes,
  couldBeOutside,
  earlierOfPair,
  lastGoodPanelMs,
  learnHandling,
  savedAtMost,
  type TimeMark,
  unpausedSeconds,
} from '../../../shared/changeover/times.ts';
import { type FloorEntry, readFloorEntry } from '../../../shared/floor/kinds.ts';
import type { Changeover } from '../../../shared/floor/state.ts';
import { makeStep } from '../checklist/step.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';

const facts = { sideChanges: true, stencilChanges: true, productChanges: true, programChanges: true };
const at = (seconds: number) => ({ at: seconds });

function began(story: Story, changeover: string, seconds: number): void {
  story.tell(
    'changeover.began',
    { changeover, line: 'L1', from: 'brook-top-a', setup: 'fern', product: 'Fern', lastPanel: null },
    at(seconds),
  );
}

/** Planned at 100 s beside the run, last panel at 400 s, released at 1600 s, a break from 700 to 1000 s. */
function tellChange(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('run.started', started('run-1'), at(50));
  began(story, 'ch-1', 100);
  story.tell(
    'checklist.opened',
    {
      checklist: 'list',
      template: 't',
      version: 1,
      line: 'L1',
      changeover: 'ch-1',
      slot: null,
      facts,
    },
    at(110),
  );
  const answer = (step: string, seconds: number, who: string) =>
    story.tell(
      'step.answered',
      { checklist: 'list', line: 'L1', step, value: 'done', unit: null },
      { at: seconds, who },
    );
  answer('papers', 160, 'ana');
  story.tell('panels.counted', counted('run-1', 1), at(400));
  story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 1, note: '' }, at(420));
  answer('paste', 500, 'ana');
  story.tell('reel.unloaded', unloaded('M1-F-001'), { at: 600, who: 'bea' });
  story.tell('reel.verified', verified('M1-F-005', 'C-200', { setup: 'fern' }), { at: 1100, who: 'bea' });
  story.tell('reel.verified', verified('M1-F-006', 'C-9', { setup: 'fern', verdict: 'refused' }), {
    at: 1200,
    who: 'bea',
  });
  answer('rails', 1300, 'ana');
  story.tell('changeover.released', { changeover: 'ch-1', line: 'L1', by: 'lea', reason: '' }, at(1600));
  return story;
}

const checked = (story: Story): FloorEntry[] => story.entries.flatMap((entry) => readFloorEntry(entry) ?? []);
const changeOf = (story: Story, name = 'ch-1') => story.floor().changeovers.get(name) as Changeover; // told above
const pauses = [{ fromMs: startMs + 700_000, toMs: startMs + 1_000_000 }];

function timesOf(story: Story) {
  return changeTimes(story.floor(), changeOf(story), { entries: checked(story), pauses, nowMs: startMs });
}

describe('unpausedSeconds()', () => {
  test.each([
    [0, 100, [[20, 40]], 80, 'a pause inside'],
    [
      0,
      100,
      [
        [-50, 10],
        [90, 200],
      ],
      80,
      'pauses over both ends',
    ],
    [
      0,
      100,
      [
        [10, 50],
        [30, 60],
      ],
      50,
      'pauses that overlap count once',
    ],
    [0, 100, [[0, 100]], 0, 'nothing but a pause'],
    [100, 0, [], 0, 'no time at all'],
  ] as const)('from %s to %s with %j is %s: %s', (from, to, spans, expected, _why) => {
    const all = spans.map(([fromS, toS]) => ({ fromMs: fromS * 1000, toMs: toS * 1000 }));
    expect(unpausedSeconds(from * 1000, to * 1000, all)).toBe(expected);
  });

  test('is never more than the span, and adds up over any cut', () => {
    const moment = fc.integer({ min: 0, max: 1000 });
    const span = fc.tuple(moment, moment).map(([a, b]) => ({ fromMs: Math.min(a, b), toMs: Math.max(a, b) }));
    fc.assert(
      fc.property(fc.array(span, { maxLength: 6 }), fc.tuple(moment, moment, moment), (all, cuts) => {
        const [a = 0, b = 0, c = 0] = [...cuts].sort((x, y) => x - y);
        expect(unpausedSeconds(a, c, all)).toBeCloseTo(
          unpausedSeconds(a, b, all) + unpausedSeconds(b, c, all),
          9,
        );
        expect(unpausedSeconds(a, c, all)).toBeLessThanOrEqual((c - a) / 1000);
      }),
    );
  });
});

describe('lastGoodPanelMs()', () => {
  test('is the last counted panel of the run before, not of a run for the first panel', () => {
    const story = tellChange();
    story.tell('run.started', started('run-2', { setup: 'fern' }), at(1700));
    story.tell('panels.counted', counted('run-2', 1), at(1800));
    expect(lastGoodPanelMs(story.floor(), changeOf(story))).toBe(startMs + 400_000);
  });

  test('is null while the old product still runs, and the beginning where nothing ran', () => {
    const story = beginStory();
    tellPlant(story);
    began(story, 'ch-0', 10);
    expect(lastGoodPanelMs(story.floor(), changeOf(story, 'ch-0'))).toBe(startMs + 10_000);
    story.tell('changeover.dropped', { changeover: 'ch-0', line: 'L1', reason: '' });
    story.tell('run.started', started('run-1'), at(50));
    began(story, 'ch-1', 100);
    expect(lastGoodPanelMs(story.floor(), changeOf(story))).toBeNull();
  });

  test('is when the line stood, as the person said who stopped or ended the run; making ready before is not standing', () => {
    const said = (seconds: number) => new Date(startMs + seconds * 1000).toISOString();
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'), at(50));
    story.tell('panels.counted', counted('run-1', 1), at(400));
    began(story, 'ch-1', 500);
    story.tell('reel.verified', verified('M1-F-005', 'C-200', { setup: 'fern' }), { at: 800, who: 'bea' });
    // It ran on uncounted until 900 s, and is ended at 1000 s.
    const stop = { run: 'run-1', line: 'L1', reason: 'other', note: '', stoodFrom: said(900) } as const;
    story.tell('run.stopped', stop, at(950));
    story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 1, note: '' }, at(1000));
    story.tell('reel.unloaded', unloaded('M1-F-001'), { at: 1100, who: 'bea' });
    story.tell('changeover.released', { changeover: 'ch-1', line: 'L1', by: 'lea', reason: '' }, at(1600));
    const times = changeTimes(story.floor(), changeOf(story), {
      entries: checked(story),
      pauses: [],
      nowMs: startMs,
    });
    expect(times).toMatchObject({
      stoodMs: startMs + 900_000,
      externalSeconds: 400,
      standingSeconds: 700,
      marks: [
        { what: 'M1-F-005', wasStanding: false, standingSeconds: 0 },
        { what: 'M1-F-001', wasStanding: true, seconds: 300, standingSeconds: 200 },
      ],
      persons: [{ who: 'bea', seconds: 600, standingSeconds: 200, marks: 2 }],
    });
    const ended = beginStory();
    tellPlant(ended);
    ended.tell('run.started', started('run-1'), at(50));
    ended.tell('panels.counted', counted('run-1', 1), at(400));
    ended.tell(
      'run.ended',
      { run: 'run-1', line: 'L1', panels: 1, note: '', stoodFrom: said(430) },
      at(1000),
    );
    began(ended, 'ch-1', 1200);
    expect(lastGoodPanelMs(ended.floor(), changeOf(ended))).toBe(startMs + 430_000);
  });

  test('reaches back to a run that was ended a little before the changeover was begun, not to one of long ago', () => {
    const idle = (seconds: number) => {
      const story = beginStory();
      tellPlant(story);
      story.tell('run.started', started('run-1'), at(50));
      story.tell('panels.counted', counted('run-1', 1), at(400));
      story.tell('run.ended', { run: 'run-1', line: 'L1', panels: 1, note: '' }, at(600));
      began(story, 'ch-1', 600 + seconds);
      return ((lastGoodPanelMs(story.floor(), changeOf(story)) ?? 0) - startMs) / 1000;
    };
    expect(idle(900)).toBe(400);
    // Half an hour to the second.
    expect([idle(1800), idle(1801)]).toEqual([400, 2401]);
    expect(idle(7200)).toBe(7800);
  });
});

describe('changeTimes()', () => {
  test('a docked cart is one mark, whatever goes off with the bank it replaces', () => {
    const story = beginStory();
    tellPlant(story);
    began(story, 'ch-1', 100);
    for (const slot of ['M1-F-001', 'M1-F-002'])
      story.tell('reel.unloaded', unloaded(slot, { cart: 'CART-1' }), { at: 300, who: 'bea' });
    story.tell(
      'cart.docked',
      { cart: 'CART-1', line: 'L1', setup: 'fern', slots: ['M1-F-001', 'M1-F-002'] },
      { at: 300, who: 'bea' },
    );
    expect(timesOf(story).marks.map(({ kind, what }) => [kind, what])).toEqual([['load', 'CART-1']]);
  });

  test('tells standing, making ready and pauses apart', () => {
    expect(timesOf(tellChange())).toMatchObject({
      stoodMs: startMs + 400_000,
      endMs: startMs + 1_600_000,
      externalSeconds: 300,
      standingSeconds: 900,
      pausedSeconds: 300,
    });
  });

  test('gives each mark the time since the same person’s mark before, without the break', () => {
    const { marks } = timesOf(tellChange());
    expect(marks.map(({ what, who, seconds, wasStanding }) => [what, who, seconds, wasStanding])).toEqual([
      ['papers', 'ana', 60, false],
      ['paste', 'ana', 340, true],
      ['M1-F-001', 'bea', 500, true],
      ['M1-F-005', 'bea', 200, true],
      ['rails', 'ana', 500, true],
    ]);
  });

  test('sums up by person', () => {
    expect(timesOf(tellChange()).persons).toEqual([
      { who: 'ana', seconds: 900, standingSeconds: 600, marks: 3 },
      { who: 'bea', seconds: 700, standingSeconds: 400, marks: 2 },
    ]);
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1'), at(50));
    began(story, 'ch-1', 100);
    for (const [who, second] of [
      ['ana', 150],
      ['cem', 155],
      ['bea', 160],
    ] as const)
      story.tell('reel.unloaded', unloaded('M1-F-001'), { at: second, who });
    // The line still runs: no second of it is standing.
    const { persons, standingSeconds, pausedSeconds } = timesOf(story);
    expect([standingSeconds, pausedSeconds]).toEqual([0, 0]);
    expect(persons.map(({ who, seconds, standingSeconds: stood }) => [who, seconds, stood])).toEqual([
      ['bea', 60, 0],
      ['cem', 55, 0],
      ['ana', 50, 0],
    ]);
  });
});

describe('couldBeOutside()', () => {
  test('names what was late and what needs no hand in the machine, longest first', () => {
    const steps = [
      makeStep('papers'),
      makeStep('paste'),
      makeStep('rails', { time: 'stopped', caution: null, kind: 'tick' }),
    ];
    expect(couldBeOutside(timesOf(tellChange()), steps)).toEqual([
      { step: 'rails', seconds: 500, why: 'candidate' },
      { step: 'paste', seconds: 100, why: 'late' },
    ]);
    const withHand = steps.map((step) => ({ ...step, caution: { en: 'Stop the machine' } }));
    expect(couldBeOutside(timesOf(tellChange()), withHand).map((each) => each.step)).toEqual(['paste']);
  });

  test('says how long the line would at most have stood less: only its standing time, no break, nothing twice', () => {
    const times = timesOf(tellChange());
    const late = [makeStep('paste')];
    expect(savedAtMost(times, late, pauses)).toBe(100);
    const both = [...late, makeStep('rails', { time: 'stopped', caution: null, kind: 'tick' })];
    expect(savedAtMost(times, both, pauses)).toBe(600);
    const twins = { ...times, marks: times.marks.flatMap((mark) => [mark, { ...mark, who: 'bea' }]) };
    expect(savedAtMost(twins, both, pauses)).toBe(600);
    expect(savedAtMost({ ...times, stoodMs: null }, both, pauses)).toBe(0);
  });
});

describe('earlierOfPair()', () => {
  test('finds released changeovers between the same two, newest first', () => {
    const story = tellChange();
    for (const [name, seconds] of [
      ['ch-2', 2000],
      ['ch-3', 3000],
    ] as const) {
      began(story, name, seconds);
      story.tell(
        'changeover.released',
        { changeover: name, line: 'L1', by: 'lea', reason: '' },
        at(seconds + 60),
      );
    }
    began(story, 'ch-4', 4000);
    const found = earlierOfPair(story.floor(), changeOf(story, 'ch-4'));
    expect(found.map((each) => each.changeover)).toEqual(['ch-3', 'ch-2', 'ch-1']);
    expect(earlierOfPair(story.floor(), changeOf(story, 'ch-1'))).toEqual([]);
  });
});

describe('learnHandling()', () => {
  const load = (seconds: number, more: Partial<TimeMark> = {}): TimeMark => ({
    kind: 'load',
    what: 's',
    who: 'a',
    fromMs: 0,
    atMs: 0,
    seconds,
    standingSeconds: seconds,
    wasStanding: true,
    ...more,
  });

  test('takes the median of at least five, and says how many changeovers they come from', () => {
    const marks = [30, 60, 90, 3000, 45].map((seconds) => load(seconds));
    const learnt = { putIn: { minutes: 1, handlings: 5, changeovers: 2 }, takeOut: null };
    expect(learnHandling([marks.slice(0, 2), [], marks.slice(2)])).toEqual(learnt);
    expect(learnHandling([marks.slice(1)])).toEqual({ putIn: null, takeOut: null });
    expect(learnHandling([])).toEqual({ putIn: null, takeOut: null });
  });

  test('learns nothing from what was done beside the running line', () => {
    const marks = [30, 60, 90, 80, 45].map((seconds) => load(seconds, { wasStanding: false }));
    expect(learnHandling([marks]).putIn).toBeNull();
    const out = [10, 20, 30, 40, 50].map((seconds) => load(seconds, { kind: 'unload' }));
    expect(learnHandling([marks, out])).toEqual({
      putIn: null,
      takeOut: { minutes: 0.5, handlings: 5, changeovers: 1 },
    });
  });
});
