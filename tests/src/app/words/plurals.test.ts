// Numbers in sentences of languages that make a plural by an s: every sentence of every area, said with 0, 1, 2 and 5. One of a thing is told as one, more as more.
// Method: a sentence is called with the number for each of its facts. What follows a number is taken for the thing counted: a word that
// follows 5 must not follow 1, and a word whose plural follows 5 must follow nothing but 1.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { language, spoken } from '../../../../src/app/words/words.ts';
import { type Said, sentences, unsayable } from './say-all.ts';

const numbers = [0, 1, 2, 5] as const;
const withPluralS = ['en', 'es'] as const;
type Tongue = (typeof withPluralS)[number];
/** Words that end in s and are no plural. */
const singulars: Readonly<Record<Tongue, readonly string[]>> = {
  en: [
    'answers',
    'builds',
    'arrives',
    'comes',
    'needs',
    'does',
    'feeds',
    'goes',
    'has',
    'lies',
    'moves',
    'reaches',
    'runs',
    'stands',
    'less',
    'signs',
    'stays',
    'takes',
    'throws',
    'wants',
    'was',
  ],
  es: ['antes', 'después', 'detrás', 'más', 'menos'],
};

/** Sentences that take a coded fact apart; `label-warnings.test.ts` and `sheet-problems.test.ts` say them. */
const chosenByCode: readonly string[] = ['label-warnings.say'];

interface Areas {
  readonly [name: string]: Readonly<Record<Tongue, unknown>>;
}

function readAreas(): Areas {
  const names = Object.keys(spoken.en) as AreaName[]; // filled by area
  const inEach = (name: AreaName) =>
    Object.fromEntries(withPluralS.map((code) => [code, spoken[code][name]]));
  return Object.fromEntries(names.map((name) => [name, inEach(name)])) as Areas; // every language by construction
}

/** What stands right after a number, small; of two words the second where that is a plural: `2 panel codes`. */
function countedWords(text: string, n: number): string[] {
  const pattern = new RegExp(`(?<![\\d.,:±-])\\b${n} (\\p{L}{3,})(?: (\\p{L}{3,}s)\\b)?`, 'gu');
  return [...text.matchAll(pattern)].map(([, word = '', second]) => (second ?? word).toLowerCase());
}

let areas: Areas;
const before = language.peek();
beforeAll(() => {
  areas = readAreas();
});
afterAll(() => {
  language.value = before;
});

describe.each(withPluralS)('numbers in %s', (code) => {
  const all = (n: number): Said[] => {
    language.value = code;
    return Object.entries(areas).flatMap(([name, area]) => sentences(area[code], name, () => n));
  };

  /** Words for more than one thing, as they stand after 5. */
  const pluralWords = (): ReadonlySet<string> => {
    const words = all(5).flatMap(({ text }) => countedWords(text, 5));
    return new Set(words.filter((word) => word.endsWith('s') && !singulars[code].includes(word)));
  };

  test('1 is followed by one of the thing', () => {
    const plurals = pluralWords();
    expect(plurals.size).toBeGreaterThan(20);
    expect(all(1).filter(({ text }) => countedWords(text, 1).some((word) => plurals.has(word)))).toEqual([]);
  });

  test('any other number is followed by more of it', () => {
    const plurals = pluralWords();
    const isOne = (word: string) => plurals.has(`${word}s`) || plurals.has(`${word}es`);
    for (const n of numbers.filter((each) => each !== 1))
      expect(all(n).filter(({ text }) => countedWords(text, n).some(isOne))).toEqual([]);
  });
});

test('the sentences that cannot be said so choose by a code, and have tests of their own', () => {
  const unsaid = Object.entries(areas).flatMap(([name, area]) => unsayable(area.en, name));
  expect(unsaid.sort()).toEqual(chosenByCode);
});

test('every area is looked at, and a planted plural is seen', () => {
  expect(Object.keys(areas)).toEqual(expect.arrayContaining(['line', 'stock', 'change', 'load']));
  expect(countedWords('1 slots', 1)).toEqual(['slots']);
  expect(countedWords('0.1 slots, 21 slots, 14:1 slots', 1)).toEqual([]);
});
