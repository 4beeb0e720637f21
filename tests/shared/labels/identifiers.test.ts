import { describe, expect, it } from 'vitest';
import {
  IDENTIFIERS,
  identifierAt,
  identifierLength,
  identifierTitle,
} from '../../../shared/labels/identifiers.ts';

describe('identifierLength()', () => {
  it.each([
    ['PABC', 1, 'one letter'],
    ['1PABC', 2, 'digit and letter'],
    ['31PABC', 3, 'the longest digits and letter, not 1P'],
    ['999ZABC', 4, 'three digits'],
    ['1234P', 0, 'four digits'],
    ['01P', 0, 'a leading nought'],
    ['pABC', 0, 'lower case'],
    ['-P', 0, 'a mark'],
    ['AX', 1, 'the first letter'],
    ['ZX', 1, 'the last letter'],
    ['@X', 0, 'the mark before A'],
    ['[X', 0, 'the mark behind Z'],
    ['12', 0, 'digits only'],
    ['', 0, 'nothing'],
  ])('of %s is %d: %s', (text, length) => {
    expect(identifierLength(text, 0)).toBe(length);
  });

  it('takes a small letter where asked', () => {
    expect(identifierLength('q80', 0, true)).toBe(1);
    expect(identifierLength('1pX', 0, true)).toBe(2);
  });
});

describe('the table of identifiers', () => {
  // Meanings: MH10.8.2 list at https://www.mhi.org/standards/mh10/dataidentifiers and
  // https://id-link.eu/sidis/ ; formats of the D category there: YYWW 10D, YYYYWW 11D, YYYYMMDD 12D, 14D, 16D.
  it.each([
    ['P', 'part'],
    ['1P', 'supplierPart'],
    ['Q', 'quantity'],
    ['1T', 'lot'],
    ['T', 'lot'],
    ['3S', 'reel'],
    ['4S', 'reel'],
    ['5S', 'reel'],
    ['S', 'reel'],
    ['9D', 'dateCode'],
    ['10D', 'dateCode'],
    ['11D', 'dateCode'],
    ['14D', 'expires'],
    ['4L', 'country'],
    ['13E', 'msl'],
    ['K', 'order'],
    ['V', 'supplier'],
  ])('%s fills %s', (id, field) => {
    expect(IDENTIFIERS.get(id)?.field).toBe(field);
  });

  it('orders package ids 3S, 4S, 5S, S and lots 1T, T', () => {
    const ranks = ['3S', '4S', '5S', 'S'].map((id) => IDENTIFIERS.get(id)?.rank);
    expect(ranks).toEqual([0, 1, 2, 3]);
    expect(IDENTIFIERS.get('1T')?.rank).toBeLessThan(IDENTIFIERS.get('T')?.rank ?? 0);
  });

  it('has only possible identifiers, each found again by its place in a text', () => {
    for (const [id, identifier] of IDENTIFIERS) {
      expect(identifierLength(id, 0), id).toBe(id.length);
      expect(identifierAt(`xx${id}77`, 2, id.length), id).toBe(identifier);
    }
    expect(identifierAt('99Z1', 0, 3)).toBeUndefined();
  });

  it('`identifierTitle()` names the category of one that it does not know', () => {
    expect(identifierTitle('1P')).toBe('part number assigned by the supplier');
    expect(identifierTitle('77T')).toContain('lot');
    expect(identifierTitle('9A')).toContain('not in the table');
  });
});
