// Makes a site rule from one label on which a person has tapped the pieces, and tries it against other labels.
// Method: tapped pieces become named, marks and words without digits between them stay fixed text, other stretches are
// skipped; lengths are fixed only where two pieces run on into each other, or where an open pattern would not read the taught label as it was
// tapped. Names take letters and digits whatever the taught ones hold, as the next reel's lot is another. Refused: the taught label's lengths
// everywhere, since such a rule reads the reel that it was taught on and hardly any after it.

import { fail, ok, type Result } from '../kit/result.ts';
import { parseLabel } from './label.ts';
import type { LabelReading } from './reading.ts';
import { fitRule, isFit, matchPattern } from './rule-fit.ts';
import {
  type CodePattern,
  type LabelRule,
  labelRuleSchema,
  type RuleField,
  type RulePiece,
  starvedPiece,
} from './rules.ts';

/** One tap: characters `from` (included) to `to` (not included) of one code are this field. */
export interface LabelTap {
  readonly code: number;
  readonly from: number;
  readonly to: number;
  readonly field: RuleField;
}

/** Why no rule can be made from taps. */
export type TeachProblem =
  | { readonly code: 'nothing-tapped' }
  | { readonly code: 'tap-outside'; readonly tap: number }
  | { readonly code: 'taps-overlap'; readonly tap: number }
  | { readonly code: 'field-tapped-twice'; readonly field: RuleField }
  /** The rule would fit almost every label: nothing in it is fixed. */
  | { readonly code: 'too-loose' }
  /** The label is longer than a rule can describe. */
  | { readonly code: 'too-long' };

// Longest fixed text in one piece, as the schema of rules has it.
const LONGEST_TEXT = 100;

/** What the rule is called; version 1 unless it replaces another. */
export interface TeachOptions {
  readonly rule: string;
  readonly version?: number;
}

function isAlphanumeric(char: string | undefined): boolean {
  return char !== undefined && /[A-Za-z0-9]/.test(char);
}

type Taking = 'digits' | 'letters' | 'alphanumeric' | 'any';

function classOf(text: string): Taking {
  if (/^[0-9]+$/.test(text)) return 'digits';
  if (/^[A-Za-z]+$/.test(text)) return 'letters';
  return /^[A-Za-z0-9]+$/.test(text) ? 'alphanumeric' : 'any';
}

/** A stretch of a code: tapped, or between taps. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly field: RuleField | null;
}

function stretchesOf(code: string, taps: readonly LabelTap[]): Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const { from, to, field } of taps) {
    if (from > at) stretches.push({ from: at, to: from, field: null });
    stretches.push({ from, to, field });
    at = to;
  }
  if (at < code.length) stretches.push({ from: at, to: code.length, field: null });
  return stretches;
}

/** Whether letters or digits go on across a place, so that no mark shows where one piece ends. */
function runsOn(code: string, at: number): boolean {
  return at > 0 && at < code.length && isAlphanumeric(code[at - 1]) && isAlphanumeric(code[at]);
}

/** A piece of the pattern in the making; `size`: the characters that it stands for in the taught label, `from` where it begins there. */
interface Draft {
  readonly piece: RulePiece;
  readonly from: number;
  readonly size: number;
}

function takingDraft(code: string, { from, to, field }: Stretch): Draft {
  const text = code.slice(from, to);
  const piece = { takes: classOf(text), ...(field === null ? {} : { field }) };
  return { piece, from, size: text.length };
}

/** Drafts for a stretch that nobody tapped: marks and words stay, runs with digits in them are skipped. */
function untappedDrafts(code: string, { from, to }: Stretch): Draft[] {
  const drafts: Draft[] = [];
  for (let at = from; at < to; ) {
    let end = at + 1;
    const alphanumeric = isAlphanumeric(code[at]);
    while (end < to && end - at < LONGEST_TEXT && isAlphanumeric(code[end]) === alphanumeric) end += 1;
    const run = code.slice(at, end);
    if (alphanumeric && /[0-9]/.test(run)) drafts.push(takingDraft(code, { from: at, to: end, field: null }));
    else drafts.push({ piece: { text: run }, from: at, size: run.length });
    at = end;
  }
  return drafts;
}

/** Fixes the length of every taking piece that `which` picks. */
function withLengths(
  drafts: readonly Draft[],
  which: (piece: RulePiece, index: number) => boolean,
): CodePattern {
  const pieces = drafts.map(({ piece, size }, index): RulePiece => {
    return 'text' in piece || !which(piece, index) ? piece : { ...piece, length: size };
  });
  return { pieces };
}

/** Whether a draft and the one behind it both take characters, and no mark parts them. */
function runsInto(code: string, drafts: readonly Draft[], index: number): boolean {
  const [one, next] = [drafts[index], drafts[index + 1]];
  return (
    one !== undefined &&
    next !== undefined &&
    'takes' in one.piece &&
    'takes' in next.piece &&
    runsOn(code, next.from)
  );
}

/** What names of things: their lengths and signs differ from reel to reel. */
const NAMES: ReadonlySet<RuleField> = new Set(['part', 'supplierPart', 'lot', 'reel', 'supplier', 'order']);

/** Letters and digits for names; up to the next mark where one ends them that stands in no name. */
function widened(pieces: readonly RulePiece[]): CodePattern {
  return {
    pieces: pieces.map((piece, index): RulePiece => {
      if (
        'text' in piece ||
        piece.length !== undefined ||
        piece.field === undefined ||
        !NAMES.has(piece.field)
      )
        return piece;
      const next = pieces[index + 1];
      const isMarked = next !== undefined && 'text' in next && /^[^A-Za-z0-9._/-]/.test(next.text);
      if (isMarked) return { ...piece, takes: 'any' };
      return piece.takes === 'any' ? piece : { ...piece, takes: 'alphanumeric' };
    }),
  };
}

/** Whether a pattern reads the taught code as it was tapped. */
function readsTaps(pattern: CodePattern, code: string, taps: readonly LabelTap[]): boolean {
  if (starvedPiece(pattern.pieces) !== -1) return false;
  const match = matchPattern(pattern, code);
  if (!isFit(match) || match.length !== taps.length) return false;
  return taps.every(({ field, from, to }, index) => {
    const named = match[index];
    return named?.field === field && named.value === code.slice(from, to).trim();
  });
}

/** Whether more than one letter in front tells the codes of a pattern from others. */
function isMarkedOut({ pieces }: CodePattern): boolean {
  return pieces.some((piece) =>
    'text' in piece ? piece.text.length > 1 || !isAlphanumeric(piece.text) : piece.length !== undefined,
  );
}

/**
 * The loosest pattern that reads the taught code as tapped and is no pattern for any code at all: lengths fixed between pieces that run into
 * each other, with names widened and without; then wherever letters and digits go on; then for `any`; then everywhere.
 */
function patternOf(code: string, taps: readonly LabelTap[]): CodePattern {
  const drafts = stretchesOf(code, taps).flatMap((stretch) =>
    stretch.field === null ? untappedDrafts(code, stretch) : [takingDraft(code, stretch)],
  );
  const packed = withLengths(
    drafts,
    (_, index) => runsInto(code, drafts, index) || runsInto(code, drafts, index - 1),
  );
  const wherever = withLengths(drafts, (_, index) => {
    const { from, size } = drafts[index] ?? { from: 0, size: 0 };
    return runsOn(code, from) || runsOn(code, from + size);
  });
  const fixedAny = {
    pieces: wherever.pieces.map((piece, index) =>
      'takes' in piece && piece.takes === 'any' ? { ...piece, length: drafts[index]?.size ?? 1 } : piece,
    ),
  };
  const open = [widened(packed.pieces), packed].filter(isMarkedOut);
  for (const pattern of [...open, wherever, fixedAny]) if (readsTaps(pattern, code, taps)) return pattern;
  return withLengths(drafts, () => true);
}

function checkTaps(codes: readonly string[], taps: readonly LabelTap[]): TeachProblem | null {
  if (taps.length === 0) return { code: 'nothing-tapped' };
  const fields = new Set<RuleField>();
  for (const [index, tap] of taps.entries()) {
    const code = codes[tap.code];
    const whole = Number.isInteger(tap.from) && Number.isInteger(tap.to);
    if (code === undefined || !whole || tap.from < 0 || tap.to <= tap.from || tap.to > code.length) {
      return { code: 'tap-outside', tap: index };
    }
    if (code.slice(tap.from, tap.to).trim() === '') return { code: 'tap-outside', tap: index };
    if (fields.has(tap.field)) return { code: 'field-tapped-twice', field: tap.field };
    fields.add(tap.field);
    for (const other of taps.slice(0, index)) {
      if (other.code === tap.code && other.from < tap.to && tap.from < other.to) {
        return { code: 'taps-overlap', tap: index };
      }
    }
  }
  return null;
}

/** Whether something in the rule is fixed: text, or a length. */
function isTight(codes: readonly CodePattern[]): boolean {
  return codes.some(({ pieces }) => pieces.some((piece) => 'text' in piece || piece.length !== undefined));
}

/** Makes a rule from one label. `codes`: as they were read; `taps`: which characters are what. The label becomes its example. */
export function deriveRule(
  codes: readonly string[],
  taps: readonly LabelTap[],
  options: TeachOptions,
): Result<LabelRule, TeachProblem> {
  const problem = checkTaps(codes, taps);
  if (problem !== null) return fail(problem);
  const patterns: CodePattern[] = [];
  const reads: Partial<Record<RuleField, string>> = {};
  for (const [index, code] of codes.entries()) {
    const mine = taps.filter((tap) => tap.code === index).sort((a, b) => a.from - b.from);
    if (mine.length === 0) continue;
    patterns.push(patternOf(code, mine));
    for (const tap of mine) reads[tap.field] = code.slice(tap.from, tap.to).trim();
  }
  if (!isTight(patterns) && patterns.length < 2) return fail({ code: 'too-loose' });
  const rule = labelRuleSchema.safeParse({
    rule: options.rule,
    version: options.version ?? 1,
    codes: patterns,
    examples: [{ codes, reads }],
  });
  return rule.success ? ok(rule.data) : fail({ code: 'too-long' });
}

/** A label made up from the taught one, and what a rule should read of it. */
export interface VariedLabel {
  readonly codes: readonly string[];
  readonly wants: Readonly<Partial<Record<RuleField, string>>>;
  /** What the rule reads; null where it does not fit. */
  readonly reads: Readonly<Partial<Record<RuleField, string>>> | null;
}

/** The ways in which the next reels of a supplier differ: longer, shorter, and with other signs. */
const VARIATIONS: readonly ((text: string, field: RuleField) => string)[] = [
  (text, field) => `${text}${field === 'quantity' ? '0' : '7'}`,
  (text) => (text.length > 1 ? text.slice(0, -1) : text),
  (text, field) => {
    const turned = text.replace(/[0-9]/g, (digit) => String((Number(digit) + 3) % 10 || 4));
    return field === 'lot' && turned.length > 1 ? `${turned.slice(0, 1)}B${turned.slice(2)}` : turned;
  },
];

/** Three labels of the same kind as the taught one, with other parts, lots, ids and quantities, and what a rule reads of them. */
export function variedLabels(
  rule: LabelRule,
  codes: readonly string[],
  taps: readonly LabelTap[],
): readonly VariedLabel[] {
  return VARIATIONS.map((vary) => {
    const wants: Partial<Record<RuleField, string>> = {};
    const varied = codes.map((code, index) => {
      let text = code;
      // From the end, so that the places in front stay where they are.
      for (const { from, to, field } of taps
        .filter((tap) => tap.code === index)
        .sort((a, b) => b.from - a.from)) {
        const old = code.slice(from, to);
        const next = NAMES.has(field) || field === 'quantity' ? vary(old, field) : old;
        wants[field] = next.trim();
        text = `${text.slice(0, from)}${next}${text.slice(to)}`;
      }
      return text;
    });
    const fit = fitRule(rule, varied);
    const reads: Partial<Record<RuleField, string>> = {};
    for (const { field, value } of fit?.named ?? []) reads[field] = value;
    return { codes: varied, wants, reads: fit === null || fit.unclear ? null : reads };
  });
}

/** True where a rule reads a made-up label as it should. */
export function readsAsWanted({ wants, reads }: VariedLabel): boolean {
  if (reads === null) return false;
  const fields = new Set([...Object.keys(wants), ...Object.keys(reads)]) as Set<RuleField>; // keys of both records
  return [...fields].every((field) => wants[field] === reads[field]);
}

/** What a rule does with one earlier label. `reading`: the label under this rule alone; null where the rule does not fit. */
export interface RuleTrial {
  readonly codes: readonly string[];
  readonly reading: LabelReading | null;
}

/** Tries a rule against earlier labels, so that a lead sees what it would have read before approving it. */
export function tryRule(rule: LabelRule, labels: readonly (readonly string[])[]): readonly RuleTrial[] {
  return labels.map((codes) => {
    const reading = parseLabel(codes, { rules: [rule] });
    return { codes, reading: reading.rules.length > 0 ? reading : null };
  });
}

/** An example that a rule does not read as it says. */
export interface FailedExample {
  /** Index in the rule's examples. */
  readonly example: number;
  /** Null where the rule does not fit the example at all. */
  readonly found: Partial<Record<RuleField, string>> | null;
}

/** Tests a rule by its own examples; empty = it reads them all as they say. */
export function failedExamples(rule: LabelRule): readonly FailedExample[] {
  const failed: FailedExample[] = [];
  for (const [example, { codes, reads }] of (rule.examples ?? []).entries()) {
    const fit = fitRule(rule, codes);
    const found: Partial<Record<RuleField, string>> = {};
    for (const { field, value } of fit?.named ?? []) found[field] = value;
    const fields = new Set([...Object.keys(found), ...Object.keys(reads)]) as Set<RuleField>; // keys of both records
    const same = fit !== null && [...fields].every((field) => found[field] === reads[field]);
    if (!same) failed.push({ example, found: fit === null ? null : found });
  }
  return failed;
}
