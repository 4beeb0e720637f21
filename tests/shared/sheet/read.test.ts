import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlacements } from '../../../shared/sheet/placements.ts';
import { hasSheetErrors, type SheetProblemCode } from '../../../shared/sheet/problems.ts';
import { readSheet, type SheetOptions } from '../../../shared/sheet/read.ts';
import { bytesToText, type DecodeBytes, textToRows } from '../../../shared/sheet/text.ts';

const decode: DecodeBytes = (bytes, encoding) => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

function readText(text: string, options: SheetOptions = {}) {
  const { rows, problems } = textToRows(text);
  return readSheet(rows, { ...options, textProblems: problems });
}

function sheet(...rows: readonly string[]): string {
  return ['Slot,Part,Qty,Tape width,Pitch', ...rows].join('\n');
}

function found(text: string, options: SheetOptions = {}) {
  return readText(text, options).problems.map(({ row, column, code }) => ({ row, column, code }));
}

const fixtureFiles = [
  'en-comma-utf8-bom.csv',
  'de-semicolon-windows1252.csv',
  'de-automat-semicolon.csv',
  'fr-tab-utf16le.txt',
  'es-pipe-utf8.csv',
  'en-comma-utf16be-no-mark.csv',
  'en-caret-columns.txt',
];

describe('readSheet() from files', () => {
  it.each(fixtureFiles)('gives the same five slots from %s', (name) => {
    const bytes = readFileSync(new URL(`../../fixtures/sheets/${name}`, import.meta.url));
    const { text, problems } = bytesToText(bytes, decode);
    const reading = readText(text ?? '');
    const slots = reading.slots.map(({ slot, part, perPanel, tapeWidth, pitch, alternates }) => {
      return [slot, part, perPanel, tapeWidth, pitch, alternates.join(' ')];
    });
    expect(slots).toEqual([
      ['M1-F-001', 'BW-10023', 24, 8, 4, 'BW-10024 BW-10031'],
      ['M1-F-002', 'BW-10107', 1200, 8, 2, ''],
      ['M1-F-004', 'BW-20015', 2, 12, 8, 'BW-20016'],
      ['M1-F-006', 'BW-30001', 1, 24, 16, ''],
      ['M1-R-001', 'BW-10023', 6, 8, 4, 'BW-10024 BW-10031'],
    ]);
    expect(reading.problems).toEqual([]);
    expect(problems.map((problem) => problem.code)).toEqual(name.includes('1252') ? ['encodingGuessed'] : []);
  });

  it('takes the words of a German mount sheet: Automat, Benennung and the spelling without umlauts', () => {
    const bytes = readFileSync(new URL('../../fixtures/sheets/de-automat-semicolon.csv', import.meta.url));
    const { columns } = readText(bytesToText(bytes, decode).text ?? '');
    expect(columns.map(({ header, field }) => [header, field])).toEqual([
      ['Automat', 'machine'],
      ['Ruesttisch', 'bank'],
      ['Platz-Nr.', 'number'],
      ['Ident-Nr.', 'part'],
      ['Benennung', 'description'],
      ['Gehaeuse', 'package'],
      ['Stueck je Nutzen', 'perPanel'],
      ['Gurtbreite', 'tapeWidth'],
      ['Gurtvorschub', 'pitch'],
      ['Ausweichteile', 'alternates'],
      ['Bemerkung', 'note'],
    ]);
  });

  it('numbers rows as a spreadsheet does, title lines and header included', () => {
    const reading = readText(
      'Brae Works\n\nSlot,Part,Qty,Tape width,Pitch\nM1-F-001,A,1,8,4\nM1-F-002,"B\nx",1,8,4\nM1-F-003,C,1,9,4\n',
    );
    expect(reading.headerRow).toBe(3);
    expect(reading.slots.map((slot) => slot.row)).toEqual([4, 5, 6]);
    expect(reading.problems).toMatchObject([
      { row: 6, column: 'Tape width', code: 'widthUnknown', severity: 'error' },
    ]);
  });
});

describe('readSheet() problems', () => {
  it.each<{ row: string; column: string | null; code: SheetProblemCode; reason: string }>([
    {
      row: 'M1-F-001,A,1,9,4',
      column: 'Tape width',
      code: 'widthUnknown',
      reason: '9 mm is in no list of EIA-481',
    },
    { row: 'M1-F-001,A,1,wide,4', column: 'Tape width', code: 'widthUnreadable', reason: 'not a number' },
    { row: 'M1-F-001,A,1,,4', column: 'Tape width', code: 'widthMissing', reason: 'empty' },
    { row: 'M1-F-001,A,1,tray,', column: 'Tape width', code: 'notTape', reason: 'a tray is no tape' },
    {
      row: 'M1-F-001,A,1,8,3',
      column: 'Pitch',
      code: 'pitchUnusual',
      reason: 'EIA-481 lists 2 and 4 for 8 mm',
    },
    { row: 'M1-F-001,A,1,8,0', column: 'Pitch', code: 'pitchUnreadable', reason: 'a pitch is above 0' },
    { row: 'M1-F-001,A,1,8,', column: 'Pitch', code: 'pitchMissing', reason: 'empty' },
    { row: 'M1-F-001,A,1.5,8,4', column: 'Qty', code: 'usageUnreadable', reason: 'half a placement' },
    { row: 'M1-F-001,A,-2,8,4', column: 'Qty', code: 'usageUnreadable', reason: 'below 0' },
    { row: 'M1-F-001,A,many,8,4', column: 'Qty', code: 'usageUnreadable', reason: 'a word' },
    { row: 'M1-F-001,A,,8,4', column: 'Qty', code: 'usageMissing', reason: 'empty' },
    { row: 'M1-F-001,A,0,8,4', column: 'Qty', code: 'usageZero', reason: 'loaded, not used' },
    { row: ',A,1,8,4', column: 'Slot', code: 'slotMissing', reason: 'no slot' },
    { row: 'M1-F-001,,1,8,4', column: 'Part', code: 'partMissing', reason: 'no part' },
    { row: 'somewhere,A,1,8,4', column: 'Slot', code: 'slotUnclear', reason: 'no address' },
    { row: 'M1-F-001,A,1,8,4,x', column: null, code: 'rowTooLong', reason: 'a cell too many' },
    { row: `M1-F-001,${'A'.repeat(65)},1,8,4`, column: 'Part', code: 'textTooLong', reason: '65 characters' },
  ])('reports $code at the row and column: $reason', ({ row, column, code }) => {
    expect(found(sheet(row))).toEqual([{ row: 2, column, code }]);
  });

  it('reports a slot given twice at the second row, naming the first', () => {
    const reading = readText(sheet('M1-F-001,A,1,8,4', 'm1/front/1,B,1,8,4'));
    expect(reading.problems).toMatchObject([
      { row: 3, column: 'Slot', code: 'slotTwice', facts: { first: 2, part: 'A' } },
    ]);
    expect(reading.slots).toHaveLength(1);
    expect(hasSheetErrors(reading.problems)).toBe(true);
  });

  it.each<{ rows: string[]; options?: SheetOptions; codes: SheetProblemCode[]; reason: string }>([
    {
      rows: ['M1-F-001,A,1,12,4', 'M1-F-002,B,1,8,4'],
      codes: ['littleRoom'],
      reason: '12 mm usually takes 2 positions',
    },
    { rows: ['M1-F-001,A,1,12,4', 'M1-F-003,B,1,8,4'], codes: [], reason: 'two positions are there' },
    {
      rows: ['M1-F-001,A,1,44,4', 'M1-F-002,B,1,8,4'],
      codes: ['noRoom'],
      reason: '44 mm of tape on one position',
    },
    {
      rows: ['M1-F-001,A,1,44,4', 'M1-F-004,B,1,8,4'],
      codes: ['littleRoom'],
      reason: '44 mm on three positions',
    },
    { rows: ['M1-F-001,A,1,44,4', 'M1-R-002,B,1,8,4'], codes: [], reason: 'the other bank' },
    { rows: ['M1-F-001,A,1,44,4', 'M2-F-002,B,1,8,4'], codes: [], reason: 'the other machine' },
    { rows: ['M1-F-014-1,A,1,8,4', 'M1-F-014-2,B,1,8,4'], codes: [], reason: 'two lanes of one feeder' },
    {
      rows: ['M1-F-001,A,1,12,4', 'M1-F-002,B,1,8,4'],
      options: { positionsByWidth: { 12: 1 } },
      codes: [],
      reason: "the site's own table",
    },
    {
      rows: ['M1-F-001,A,1,8,4', 'M1-F-002,B,1,12,4'],
      options: { grows: 'down' },
      codes: ['littleRoom'],
      reason: 'reaching to lower numbers',
    },
    {
      rows: ['M1-F-001,A,1,8,4', 'M1-F-002,A,1,12,4'],
      codes: ['partDiffers'],
      reason: 'one part on two tapes',
    },
  ])('checks the room of neighbours and the tapes of a part: $reason', ({ rows, options, codes }) => {
    expect(readText(sheet(...rows), options).problems.map((problem) => problem.code)).toEqual(codes);
  });

  it('takes stated positions at their word, as an error', () => {
    const text = 'Slot,Part,Qty,Tape width,Pitch,Positions\nM1-F-001,A,1,8,4,3\nM1-F-003,B,1,8,4,1\n';
    expect(found(text)).toEqual([{ row: 2, column: 'Positions', code: 'noRoom' }]);
  });

  it('reports missing columns at the header with the headers found', () => {
    const reading = readText('foo,bar,baz\n1,2,3\n');
    const errors = reading.problems.filter((problem) => problem.severity === 'error');
    expect(errors.map(({ code, facts }) => [code, facts['wanted']])).toEqual([
      ['columnMissing', 'slot'],
      ['columnMissing', 'part'],
    ]);
    expect(errors[0]?.message).toContain('foo, bar, baz');
    expect(reading.slots).toEqual([]);
  });

  it('reports unknown and doubled columns as warnings only', () => {
    const reading = readText('Slot,Part,Qty,Tape width,Pitch,Moon,Usage\nM1-F-001,A,1,8,4,full,2\n');
    expect(reading.problems).toMatchObject([
      { row: 1, column: 'Moon', code: 'columnUnknown' },
      { row: 1, column: 'Usage', code: 'columnTwice', facts: { used: 'Qty' } },
    ]);
    expect(hasSheetErrors(reading.problems)).toBe(false);
  });

  it('warns where usage is counted per board', () => {
    expect(found('Slot,Part,Qty per board,Tape width,Pitch\nM1-F-001,A,1,8,4\n')).toEqual([
      { row: 1, column: 'Qty per board', code: 'usagePerBoard' },
    ]);
  });

  it('keeps a message short where a broken cell holds a whole file', () => {
    const reading = readText(`Slot,Part,Qty,Tape width,Pitch\nM1-F-001,A,"${'x'.repeat(100_000)},8,4\n`);
    expect(reading.problems.map((problem) => problem.code)).toContain('quoteBroken');
    expect(Math.max(...reading.problems.map((problem) => problem.message.length))).toBeLessThan(500);
  });

  it('reports broken quotation marks at the row where they open', () => {
    const reading = readText(
      'Slot,Part,Qty,Tape width,Pitch\nM1-F-001,A,1,8,4\nM1-F-002,"B,1,8,4\nM1-F-003,C,1,8,4\n',
    );
    expect(reading.problems.find((problem) => problem.code === 'quoteBroken')).toMatchObject({
      row: 3,
      severity: 'error',
    });
  });

  it('reports a header without rows', () => {
    expect(found('Slot,Part,Qty,Tape width,Pitch\n\n')).toEqual([{ row: 1, column: null, code: 'noRows' }]);
  });

  it('reports parts without approved supplier parts only where the sheet or the site lists them', () => {
    const text =
      'Slot,Part,Qty,Tape width,Pitch,Supplier parts\nM1-F-001,A,1,8,4,"MX-1; MX-2"\nM1-F-002,B,1,8,4,\nM1-F-003,A,1,8,4,\n';
    const reading = readText(text);
    expect(reading.problems).toMatchObject([{ row: 3, column: 'Supplier parts', code: 'noApprovedReels' }]);
    expect(reading.slots.map((slot) => slot.supplierParts)).toEqual([['MX-1', 'MX-2'], [], ['MX-1', 'MX-2']]);
    expect(readText(text, { approved: new Map([['B', ['MX-9']]]) }).problems).toEqual([]);
    expect(found(sheet('M1-F-001,A,1,8,4'))).toEqual([]);
  });

  it('cuts a long list of problems and still counts it as an error', () => {
    const rows = Array.from({ length: 50 }, (_, at) => `M1-F-${at + 1},A,1,9,4`);
    const { problems } = readText(sheet(...rows), { mostProblems: 10 });
    expect(problems).toHaveLength(11);
    expect(problems.at(-1)).toMatchObject({ code: 'moreErrors', severity: 'error' });
    expect(problems.at(-1)?.facts['count']).toBeGreaterThanOrEqual(40);
  });
});

describe('readSheet() rows and columns', () => {
  it('leaves out rows not fitted, empty slots, comments, totals and repeated headers, with the reason', () => {
    const reading = readText(
      [
        'Slot,Part,Qty,Tape width,Pitch,Fitted',
        'M1-F-001,A,1,8,4,yes',
        'M1-F-002,B,1,8,4,no',
        'M1-F-003,,,,,',
        '# counted by hand,,,,,',
        'Slot,Part,Qty,Tape width,Pitch,Fitted',
        ',,,,,',
        'Total,,2,,,',
        'M1-F-004,DNP,,,,',
      ].join('\n'),
    );
    expect(reading.slots.map((slot) => slot.slot)).toEqual(['M1-F-001']);
    expect(reading.problems).toEqual([]);
    expect(reading.ignored).toBe(6);
    expect(reading.ignoredRows).toEqual([
      { row: 3, reason: 'notFitted' },
      { row: 4, reason: 'emptySlot' },
      { row: 5, reason: 'comment' },
      { row: 6, reason: 'headerAgain' },
      { row: 8, reason: 'total' },
      { row: 9, reason: 'notFitted' },
    ]);
  });

  it('reads the optional columns', () => {
    const header =
      'Slot,Part,Qty,Tape width,Pitch,Body thickness (mm),MSL,Polarity,Critical,Side,RefDes,Remarks,Package,Value';
    const reading = readText(
      `${header}\nM1-F-001,A,4,8,4,"0,9",MSL 2A,pin 1 at the hole side,x,oben,"R1-R3, R7",handle with care,0603,10k\n`,
    );
    expect(reading.problems).toEqual([]);
    expect(reading.slots[0]).toMatchObject({
      bodyThicknessMm: 0.9,
      msl: '2a',
      polarity: 'pin 1 at the hole side',
      critical: true,
      side: 'top',
      designators: ['R1', 'R2', 'R3', 'R7'],
      note: 'handle with care',
      package: '0603',
      description: '10k',
    });
  });

  it('compares designators with placements per panel, and counts them where those are empty', () => {
    const header = 'Slot,Part,Qty,Tape width,Pitch,Designators';
    const reading = readText(`${header}\nM1-F-001,A,4,8,4,"R1,R2"\nM1-F-002,B,,8,4,"C1 C2 C3"\n`);
    expect(reading.problems.map(({ row, code }) => [row, code])).toEqual([
      [2, 'designatorsDisagree'],
      [3, 'usageFromDesignators'],
    ]);
    expect(reading.slots.map((slot) => slot.perPanel)).toEqual([4, 3]);
  });

  it.each([
    ['Slot,Part,Qty\nm1/front/4,A,1', 'm1/front/4', 'all three parts: as on the slot itself'],
    ['Slot,Part,Qty\nF4,A,1', 'F4', 'no machine: as on the slot itself'],
    ['Slot,Part,Qty\n4,A,1', '4', 'the number alone: as on the slot itself'],
    ['Machine,Slot,Part,Qty\n2,F4,A,1', 'M2-F-004', 'the machine from its column'],
    ['Machine,Table,Track,Part,Qty\nM2,1,4,A,1', 'M2-1-004', 'a bank with a number'],
    ['Machine,Track,Part,Qty\nM2,4,A,1', 'M2-004', 'machine and number, no bank'],
  ])('names the slot of %j %s: %s', (text, wanted) => {
    expect(readText(text).slots.map((slot) => slot.slot)).toEqual([wanted]);
  });

  it('knows a slot given twice however its address is written', () => {
    const text = 'Slot,Part,Qty,Tape width,Pitch\nF4,A,1,8,4\nF-004,B,1,8,4\n';
    expect(found(text).map((problem) => problem.code)).toEqual(['slotTwice']);
  });

  it('reads width and pitch written together where there is no column for the pitch', () => {
    const reading = readText(
      'Slot,Part,Qty,Tape\nM1-F-001,A,1,8x4\nM1-F-003,B,1,W12P8\nM1-F-006,C,1,8 mm paper\n',
    );
    expect(reading.slots.map(({ tapeWidth, pitch }) => [tapeWidth, pitch])).toEqual([
      [8, 4],
      [12, 8],
      [8, null],
    ]);
  });

  it("takes a person's choice of columns before its own guess", () => {
    const text = 'Slot,Part,Old part,Qty,Tape width,Pitch\nM1-F-001,A,B,1,8,4\n';
    const reading = readText(text, { columns: { part: 'old part', note: 'Part', pitch: null } });
    expect(reading.slots[0]).toMatchObject({ part: 'B', note: 'A', pitch: null });
    expect(reading.columns.find((column) => column.header === 'Pitch')?.field).toBeNull();
  });

  it('reports a chosen column that the sheet does not have', () => {
    const reading = readText(sheet('M1-F-001,A,1,8,4'), { columns: { part: 'Artikel' } });
    expect(reading.problems[0]).toMatchObject({
      code: 'columnNotFound',
      severity: 'error',
      facts: { wanted: 'Artikel' },
    });
  });

  it('finds a header with unknown words by the choice of columns', () => {
    const reading = readText('x\nq1,q2,q3,q4,q5\nM1-F-001,A,1,8,4\n', {
      columns: { slot: 'q1', part: 'q2', perPanel: 'q3', tapeWidth: 'q4', pitch: 'q5' },
    });
    expect(reading.problems).toEqual([]);
    expect(reading.slots).toHaveLength(1);
  });
});

describe('readSheet() with a placement file', () => {
  const placements = readPlacements('Designator,Part,Side\nR1,A,T\nR2,A,T\nR3,A,B\nC1,B,T\nC2,B2,T\n');

  it('supplies placements per panel that the sheet lacks', () => {
    const reading = readText('Slot,Part,Tape width,Pitch,Alternates\nM1-F-001,A,8,4,\nM1-F-002,B,8,4,B2\n', {
      placements,
    });
    expect(reading.slots.map((slot) => slot.perPanel)).toEqual([3, 2]);
    expect(reading.problems).toEqual([]);
    expect(reading.placementScope).toBe('both');
  });

  it('warns where both disagree and keeps the entry of the sheet', () => {
    const reading = readText(sheet('M1-F-001,A,5,8,4', 'M1-F-002,B,1,8,4', 'M1-F-003,B2,1,8,4'), {
      placements,
    });
    expect(reading.problems).toMatchObject([
      { row: 2, column: 'Qty', code: 'usageDisagrees', severity: 'warning', facts: { found: 5, wanted: 3 } },
    ]);
    expect(reading.slots[0]?.perPanel).toBe(5);
  });

  it('compares the sum over the slots of a part and fills the one that is empty', () => {
    const rows = ['M1-F-001,A,2,8,4', 'M1-F-002,A,,8,4', 'M1-F-003,B,1,8,4', 'M1-F-004,B2,1,8,4'];
    const reading = readText(sheet(...rows), { placements });
    expect(reading.slots.map((slot) => slot.perPanel)).toEqual([2, 1, 1, 1]);
    expect(reading.problems).toEqual([]);
  });

  it('does not share out placements among several empty slots of a part', () => {
    const rows = ['M1-F-001,A,,8,4', 'M1-F-002,A,,8,4', 'M1-F-003,B,1,8,4', 'M1-F-004,B2,1,8,4'];
    const reading = readText(sheet(...rows), { placements });
    expect(reading.problems.map((problem) => problem.code)).toEqual(['usageSplitUnknown']);
    expect(reading.slots[0]?.perPanel).toBeNull();
  });

  it('is an error for a placed part without a slot and a warning for a part that is not placed', () => {
    const reading = readText(sheet('M1-F-001,A,3,8,4', 'M1-F-002,B,1,8,4', 'M1-F-003,Z,1,8,4'), {
      placements,
    });
    expect(reading.problems).toMatchObject([
      { row: 4, code: 'partNotPlaced', severity: 'warning' },
      { row: null, code: 'partWithoutSlot', severity: 'error', facts: { part: 'B2', first: 6 } },
    ]);
  });

  it('compares one side where the sheet agrees with it best or states it', () => {
    const rows = ['M1-F-001,A,2,8,4', 'M1-F-002,B,1,8,4', 'M1-F-003,B2,1,8,4'];
    expect(readText(sheet(...rows), { placements })).toMatchObject({ problems: [], placementScope: 'top' });
    const bottom = readText('Slot,Part,Side,Tape width,Pitch\nM1-F-001,A,bottom,8,4\n', { placements });
    expect(bottom).toMatchObject({ problems: [], placementScope: 'bottom', slots: [{ perPanel: 1 }] });
  });

  it('says so where every part has the same multiple, and agrees once the boards are stated', () => {
    const text = sheet('M1-F-001,A,12,8,4', 'M1-F-002,B,4,8,4', 'M1-F-003,B2,4,8,4');
    const codes = readText(text, { placements }).problems.map((problem) => problem.code);
    expect(codes.filter((code) => code === 'usageDisagrees')).toHaveLength(3);
    expect(codes).toContain('usageRatio');
    expect(readText(text, { placements, boardsPerPanel: 4 }).problems).toEqual([]);
  });
});

// Characters that part numbers carry, separators and quotation marks among them.
const partArbitrary = fc
  .array(fc.constantFrom(...'ABCxyz0189-_/.,;|"\'^~#äéß'), { minLength: 1, maxLength: 12 })
  .map((characters) => `P${characters.join('')}`);
const slotArbitrary = fc.record({
  part: partArbitrary,
  perPanel: fc.integer({ min: 1, max: 5000 }),
  tapeWidth: fc.constantFrom(8, 12, 16, 24),
  alternates: fc.uniqueArray(
    fc.integer({ min: 1, max: 999 }).map((number) => `ALT-${number}`),
    { maxLength: 3 },
  ),
});

describe('textToRows() and readSheet() on any sheet', () => {
  it('read back what was written, whatever separates the cells', () => {
    fc.assert(
      fc.property(
        fc.array(slotArbitrary, { minLength: 1, maxLength: 12 }),
        fc.constantFrom(',', ';', '\t', '|', '^', '~', ':'),
        fc.constantFrom('\n', '\r\n', '\r'),
        fc.integer({ min: 0, max: 3 }),
        (slots, separator, lineEnd, titles) => {
          const quote = (text: string) => `"${text.replaceAll('"', '""')}"`;
          const lines = slots.map((slot, at) =>
            [
              `M1-F-${at * 9 + 1}`,
              slot.part,
              String(slot.perPanel),
              String(slot.tapeWidth),
              '4',
              slot.alternates.join(';'),
            ]
              .map(quote)
              .join(separator),
          );
          const header = ['Slot', 'Part', 'Qty', 'Tape width', 'Pitch', 'Alternates'].join(separator);
          const text = [...Array.from({ length: titles }, () => 'Brae Works'), header, ...lines].join(
            lineEnd,
          );
          const reading = readText(text);
          expect(
            reading.slots.map(({ part, perPanel, tapeWidth, alternates }) => ({
              part,
              perPanel,
              tapeWidth,
              alternates,
            })),
          ).toEqual(slots);
          expect(reading.slots.map((slot) => slot.row)).toEqual(slots.map((_, at) => at + titles + 2));
          expect(hasSheetErrors(reading.problems)).toBe(false);
        },
      ),
    );
  });

  it('never throw, and account for every filled row, on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (text) => {
        const reading = readText(`Slot,Part,Qty\n${text}`);
        expect(reading.slots.every((slot) => slot.part !== '' && slot.slot !== '')).toBe(true);
      }),
    );
  });
});
