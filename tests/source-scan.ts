// Reads TypeScript source far enough for the house's own checks: its words, texts and marks, without comments.
// Method: one pass with a stack for templates; a regular expression is told from a division by what stands before it.
// Refused: regular expressions over raw text, which see imports in comments and miss them in odd layouts.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** One piece of source. `text` of a string is what stands between its quotes. */
export interface Token {
  readonly kind: 'word' | 'string' | 'mark';
  readonly text: string;
  /** Offset in the source. */
  readonly at: number;
  /** The comment that ends right before the token, null where none does. */
  readonly comment: string | null;
}

const WORD = /[\p{L}\p{N}_$#]+/uy;
// After these a slash begins a regular expression.
const BEFORE_REGEX = new Set([
  ...['return', 'typeof', 'case', 'in', 'of', 'delete', 'void', 'throw', 'new', 'do', 'else', 'await'],
  ...['(', ',', '=', ':', '[', '!', '&', '|', '?', '{', '}', ';', '+', '-', '*', '%', '<', '>', '~', '^'],
]);

/** Splits source into tokens; comments, blanks, regular expressions and the texts of templates are left out. */
export function scanTokens(source: string): readonly Token[] {
  const tokens: Token[] = [];
  // Depth of braces inside each open template's `${`.
  const templates: number[] = [];
  let comment: string | null = null;
  let at = 0;
  const push = (kind: Token['kind'], text: string, start: number) => {
    tokens.push({ kind, text, at: start, comment });
    comment = null;
  };
  const templateText = () => {
    while (at < source.length) {
      if (source[at] === '\\') at += 2;
      else if (source[at] === '`') {
        at += 1;
        return;
      } else if (source.startsWith('${', at)) {
        at += 2;
        templates.push(0);
        return;
      } else at += 1;
    }
  };
  while (at < source.length) {
    const char = source[at] as string; // within bounds
    if (/\s/.test(char)) at += 1;
    else if (source.startsWith('//', at)) {
      const end = source.indexOf('\n', at);
      at = end < 0 ? source.length : end;
      comment = null;
    } else if (source.startsWith('/*', at)) {
      const end = source.indexOf('*/', at + 2);
      const next = end < 0 ? source.length : end + 2;
      comment = source.slice(at, next);
      at = next;
    } else if (char === '"' || char === "'") {
      const end = stringEnd(source, at);
      if (end === null) {
        // An apostrophe in the text of an element: no string ends on another line.
        push('mark', char, at);
        at += 1;
      } else {
        push('string', source.slice(at + 1, end), at);
        at = end + 1;
      }
    } else if (char === '`') {
      push('mark', '`', at);
      at += 1;
      templateText();
    } else if (char === '/' && BEFORE_REGEX.has(tokens.at(-1)?.text ?? '(')) {
      at = regexEnd(source, at);
    } else {
      WORD.lastIndex = at;
      const word = WORD.exec(source)?.[0];
      push(word === undefined ? 'mark' : 'word', word ?? char, at);
      at += (word ?? char).length;
      const depth = templates.at(-1);
      if (depth !== undefined && char === '{') templates[templates.length - 1] = depth + 1;
      if (depth !== undefined && char === '}') {
        if (depth > 0) templates[templates.length - 1] = depth - 1;
        else {
          templates.pop();
          templateText();
        }
      }
    }
  }
  return tokens;
}

function stringEnd(source: string, start: number): number | null {
  for (let at = start + 1; at < source.length && source[at] !== '\n'; at += 1) {
    if (source[at] === '\\') at += 1;
    else if (source[at] === source[start]) return at;
  }
  return null;
}

/** The end of a regular expression, or of the slash alone where the line has no other end for it. */
function regexEnd(source: string, start: number): number {
  let inClass = false;
  for (let at = start + 1; at < source.length && source[at] !== '\n'; at += 1) {
    const char = source[at];
    if (char === '\\') at += 1;
    else if (char === '[') inClass = true;
    else if (char === ']') inClass = false;
    else if (char === '/' && !inClass) return at + 1;
  }
  return start + 1;
}

/** Everything that a source names as another module: imports of values and types, exports from, dynamic imports, worker URLs. */
export function findImports(tokens: readonly Token[]): readonly string[] {
  const found: string[] = [];
  tokens.forEach((token, index) => {
    if (token.kind !== 'word') return;
    const next = tokens[index + 1];
    const after = tokens[index + 2];
    const isProperty = tokens[index - 1]?.text === '.';
    if (isProperty) return;
    if (token.text === 'import' && next?.kind === 'string') found.push(next.text);
    else if (token.text === 'import' && next?.text === '(' && after?.kind === 'string')
      found.push(after.text);
    else if (token.text === 'require' && next?.text === '(' && after?.kind === 'string')
      found.push(after.text);
    else if (token.text === 'URL' && next?.text === '(' && after?.kind === 'string') {
      const rest = tokens.slice(index + 3, index + 7).map((each) => each.text);
      const isModule = /\.(tsx?|m?js)$/.test(after.text);
      if (isModule && rest.join('') === ',import.meta') found.push(after.text);
    } else if (token.text === 'import' || token.text === 'export') {
      const from = fromClause(tokens, index + 1);
      if (from !== null) found.push(from);
    }
  });
  return found;
}

/** The text after `from` of the clause that starts here; null where there is none before the statement ends. */
function fromClause(tokens: readonly Token[], start: number): string | null {
  for (let index = start; index < tokens.length; index += 1) {
    const token = tokens[index] as Token; // within bounds
    const next = tokens[index + 1];
    if (token.text === 'from' && token.kind === 'word' && next?.kind === 'string') return next.text;
    const inClause = token.kind === 'word' ? !DECLARING.has(token.text) : CLAUSE_MARKS.has(token.text);
    if (!inClause) return null;
  }
  return null;
}

const CLAUSE_MARKS = new Set(['{', '}', ',', '*']);
const DECLARING = new Set(
  'const let var function class interface enum default async declare abstract'.split(' '),
);

/** The line, from 1, on which an offset stands. */
export function lineAt(source: string, at: number): number {
  return source.slice(0, at).split('\n').length;
}

/** The project's root folder. */
export const projectRoot = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');

/** One file of the project, by its path from the root with slashes. */
export interface SourceFile {
  readonly path: string;
  readonly source: string;
}

const LEFT_OUT = new Set(['node_modules', 'dist', '.git', '.tmp', 'data']);

/** Every file under the folders (or the root for none) whose name ends so, in order of their paths. */
export function readSources(
  folders: readonly string[],
  isWanted: (file: string) => boolean = (file) => /\.tsx?$/.test(file),
): readonly SourceFile[] {
  const found: SourceFile[] = [];
  const walk = (folder: string) => {
    for (const entry of readdirSync(path.join(projectRoot, folder), { withFileTypes: true })) {
      const file = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) {
        if (!LEFT_OUT.has(entry.name)) walk(file);
      } else if (isWanted(file)) {
        found.push({ path: file, source: readFileSync(path.join(projectRoot, file), 'utf8') });
      }
    }
  };
  for (const folder of folders) walk(folder);
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}
