// The sheet worker's desk: bytes in, slots and problems out; what cannot be read is refused with a closed code.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import readXlsxFile from 'read-excel-file/universal';
import { describe, expect, test } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { createSheetDesk } from '../../../src/worker/sheet-desk.ts';
import type {
  SheetReply,
  SheetRequest,
  SheetSettings,
  SheetSource,
} from '../../../src/worker/sheet-protocol.ts';

const settings: SheetSettings = {
  columns: null,
  placementColumns: null,
  billColumns: null,
  variant: null,
  remembered: {},
  page: null,
  scope: null,
  boardsPerPanel: 1,
  machine: '',
  bank: '',
  approved: [],
};
const fixtures = path.resolve(import.meta.dirname, '../../fixtures/sheets');
const fixture = (name: string): SheetSource => ({
  number: 1,
  name,
  content: new Blob([readFileSync(path.join(fixtures, name))]),
});
const text = (content: string, number = 1): SheetSource => ({ number, name: 'pasted', content });

function newDesk() {
  return createSheetDesk({
    decode: (bytes, encoding) => {
      try {
        return new TextDecoder(encoding, { fatal: true }).decode(bytes);
      } catch {
        return null; // not of this encoding
      }
    },
    readWorkbook: readXlsxFile,
  });
}

async function ask(
  sheet: SheetSource,
  more: Partial<SheetRequest> = {},
  desk = newDesk(),
): Promise<SheetReply> {
  return desk.read({ id: 7, sheet, placements: null, settings, ...more }, () => undefined);
}

async function read(sheet: SheetSource, more: Partial<SheetRequest> = {}, desk = newDesk()) {
  const reply = await ask(sheet, more, desk);
  if (reply.kind !== 'read') throw new Error(JSON.stringify(reply));
  return reply.summary;
}

describe('what can be read', () => {
  test.each([
    'en-comma-utf8-bom.csv',
    'en-comma-utf16be-no-mark.csv',
    'fr-tab-utf16le.txt',
    'es-pipe-utf8.csv',
    'de-semicolon-windows1252.csv',
  ])('%s gives the same slots in every encoding and language', async (name) => {
    const { slots } = await read(fixture(name));
    expect(slots[0]).toMatchObject({
      slot: 'M1-F-001',
      part: 'BW-10023',
      perPanel: 24,
      tapeWidth: 8,
      pitch: 4,
    });
  });

  test('a title above the header is told, and columns come with what stands in them', async () => {
    const summary = await read(fixture('en-comma-utf8-bom.csv'));
    expect(summary.title).toEqual({ product: 'Heather board', revision: 'C', side: 'top' });
    expect(summary.columns[0]).toMatchObject({ header: 'Slot', field: 'slot' });
    expect(summary.columns[0]?.samples[0]).toBe('M1-F-001');
  });

  test('of a workbook the sheet that reads like a setup, or the one asked for', async () => {
    const cells = (rows: readonly (readonly (string | number)[])[]) =>
      rows.map((row) => row.map((value) => ({ value })));
    const bytes = await writeXlsxFile([
      { sheet: 'Cover', data: cells([['Brae Works'], ['Slot', 'Part'], ['M9-F-001', 'Z']]) },
      {
        sheet: 'Slots',
        data: cells([
          ['Slot', 'Part', 'Qty per panel', 'Tape width', 'Pitch'],
          ['M1-F-001', 'A', 4, 8, 2],
        ]),
      },
    ]).toBuffer();
    const book: SheetSource = { number: 3, name: 'book.xlsx', content: new Blob([new Uint8Array(bytes)]) };
    const summary = await read(book);
    expect(summary.pages).toEqual(['Cover', 'Slots']);
    expect(summary.page).toBe(1);
    expect(summary.slots).toMatchObject([{ slot: 'M1-F-001', perPanel: 4, pitch: 2 }]);
    const cover = await read(book, { settings: { ...settings, page: 0 } });
    expect(cover.slots).toMatchObject([{ slot: 'M9-F-001', part: 'Z' }]);
  });

  test('placements fill what the sheet lacks, for the side that is asked for', async () => {
    const sheet = text('Slot,Part\nM1-F-001,BW-10023\nM1-F-002,BW-10107\n');
    const summary = await read(sheet, {
      placements: fixture('placements-comma.csv'),
      settings: { ...settings, scope: 'both', boardsPerPanel: 2 },
    });
    expect(summary.placements?.placements).toBeGreaterThan(0);
    expect(summary.slots[0]?.perPanel).toBe(8); // four on one board, two boards
    expect(summary.scope).toBe('both');
  });

  test('machine and bank of a sheet that names none', async () => {
    const summary = await read(text('Slot,Part\n1,A\n14,B\n'), {
      settings: { ...settings, machine: 'm2', bank: 'rear' },
    });
    expect(summary.slots.map(({ slot }) => slot)).toEqual(['M2-R-001', 'M2-R-014']);
  });
});

describe('columns', () => {
  const sheet = 'Address,Item,Units\nM1-F-001,A,4\n';

  test('a choice by hand comes before the guess', async () => {
    expect((await read(text(sheet))).slots[0]?.perPanel).toBeNull();
    const columns = { slot: ['Address'], part: ['Item'], perPanel: ['Units'] };
    expect((await read(text(sheet), { settings: { ...settings, columns } })).slots[0]?.perPanel).toBe(4);
  });

  test('what was remembered for these headers is used, and said', async () => {
    const { key } = await read(text(sheet));
    const remembered = { [key]: { slot: 'Address', part: 'Item', perPanel: 'Units' } };
    const summary = await read(text(sheet), { settings: { ...settings, remembered } });
    expect(summary.isRemembered).toBe(true);
    expect(summary.slots[0]?.perPanel).toBe(4);
    const other = await read(text(sheet.replace('Units', 'Amount')), {
      settings: { ...settings, remembered },
    });
    expect(other.isRemembered).toBe(false);
  });
});

describe('what cannot be read', () => {
  test.each([
    ['an empty file', new Blob([]), 'empty'],
    ['an empty paste', '', 'empty'],
    ['blank lines', '\n \n\n', 'blank'],
    [
      'a picture',
      new Blob([new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 0, 1, 255, 0])]),
      'other-file',
    ],
    ['bytes that are no text', new Blob([new Uint8Array([1, 0, 0, 0, 7, 13, 0, 1, 255, 0])]), 'not-text'],
    [
      'a workbook of the old form',
      new Blob([new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1])]),
      'old-workbook',
    ],
    ['a torn workbook', new Blob([new Uint8Array([0x50, 0x4b, 3, 4, 9, 9, 9, 9])]), 'broken-workbook'],
    [
      'more slots than any line has',
      `Slot,Part\n${Array.from({ length: 5001 }, (_, at) => `S${at},P`).join('\n')}`,
      'too-many-slots',
    ],
  ] as const)('%s is refused', async (_, content, fault) => {
    const reply = await ask({ number: 1, name: 'x', content });
    expect(reply).toMatchObject({ kind: 'refused', id: 7, role: 'sheet', fault });
  });

  test('a bad placement file is named as such', async () => {
    const reply = await ask(text('Slot,Part\nM1-F-001,A\n'), { placements: text('', 2) });
    expect(reply).toMatchObject({ kind: 'refused', role: 'placements', fault: 'empty' });
  });

  test('broken quotation marks, unknown columns and missing rows are problems, not refusals', async () => {
    const codes = async (content: string) => (await read(text(content))).problems.map(({ code }) => code);
    expect(await codes('Slot,Part\n"M1-F-001,A\nM1-F-002,B')).toContain('quoteBroken');
    expect(await codes('Aaa,Bbb\n1,2\n')).toContain('columnMissing');
    expect(await codes('Slot,Part\n')).toContain('noRows');
  });
});

test('a source is parsed once, and again where another took its place', async () => {
  const steps: string[] = [];
  const desk = newDesk();
  const tell = async (sheet: SheetSource) => {
    await desk.read({ id: 1, sheet, placements: null, settings }, (reply) => {
      if (reply.kind === 'step') steps.push(reply.step);
    });
    return steps.splice(0);
  };
  const one = text('Slot,Part\nM1-F-001,A\n', 1);
  expect(await tell(one)).toEqual(['opening', 'splitting', 'checking']);
  expect(await tell(one)).toEqual(['checking']);
  expect(await tell(text('Slot,Part\nM1-F-001,B\n', 2))).toEqual(['opening', 'splitting', 'checking']);
  expect(await tell(one)).toEqual(['opening', 'splitting', 'checking']);
});

describe('the sheet desk with a bill of materials', () => {
  const sheet = text(
    'Slot,Part,Tape width,Pitch,Designators\nM1-F-001,BW-1,8,4,"R1,R2"\nM1-F-002,BW-2,8,4,C1\n',
    1,
  );
  const placements = text(
    'Ref,Value,X,Y,Side\nR1,10k,1,1,top\nR2,10k,2,1,bottom\nC1,100n,3,1,top\nFID1,,0,0,top\n',
    2,
  );
  const bill = text('Part Number,Designators,MPN\nBW-1,R1-R2,KP-1\nBW-2,C1,KP-2\n', 3);

  test('joins both by designator, fills in usage and makers, and says what was joined', async () => {
    const summary = await read(sheet, { placements, bill });
    expect(summary.slots).toMatchObject([
      { perPanel: 2, supplierParts: ['KP-1'] },
      { perPanel: 1, supplierParts: ['KP-2'] },
    ]);
    expect(summary.bill).toEqual({
      parts: [
        { part: 'BW-1', supplierParts: ['KP-1'], top: 1, bottom: 1, designators: ['R1', 'R2'] },
        { part: 'BW-2', supplierParts: ['KP-2'], top: 1, bottom: 0, designators: ['C1'] },
      ],
      notPlaced: ['FID1'],
      variants: [],
    });
    expect(summary.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  test('says in which file a problem of the join is', async () => {
    const short = text('Part Number,Designators,Qty\nBW-1,R1-R2,3\n', 4);
    const { problems } = await read(sheet, { placements, bill: short });
    expect(problems.map(({ role, code, row }) => `${role} ${code} ${row}`)).toEqual(
      expect.arrayContaining(['bill quantityDiffers 2', 'placements designatorNotInBill 4']),
    );
  });

  test.each([
    ['<?xml version="1.0"?><board/>', 'other-xml'],
    [new Blob([Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0)]), 'archive'],
    [new Blob(['%PDF-1.7']), 'other-file'],
    ['<IPC-2581 revision="B"><Content/></IPC-2581>', 'no-bill'],
  ])('names a bill that is none as what it is: %s', async (content, fault) => {
    const reply = await ask(sheet, { placements, bill: { number: 9, name: 'bill', content } });
    expect(reply).toMatchObject({ kind: 'refused', role: 'bill', fault });
  });

  test('reads an IPC-2581 file as placement file with its own bill', async () => {
    const xml = text(
      `<IPC-2581 revision="B"><Bom name="b"><BomItem OEMDesignNumberRef="BW-1" quantity="2"><RefDes name="R1"/><RefDes name="R2"/></BomItem>
<BomItem OEMDesignNumberRef="BW-2" quantity="1"><RefDes name="C1"/></BomItem></Bom><Ecad name="e"><CadData><Layer name="T" side="TOP"/><Step name="s">
${['R1', 'R2', 'C1'].map((name) => `<Component refDes="${name}" layerRef="T" part="${name === 'C1' ? 'BW-2' : 'BW-1'}" mountType="SMT"><Location x="1" y="${name.charCodeAt(1)}"/></Component>`).join('')}
</Step></CadData></Ecad></IPC-2581>`,
      5,
    );
    const summary = await read(sheet, { placements: xml });
    expect(summary.slots.map(({ perPanel }) => perPanel)).toEqual([2, 1]);
    expect(summary.placements).toMatchObject({ placements: 3, parts: 2 });
    expect(summary.bill?.parts).toHaveLength(2);
  });
});
