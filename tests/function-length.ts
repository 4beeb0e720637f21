// How long each function of the project is: what one reading has to hold.

import { childrenOf, lineAt, type Node, parseSource, type SourceFile } from './source-scan.ts';

/** One function and how many lines it spans, its signature and closing brace included. */
export interface FunctionLength {
  readonly path: string;
  readonly name: string;
  readonly line: number;
  readonly lines: number;
  /** Draws: the name begins with a capital, as a component's does, in a file of markup. */
  readonly isComponent: boolean;
}

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']);

const nameIn = (value: unknown): string | null => {
  const name = (value as Node | null)?.['name'];
  return typeof name === 'string' ? name : null;
};

/** Every function of a file, in order; a function within another counts for itself and for the outer one. */
export function functionLengths(file: SourceFile): readonly FunctionLength[] {
  const found: FunctionLength[] = [];
  const walk = (node: Node, given: string | null) => {
    if (FUNCTIONS.has(node.type)) {
      const name = nameIn(node['id']) ?? given ?? '(a function without a name)';
      const line = lineAt(file.source, node.start);
      const lines = lineAt(file.source, node.end) - line + 1;
      const isComponent = file.path.endsWith('.tsx') && /^[A-Z]/.test(name);
      found.push({ path: file.path, name, line, lines, isComponent });
    }
    const own = nameIn(node['id']) ?? nameIn(node['key']);
    for (const child of childrenOf(node)) walk(child, own);
  };
  walk(parseSource(file).program, null);
  return found;
}
