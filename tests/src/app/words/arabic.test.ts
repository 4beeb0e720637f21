// What is Arabic's own: Arabic words in every sentence, figures and codes in Latin letters that run from left to right among them. Method: a
// sentence is said in both languages with facts that can be told apart. The facts themselves are compared for all languages alike.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheetProblem, sheetProblemCodes } from '../../../../shared/sheet/problems.ts';
import { first as firstAr, later as laterAr } from '../../../../src/app/words/ar/pack.ts';
import { words as problemsAr } from '../../../../src/app/words/ar/sheet-problems.ts';
import { comma, formatSpan, language, languages, spoken } from '../../../../src/app/words/words.ts';

interface Pair {
  readonly where: string;
  readonly english: unknown;
  readonly arabic: unknown;
}

type Sentence = (...facts: unknown[]) => unknown;

/** Facts of a kind, each unlike the others: numbers of which every language tells many, texts, lists, records. */
const kindsOfFacts: readonly ((at: number) => unknown)[] = [
  (at) => 31 + at,
  (at) => `${31 + at}`,
  (at) => [`X${31 + at}`],
  () => new Proxy({}, { get: (_, key) => (key === 'classes' ? ['X50'] : `X-${String(key)}`) }),
];

const isSaid = (text: unknown): text is string =>
  typeof text === 'string' && !/undefined|NaN|\[object/.test(text);

function trySay(sentence: Sentence, facts: readonly unknown[]): string | null {
  try {
    const text = sentence(...facts);
    return isSaid(text) ? text : null;
  } catch {
    return null;
  }
}

/** Both sentences, said with the first kind of facts that English can be said with; null where it chooses by a code. */
function sayBoth({ english, arabic }: Pair): readonly [english: string, arabic: string] | null {
  if (typeof english === 'string') return [english, String(arabic)];
  const sentence = english as Sentence; // leaves are texts and functions
  for (const kind of kindsOfFacts) {
    const facts = Array.from({ length: Math.max(1, sentence.length) }, (_, at) => kind(at));
    const told = trySay(sentence, facts);
    if (told !== null) return [told, trySay(arabic as Sentence, facts) ?? ''];
  }
  return null;
}

function pairs(english: unknown, arabic: unknown, where: string): readonly Pair[] {
  if (typeof english === 'object' && english !== null)
    return Object.entries(english).flatMap(([key, value]) =>
      pairs(value, (arabic as Record<string, unknown>)[key], `${where}.${key}`),
    );
  return [{ where, english, arabic }];
}

/** The facts that a sentence tells. */
function factsIn(text: string): readonly string[] {
  return [...new Set(text.match(/X-\w+|X?\b[345]\d\b/g) ?? [])].filter((fact) => /X|3\d/.test(fact)).sort();
}

/** Names that are kept in the log as they are said, and a figure with what it counts: they hold no marks. */
const unmarked = ['sheet.machine', 'lines.newName', 'passkeys.open'];

/** A text without what stands between marks of its own direction, inner ones first. */
function withoutIsolates(text: string): string {
  const outer = text.replace(/[\u2066-\u2068][^\u2066-\u2069]*\u2069/g, '');
  return outer === text ? text : withoutIsolates(outer);
}

/** Whether such a code stands bare among Arabic words; a single word after it is the thing counted, and what is counted is a figure. */
function isTurned(text: string): boolean {
  const bare = withoutIsolates(text);
  return bare.includes('22-0603-B') && arabicLetter.test(bare) && !/^22-0603-B [\p{L}\p{M}]+$/u.test(bare);
}

const arabicLetter = /[\u0621-\u064a]/;
/** Texts without a word in them: a code, a unit, a sign, a name that stays as it is. */
const isWordless = (english: string) =>
  !/[a-z]{3}/i.test(english.replace(/X[\w-]*|\b(mm|min|dpi|MSL|BGA|CSV|PIN|JSON|XLSX)\b/g, ''));
/** Sentences that choose by a code; those of a sheet's problems are said below, those of a label's warnings are listed by the compiler. */
const choosesByCode = ['label-warnings.say', 'sheet-problems.say'];
const staysAsItIs = /^moisture\.families\.|^week\.patterns\./;

let all: readonly Pair[] = [];
beforeAll(async () => {
  language.value = 'en';
  const arabic = new Map<string, unknown>(Object.entries(firstAr));
  for (const [name, fetch] of Object.entries(laterAr)) arabic.set(name, (await fetch()).words);
  const every = Object.entries(spoken.en).flatMap(([name, words]) => pairs(words, arabic.get(name), name));
  all = every.filter(({ where }) => !choosesByCode.includes(where));
});

afterAll(() => {
  language.value = 'en';
});

describe('every Arabic sentence', () => {
  test('is there, in Arabic letters', () => {
    expect(all.length).toBeGreaterThan(1500);
    const bare = all.flatMap((pair) => {
      const said = sayBoth(pair);
      if (said === null || isWordless(said[0]) || staysAsItIs.test(pair.where)) return [];
      return arabicLetter.test(said[1]) ? [] : [`${pair.where}: ${said[1]}`];
    });
    expect(bare).toEqual([]);
  });

  test('keeps a code that begins with a figure from left to right', () => {
    const turned = all.flatMap(({ where, english, arabic }) => {
      if (typeof arabic !== 'function' || unmarked.includes(where)) return [];
      const facts = Array.from({ length: Math.max(1, (english as Sentence).length) }, () => '22-0603-B');
      const told = trySay(arabic as Sentence, facts) ?? '';
      return isTurned(told) ? [`${where}: ${told}`] : [];
    });
    expect(turned).toEqual([]);
  });

  test('keeps figures, codes and commas of its own script', () => {
    const told = all.flatMap((pair) => sayBoth(pair)?.[1] ?? []);
    expect(told.filter((text) => /[\u0660-\u0669\u06f0-\u06f9]/.test(text))).toEqual([]);
    expect(told.filter((text) => /[\u0621-\u064a], |\?|;/.test(text))).toEqual([]);
    expect(told.filter((text) => /→/.test(text))).toEqual([]);
    // A figure and its unit stand in the order in which they are read off a meter.
    expect(told.filter((text) => /\d (mm|h|°C|MB|ms)\b/.test(withoutIsolates(text)))).toEqual([]);
    const unclosed = told.filter(
      (text) => (text.match(/[\u2066-\u2068]/g) ?? []).length !== (text.match(/\u2069/g) ?? []).length,
    );
    expect(unclosed).toEqual([]);
  });
});

const problemFacts = Object.fromEntries(
  'row found wanted headers field used part most slot first next nextRow width ratio taken count designator'
    .split(' ')
    .map((name) => [name, `X-${name}`]),
);

test.each(sheetProblemCodes)('%s tells its facts in Arabic', (code) => {
  const problem = sheetProblem(code, { row: 3 }, { ...problemFacts, side: 'top' });
  const arabic = problemsAr.say(problem);
  expect(arabic).toMatch(arabicLetter);
  // A side is told by its Arabic word.
  const wanted = code === 'sideOfFileDiffers' ? ['X-designator'] : factsIn(problem.message);
  expect(factsIn(arabic)).toEqual(expect.arrayContaining([...wanted]));
  for (const sentence of arabic.split(/(?<=[.:؛؟]) /))
    expect(sentence.split(' ').length, sentence).toBeLessThanOrEqual(20);
});

test('a turned code and a sentence without a word are seen', () => {
  expect(isTurned('القطعة 22-0603-B')).toBe(true);
  expect(isTurned('القطعة \u206822-0603-B\u2069')).toBe(false);
  expect(isWordless('Load')).toBe(false);
  expect(isWordless('31 mm')).toBe(true);
});

test.each([
  ['en', 'a, b'],
  ['ar', 'a، b'],
  ['zh', 'a，b'],
  ['ja', 'a、b'],
] as const)('two facts of a sentence are parted as %s does', (code, told) => {
  language.value = code;
  expect(`a${comma()}b`).toBe(told);
});

test.each(languages)('a length of time that stands alone keeps its direction in %s', (code) => {
  language.value = code;
  const [before, after] = code === 'ar' ? ['\u2066', '\u2069'] : ['', ''];
  expect(formatSpan(45)).toBe(`${before}45\u00a0s${after}`);
  expect(formatSpan(23 * 60)).toBe(`${before}23\u00a0min${after}`);
  expect(formatSpan(64 * 60)).toBe(`${before}1\u00a0h\u00a004${after}`);
});
