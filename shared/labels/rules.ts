// Site rules for labels that follow no standard: a pattern of named pieces per code, approved by a lead.
// Method: a pattern is a list of pieces, each of which takes its characters greedily and never gives any back, so a match
// costs one walk over the code. Refused: regular expressions written by people, which can take exponential time.

import * as z from 'zod/mini';
import { DATE_FORMATS } from './dates.ts';
import type { ElementKind, LabelElement } from './elements.ts';
import type { LabelFieldName } from './reading.ts';

/** The fields that a rule can name a piece for. */
export const RULE_FIELDS = [
  'part',
  'supplierPart',
  'quantity',
  'lot',
  'dateCode',
  'expires',
  'reel',
  'supplier',
  'country',
  'msl',
  'order',
] as const satisfies readonly LabelFieldName[];

/** One field that a rule can name. */
export type RuleField = (typeof RULE_FIELDS)[number];

/** What a piece takes: a fixed text; a run of digits, letters, or both; or anything up to the next fixed text. */
export const PIECE_KINDS = ['digits', 'letters', 'alphanumeric', 'any'] as const;

const size = z.int().check(z.minimum(1), z.maximum(200));

const textPieceSchema = z.strictObject({ text: z.string().check(z.minLength(1), z.maxLength(100)) });

const takingPieceSchema = z.strictObject({
  takes: z.enum(PIECE_KINDS),
  /** Exactly so many characters; without it as many as there are. */
  length: z.optional(size),
  /** What the piece is; without it the piece is skipped. */
  field: z.optional(z.enum(RULE_FIELDS)),
  /** How a date is printed; without it only what is unambiguous is read. */
  date: z.optional(z.enum(DATE_FORMATS)),
});

const pieceSchema = z.union([textPieceSchema, takingPieceSchema]);

/** One piece of a pattern. */
export type RulePiece = z.infer<typeof pieceSchema>;

type TakingPiece = z.infer<typeof takingPieceSchema>;

/** Classes that an open piece leaves nothing of for the piece behind it. */
const STARVES: Readonly<Record<TakingPiece['takes'], readonly TakingPiece['takes'][]>> = {
  digits: ['digits'],
  letters: ['letters'],
  alphanumeric: ['digits', 'letters', 'alphanumeric'],
  any: ['digits', 'letters', 'alphanumeric', 'any'],
};

/** Index of the first piece that could never match as the open piece before it leaves nothing; -1 = none. */
export function starvedPiece(pieces: readonly RulePiece[]): number {
  for (const [index, piece] of pieces.entries()) {
    const next = pieces[index + 1];
    if ('text' in piece || piece.length !== undefined || next === undefined || 'text' in next) continue;
    if (STARVES[piece.takes].includes(next.takes)) return index + 1;
  }
  return -1;
}

const codePatternSchema = z
  .strictObject({ pieces: z.array(pieceSchema).check(z.minLength(1), z.maxLength(60)) })
  .check(
    z.refine((pattern) => starvedPiece(pattern.pieces) === -1, {
      error: 'a piece without length takes everything that the piece behind it could take: give one a length',
    }),
  );

const exampleSchema = z.strictObject({
  codes: z.array(z.string().check(z.maxLength(4000))).check(z.minLength(1), z.maxLength(50)),
  /** What the named pieces hold, as printed. */
  reads: z.partialRecord(z.enum(RULE_FIELDS), z.string().check(z.maxLength(4000))),
});

/** A site rule: patterns for the codes of one kind of label, a version, and labels that it was made from. */
export const labelRuleSchema = z
  .strictObject({
    rule: z.string().check(z.minLength(1), z.maxLength(64)),
    version: z.int().check(z.minimum(1)),
    note: z.optional(z.string().check(z.maxLength(500))),
    codes: z.array(codePatternSchema).check(z.minLength(1), z.maxLength(12)),
    examples: z.optional(z.array(exampleSchema).check(z.maxLength(50))),
  })
  .check(
    z.refine((rule) => namedFields(rule.codes).length > 0, {
      error: 'no piece is named: a rule must read something',
    }),
    z.refine((rule) => new Set(namedFields(rule.codes)).size === namedFields(rule.codes).length, {
      error: 'two pieces have the same name',
    }),
  );

/** A site rule for labels that follow no standard. */
export type LabelRule = z.infer<typeof labelRuleSchema>;

/** One pattern of a rule. */
export type CodePattern = LabelRule['codes'][number];

function namedFields(codes: readonly { readonly pieces: readonly RulePiece[] }[]): RuleField[] {
  const fields: RuleField[] = [];
  for (const { pieces } of codes) {
    for (const piece of pieces) if (!('text' in piece) && piece.field !== undefined) fields.push(piece.field);
  }
  return fields;
}

/** Several rules as one document. */
export const labelRulesSchema = z.array(labelRuleSchema).check(z.maxLength(500));

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
