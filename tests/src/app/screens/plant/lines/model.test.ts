import { describe, expect, test } from 'vitest';
import { checkPayload } from '../../../../../../shared/floor/kinds.ts';
import { rangesOf } from '../../../../../../shared/floor/slot-ranges.ts';
import {
  formOf,
  type LineForm,
  lineDrafts,
  ownLines,
  readLine,
  withLane,
  withoutLane,
} from '../../../../../../src/app/screens/plant/lines/model.ts';
import { beginStory, type Story, started, wantedSlot } from '../../../../../shared/floor/story.ts';

const bankName = (bank: string) => ({ F: 'Front', R: 'Rear' })[bank] ?? bank;
const fresh: LineForm = {
  line: null,
  name: 'Line 1',
  zone: 'Europe/Berlin',
  ranges: [{ first: 'M1-F-001', last: 'M1-F-010' }],
  lanes: [],
  opened: [],
};
const nothing = beginStory().floor();

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
    const drafts = lineDrafts(fresh, 'L1', read.machines, nothing);
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

describe('the lanes of a conveyor', () => {
  const twoLanes: LineForm = {
    ...fresh,
    name: 'Line 1, lane 1',
    lanes: [{ lane: 2, name: 'Line 1, lane 2' }],
  };

  test('are written as lines with the same machines, and are in the form when it is opened again', () => {
    const story = beginStory();
    const read = readLine(twoLanes, story.floor(), bankName);
    if (read.obstacle !== null) throw new Error(read.obstacle.code);
    const drafts = lineDrafts(twoLanes, 'L1', read.machines, nothing);
    expect(drafts.map(({ kind }) => kind)).toEqual(['line.defined', 'line.ruled', 'line.defined']);
    for (const { kind, payload } of drafts) story.tell(kind, payload as never);
    const floor = story.floor();
    expect(floor.lines.get('L1~lane2')).toMatchObject({ name: 'Line 1, lane 2', machines: read.machines });
    expect(floor.rules.get('L1~lane2')).toEqual({ ...floor.rules.get('L1'), line: 'L1~lane2' });
    const again = formOf(floor, floor.lines.get('L1') ?? null, String);
    expect(again).toMatchObject({ name: 'Line 1, lane 1', lanes: twoLanes.lanes, opened: [2] });
    // A line more is the plant's second, lanes or not.
    expect(formOf(floor, null, String).name).toBe('2');
  });

  test.each([
    ['no name', '  ', 'name-missing'],
    ['the name of the first', 'Line 1, lane 1', 'lanes-alike'],
  ])('wait for %s', (_, name, code) => {
    const read = readLine({ ...twoLanes, lanes: [{ lane: 2, name }] }, beginStory().floor(), bankName);
    expect(read.obstacle).toEqual({ code });
  });

  test('keep slots that the product of another lane wants', () => {
    const story = beginStory();
    const read = readLine(twoLanes, story.floor(), bankName);
    if (read.obstacle !== null) throw new Error(read.obstacle.code);
    for (const { kind, payload } of lineDrafts(twoLanes, 'L1', read.machines, nothing))
      story.tell(kind, payload as never);
    const slots = [wantedSlot('M1-F-009', 'A')];
    story.tell('setup.taken', {
      setup: 's2',
      product: 'Tarn',
      side: 'top',
      revision: '1',
      line: 'L1~lane2',
      slots,
      source: 'x',
    });
    const shorter = {
      ...twoLanes,
      line: 'L1',
      opened: [2],
      ranges: [{ first: 'M1-F-001', last: 'M1-F-008' }],
    };
    expect(readLine(shorter, story.floor(), bankName).obstacle).toEqual({
      code: 'lost',
      slots: ['M1-F-009'],
    });
  });
});

test('a line of an old plant that is called as a lane would be is listed as a line, until the other is told', () => {
  const story = beginStory();
  const told = { zone: 'UTC', machines: [] };
  story.tell('line.defined', { line: 'A~lane2', name: 'Old line', ...told });
  expect(ownLines(story.floor()).map(({ name }) => name)).toEqual(['Old line']);
  story.tell('line.defined', { line: 'A', name: 'Line A', ...told });
  expect(ownLines(story.floor()).map(({ name }) => name)).toEqual(['Line A']);
});

test('a lane that is added, taken away and added again is called as it was at first', () => {
  const called = (line: string, lane: number) => `${line}, lane ${lane}`;
  const two = withLane(fresh, called);
  expect(two).toMatchObject({ name: 'Line 1, lane 1', lanes: [{ lane: 2, name: 'Line 1, lane 2' }] });
  expect(withLane(two, called).lanes.map(({ name }) => name)).toEqual(['Line 1, lane 2', 'Line 1, lane 3']);
  expect(withoutLane(two, called)).toEqual(fresh);
  expect(withLane(withoutLane(two, called), called)).toEqual(two);
  const own = { ...two, name: 'Left' };
  expect(withoutLane(own, called)).toMatchObject({ name: 'Left', lanes: [] });
});

describe('the lanes of a line that others change while its form is open', () => {
  const called = (line: string, lane: number) => `${line}, lane ${lane}`;
  const machines = [{ machine: 'M1', name: 'M1', banks: [{ bank: 'F', name: 'F', positions: 10 }] }];
  const tell = (story: Story, lane: number, name: string) =>
    story.tell('line.defined', { line: `L1~lane${lane}`, name, zone: 'UTC', machines });
  /** The line's form as it opens, with a first lane and these. */
  function open(...lanes: readonly number[]) {
    const story = beginStory();
    story.tell('line.defined', { line: 'L1', name: 'Left', zone: 'UTC', machines });
    for (const lane of lanes) tell(story, lane, `Lane ${lane}`);
    const form = formOf(story.floor(), story.floor().lines.get('L1') ?? null, String);
    return { story, form };
  }
  const written = (form: LineForm, story: Story) =>
    lineDrafts(form, 'L1', machines, story.floor()).map(({ kind, payload }) => {
      const { line, name = '' } = payload as { readonly line: string; readonly name?: string }; // both kinds have a line
      return [kind, `${line} ${name}`.trim()];
    });

  test('one that was taken out of the form is taken away', () => {
    const { story, form } = open(2, 3);
    expect(written(withoutLane(form, called), story)).toEqual([
      ['line.defined', 'L1 Left'],
      ['line.defined', 'L1~lane2 Lane 2'],
      ['lane.withdrawn', 'L1~lane3'],
    ]);
    // Put back before the form is saved, it is the same lane.
    expect(withLane(withoutLane(form, called), called).lanes.map(({ lane }) => lane)).toEqual([2, 3]);
  });

  test('one that others added stays', () => {
    const { story, form } = open(2);
    tell(story, 3, 'Lane 3');
    expect(written(form, story)).toEqual([
      ['line.defined', 'L1 Left'],
      ['line.defined', 'L1~lane2 Lane 2'],
    ]);
  });

  test('one that is new in the form takes the next number, and a name of its own', () => {
    const { story, form } = open(2);
    const more = withLane(form, called);
    tell(story, 3, 'Left, lane 3');
    expect(written(more, story).at(-1)).toEqual(['line.defined', 'L1~lane4 Left, lane 3']);
    expect(readLine(more, story.floor(), bankName).obstacle).toEqual({ code: 'lanes-alike' });
  });

  test('each keeps its name where the second was taken away, before or since', () => {
    const { story, form } = open(2, 3);
    story.tell('lane.withdrawn', { line: 'L1~lane2' });
    const third = ['line.defined', 'L1~lane3 Lane 3'];
    expect(written(form, story)).toEqual([['line.defined', 'L1 Left'], third]);
    const again = formOf(story.floor(), story.floor().lines.get('L1') ?? null, String);
    expect(written(again, story)).toEqual([['line.defined', 'L1 Left'], third]);
    expect(withLane(again, called).lanes.map(({ lane }) => lane)).toEqual([2, 3]);
  });

  test('one that is in use again keeps the form from being saved without it', () => {
    const { story, form } = open(2);
    const without = withoutLane(form, called);
    expect(readLine(without, story.floor(), bankName).obstacle).toBeNull();
    const slots = [wantedSlot('M1-F-001', 'A')];
    const setup = { setup: 's', product: 'Fell', side: 'top', revision: 'A', slots, source: 'x' } as const;
    story.tell('setup.taken', { ...setup, line: 'L1~lane2' });
    story.tell('run.started', { ...started('r'), line: 'L1~lane2', setup: 's' });
    expect(readLine(without, story.floor(), bankName).obstacle).toEqual({
      code: 'lane-held',
      name: 'Lane 2',
      held: { why: 'runs' },
    });
    expect(readLine(form, story.floor(), bankName).obstacle).toBeNull();
  });
});
