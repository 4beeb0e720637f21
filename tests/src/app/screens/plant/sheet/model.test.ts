import { describe, expect, test } from 'vitest';
import { checkPayload } from '../../../../../../shared/floor/kinds.ts';
import { readSheet } from '../../../../../../shared/sheet/read.ts';
import {
  approvedByPart,
  firstForm,
  freeLineId,
  groupProblems,
  lacking,
  listProblems,
  nameFromFile,
  newestRevision,
  obstacle,
  planTake,
  type TakeForm,
  takeDrafts,
} from '../../../../../../src/app/screens/plant/sheet/model.ts';
import type { SheetSummary } from '../../../../../../src/worker/sheet-protocol.ts';
import { beginStory, tellPlant, wantedSlot } from '../../../../../shared/floor/story.ts';

const names = { machine: (machine: string) => machine, bank: (bank: string) => bank };
const form: TakeForm = {
  product: 'Heather board',
  side: 'top',
  revision: 'C',
  line: 'L1',
  newLine: 'L2',
  newLineName: 'Line 2',
};

/** The plant with two revisions of one product. */
function floorWithRevisions() {
  const story = beginStory();
  tellPlant(story);
  for (const revision of ['A', 'B']) {
    story.tell('setup.taken', {
      setup: `heather-${revision}`,
      product: 'Heather board',
      side: 'top',
      revision,
      line: 'L1',
      slots: [wantedSlot('M1-F-001', 'X'), wantedSlot('M1-F-003', revision)],
      source: 'heather.csv',
    });
  }
  return story.floor();
}

function summaryOf(
  rows: readonly (readonly (string | number)[])[],
  more: Partial<SheetSummary> = {},
): SheetSummary {
  const reading = readSheet([['Slot', 'Part', 'Qty', 'Tape width', 'Pitch'], ...rows]);
  return {
    pages: [],
    page: 0,
    title: { product: null, revision: null, side: null },
    columns: [],
    key: '',
    isRemembered: false,
    slots: reading.slots,
    ignored: {},
    placements: null,
    bill: null,
    board: null,
    scope: null,
    problems: reading.problems.map((problem) => ({ ...problem, role: 'sheet' as const })),
    ...more,
  };
}

const slots = summaryOf([
  ['M1-F-001', 'X', 1, 8, 4],
  ['M1-F-002', 'Y', 2, 8, 4],
]).slots;

function plan(changed: Partial<TakeForm> = {}, floor = floorWithRevisions()) {
  const given = { ...form, ...changed };
  const made = planTake(given, slots, { floor, zone: 'Europe/London', names });
  return { made, form: given, floor };
}

describe('firstForm()', () => {
  test('takes what the sheet says itself', () => {
    const title = { product: 'Moor lamp', revision: 'D', side: 'bottom' } as const;
    const first = firstForm(summaryOf([['M1-F-001', 'X', 1, 8, 4]], { title }), 'x.csv', {
      floor: floorWithRevisions(),
      line: null,
    });
    expect(first).toMatchObject({ product: 'Moor lamp', revision: 'D', side: 'bottom', line: 'L1' });
  });

  test('takes product and side of the earlier sheet of the same name, never its revision', () => {
    const first = firstForm(summaryOf([['14', 'X', 1, 8, 4]]), 'heather.csv', {
      floor: floorWithRevisions(),
      line: null,
    });
    expect(first).toMatchObject({ product: 'Heather board', revision: '', side: 'top', line: 'L1' });
  });

  test('leaves open what nothing says', () => {
    const first = firstForm(summaryOf([['M9-F-001', 'X', 1, 8, 4]]), 'moor_lamp v2.csv', {
      floor: beginStory().floor(),
      line: null,
    });
    expect(first).toMatchObject({ product: 'moor lamp v2', side: null, line: null, newLine: 'L1' });
  });
});

test('`nameFromFile()` leaves out folder and ending', () => {
  expect(nameFromFile('C:\\sheets\\heather_board.rev.xlsx')).toBe('heather board.rev');
});

test('`freeLineId()` passes over lines that are there', () => {
  expect(freeLineId(floorWithRevisions())).toBe('L2');
});

test('`newestRevision()` does not care for capitals and outer blanks of the product', () => {
  const of = { line: 'L1', product: ' heather BOARD ', side: 'top' } as const;
  expect(newestRevision(floorWithRevisions(), of)?.revision).toBe('B');
  expect(newestRevision(floorWithRevisions(), { ...of, side: 'bottom' })).toBeNull();
});

describe('planTake()', () => {
  test('compares with the newest revision of the same product and side', () => {
    const { made } = plan();
    expect(made.before?.revision).toBe('B');
    expect(made.diff?.added.map(({ slot }) => slot)).toEqual(['M1-F-002']);
    expect(made.diff?.removed.map(({ slot }) => slot)).toEqual(['M1-F-003']);
  });

  test('compares with nothing where product or line are new', () => {
    expect(plan({ product: 'Moor lamp' }).made.diff).toBeNull();
    expect(plan({ line: null }).made.diff).toBeNull();
  });

  test('finds no difference in the setup that was just taken in', () => {
    const { made } = plan({ product: 'Fresh' });
    const story = beginStory();
    tellPlant(story);
    for (const draft of takeDrafts({ ...form, product: 'Fresh' }, made, { setup: 's', source: 'f.csv' }))
      story.tell(draft.kind, draft.payload);
    const again = plan({ product: 'Fresh', revision: 'D' }, story.floor()).made;
    expect(again.diff).toMatchObject({ added: [], removed: [], changed: [], same: 2 });
  });
});

describe('obstacle()', () => {
  test.each([
    ['errors of the sheet come first', { product: '' }, 2, { code: 'sheet-errors', count: 2 }],
    ['a product', { product: ' ' }, 0, { code: 'product-missing' }],
    ['a side', { side: null }, 0, { code: 'side-missing' }],
    ['a revision', { revision: '' }, 0, { code: 'revision-missing' }],
    ['a revision that is new', { revision: 'b' }, 0, { code: 'revision-there', revision: 'b' }],
    ['a name for a new line', { line: null, newLine: ' ' }, 0, { code: 'line-missing' }],
    ['a line that is new', { line: null, newLine: 'L1' }, 0, { code: 'line-there', line: 'L1' }],
    ['nothing more', {}, 0, null],
    ['nothing more for a new line', { line: null }, 0, null],
  ] as const)('wants %s', (_, changed, errors, wanted) => {
    const { made, form: given, floor } = plan(changed);
    expect(obstacle(given, made, { floor, errors })).toEqual(wanted);
  });

  test('wants slots', () => {
    const floor = floorWithRevisions();
    const made = planTake(form, [], { floor, zone: 'UTC', names });
    expect(obstacle(form, made, { floor, errors: 0 })).toEqual({ code: 'no-slots' });
  });

  test('keeps out a setup that no entry can carry', () => {
    const floor = floorWithRevisions();
    const [first] = slots;
    if (!first) throw new Error('no slot');
    const many = Array.from({ length: 4000 }, (_, at) => ({ ...first, slot: `M1-F-${at + 1}` }));
    const made = planTake(form, many, { floor, zone: 'UTC', names });
    expect(obstacle(form, made, { floor, errors: 0 })).toEqual({ code: 'too-large', slots: 4000 });
  });
});

describe('takeDrafts()', () => {
  const kinds = (changed: Partial<TakeForm>) => {
    const { made, form: given } = plan(changed);
    const drafts = takeDrafts(given, made, { setup: 's1', source: 'heather.csv' });
    for (const draft of drafts) checkPayload(draft.kind, draft.payload as never); // the pair is kept together by `DraftEntry`
    return drafts.map(({ kind }) => kind);
  };

  test('writes the setup alone where the line has room', () => {
    expect(kinds({})).toEqual(['setup.taken']);
  });

  test('defines a new line with its first rules in the same write', () => {
    expect(kinds({ line: null })).toEqual(['line.defined', 'line.ruled', 'setup.taken']);
  });

  test('makes room where slots lie beyond the line, and changes no rules', () => {
    const floor = floorWithRevisions();
    const beyond = summaryOf([['M1-F-099', 'X', 1, 8, 4]]).slots;
    const made = planTake(form, beyond, { floor, zone: 'UTC', names });
    const drafts = takeDrafts(form, made, { setup: 's', source: 'x' });
    expect(drafts.map(({ kind }) => kind)).toEqual(['line.defined', 'setup.taken']);
    expect(made.grown).toMatchObject([{ machine: 'M1', bank: 'F', after: 99 }]);
  });
});

test('`listProblems()` puts errors first and leaves unused columns to the table of columns', () => {
  const { problems } = summaryOf([
    ['M1-F-001', 'X', 1, 8, ''],
    ['M1-F-001', 'Y', 1, 8, 4],
  ]);
  const extra = readSheet([
    ['Slot', 'Part', 'Blah'],
    ['M1-F-1', 'A', 'x'],
  ]).problems;
  const listed = listProblems([
    ...problems,
    ...extra.map((problem) => ({ ...problem, role: 'sheet' as const })),
  ]);
  expect(listed[0]?.code).toBe('slotTwice');
  expect(listed.map(({ code }) => code)).not.toContain('columnUnknown');
  const severities = listed.map(({ severity }) => severity);
  expect(severities.lastIndexOf('error')).toBeLessThan(severities.indexOf('warning'));
});

test('`groupProblems()` keeps every problem, those of one kind together', () => {
  const { problems } = summaryOf([
    ['M1-F-001', 'X', 1, 8, ''],
    ['M1-F-002', 'Y', 1, '', 4],
    ['M1-F-003', 'Z', 1, 8, ''],
  ]);
  const groups = groupProblems(problems);
  expect(groups.flatMap((group) => group.problems)).toHaveLength(problems.length);
  expect(groups.find(({ code }) => code === 'pitchMissing')?.problems.map(({ row }) => row)).toEqual([2, 4]);
});

test('`approvedByPart()` turns the approvals round', () => {
  const story = beginStory();
  story.tell('supplier.approved', { supplierPart: 'S1', part: 'A' });
  story.tell('supplier.approved', { supplierPart: 'S2', part: 'A' });
  story.tell('supplier.approved', { supplierPart: 'S2', part: 'B' });
  expect(approvedByPart(story.floor())).toEqual([
    ['A', ['S1', 'S2']],
    ['B', ['S2']],
  ]);
});

test('`lacking()` tells whether slots name no machine or bank', () => {
  expect(lacking(slots)).toEqual({ machine: false, bank: false });
  expect(lacking(summaryOf([['14', 'A', 1, 8, 4]]).slots)).toEqual({ machine: true, bank: true });
  expect(lacking(summaryOf([['tray', 'A', 1, 8, 4]]).slots)).toEqual({ machine: false, bank: false });
});
