// Rows of a setup sheet one by one: what each wants on its slot, what is told of it, and what stands between the rows, worked out by hand.

import { describe, expect, it } from 'vitest';
import { hasSheetErrors } from '../../../shared/sheet/problems.ts';
import { readSheet, type SheetOptions } from '../../../shared/sheet/read.ts';
import { fromSetupSlots, toSetupSlots } from '../../../shared/sheet/taken.ts';
import { textToRows } from '../../../shared/sheet/text.ts';

function read(lines: readonly string[], options: SheetOptions = {}) {
  const { slots, problems, ignoredRows, ignored } = readSheet(textToRows(lines.join('\n')).rows, options);
  return {
    slots,
    told: problems.map(({ code, row, column }) => `${code} ${row} ${column}`),
    facts: problems.map(({ facts }) => facts),
    left: ignoredRows.map(({ row, reason }) => `${row} ${reason}`),
    ignored,
  };
}
const plain = 'Slot,Part,Qty,Tape width,Pitch';
const sheet = (...rows: readonly string[]) => [plain, ...rows];
const long = (count: number) => 'x'.repeat(count);

describe('a row', () => {
  it('says all that a slot may want', () => {
    const header = `${plain},Sharing,Alternates,MPN,Description,Package,Pins,Body size,Body thickness,MSL,Polarity,Feeder type,Drive,Pocket depth,Critical,Positions,Side,RefDes,Note`;
    const row =
      'M1-F-014,A,2,8 mm,4,split,B / C / A,KP-100; KP-200,Res,0603,2,1.6x0.8,0.5,2a,dot left,twin,electric,0.7,yes,2,top,"R1,R2",care';
    const { slots, told } = read([header, row]);
    expect(told).toEqual(['alternateIsPart 2 Alternates']);
    expect(slots).toEqual([
      {
        row: 2,
        slot: 'M1-F-014',
        address: { slot: 'M1-F-014', machine: 'M1', bank: 'F', position: 14, lane: null },
        part: 'A',
        perPanel: 2,
        tapeWidth: 8,
        pitch: 4,
        sharing: 'split',
        alternates: ['B', 'C'],
        supplierParts: ['KP-100', 'KP-200'],
        description: 'Res',
        package: '0603',
        pins: 2,
        bodySizeMm: [1.6, 0.8],
        bodyThicknessMm: 0.5,
        msl: '2a',
        polarity: 'dot left',
        feederType: 'twin',
        drive: 'electric',
        pocketMm: 0.7,
        critical: true,
        positions: 2,
        side: 'top',
        designators: ['R1', 'R2'],
        note: 'care',
      },
    ]);
    const kept = toSetupSlots(slots)[0];
    expect(kept).toEqual({
      slot: 'M1-F-014',
      part: 'A',
      perPanel: 2,
      tapeWidthMm: 8,
      pitchMm: 4,
      positions: 2,
      alternates: ['B', 'C'],
      supplierParts: ['KP-100', 'KP-200'],
      critical: true,
      note: 'care',
      polarity: 'dot left',
      feederType: 'twin',
      drive: 'electric',
      pocketMm: 0.7,
      bodyMm: 0.5,
      msl: '2a',
    });
    const back = fromSetupSlots(toSetupSlots(slots))[0];
    expect(back).toEqual({
      ...slots[0],
      row: 1,
      sharing: null,
      description: null,
      package: null,
      pins: null,
      bodySizeMm: null,
      side: null,
      designators: [],
    });
  });

  it.each<[header: string, cell: string, code: string | null, value: unknown, field: string]>([
    ['Pins', '1', null, 1, 'pins'],
    ['Pins', '10000', null, 10_000, 'pins'],
    ['Pins', '10001', 'pinsUnreadable', null, 'pins'],
    ['Pins', '0', 'pinsUnreadable', null, 'pins'],
    ['Pins', '-', null, null, 'pins'],
    ['Positions', '1', null, 1, 'positions'],
    ['Positions', '60', null, 60, 'positions'],
    ['Positions', '61', 'positionsUnreadable', null, 'positions'],
    ['Positions', '0', 'positionsUnreadable', null, 'positions'],
    ['Body thickness', '0', 'thicknessUnreadable', null, 'bodyThicknessMm'],
    ['Body thickness', '0.1', null, 0.1, 'bodyThicknessMm'],
    ['Pocket depth', 'deep', 'pocketUnreadable', null, 'pocketMm'],
    ['Critical', 'who', 'flagUnreadable', false, 'critical'],
    ['Critical', 'no', null, false, 'critical'],
    ['Critical', '', null, false, 'critical'],
    ['MSL', '9', 'mslUnknown', null, 'msl'],
    ['Side', 'left', 'sideUnknown', null, 'side'],
    ['Sharing', 'often', 'sharingUnknown', null, 'sharing'],
    ['Body size', '17', 'bodySizeUnreadable', null, 'bodySizeMm'],
    ['Note', long(200), null, long(200), 'note'],
    ['Note', long(201), 'textCut', long(200), 'note'],
    ['Note', 'n/a', null, null, 'note'],
    ['Feeder type', long(65), 'textTooLong', long(65), 'feederType'],
    ['Alternates', long(65), 'textTooLong', [long(65)], 'alternates'],
    ['Alternates', long(64), null, [long(64)], 'alternates'],
    ['MPN', long(65), 'textTooLong', [long(65)], 'supplierParts'],
  ])('with %s %j', (header, cell, code, value, field) => {
    const { slots, told } = read([`${plain},${header}`, `M1-F-001,A,2,8,4,${cell}`]);
    expect(slots[0]).toHaveProperty(field, value);
    expect(told.filter((each) => !each.startsWith('noApproved'))).toEqual(
      code === null ? [] : [`${code} 2 ${header}`],
    );
  });

  it('counts designators where it states no usage, and compares them where it does', () => {
    const header = `${plain},RefDes`;
    const rows = [
      'F-1,A,,8,4,"R1,R2"',
      'F-2,B,n/a,8,4,R3',
      'F-3,C,2,8,4,R4',
      'F-4,D,0,8,4,R5',
      'F-5,E,,8,4,',
      'F-6,F,1,8,4,R6',
    ];
    const { slots, told, facts } = read([header, ...rows]);
    expect(slots.map(({ perPanel }) => perPanel)).toEqual([2, 1, 2, 0, null, 1]);
    expect(told).toEqual([
      'usageFromDesignators 2 RefDes',
      'usageFromDesignators 3 RefDes',
      'designatorsDisagree 4 RefDes',
      'usageZero 5 Qty',
      'usageMissing 6 Qty',
    ]);
    expect(facts[2]).toEqual({ found: 1, wanted: 2 });
    expect(read(['Slot,Part,Tape width,Pitch', 'F-1,A,8,4']).told).toEqual(['columnAbsent 1 null']);
  });

  it('has a tape width and a pitch, together in one cell where there is no column for the pitch', () => {
    const tapes = (header: string, ...cells: readonly string[]) => {
      const { slots, told } = read([
        `Slot,Part,Qty,${header}`,
        ...cells.map((cell, at) => `F-${at * 9 + 1},P${at},1,${cell}`),
      ]);
      return [
        slots.map(({ tapeWidth, pitch }) => `${tapeWidth} ${pitch}`),
        told.filter((each) => !each.startsWith('column')),
      ];
    };
    expect(tapes('Tape', '8x4', 'W12P8', '8x3', '9x4', 'wide', '-', 'tray', '8')).toEqual([
      ['8 4', '12 8', '8 3', 'null 4', 'null null', 'null null', 'null null', '8 null'],
      [
        'pitchUnusual 4 Tape',
        'widthUnknown 5 Tape',
        'widthUnreadable 6 Tape',
        'widthMissing 7 Tape',
        'notTape 8 Tape',
      ],
    ]);
    expect(
      tapes('Tape width,Pitch', '8x4,4', '8,-', 'tray,', 'tray,4', '8,x', ',4', '8,0.001', '16,12'),
    ).toEqual([
      ['null 4', '8 null', 'null null', 'null 4', '8 null', 'null 4', '8 0.001', '16 12'],
      [
        'widthUnreadable 2 Tape width',
        'pitchMissing 3 Pitch',
        'notTape 4 Tape width',
        'notTape 5 Tape width',
        'pitchUnreadable 6 Pitch',
        'widthMissing 7 Tape width',
        'pitchUnusual 8 Pitch',
      ],
    ]);
    expect(tapes('Pitch', '4', 'x')).toEqual([['null 4', 'null null'], ['pitchUnreadable 3 Pitch']]);
    expect(tapes('Note', 'a')).toEqual([['null null'], []]);
  });
});

describe('rows that are left out', () => {
  it('are comments, totals, the header again, empty slots and what is not fitted', () => {
    const { slots, left, told, ignored } = read([
      `${plain},Fitted,DNP,Note`,
      '// by hand,,,,,,,',
      '** x,,,,,,,',
      'Total,T,1,8,4,,,',
      'F-1,Total,1,8,4,,,',
      'Subtotal,,2,,,,,',
      `${plain},Fitted,DNP,Note`,
      'F-9,Part,1,8,4,,,',
      'F-2,,,,,,,',
      'F-3,-,n/a,,,,,',
      'F-4,A,1,8,4,no,,',
      'F-5,A,1,8,4,DNP,,',
      'F-6,A,1,8,4,,x,',
      'F-7,A,1,8,4,,not fitted,',
      'F-8,A,1,8,4,yes,no,',
      'F-10,A,1,8,4,,,do not fit',
      'F-11,A,DNP,8,4,,,',
      ',,,,,,,',
    ]);
    expect(left).toEqual([
      '2 comment',
      '3 comment',
      '6 total',
      '7 headerAgain',
      '9 emptySlot',
      '10 emptySlot',
      '11 notFitted',
      '12 notFitted',
      '13 notFitted',
      '14 notFitted',
      '16 notFitted',
      '17 notFitted',
    ]);
    expect(ignored).toBe(12);
    expect(slots.map(({ slot }) => slot)).toEqual(['Total', 'F-1', 'F-9', 'F-8']);
    expect(told).toEqual(['slotUnclear 4 Slot']);
  });

  it('lack a slot or a part, and say so', () => {
    const { told, facts } = read(sheet(',A,1,8,4', '-,A,1,8,4', 'F-1,,1,8,4', 'F-2,n/a,1,8,4', ',,1,8,4'));
    expect(told).toEqual([
      'slotMissing 2 Slot',
      'slotMissing 3 Slot',
      'partMissing 4 Part',
      'partMissing 5 Part',
      'slotMissing 6 Slot',
    ]);
    expect(facts.slice(2)).toEqual([{ slot: 'F-1' }, { slot: 'F-2' }, { part: '(empty)' }]);
  });

  it('with a cell too many are read and told', () => {
    const { told, facts } = read(sheet('F-1,A,1,8,4,,', 'F-2,B,1,8,4,x,'));
    expect([told, facts]).toEqual([['rowTooLong 3 null'], [{ found: 6, wanted: 5 }]]);
  });
});

describe('an address', () => {
  it('takes machine and bank from the row, from those above it, or from the whole sheet', () => {
    const rows = [
      'Machine,Bank,Slot number,Part,Qty',
      '1,F,1,A,1',
      ',,2,B,1',
      '2,,3,C,1',
      ',R,x,D,1',
      ',,4,E,1',
    ];
    const { slots, told } = read(rows);
    expect(slots.map(({ slot }) => slot)).toEqual(['M1-F-001', 'M1-F-002', 'M2-F-003', 'x', 'M2-R-004']);
    expect(told).toContain('slotNumberUnreadable 5 Slot number');
    const whole = read(['Slot,Part,Qty', '1,A,1', 'M2-R-3,B,1'], { machine: 'M7', bank: 'rear' });
    expect(whole.slots.map(({ slot }) => slot)).toEqual(['M7-R-001', 'M2-R-3']);
  });
});

describe('between rows', () => {
  it('a slot stands once, whatever column names it', () => {
    const twice = read(['Slot number,Part,Qty', '1,A,1', '01,B,1']);
    expect([twice.told.at(-1), twice.facts.at(-1), twice.slots.length]).toEqual([
      'slotTwice 3 Slot number',
      { slot: '01', first: 2, part: 'A' },
      1,
    ]);
  });

  it('a feeder has room up to the next one of its bank, in any order of rows', () => {
    const room = (rows: readonly string[], options: SheetOptions = {}) => {
      const { told, facts } = read(rows, options);
      return told.map(
        (each, at) =>
          `${each} ${facts[at]?.['slot']} ${facts[at]?.['next']} ${facts[at]?.['found']}/${facts[at]?.['wanted']}`,
      );
    };
    const positions = `${plain},Positions`;
    expect(room(sheet('F-5,A,1,12,4', 'F-1,B,1,44,4', 'F-6,C,1,8,4'))).toEqual([
      'littleRoom 2 Tape width F-5 F-6 1/2',
      'littleRoom 3 Tape width F-1 F-5 4/5',
    ]);
    expect(room(sheet('F-1,A,1,32,4', 'F-3,B,1,8,4'))).toEqual(['littleRoom 2 Tape width F-1 F-3 2/4']);
    expect(room(sheet('F-1,A,1,44,4', 'F-3,B,1,8,4'))).toEqual(['noRoom 2 Tape width F-1 F-3 2/5']);
    expect(room([positions, 'F-1,A,1,8,4,2', 'F-2,B,1,8,4,1'])).toEqual(['noRoom 2 Positions F-1 F-2 1/2']);
    expect(room([positions, 'F-1,A,1,44,4,1', 'F-2,B,1,8,4,1'])).toEqual([]);
    expect(room([positions, 'F-1,A,1,tray,,2', 'F-2,B,1,8,4,'])).toEqual([
      'notTape 2 Tape width undefined undefined tray/undefined',
      'noRoom 2 Positions F-1 F-2 1/2',
    ]);
    expect(room(sheet('F-1,A,1,8,4', 'F-3,B,1,12,4', 'F-2,C,1,8,4'), { grows: 'down' })).toEqual([
      'littleRoom 3 Tape width F-3 F-2 1/2',
    ]);
    const lanes = Array.from({ length: 8 }, (_, at) => `M1-F-001-${at + 1},P${at},1,12,4`);
    expect(room(sheet(...lanes, 'M1-F-002,B,1,8,4'))).toHaveLength(8);
    expect(room(sheet('x,A,1,44,4', 'y,B,1,8,4')).map((each) => each.split(' ')[0])).toEqual([
      'slotUnclear',
      'slotUnclear',
    ]);
  });

  it('a part has one width, one pitch and one list of makers', () => {
    const { told, facts, slots } = read([
      `${plain},MPN`,
      'F-1,A,1,8,4,KP-1000',
      'F-11,A,1,12,8,',
      'F-21,A,1,,4,KP-2000',
      'F-31,B,1,8,4,',
      'F-41,B,1,8,4,',
    ]);
    expect(told).toEqual([
      'partDiffers 3 Tape width',
      'partDiffers 3 Pitch',
      'widthMissing 4 Tape width',
      'noApprovedReels 5 MPN',
    ]);
    expect(facts.slice(0, 2)).toEqual([
      { part: 'A', field: 'tape width', found: 12, wanted: 8, first: 2 },
      { part: 'A', field: 'pitch', found: 8, wanted: 4, first: 2 },
    ]);
    expect(slots.map(({ supplierParts }) => supplierParts.join(' '))).toEqual([
      'KP-1000 KP-2000',
      'KP-1000 KP-2000',
      'KP-1000 KP-2000',
      '',
      '',
    ]);
  });

  it('makers of a bill serve parts for which the sheet names none', () => {
    const makers = new Map([
      ['A', ['M-1']],
      ['B', ['M-2']],
    ]);
    const { slots } = read([`${plain},MPN`, 'F-1,a,1,8,4,', 'F-2,B,1,8,4,KP-1000', 'F-3,C,1,8,4,'], {
      makers,
    });
    expect(slots.map(({ supplierParts }) => supplierParts.join(' '))).toEqual(['M-1', 'KP-1000', '']);
  });

  it('of many problems the first are listed', () => {
    const rows = Array.from({ length: 1010 }, (_, at) => `F-${at + 1},P${at},x,8,4`);
    const { told } = read(sheet(...rows));
    expect([told.length, told.at(-1)]).toEqual([1001, 'moreErrors null null']);
  });
});

it('a sheet without rows says so once; without its columns nothing is read', () => {
  expect(read([plain, ',,,,']).told).toEqual(['noRows 1 null']);
  expect(read([plain, 'F-1,DNP,,,']).told).toEqual([]);
  const bare = readSheet([
    ['Slot', 'Moon'],
    ['F-1', 'x'],
  ]);
  expect([bare.slots, hasSheetErrors(bare.problems), bare.headerRow, bare.placementScope]).toEqual([
    [],
    true,
    1,
    null,
  ]);
  expect(bare.problems.map(({ code }) => code).filter((code) => !code.startsWith('column'))).toEqual([]);
  const parts = read(['Part,Qty', 'A,1', 'B,2']);
  expect([parts.slots, parts.left, parts.told[0]]).toEqual([[], [], 'columnMissing 1 null']);
  expect(parts.told.every((each) => each.startsWith('column'))).toBe(true);
});
