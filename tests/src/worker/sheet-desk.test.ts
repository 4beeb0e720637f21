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
import { plainSettings as settings } from './sheet-settings.ts';

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
    ['more columns than any list has', `Slot,Part\nS1,${'x,'.repeat(1_200)}\n`, 'too-wide'],
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
    expect(summary.bill).toMatchObject({
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

describe('a first file that names no slots', () => {
  const may = { mayBeOther: true } as const;
  const parts = 'R1,1,1,Top\nR2,2,1,Top\nC1,3,1,Bottom\n';

  test.each([
    ['a placement file', `Ref,X,Y,Layer\n${parts}`, 'placements'],
    ['one whose position column has a slot’s word', 'Location,Part,X,Y\nR1,A,1,1\nR2,A,2,1\n', 'placements'],
    [
      'one without a header',
      'R1,10.5,3.25,90,Top,10k\nR2,11.5,3.25,0,Top,10k\nC1,12.0,3.25,90,Top,1u\n',
      'placements',
    ],
    ['an IPC-2581 file', '<?xml version="1.0"?><IPC-2581 revision="B"><Content/></IPC-2581>', 'placements'],
    ['a bill of materials', 'Part Number,Qty,Designators\nBW-1,2,R1-R2\nBW-2,1,C1\n', 'bill'],
  ])('%s is told as what it is', async (_, content, as) => {
    expect(await ask(text(content), may)).toEqual({ kind: 'other', id: 7, as });
  });

  test.each([
    ['a sheet', 'Slot,Part,Qty\nM1-F-001,BW-1,3\nM1-F-002,BW-2,1\n'],
    ['a sheet with designators', 'Slot,Part,Designators\n1,BW-1,"R1,R2"\n2,BW-2,C1\n'],
    [
      'a sheet under headers that nobody knows',
      'Where,Stuff,Designators\nM1-F-001,BW-1,"R1,R2"\nM1-F-002,BW-2,C1\n',
    ],
    ['a sheet without a header', 'M1-F-001,BW-1,2.5,8.5\nM1-F-002,BW-2,1.5,8.5\n'],
    ['nothing that is known', 'Hello\nthere\n'],
  ])('%s stays what it was asked as', async (_, content) => {
    expect((await ask(text(content), may)).kind).toBe('read');
  });

  test('beside a sheet in hand nothing is taken for something else', async () => {
    const reply = await ask(text(`Ref,X,Y,Layer\n${parts}`));
    expect(reply.kind === 'read' && reply.summary.problems.map(({ code }) => code)).toContain(
      'columnMissing',
    );
  });
});

describe('a board’s own files', () => {
  const placements = text(
    'Ref,Package,X,Y,Layer\nR1,0603,1,1,Top\nR2,0603,2,1,Top\nC1,0805,3,1,Bottom\nFID1,,0,0,Top\n',
    2,
  );
  const bill = text('House Part,Refs,Alpha,Beta\nBW-1,"R1,R2",X,X\nBW-2,C1,X,-\n', 3);
  const board = async (more: Partial<SheetRequest> = {}, desk = newDesk()) => {
    const reply = await desk.read({ id: 7, sheet: null, placements, settings, ...more }, () => undefined);
    if (reply.kind !== 'read') throw new Error(JSON.stringify(reply));
    return reply.summary;
  };

  test('come to parts by side with package, for all boards of a panel, and to what is listed only', async () => {
    const summary = await board({ bill, settings: { ...settings, variant: 'Alpha', boardsPerPanel: 2 } });
    expect(summary.board).toEqual({
      parts: [
        expect.objectContaining({
          part: 'BW-1',
          top: 4,
          bottom: 0,
          package: '0603',
          designators: ['R1', 'R2'],
        }),
        expect.objectContaining({ part: 'BW-2', top: 0, bottom: 2, package: '0805' }),
      ],
      notPlaced: [{ designator: 'FID1', reason: 'fiducial' }],
    });
    expect(summary).toMatchObject({ slots: [], scope: null });
  });

  test('a variant decides what is fitted; without one the rows in which they differ are errors', async () => {
    const open = await board({ bill });
    expect(open.bill?.variants).toEqual(['Alpha', 'Beta']);
    expect(open.problems.map(({ code, role, row }) => `${role} ${code} ${row}`)).toContain(
      'bill variantOpen 3',
    );
    const beta = await board({ bill, settings: { ...settings, variant: 'Beta' } });
    expect(beta.board?.parts.map(({ part }) => part)).toEqual(['BW-1']);
    expect(beta.board?.notPlaced.map(({ designator }) => designator)).toEqual(['C1', 'FID1']);
  });

  test('without a bill parts are called by what the placement file says, and that is told', async () => {
    const valued = text('Ref,Value,X,Y,Layer\nR1,10k,1,1,Top\nR2,10k,2,1,Top\n', 4);
    const { board: read } = await board({ placements: valued, settings: { ...settings, boardsPerPanel: 3 } });
    expect(read?.parts).toEqual([expect.objectContaining({ part: '10k', top: 6, isNamedByValue: true })]);
  });

  test('a file that holds a panel is not multiplied again, and says so', async () => {
    const twice = text('Ref,Part,X,Y,Layer\nR1,A,1,1,Top\nR2,A,2,1,Top\nR1,A,11,1,Top\nR2,A,12,1,Top\n', 5);
    const summary = await board({ placements: twice, settings: { ...settings, boardsPerPanel: 4 } });
    expect(summary.board?.parts[0]?.top).toBe(4);
    expect(summary.problems.map(({ code }) => code)).toContain('boardsInFile');
  });

  test('a bill that comes first is read alone, with its columns', async () => {
    const summary = await board({ placements: null, bill });
    expect(summary).toMatchObject({ board: null, placements: null, bill: { parts: [] } });
    expect(summary.bill?.columns.map(({ field }) => field)).toContain('designators');
  });
});

describe('columns of a bill', () => {
  const placements = text('Ref,X,Y,Layer\nR1,1,1,Top\nC1,3,1,Top\n', 2);
  const odd = text('Thing,Where used,Other\nBW-1,R1,KP-1\nBW-2,C1,KP-2\n', 3);
  const ask2 = async (more: Partial<SheetSettings> = {}) => {
    const reply = await newDesk().read(
      { id: 1, sheet: null, placements, bill: odd, settings: { ...settings, ...more } },
      () => undefined,
    );
    if (reply.kind !== 'read') throw new Error(JSON.stringify(reply));
    return reply.summary;
  };

  test('a bill that is refused shows its first rows with what each column was taken for', async () => {
    const { bill, problems } = await ask2();
    expect(problems.map(({ code, role }) => `${role} ${code}`)).toContain('bill columnMissing');
    expect(bill?.columns).toEqual([
      { index: 0, header: 'Thing', field: null, samples: ['BW-1', 'BW-2'] },
      { index: 1, header: 'Where used', field: 'designators', samples: ['R1', 'C1'] },
      { index: 2, header: 'Other', field: null, samples: ['KP-1', 'KP-2'] },
    ]);
  });

  test('a person’s choice is used, and found again for the next bill of this look', async () => {
    const chosen = { part: 'Thing', designators: 'Where used', supplierParts: 'Other' };
    const { bill, problems, board } = await ask2({ billColumns: chosen });
    expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(board?.parts[0]).toMatchObject({ part: 'BW-1', supplierParts: ['KP-1'] });
    expect(bill?.isRemembered).toBe(false);
    const next = await ask2({ remembered: { [bill?.key ?? '']: chosen } });
    expect(next.bill?.isRemembered).toBe(true);
    expect(next.board?.parts[0]).toMatchObject({ part: 'BW-1', supplierParts: ['KP-1'] });
  });

  test('two columns of one header are told apart', async () => {
    const twice = text('Part,Refs,MPN,MPN\nBW-1,R1,KP-1,KQ-1\nBW-2,C1,KP-2,KQ-2\n', 4);
    const reply = await newDesk().read(
      { id: 1, sheet: null, placements, bill: twice, settings },
      () => undefined,
    );
    expect(reply.kind === 'read' && reply.summary.bill?.columns.map(({ header }) => header)).toEqual([
      'Part',
      'Refs',
      'MPN',
      'MPN (2)',
    ]);
    expect(reply.kind === 'read' && reply.summary.board?.parts[0]?.supplierParts).toEqual(['KP-1', 'KQ-1']);
  });

  test('a placement file that nobody can name shows what stands in each column, aligned with blanks or not', async () => {
    const blanks = text(
      'Ref   Val    PosX    PosY   Side\nR1    10k    1.5     2.5    top\nR2    4k7    2.5     2.5    top\n',
      5,
    );
    const reply = await newDesk().read({ id: 1, sheet: null, placements: blanks, settings }, () => undefined);
    expect(
      reply.kind === 'read' && reply.summary.placements?.columns.map(({ samples }) => samples[0]),
    ).toEqual(['R1', '10k', '1.5', '2.5', 'top']);
  });
});
