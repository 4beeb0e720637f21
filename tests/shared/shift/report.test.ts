// What happened in a shift is counted from its entries: worked by hand on small stories.

import { describe, expect, test } from 'vitest';
import { type FloorEntry, readFloorEntry } from '../../../shared/floor/kinds.ts';
import { shiftReport } from '../../../shared/shift/report.ts';
import {
  beginStory,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
} from '../floor/story.ts';

const HOUR_S = 3600;
const report = (story: Story, fromH = 0, toH = 8) =>
  shiftReport(
    story.floor(),
    story.entries.map(readFloorEntry).filter((each): each is FloorEntry => each !== null),
    { line: 'L1', fromMs: startMs + fromH * 3_600_000, toMs: startMs + toH * 3_600_000 },
  );

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 1000 }));
  story.tell('run.started', started('r1'));
  return story;
}

const splice = (story: Story, reel: string, at: number, who = 'ana') =>
  story.tell(
    'reel.verified',
    { ...verified('M1-F-001', 'R-100', { reel, quantity: 1000 }), act: 'splice', run: 'r1' },
    { at, who },
  );

describe('verdicts', () => {
  test('are told by outcome, and refused ones by their first reason, most frequent first', () => {
    const story = begun();
    for (const [at, code] of [
      [100, 'wrong-part'],
      [200, 'wrong-part'],
      [300, 'blocked'],
    ] as const)
      story.tell(
        'reel.verified',
        {
          ...verified('M1-F-001', 'R-200', { reel: `X${at}` }),
          verdict: 'refused',
          reasons: [{ code, facts: {} }],
        },
        { at },
      );
    const told = report(story);
    expect(told.verdicts).toEqual({ accepted: 1, refused: 3, held: 0 });
    expect(told.reasons).toEqual([
      { verdict: 'refused', code: 'wrong-part', times: 2 },
      { verdict: 'refused', code: 'blocked', times: 1 },
    ]);
  });

  test('taken back count no more', () => {
    const story = begun();
    const entry = splice(story, 'K2', 600);
    story.tell(
      'entry.corrected',
      { of: idOf(entry), line: 'L1', slot: 'M1-F-001', reason: 'wrong slot' },
      { at: 700 },
    );
    expect(report(story)).toMatchObject({ splices: 0, verdicts: { accepted: 1 } });
  });
});

test('splices are counted by the hour, and those close together by one person are one walk', () => {
  const story = begun();
  splice(story, 'K2', 600);
  splice(story, 'K3', 600 + 240);
  splice(story, 'K4', 600 + 240 + 60, 'ben');
  splice(story, 'K5', HOUR_S + 1200);
  const told = report(story, 0, 2);
  expect(told.splices).toBe(4);
  expect(told.walks).toBe(3);
  const inHours = told.hours.reduce((sum, { splices }) => sum + splices, 0);
  expect(inHours).toBe(4);
  expect(told.hours.filter(({ splices }) => splices > 0).map(({ splices }) => splices)).toEqual([3, 1]);
});

test('a splice that was held counts once, when a lead clears it; declined or taken back it does not', () => {
  const story = begun();
  const hold = (reel: string, at: number) =>
    story.tell(
      'reel.verified',
      {
        ...verified('M1-F-001', 'R-100', { reel, quantity: 1000 }),
        act: 'splice',
        run: 'r1',
        verdict: 'held',
      },
      { at },
    );
  const clear = (of: string, at: number) =>
    story.tell(
      'hold.cleared',
      { of, line: 'L1', slot: 'M1-F-001', reason: 'seen', by: 'ana', checked: 'server' },
      { at },
    );
  const first = idOf(hold('K2', HOUR_S - 60));
  clear(first, HOUR_S + 60);
  clear(first, HOUR_S + 70);
  const gone = idOf(hold('K3', HOUR_S + 100));
  story.tell(
    'entry.corrected',
    { of: gone, line: 'L1', slot: 'M1-F-001', reason: 'wrong' },
    { at: HOUR_S + 110 },
  );
  clear(gone, HOUR_S + 120);
  hold('K4', HOUR_S + 130);
  const told = report(story, 0, 2);
  expect([told.splices, told.walks]).toEqual([1, 1]);
  expect(told.hours.map(({ splices }) => splices).filter((splices) => splices > 0)).toEqual([1]);
  expect(report(story, 0, 1).splices).toBe(0);
  expect(report(story, 1, 2).splices).toBe(1);
});

describe('stops', () => {
  const stop = (story: Story, at: number, reason: 'run-out' | 'jam') =>
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason, note: '' }, { at });
  const resume = (story: Story, at: number) => story.tell('run.resumed', { run: 'r1', line: 'L1' }, { at });

  test('are cut to the span, with their reasons; a slot that ran dry is one of them', () => {
    const story = begun();
    stop(story, 3000, 'run-out');
    resume(story, 3240);
    stop(story, 2 * HOUR_S - 60, 'jam');
    resume(story, 2 * HOUR_S + 300);
    const told = report(story, 0, 2);
    expect(
      told.stops.map(({ fromMs, toMs, reason, isOpen }) => [reason, (toMs - fromMs) / 1000, isOpen]),
    ).toEqual([
      ['run-out', 240, false],
      ['jam', 60, true],
    ]);
    expect(told.dry).toHaveLength(1);
    // The shift after it has the rest, and its reason though the entry lies before.
    expect(report(story, 2, 4).stops).toMatchObject([
      { reason: 'jam', toMs: startMs + (2 * HOUR_S + 300) * 1000 },
    ]);
  });

  test('that go on are open, with the reason that the run has', () => {
    const story = begun();
    stop(story, 3000, 'jam');
    const [open] = shiftReport(story.floor(), [], {
      line: 'L1',
      fromMs: startMs,
      toMs: startMs + 2 * 3_600_000,
    }).stops;
    expect(open).toMatchObject({ reason: 'jam', isOpen: true });
  });
});

test('a feeder’s lost parts are those of reels that came off in the span, beside its share before', () => {
  const story = beginStory();
  tellPlant(story);
  const feeder = 'F-0007';
  // 1000 on it, 2 placed a panel: 400 placed and 590 left is 10 lost of 410; then 400 placed and 570 left, 30 of 430.
  for (const [reel, hour, left] of [
    ['K1', 0, 590],
    ['K2', 4, 570],
  ] as const) {
    const at = hour * HOUR_S;
    const run = `r-${reel}`;
    story.tell(
      'reel.verified',
      verified('M1-F-001', 'R-100', { reel, feeder, quantity: 1000, basis: 'machine' }),
      {
        at: at + 60,
      },
    );
    story.tell('run.started', started(run), { at: at + 120 });
    story.tell('panels.counted', counted(run, 200), { at: at + 3000 });
    story.tell(
      'reel.unloaded',
      unloaded('M1-F-001', { reel, feeder, run, part: 'R-100', quantity: left, sd: 0, basis: 'machine' }),
      { at: at + 3100 },
    );
    story.tell('run.ended', { run, line: 'L1', panels: 200, note: '' }, { at: at + 3200 });
  }
  expect(report(story, 0, 3).parts).toEqual([{ part: 'R-100', picks: 410, lost: 10, sd: 0 }]);
  const late = report(story, 4, 8);
  expect(late.feeders).toMatchObject([{ feeder, picks: 430, lost: 30 }]);
  expect(late.feeders[0]?.before).toBeCloseTo(10 / 410, 9);
  expect(report(story, 5, 8).feeders).toEqual([]);
});

test('a splice’s window is no loss: a tape that ended somewhere within it has lost next to nothing', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell(
    'reel.verified',
    verified('M1-F-001', 'R-100', { reel: 'K1', feeder: 'F-0007', quantity: 1000 }),
  );
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 480), { at: 1000 });
  story.tell(
    'reel.verified',
    {
      ...verified('M1-F-001', 'R-100', { reel: 'K2', feeder: 'F-0007', quantity: 1000 }),
      act: 'splice',
      run: 'r1',
    },
    { at: 1100 },
  );
  story.tell('panels.counted', counted('r1', 400), { at: 3000 });
  story.tell(
    'reel.unloaded',
    unloaded('M1-F-001', {
      reel: 'K2',
      feeder: 'F-0007',
      run: 'r1',
      part: 'R-100',
      quantity: 200,
      sd: 30,
      basis: 'weighed',
    }),
    { at: 3100 },
  );
  const [told] = report(story).feeders;
  expect(told?.sd).toBeGreaterThan(0);
  expect(told?.lost).toBeLessThan(10);
});
