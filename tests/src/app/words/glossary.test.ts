// Each language's glossary has a word for what stands on the screens every hour, and the screens say it.

import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { AreaName } from '../../../../src/app/words/areas.ts';
import { fetchEveryArea } from '../../../../src/app/words/fetch.ts';
import { type Language, language, languages, spoken } from '../../../../src/app/words/words.ts';
import { sentences } from './say-all.ts';

/** The trade's terms that no shift goes by without. */
const terms = [
  'line',
  'machine',
  'bank',
  'slot',
  'feeder',
  'reel',
  'part',
  'alternate',
  'lot',
  'setup',
  'load',
  'splice',
  'splice window',
  'run-out',
  'walk',
  'changeover',
  'move',
  'panel',
  'run',
  'loss',
  'accepted',
  'refused',
  'hold',
  'floor life',
  'handover',
] as const;

const folder = path.resolve(import.meta.dirname, '../../../../src/app/words/glossary');
const translated = languages.filter((code) => code !== 'en');

/** What stands beside each English term; a cell may hold several, apart by commas, and say in brackets of what. */
function glossaryOf(code: Language): ReadonlyMap<string, readonly string[]> {
  const parts = (cell: string) =>
    cell
      .replace(/\([^)]*\)/g, '')
      .split(/[,;،、，]/)
      .map((part) => part.trim())
      .filter((part) => part !== '');
  const rows = readFileSync(path.join(folder, `${code}.md`), 'utf8')
    .split('\n')
    .filter((line) => /^\| (?!---)/.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()));
  const found = new Map<string, readonly string[]>();
  for (const [, english = '', own = ''] of rows)
    for (const term of parts(english)) found.set(term, [...(found.get(term) ?? []), ...parts(own)]);
  return found;
}

/** As much of a word as its endings leave alone. */
const stem = (word: string) =>
  (/^\p{Script=Latin}/u.test(word) && word.length > 5 ? word.slice(0, -2) : word).toLowerCase();

const before = language.peek();
beforeAll(async () => {
  await Promise.all(languages.map(fetchEveryArea));
});
afterAll(() => {
  language.value = before;
});

describe.each(translated)('%s', (code) => {
  test('has a word for each term of every hour', () => {
    const glossary = glossaryOf(code);
    expect(terms.filter((term) => (glossary.get(term) ?? []).length === 0)).toEqual([]);
  });

  test('says on its screens what its glossary has', () => {
    language.value = code;
    const glossary = glossaryOf(code);
    const names = Object.keys(spoken.en) as AreaName[]; // filled by area
    const said = names
      .flatMap((name) => sentences(spoken[code][name], name, () => 5))
      .map(({ text }) => text.toLowerCase())
      .join('\n');
    const unsaid = terms.filter((term) => !glossary.get(term)?.some((word) => said.includes(stem(word))));
    expect(unsaid.map((term) => `${term}: ${glossary.get(term)?.join(', ')}`)).toEqual([]);
  });
});
