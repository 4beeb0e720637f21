// Texts of checklists in the language in use: as the plant wrote them, else as the app says what ships, else in English.

import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import { shippedChecklists } from '../../../../shared/checklist/shipped.ts';
import { shippedBefore } from '../../../../shared/checklist/shipped-before.ts';
import { fetchEveryArea } from '../../../../src/app/words/fetch.ts';
import { sayText, shippedWords } from '../../../../src/app/words/shipped-steps.ts';
import { language, languageOf, languages, spoken } from '../../../../src/app/words/words.ts';

beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});
afterEach(() => {
  language.value = 'en';
});

/** Every text of every checklist that ships or did. */
const texts = [...shippedChecklists, ...shippedBefore].flatMap(({ title, steps }) => [
  title,
  ...steps.flatMap(({ group, text, caution }) => [group, text, ...(caution ? [caution] : [])]),
]);

describe.each(languages)('in %s', (code) => {
  test('every text of a shipped checklist is said', () => {
    const said = spoken[code][shippedWords.name] ?? {};
    const missing = texts.filter(
      (text) => code !== 'en' && text[code] === undefined && said[text['en'] ?? ''] === undefined,
    );
    expect(missing.map((text) => text['en'])).toEqual([]);
  });

  test('nothing is said of a text that does not ship', () => {
    const english = new Set(texts.map((text) => text['en']));
    expect(Object.keys(spoken[code][shippedWords.name] ?? {}).filter((text) => !english.has(text))).toEqual(
      [],
    );
  });
});

test('what the plant wrote comes first, and what it wrote anew stands as it is', () => {
  language.value = 'es';
  expect(sayText({ en: 'Splice', es: 'Unir' })).toBe('Unir');
  expect(sayText({ en: 'Our own step' })).toBe('Our own step');
  expect(sayText({ hu: 'Saját lépés' })).toBe('Saját lépés');
  expect(sayText({ es: '', en: 'Our own step' })).toBe('Our own step');
});

test('a language is found by its tag, the first that is spoken; English else', () => {
  expect(languageOf('es-MX')).toBe('es');
  expect(languageOf(null, undefined, 'xx', 'ES')).toBe('es');
  expect(languageOf('xx')).toBe('en');
});
