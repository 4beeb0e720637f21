import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { call } from './call.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));

function fixture(name: string): string {
  return fileURLToPath(new URL(`../fixtures/sheets/${name}`, import.meta.url));
}

function write(name: string, content: string | Uint8Array): string {
  const file = path.join(folder, name);
  writeFileSync(file, content);
  return file;
}

const good =
  'Slot,Part,Tape width,Pitch\nM1-F-001,BW-10023,8,4\nM1-F-002,BW-10107,8,2\nM1-F-003,BW-30001,24,16\n';

describe('sheet', () => {
  it.each(['de-semicolon-windows1252.csv', 'fr-tab-utf16le.txt', 'en-comma-utf16be-no-mark.csv'])(
    'prints the slots of %s and exits 0',
    async (name) => {
      const { code, out } = await call(['sheet', fixture(name)]);
      expect(code).toBe(0);
      const answer = JSON.parse(out);
      expect(answer.slots).toHaveLength(5);
      expect(answer.slots[1]).toMatchObject({
        slot: 'M1-F-002',
        part: 'BW-10107',
        perPanel: 1200,
        tapeWidth: 8,
        pitch: 2,
        alternates: [],
      });
      expect(answer.ignored).toBe(0);
    },
  );

  it('reads standard input', async () => {
    const { code, out } = await call(['sheet', '-'], readFileSync(fixture('es-pipe-utf8.csv')));
    expect(code).toBe(0);
    expect(JSON.parse(out).problems).toEqual([]);
  });

  it('reads the sheet of a workbook that has the header, with its own row numbers', async () => {
    const text = (value: string) => ({ value });
    const number = (value: number) => ({ value, type: Number });
    const cover = [[text('Brae Works')], [text('kept by the engineers')]];
    const slots = [
      [null],
      [text('Setup of the Heather board')],
      [text('Slot'), text('Part'), text('Qty'), text('Tape width'), text('Pitch')],
      [text('M1-F-001'), number(10023), number(4), number(8), number(4)],
      [null],
      [text('M1-F-002'), text('BW-10107'), number(2.5), number(8), number(2)],
    ];
    const file = path.join(folder, 'setup.xlsx');
    await writeXlsxFile([
      { data: cover, sheet: 'Cover' },
      { data: slots, sheet: 'Slots' },
    ]).toFile(file);
    const { code, out } = await call(['sheet', file]);
    expect(code).toBe(1);
    const answer = JSON.parse(out);
    expect(answer.headerRow).toBe(3);
    expect(answer.slots[0]).toMatchObject({ row: 4, slot: 'M1-F-001', part: '10023', perPanel: 4 });
    expect(answer.problems).toMatchObject([{ row: 6, column: 'Qty', code: 'usageUnreadable' }]);
  });

  it('supplies placements per panel from the placement file, for the side that fits', async () => {
    const file = write('good.csv', good);
    const { code, out } = await call(['sheet', file, '--placements', fixture('placements-aligned.txt')]);
    expect(code).toBe(0);
    const answer = JSON.parse(out);
    expect(answer.problems).toEqual([]);
    expect(answer.slots.map((slot: { perPanel: number }) => slot.perPanel)).toEqual([3, 1, 1]);
    const top = await call([
      'sheet',
      file,
      '--placements',
      fixture('placements-aligned.txt'),
      '--side',
      'top',
      '--boards',
      '2',
    ]);
    expect(JSON.parse(top.out).slots.map((slot: { perPanel: number }) => slot.perPanel)).toEqual([4, 2, 2]);
  });

  it('prints totals per part of a placement file alone', async () => {
    const { code, out } = await call(['sheet', '--placements', fixture('placements-comma.csv')]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      parts: [
        { part: 'BW-10023', top: 3, bottom: 1 },
        { part: 'BW-10107', top: 1, bottom: 0 },
        { part: 'BW-30001', top: 1, bottom: 0 },
      ],
      placements: 6,
    });
  });

  it('takes columns from a map and says where a column is named that is not there', async () => {
    const file = write('odd.csv', 'where,what,n\nM1-F-001,A,4\n');
    const map = write(
      'map.json',
      JSON.stringify({ columns: { slot: 'where', part: 'what', perPanel: 'n' } }),
    );
    expect(JSON.parse((await call(['sheet', file, '--map', map])).out).slots).toMatchObject([
      { part: 'A', perPanel: 4 },
    ]);
    const wrong = write('wrong.json', JSON.stringify({ columns: { slot: 'where', part: 'who' } }));
    const { code, out } = await call(['sheet', file, '--map', wrong]);
    expect(code).toBe(1);
    expect(JSON.parse(out).problems.map((problem: { code: string }) => problem.code)).toContain(
      'columnNotFound',
    );
  });

  it('prints what a new revision changed against the old', async () => {
    const old = write('old.csv', 'Slot,Part,Qty,Tape width,Pitch\nM1-F-001,A,4,8,4\n');
    const { out } = await call(
      ['sheet', '-', '--against', old],
      'Slot,Part,Qty,Tape width,Pitch\nM1-F-001,B,4,8,4\n',
    );
    expect(JSON.parse(out).changes).toMatchObject({
      added: [],
      removed: [],
      changed: [{ slot: 'M1-F-001', fields: [{ field: 'part', before: 'A', after: 'B' }] }],
    });
  });

  it('exits 1 on a sheet with errors, and says row, column, code and message of each', async () => {
    const { code, out } = await call(
      ['sheet', '-'],
      'Slot,Part,Qty,Tape width,Pitch\nM1-F-001,A,4,9,4\nM1-F-001,B,1,8,4\n',
    );
    expect(code).toBe(1);
    const { problems } = JSON.parse(out);
    expect(problems).toMatchObject([
      { row: 2, column: 'Tape width', code: 'widthUnknown', severity: 'error', file: 'sheet' },
      { row: 3, column: 'Slot', code: 'slotTwice', severity: 'error', file: 'sheet' },
    ]);
    expect(problems.every((problem: { message: string }) => problem.message.endsWith('.'))).toBe(true);
  });

  it.each([
    ['an empty file', new Uint8Array(), 'found an empty file'],
    ['blank lines', '\n \n', 'found nothing but blank lines'],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]), 'found a picture'],
    ['a broken workbook', Uint8Array.from([0x50, 0x4b, 3, 4, 1, 2, 3]), 'found a broken workbook'],
    ['an old workbook', Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0, 0]), 'save it as XLSX or CSV'],
  ])('exits 2 with one line on %s', async (_, input, wanted) => {
    const { code, out, err } = await call(['sheet', '-'], input);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain(wanted);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  it.each([
    [['sheet'], 'found nothing'],
    [['sheet', 'a.csv', 'b.csv'], 'found a.csv b.csv'],
    [['sheet', 'no-such-file.csv'], 'no-such-file.csv: no such file'],
    [['sheet', '-', '--placements', '-'], 'at most one input from standard input'],
    [['sheet', '-', '--side', 'left'], '--side: expected both, top, bottom, found left'],
    [['sheet', '-', '--boards', '0'], '--boards: expected a whole number'],
    [['sheet', '-', '--colour'], "'--colour'"],
  ])('exits 2 on the call %j', async (args, wanted) => {
    const { code, err } = await call(args, good);
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  });

  it.each([
    [{ columns: { slots: 'where' } }, 'columns.slots: key not known here'],
    [{ column: {} }, 'column: key not known here'],
    [{ columns: { slot: ['a', 'b'] } }, 'columns.slot: expected a header as text'],
    [{ positions: { '12': 0 } }, 'positions.12: '],
  ])('exits 2 on the map %j', async (map, wanted) => {
    const { code, err } = await call(
      ['sheet', '-', '--map', write('refused.json', JSON.stringify(map))],
      good,
    );
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  });

  it('explains itself', async () => {
    const { code, out } = await call(['sheet', '--help']);
    expect(code).toBe(0);
    expect(out).toContain('--placements');
  });
});
