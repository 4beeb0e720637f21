import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { call } from './call.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'sheet-bom-'));
afterAll(() => rmSync(folder, { recursive: true }));

function write(name: string, content: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  return file;
}

const placements = write(
  'place.csv',
  'Ref,PosX,PosY,Rot,Side\nR1,1,1,0,top\nR2,2,1,0,top\nR3,3,1,0,bottom\nC1,4,1,0,top\nFID1,0,0,0,top\nH1,9,9,0,top\n',
);
const bom = write('bom.csv', 'Part Number;Qty;Designators;MPN\nBW-1;3;R1-R3;KP-1 | SR-1\nBW-2;1;C1;KP-2\n');

describe('sheet --placements --bom', () => {
  it('prints parts with makers, sides per panel and designators, and what is not placed', async () => {
    const { code, out } = await call(['sheet', '--placements', placements, '--bom', bom, '--boards', '2']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      parts: [
        { part: 'BW-1', supplierParts: ['KP-1', 'SR-1'], top: 4, bottom: 2, designators: ['R1', 'R2', 'R3'] },
        { part: 'BW-2', supplierParts: ['KP-2'], top: 2, bottom: 0, designators: ['C1'] },
      ],
      placements: 4,
      notPlaced: ['FID1', 'H1'],
      problems: [],
    });
  });

  it('exits 1 where the two do not agree, with file, row and column of each problem', async () => {
    const short = write('short.csv', 'Part Number;Qty;Designators\nBW-1;3;"R1,R2"\n');
    const { code, out } = await call(['sheet', '--placements', placements, '--bom', short]);
    expect(code).toBe(1);
    expect(JSON.parse(out).problems).toMatchObject([
      { file: 'bom', row: 2, column: 'Qty', code: 'quantityDiffers', severity: 'warning' },
      { file: 'placements', row: 4, column: 'Ref', code: 'designatorNotInBill', severity: 'error' },
      { file: 'placements', row: 5, column: 'Ref', code: 'designatorNotInBill', severity: 'error' },
    ]);
  });

  it('joins a sheet whose rows name designators, and takes the makers of the bill', async () => {
    const sheet = write(
      'sheet.csv',
      'Slot,Part,Tape width,Pitch,Designators\nM1-F-001,BW-1,8,4,"R1,R2,R3"\nM1-F-002,BW-2,8,4,C1\n',
    );
    const { code, out } = await call(['sheet', sheet, '--placements', placements, '--bom', bom]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      slots: [
        { slot: 'M1-F-001', perPanel: 3, supplierParts: ['KP-1', 'SR-1'] },
        { slot: 'M1-F-002', perPanel: 1, supplierParts: ['KP-2'] },
      ],
      problems: [],
    });
  });

  it('reads a workbook: the sheet of the bill, merged cells filled down; top and bottom on a sheet each', async () => {
    const cell = (value: string, rowSpan = 1) => ({ value, rowSpan });
    const bill = path.join(folder, 'bill.xlsx');
    await writeXlsxFile([
      { data: [[cell('Cover of the Heather board')]], sheet: 'Cover' },
      {
        data: [
          [cell('Part'), cell('Ref'), cell('MPN')],
          [cell('BW-1', 3), cell('R1'), cell('KP-1', 3)],
          [null, cell('R2'), null],
          [null, cell('R3'), null],
          [cell('BW-2'), cell('C1'), cell('KP-2')],
        ],
        sheet: 'Bill',
      },
    ]).toFile(bill);
    const sides = path.join(folder, 'sides.xlsx');
    const place = (ref: string, side: string) => [cell(ref), cell('1'), cell('2'), cell(side)];
    const head = ['Ref', 'X', 'Y', 'Side'].map((text) => cell(text));
    await writeXlsxFile([
      { data: [head, place('R1', 'top'), place('R2', 'top'), place('C1', 'top')], sheet: 'Top' },
      { data: [head, place('R3', 'bottom')], sheet: 'Bottom' },
    ]).toFile(sides);
    const { code, out } = await call(['sheet', '--placements', sides, '--bom', bill]);
    const answer = JSON.parse(out);
    expect(answer.problems).toMatchObject([{ file: 'placements', row: 5, code: 'sheetAdded' }]);
    expect(answer.parts).toMatchObject([
      { part: 'BW-1', top: 2, bottom: 1, supplierParts: ['KP-1'] },
      { part: 'BW-2', top: 1, bottom: 0 },
    ]);
    expect(code).toBe(0);
  });

  it('reads an IPC-2581 file with its own bill', async () => {
    const xml = `<?xml version="1.0"?><IPC-2581 revision="B" xmlns="http://webstds.ipc.org/2581"><Bom name="b"><BomItem OEMDesignNumberRef="BW-1" quantity="1"><RefDes name="R1" populate="true"/></BomItem></Bom>
<Ecad name="e"><CadHeader units="MILLIMETER"/><CadData><Layer name="T" side="TOP"/><Step name="s"><Component refDes="R1" layerRef="T" part="BW-1" mountType="SMT"><Location x="1" y="1"/></Component></Step></CadData></Ecad></IPC-2581>`;
    const { code, out } = await call(['sheet', '--placements', '-'], xml);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      parts: [{ part: 'BW-1', top: 1, bottom: 0, designators: ['R1'] }],
      problems: [],
    });
  });

  it('reads UTF-16 and Windows-1252 bills', async () => {
    const wide = write(
      'wide.txt',
      Buffer.from('\ufeffPart\tDesignators\tQté\r\nBW-1\tR1 R2 R3\t3\r\nBW-2\tC1\t1\r\n', 'utf16le'),
    );
    expect(JSON.parse((await call(['sheet', '--placements', placements, '--bom', wide])).out)).toMatchObject({
      placements: 4,
      problems: [],
    });
    const western = write(
      'western.csv',
      Buffer.from('Sachnummer;Stückzahl;Einbauplätze\nBW-1;3;R1-R3\nBW-2;1;C1\n', 'latin1'),
    );
    expect(
      JSON.parse((await call(['sheet', '--placements', placements, '--bom', western])).out),
    ).toMatchObject({
      placements: 4,
      problems: [{ file: 'bom', code: 'encodingGuessed' }],
    });
  });

  it.each([
    [Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0), 'found a gzip archive'],
    [
      new Uint8Array(Buffer.from('PK\u0003\u0004..............................readme.txt')),
      'found a ZIP archive',
    ],
    ['<?xml version="1.0"?><board><x/></board>', 'found an XML file with root element <board>'],
    ['<!DOCTYPE html><html><table></table></html>', 'found an HTML page'],
    ['{"a": 1}', 'found JSON'],
    ['%PDF-1.7 abc', 'found a PDF'],
    ['(kit (version 1))', 'found a design file that begins with (kit'],
  ])('names a file that is none as what it is', async (content, wanted) => {
    const { code, out, err } = await call([
      'sheet',
      '--placements',
      placements,
      '--bom',
      write('odd.bin', content),
    ]);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(wanted);
  });

  it.each([
    [['sheet', '--bom', bom], '--bom: expected --placements FILE with it, found none'],
    [['sheet', '--placements', placements, '--variant', 'A'], '--variant: expected --bom FILE with it'],
    [
      ['sheet', '--placements', placements, '--bom', bom, '--boards', '0'],
      '--boards: expected a whole number',
    ],
    [['sheet', '--placements', '-', '--bom', '-'], 'found - more than once'],
  ])('refuses the call %j', async (args, wanted) => {
    const { code, err } = await call(args);
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  });
});
