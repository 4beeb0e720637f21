// The core takes the clock, chance and ids as arguments and talks to nobody: what `shared/` may not name.

import { expect, test } from 'vitest';
import { childrenOf, lineAt, type Node, parseSource, readSources, type SourceFile } from './source-scan.ts';

/** The compiler does not refuse these, or refuses them only as their types are not there. A splice has a window, so that word stays free. */
const banned: ReadonlyMap<string, string> = new Map([
  ...['Date.now', 'new Date()', 'performance'].map(
    (name) => [name, 'The clock comes in as an argument.'] as const,
  ),
  ['Math.random', 'Chance comes in as an argument.'],
  ['crypto', 'Ids and keys come in as arguments.'],
  ...['console', 'process', 'globalThis'].map((name) => [name, 'The core talks to nobody.'] as const),
  ...['fetch', 'setTimeout', 'setInterval', 'queueMicrotask'].map(
    (name) => [name, 'The core waits for nobody.'] as const,
  ),
  ...['localStorage', 'sessionStorage', 'indexedDB', 'navigator'].map(
    (name) => [name, 'The core runs without a page.'] as const,
  ),
]);

/** Uses of what the core may not name. Keys of objects and what stands behind a dot name nothing. */
function bannedNames(file: SourceFile): readonly string[] {
  const faults: string[] = [];
  const see = (node: Node) => {
    const text = file.source.slice(node.start, node.end).replace(/^(new \w+)$/, '$1()');
    const name =
      node.type === 'Identifier' ? String(node['name']) : /Expression$/.test(node.type) ? text : '';
    const why = banned.get(name);
    if (why !== undefined)
      faults.push(`${file.path}:${lineAt(file.source, node.start)} names ${name}: ${why}`);
    const isNamed = node.type === 'MemberExpression' || node.type === 'Property';
    const label = node.type === 'Property' ? node['key'] : node['property'];
    for (const child of childrenOf(node)) if (!isNamed || node['computed'] || child !== label) see(child);
  };
  see(parseSource(file).program);
  return faults;
}

test('the core names no clock, no chance and nobody to talk to', () => {
  expect(readSources(['shared']).flatMap(bannedNames)).toEqual([]);
});

test.each([...banned])('%s is found', (name, why) => {
  const source = `const x = 1;\nx(${name});`;
  expect(bannedNames({ path: 'a.ts', source })).toEqual([`a.ts:2 names ${name}: ${why}`]);
});

test.each([
  ["// Date.now()\n/* Math.random() */ const a = 'Date.now()';", 'comment and text'],
  [`const a = \`\${"process"} Date.now()\`;`, 'a template'],
  ['const a = /[/\'"]/.test(b) ? c / d : /console/;', 'regular expressions'],
  ['const a = new Date(0); a.process = b.fetch; Date.parse(c);', 'other uses'],
])('what only looks like one passes: %s, %s', (source) => {
  expect(bannedNames({ path: 'a.ts', source })).toEqual([]);
});
