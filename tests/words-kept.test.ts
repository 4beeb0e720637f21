// What a part of the page keeps from one draw to the next, and its words hang on, is made anew in another language: a person who signs in brings
// their own. Words in a kept callback stand among what it hangs on, or are asked for when it is called.

import { expect, test } from 'vitest';
import {
  childrenOf,
  lineAt,
  type Node,
  parseSource,
  readSources,
  type SourceFile,
  visit,
} from './source-scan.ts';

const nameOf = (node: unknown) => String((node as Node | null)?.['name'] ?? '');

/** Names that a file gives to the words of an area: `const words = say(lineWords)`. */
function wordNames(program: Node): ReadonlySet<string> {
  const names = new Set<string>();
  visit(program, (node) => {
    if (node.type !== 'VariableDeclarator') return;
    let asked = node['init'] as Node | null;
    while (asked?.type === 'MemberExpression') asked = asked['object'] as Node;
    if (asked?.type === 'CallExpression' && nameOf(asked['callee']) === 'say') names.add(nameOf(node['id']));
  });
  return names;
}

/** Does it say one of the words? A name that is only a property, or a key, is none. */
function says(node: Node, names: ReadonlySet<string>): readonly string[] {
  if (node.type === 'Identifier') return names.has(nameOf(node)) ? [nameOf(node)] : [];
  if (node.type === 'MemberExpression' && node['computed'] !== true)
    return says(node['object'] as Node, names);
  return childrenOf(node).flatMap((child) => says(child, names));
}

function keptWords(file: SourceFile): readonly string[] {
  const { program } = parseSource(file);
  const names = wordNames(program);
  const found: string[] = [];
  visit(program, (node) => {
    if (node.type !== 'CallExpression' || !/^(useMemo|useCallback)$/.test(nameOf(node['callee']))) return;
    const [made, on] = node['arguments'] as readonly Node[];
    const hangsOn = on ? says(on, names) : [];
    for (const name of new Set(made ? says(made, names) : []))
      if (!hangsOn.includes(name))
        found.push(`${file.path}:${lineAt(file.source, node.start)} keeps ${name}`);
  });
  return found;
}

test('nothing that is kept speaks the language of before', () => {
  expect(readSources(['src/app'], (file) => file.endsWith('.tsx')).flatMap(keptWords)).toEqual([]);
});

test('kept words are found', () => {
  const source = (on: string) =>
    `const words = say(lineWords).walks; const kept = useMemo(() => <b>{words.now}</b>, [${on}]);`;
  const found = (on: string) => keptWords({ path: 'x.tsx', source: source(on) });
  expect(found('width')).toEqual(['x.tsx:1 keeps words']);
  expect(found('width, words')).toEqual([]);
});
