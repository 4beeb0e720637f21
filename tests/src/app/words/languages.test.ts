// Every language says what English says: the same facts in every sentence, for one thing and for many, and never a sentence with a hole in it.
// Method: each sentence is said with a number of its own for each fact; the numbers found in it are compared.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { fetchEveryArea } from '../../../../src/app/words/fetch.ts';
import {
  byNumber,
  type Language,
  language,
  languages,
  plural,
  spoken,
} from '../../../../src/app/words/words.ts';
import { type Said, sentences, toldParts } from './say-all.ts';

const before = language.peek();
beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});
afterAll(() => {
  language.value = before;
});

/** Said for many of each thing, and for few, as Polish (3 to 4) and Arabic (3 to 10) tell them by the last figures. */
const many = (at: number) => 71 + at;
const few = (at: number) => 103 + at;

function allSaid(code: Language, fact: (at: number) => number): ReadonlyMap<string, string> {
  language.value = code;
  const said: Said[] = (Object.keys(spoken.en) as AreaName[]).flatMap((name) =>
    name === 'shipped-steps' ? [] : sentences(spoken[code][name], name, fact),
  );
  return new Map(said.map(({ where, text }) => [where, text]));
}

/** The numbers told, each once, in order of size; what stands in codes and units of its own is no fact. */
const numbersIn = (text: string, fact: (at: number) => number): readonly number[] => {
  const facts = [...[0, 1, 2, 3].map(fact), ...toldParts()];
  return facts.filter((each) => new RegExp(`(?<!\\d)${each}(?!\\d)`).test(text));
};

/** Sentences that leave a fact to the one before it or take it from elsewhere, by language: each with why. */
const toldOtherwise: Readonly<Partial<Record<Language, readonly string[]>>> = {};

describe.each(languages.filter((code) => code !== 'en'))('in %s', (code) => {
  test.each([
    ['many', many],
    ['few', few],
  ] as const)('every sentence has the facts of the English one, for %s', (_, fact) => {
    const english = allSaid('en', fact);
    const said = allSaid(code, fact);
    const wrong = [...english].flatMap(([where, text]) => {
      const own = said.get(where);
      if (own === undefined || toldOtherwise[code]?.includes(where)) return [];
      const [wanted, told] = [numbersIn(text, fact), numbersIn(own, fact)];
      return wanted.join() === told.join() ? [] : [`${where}: "${text}" - "${own}"`];
    });
    expect(wrong).toEqual([]);
  });

  test('no sentence has a hole in it', () => {
    for (const fact of [many, few, () => 1, () => 0]) {
      const holed = [...allSaid(code, fact)].filter(
        ([, text]) => /undefined|NaN|\[object/.test(text) || / [.,](?: |$)/.test(text),
      );
      expect(holed).toEqual([]);
    }
  });

  test('nothing but names and codes is left in English', () => {
    const english = allSaid('en', many);
    const same = [...allSaid(code, many)].filter(([where, text]) => {
      const of = english.get(where);
      return of === text && (text.match(/[a-z]{3,}/g) ?? []).length >= 3;
    });
    expect(same.map(([where, text]) => `${where}: ${text}`)).toEqual([]);
  });
});

test.each([-1, '-1', '−1', 0.1, '0.1', '0,1'])('%s of a thing is not told as one of it', (value) => {
  language.value = 'en';
  expect(plural(value, '1 panel', `${value} panels`)).toBe(`${value} panels`);
});

describe('a language tells numbers apart by its own rules', () => {
  const forms = { zero: 'zero', one: 'one', two: 'two', few: 'few', many: 'many', other: 'other' };

  // Unicode CLDR, plural rules (cardinal), of the languages spoken here.
  test.each([
    ['en', [0, 1, 2, 5], ['other', 'one', 'other', 'other']],
    ['pl', [1, 2, 4, 5, 12, 22, 25], ['one', 'few', 'few', 'many', 'many', 'few', 'many']],
    ['ar', [0, 1, 2, 3, 10, 11, 99, 100], ['zero', 'one', 'two', 'few', 'few', 'many', 'many', 'other']],
    ['ja', [0, 1, 2, 5], ['other', 'other', 'other', 'other']],
  ] as const)('%s', (code, numbers, expected) => {
    if (!(languages as readonly string[]).includes(code)) return;
    language.value = code as Language;
    expect(numbers.map((number) => byNumber(number, forms))).toEqual(expected);
    expect(byNumber('1,011', { ...forms, other: 'grouped' })).toBe(
      byNumber(1011, { ...forms, other: 'grouped' }),
    );
  });
});
