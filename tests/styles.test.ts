// Every style sheet stays once its screen has been shown, in whatever order screens were shown: a class that two sheets style by its bare
// name looks by chance. So each bare class has one sheet, and another screen that wants the look names where it stands.

import { expect, test } from 'vitest';
import { readSources, type SourceFile } from './source-scan.ts';

/** Classes that a sheet styles by their bare name, whatever stands around them. */
function bareClasses(css: string): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [, selectors = ''] of css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/([^{};]+)\{/g)) {
    for (const selector of selectors.split(',')) {
      const [bare] = /^\.[\w-]+$/.exec(selector.trim()) ?? [];
      if (bare !== undefined) found.add(bare);
    }
  }
  return found;
}

function styledTwice(sheets: readonly SourceFile[]): readonly string[] {
  const homes = new Map<string, string[]>();
  for (const { path, source } of sheets)
    for (const bare of bareClasses(source)) homes.set(bare, [...(homes.get(bare) ?? []), path]);
  return [...homes]
    .filter(([, names]) => names.length > 1)
    .map(([bare, names]) => `${bare}: ${names.join(', ')}`);
}

test('a bare class is styled in one sheet', () => {
  const sheets = readSources(['src/app/screens'], (file) => file.endsWith('.css'));
  expect(sheets.length).toBeGreaterThan(10);
  expect(styledTwice(sheets)).toEqual([]);
});

test('two sheets that style one bare class are found, also within a condition', () => {
  const one = { path: 'one.css', source: '.bar, .row > i { height: 8px; }' };
  const two = { path: 'two.css', source: '@media (max-width: 9px) {\n  .bar { height: 9px; }\n}' };
  const three = { path: 'three.css', source: '/* .bar { } */ .here .bar { height: 7px; }' };
  expect(styledTwice([one, two, three])).toEqual(['.bar: one.css, two.css']);
});
