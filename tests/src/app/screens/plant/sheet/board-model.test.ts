// A board's parts on a line: what is known of each, what was proposed and said, what an edit breaks, and what is taken in.

import { describe, expect, test } from 'vitest';
import { proposeSlots } from '../../../../../../shared/assign/propose.ts';
import type { BoardPart } from '../../../../../../shared/sheet/board-parts.ts';
import { toSetupSlots } from '../../../../../../shared/sheet/taken.ts';
import {
  type BoardContext,
  boardPlaces,
  byWalk,
  countRows,
  inTheWay,
  leaveOut,
  linesWithSlots,
  moveTo,
  planOf,
  proposalQuestion,
  setupsElsewhere,
  slotRows,
  whyOf,
} from '../../../../../../src/app/screens/plant/sheet/board-model.ts';
import { boardSlots } from '../../../../../../src/app/screens/plant/sheet/board-slots.ts';
import { bankLists } from '../../../../../../src/app/screens/plant/sheet/slot-lists.ts';
import { beginStory, tellPlant, verified, wantedSlot } from '../../../../../shared/floor/story.ts';

const board = (part: string, more: Partial<BoardPart> = {}): BoardPart => ({
  part,
  isNamedByValue: false,
  supplierParts: [],
  top: 2,
  bottom: 0,
  designators: ['R1', 'R2'],
  value: '',
  package: '',
  ...more,
});

/** The plant with its product, another one beside it, and two reels on the line. */
function floorNow() {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', {
    setup: 'moor-top-a',
    product: 'Moor',
    side: 'top',
    revision: 'A',
    line: 'L1',
    source: 'moor.csv',
    slots: [
      wantedSlot('M1-F-015', 'W-24', { tapeWidthMm: 24, positions: 3, pitchMm: 12, msl: '3' }),
      wantedSlot('M1-F-019A', 'L-1'),
    ],
  });
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'A1' }));
  story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'A2' }));
  return story.floor();
}

const contextOf = (more: Partial<BoardContext> = {}): BoardContext => ({
  floor: floorNow(),
  line: 'L1',
  side: 'top',
  product: 'Tarn',
  widths: new Map(),
  plan: null,
  ...more,
});

/** The context with a proposal made for these parts. */
function proposed(parts: readonly BoardPart[], context: BoardContext): BoardContext {
  const question = proposalQuestion(slotRows(parts, context), context);
  if (question === null) throw new Error('no line');
  return { ...context, plan: planOf(proposeSlots(question), context) };
}

const parts = [
  board('r-100'),
  board('W-24'),
  board('L-1'),
  board('NEW', { package: 'SOIC-8', supplierParts: ['KP-1'] }),
  board('BELOW', { top: 0, bottom: 1 }),
];

describe('what is known of a part', () => {
  test('its tape from the newest setup that names it, else the usual width of its package, else nothing', () => {
    const rows = slotRows([...parts, board('ODD')], contextOf());
    expect(
      rows.map(({ part, widthMm, widthFrom, positions }) => [part, widthMm, widthFrom, positions]),
    ).toEqual([
      ['R-100', 8, 'setup', 1],
      ['W-24', 24, 'setup', 3],
      ['L-1', 8, 'setup', 1],
      ['NEW', 12, 'usual', 2],
      ['ODD', null, null, 1],
    ]);
  });

  test('what a person says of a width comes first, and takes the positions of the plant’s own feeders', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('feeder.known', { feeder: 'F-1', tapeWidthMm: 12, pitchesMm: [4], positions: 1 });
    const widths = new Map([['R-100', 12]]);
    const [row] = slotRows([board('r-100')], contextOf({ floor: story.floor(), widths }));
    expect(row).toMatchObject({ widthMm: 12, widthFrom: 'said', positions: 1 });
  });

  test('a side takes its own parts only, with their number on it', () => {
    const rows = slotRows(parts, contextOf({ side: 'bottom' }));
    expect(rows.map(({ part, perPanel }) => [part, perPanel])).toEqual([['BELOW', 1]]);
  });
});

describe('a proposal', () => {
  const context = proposed(parts, contextOf());
  const rows = slotRows(parts, context);
  const row = (part: string) => rows.find(({ board: { part: own } }) => own === part);

  test('keeps what stands, goes where other setups have a part, and says which is which', () => {
    // Written as the plant writes it: a label is compared letter by letter.
    expect(row('r-100')).toMatchObject({
      part: 'R-100',
      slot: 'M1-F-001',
      standsOn: 'M1-F-001',
      asIn: 'Brook',
    });
    expect(row('W-24')).toMatchObject({ slot: 'M1-F-015', standsOn: null, asIn: 'Moor' });
    expect(row('L-1')).toMatchObject({ slot: 'M1-F-019A', asIn: 'Moor' });
    expect(row('NEW')?.asIn).toBeNull();
    expect(rows.map(whyOf)).toEqual(['stays', 'new', 'new', 'new']);
    expect(countRows(rows)).toEqual({ stays: 1, moves: 0, fresh: 3, open: 0, left: 0, faulty: 0 });
  });

  test('lists them as one walks, and comes to slots of a setup with what the plant knows of each part', () => {
    expect(byWalk(rows).placed.map(({ slot }) => slot)).toEqual([
      'M1-F-001',
      row('NEW')?.slot,
      'M1-F-015',
      'M1-F-019A',
    ]);
    const slots = toSetupSlots(boardSlots(rows, 'top'));
    expect(slots.find(({ part }) => part === 'W-24')).toMatchObject({
      perPanel: 2,
      tapeWidthMm: 24,
      pitchMm: 12,
      positions: 3,
      msl: '3',
    });
    // A usual width is no knowledge: room is taken for it, and no feeder is refused by it.
    expect(slots.find(({ part }) => part === 'NEW')).toMatchObject({
      tapeWidthMm: null,
      pitchMm: null,
      positions: 2,
      supplierParts: ['KP-1'],
    });
  });

  test('an earlier revision of the product counts before other products, and of each the newest only', () => {
    const story = beginStory();
    tellPlant(story);
    const taken = (setup: string, product: string, revision: string) =>
      story.tell('setup.taken', {
        setup,
        product,
        revision,
        side: 'top',
        line: 'L1',
        source: `${setup}.csv`,
        slots: [wantedSlot('M1-F-004', 'X')],
      });
    taken('tarn-1', 'tarn ', '1');
    taken('tarn-2', 'Tarn', '2');
    taken('moor-1', 'Moor', '1');
    const setups = setupsElsewhere(story.floor(), contextOf());
    expect(setups.map(({ setup }) => setup)).toEqual(['tarn-2', 'brook-top-a', 'moor-1']);
  });

  test('jobs in hand count before other products, in their order and in the revision that is to be built', () => {
    const story = beginStory();
    tellPlant(story);
    const taken = (setup: string, product: string, slot: string) =>
      story.tell('setup.taken', {
        setup,
        product,
        side: 'top',
        revision: setup,
        line: 'L1',
        source: 'x',
        slots: [wantedSlot(slot, 'SHARED')],
      });
    taken('moor-1', 'Moor', 'M1-R-004');
    taken('moor-2', 'Moor', 'M1-R-005');
    taken('heath-1', 'Heath', 'M1-R-006');
    taken('glen-1', 'Glen', 'M1-R-007');
    const job = { panels: 10, panelSeconds: 30, dueMs: null, isHeld: false };
    story.tell('plan.kept', {
      line: 'L1',
      jobs: [
        { ...job, id: 'a', setup: 'moor-1' },
        { ...job, id: 'b', setup: 'heath-1' },
      ],
      byHand: {},
    });
    const context = contextOf({ floor: story.floor() });
    expect(setupsElsewhere(story.floor(), context).map(({ setup }) => setup)).toEqual([
      'brook-top-a',
      'moor-1',
      'heath-1',
      'glen-1',
    ]);
    const { plan } = proposed([board('SHARED')], context);
    expect(plan?.slots.get('SHARED')).toBe('M1-R-004');
  });

  test('a line without positions is none that slots can be found on', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.defined', { line: 'L0', name: 'Bare', zone: 'UTC', machines: [] });
    expect(linesWithSlots(story.floor()).map(({ line }) => line)).toEqual(['L1']);
  });
});

describe('what a person changes', () => {
  const context = proposed(parts, contextOf());
  const plan = context.plan ?? planOf([], context);
  const rowsWith = (next: typeof plan) => slotRows(parts, { ...context, plan: next });
  const faultsOf = (next: typeof plan, part: string) =>
    rowsWith(next).find((row) => row.board.part === part)?.faults;

  test('a slot that another part has: the two change places, and a new proposal leaves both there', () => {
    const moved = moveTo(plan, 'NEW', 'm1-f-1');
    expect(moved.slots.get('NEW')).toBe('m1-f-1');
    expect(moved.slots.get('R-100')).toBe(plan.slots.get('NEW'));
    const again = proposed(parts, { ...context, plan: moved });
    expect(again.plan?.slots).toEqual(moved.slots);
  });

  test('a slot from which its feeder is in the way of another, or reaches past the end', () => {
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-F-014'), 'NEW')).toEqual([
      { code: 'overlap', part: 'W-24', slot: 'M1-F-015' },
    ]);
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-F-014'), 'W-24')?.[0]).toMatchObject({
      code: 'overlap',
      part: 'NEW',
    });
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-R-020'), 'NEW')).toEqual([{ code: 'over-end', positions: 2 }]);
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-R-021'), 'NEW')).toEqual([{ code: 'off-line' }]);
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-R-019'), 'NEW')).toEqual([]);
  });

  test('lanes: a wide feeder has no room on one, a whole feeder is in its way, and two widths on one feeder are a warning', () => {
    expect(faultsOf(moveTo(plan, 'NEW', 'M1-F-019B'), 'NEW')).toEqual([
      { code: 'lane-wide', positions: 2 },
      { code: 'lane-width', part: 'L-1', slot: 'M1-F-019A' },
    ]);
    expect(faultsOf(moveTo(plan, 'r-100', 'M1-F-019'), 'r-100')?.[0]).toMatchObject({
      code: 'overlap',
      part: 'L-1',
    });
    expect(faultsOf(moveTo(plan, 'r-100', 'M1-F-019B'), 'r-100')).toEqual([]);
    const said = slotRows(parts, {
      ...context,
      plan: moveTo(plan, 'r-100', 'M1-F-019B'),
      widths: new Map([['L-1', 4]]),
    });
    expect(countRows(said).faulty).toBe(0);
    expect(said.find(({ part }) => part === 'L-1')?.faults).toEqual([
      { code: 'lane-width', part: 'R-100', slot: 'M1-F-019B' },
    ]);
  });

  test('places of their own are no lanes of one feeder, however their texts begin', () => {
    const beside = moveTo(moveTo(plan, 'NEW', 'RACK/LEFT/TOP/A'), 'r-100', 'RACK/LEFT/TOP/B');
    expect(faultsOf(beside, 'NEW')).toEqual([]);
    expect(faultsOf(beside, 'r-100')).toEqual([]);
  });

  test('a part left out has no slot and is not asked for again, until it is taken back', () => {
    const without = leaveOut(plan, 'NEW', true);
    expect(countRows(rowsWith(without))).toMatchObject({ open: 0, left: 1 });
    const again = proposed(parts, { ...context, plan: without });
    expect(again.plan?.slots.has('NEW')).toBe(false);
    expect(boardSlots(slotRows(parts, again), 'top').map(({ part }) => part)).not.toContain('NEW');
    expect(countRows(rowsWith(leaveOut(without, 'NEW', false)))).toMatchObject({ open: 1, left: 0 });
    expect(countRows(rowsWith(moveTo(without, 'NEW', 'M1-R-001')))).toMatchObject({ open: 0, left: 0 });
  });

  test('a feeder on the line that the board does not need is in the way from any position that it shares', () => {
    expect(inTheWay(rowsWith(plan), context)).toEqual([]);
    // C-200 stands on 2 and is no part of this board; NEW takes two positions.
    expect(inTheWay(rowsWith(moveTo(leaveOut(plan, 'r-100', true), 'NEW', 'M1-F-001')), context)).toEqual([
      { slot: 'M1-F-002', part: 'C-200', width: 1 },
    ]);
  });

  test('a part that found no slot says why', () => {
    const narrow = proposed([board('HUGE')], contextOf({ widths: new Map([['HUGE', 200]]) }));
    expect(slotRows([board('HUGE')], narrow)[0]).toMatchObject({ slot: null, reason: 'too-wide' });
  });
});

describe('trays', () => {
  function withTrays() {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.defined', {
      line: 'L1',
      name: 'Line 1',
      zone: 'UTC',
      machines: [
        {
          machine: 'M1',
          name: 'Machine 1',
          banks: [
            { bank: 'F', name: 'Front', positions: 20 },
            { bank: 'T', name: 'Trays', positions: 2, holds: 'trays' },
          ],
        },
      ],
    });
    return story;
  }

  test('a part comes on trays by a person’s word, by the setup that has it on such a place, by its package', () => {
    const story = withTrays();
    story.tell('setup.taken', {
      setup: 'moor',
      product: 'Moor',
      side: 'top',
      revision: 'A',
      line: 'L1',
      source: 'moor.csv',
      slots: [wantedSlot('M1-T-001', 'MEM')],
    });
    const context = contextOf({ floor: story.floor(), widths: new Map([['SAID', 'tray' as const]]) });
    const rows = slotRows(
      [board('SAID'), board('MEM'), board('CPU', { package: 'BGA-256' }), board('R')],
      context,
    );
    expect(rows.map(({ part, isOnTray, widthFrom }) => [part, isOnTray, widthFrom])).toEqual([
      ['SAID', true, 'said'],
      ['MEM', true, 'setup'],
      ['CPU', true, 'usual'],
      ['R', false, null],
    ]);
    const plan = proposed([board('CPU', { package: 'BGA-256' }), board('R')], context).plan;
    expect(plan?.slots.get('CPU')).toBe('M1-T-002');
    expect(plan?.slots.get('R')).toMatch(/^M1-F-/);
  });

  test('a feeder among trays and a tray among feeders are told, and keep nobody from taking it in', () => {
    const context = contextOf({ floor: withTrays().floor(), widths: new Map([['B', 'tray' as const]]) });
    const two = [board('A'), board('B')];
    let plan = proposed(two, context).plan;
    if (plan === null) throw new Error('no plan');
    plan = moveTo(moveTo(plan, 'A', 'M1-T-001'), 'B', 'M1-F-010');
    const rows = slotRows(two, { ...context, plan });
    expect(rows.map(({ faults }) => faults.map(({ code }) => code))).toEqual([['on-trays'], ['no-tray']]);
    expect(countRows(rows).faulty).toBe(0);
  });
});

describe('look-alikes', () => {
  const four = ['CAP-10012', 'CAP-10013', 'RES-47', 'IC-9000'].map((name) => board(name));

  test('side by side are told on the second of the two, and apart not', () => {
    const context = contextOf();
    const start = {
      line: 'L1',
      side: 'top',
      said: new Set<string>(),
      left: new Set<string>(),
      reasons: new Map(),
    } as const;
    const plan = {
      ...start,
      slots: new Map([
        ['CAP-10012', 'M1-F-004'],
        ['CAP-10013', 'M1-F-005'],
        ['RES-47', 'M1-F-009'],
      ]),
    };
    const rows = slotRows(four, { ...context, plan });
    expect(rows.map(({ faults }) => faults)).toEqual([
      [],
      [{ code: 'look-alike', part: 'CAP-10012', slot: 'M1-F-004' }],
      [],
      [],
    ]);
    expect(countRows(rows).faulty).toBe(0);
    const apart = slotRows(four, { ...context, plan: moveTo(plan, 'CAP-10013', 'M1-F-007') });
    expect(apart.flatMap(({ faults }) => faults)).toEqual([]);
  });
});

test('bank by bank with what is free between: a wide feeder takes all its places, a lane its position', () => {
  const context = contextOf();
  const start = {
    line: 'L1',
    side: 'top',
    said: new Set<string>(),
    left: new Set<string>(),
    reasons: new Map(),
  } as const;
  const plan = {
    ...start,
    slots: new Map([
      ['R-100', 'M1-F-003'],
      ['W-24', 'M1-F-015'],
      ['L-1', 'M1-F-019A'],
    ]),
  };
  const rows = slotRows(parts, { ...context, plan });
  const places = boardPlaces(context);
  if (places === null) throw new Error('no line');
  const [front] = bankLists(rows, places);
  const told = front?.lines.map((each) =>
    each.is === 'part' ? each.row.slot : `${each.first}..${each.last}`,
  );
  expect(told?.slice(0, 6)).toEqual([
    'M1-F-001..M1-F-002',
    'M1-F-003',
    'M1-F-004..M1-F-014',
    'M1-F-015',
    'M1-F-018..M1-F-018',
    'M1-F-019A',
  ]);
});
