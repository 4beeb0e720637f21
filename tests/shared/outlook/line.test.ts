// What is to come on a line, told by hand: which slots it speaks of and in which order, at which pace, and which warnings are open.

import { describe, expect, test } from 'vitest';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import { neverStopping, workingSeconds } from '../../../shared/forecast/working-time.ts';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { dueSlots, lineOutlook, type Outlook, openWarnings, runLeft } from '../../../shared/outlook/line.ts';
import { lastCountMs, measuringTime } from '../../../shared/outlook/run-pace.ts';
import { fullReelSteps, waitingReels } from '../../../shared/outlook/supply.ts';
import { toTheEnd } from '../../to-the-end.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
  wantedSlot,
} from '../floor/story.ts';
import { lineSupply } from './compute.ts';

const parts: Readonly<Record<string, string>> = {
  'M1-F-001': 'R-100',
  'M1-F-002': 'C-200',
  'M1-F-010': 'U-300',
  'M1-R-003': 'R-100',
};

/** A run of 500 panels at 30 s, its slots loaded with so many parts each. */
function running(counts: Readonly<Record<string, number | null>>, more: { readonly panels?: number } = {}) {
  const story = beginStory();
  tellPlant(story);
  for (const [slot, quantity] of Object.entries(counts))
    story.tell('reel.verified', verified(slot, parts[slot] ?? null, { reel: `K-${slot}`, quantity }));
  story.tell('run.started', started('r1', { panelsWanted: more.panels ?? 500 }), { at: 60 });
  return story;
}

function look(story: Story, second: number): Outlook {
  const nowMs = startMs + second * 1000;
  const floor = story.floor();
  const outlook = lineOutlook(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  if (!outlook) throw new TypeError('Cannot go on as the line must run');
  return outlook;
}

/** A panel every `every` seconds from the run's start. */
function build(story: Story, panels: number, every: number) {
  for (let panel = 1; panel <= panels; panel++)
    story.tell('panels.counted', counted('r1', 1), { at: 60 + panel * every });
}

describe('lineOutlook()', () => {
  test('tells slots that end at one moment in walking order, however their numbers are written', () => {
    const story = beginStory();
    tellPlant(story);
    const slots = ['F10', 'F2', 'F9'].map((slot) => wantedSlot(slot, 'R-100'));
    story.tell('setup.taken', { ...brookSetup, setup: 'short', slots });
    story.tell('setup.chosen', { line: 'L1', setup: 'short' });
    for (const { slot } of slots)
      story.tell('reel.verified', verified(slot, 'R-100', { setup: 'short', reel: `K-${slot}` }));
    story.tell('run.started', started('r1', { setup: 'short' }), { at: 60 });
    expect(look(story, 61).slots.map(({ slot }) => slot)).toEqual(['F2', 'F9', 'F10']);
  });

  test('is none where nothing is built', () => {
    const story = beginStory();
    tellPlant(story);
    const floor = story.floor();
    expect(
      lineOutlook(floor, 'L1', { nowMs: startMs, calendar: lineCalendar(floor, 'L1', startMs) }),
    ).toBeNull();
  });

  test('speaks of loaded slots by when they run out, and names those without a count and without a reel in walking order', () => {
    const outlook = look(running({ 'M1-F-001': 4000, 'M1-F-002': 600 }), 60);
    expect(outlook.slots.map(({ slot }) => slot)).toEqual(['M1-F-002', 'M1-F-001']);
    expect(outlook.empty).toEqual(['M1-F-010', 'M1-R-003']);
    const uncounted = look(running({ 'M1-R-003': null, 'M1-F-002': null, 'M1-F-001': 9000 }), 60);
    expect(uncounted.unknown).toEqual(['M1-F-002', 'M1-R-003']);
    expect(uncounted.slots.map(({ slot }) => slot)).toEqual(['M1-F-001']);
  });

  test('says nothing of a slot that places nothing', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('setup.taken', {
      ...brookSetup,
      slots: [wantedSlot('M1-F-001', 'R-100', { perPanel: 0 }), wantedSlot('M1-F-002', 'C-200')],
    });
    for (const slot of ['M1-F-001', 'M1-F-002'])
      story.tell('reel.verified', verified(slot, parts[slot] ?? null, { reel: `K-${slot}` }));
    story.tell('run.started', started('r1'));
    const { slots, empty, unknown } = look(story, 60);
    expect([slots.map(({ slot }) => slot), empty, unknown]).toEqual([['M1-F-002'], [], []]);
  });

  test('takes the nominal pace until counts have shown another, and then that', () => {
    const story = running({ 'M1-F-001': 9000 });
    expect(look(story, 60)).toMatchObject({
      paceFrom: 'nominal',
      panelsLeft: 500,
      pace: { panelSeconds: 30 },
    });
    build(story, 12, 20);
    const seen = look(story, 60 + 12 * 20);
    expect(seen.paceFrom).toBe('seen');
    expect(seen.pace.panelSeconds).toBeCloseTo(20, 6);
    expect(seen.panelsLeft).toBe(488);
    expect(seen.runEndMs).toBeCloseTo(startMs + (60 + 500 * 20) * 1000, -3);
  });

  test('leaves the time that the line stood out of its pace', () => {
    const story = running({ 'M1-F-001': 9000 });
    build(story, 6, 20);
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '' }, { at: 181 });
    story.tell('run.resumed', { run: 'r1', line: 'L1' }, { at: 1181 });
    for (let panel = 1; panel <= 6; panel++)
      story.tell('panels.counted', counted('r1', 1), { at: 1180 + panel * 20 });
    expect(look(story, 1300).pace.panelSeconds).toBeCloseTo(20, 0);
    expect(look(story, 1300).pace.panelSd).toBeLessThan(1);
  });

  test('computes on from the last count, not from now', () => {
    const story = running({ 'M1-F-001': 9000 });
    build(story, 10, 30);
    const [early, late] = [look(story, 365), look(story, 375)];
    expect(early.basis.nowMs).toBe(startMs + 360_000);
    expect(late.slots[0]?.forecast.runOutMs.expected).toBeCloseTo(
      early.slots[0]?.forecast.runOutMs.expected ?? 0,
      0,
    );
  });
});

test('lastCountMs() is the newest count that added panels, and the start of the run before any', () => {
  const story = running({ 'M1-F-001': 9000 });
  const run = () => story.floor().runs.get('r1')!;
  expect(lastCountMs(run())).toBe(startMs + 60_000);
  build(story, 3, 30);
  story.tell('panels.counted', counted('r1', -1), { at: 400 });
  expect(lastCountMs(run())).toBe(startMs + 150_000);
});

describe('what somebody must see to', () => {
  test('is each slot that runs out before the run ends', () => {
    const outlook = look(running({ 'M1-F-001': 9000, 'M1-F-002': 600, 'M1-F-010': 450 }), 60);
    // 500 panels: 1000 of R-100 and of C-200 on each slot, 500 of U-300.
    expect(dueSlots(outlook).map(({ slot }) => slot)).toEqual(['M1-F-002', 'M1-F-010']);
  });

  test('is an open warning until somebody took note of its level, and again at the next level', () => {
    const story = running({ 'M1-F-001': 9000, 'M1-F-002': 30 });
    const [soonest] = openWarnings(look(story, 60));
    expect(openWarnings(look(story, 60)).map(({ slot }) => slot)).toEqual(['M1-F-002']);
    const { level } = soonest!.warning;
    const note = (at: 'soon' | 'due' | 'late') =>
      story.tell(
        'warning.acknowledged',
        { line: 'L1', slot: 'M1-F-002', need: soonest!.need, level: at },
        { at: 60 },
      );
    expect(level).not.toBe('quiet');
    note('soon');
    expect(openWarnings(look(story, 60)).length).toBe(level === 'soon' ? 0 : 1);
    note('late');
    expect(openWarnings(look(story, 60))).toEqual([]);
  });

  test('goes on from a level that another tablet raised', () => {
    const story = running({ 'M1-F-001': 9000, 'M1-F-002': 900 });
    const quiet = look(story, 60).slots.find(({ slot }) => slot === 'M1-F-002')!;
    expect(quiet.warning.level).toBe('quiet');
    story.tell(
      'warning.raised',
      { line: 'L1', slot: 'M1-F-002', need: quiet.need, level: 'late', due: formatMoment(startMs) },
      { at: 60 },
    );
    const raised = look(story, 61).slots.find(({ slot }) => slot === 'M1-F-002')!;
    expect(raised.warning.announce).toBe(false);
    expect(raised.warning.announced).toBe('late');
  });
});

describe('runLeft()', () => {
  const left = (story: Story, second: number) => {
    const nowMs = startMs + second * 1000;
    const floor = story.floor();
    return runLeft(floor, 'L1', { nowMs, calendar: lineCalendar(floor, 'L1', nowMs) });
  };

  test('is what the job in hand still takes, at its nominal pace and then at the one seen', () => {
    const story = running({}, { panels: 100 });
    expect(left(story, 60)).toMatchObject({ panels: 100, seconds: 3000 });
    build(story, 10, 20);
    expect(left(story, 260)?.panels).toBe(90);
    expect(left(story, 260)?.seconds).toBeCloseTo(1800, 3);
  });

  test('is none where nothing is built', () => {
    const story = beginStory();
    tellPlant(story);
    expect(left(story, 60)).toBeNull();
  });
});

describe('the supply of a run', () => {
  test('asks for what is missing of each part that runs out, and for nothing that lasts', () => {
    const story = running({ 'M1-F-001': 9000, 'M1-F-002': 600, 'M1-F-010': 450, 'M1-R-003': 9000 });
    const supply = lineSupply(story.floor(), look(story, 60));
    expect(supply.slots.map(({ slot }) => slot.slot)).toEqual(['M1-F-002', 'M1-F-010']);
    expect(supply.picks.map(({ part, reels }) => [part, reels])).toEqual([
      ['C-200', 1],
      ['U-300', 1],
    ]);
  });

  test('counts reels in the store, and sends to one that nobody counted where they do not reach', () => {
    const story = running({ 'M1-F-001': 9000, 'M1-F-002': 600, 'M1-R-003': 9000 });
    const put = (reel: string, quantity: number | null, place: string) =>
      story.tell('reel.put', {
        reel,
        part: 'C-200',
        supplierPart: null,
        quantity,
        lot: null,
        dateCode: null,
        place,
        via: 'wedge',
      });
    put('K-open', null, 'B-2');
    put('K-none', null, 'B-1');
    expect(lineSupply(story.floor(), look(story, 60)).picks).toMatchObject([{ part: 'C-200', place: 'B-1' }]);
    put('K-full', 5000, 'A-1');
    const supply = lineSupply(story.floor(), look(story, 60));
    expect(supply.picks).toEqual([]);
    expect(supply.slots.flatMap(({ waiting }) => waiting.map(({ reel }) => reel))).toEqual(['K-full']);
  });

  test('takes a full reel as large as the largest that the log saw, and as usual where it saw none', () => {
    const story = running({ 'M1-F-002': 600 });
    expect(toTheEnd(fullReelSteps(story.floor()))('C-200')).toBe(600);
    expect(toTheEnd(fullReelSteps(story.floor()))('Z-9')).toBe(5000);
    story.tell('reel.put', {
      reel: 'K-big',
      part: 'C-200',
      supplierPart: null,
      quantity: 8000,
      lot: null,
      dateCode: null,
      place: 'A',
      via: 'wedge',
    });
    expect(toTheEnd(fullReelSteps(story.floor()))('C-200')).toBe(8000);
  });

  test('counts only reels that serve as they are and have parts', () => {
    const reel = (name: string, count: number | null) => ({ reel: name, count }) as never; // what is looked at
    const judged = (verdict: 'accepted' | 'held') => ({ verdict }) as never; // what is looked at
    const shelf = [
      { reel: reel('a', 10), fit: judged('accepted') },
      { reel: reel('b', 1), fit: judged('held') },
      { reel: reel('c', 0), fit: judged('accepted') },
      { reel: reel('d', null), fit: judged('accepted') },
      { reel: reel('e', 1), fit: judged('accepted') },
    ];
    expect(waitingReels(shelf).map((each) => each.reel)).toEqual(['a', 'e']);
  });
});

describe('measuringTime()', () => {
  test('leaves out the run’s own stops, one that lasts up to now, and keeps one that never began', () => {
    const story = running({ 'M1-F-001': 9000 });
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '' }, { at: 100 });
    story.tell('run.resumed', { run: 'r1', line: 'L1' }, { at: 160 });
    story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '' }, { at: 300 });
    const run = story.floor().runs.get('r1')!;
    const at = (second: number) => startMs + second * 1000;
    const worked = (second: number) =>
      workingSeconds(
        measuringTime(neverStopping, run, { nowMs: at(second), told: null }),
        at(60),
        at(second),
      );
    expect([worked(300), worked(400)]).toEqual([180, 180]);
  });
});

test('no count is missed of a line that stands, nor of a run whose panels are all done', () => {
  const ceased = (story: Story) => look(story, 3600).counting.ceased;
  const story = running({ 'M1-F-001': 9000 }, { panels: 10 });
  build(story, 5, 30);
  expect(ceased(story)).toBe(true);
  const done = running({ 'M1-F-001': 9000 }, { panels: 5 });
  build(done, 5, 30);
  expect(ceased(done)).toBe(false);
  story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'break', note: '' }, { at: 215 });
  expect(ceased(story)).toBe(false);
});
