import { describe, expect, test } from 'vitest';
import { checkPayload } from '../../../../../../shared/floor/kinds.ts';
import { rangesOf } from '../../../../../../shared/floor/slot-ranges.ts';
import {
  formOf,
  type LineForm,
  lineDrafts,
  readLine,
} from '../../../../../../src/app/screens/plant/lines/model.ts';
import { beginStory, wantedSlot } from '../../../../../shared/floor/story.ts';

const bankName = (bank: string) => ({ F: 'Front', R: 'Rear' })[bank] ?? bank;
const fresh: LineForm = {
  line: null,
  name: 'Line 1',
  zone: 'Europe/Berlin',
  ranges: [{ first: 'M1-F-001', last: 'M1-F-010' }],
};

/** A plant with a line whose setup wants two slots of the one bank, and a place of its own. */
function usedPlant() {
  const story = beginStory();
  story.tell('line.defined', {
    line: 'L1',
    name: 'Line one',
    zone: 'Europe/London',
    machines: [
      {
        machine: 'M1',
        name: 'first',
        banks: [
          { bank: 'F', name: 'near', positions: 12 },
          { bank: 'LIFT', name: 'tray lift', positions: 0 },
        ],
      },
    ],
  });
  story.tell('setup.taken', {
    setup: 's1',
    product: 'Fell',
    side: 'top',
    revision: '1',
    line: 'L1',
    slots: [wantedSlot('M1-F-003', 'A'), wantedSlot('M1-F-011', 'B')],
    source: 'x',
  });
  return story.floor();
}

describe('a new line', () => {
  test('is written with its first rules, in what the log takes', () => {
    const floor = beginStory().floor();
    const read = readLine(fresh, floor, bankName);
    if (read.obstacle !== null) throw new Error(read.obstacle.code);
    const drafts = lineDrafts(fresh, 'L1', read.machines);
    expect(drafts.map(({ kind }) => kind)).toEqual(['line.defined', 'line.ruled']);
    for (const { kind, payload } of drafts) expect(checkPayload(kind, payload)).toEqual(payload);
    expect(drafts[0]?.payload).toMatchObject({
      machines: [{ machine: 'M1', banks: [{ bank: 'F', name: 'Front', positions: 10, first: 'M1-F-001' }] }],
    });
  });

  test.each([
    [{ name: ' ' }, 'name-missing'],
    [{ zone: 'Nowhere/At all' }, 'zone-unknown'],
    [{ zone: '' }, 'zone-unknown'],
    [{ ranges: [{ first: '', last: ' ' }] }, 'no-banks'],
  ] as const)('is kept back: %j', (part, code) => {
    expect(readLine({ ...fresh, ...part }, beginStory().floor(), bankName).obstacle?.code).toBe(code);
  });

  test('tells which row is wrong, by its place among all rows', () => {
    const ranges = [{ first: '', last: '' }, ...fresh.ranges, { first: 'M1-F-001', last: 'M1-F-003' }];
    expect(readLine({ ...fresh, ranges }, beginStory().floor(), bankName).obstacle).toEqual({
      code: 'ranges',
      faults: [{ at: 2, code: 'twice' }],
    });
  });

  test('is called by its number, in the zone of the plant’s others', () => {
    const form = formOf(usedPlant(), null, (number) => `Line ${number}`);
    expect(form).toMatchObject({ name: 'Line 2', zone: 'Europe/London', ranges: [{ first: '', last: '' }] });
  });
});

describe('a line that is changed', () => {
  const change = (ranges: LineForm['ranges']) => {
    const floor = usedPlant();
    const form = formOf(floor, floor.lines.get('L1') ?? null, String);
    return readLine({ ...form, ranges }, floor, bankName);
  };

  test('keeps its names and the places that have no number', () => {
    const floor = usedPlant();
    const line = floor.lines.get('L1') ?? null;
    const form = formOf(floor, line, String);
    expect(form.ranges).toEqual(line && rangesOf(line));
    expect(form.ranges).toEqual([{ first: 'M1-F-001', last: 'M1-F-012' }]);
    expect(change(form.ranges).machines).toEqual([
      {
        machine: 'M1',
        name: 'first',
        banks: [
          { bank: 'F', name: 'near', positions: 12, first: 'M1-F-001' },
          { bank: 'LIFT', name: 'tray lift', positions: 0 },
        ],
      },
    ]);
  });

  test('may grow shorter as far as nothing in use is lost', () => {
    expect(change([{ first: 'M1-F-001', last: 'M1-F-011' }]).obstacle).toBeNull();
    expect(change([{ first: 'M1-F-001', last: 'M1-F-010' }]).obstacle).toEqual({
      code: 'lost',
      slots: ['M1-F-011'],
    });
    expect(change([{ first: 'M2-F-001', last: 'M2-F-020' }]).obstacle).toEqual({
      code: 'lost',
      slots: ['M1-F-003', 'M1-F-011'],
    });
  });

  test('may have its places written otherwise, as long as they are the same', () => {
    expect(change([{ first: 'm1/front/1', last: 'm1/front/20' }]).obstacle).toBeNull();
  });
});
