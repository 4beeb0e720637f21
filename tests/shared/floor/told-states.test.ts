// When a line stood as its machine tells, by the numbers of SEMI E58 (thousands are classes: 1 productive, 2 standby, 3 engineering, 4 planned
// down, 5 unplanned down, 6 not scheduled; as IPCConnectedFactoryExchange/CFX lists them in CFX/Structures/ResourceState.cs).

import { describe, expect, test } from 'vitest';
import { isWaiting, lineTold } from '../../../shared/floor/told-states.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { lineOutlook } from '../../../shared/outlook/line.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant, verified } from './story.ts';

const at = (second: number) => startMs + second * 1000;
const link = { tablet: 'LINK', who: null } as const;

function know(story: Story, station: string, more: { readonly at?: 'work' | 'out' } = {}) {
  const known = {
    machine: 'M1',
    at: more.at ?? 'work',
    means: 'ipc2591',
    version: '1',
    address: '',
  } as const;
  story.tell('station.known', { station, line: 'L1', ...known }, { ...link, at: 20 });
}
const says = (story: Story, second: number, code: number, more: { late?: number; station?: string } = {}) =>
  story.tell(
    'station.state',
    {
      station: more.station ?? 'placer',
      line: 'L1',
      code,
      ...(more.late === undefined ? {} : { late: more.late }),
    },
    { ...link, at: second },
  );
const total = (story: Story, second: number, panels: number, station = 'placer') =>
  story.tell(
    'station.counted',
    { station, line: 'L1', boot: 'b', total: panels, serial: null, skipped: null },
    { ...link, at: second },
  );
const build = (story: Story, seconds: readonly number[]) => {
  for (const second of seconds) story.tell('panels.counted', counted('r1', 1), { at: second });
};

/** A run that begins at 60 s, 30 s a panel; the machine works. */
function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  know(story, 'placer');
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 900 }), { at: 30 });
  total(story, 40, 0);
  story.tell('run.started', started('r1', { panelsWanted: 500 }), { at: 60 });
  says(story, 61, 1100);
  return story;
}

function told(story: Story, second: number) {
  const floor = story.floor();
  const run = floor.runs.get('r1');
  if (!run) throw new Error('no run');
  return lineTold(floor, run, at(second));
}

function look(story: Story, second: number) {
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', {
    nowMs: at(second),
    calendar: lineCalendar(floor, 'L1', at(second)),
  });
  if (!outlook) throw new Error('nothing is built');
  return outlook;
}

describe('the state that a machine tells', () => {
  test('planned, unplanned and other stops are no time of the line; waiting and working are', () => {
    const story = begun();
    for (const [second, code] of [
      [100, 4400],
      [130, 1100],
      [200, 2202],
      [240, 5200],
      [300, 5500],
      [330, 2100],
      [400, 3000],
      [410, 6000],
      [420, 7100],
    ] as const)
      says(story, second, code);
    expect(told(story, 500)).toEqual({
      station: 'placer',
      isHeard: false,
      now: null,
      sinceMs: at(60),
      stops: [
        { fromMs: at(100), toMs: at(130), code: 4400 },
        { fromMs: at(240), toMs: at(300), code: 5200 },
        { fromMs: at(300), toMs: at(330), code: 5500 },
        { fromMs: at(400), toMs: at(410), code: 3000 },
        { fromMs: at(410), toMs: at(420), code: 6000 },
      ],
    });
    expect([1999, 2000, 2999, 3000].map(isWaiting)).toEqual([false, true, true, false]);
  });

  test('are known from the oldest one on that is kept', () => {
    const story = begun();
    for (let stop = 0; stop < 70; stop += 1) {
      says(story, 100 + stop * 20, 5200);
      says(story, 105 + stop * 20, 1100);
    }
    const found = told(story, 1_600);
    // 64 are kept: the first six are gone.
    expect(found?.stops).toHaveLength(64);
    expect(found?.sinceMs).toBe(at(100 + 6 * 20));
  });

  test('counts from when it was so, not from when it was told, and never before the state that it ended', () => {
    const story = begun();
    says(story, 200, 5200, { late: 90 });
    says(story, 201, 5200);
    expect(told(story, 210)?.now).toEqual({ fromMs: at(110), toMs: null, code: 5200 });
    says(story, 300, 1100, { late: 250 });
    expect(told(story, 310)?.stops).toEqual([]);
    expect(told(story, 310)?.now).toBeNull();
  });

  test('is of the station that counts the line, else of the only one that tells any, else of none', () => {
    const story = begun();
    know(story, 'oven', { at: 'out' });
    says(story, 100, 5200);
    expect(told(story, 110)?.station).toBe('placer');
    says(story, 120, 1100, { station: 'oven' });
    expect(told(story, 130)).toBeNull();
    story.tell('line.counted-by', { line: 'L1', station: 'oven' }, { at: 140 });
    expect(told(story, 150)).toMatchObject({ station: 'oven', now: null });
  });

  test('holds until nothing is heard of it any more; what it does then is guessed as before', () => {
    const story = begun();
    build(story, [90, 120, 150, 180, 210]);
    says(story, 230, 5200);
    total(story, 240, 0);
    const down = look(story, 590);
    expect(down).toMatchObject({ stands: true, counting: { ceased: false }, told: { isHeard: true } });
    // It stands: all that is to come moves on with the clock.
    const runOut = (second: number) => (look(story, second).slots[0]?.forecast.runOutMs.expected ?? 0) / 1000;
    expect(runOut(590) - runOut(400)).toBeCloseTo(190, 3);
    const silent = look(story, 650);
    expect(silent).toMatchObject({ stands: false, told: { isHeard: false, now: null } });
    expect(silent.told?.stops).toEqual([{ fromMs: at(230), toMs: at(240), code: 5200 }]);
    expect(silent.counting.ceased).toBe(true);
    story.tell(
      'station.silent',
      { station: 'placer', line: 'L1', since: new Date(at(300)).toISOString(), told: 'link' },
      { ...link, at: 660 },
    );
    expect(told(story, 670)?.stops).toEqual([{ fromMs: at(230), toMs: at(300), code: 5200 }]);
    total(story, 700, 0);
    // Heard again it has not said yet what it does.
    expect(told(story, 701)).toMatchObject({ isHeard: true, now: null });
  });

  test('takes stops out of the pace, where counts alone could not', () => {
    const story = begun();
    // Each panel takes 30 s, and after each the machine stands for 18 s.
    let second = 60;
    for (let panel = 0; panel < 12; panel += 1) {
      second += 30;
      build(story, [second]);
      says(story, second, 5200);
      second += 18;
      says(story, second, 1100);
    }
    total(story, second, 0);
    expect(look(story, second + 1)).toMatchObject({ paceFrom: 'seen' });
    expect(look(story, second + 1).pace.panelSeconds).toBeCloseTo(30, 6);
    const guessed = begun();
    build(
      guessed,
      Array.from({ length: 12 }, (_, panel) => 90 + panel * 48),
    );
    expect(look(guessed, second + 1).pace.panelSeconds).toBeGreaterThan(46);
  });

  test('is not believed against panels that go on passing', () => {
    const story = begun();
    story.tell('line.counted-by', { line: 'L1', station: 'placer' }, { at: 65 });
    says(story, 100, 5200);
    for (let panel = 1; panel <= 6; panel += 1) total(story, 100 + panel * 30, panel);
    const outlook = look(story, 290);
    // The panel in work may come out; the second one says that it works.
    expect(outlook.told).toMatchObject({ now: null, stops: [{ fromMs: at(100), toMs: at(130) }] });
    expect(outlook.stands).toBe(false);
    // Of the stop one cycle is believed, and no more.
    expect(Math.abs(outlook.pace.panelSeconds - 30)).toBeLessThan(2);
    const one = begun();
    one.tell('line.counted-by', { line: 'L1', station: 'placer' }, { at: 65 });
    says(one, 100, 5200);
    total(one, 110, 2);
    total(one, 130, 3);
    expect(look(one, 200)).toMatchObject({ stands: true, told: { now: { code: 5200 } } });
  });
});
