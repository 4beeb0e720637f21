// Numbers in sentences: every sentence of every area, in every language, said with 0, 1, 2 and 5. One of a thing is told as one, more as more.
// Method: a sentence is called with the number for each of its facts. What follows a number is taken for the thing counted: a word that
// follows 5 must not follow 1, and a word whose plural follows 5 must follow nothing but 1.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { type Language, language, languages, spoken } from '../../../../src/app/words/words.ts';

const numbers = [0, 1, 2, 5] as const;
/** Words that end in s and are no plural. */
const singulars: Readonly<Record<Language, readonly string[]>> = {
  en: [
    'answers',
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
const chosenByCode: readonly string[] = ['label-warnings.say', 'sheet-problems.say'];

/** A fact that is whatever the sentence takes it for, and the number when it is said. */
function anything(n: number): unknown {
  const itself: unknown = new Proxy(() => n, {
    get: (_, key) => {
      if (key === Symbol.toPrimitive) return () => n;
      if (key === 'toString') return () => String(n);
      if (key === 'length') return n;
      if (key === Symbol.iterator) return undefined;
      return itself;
    },
    apply: () => String(n),
  });
  return itself;
}

interface Said {
  readonly where: string;
  readonly text: string;
}

/** All that an area says, with one number for all facts. */
function sentences(words: unknown, where: string, n: number): Said[] {
  if (typeof words === 'string') return [{ where, text: words }];
  if (typeof words === 'function') {
    const text = sayWith(words as (...facts: unknown[]) => unknown, n);
    return text === null ? [] : [{ where, text }];
  }
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => sentences(value, `${where}.${key}`, n));
}

/** Facts are numbers, texts of a number, lists of such, or records: the first that the sentence can be said with. */
function sayWith(sentence: (...facts: unknown[]) => unknown, n: number): string | null {
  for (const fact of [n, String(n), [String(n)], anything(n)]) {
    try {
      const text = sentence(...Array.from({ length: Math.max(1, sentence.length) }, () => fact));
      if (typeof text === 'string') return text;
    } catch {
      // Facts of another shape: the next.
    }
  }
  return null;
}

/** Functions that answer no text for any of those facts. */
function unsayable(words: unknown, where: string): string[] {
  if (typeof words === 'function')
    return sayWith(words as (...facts: unknown[]) => unknown, 1) === null ? [where] : [];
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, value]) => unsayable(value, `${where}.${key}`));
}

interface Areas {
  readonly [name: string]: Readonly<Record<Language, unknown>>;
}

function readAreas(): Areas {
  const names = Object.keys(spoken.en) as AreaName[]; // filled by area
  const inEach = (name: AreaName) => Object.fromEntries(languages.map((code) => [code, spoken[code][name]]));
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

describe.each(languages)('numbers in %s', (code) => {
  const all = (n: number): Said[] => {
    language.value = code;
    return Object.entries(areas).flatMap(([name, area]) => sentences(area[code], name, n));
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
