// The line in small: every place is drawn where its feeder stands, none over another, and the counts beside it are of what is drawn.

import { describe, expect, test } from 'vitest';
import { setupProgress } from '../../../../../shared/floor/progress.ts';
import type { CartPlace, Line } from '../../../../../shared/floor/state.ts';
import {
  bankWith,
  cellsOf,
  columnsOf,
  countStandings,
  feederReady,
  keyOfBank,
  type MapBank,
  type MapPlace,
  mapBanks,
  nameInBank,
  progressOfBank,
  standingOn,
} from '../../../../../src/app/screens/load/model.ts';
import { beginStory, tellPlant, verified } from '../../../../shared/floor/story.ts';

const place = (slot: string, position: number | null, more: Partial<MapPlace> = {}): MapPlace => ({
  slot,
  position,
  lane: null,
  positions: 1,
  phase: 'verified',
  seen: false,
  progress: null,
  loaded: null,
  ...more,
});

const bank = (places: readonly MapPlace[]): MapBank => ({
  machine: 'M1',
  machineName: 'first',
  bank: 'F',
  bankName: 'front',
  hasTrays: false,
  positions: 60,
  places,
});

const drawn = (places: readonly MapPlace[]) =>
  cellsOf({ places }).map(({ place: { slot }, column, span }) => [slot, column, span]);

describe('cellsOf()', () => {
  test('leaves the gaps that the bank has, and gives a wide feeder its positions', () => {
    expect(drawn([place('F1', 1), place('F4', 4, { positions: 3 }), place('F9', 9)])).toEqual([
      ['F1', 1, 1],
      ['F4', 4, 3],
      ['F9', 9, 1],
    ]);
  });

  test('puts the lanes of one feeder side by side on its positions, and what stands behind it where it is', () => {
    const stick = (lane: string) => place(`F2-${lane}`, 2, { lane, positions: 3 });
    const cells = cellsOf({ places: [stick('1'), stick('2'), place('F5', 5)] });
    expect(cells.map(({ column, span, lane }) => [column, span, lane])).toEqual([
      [2, 3, { at: 0, of: 2 }],
      [2, 3, { at: 1, of: 2 }],
      [5, 1, null],
    ]);
  });

  test('puts a place that another stands on behind it, where neither says a lane', () => {
    expect(drawn([place('F2', 2), place('F02', 2), place('F3', 3)])).toEqual([
      ['F2', 2, 1],
      ['F02', 3, 1],
      ['F3', 4, 1],
    ]);
  });

  test('puts places without a position one after the other', () => {
    expect(drawn([place('TRAY-A', null), place('TRAY-B', null)])).toEqual([
      ['TRAY-A', 1, 1],
      ['TRAY-B', 2, 1],
    ]);
  });
});

test.each([
  ['M1-T-004', 4, null, '4'],
  ['M1-F-014A', 14, 'A', '14A'],
  ['M1-F-014-2', 14, '2', '14-2'],
  ['TRAY-A', null, null, 'TRAY-A'],
])('nameInBank() of %s tells lanes of one position apart', (slot, position, lane, name) => {
  expect(nameInBank({ slot, position, lane })).toBe(name);
});

test('columnsOf() reaches as far as the banks are used, not as far as the machine goes', () => {
  expect(columnsOf([bank([place('F1', 1)]), bank([place('R8', 8, { positions: 2 })])])).toBe(9);
  expect(columnsOf([bank([])])).toBe(1);
});

test('standingOn() tells a place seen in a running sweep by that', () => {
  expect(standingOn({ phase: 'verified', seen: true })).toBe('seen');
  expect(standingOn({ phase: 'other', seen: false })).toBe('other');
});

describe('of a line with one slot loaded', () => {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K1' }));
  const floor = story.floor();
  const progress = setupProgress(floor, 'L1');
  const banks = mapBanks(floor.lines.get('L1') as Line, progress, null); // told by the story

  test('every slot of the setup is drawn once', () => {
    const cells = banks.flatMap((each) => cellsOf(each).map((cell) => cell.place.slot));
    expect(cells).toEqual(progress.slots.map(({ slot }) => slot));
  });

  test('counts and progress add up to what is drawn', () => {
    expect([...countStandings(banks)]).toEqual([
      ['verified', 1],
      ['missing', 3],
    ]);
    expect(banks.map(progressOfBank)).toEqual([
      { wanted: 3, verified: 1 },
      { wanted: 1, verified: 0 },
    ]);
  });

  test('bankWith() finds the bank of a slot, and none for a slot that is on no bank', () => {
    const rear = bankWith(banks, 'M1-R-003');
    expect(rear && keyOfBank(rear)).toBe('M1\nR');
    expect(bankWith(banks, 'M9-F-001')).toBeNull();
    expect(bankWith(banks, null)).toBeNull();
  });
});

describe('feederReady()', () => {
  const on = (more: Partial<CartPlace>): ReadonlyMap<string, CartPlace> =>
    new Map([
      [
        'M1-F-002',
        { line: 'L1', setup: 's', slot: 'M1-F-002', feeder: 'F-7', ...more } as CartPlace, // what is asked of it
      ],
    ]);
  const asked = { line: 'L1', setup: 's', slot: 'M1-F-002' };

  test('names the feeder and its cart', () => {
    expect(feederReady({ carts: new Map([['C-1', on({})]]) }, asked)).toEqual({ feeder: 'F-7', cart: 'C-1' });
  });

  test.each([
    ['for another line', { line: 'L2' }],
    ['for another setup', { setup: 't' }],
    ['for another slot', { slot: 'M1-F-003' }],
    ['without a feeder that anybody named', { feeder: null }],
  ])('knows none %s', (_, more) => {
    expect(feederReady({ carts: new Map([['C-1', on(more)]]) }, asked)).toBeNull();
  });
});
