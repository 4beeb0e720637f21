// One message over several symbols, and Code 39 in full ASCII. Structured append: ISO/IEC 18004 clause 8 and ISO/IEC 16022 (place, number, file);
// pairs of full ASCII: ISO/IEC 16388 (from memory).

import { describe, expect, test } from 'vitest';
import { emptyDesk } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { joinPortions } from '../../../shared/labels/portions.ts';
import type { ScannedCode } from '../../../shared/labels/scan.ts';
import { beginStory, tellPlant } from '../floor/story.ts';

const [RS, GS, EOT] = ['\x1e', '\x1d', '\x04'];
const code = (text: string, format = 'QRCode'): ScannedCode => ({ text, format, symbologyId: null });
const part = (text: string, index: number, of: number, id = '77'): ScannedCode => ({
  ...code(text),
  portion: { index, of, id },
});
const texts = (codes: readonly ScannedCode[]) => codes.map(({ text }) => text);

describe('joinPortions()', () => {
  test('joins the symbols of a message in their order, whatever order they were read in', () => {
    const joined = joinPortions([part('CD', 1, 3), code('Q5'), part('EF', 2, 3), part('AB', 0, 3)]);
    expect(texts(joined.codes)).toEqual(['Q5', 'ABCDEF']);
    expect(joined.missing).toBeNull();
    expect(joined.codes.every(({ portion }) => portion === undefined)).toBe(true);
  });

  test('keeps two messages apart by their id, and says how many symbols of one are there', () => {
    const both = [part('A', 0, 2, '1'), part('X', 0, 2, '2'), part('B', 1, 2, '1'), part('Y', 1, 2, '2')];
    expect(texts(joinPortions(both).codes)).toEqual(['AB', 'XY']);
    expect(joinPortions(both.slice(0, 3))).toEqual({ codes: [], missing: { have: 1, of: 2 } });
    // The same symbol read twice is one symbol.
    expect(joinPortions([part('A', 0, 2), part('A', 0, 2)]).missing).toEqual({ have: 1, of: 2 });
  });

  test('joins an envelope that begins in one symbol and ends in another', () => {
    const [head, tail] = [code(`[)>${RS}06${GS}PR-100${GS}1TLO`), code(`T7${GS}Q5000${RS}${EOT}`)];
    const { codes } = joinPortions([tail, head]);
    expect(texts(codes)).toEqual([`[)>${RS}06${GS}PR-100${GS}1TLOT7${GS}Q5000${RS}${EOT}`]);
    // One alone may have lost its header or trailer to the scanner, and is read as it always was.
    for (const alone of [head, tail])
      expect(joinPortions([alone])).toEqual({ codes: [alone], missing: null });
  });

  test('leaves whole codes as they are, also an envelope whose trailer the scanner dropped', () => {
    const whole = [
      code(`[)>${RS}06${GS}PR-100${RS}${EOT}`),
      code(`[)>${RS}06${GS}PR-200`),
      code('Q5'),
      code('PX'),
    ];
    expect(joinPortions(whole)).toEqual({ codes: whole, missing: null });
  });
});

describe('a label over several symbols', () => {
  const story = beginStory();
  tellPlant(story);
  const view = { floor: story.floor(), line: 'L1' };
  const scan = (...codes: readonly ScannedCode[]) => ({ codes, via: 'camera' as const, atMs: 0 });
  const halves = [
    part(`[)>${RS}06${GS}PR-100${GS}1TL`, 0, 2),
    part(`OT7${GS}Q5000${GS}3SK1${RS}${EOT}`, 1, 2),
  ] as const;

  test('is one reel in hand where all are there', () => {
    expect(takeScan(emptyDesk, scan(halves[1], halves[0]), view).reel).toMatchObject({
      part: 'R-100',
      lot: 'LOT7',
      quantity: 5000,
      reel: 'K1',
    });
  });

  test('is not read by halves: what is missing is told, and what was in hand stays', () => {
    const atSlot = takeScan(emptyDesk, scan(code('M1-F-001')), view);
    for (const half of halves)
      expect(takeScan(atSlot, scan(half), view)).toEqual({
        ...atSlot,
        told: { tell: 'symbols-missing', have: 1, of: 2 },
      });
  });
});

describe('Code 39 in full ASCII', () => {
  test('is told with what it would be, and read as it is', () => {
    const reading = parseLabel(['1PAB+C+D/O7']);
    expect(reading.warnings).toContainEqual({ code: 'full-ascii', text: '1PAB+C+D/O7', meant: '1PABcd/7' });
    expect(JSON.stringify(reading)).toContain('AB+C+D/O7');
  });

  test.each(['PCU+77', 'P+A', '1PX-9', 'A+B', 'a+B+C'])('is not seen in %j', (text) => {
    expect(parseLabel([text]).warnings.map(({ code: about }) => about)).not.toContain('full-ascii');
  });
});
