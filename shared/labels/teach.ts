// Makes a site rule from one label on which a person has tapped the pieces, and tries it against other labels.
// Method: tapped pieces become named, marks and words without digits between them stay fixed text, other stretches are
// skipped; where a tapped piece has no mark at its edge, its neighbour and itself get their lengths fixed.

import { fail, ok, type Result } from '../kit/result.ts';
import { parseLabel } from './label.ts';
import type { LabelReading } from './reading.ts';
import { type CodePattern, fitRule, type LabelRule, type RuleField, type RulePiece } from './rules.ts';

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
  | { readonly code: 'too-loose' };

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

function tappedPiece(code: string, { from, to, field }: Stretch): RulePiece {
  const text = code.slice(from, to);
  const fixed = runsOn(code, from) || runsOn(code, to);
  const takes = classOf(text);
  return {
    takes,
    ...(fixed || (takes === 'any' && !isMark(code[to])) ? lengthUnlessLast(code, to, text) : {}),
    ...(field === null ? {} : { field }),
  };
}

function isMark(char: string | undefined): boolean {
  return char === undefined || !isAlphanumeric(char);
}

function lengthUnlessLast(code: string, to: number, text: string): { length?: number } {
  return to === code.length && !runsOn(code, to) && text.length === 0 ? {} : { length: text.length };
}

/** Pieces for a stretch that nobody tapped: marks and words stay, runs with digits in them are skipped. */
function untappedPieces(code: string, { from, to }: Stretch): RulePiece[] {
  const pieces: RulePiece[] = [];
  let fixed = '';
  for (let at = from; at < to; ) {
    let end = at;
    const alphanumeric = isAlphanumeric(code[at]);
    while (end < to && isAlphanumeric(code[end]) === alphanumeric) end += 1;
    const run = code.slice(at, end);
    if (alphanumeric && /[0-9]/.test(run)) {
      if (fixed !== '') pieces.push({ text: fixed });
      fixed = '';
      const open = !runsOn(code, at) && !runsOn(code, end);
      pieces.push({ takes: classOf(run), ...(open ? {} : { length: run.length }) });
    } else {
      fixed += run;
    }
    at = end;
  }
  if (fixed !== '') pieces.push({ text: fixed });
  return pieces;
}

function patternOf(code: string, taps: readonly LabelTap[]): CodePattern {
  const pieces: RulePiece[] = [];
  for (const stretch of stretchesOf(code, taps)) {
    if (stretch.field === null) for (const piece of untappedPieces(code, stretch)) pieces.push(piece);
    else pieces.push(tappedPiece(code, stretch));
  }
  return { pieces };
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
    for (const [before, other] of taps.slice(0, index).entries()) {
      if (other.code === tap.code && other.from < tap.to && tap.from < other.to && before < index) {
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
  return ok({
    rule: options.rule,
    version: options.version ?? 1,
    codes: patterns,
    examples: [{ codes: [...codes], reads }],
  });
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
