// The rows of the company's tables, told of small stories without a server.

import { describe, expect, test } from 'vitest';
import { type FloorEntry, readFloorEntry } from '../../shared/floor/kinds.ts';
import { laneLine } from '../../shared/floor/lanes.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import type { PlantLog } from '../../src/cli/company.ts';
import { type Row, shiftColumns, shiftRows } from '../../src/cli/company-tables.ts';
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
  wantedSlot,
} from '../shared/floor/story.ts';

/** The story as an export of which nothing is left out. */
function logOf(story: Story): PlantLog {
  const sorted = [...story.entries].sort(compareEntries);
  return {
    file: 'brae.jsonl',
    name: 'Brae Works',
    fingerprint: null,
    listAt: null,
    isKnown: null,
    entries: sorted.length,
    proven: 0,
    claims: [],
    leftOut: 0,
    endsAt: null,
    from: sorted[0]?.at ?? null,
    to: sorted.at(-1)?.at ?? null,
    faults: [],
    standing: 'claimed',
    standingOf: () => 'claimed',
    index: traceLog(sorted),
    floorEntries: sorted.map(readFloorEntry).filter((each): each is FloorEntry => each !== null),
  };
}

const byColumn = (columns: readonly string[], rows: readonly Row[]) =>
  rows.map((row) => Object.fromEntries(columns.map((column, at) => [column, row[at]])));

const lane2 = laneLine('L1', 2);

/** The plant with a second lane that takes from a slot of both lanes. */
function twoLanes(): Story {
  const story = beginStory();
  tellPlant(story, { rules: { labelShare: 0 } });
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  story.tell('line.defined', { line: lane2, name: 'Right', zone: 'UTC', machines: [] });
  const slots = [wantedSlot('M1-F-001', 'R-100')];
  story.tell('setup.taken', { ...brookSetup, setup: 'right', line: lane2, slots });
  story.tell('setup.chosen', { line: lane2, setup: 'right' });
  return story;
}

const shiftOf = (story: Story) =>
  byColumn(shiftColumns, shiftRows(logOf(story), { fromMs: startMs, toMs: startMs + 8 * 3_600_000 }));

describe('shiftRows()', () => {
  test('tells of a lane that was taken away what it built, and nothing of one that never built', () => {
    const story = twoLanes();
    const lane3 = laneLine('L1', 3);
    story.tell('line.defined', { line: lane3, name: 'Far', zone: 'UTC', machines: [] });
    story.tell('run.started', started('r2', { line: lane2, setup: 'right' }));
    story.tell('panels.counted', { ...counted('r2', 10), line: lane2 });
    story.tell('run.stopped', { line: lane2, run: 'r2', reason: 'other', note: '' });
    story.tell('run.ended', { run: 'r2', line: lane2, panels: 10, note: '' });
    for (const line of [lane2, lane3]) story.tell('lane.withdrawn', { line });
    expect(story.floor().lanesGone.size).toBe(2);
    expect(shiftOf(story)).toMatchObject([
      { line: 'L1', lineName: 'Brae line 1', stops: 0 },
      { line: lane2, lineName: 'Right', stops: 1 },
    ]);
  });

  test('tells the lost parts of a conveyor once, in the row of the line that has its machines', () => {
    const story = twoLanes();
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1', quantity: 1000 }));
    story.tell('run.started', started('r1'));
    story.tell('run.started', started('r2', { line: lane2, setup: 'right' }));
    story.tell('panels.counted', counted('r1', 200));
    story.tell('panels.counted', { ...counted('r2', 100), line: lane2 });
    // Both lanes put two parts on each of 300 panels, and 394 of 1000 are left: 606 were picked for them.
    const off = { reel: 'K1', part: 'R-100', quantity: 394, basis: 'machine', run: 'r1' } as const;
    story.tell('reel.unloaded', unloaded('M1-F-001', off));
    expect(shiftOf(story)).toMatchObject([
      { line: 'L1', picks: 606, lostParts: 5, lostPartsSd: 2 },
      { line: lane2, picks: null, lostParts: null, lostPartsSd: null },
    ]);
  });
});
