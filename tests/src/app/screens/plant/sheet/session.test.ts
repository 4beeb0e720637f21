// The sheet in hand and its reader, with the desk itself behind a port that can be made to wait or to break.

import { describe, expect, test } from 'vitest';
import { emptyState } from '../../../../../../shared/floor/state.ts';
import { asChosen } from '../../../../../../src/app/screens/plant/sheet/as-chosen.ts';
import { createSheetReader, type SheetPort } from '../../../../../../src/app/screens/plant/sheet/reader.ts';
import { createSheetSession } from '../../../../../../src/app/screens/plant/sheet/session.ts';
import { createSheetDesk } from '../../../../../../src/worker/sheet-desk.ts';
import type { SheetReply, SheetRequest } from '../../../../../../src/worker/sheet-protocol.ts';

interface FakePort extends SheetPort {
  readonly requests: SheetRequest[];
  ended: boolean;
}

function setUp(answers = true) {
  const ports: FakePort[] = [];
  const remembered: Record<string, Record<string, string>> = {};
  const reader = createSheetReader(() => {
    const desk = createSheetDesk({
      decode: (bytes, encoding) => new TextDecoder(encoding).decode(bytes),
      readWorkbook: () => Promise.reject(new Error('no workbook here')),
    });
    const port: FakePort = {
      requests: [],
      ended: false,
      onmessage: null,
      onerror: null,
      postMessage(request) {
        port.requests.push(request);
        const tell = (reply: SheetReply) => {
          if (!port.ended) port.onmessage?.({ data: reply } as MessageEvent<SheetReply>); // the one member that is read
        };
        if (answers) void desk.read(request, tell).then(tell);
      },
      terminate() {
        port.ended = true;
      },
    };
    ports.push(port);
    return port;
  });
  const session = createSheetSession(reader, {
    floor: emptyState,
    line: () => null,
    remembered: () => remembered,
  });
  return { session, ports, remembered };
}

const good = 'Address,Item,Units,Pitch\nM1-F-001,A,4,4\n';

describe('a session', () => {
  test('opens a sheet, corrects a column, and says what to remember', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    expect(session.inHand.value?.summary.slots[0]?.perPanel).toBeNull();
    const choice = session.chooseSheetColumn(2, 'perPanel');
    expect(choice?.kept).toMatchObject({ perPanel: 'Units', slot: 'Address', note: '' });
    await expect.poll(() => session.inHand.value?.summary.slots[0]?.perPanel).toBe(4);
  });

  test('builds a choice on the one before, though the sheet is still read by that, and shows both meanwhile', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', 'Address,Item,Units,Carrier\nM1-F-001,A,4,8\n');
    session.chooseSheetColumn(2, 'perPanel');
    const choice = session.chooseSheetColumn(3, 'tapeWidth');
    const { summary } = session.inHand.value ?? {};
    expect(summary?.slots[0]?.perPanel).toBeNull();
    expect(summary && asChosen(summary, session.choosing.value).columns.map(({ field }) => field)).toEqual([
      'slot',
      'part',
      'perPanel',
      'tapeWidth',
    ]);
    expect(choice?.kept).toMatchObject({ perPanel: 'Units', tapeWidth: 'Carrier' });
    await expect
      .poll(() => session.inHand.value?.summary.slots[0])
      .toMatchObject({ perPanel: 4, tapeWidth: 8 });
    expect(session.choosing.value).toBeNull();
  });

  test('what was chosen is gone where the reading by it is given up, or a new file comes', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    session.chooseSheetColumn(2, 'perPanel');
    session.giveUp();
    expect([session.choosing.value, session.busy.value]).toEqual([null, null]);
    session.chooseSheetColumn(2, 'perPanel');
    const opening = session.open('sheet', 'moor.csv', good);
    expect(session.choosing.value).toBeNull();
    await opening;
    expect(session.inHand.value?.sheet?.name).toBe('moor.csv');
  });

  test('reads the next sheet with this header as it was corrected', async () => {
    const { session, remembered } = setUp();
    await session.open('sheet', 'loch.csv', good);
    const choice = session.chooseSheetColumn(2, 'perPanel');
    if (choice) remembered[choice.key] = { ...choice.kept };
    await session.open('sheet', 'moor.csv', good);
    expect(session.inHand.value?.summary).toMatchObject({ isRemembered: true, slots: [{ perPanel: 4 }] });
  });

  test('keeps what it had where the next file cannot be read', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    const before = session.inHand.value;
    await session.open('sheet', 'empty.csv', '');
    expect(session.fault.value).toEqual({ role: 'sheet', fault: 'empty', name: 'empty.csv' });
    expect(session.inHand.value).toBe(before);
    await session.open('placements', 'blank.csv', ' \n');
    expect(session.fault.value).toEqual({ role: 'placements', fault: 'blank', name: 'blank.csv' });
    expect(session.inHand.value).toBe(before);
    await session.choose({ machine: 'M1' });
    expect(session.fault.value).toBeNull();
  });

  test('keeps what was filled in for a corrected file of the same name, and begins anew for another', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    if (session.form.value) session.form.value = { ...session.form.value, revision: 'D' };
    await session.open('sheet', 'loch.csv', `${good}M1-F-002,B,1,4\n`);
    expect(session.form.value?.revision).toBe('D');
    expect(session.inHand.value?.summary.slots).toHaveLength(2);
    await session.open('sheet', 'moor.csv', good);
    expect(session.form.value).toMatchObject({ product: 'moor', revision: '' });
  });

  test('gives up a reading that takes too long, and reads the next with a new worker', async () => {
    const { session, ports } = setUp(false);
    const opening = session.open('sheet', 'loch.csv', good);
    expect(session.busy.value).not.toBeNull();
    session.giveUp();
    await opening;
    expect(session.busy.value).toBeNull();
    expect(ports[0]?.ended).toBe(true);
    void session.open('sheet', 'loch.csv', good);
    expect(ports).toHaveLength(2);
  });

  test('a newer request takes the place of an older one', async () => {
    const { session, ports } = setUp(false);
    const first = session.open('sheet', 'one.csv', good);
    void session.open('sheet', 'two.csv', good);
    await first;
    expect(ports.map(({ ended }) => ended)).toEqual([true, false]);
    expect(session.busy.value).not.toBeNull();
  });

  test('what is chosen while another file is read is chosen for that reading, and the file comes', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    const opening = session.open('bill', 'bill.csv', 'Part,Designators\nA,R1-R4\n');
    const choosing = session.choose({ boardsPerPanel: 2 });
    session.chooseSheetColumn(2, 'perPanel');
    await Promise.all([opening, choosing]);
    await expect.poll(() => session.busy.value).toBeNull();
    expect(session.inHand.value).toMatchObject({
      sheet: { name: 'loch.csv' },
      bill: { name: 'bill.csv' },
      choices: { boardsPerPanel: 2, columns: { perPanel: ['Units'] } },
    });
  });

  test('a file that is opened, or taken out, while a choice is read does not undo the choice', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', 'Address,Item,Units,Carrier\nM1-F-001,A,4,8\n');
    session.chooseSheetColumn(2, 'perPanel');
    const opening = session.open('bill', 'bill.csv', 'Part,Designators\nA,R1-R4\n');
    const choice = session.chooseSheetColumn(3, 'tapeWidth');
    expect(choice?.kept).toMatchObject({ perPanel: 'Units', tapeWidth: 'Carrier' });
    await Promise.all([opening, session.drop('bill')]);
    expect(session.inHand.value).toMatchObject({
      bill: null,
      summary: { slots: [{ perPanel: 4, tapeWidth: 8 }] },
    });
  });

  test('a column chosen on the screen is not chosen for another sheet that is being read', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    const opening = session.open('sheet', 'moor.csv', 'Address,Item,Units,Qty per panel\nM1-F-001,A,9,4\n');
    session.chooseSheetColumn(2, 'perPanel');
    await opening;
    await expect.poll(() => session.busy.value).toBeNull();
    expect(session.inHand.value).toMatchObject({ sheet: { name: 'moor.csv' }, choices: { columns: null } });
    expect(session.inHand.value?.summary.slots[0]?.perPanel).toBe(4);
    expect(session.form.value?.product).toBe('moor');
  });

  test('an answer to what was asked before a sheet was put away or aside brings it back to nobody', async () => {
    const { session } = setUp();
    await session.open('sheet', 'loch.csv', good);
    const choosing = session.choose({ machine: 'M1' });
    session.clear();
    await choosing;
    expect([session.inHand.value, session.busy.value]).toEqual([null, null]);
    await session.open('sheet', 'loch.csv', good);
    const again = session.choose({ machine: 'M1' });
    session.hold();
    await again;
    expect([session.inHand.value, session.held.value.length]).toEqual([null, 1]);
    const third = session.open('sheet', 'moor.csv', good);
    const [board] = session.held.value;
    if (board) session.takeUp(board);
    await third;
    expect(session.inHand.value?.sheet?.name).toBe('loch.csv');
  });

  test('a worker that breaks is a file that cannot be read', async () => {
    const { session, ports } = setUp(false);
    const opening = session.open('sheet', 'loch.csv', good);
    ports[0]?.onerror?.({ message: 'out of memory' } as ErrorEvent); // the one member that is read
    await opening;
    expect(session.fault.value?.fault).toBe('failed');
    expect(session.busy.value).toBeNull();
  });
});
