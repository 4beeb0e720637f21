// A part of the page that is fetched when it is needed says words that are fetched too: whoever fetches it waits for both, by `lazy`,
// `lazyTask`, `screen` or `withWords`. Without that a screen stands or falls with which of the two arrives first.

import path from 'node:path';
import { expect, test } from 'vitest';
import { childrenOf, lineAt, type Node, parseSource, readSources, type SourceFile } from './source-scan.ts';

const WAITERS = ['lazy', 'lazyTask', 'screen', 'withWords'];
const isDoor = (file: string) => /^src\/app\/words\/[^/]+\.ts$/.test(file);

interface Fetched {
  readonly target: string;
  readonly line: number;
  readonly isWaitedFor: boolean;
}

/** What a file needs at once, and what it fetches when it is needed. */
function readNeeds({ path: file, source }: SourceFile) {
  const needs: string[] = [];
  const fetched: Fetched[] = [];
  const resolve = (node: unknown) =>
    path.posix.join(path.posix.dirname(file), String((node as Node | null)?.['value']));
  const see = (node: Node, isWaitedFor: boolean): void => {
    const isStatic = /^(Import|ExportNamed|ExportAll)Declaration$/.test(node.type) && node['source'];
    const kind = node['importKind'] ?? node['exportKind'];
    if (isStatic && kind !== 'type') needs.push(resolve(node['source']));
    if (node.type === 'ImportExpression')
      fetched.push({ target: resolve(node['source']), line: lineAt(source, node.start), isWaitedFor });
    const callee = node.type === 'CallExpression' ? (node['callee'] as Node)['name'] : null;
    for (const child of childrenOf(node)) see(child, isWaitedFor || WAITERS.includes(String(callee)));
  };
  see(parseSource({ path: file, source }).program, false);
  return { needs, fetched };
}

/** Parts that are fetched without waiting for the words that they say, as `path:line fetches part`. */
function findUnwaited(files: readonly SourceFile[]): readonly string[] {
  const read = new Map(files.map((file) => [file.path, { file, ...readNeeds(file) }]));
  const says = (file: string, seen = new Set<string>()): boolean => {
    if (seen.has(file)) return false;
    seen.add(file);
    const { needs = [], file: { source } = { source: '' } } = read.get(file) ?? {};
    return (isDoor(file) && source.includes('= area(')) || needs.some((each) => says(each, seen));
  };
  return [...read.values()].flatMap(({ file, fetched }) =>
    fetched
      .filter(({ target, isWaitedFor }) => !isWaitedFor && says(target))
      .map(({ target, line }) => `${file.path}:${line} fetches ${target} without its words`),
  );
}

test('every part that is fetched is waited for with its words', () => {
  expect(findUnwaited(readSources(['src/app']))).toEqual([]);
});

test('a part that is not waited for is found, through what it needs too', () => {
  const door = { path: 'src/app/words/kit.ts', source: "export const kitWords = area('kit');" };
  const near = { path: 'src/app/near.ts', source: "import { kitWords } from './words/kit.ts';" };
  const part = { path: 'src/app/part.ts', source: "import { near } from './near.ts';" };
  const typed = { path: 'src/app/typed.ts', source: "import type { near } from './near.ts';" };
  const told = (source: string) => findUnwaited([door, near, part, typed, { path: 'src/app/a.ts', source }]);
  expect(told("const a = () =>\n  import('./part.ts');")).toEqual([
    'src/app/a.ts:2 fetches src/app/part.ts without its words',
  ]);
  expect(told("const a = () => withWords(import('./part.ts'));")).toEqual([]);
  expect(told("const A = lazy(() => import('./part.ts').then((m) => m.A));")).toEqual([]);
  expect(told("const a = () => import('./typed.ts');")).toEqual([]);
});
