// Lays site rules over the codes of a label.
// Method: a pattern is a list of pieces, each of which takes its characters greedily and never gives any back, so a match
// costs one walk over the code. Refused: regular expressions written by people, which can take exponential time.

import type { ElementKind, LabelElement } from './elements.ts';
import type { CodePattern, LabelRule, RuleField, RulePiece, TakingPiece } from './rules.ts';

/** A named piece found in a code. */
export interface NamedPiece {
  readonly field: RuleField;
  readonly value: string;
  readonly date: TakingPiece['date'];
}

/** A pattern that does not fit: which piece failed, and where in the code. */
export interface Misfit {
  readonly piece: number;
  readonly at: number;
}

function isTaken(char: number, takes: TakingPiece['takes']): boolean {
  const digit = char >= 48 && char <= 57;
  const letter = (char >= 65 && char <= 90) || (char >= 97 && char <= 122);
  if (takes === 'digits') return digit;
  return takes === 'letters' ? letter : digit || letter;
}

/** Where a taking piece ends that begins at `at`; -1 = it takes nothing. */
function takenEnd(text: string, at: number, piece: TakingPiece, next: RulePiece | undefined): number {
  if (piece.takes === 'any') {
    if (piece.length !== undefined) return at + piece.length <= text.length ? at + piece.length : -1;
    if (next === undefined) return text.length > at ? text.length : -1;
    const end = 'text' in next ? text.indexOf(next.text, at + 1) : -1;
    return end;
  }
  const limit = piece.length === undefined ? text.length : at + piece.length;
  let end = at;
  while (end < limit && end < text.length && isTaken(text.charCodeAt(end), piece.takes)) end += 1;
  if (end === at || (piece.length !== undefined && end !== limit)) return -1;
  return end;
}

/** Lays one pattern over one code, which it must cover to the end. */
export function matchPattern(pattern: CodePattern, text: string): readonly NamedPiece[] | Misfit {
  const named: NamedPiece[] = [];
  let at = 0;
  for (const [index, piece] of pattern.pieces.entries()) {
    if ('text' in piece) {
      if (!text.startsWith(piece.text, at)) return { piece: index, at };
      at += piece.text.length;
      continue;
    }
    const end = takenEnd(text, at, piece, pattern.pieces[index + 1]);
    if (end === -1) return { piece: index, at };
    if (piece.field !== undefined) {
      const value = text.slice(at, end).trim();
      if (value === '') return { piece: index, at };
      named.push({ field: piece.field, value, date: piece.date });
    }
    at = end;
  }
  return at === text.length ? named : { piece: pattern.pieces.length, at };
}

/** Whether a match is one. */
export function isFit(match: readonly NamedPiece[] | Misfit): match is readonly NamedPiece[] {
  return Array.isArray(match);
}

/** A rule laid over the codes of a label: what it names, and which codes it used. */
export interface RuleFit {
  readonly named: readonly NamedPiece[];
  readonly used: ReadonlySet<number>;
  /** The patterns fit the codes in more than one way: nothing is certain, and `named` is empty. */
  readonly unclear: boolean;
}

// More codes than any label has; keeps the work bounded.
const MOST_CODES = 64;

/** One way in which a pattern fits a code. */
interface Choice {
  readonly code: number;
  readonly named: readonly NamedPiece[];
}

/**
 * Lays a rule over a label: every pattern takes a code of its own; null where some pattern finds none. Method: bipartite
 * matching by augmenting paths, then a search for a second matching, since codes come in any order.
 */
export function fitRule(rule: LabelRule, texts: readonly string[]): RuleFit | null {
  if (texts.length > MOST_CODES) return null;
  const choices: Choice[][] = [];
  for (const pattern of rule.codes) {
    const fits: Choice[] = [];
    for (const [code, text] of texts.entries()) {
      const named = matchPattern(pattern, text);
      if (isFit(named)) fits.push({ code, named });
    }
    if (fits.length === 0) return null;
    choices.push(fits);
  }
  const taken = matchAll(choices, null);
  if (taken === null) return null;
  const used = new Set(taken.map((choice) => choice.code));
  const unclear = taken.some((choice, pattern) => {
    return (choices[pattern]?.length ?? 0) > 1 && matchAll(choices, { pattern, code: choice.code }) !== null;
  });
  return { named: unclear ? [] : taken.flatMap((choice) => choice.named), used, unclear };
}

/** A code for every pattern, none twice, or null; `without` leaves one pairing out. */
function matchAll(
  choices: readonly (readonly Choice[])[],
  without: { readonly pattern: number; readonly code: number } | null,
): readonly Choice[] | null {
  const holder = new Map<number, number>();
  const chosen: Choice[] = [];
  const place = (pattern: number, tried: Set<number>): boolean => {
    for (const choice of choices[pattern] ?? []) {
      if (tried.has(choice.code) || (without?.pattern === pattern && without.code === choice.code)) continue;
      tried.add(choice.code);
      const other = holder.get(choice.code);
      if (other !== undefined && !place(other, tried)) continue;
      holder.set(choice.code, pattern);
      chosen[pattern] = choice;
      return true;
    }
    return false;
  };
  for (let pattern = 0; pattern < choices.length; pattern += 1) {
    if (!place(pattern, new Set())) return null;
  }
  return chosen;
}

/** Whether a rule was made for envelopes, so that it may read codes that otherwise a standard reads. */
export function readsEnvelopes(rule: LabelRule): boolean {
  return rule.codes.some(({ pieces }) => {
    const first = pieces[0];
    return first !== undefined && 'text' in first && first.text.startsWith('[)');
  });
}

const KINDS: Readonly<Partial<Record<RuleField, ElementKind>>> = {
  quantity: 'quantity',
  dateCode: 'code',
  expires: 'YYYYMMDD',
  country: 'country',
  msl: 'msl',
};

/** Turns a named piece into an element of a label; its id is the rule's name. */
export function ruleElement(rule: LabelRule, piece: NamedPiece): LabelElement {
  const { field, value, date } = piece;
  return {
    id: rule.rule,
    title: `${field} by site rule, version ${rule.version}`,
    value,
    field,
    rank: 0,
    kind: date ?? KINDS[field] ?? 'text',
  };
}
