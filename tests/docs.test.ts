// House rules on how code is explained and how long it grows: checked, since rules that nobody checks fade.

import { describe, expect, test } from 'vitest';
import { functionLengths } from './function-length.ts';
import {
  childrenOf,
  lineAt,
  type Node,
  parseSource,
  readSources,
  type SourceFile,
  visit,
} from './source-scan.ts';

const LONGEST_FILE = 400;
/** Tables of known answers are long by nature. */
const LONGEST_TEST = 700;
const LONGEST_FUNCTION = 80;
const LONGEST_COMPONENT = 120;
/** The loop in which the search for an order spends its time: calls in it would be paid a hundred million times. */
const HOT_LOOP = 'shared/order/keep-soonest-narrow.ts';

/** Exports without a doc comment, as `path:line name`. A type derived from the list right above it shares the list's. */
function undocumented(file: SourceFile): readonly string[] {
  const { program, comments } = parseSource(file);
  const documented = new Set<string>();
  return (program['body'] as readonly Node[]).flatMap((node) => {
    const declared = node.type === 'ExportNamedDeclaration' ? (node['declaration'] as Node | null) : null;
    if (declared === null) return [];
    const [variable] = (declared['declarations'] as readonly Node[] | undefined) ?? [declared];
    const name = String((variable?.['id'] as Node | undefined)?.['name']);
    const comment = comments.filter(({ end }) => end <= node.start).at(-1);
    const isBefore = comment !== undefined && file.source.slice(comment.end, node.start).trim() === '';
    if (isBefore && comment.type === 'Block' && comment.value.startsWith('*')) documented.add(name);
    else if (!documented.has(derivedFrom(declared) ?? ''))
      return [`${file.path}:${lineAt(file.source, node.start)} ${name}`];
    return [];
  });
}

/** The documented thing that a type is derived from by `typeof`; null where it stands alone. */
function derivedFrom(declared: Node): string | null {
  let found: string | null = null;
  if (declared.type !== 'TSTypeAliasDeclaration') return null;
  visit(declared, (node) => {
    if (node.type === 'TSTypeQuery') found ??= String((node['exprName'] as Node)['name']);
  });
  return found;
}

/** Names that several files export, each with a meaning of its own, as `name: files`. */
function sharedNames(files: readonly SourceFile[]): readonly string[] {
  const places = new Map<string, string[]>();
  for (const { path, source } of files) {
    const declared = source.matchAll(/^export (?:async )?(?:function|const|type|interface|class) (\w+)/gm);
    for (const [, name = ''] of declared) places.set(name, [...(places.get(name) ?? []), path]);
  }
  return [...places]
    .filter(([, paths]) => new Set(paths).size > 1)
    .map(([name, paths]) => `${name}: ${paths.join(', ')}`);
}

/** Files that do not say in their first lines what they are about. */
function unopened(files: readonly SourceFile[]): readonly string[] {
  return files
    .filter(({ source }) => !/^(#!.*\n)?(\/\/\/ .*\n)?(\/\/ |\/\*)/.test(source))
    .map(({ path }) => path);
}

function tooLong(files: readonly SourceFile[]): readonly string[] {
  return files
    .map(({ path, source }) => ({ path, lines: source.split('\n').length - 1 }))
    .filter(({ path, lines }) => lines > (path.startsWith('tests/') ? LONGEST_TEST : LONGEST_FILE))
    .map(({ path, lines }) => `${path}: ${lines} lines`);
}

/** Functions that one reading cannot hold, as `path:line name: lines`. */
function longFunctions(files: readonly SourceFile[]): readonly string[] {
  return files
    .flatMap(functionLengths)
    .filter(({ lines, isComponent }) => lines > (isComponent ? LONGEST_COMPONENT : LONGEST_FUNCTION))
    .map(({ path, line, name, lines }) => `${path}:${line} ${name}: ${lines} lines`);
}

/** Literals spread into a literal of their own kind: a way round the formatter that every reader stops at, as `path:line`. */
function spreadLiterals(file: SourceFile): readonly string[] {
  const found: string[] = [];
  visit(parseSource(file).program, (node) => {
    for (const child of childrenOf(node)) {
      const spread = child.type === 'SpreadElement' ? (child['argument'] as Node).type : null;
      if (spread === 'ObjectExpression' && node.type === 'ObjectExpression')
        found.push(`${file.path}:${lineAt(file.source, child.start)}`);
    }
  });
  return found;
}

const isCode = (file: string) => /\.(tsx?|mjs|css)$/.test(file);

describe('explanations', () => {
  test('every export of shared/ has a doc comment', () => {
    expect(readSources(['shared']).flatMap(undocumented)).toEqual([]);
  });

  test('a name means one thing in all of shared/', () => {
    expect(sharedNames(readSources(['shared']))).toEqual([]);
  });

  test('every file of the core, the workers, the server and the command line opens with what it is about', () => {
    expect(unopened(readSources(['shared', 'src/server', 'src/cli', 'src/worker', 'src/sw']))).toEqual([]);
  });

  test('no file grows beyond what one sitting can read', () => {
    expect(tooLong(readSources(['shared', 'src', 'demo', 'tests'], isCode))).toEqual([]);
  });

  test('no function grows beyond what one reading can hold', () => {
    const files = readSources(['shared', 'src', 'demo']).filter(({ path }) => path !== HOT_LOOP);
    expect(longFunctions(files)).toEqual([]);
  });

  test('no literal is spread into another', () => {
    expect(readSources(['shared', 'src', 'demo', 'tests']).flatMap(spreadLiterals)).toEqual([]);
  });
});

describe('the checks themselves', () => {
  test('an export without a doc comment is found, whatever its form', () => {
    const source = [
      '/** Said. */\nexport const said = [1] as const;',
      'export type Said = (typeof said)[number];',
      'export function bare() {}',
      '// no doc comment\nexport interface Plain {}',
      '/** Said. */\nexport async function fine() {}',
      'export type Loose = string;',
      'const kept = "export function inText() {}";',
      'export { kept };',
    ].join('\n');
    expect(undocumented({ path: 'a.ts', source })).toEqual(['a.ts:4 bare', 'a.ts:6 Plain', 'a.ts:9 Loose']);
  });

  test('a name that two files export is found, a type beside its own list is not', () => {
    const files = [
      {
        path: 'a.ts',
        source: 'export const marks = [1];\nexport type marks = 1;\nexport interface Mark {}\n',
      },
      { path: 'b.ts', source: 'export type Mark = string;\ninterface Own {}\n' },
      { path: 'c.ts', source: 'interface Own {}\n' },
    ];
    expect(sharedNames(files)).toEqual(['Mark: a.ts, b.ts']);
  });

  test('a file that starts with code is found, one behind a shebang is not', () => {
    const files = [
      { path: 'a.ts', source: 'const a = 1;\n' },
      { path: 'b.ts', source: '#!/usr/bin/env node\n// Says.\n' },
    ];
    expect(unopened(files)).toEqual(['a.ts']);
  });

  test('a file of one line too many is found', () => {
    const files = [
      { path: 'shared/a.ts', source: '\n'.repeat(LONGEST_FILE + 1) },
      { path: 'tests/a.ts', source: '\n'.repeat(LONGEST_TEST) },
    ];
    expect(tooLong(files)).toEqual([`shared/a.ts: ${LONGEST_FILE + 1} lines`]);
  });

  test('a function of one line too many is found, a component may be longer', () => {
    const lines = (count: number) => '\n'.repeat(count - 1);
    const files = [
      {
        path: 'shared/a.ts',
        source: `export function fine() {${lines(80)}}\nexport const long = () => {${lines(81)}};`,
      },
      {
        path: 'src/B.tsx',
        source: `export function Fine() {${lines(120)}}\nexport function Long() {${lines(121)}}`,
      },
    ];
    expect(longFunctions(files)).toEqual(['shared/a.ts:81 long: 81 lines', 'src/B.tsx:121 Long: 121 lines']);
  });

  test('a literal spread into its own kind is found, one on a condition is not', () => {
    const source = 'const a = { ...{ b, c }, ...(d ? {} : { d }), ...e };';
    expect(spreadLiterals({ path: 'a.ts', source })).toEqual(['a.ts:1']);
  });
});
