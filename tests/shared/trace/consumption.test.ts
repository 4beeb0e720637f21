// What a run took: parts placed by the worked panels of a story, parts on scrapped panels, losses that a count showed. The sum over the reels of a
// slot is panels times what a panel takes, wherever the joint lay.

import { describe, expect, test } from 'vitest';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { consumptionOf } from '../../../shared/trace/consumption.ts';
import { traceLog } from '../../../shared/trace/stretches.ts';
import { consumptionName, consumptionToCsv } from '../../../src/app/screens/log/consumption-csv.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const indexOf = (story: Story) => traceLog([...story.entries].sort(compareEntries));

/** A run of 60 panels with no panel between machine and count: one slot spliced after the 40th, the other with one reel. */
function tellShift(boardsPerPanel = 1): Story {
  const story = beginStory();
  tellPlant(story);
  if (boardsPerPanel > 1) story.tell('setup.taken', { ...brookSetup, boardsPerPanel });
  const machines = [{ machine: 'M1', least: 0, most: 0 }];
  story.tell('line.panels-ruled', { line: 'L1', machines, missed: 0 });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 100 }));
  story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K2', lot: 'LB', quantity: 5000 }));
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 40));
  const splice = { act: 'splice', run: 'r1', reel: 'K3', lot: 'LB' } as const;
  story.tell('reel.verified', verified('M1-F-001', 'R-100', splice));
  story.tell('panels.counted', counted('r1', 20));
  return story;
}

describe('the consumption of a run', () => {
  test('adds up to panels times what a panel takes, slot by slot, whichever reel of a splice had them', () => {
    const rows = consumptionOf(indexOf(tellShift()));
    const sum = (slot: string) =>
      rows.filter((row) => row.slot === slot).reduce((parts, row) => parts + (row.parts ?? 0), 0);
    expect(rows.every(({ kind }) => kind === 'placed')).toBe(true);
    expect(sum('M1-F-001')).toBeCloseTo(60 * 2, 6);
    expect(sum('M1-R-003')).toBeCloseTo(60 * 4, 6);
    const [first, second] = rows.filter(({ slot }) => slot === 'M1-F-001');
    expect([first?.reel, second?.reel]).toEqual(['K1', 'K3']);
    // The old tape surely served the panels counted before the splice.
    expect(first?.least).toBeGreaterThanOrEqual(40 * 2);
    expect((first?.least ?? 0) <= (first?.parts ?? 0) && (first?.parts ?? 0) <= (first?.most ?? 0)).toBe(
      true,
    );
  });

  test('takes off boards that were skipped, and counts parts on scrapped panels beside', () => {
    const story = tellShift(2);
    story.tell('panels.counted', { ...counted('r1', 10), skipped: 5 });
    story.tell('panels.scrapped', { run: 'r1', line: 'L1', panels: 3, serial: null, note: '', via: 'typed' });
    const index = indexOf(story);
    // Five of the twenty boards of which somebody said.
    const share = 1 - 5 / 20;
    const rows = consumptionOf(index);
    const placed = rows.filter(({ kind, slot }) => kind === 'placed' && slot === 'M1-R-003');
    expect(placed[0]?.parts).toBeCloseTo(70 * 4 * share, 6);
    const scrapped = rows.find(({ kind, slot }) => kind === 'scrapped' && slot === 'M1-R-003');
    expect(scrapped?.parts).toBeCloseTo(3 * 4 * share, 6);
  });

  test('tells what a counted reel lost in the run that was being built', () => {
    const story = tellShift();
    const count = { line: 'L1', slot: 'M1-R-003', reel: 'K2', part: 'R-100', lot: 'LB', panels: 60 };
    story.tell('reel.counted', { ...count, quantity: 5000 - 60 * 4 - 12, sd: 0, basis: 'machine' });
    const lost = consumptionOf(indexOf(story)).filter(({ kind }) => kind === 'lost');
    expect(lost).toMatchObject([{ run: 'r1', slot: 'M1-R-003', part: 'R-100' }]);
    expect(lost[0]?.parts).toBeCloseTo(12, 6);
  });

  test('takes no splices for a loss, and no count that contradicts the rest', () => {
    const of = (left: number) => {
      const story = beginStory();
      tellPlant(story);
      story.tell('line.splices-ruled', { line: 'L1', costs: [{ tapeWidthMm: null, parts: 5 }] });
      story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K1', quantity: 100 }));
      story.tell('run.started', started('r1'));
      const splice = { act: 'splice', run: 'r1', reel: 'K2', lot: 'LB', quantity: 1000 } as const;
      story.tell('reel.verified', verified('M1-R-003', 'R-100', splice));
      story.tell('panels.counted', counted('r1', 60));
      const count = { line: 'L1', slot: 'M1-R-003', reel: 'K2', part: 'R-100', lot: 'LB', panels: 60 };
      story.tell('reel.counted', { ...count, quantity: left, sd: 0, basis: 'machine' });
      return consumptionOf(indexOf(story)).filter(({ kind }) => kind === 'lost');
    };
    // 1100 put on, 240 placed, 5 gone with the splice.
    expect(of(1100 - 240 - 5 - 12)[0]?.parts).toBeCloseTo(12, 6);
    // A finger slipped: nobody lost 900 of 1100 parts.
    expect(of(20)).toEqual([]);
  });

  test('is asked by line and time, and is a file with whole numbers and the run’s own figures', () => {
    const story = tellShift();
    story.tell('run.ended', { run: 'r1', line: 'L1', panels: 60, note: '' });
    story.tell('reel.unloaded', unloaded('M1-F-001'));
    const index = indexOf(story);
    expect(consumptionOf(index, { line: 'L9' })).toEqual([]);
    const { startedMs = 0, sinceMs: endedMs = 0 } = index.state.runs.get('r1') ?? {};
    expect(endedMs).toBeGreaterThan(startedMs);
    expect(consumptionOf(index, { fromMs: endedMs + 1 })).toEqual([]);
    // One that began before and went on into the time asked for is in it.
    const rows = consumptionOf(index, { line: 'L1', fromMs: endedMs });
    expect(consumptionOf(indexOf(tellShift()), { fromMs: endedMs + 8 * 3_600_000 })).not.toEqual([]);
    expect(consumptionName(endedMs, 'Fell Works')).toMatch(
      /^reelward-consumption-Fell-Works-\d{8}-\d{4}\.csv$/,
    );
    const [header = '', ...lines] = consumptionToCsv(rows, index.state).slice(1).trim().split('\r\n');
    expect(header.split(',').slice(8, 11)).toEqual(['"what"', '"slot"', '"part"']);
    const line = lines.find((each) => each.includes('"M1-R-003"'))?.split(',') ?? [];
    expect(line.slice(3, 15)).toEqual([
      '"L1"',
      '"Brae line 1"',
      '"Brook"',
      '60',
      '0',
      '"placed"',
      '"M1-R-003"',
      '"R-100"',
      '"K2"',
      '',
      '"LB"',
      '240',
    ]);
  });
});

test('what a reel of one lane alone lost is told in that lane’s run', () => {
  const story = beginStory();
  tellPlant(story);
  const line = story.floor().lines.get('L1');
  if (!line) throw new TypeError('Cannot tell a lane as its line must be told first: current value is none');
  const lane = laneLine('L1', 2);
  story.tell('line.defined', { ...line, line: lane, name: 'Lane 2' });
  const slots = [wantedSlot('M1-F-019', 'Z-900', { perPanel: 2 })];
  story.tell('setup.taken', { ...brookSetup, setup: 'fell', product: 'Fell', line: lane, slots });
  const facts = { line: lane, setup: 'fell', reel: 'K9', quantity: 5000, feeder: 'F-9' };
  story.tell('reel.verified', verified('M1-F-019', 'Z-900', facts));
  story.tell('run.started', started('b', { line: lane, setup: 'fell', product: 'Fell' }));
  story.tell('run.started', started('a'));
  story.tell('panels.counted', { ...counted('b', 1000), line: lane });
  const off = { line: lane, part: 'Z-900', reel: 'K9', quantity: 2960, basis: 'weighed' as const };
  story.tell('reel.unloaded', unloaded('M1-F-019', off));
  const lost = consumptionOf(indexOf(story)).filter(({ kind }) => kind === 'lost');
  expect(lost.map(({ run, line: of, product }) => [run, of, product])).toEqual([['b', lane, 'Fell']]);
});

test('goes by the count where nobody entered the panels in line, and says no more of a tray than it held', () => {
  const story = beginStory();
  tellPlant(story);
  const tray = { comesIn: 'tray' } as const;
  const first = story.tell(
    'reel.verified',
    verified('M1-F-001', 'R-100', { ...tray, reel: 'T1', lot: 'LA', quantity: 590 }),
  );
  story.tell('run.started', started('r1'));
  story.tell('panels.counted', counted('r1', 293));
  const next = { ...tray, act: 'exchange', replaces: idOf(first), run: 'r1', quantity: 2000 } as const;
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { ...next, reel: 'T2', lot: 'LB' }));
  story.tell('panels.counted', counted('r1', 207));
  const rows = consumptionOf(indexOf(story)).filter(({ slot }) => slot === 'M1-F-001');
  expect(rows.map(({ reel }) => reel)).toEqual(['T1', 'T2']);
  const [old, fresh] = rows;
  expect(old?.parts).toBeCloseTo(293 * 2, 6);
  expect(old?.most).toBeLessThanOrEqual(590);
  expect((old?.parts ?? 0) + (fresh?.parts ?? 0)).toBeCloseTo(500 * 2, 6);
  for (const row of rows) {
    expect(row.least ?? 0).toBeLessThanOrEqual(row.parts ?? 0);
    expect(row.parts ?? 0).toBeLessThanOrEqual(row.most ?? 0);
  }
});
