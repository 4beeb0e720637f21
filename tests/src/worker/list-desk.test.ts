// Lists as the worker reads them: text or workbook, the sheet of a workbook that reads most like one, columns corrected once.

import readXlsxFile from 'read-excel-file/universal';
import { expect, test } from 'vitest';
import writeXlsxFile from 'write-excel-file/node';
import { columnsToMap, mapToKept } from '../../../shared/sheet/choice.ts';
import { readList } from '../../../src/worker/list-desk.ts';
import type { ListRequest } from '../../../src/worker/list-protocol.ts';

const tools = {
  decode: (bytes: Uint8Array, encoding: string) => {
    try {
      return new TextDecoder(encoding, { fatal: true }).decode(bytes);
    } catch {
      return null; // not of this encoding
    }
  },
  readWorkbook: readXlsxFile,
};

async function ask(content: Blob | string, more: Partial<ListRequest> = {}) {
  const source = { number: 1, name: 'list', content };
  return readList({ list: 'parts', source, columns: null, remembered: {}, page: null, ...more }, tools);
}

async function read(content: Blob | string, more: Partial<ListRequest> = {}) {
  const reply = await ask(content, more);
  if (reply.kind === 'refused') throw new Error(reply.fault);
  return reply.summary;
}

const cells = (rows: readonly (readonly (string | number)[])[]) =>
  rows.map((row) => row.map((value) => ({ value })));

test('a workbook: the sheet that reads like a list of parts, its per cent and its numbers', async () => {
  const bytes = await writeXlsxFile([
    { sheet: 'Notes', data: cells([['Nothing of that kind'], [1]]) },
    {
      sheet: 'Parts',
      data: [
        ...cells([['Part number', 'Value', 'Tolerance', 'Package', 'Tape width', 'Pitch']]),
        [
          { value: 'R-1' },
          { value: '4.7 kΩ' },
          { value: 0.01, type: Number, format: '0%' },
          { value: '0402' },
          { value: 8 },
          { value: 2 },
        ],
      ],
    },
  ]).toBuffer();
  const summary = await read(new Blob([new Uint8Array(bytes)]));
  expect(summary.pages).toEqual(['Notes', 'Parts']);
  expect(summary.page).toBe(1);
  expect(summary.parts[0]?.part).toMatchObject({
    part: 'R-1',
    value: '4.7 kΩ',
    tolerance: '1 %',
    tapeWidthMm: 8,
    pitchMm: 2,
  });
});

test('a choice of columns is found again by the header, and by its kind of list alone', async () => {
  const text = 'Ours;Case\nR-1;0402';
  const first = await read(text);
  expect(first.problems.map(({ code }) => code)).toContain('columnMissing');
  const columns = columnsToMap(
    first.columns.map((column) => (column.header === 'Ours' ? { ...column, field: 'part' } : column)),
    first.fields,
  );
  const chosen = await read(text, { columns });
  expect(chosen.parts).toHaveLength(1);
  const remembered = { [first.key]: mapToKept(columns) };
  const again = await read('Ours;Case\nR-2;0603', { remembered });
  expect(again.isRemembered).toBe(true);
  expect(again.parts[0]?.part).toMatchObject({ part: 'R-2', package: '0603' });
  expect((await read(text, { remembered, list: 'counts' })).isRemembered).toBe(false);
});

test('counted reels out of a counter’s own columns', async () => {
  const summary = await read('Time;Barcode;Counted parts\n10:00;K-1;4987', { list: 'counts' });
  expect(summary.counts).toEqual([{ row: 2, reel: 'K-1', count: 4987, part: '', lot: '' }]);
});

test.each([
  ['', 'empty'],
  [' \n ', 'blank'],
  ['<?xml version="1.0"?><note/>', 'other-xml'],
])('what is no list is refused: %j', async (text, fault) => {
  expect(await ask(text)).toEqual({ kind: 'refused', fault });
});

test('a header of two rows, groups above and columns below, whether or not the cells of single columns are merged down', async () => {
  const list = [
    ['Approved material'],
    ['Stock number', 'Description', 'Electrical', '', 'Package', '', '', 'Tape', '', "Maker's part"],
    ['', '', 'Value', 'Tolerance', 'Case', 'Pins', 'MSL', 'Width', 'Pitch', ''],
    ['R-1042', 'Resistor', '4,7 kΩ', '1 %', '0603', '2', '1', '8', '4', 'KP-4701'],
    ['C-0100', 'Capacitor', '100 nF', '10 %', '0805', '2', '2a', '8', '4', 'CC-100'],
  ];
  const summary = await read(list.map((row) => row.join(';')).join('\n'));
  expect(summary.columns.map(({ header, field }) => [header, field])).toEqual([
    ['Stock number', 'part'],
    ['Description', 'description'],
    ['Value', 'value'],
    ['Tolerance', 'tolerance'],
    ['Case', 'package'],
    ['Pins', 'pins'],
    ['MSL', 'msl'],
    ['Tape Width', 'tapeWidth'],
    ['Tape Pitch', 'pitch'],
    ["Maker's part", 'supplierParts'],
  ]);
  expect(summary.problems).toEqual([]);
  expect(
    summary.parts.map(({ row, part }) => [row, part.part, part.tapeWidthMm, part.makers.length]),
  ).toEqual([
    [4, 'R-1042', 8, 1],
    [5, 'C-0100', 8, 1],
  ]);
  const counted = await read('Spool;;Result;\nId;Lot;Count;Time\nK-1;L-1;4980;10:11\n', { list: 'counts' });
  expect(counted.counts).toMatchObject([{ row: 3, reel: 'K-1', count: 4980, lot: 'L-1' }]);
});

test('article numbers under "Supplier" are not the plant\'s own, on whichever side of these they stand', async () => {
  const supplier = [
    ['Supplier', ''],
    ['Name', 'Article number'],
    ['Brook Parts', '77-1042'],
    ['Brook Parts', '77-0100'],
  ];
  const rest = [
    ['Description', 'Value', 'Package', 'Tape', ''],
    ['', '', '', 'Width', 'Pitch'],
    ['Resistor', '4k7', '0603', '8', '4'],
    ['Capacitor', '100 nF', '0805', '8', '4'],
  ];
  const own = (header: string) => [[header], [''], ['R-1042'], ['C-0100']];
  for (const blocks of [
    [supplier, own('Stock number'), rest],
    [own('Stock number'), supplier, rest],
    // With a word more, and so no whole phrase.
    [own('Current stock number'), supplier, rest],
  ]) {
    const rows = rest.map((_, at) => blocks.flatMap((block) => block[at] ?? []).join(';'));
    const summary = await read(rows.join('\n'));
    expect(summary.columns.find(({ header }) => header === 'Supplier Article number')?.field).toBe(null);
    expect(summary.parts.map(({ part }) => [part.part, part.tapeWidthMm])).toEqual([
      ['R-1042', 8],
      ['C-0100', 8],
    ]);
  }
});

test('what stands under "Supplier" and nowhere else keeps that word, and is read', async () => {
  const list = [
    ['Stock number', 'Supplier', '', ''],
    ['', 'Price', 'Currency', 'MPN'],
    ['R-1042', '0,12', 'EUR', 'KP-4701'],
  ];
  const summary = await read(list.map((row) => row.join(';')).join('\n'));
  expect(summary.columns.map(({ header, field }) => [header, field])).toEqual([
    ['Stock number', 'part'],
    ['Supplier Price', 'price'],
    ['Supplier Currency', 'currency'],
    ['Supplier MPN', 'supplierParts'],
  ]);
});
