// Reads the project's own TypeScript for the house's checks: its syntax tree and its comments.
// The parser is the one that the build uses.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync } from 'vite';

/** A node of the syntax tree: any object with a `type`, as ESTree names it. */
export interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

/** One comment. */
export interface Comment {
  readonly type: 'Line' | 'Block';
  readonly value: string;
  readonly start: number;
  readonly end: number;
}

/** A parsed file. */
export interface Parsed {
  readonly program: Node;
  readonly comments: readonly Comment[];
}

/** Parses a file; throws where it is no TypeScript. */
export function parseSource({ path: file, source }: SourceFile): Parsed {
  const { program, comments, errors } = parseSync(file, source);
  if (errors[0]) throw new SyntaxError(`${file}: ${errors[0].message}`);
  return { program: program as unknown as Node, comments };
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

/** The nodes right below a node. */
export function childrenOf(node: Node): readonly Node[] {
  return Object.values(node)
    .flatMap((value) => (Array.isArray(value) ? value : [value]))
    .filter(isNode);
}

/** Visits a node and all below it, parents first. */
export function visit(node: Node, see: (node: Node) => void): void {
  see(node);
  for (const child of childrenOf(node)) visit(child, see);
}

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
