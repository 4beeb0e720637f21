// A session that goes the board's way: the first file is told as what it is, the bill comes beside it, and a sheet is gone back to.

import { describe, expect, test } from 'vitest';
import { createSheetReader, type SheetPort } from '../../../../../../src/app/screens/plant/sheet/reader.ts';
import { createSheetSession } from '../../../../../../src/app/screens/plant/sheet/session.ts';
import { createSheetDesk } from '../../../../../../src/worker/sheet-desk.ts';
import { beginStory, tellPlant } from '../../../../../shared/floor/story.ts';

function setUp() {
  const remembered: Record<string, Record<string, string>> = {};
  const story = beginStory();
  tellPlant(story);
  const reader = createSheetReader(() => {
    const desk = createSheetDesk({
      decode: (bytes, encoding) => new TextDecoder(encoding).decode(bytes),
      readWorkbook: () => Promise.reject(new Error('no workbook here')),
    });
    const port: SheetPort = {
      onmessage: null,
      onerror: null,
      postMessage: (request) => {
        const tell = (data: unknown) => port.onmessage?.({ data } as MessageEvent); // the one member that is read
        void desk.read(request, tell).then(tell);
      },
      terminate: () => undefined,
    };
    return port;
  });
  const floor = story.floor();
  const session = createSheetSession(reader, {
    floor: () => floor,
    line: () => null,
    remembered: () => remembered,
  });
  return { session, remembered };
}

const places = 'Ref,X,Y,Side\nR1,1,1,Top\nR2,2,1,Top\nC1,3,1,Top\n';
const bill = 'Thing,Where,Whose\nBW-1,R1-R2,KP-1\nBW-2,C1,KP-2\n';

describe('a board’s own files', () => {
  test('a placement file chosen as a sheet goes its own way, with its only side and the plant’s only line', async () => {
    const { session } = setUp();
    await session.open('sheet', 'moor_board.pos', places);
    expect(session.inHand.value).toMatchObject({ sheet: null, placements: { name: 'moor_board.pos' } });
    expect(session.form.value).toMatchObject({ product: 'moor board', side: null, line: 'L1' });
    // Which side is placed is known with the bill only, since the placement file names no part.
    await session.open('bill', 'bill.csv', 'Part,Designators\nBW-1,R1-R2\nBW-2,C1\n');
    expect(session.form.value?.side).toBe('top');
  });

  test('a placement file chosen as another sheet goes its own way too, and a sheet of the same name stays one', async () => {
    const { session } = setUp();
    const sheet = 'Slot,Part,Qty per panel,Tape width,Pitch\nM1-F-001,R-100,4,8,4\n';
    await session.open('sheet', 'tarn.csv', sheet);
    await session.open('sheet', 'tarn.csv', sheet);
    expect(session.inHand.value).toMatchObject({ sheet: { name: 'tarn.csv' }, placements: null });
    await session.open('sheet', 'moor_board.pos', places);
    expect(session.fault.value).toBeNull();
    expect(session.inHand.value).toMatchObject({ sheet: null, placements: { name: 'moor_board.pos' } });
    expect(session.form.value).toMatchObject({ product: 'moor board' });
  });

  test('a bill chosen first waits for the placement file, and nothing of it is lost', async () => {
    const { session } = setUp();
    await session.open('sheet', 'bill.csv', 'Part,Designators\nBW-1,R1-R2\nBW-2,C1\n');
    expect(session.inHand.value).toMatchObject({ sheet: null, placements: null, summary: { board: null } });
    await session.open('placements', 'moor.pos', places);
    expect(session.inHand.value?.summary.board?.parts.map(({ part }) => part)).toEqual(['BW-1', 'BW-2']);
  });

  test('a bill has its columns corrected, and the next one of this look is read that way', async () => {
    const { session, remembered } = setUp();
    await session.open('placements', 'moor.pos', places);
    await session.open('bill', 'bill.csv', bill);
    const choice = session.chooseBillColumn(0, 'part');
    if (choice) remembered[choice.key] = { ...choice.kept };
    await expect.poll(() => session.inHand.value?.summary.board?.parts[0]?.part).toBe('BW-1');
    await session.drop('bill');
    expect(session.inHand.value).toMatchObject({ bill: null, choices: { billColumns: null, variant: null } });
    await session.open('bill', 'next.csv', bill);
    expect(session.inHand.value?.summary).toMatchObject({
      bill: { isRemembered: true },
      board: { parts: [{ part: 'BW-1' }, { part: 'BW-2' }] },
    });
  });

  test('several columns of a bill may hold supplier parts, and one only the part', async () => {
    const { session } = setUp();
    await session.open('placements', 'moor.pos', places);
    await session.open(
      'bill',
      'bill.csv',
      'Part,Designators,Whose,Theirs\nBW-1,R1-R2,KP-1,KQ-1\nBW-2,C1,KP-2,KQ-2\n',
    );
    session.chooseBillColumn(2, 'supplierParts');
    const columns = () => session.inHand.value?.summary.bill?.columns.map(({ field }) => field);
    await expect.poll(columns).toEqual(['part', 'designators', 'supplierParts', null]);
    session.chooseBillColumn(3, 'supplierParts');
    await expect.poll(columns).toEqual(['part', 'designators', 'supplierParts', 'supplierParts']);
    session.chooseBillColumn(2, 'part');
    await expect.poll(columns).toEqual([null, 'designators', 'part', 'supplierParts']);
  });

  test('is read as a sheet where a person says so, and a sheet in hand keeps what is chosen beside it', async () => {
    const { session } = setUp();
    await session.open('sheet', 'moor.pos', places);
    await session.readAsSheet();
    expect(session.inHand.value).toMatchObject({ sheet: { name: 'moor.pos' }, placements: null });
    await session.open('sheet', 'other.pos', places);
    expect(session.inHand.value?.sheet?.name).toBe('other.pos');
  });

  test('a board put aside waits with all that was said of it, while another one is chosen, and is gone on with', async () => {
    const { session } = setUp();
    await session.open('sheet', 'moor_board.pos', places);
    session.slots.sayWidth('BW-1', 24);
    const plan = {
      line: 'L1',
      side: 'top' as const,
      slots: new Map([['BW-1', 'M1-F-004']]),
      said: new Set<string>(),
      left: new Set<string>(),
      reasons: new Map(),
    };
    session.slots.plan.value = plan;
    session.hold();
    expect([session.inHand.value, session.form.value, session.slots.plan.value]).toEqual([null, null, null]);
    await session.open('sheet', 'heath.pos', places);
    expect(session.inHand.value?.placements?.name).toBe('heath.pos');
    session.clear();
    const [board] = session.held.value;
    if (board === undefined) throw new Error('nothing waits');
    session.takeUp(board);
    expect(session.inHand.value?.placements?.name).toBe('moor_board.pos');
    expect(session.form.value?.product).toBe('moor board');
    expect(session.slots.plan.value).toBe(plan);
    expect(session.slots.widths.value.get('BW-1')).toBe(24);
    expect(session.held.value).toEqual([]);
  });

  test('another board begins without the slots of the one before', async () => {
    const { session } = setUp();
    await session.open('sheet', 'moor.pos', places);
    session.slots.sayWidth('BW-1', 12);
    await session.open('bill', 'bill.csv', bill);
    expect(session.slots.widths.value.size).toBe(1);
    session.clear();
    expect([session.inHand.value, session.slots.widths.value.size]).toEqual([null, 0]);
  });
});
