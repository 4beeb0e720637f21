// Ids of packages: the check character against published examples of ISO/IEC 7064, the letters, and that no two chains give one id.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { checkCharacter, isChecked } from '../../../shared/labels/check-character.ts';
import { parseLabel } from '../../../shared/labels/label.ts';
import { PACKAGE_ALPHABET, packageId, readPackageId } from '../../../shared/labels/package-id.ts';

const digits = '0123456789';
const letters = `${digits}ABCDEFGHIJKLMNOPQRSTUVWXYZ`;

describe('the check character', () => {
  // MOD 11,10: the example of ISO/IEC 7064:2003, 10.1.2 (as quoted by public implementations). MOD 37,36: the GRid of the
  // standard's own guide, an ISAN, a version of it, and the examples of two public implementations. MOD 17,16: the same method over sixteen letters.
  test.each([
    ['0794', '5', digits],
    ['079', '2', digits],
    ['A12425GABC1234002', 'M', letters],
    ['B159D8FA01240000', 'K', letters],
    ['188166C734200000', '3', letters],
    ['123AB', 'X', letters],
    ['DADPIDA3897722461', 'J', letters],
    ['D98989898909898', 'B', letters.slice(0, 16)],
  ])('of %s is %s, as published', (text, check, alphabet) => {
    expect(checkCharacter(text, alphabet)).toBe(check);
    expect(isChecked(text + check, alphabet)).toBe(true);
    for (const other of alphabet) if (other !== check) expect(isChecked(text + other, alphabet)).toBe(false);
  });

  test('is none of a text with a letter of no alphabet', () => {
    expect(checkCharacter('07O4', digits)).toBeNull();
    expect(isChecked('', digits)).toBe(false);
  });
});

const entries = fc.record({
  tablet: fc.stringMatching(/^[0-9a-z]{20}$/),
  epoch: fc.stringMatching(/^[0-9a-z]{20}$/),
  seq: fc.integer({ min: 1, max: 600_000 }),
});

describe('the id of a package', () => {
  test('is short, and has no two letters that are taken for each other', () => {
    for (const pair of ['0O', '1I', '1L', '2Z', '5S', '8B', 'UV', 'IL', 'DO', '0D', 'QO'])
      expect([...pair].every((letter) => PACKAGE_ALPHABET.includes(letter))).toBe(false);
    expect(packageIdOf('0fj3k2m9qrstvwx0yz12/5h8gq2nd0cr9v4tfk1ep/1').length).toBe(12);
    expect(packageIdOf('0fj3k2m9qrstvwx0yz12/5h8gq2nd0cr9v4tfk1ep/600000').length).toBe(13);
  });

  test('is read back as it was typed, in small letters, without its dash, with letters that look like its own', () => {
    fc.assert(
      fc.property(entries, ({ tablet, epoch, seq }) => {
        const id = packageIdOf(`${tablet}/${epoch}/${seq}`);
        const likeness = id
          .replaceAll('1', 'l')
          .replaceAll('2', 'z')
          .replaceAll('5', 's')
          .replaceAll('8', 'b');
        for (const typed of [
          id,
          id.toLowerCase(),
          id.replace('-', ''),
          id.replace('-', ' '),
          ` ${likeness} `,
        ])
          expect(readPackageId(typed)).toEqual({ id });
      }),
    );
  });

  test('shows every single letter misread', () => {
    fc.assert(
      fc.property(
        entries,
        fc.nat(),
        fc.constantFrom(...PACKAGE_ALPHABET),
        ({ tablet, epoch, seq }, at, letter) => {
          const id = packageIdOf(`${tablet}/${epoch}/${seq}`);
          const place = at % id.length;
          fc.pre(id[place] !== '-' && id[place] !== letter);
          const misread = id.slice(0, place) + letter + id.slice(place + 1);
          expect(readPackageId(misread)).not.toEqual({ id: misread });
        },
      ),
    );
  });

  test('shows nearly every swap of two neighbours: all but 2 in 100', () => {
    let swaps = 0;
    let unseen = 0;
    for (let seq = 1; seq <= 4000; seq += 1) {
      const id = packageId('00112233445566778899', seq).replace('-', '');
      for (let at = 0; at + 1 < id.length; at += 1) {
        if (id[at] === id[at + 1]) continue;
        const swapped = id.slice(0, at) + id[at + 1] + id[at] + id.slice(at + 2);
        swaps += 1;
        if (readPackageId(swapped) !== null && readPackageId(swapped) !== 'wrong') unseen += 1;
      }
    }
    expect(unseen / swaps).toBeLessThan(0.02);
  });

  test('is another for every entry, whichever tablet gave it', () => {
    const ids = new Set<string>();
    for (let chain = 0; chain < 200; chain += 1)
      for (let seq = 1; seq <= 200; seq += 1)
        ids.add(packageIdOf(`tablet-${chain % 50}/life-${chain}/${seq}`));
    expect(ids.size).toBe(200 * 200);
  });

  test('draws its first letters evenly: 20,000 chains share them as seldom as chance has it', () => {
    const marks = new Set<string>();
    for (let chain = 0; chain < 20_000; chain += 1)
      marks.add(packageIdOf(`tablet-${chain % 7}/life-${chain}/1`).slice(0, 7));
    // 20,000² / 2 pairs over 28⁷ letters: 0.015 pairs wanted.
    expect(20_000 - marks.size).toBeLessThanOrEqual(1);
  });

  test('of one chain never repeats: its number goes in whole', () => {
    fc.assert(
      fc.property(entries, fc.integer({ min: 1, max: 9_000_000 }), ({ tablet, epoch, seq }, other) => {
        fc.pre(seq !== other);
        expect(packageIdOf(`${tablet}/${epoch}/${seq}`)).not.toBe(packageIdOf(`${tablet}/${epoch}/${other}`));
      }),
    );
  });

  test('is not claimed of texts that are none, and misread ones are told apart from part numbers', () => {
    for (const text of ['', 'RC0402-103', 'M1-F-014', 'K7PM2Q3', 'ABCDEFG-HJKM', 'CRCW0402-10K0'])
      expect(readPackageId(text)).toBeNull();
    const id = packageId('00112233445566778899', 12);
    expect(readPackageId(`${id.slice(0, -1)}${id.at(-1) === '3' ? '4' : '3'}`)).toBe('wrong');
  });

  test('on a label is the package that the reader finds', () => {
    const id = packageId('00112233445566778899', 12);
    expect(parseLabel([`[)>\x1e06\x1dPX-1\x1d3S${id}\x1e\x04`]).reel).toBe(id);
  });

  test.each([
    ['xyz', 1],
    ['00112233445566778899', 0],
    ['00112233445566778899', 1.5],
  ])('cannot be made of %s and %d', (hash, number) => {
    expect(() => packageId(hash, number)).toThrow(RangeError);
  });
});
