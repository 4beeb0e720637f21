// Words that have no place in the project: it speaks of itself alone, in its own words. The list is spelt in pieces, so that
// this file does not break its own rule.

import { expect, test } from 'vitest';
import { lineAt, readSources, type SourceFile } from './source-scan.ts';

const phrases: readonly (readonly [pieces: readonly string[], why: string])[] = [
  [['seed', ' ', 'document'], 'The project explains itself in its own documents.'],
  [['/work', '/shared'], 'A path of one machine means nothing on another.'],
  [['/work', '/main'], 'A path of one machine means nothing on another.'],
  [['/work', '/.library'], 'A path of one machine means nothing on another.'],
  [['trade-', 'facts.md'], 'A value’s source is named by its publication.'],
  [['TO', 'DO'], 'What is missing is said in the documents or built.'],
  [['FIX', 'ME'], 'What is broken is mended or said in the documents.'],
  [['lorem', ' ', 'ipsum'], 'Invented text belongs to the demo alone, and says what it shows.'],
];

const isText = (file: string) =>
  /\.(tsx?|mjs|cjs|js|json|css|html|md|svg|ya?ml|csv|txt|toml)$|^\.ci\//.test(file) &&
  file !== 'package-lock.json';

function findPhrases(files: readonly SourceFile[]): readonly string[] {
  return files.flatMap(({ path, source }) => {
    const small = source.toLowerCase();
    return phrases.flatMap(([pieces, why]) => {
      const phrase = pieces.join('');
      // Marks in capitals are meant as marks; the rest is forbidden in any case.
      const at = /^[A-Z]+$/.test(phrase)
        ? source.search(new RegExp(`\\b${phrase}\\b`))
        : small.indexOf(phrase.toLowerCase());
      return at < 0 ? [] : [`${path}:${lineAt(source, at)} says "${phrase}". ${why}`];
    });
  });
}

test('no file says a word that has no place here', () => {
  expect(findPhrases(readSources([''], isText))).toEqual([]);
});

test('every such word is found, in any case and place', () => {
  for (const [pieces] of phrases) {
    const phrase = pieces.join('');
    const told = findPhrases([{ path: 'docs/a.md', source: `# A\n\nSee the ${phrase} here.\n` }]);
    expect(told.join('\n'), phrase).toContain('docs/a.md:3 says');
  }
  expect(
    findPhrases([{ path: 'a.md', source: (phrases[0]?.[0] ?? []).join('').toUpperCase() }]),
  ).toHaveLength(1);
});

test('the files looked at include documents, code and configuration', () => {
  const seen = readSources([''], isText).map(({ path }) => path);
  expect(seen).toEqual(
    expect.arrayContaining(['package.json', 'biome.json', 'tests/words.test.ts', '.ci/run']),
  );
});
