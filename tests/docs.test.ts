// House rules on how code is explained and how long it grows: checked, since rules that nobody checks fade.

import { describe, expect, test } from 'vitest';
import { lineAt, readSources, type SourceFile, scanTokens, type Token } from './source-scan.ts';

const LONGEST_FILE = 400;
/** Tables of known answers are long by nature. */
const LONGEST_TEST = 700;

const DECLARATIONS = new Set([
  ...['function', 'const', 'let', 'type', 'interface', 'class', 'enum', 'abstract', 'async', 'declare'],
]);

/** Exports without a doc comment, as `path:line name`. A type derived from the list right above it shares the list's. */
function undocumented(file: SourceFile): readonly string[] {
  const tokens = scanTokens(file.source);
  const found: string[] = [];
  const documented = new Set<string>();
  tokens.forEach((token, index) => {
    if (token.kind !== 'word' || token.text !== 'export') return;
    if (!DECLARATIONS.has(tokens[index + 1]?.text ?? '')) return;
    const name = declaredName(tokens, index + 1);
    if (token.comment?.startsWith('/**')) documented.add(name);
    else if (!documented.has(derivedFrom(tokens, index) ?? ''))
      found.push(`${file.path}:${lineAt(file.source, token.at)} ${name}`);
  });
  return found;
}

function declaredName(tokens: readonly Token[], start: number): string {
  let at = start;
  while (DECLARATIONS.has(tokens[at]?.text ?? '') || tokens[at]?.text === '*') at += 1;
  return tokens[at]?.text ?? '';
}

/** The documented thing that an `export type X = … typeof xs …` is derived from: `xs`; null where it stands alone. */
function derivedFrom(tokens: readonly Token[], start: number): string | null {
  if (tokens[start + 1]?.text !== 'type') return null;
  const ahead = tokens.slice(start + 3, start + 12);
  const at = ahead.findIndex((token) => token.text === 'typeof');
  return at < 0 || ahead.slice(0, at).some((token) => token.text === ';')
    ? null
    : (ahead[at + 1]?.text ?? null);
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

const isCode = (file: string) => /\.(tsx?|mjs|css)$/.test(file);

describe('explanations', () => {
  test('every export of shared/ has a doc comment', () => {
    expect(readSources(['shared']).flatMap(undocumented)).toEqual([]);
  });

  test('every file of the core, the workers, the server and the command line opens with what it is about', () => {
    expect(unopened(readSources(['shared', 'src/server', 'src/cli', 'src/worker', 'src/sw']))).toEqual([]);
  });

  test('no file grows beyond what one sitting can read', () => {
    expect(tooLong(readSources(['shared', 'src', 'demo', 'tests'], isCode))).toEqual([]);
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
});
