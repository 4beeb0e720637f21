// Look-alike parts: numbers by edit distance with neighbouring letters exchanged (Damerau 1964, optimal string alignment), values by
// IEC 60062 codes as part-value reads them.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  charactersApart,
  isMisread,
  type LookedAt,
  lookAlikes,
  lookAlikesOf,
  mixedUp,
} from '../../../shared/floor/look-alikes.ts';
import { statedValues } from '../../../shared/floor/stated-values.ts';
import { beginStory, brookSetup } from './story.ts';

const part = (name: string, more: Partial<LookedAt> = {}): LookedAt => ({
  part: name,
  value: null,
  tolerance: null,
  package: null,
  ...more,
});

/** The plain recursion, without limit: what the rows must come to. */
function apartPlainly(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const changed = a[0] === b[0] ? 0 : 1;
  const ways = [
    apartPlainly(a.slice(1), b) + 1,
    apartPlainly(a, b.slice(1)) + 1,
    apartPlainly(a.slice(1), b.slice(1)) + changed,
  ];
  if (a.length > 1 && b.length > 1 && a[0] === b[1] && a[1] === b[0])
    ways.push(apartPlainly(a.slice(2), b.slice(2)) + 1);
  return Math.min(...ways);
}

describe('characters apart', () => {
  test.each([
    ['C-1042', 'C-1042', 0],
    ['C-1042', 'C-1043', 1],
    ['C-1042', 'C-1024', 1],
    ['C-1042', 'C-104', 1],
    ['C-1042', 'c-1042', 0],
    ['C-1042', 'C-1135', 3],
    ['C-1042', 'R-220000', 3],
  ])('%s and %s are %i apart, at most 3 asked', (a, b, apart) => {
    expect(charactersApart(a, b, 2)).toBe(apart);
  });

  test('are what the plain recursion says, up to the limit', () => {
    const text = fc.string({ unit: fc.constantFrom('A', 'B', '1'), maxLength: 6 });
    fc.assert(
      fc.property(text, text, fc.integer({ min: 0, max: 3 }), (a, b, most) => {
        expect(charactersApart(a, b, most)).toBe(Math.min(apartPlainly(a, b), most + 1));
      }),
    );
  });
});

describe('look-alikes', () => {
  test('two characters count in long numbers, one in short ones', () => {
    expect(lookAlikes([part('AB-100200'), part('AB-100211')])).toMatchObject([{ by: ['number'], apart: 2 }]);
    expect(lookAlikes([part('R10'), part('R22')])).toEqual([]);
    expect(lookAlikes([part('R10'), part('R12')])).toMatchObject([{ apart: 1 }]);
  });

  test('the same value in another size, or with another tolerance, however it is written', () => {
    const pairs = lookAlikes([
      part('RES-AAAA', { value: '4k7', tolerance: '1 %', package: '0402' }),
      part('WID-BBBB', { value: '4.7 kΩ', tolerance: '1 %', package: '0603' }),
      part('KON-CCCC', { value: '4700 Ω', tolerance: '5%', package: '0402' }),
      part('LAM-DDDD', { value: '47 kΩ', tolerance: '5%', package: '0402' }),
    ]);
    expect(pairs.map(({ parts, by }) => [...parts, ...by])).toEqual([
      ['KON-CCCC', 'WID-BBBB', 'size', 'tolerance'],
      ['KON-CCCC', 'RES-AAAA', 'tolerance'],
      ['RES-AAAA', 'WID-BBBB', 'size'],
    ]);
  });

  test('the same value, size and tolerance under another number is no look-alike: it is the same', () => {
    const same = { value: '100 nF', tolerance: '10 %', package: '0603' };
    expect(lookAlikes([part('CAP-AAAA', same), part('KON-BBBB', same)])).toEqual([]);
  });

  test('what is not known makes nothing alike', () => {
    expect(
      lookAlikes([part('CAP-AAAA', { value: '100 nF' }), part('KON-BBBB', { value: '100 nF' })]),
    ).toEqual([]);
  });

  test('those alike in number and value come first, then the closest numbers', () => {
    const pairs = lookAlikes([
      part('C-1000'),
      part('C-1001', { value: '1 µF', package: '0603' }),
      part('C-1012', { value: '1 µF', package: '0805' }),
    ]);
    expect(pairs.map(({ parts }) => parts.join(' '))).toEqual([
      'C-1001 C-1012',
      'C-1000 C-1001',
      'C-1000 C-1012',
    ]);
  });

  test('numbers of which one is easily read as the other come before those that only differ', () => {
    const pairs = lookAlikes([part('AB-1234'), part('AB-1235'), part('AB-1Z34'), part('AB-1243')]);
    expect(pairs.slice(0, 2).map(({ parts }) => parts.join(' '))).toEqual([
      'AB-1234 AB-1243',
      'AB-1234 AB-1Z34',
    ]);
    expect(isMisread('AB-1234', 'AB-1235')).toBe(false);
    expect(isMisread('AB-80', 'AB-8')).toBe(false);
    expect(isMisread('ab-s0', 'AB-5O')).toBe(false);
  });
});

describe('of a setup', () => {
  const slot = (name: string, partNumber: string, alternates: string[] = []) => ({
    slot: name,
    part: partNumber,
    perPanel: 1,
    tapeWidthMm: 8,
    pitchMm: 4,
    positions: 1,
    alternates,
    supplierParts: [],
  });

  test('name the slots of each; a part and its alternate on one slot are none', () => {
    const story = beginStory();
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'S',
      slots: [slot('F-1', 'RES-1001', ['RES-1002']), slot('F-2', 'CAP-7777'), slot('F-3', 'CAP-7778')],
    });
    expect(lookAlikesOf(story.floor(), 'S').map(({ parts, slots }) => [parts, slots])).toEqual([
      [
        ['CAP-7777', 'CAP-7778'],
        [['F-2'], ['F-3']],
      ],
    ]);
    expect(lookAlikesOf(story.floor(), 'nowhere')).toEqual([]);
  });

  test('a mix-up is told by what the plant’s list says of both', () => {
    const story = beginStory();
    const listed = {
      description: null,
      family: null,
      pins: null,
      bodyMm: null,
      bodyXMm: null,
      bodyYMm: null,
      msl: null,
      comesIn: null,
      tapeWidthMm: null,
      pitchMm: null,
      ageMonths: null,
      orientation: null,
      makers: [],
    };
    story.tell('parts.listed', {
      source: 'list',
      parts: [
        { ...listed, part: 'RES-AAAA', value: '10 kΩ', tolerance: '1 %', package: '0402' },
        { ...listed, part: 'WID-BBBB', value: '10k', tolerance: '1 %', package: '0603' },
      ],
    });
    expect(mixedUp(story.floor(), 'RES-AAAA', 'WID-BBBB')).toMatchObject({ by: ['size'], value: '10 kΩ' });
    expect(mixedUp(story.floor(), 'RES-AAAA', 'KON-CCCC')).toBeNull();
  });
});

test('the value that a part should have is the note’s, else the list’s with its tolerance', () => {
  const story = beginStory();
  const none = { family: null, pins: null, bodyMm: null, bodyXMm: null, bodyYMm: null, msl: null };
  const open = { description: null, comesIn: null, tapeWidthMm: null, pitchMm: null, ageMonths: null };
  story.tell('parts.listed', {
    source: 'list',
    parts: [
      {
        ...none,
        ...open,
        part: 'R-1',
        value: '4.7 kΩ',
        tolerance: '5 %',
        package: null,
        orientation: null,
        makers: [],
      },
    ],
  });
  const floor = story.floor();
  expect(statedValues(floor, { part: 'R-1' })).toEqual([
    { nominal: 4.7, unit: 'kΩ', plusPercent: 5, minusPercent: 5 },
  ]);
  expect(statedValues(floor, { part: 'R-1', note: '10 kΩ ±1 %' })).toMatchObject([
    { nominal: 10, plusPercent: 1 },
  ]);
  expect(statedValues(floor, { part: 'R-2' })).toEqual([]);
});
