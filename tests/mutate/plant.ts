// What the tests' runner is given instead of a file: with the planted fault, with a count of turns in its loops so that an endless one
// ends, and, in the first run, with a mark in each function so that it is known which tests come by.

import { childrenOf, type Node, parseSource, type SourceFile } from '../source-scan.ts';
import { type Edit, edited, type Mutant } from './mutants.ts';

const FUNCTIONS = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']);
const LOOPS = new Set([
  'ForStatement',
  'ForInStatement',
  'ForOfStatement',
  'WhileStatement',
  'DoWhileStatement',
]);

/** The bodies of a file's functions, outermost first; the file itself is the first. */
export function bodiesOf(file: SourceFile): readonly Node[] {
  const { program } = parseSource(file);
  const found = [program];
  const walk = (node: Node) => {
    const body = node['body'] as Node | null | undefined;
    if (FUNCTIONS.has(node.type) && body) found.push(body);
    for (const child of childrenOf(node)) walk(child);
  };
  walk(program);
  return found;
}

/** The number among `bodiesOf` of the innermost body that holds a place; 0 for what runs as the file is read. */
export function bodyAt(bodies: readonly Node[], at: number): number {
  const holds = bodies.flatMap(({ start, end }, index) => (start <= at && at < end ? [index] : []));
  return holds.at(-1) ?? 0;
}

/** The file with a mark in each body: `__reach` is told `first` and the numbers after it. */
export function marked(file: SourceFile, first: number): string {
  const edits = bodiesOf(file).flatMap((body, index): readonly Edit[] => {
    const mark = `globalThis.__reach?.(${first + index})`;
    if (body.type === 'Program') return [{ start: 0, end: 0, text: `${mark};` }];
    if (body.type === 'BlockStatement')
      return [{ start: body.start + 1, end: body.start + 1, text: `${mark};` }];
    return [
      { start: body.start, end: body.start, text: `(${mark}, ` },
      { start: body.end, end: body.end, text: ')' },
    ];
  });
  return edited(file.source, [...edits, ...turnsCounted(file)]);
}

/** The file with a fault. */
export function planted(file: SourceFile, fault: readonly Edit[]): string {
  const isFree = ({ start, end }: Edit) => fault.every((edit) => end < edit.start || start > edit.end);
  return edited(file.source, [...fault, ...turnsCounted(file).filter(isFree)]);
}

/**
 * The file with many faults, each switched by its number in `__fault`; 0 is the file as it is. A fault stands beside the rest of its piece,
 * so that one is tried at a time.
 */
export function armed(file: SourceFile, faults: ReadonlyMap<Mutant, number>): string {
  const { source } = file;
  const pieces = new Map<string, { piece: Mutant['piece']; numbers: [number, Mutant][] }>();
  for (const [mutant, number] of faults) {
    const key = `${mutant.piece.start} ${mutant.piece.end}`;
    const there = pieces.get(key) ?? { piece: mutant.piece, numbers: [] };
    there.numbers.push([number, mutant]);
    pieces.set(key, there);
  }
  const outer = [...pieces.values()].sort(
    (a, b) => a.piece.start - b.piece.start || b.piece.end - a.piece.end,
  );
  let next = 0;
  const textOf = (start: number, end: number): string => {
    let text = '';
    let at = start;
    for (let each = outer[next]; each !== undefined && each.piece.start < end; each = outer[next]) {
      next += 1;
      const { piece, numbers } = each;
      text += source.slice(at, piece.start) + switched(source, numbers, textOf(piece.start, piece.end));
      at = piece.end;
    }
    return text + source.slice(at, end);
  };
  return counted({ path: file.path, source: textOf(0, source.length) });
}

/** One piece with its faults beside it. */
function switched(source: string, faults: readonly (readonly [number, Mutant])[], whole: string): string {
  return faults.reduce((text, [number, { piece, edits }]) => {
    if (piece.isBlock) return `{ if (globalThis.__fault !== ${number}) ${text} }`;
    const local = edits.map((edit) => ({
      ...edit,
      start: edit.start - piece.start,
      end: edit.end - piece.start,
    }));
    const other = edited(source.slice(piece.start, piece.end), local);
    return `(globalThis.__fault === ${number} ? (${other}) : (${text}))`;
  }, whole);
}

/** Edits that count the turns of every loop; a body without braces gets some. */
function turnsCounted(file: SourceFile): readonly Edit[] {
  const found: Edit[] = [];
  const walk = (node: Node) => {
    const body = node['body'] as Node | undefined;
    if (LOOPS.has(node.type) && body !== undefined) {
      const isBlock = body.type === 'BlockStatement';
      const start = isBlock ? body.start + 1 : body.start;
      found.push({ start, end: start, text: `${isBlock ? '' : '{ '}globalThis.__turn?.();` });
      if (!isBlock) found.push({ start: body.end, end: body.end, text: ' }' });
    }
    for (const child of childrenOf(node)) walk(child);
  };
  walk(parseSource(file).program);
  return found;
}

/** A file's text with the turns of its loops counted. */
export function counted(file: SourceFile): string {
  return edited(file.source, turnsCounted(file));
}

/**
 * A text of `shared/` whose answers kept by object (weak maps: what can always be worked out again) are dropped before a test is asked with another
 * fault: an answer that a fault gave would be given without it too.
 */
export function forgetting(text: string): string {
  return text.replace(/\bnew WeakMap\b/g, 'new (globalThis.__WeakMap ?? WeakMap)');
}
