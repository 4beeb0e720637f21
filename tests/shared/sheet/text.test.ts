import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesToText, type DecodeBytes, guessSeparator, textToRows } from '../../../shared/sheet/text.ts';

const decode: DecodeBytes = (bytes, encoding) => {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};

function utf16(text: string, order: 'le' | 'be', mark: boolean): Uint8Array {
  const little = Buffer.from(mark ? `\ufeff${text}` : text, 'utf16le');
  return order === 'le' ? little : Buffer.from(little).swap16();
}

const sample = 'Rüstplatz;Teil\nM1-F-001;A\n';

describe('bytesToText()', () => {
  it.each([
    ['UTF-8', Buffer.from(sample), 'utf-8'],
    ['UTF-8 with mark', Buffer.from(`\ufeff${sample}`), 'utf-8'],
    ['UTF-16 little-endian with mark', utf16(sample, 'le', true), 'utf-16le'],
    ['UTF-16 little-endian without mark', utf16(sample, 'le', false), 'utf-16le'],
    ['UTF-16 big-endian with mark', utf16(sample, 'be', true), 'utf-16be'],
    ['UTF-16 big-endian without mark', utf16(sample, 'be', false), 'utf-16be'],
  ] as const)('reads %s without a warning and without the mark', (_, bytes, encoding) => {
    expect(bytesToText(bytes, decode)).toEqual({ text: sample, encoding, problems: [] });
  });

  it('reads bytes that are not UTF-8 as Windows-1252 and warns', () => {
    const read = bytesToText(Buffer.from(sample, 'latin1'), decode);
    expect(read).toMatchObject({ text: sample, encoding: 'windows-1252' });
    expect(read.problems.map((problem) => problem.code)).toEqual(['encodingGuessed']);
  });

  it('gives no text for bytes of a picture', () => {
    const picture = Uint8Array.from([
      0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48,
    ]);
    expect(bytesToText(picture, decode).text).toBeNull();
  });

  it('gives no text for UTF-16 that breaks off inside a character', () => {
    const broken = Buffer.concat([utf16(sample, 'le', true), Buffer.from([0x41])]);
    expect(bytesToText(broken, decode).text).toBeNull();
  });

  it('reads an empty file as empty text', () => {
    expect(bytesToText(new Uint8Array(), decode).text).toBe('');
  });
});

describe('guessSeparator()', () => {
  it.each([
    ['sep=|\r\na;b|c', '|', 'the first line says it'],
    ['Slot;Part;Pitch\nM1-F-001;A;4,0\nM1-F-002;B;4,0', ';', 'decimal commas are as even as the separator'],
    ['Setup, top side, rev C\nSlot\tPart\tQty\nM1-F-001\tA, blue\t1', '\t', 'commas in title and cells'],
    ['Slot^Part^Qty\nM1-F-001^A^1', '^', 'a rare separator'],
    ['a,b\n1,2', ',', 'no known header: the even one'],
    ['just text', ',', 'nothing separates'],
    ['', ',', 'nothing at all'],
  ])('finds the separator of %j: %s', (text, wanted) => {
    expect(guessSeparator(text)).toBe(wanted);
  });
});

describe('textToRows()', () => {
  it('keeps blank lines as rows and the line that names the separator as an empty one', () => {
    const { rows } = textToRows('sep=;\r\nSlot;Part\r\n\r\nM1-F-001;A\r\n');
    expect(rows.slice(0, 4)).toEqual([[], ['Slot', 'Part'], [''], ['M1-F-001', 'A']]);
  });

  it('keeps a quoted line break inside its row and reads mixed line ends', () => {
    const { rows } = textToRows('Slot,Part\r\nM1-F-001,"A\r\nB"\nM1-F-002,C\rM1-F-003,D');
    expect(rows.map((row) => row.length)).toEqual([2, 2, 2, 2]);
    expect(rows[1]?.[1]).toBe('A\nB');
  });

  it('reports the row in which an open quotation mark begins', () => {
    const { problems } = textToRows('Slot,Part\nM1-F-001,A\nM1-F-002,"B\n');
    expect(problems).toMatchObject([{ row: 3, code: 'quoteBroken' }]);
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        expect(Array.isArray(textToRows(text).rows)).toBe(true);
      }),
    );
  });
});
