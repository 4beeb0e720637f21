// The rows of the company's tables, told of small stories without a server.

import { describe, expect, test } from 'vitest';
import { readFloorEntry } from '../../shared/floor/kinds.ts';
import { laneLine } from '../../shared/floor/lanes.ts';
import { compareEntries } from '../../shared/log/order.ts';
import type { TraceQuestion } from '../../shared/trace/question.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import type { PlantLog } from '../../src/cli/company.ts';
import { type Row, shiftColumns, shiftRows, whereColumns, whereRows } from '../../src/cli/company-tables.ts';
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
    floorEntries: sorted.flatMap((entry) => readFloorEntry(entry) ?? []),
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

const whereOf = (story: Story, question: TraceQuestion, what: 'panels' | 'reel') =>
  byColumn(whereColumns, whereRows(logOf(story), question)).filter((row) => row['what'] === what);

describe('whereRows()', () => {
  test('has these columns, in this order', () => {
    expect(whereColumns.join(',')).toBe(
      'plant,fingerprint,what,standing,asOf,line,run,product,slot,place,reel,part,supplierPart,lot,dateCode,sureFirst,sureLast,possibleFirst,possibleLast,serials,guessed,madeOf,goesOn,left,at,who,entry',
    );
  });

  test('has every cell under its column', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.panels-ruled', {
      line: 'L1',
      machines: [{ machine: 'M1', least: 0, most: 0 }],
      missed: 0,
    });
    const loaded = verified('M1-F-001', 'R-100', { reel: 'K1', lot: 'LA', quantity: 500 });
    const put = story.tell('reel.verified', loaded);
    const run = story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 1, 'PN1'));
    const told = { plant: 'Brae Works', fingerprint: null, standing: 'claimed', asOf: null, line: 'L1' };
    const { supplierPart, dateCode } = loaded;
    const label = { slot: 'M1-F-001', reel: 'K1', part: 'R-100', supplierPart, lot: 'LA', dateCode };
    const panels = {
      run: 'r1',
      product: 'Brook',
      sureFirst: 1,
      sureLast: 1,
      possibleFirst: 1,
      possibleLast: 1,
      serials: 'PN1',
      guessed: '',
      goesOn: 'yes',
      at: run.at,
      who: 'ana',
      entry: idOf(put),
    };
    const of = { ...told, ...label, madeOf: '', place: null };
    expect(whereOf(story, { lot: 'LA' }, 'panels')).toEqual([
      { ...of, ...panels, what: 'panels', left: null },
    ]);
    const none = Object.fromEntries(Object.keys(panels).map((column) => [column, null]));
    expect(whereOf(story, { lot: 'LA' }, 'reel')).toEqual([{ ...of, ...none, what: 'reel', left: 500 }]);
  });

  test('has a row for each piece that was cut off the reel asked for, and for what it was joined into', () => {
    const story = beginStory();
    tellPlant(story);
    const stock = { supplierPart: null, dateCode: null, quantity: 1000, place: 'A1', via: 'typed' } as const;
    story.tell('reel.put', { ...stock, reel: 'K1', part: 'R-100', lot: 'LA' });
    story.tell('reel.put', { ...stock, reel: 'K2', part: 'R-100', lot: 'LB' });
    story.tell('reel.put', { ...stock, reel: 'K9', part: 'R-100', lot: 'LC' });
    const cut = { reel: 'K2', into: 'K3', part: 'R-100', lot: null, quantity: 300, left: 700 } as const;
    story.tell('reel.split', { ...cut, via: 'typed' });
    const join = { reel: 'K1', from: 'K2', part: 'R-100', lot: 'LA', quantity: 1700, sd: 0 } as const;
    story.tell('reel.merged', { ...join, basis: 'combined', via: 'typed' });
    const rows = (question: TraceQuestion) =>
      whereOf(story, question, 'reel').map(({ reel, madeOf }) => [reel, madeOf]);
    const all = [
      ['K1', 'K2'],
      ['K2', ''],
      ['K3', 'K2'],
    ];
    expect(rows({ reel: 'k2' }).sort()).toEqual(all);
    // The piece bears no lot, and the joined reel another one.
    expect(rows({ lot: 'LB' }).sort()).toEqual(all);
    expect(rows({ reel: 'K3' })).toEqual([['K3', 'K2']]);
    // When a panel was built bounds the panels alone.
    expect(rows({ reel: 'K2', from: '2027-01-01T00:00:00Z' }).sort()).toEqual(all);
    expect(rows({ reel: 'K2', part: 'C-200' })).toEqual([]);
  });

  test('names no package that has no id, as no panel does', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LA', quantity: 500 }));
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 30));
    expect(whereOf(story, { lot: 'LA' }, 'panels')).toMatchObject([{ slot: 'M1-F-001', reel: null }]);
    expect(whereOf(story, { lot: 'LA' }, 'reel')).toMatchObject([{ slot: 'M1-F-001', reel: null }]);
  });

  test('names no package without an id among those that one is made of', () => {
    const story = beginStory();
    tellPlant(story);
    const first = story.tell('reel.verified', verified('M1-F-001', 'R-100', { lot: 'LA', quantity: 500 }));
    story.tell('reel.unloaded', unloaded('M1-F-001', { quantity: 500, basis: 'typed' }));
    const cut = { reel: `~${idOf(first)}`, into: 'K3', part: 'R-100', lot: 'LA', quantity: 200, left: 300 };
    story.tell('reel.split', { ...cut, via: 'typed' });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K3', lot: 'LA', quantity: 200 }));
    story.tell('run.started', started('r1'));
    story.tell('panels.counted', counted('r1', 30));
    for (const what of ['panels', 'reel'] as const)
      expect(whereOf(story, { reel: 'K3' }, what)).toMatchObject([{ reel: 'K3', madeOf: '' }]);
  });
});

describe('shiftRows()', () => {
  test('tells of a lane that was taken away what it built, and nothing of one where nothing happened', () => {
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

  test('counts the refusals of a lane that was taken away without having built', () => {
    const story = twoLanes();
    const wrong = { ...verified('M1-F-001', 'R-999', { reel: 'K9' }), line: lane2, setup: 'right' };
    const reasons = [{ code: 'wrong-part', facts: {} }];
    story.tell('reel.verified', { ...wrong, verdict: 'refused', reasons });
    story.tell('lane.withdrawn', { line: lane2 });
    expect(story.floor().lanesGone.get(lane2)?.hasBuilt).toBe(false);
    expect(shiftOf(story)).toMatchObject([
      { line: 'L1', refused: 0 },
      { line: lane2, refused: 1 },
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
