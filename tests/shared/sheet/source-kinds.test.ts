// What a file is by its first bytes (published format notes), which sheet of a workbook is wanted, and what stands above a header.

import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { fillMerged, mergedRanges, sheetTexts } from '../../../shared/sheet/merged.ts';
import {
  foreignKind,
  joinPages,
  nameHeaders,
  pickSheet,
  readTitle,
  sheetFileKind,
  toSheetCell,
} from '../../../shared/sheet/source.ts';

const bytes = (...given: readonly (number | string)[]) =>
  Uint8Array.from(given.flatMap((each) => (typeof each === 'number' ? [each] : [...strToU8(each)])));
const zip = (rest: string, length = 31) => {
  const own = bytes(0x50, 0x4b, 3, 4, ...Array.from({ length: 26 }, () => 0), rest);
  return own.length >= length ? own : bytes(...own, ...Array.from({ length: length - own.length }, () => 0));
};

describe('foreignKind()', () => {
  // First bytes: RFC 1952 (gzip), APPNOTE 6.3.10 (ZIP), ISO 32000 (PDF), PNG, JPEG and GIF as published; tar by POSIX ustar at byte 257.
  it.each<[what: string, given: Uint8Array, kind: string | null]>([
    ['gzip', bytes(0x1f, 0x8b, 8), 'gzip'],
    ['half of it', bytes(0x1f, 8), null],
    ['7z', bytes('7z', 0xbc, 0xaf, 0x27, 0x1c), '7z'],
    ['7z broken off', bytes('7z', 0xbc, 0xaf, 0x27), null],
    ['rar', bytes('Rar!', 0x1a, 7), 'rar'],
    ['bzip2', bytes('BZh9'), 'bzip2'],
    ['xz', bytes(0xfd, '7zXZ', 0), 'xz'],
    ['PDF', bytes('%PDF-1.7'), 'pdf'],
    ['PNG', bytes(0x89, 'PNG'), 'picture'],
    ['JPEG', bytes(0xff, 0xd8, 0xff, 0xe0), 'picture'],
    ['GIF', bytes('GIF89a'), 'picture'],
    ['tar', bytes('x'.repeat(257), 'ustar', 0), 'tar'],
    ['the same one byte late', bytes('x'.repeat(258), 'ustar', 0), null],
    ['one byte early', bytes('x'.repeat(256), 'ustar', 0), null],
    ['text', bytes('Slot;Part'), null],
    ['nothing', bytes(), null],
    ['a workbook', zip('xl/workbook.xml'), null],
    ['a workbook in binary form', zip('xl/workbook.bin'), 'binary-workbook'],
    ['an open document', zip('mimetypeapplication/vnd.oasis.opendocument.spreadsheet'), 'open-document'],
    ['one named later than its first 200 bytes', zip(`${'x'.repeat(170)}vnd.oasis.opendocument`), 'zip'],
    ['a letter', zip('word/document.xml'), 'word-document'],
    ['another archive', zip('read.me'), 'zip'],
    ['an archive that begins again and again', zip('xxl/'), null],
    ['an archive with half a name at its end', zip('x xl'), 'zip'],
    ['the shortest archive', zip('', 31), 'zip'],
    ['too short for one', zip('', 30), null],
    ['another mark of the same maker', bytes(0x50, 0x4b, 1, 2, 'x'.repeat(40)), null],
    ['and another', bytes(0x50, 0x4b, 3, 5, 'x'.repeat(40)), null],
    ['a text that begins with P', bytes('P', 0, 3, 4, 'x'.repeat(40)), null],
  ])('%s', (_, given, kind) => {
    expect(foreignKind(given)).toBe(kind);
  });

  it('is no matter for kinds that can be read', () => {
    expect(sheetFileKind(bytes(0x50, 0x4b, 3))).toBe('text');
    expect(sheetFileKind(bytes(0x50, 0x4b, 3, 4))).toBe('workbook');
    expect(sheetFileKind(bytes(0xd0, 0xcf, 0x11, 0xe1))).toBe('text');
  });
});

it('a cell of a type not known is its text', () => {
  expect([toSheetCell(10n), toSheetCell('x'), toSheetCell(null), toSheetCell(false)]).toEqual([
    '10',
    'x',
    null,
    false,
  ]);
});

describe('the sheet of a workbook', () => {
  const blank = (count: number) => Array.from({ length: count }, () => ['']);
  const setup = ['Slot', 'Part', 'Qty'];

  it('is the first whose best row of 60 names the most', () => {
    expect(pickSheet([[['x']], [setup], [setup]])).toBe(1);
    expect(pickSheet([[['Slot', 'Part']], [setup]])).toBe(1);
    expect(pickSheet([[['Slot']], [...[...blank(59), setup]]])).toBe(1);
    expect(pickSheet([[['Slot']], [...blank(60), setup]])).toBe(0);
    expect(pickSheet([])).toBe(0);
  });

  it('with coordinates is a placement file and no bill', () => {
    const bill = [['Ref', 'Part', 'Value', 'Description', 'Qty']];
    const places = [['Ref', 'Part', 'Value', 'X', 'Y', 'Side']];
    const half = [['Ref', 'Part', 'Value', 'X', 'Layer', 'Rotation']];
    expect(pickSheet([bill, places], 'placements')).toBe(1);
    expect(pickSheet([places, bill], 'bill')).toBe(1);
    expect(pickSheet([bill, half, places], 'placements')).toBe(2);
    expect(pickSheet([places, [['Ref']]], 'bill')).toBe(0);
    expect(pickSheet([places, [['Ref', 'Part']]], 'bill')).toBe(1);
  });

  it('goes on with others under the same header, below whatever lines; each is told with its first row', () => {
    const page = (name: string, ...rows: readonly string[][]) => ({ name, rows });
    const pages = [
      page('Notes', ['made by', 'us']),
      page('Top', ['Ref', 'Part', 'Side', ''], ['R1', 'A', 'T']),
      page('Other', ['Ref', 'Part', 'Layer'], ['X1', 'A', 'T']),
      page('Bottom', ['Bottom'], ['Ref', 'Part', 'Side'], ['R2', 'A', 'B'], ['R3', 'A', 'B']),
      page('More', ['Ref', 'Part', 'Side'], ['R4', 'A', 'B']),
    ];
    const { rows, problems } = joinPages(pages, 'placements');
    expect(rows).toEqual([
      ['Ref', 'Part', 'Side', ''],
      ['R1', 'A', 'T'],
      ['R2', 'A', 'B'],
      ['R3', 'A', 'B'],
      ['R4', 'A', 'B'],
    ]);
    expect(problems.map(({ row, facts }) => [row, facts])).toEqual([
      [3, { found: 'Bottom', first: 3 }],
      [5, { found: 'More', first: 5 }],
    ]);
    expect(joinPages([], 'bill')).toEqual({ rows: [], problems: [] });
    const one = [page('A', ['Ref'], ['R1']), page('B', ['Ref'], ['R2'])];
    expect(joinPages(one, 'placements').rows).toEqual([['Ref'], ['R1']]);
    const two = [page('A', ['Ref', 'Part'], ['R1', 'A']), page('B', ['Ref', 'Part'], ['R2', 'A'])];
    expect(joinPages(two, 'placements').rows).toHaveLength(3);
  });
});

describe('nameHeaders()', () => {
  it('counts a header up until it is its own, and names by letters what has entries below', () => {
    const rows = [['title'], ['Alt', 'ALT', 'alt (2)', 'Alt', '', ''], ['a', 'b', 'c', 'd', '', 'f']];
    const named = nameHeaders(rows, 2);
    expect(named[1]).toEqual(['Alt', 'ALT (2)', 'alt (2) (2)', 'Alt (3)', '', '(F)']);
    expect([named[0], named[2]]).toEqual([rows[0], rows[2]]);
  });

  it('looks for entries in the 60 rows below', () => {
    const below = (blank: number) =>
      nameHeaders([['A', ''], ...Array.from({ length: blank }, () => ['x', '']), ['x', 'y']], 1)[0];
    expect([below(59), below(60)]).toEqual([
      ['A', '(B)'],
      ['A', ''],
    ]);
    expect(nameHeaders([], 1)).toEqual([]);
    expect(nameHeaders([['', 'B'], ['x']], 1)[0]).toEqual(['(A)', 'B']);
    expect(
      nameHeaders(
        [
          ['x', 'y'],
          ['', 'B'],
        ],
        2,
      )[1],
    ).toEqual(['', 'B']);
  });
});

describe('readTitle()', () => {
  const title = (...lines: readonly string[][]) => {
    const { product, revision, side } = readTitle([...lines, ['Slot', 'Part']], lines.length + 1);
    return [product, revision, side];
  };

  it('takes a label and what stands behind it, in one cell or in the next one', () => {
    expect(title(['Product', 'Heather'], ['Rev.', 'B'], ['Side', 'T'])).toEqual(['Heather', 'B', 'top']);
    expect(title(['', 'Job=Heather ', '', 'Seite: unten'])).toEqual(['Heather', null, 'bottom']);
    expect(title(['Product:'], ['Heather'])).toEqual([null, null, null]);
    expect(title(['Product', 'Heather'], ['Board', 'Brook'], ['Side', 'inner'])).toEqual([
      'Heather',
      null,
      null,
    ]);
    expect(title(['x', 'Product', 'Heather'])).toEqual(['Heather', null, null]);
  });

  it('takes a revision behind the product, unless one is stated', () => {
    expect(title(['Product', 'Heather, revision C2'])).toEqual(['Heather', 'C2', null]);
    expect(title(['Product', 'Heather; Issue 4'], ['Revision', '5'])).toEqual(['Heather', '5', null]);
    expect(title(['Product', 'Heather rev'])).toEqual(['Heather rev', null, null]);
  });

  it('reads nothing from the header on', () => {
    expect(
      readTitle(
        [
          ['Product', 'A'],
          ['Side', 'T'],
        ],
        2,
      ),
    ).toMatchObject({ product: 'A', side: null });
    expect(readTitle([['Product', 'A']], 0).product).toBeNull();
  });
});

describe('merged cells', () => {
  const sheet = (...refs: readonly string[]) =>
    `<worksheet><mergeCells>${refs.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells></worksheet>`;
  const book = (targets: Readonly<Record<string, string>>, sheets: Readonly<Record<string, string>>) =>
    zipSync({
      'xl/workbook.xml': strToU8(
        `<sheets>${Object.keys(targets)
          .map((id) => `<sheet name="${id}" r:id="${id}"/>`)
          .join('')}</sheets>`,
      ),
      'xl/_rels/workbook.xml.rels': strToU8(
        Object.entries(targets)
          .map(([id, target]) => `<Relationship Id="${id}" Target="${target}"/>`)
          .join(''),
      ),
      ...Object.fromEntries(Object.entries(sheets).map(([name, text]) => [name, strToU8(text)])),
    });

  it('are read by sheet in the workbook’s order, columns from A to AAB', () => {
    const ranges = mergedRanges(
      sheetTexts(
        book(
          { r2: '/xl/worksheets/b.xml', r1: 'worksheets/a.xml', r3: 'worksheets/none.xml' },
          {
            'xl/worksheets/a.xml': sheet('A1:A3', 'Z10:AA12', 'AAA2:AAB2'),
            'xl/worksheets/b.xml': sheet('B2:B3'),
          },
        ),
      ),
    );
    expect(ranges).toEqual([
      [{ column: 1, lastColumn: 1, row: 1, lastRow: 2 }],
      [
        { column: 0, lastColumn: 0, row: 0, lastRow: 2 },
        { column: 25, lastColumn: 26, row: 9, lastRow: 11 },
        { column: 702, lastColumn: 703, row: 1, lastRow: 1 },
      ],
      [],
    ]);
    expect(mergedRanges(sheetTexts(zipSync({ 'a.txt': strToU8('x') })))).toEqual([]);
  });

  it('are filled down over empty cells only, within the rows there are', () => {
    const range = (column: number, row: number, lastRow: number, lastColumn = column) => ({
      column,
      lastColumn,
      row,
      lastRow,
    });
    const rows = [['A', 'x'], ['', 'kept'], ['z'], []];
    expect(fillMerged(rows, [range(0, 0, 1), range(1, 0, 9)])).toEqual([
      ['A', 'x'],
      ['A', 'kept'],
      ['z', 'x'],
      [null, 'x'],
    ]);
    expect(fillMerged([['A'], []], [range(3, 0, 1)])).toEqual([['A'], [null, null, null, undefined]]);
    expect(fillMerged(rows, [range(0, 0, 0), range(0, 0, 1, 1)])).toBe(rows);
    expect(rows[3]).toEqual([]);
  });
});
