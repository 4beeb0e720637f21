// Site rules for labels that follow no standard: a pattern of named pieces per code, approved by a lead. Their checked shape alone, which
// every reader of the log needs; `rule-fit.ts` lays them over labels.

import * as z from 'zod/mini';
import { dateFormats } from './date-formats.ts';
import type { LabelFieldName } from './reading.ts';

/** The fields that a rule can name a piece for. */
export const ruleFields = [
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
export type RuleField = (typeof ruleFields)[number];

/** What a piece takes: a fixed text; a run of digits, letters, or both; or anything up to the next fixed text. */
export const pieceKinds = ['digits', 'letters', 'alphanumeric', 'any'] as const;

const size = z.int().check(z.minimum(1), z.maximum(200));

const textPieceSchema = z.strictObject({ text: z.string().check(z.minLength(1), z.maxLength(100)) });

const takingPieceSchema = z.strictObject({
  takes: z.enum(pieceKinds),
  /** Exactly so many characters; without it as many as there are. */
  length: z.optional(size),
  /** What the piece is; without it the piece is skipped. */
  field: z.optional(z.enum(ruleFields)),
  /** How a date is printed; without it only what is unambiguous is read. */
  date: z.optional(z.enum(dateFormats)),
});

const pieceSchema = z.union([textPieceSchema, takingPieceSchema]);

/** One piece of a pattern. */
export type RulePiece = z.infer<typeof pieceSchema>;

/** A piece that takes characters. */
export type TakingPiece = z.infer<typeof takingPieceSchema>;

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
  reads: z.partialRecord(z.enum(ruleFields), z.string().check(z.maxLength(4000))),
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
