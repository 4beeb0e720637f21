// Which faults can be planted in a file: one small change of one place, as a slip of the hand would make it.
// Method: a walk over the syntax tree of the build's own parser; each change is kept as edits of the text, so that all else stays as written.
// Refused: changing texts, since a sentence or a code that is misspelt says nothing about the thinking around it; and the ready-made
// tools, whose newest needs a newer Node than the product and whose older ones need a TypeScript that is no longer this one.

import { childrenOf, lineAt, type Node, parseSource, type SourceFile } from '../source-scan.ts';

/** Replaces the text from `start` to `end`. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** One fault that can be planted. */
export interface Mutant {
  readonly path: string;
  /** From 1. */
  readonly line: number;
  /** Where in the file it stands. */
  readonly at: number;
  /** The line it begins on, without the spaces around it. */
  readonly code: string;
  /** The text as it is and as the fault makes it, each on one line. */
  readonly was: string;
  readonly becomes: string;
  /** Which of the faults that read the same in this file, from 1. */
  readonly nth: number;
  readonly edits: readonly Edit[];
  /** The smallest piece that can be switched between both: an expression, or a block. */
  readonly piece: { readonly start: number; readonly end: number; readonly isBlock: boolean };
}

/** Operators and what a slip makes of them. */
const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '+=': ['-='],
  '-=': ['+='],
  '*=': ['/='],
  '/=': ['*='],
  '++': ['--'],
  '--': ['++'],
};

/** Methods that are mistaken for each other. */
const TWINS: Readonly<Record<string, string>> = {
  some: 'every',
  every: 'some',
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
};

/** Methods that may be forgotten: the list goes on as it was. */
const FORGOTTEN = new Set(['filter', 'toSorted', 'slice', 'toReversed', 'trim']);

/** Types are the compiler's matter; these hold values all the same. */
const HOLDS_VALUE = new Set(['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression']);

/** What a chain of `?.` is made of. */
const IN_CHAIN = new Set(['MemberExpression', 'CallExpression']);

/** True for the name of a property, which may look like a number. */
function isName(node: Node, child: Node): boolean {
  return node['key'] === child && node['computed'] !== true && node['shorthand'] !== true;
}

/** Longer texts are told by their beginning. */
const LONGEST_TEXT = 120;

function inOneLine(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST_TEXT ? `${line.slice(0, LONGEST_TEXT)}…` : line;
}

/** The text with the edits made, the later ones first; they must not overlap. */
export function edited(source: string, edits: readonly Edit[]): string {
  let text = source;
  for (const { start, end, text: given } of [...edits].sort((a, b) => b.start - a.start || b.end - a.end))
    text = text.slice(0, start) + given + text.slice(end);
  return text;
}

/** Every fault that can be planted in a file, in the order of their places. Throws where the file is no TypeScript. */
export function mutantsOf(file: SourceFile): readonly Mutant[] {
  const { source, path } = file;
  const lines = source.split('\n');
  const found: Mutant[] = [];
  const textOf = (node: Node) => source.slice(node.start, node.end);

  const seen = new Map<string, number>();
  const add = (node: Node, edits: readonly Edit[]) => {
    const local = edits.map((edit) => ({
      ...edit,
      start: edit.start - node.start,
      end: edit.end - node.start,
    }));
    const was = inOneLine(textOf(node));
    const becomes = inOneLine(edited(textOf(node), local));
    const line = lineAt(source, node.start);
    const code = lines[line - 1]!.trim();
    const text = [code, was, becomes].join('\n');
    const nth = (seen.get(text) ?? 0) + 1;
    seen.set(text, nth);
    const isBlock = node.type === 'BlockStatement';
    const whole = !isBlock && IN_CHAIN.has(node.type) ? (chain ?? node) : node;
    const piece = { start: whole.start, end: whole.end, isBlock };
    found.push({ path, line, at: node.start, code, was, becomes, nth, edits, piece });
  };
  const replace = (node: Node, text: string) => add(node, [{ start: node.start, end: node.end, text }]);

  const turnOperator = (node: Node, left: Node, right: Node) => {
    const operator = String(node['operator']);
    const between = source.slice(left.end, right.start);
    const start = left.end + operatorIn(between, operator);
    const isText = operator === '+' && [left, right].some(isWords);
    for (const other of isText ? [] : (OPERATORS[operator] ?? []))
      add(node, bracketed(node, { start, end: start + operator.length, text: other }));
    if (operator === '??') replace(node, `(${textOf(left)})`);
  };

  const see = (node: Node) => {
    switch (node.type) {
      case 'BinaryExpression':
      case 'LogicalExpression':
      case 'AssignmentExpression':
        turnOperator(node, node['left'] as Node, node['right'] as Node);
        break;
      case 'UpdateExpression':
        replace(
          node,
          textOf(node).replace(/\+\+|--/, (own) => OPERATORS[own]![0]!),
        );
        break;
      case 'UnaryExpression':
        if (node['operator'] === '!' || node['operator'] === '-')
          replace(node, textOf(node['argument'] as Node));
        break;
      case 'Literal':
        if (typeof node['value'] === 'boolean') replace(node, String(!node['value']));
        if (typeof node['value'] === 'number') replace(node, String(node['value'] + 1));
        break;
      case 'IfStatement':
      case 'ConditionalExpression':
        replace(node['test'] as Node, 'true');
        replace(node['test'] as Node, 'false');
        break;
      case 'WhileStatement':
        replace(node['test'] as Node, 'false');
        break;
      case 'BlockStatement':
        if ((node['body'] as readonly Node[]).length > 0) replace(node, '{}');
        break;
      case 'MemberExpression':
        if (node['optional'] === true) {
          const start = source.indexOf('?.', (node['object'] as Node).end);
          add(node, [{ start, end: start + 2, text: node['computed'] === true ? '' : '.' }]);
        }
        break;
      case 'CallExpression':
        seeCall(node);
        break;
    }
  };

  const seeCall = (node: Node) => {
    const callee = node['callee'] as Node;
    const property = callee['property'] as Node | undefined;
    if (callee.type !== 'MemberExpression' || property?.type !== 'Identifier') return;
    const name = String(property['name']);
    const twin = Object.hasOwn(TWINS, name) ? TWINS[name] : undefined;
    if (twin !== undefined) add(node, [{ start: property.start, end: property.end, text: twin }]);
    if (FORGOTTEN.has(name)) replace(node, textOf(callee['object'] as Node));
  };

  /** The chain of `?.` that is being walked; a part of it cannot be switched alone, since its end ends all of it. */
  let chain: Node | null = null;
  const walk = (node: Node) => {
    if (node.type === 'ImportDeclaration' || (node.type.startsWith('TS') && !HOLDS_VALUE.has(node.type)))
      return;
    const around = chain;
    if (node.type === 'ChainExpression') chain = node;
    else if (!IN_CHAIN.has(node.type) && !HOLDS_VALUE.has(node.type)) chain = null;
    see(node);
    for (const child of childrenOf(node)) if (!isName(node, child)) walk(child);
    chain = around;
  };
  walk(parseSource(file).program);
  return found.sort((a, b) => a.at - b.at);
}

/** In brackets, so that what stands around it takes nothing of it; an assignment is a statement of its own and needs none. */
function bracketed(node: Node, edit: Edit): readonly Edit[] {
  if (node.type === 'AssignmentExpression') return [edit];
  return [
    { start: node.start, end: node.start, text: '(' },
    edit,
    { start: node.end, end: node.end, text: ')' },
  ];
}

/** Where an operator stands in what lies between its sides, past comments. */
function operatorIn(between: string, operator: string): number {
  const bare = between.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, (comment) => ' '.repeat(comment.length));
  return bare.indexOf(operator);
}

/** A text in quotes: a plus beside it joins and adds nothing. */
function isWords(node: Node): boolean {
  if (node.type === 'TemplateLiteral') return true;
  if (node.type === 'BinaryExpression')
    return [node['left'], node['right']].some((side) => isWords(side as Node));
  return node.type === 'Literal' && typeof node['value'] === 'string';
}
