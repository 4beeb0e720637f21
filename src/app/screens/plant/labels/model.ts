// Taps on a label, the rule that follows from them, and what it does to the labels in the log.

import { readFloorEntry } from '../../../../../shared/floor/kinds.ts';
import type { DateFormat } from '../../../../../shared/labels/date-formats.ts';
import { parseLabel } from '../../../../../shared/labels/label.ts';
import type { LabelReading } from '../../../../../shared/labels/reading.ts';
import type { LabelRule, RuleField } from '../../../../../shared/labels/rules.ts';
import {
  deriveRule,
  failedExamples,
  type LabelTap,
  type TeachProblem,
  tryRule,
  type VariedLabel,
  variedLabels,
} from '../../../../../shared/labels/teach.ts';
import type { Entry } from '../../../../../shared/log/entry.ts';

/** Characters of one code, `from` included, `to` not. */
export interface Span {
  readonly code: number;
  readonly from: number;
  readonly to: number;
}

/** A stretch of a code as it is shown: tapped (`field`), a piece that may be tapped, or a mark between pieces. */
export interface Token extends Span {
  readonly field: RuleField | null;
  readonly isPiece: boolean;
}

// Letters and digits with what part numbers hold inside; every other character ends a piece.
const piece = /[\p{L}\p{N}][\p{L}\p{N}._-]*/gu;

/** Splits a code into what can be tapped and what stands between; tapped stretches stay whole. */
export function tokensOf(text: string, code: number, taps: readonly LabelTap[]): readonly Token[] {
  const tokens: Token[] = [];
  const untapped = (from: number, to: number) => {
    let at = from;
    for (const found of text.slice(from, to).matchAll(piece)) {
      const start = from + found.index;
      if (start > at) tokens.push({ code, from: at, to: start, field: null, isPiece: false });
      at = start + found[0].length;
      tokens.push({ code, from: start, to: at, field: null, isPiece: true });
    }
    if (at < to) tokens.push({ code, from: at, to, field: null, isPiece: false });
  };
  let at = 0;
  for (const tap of taps.filter((each) => each.code === code).sort((a, b) => a.from - b.from)) {
    untapped(at, tap.from);
    tokens.push({ code, from: tap.from, to: tap.to, field: tap.field, isPiece: true });
    at = tap.to;
  }
  untapped(at, text.length);
  return tokens;
}

/** The selection after a tap on a token: a second piece of the same code stretches it, the selected one ends it. */
export function tapToken(selected: Span | null, token: Token): Span | null {
  const { code, from, to } = token;
  if (selected?.code !== code || token.field !== null) return { code, from, to };
  if (selected.from <= from && to <= selected.to) return null;
  return { code, from: Math.min(selected.from, from), to: Math.max(selected.to, to) };
}

/** The selection with one end moved by a character; it never leaves the code and never gets empty. */
export function moveEnd(
  selected: Span,
  text: string,
  move: { readonly end: 'from' | 'to'; readonly by: 1 | -1 },
): Span {
  const at = selected[move.end] + move.by;
  const moved = { ...selected, [move.end]: at };
  return moved.from < 0 || moved.to > text.length || moved.from >= moved.to ? selected : moved;
}

/** The taps with the selection named; what it lies over, and what had the name, gives way. `null` takes the name off. */
export function nameSpan(
  taps: readonly LabelTap[],
  span: Span,
  field: RuleField | null,
): readonly LabelTap[] {
  const left = taps.filter(
    (tap) => tap.field !== field && (tap.code !== span.code || tap.to <= span.from || span.to <= tap.from),
  );
  return field === null ? left : [...left, { ...span, field }];
}

/** The taps after a code was taken off the label. */
export function dropCode(taps: readonly LabelTap[], code: number): readonly LabelTap[] {
  return taps
    .filter((tap) => tap.code !== code)
    .map((tap) => (tap.code > code ? { ...tap, code: tap.code - 1 } : tap));
}

/** How dates on the label are printed, as the person says. */
export type DateChoices = Readonly<Partial<Record<'dateCode' | 'expires', DateFormat>>>;

/** What is known while a label is being taught. */
export interface Teaching {
  readonly codes: readonly string[];
  readonly taps: readonly LabelTap[];
  readonly name: string;
  readonly dates: DateChoices;
}

/** The rule from what was tapped, or what is still missing. */
export type Taught =
  | {
      readonly is: 'rule';
      readonly rule: LabelRule;
      readonly reading: LabelReading;
      readonly lostExamples: number;
      /** Labels made up from this one, and what the rule reads of them. */
      readonly varied: readonly VariedLabel[];
    }
  | { readonly is: 'missing'; readonly code: TeachProblem['code'] | 'does-not-read' };

/** Makes the rule; a later version of a known one takes over the examples that it still reads. */
export function teach(teaching: Teaching, known: LabelRule | null): Taught {
  const { codes, taps, dates } = teaching;
  const name = teaching.name.trim() || '?';
  const derived = deriveRule(codes, taps, { rule: name, version: (known?.version ?? 0) + 1 });
  if (!derived.ok) return { is: 'missing', code: derived.error.code };
  const dated = withDates(derived.value, dates);
  const { kept, lost } = keepExamples(dated, known);
  const rule: LabelRule = { ...dated, examples: [...(dated.examples ?? []), ...kept].slice(0, 50) };
  const reading = tryRule(rule, [codes])[0]?.reading ?? null;
  if (reading === null || failedExamples(rule).length > 0) return { is: 'missing', code: 'does-not-read' };
  return { is: 'rule', rule, reading, lostExamples: lost, varied: variedLabels(rule, codes, taps) };
}

function withDates(rule: LabelRule, dates: DateChoices): LabelRule {
  const codes = rule.codes.map(({ pieces }) => ({
    pieces: pieces.map((each) => {
      if ('text' in each || (each.field !== 'dateCode' && each.field !== 'expires')) return each;
      const date = dates[each.field];
      return date === undefined ? each : { ...each, date };
    }),
  }));
  return { ...rule, codes };
}

function keepExamples(rule: LabelRule, known: LabelRule | null) {
  const examples = known?.examples ?? [];
  const failed = new Set(failedExamples({ ...rule, examples }).map(({ example }) => example));
  return { kept: examples.filter((_, at) => !failed.has(at)), lost: failed.size };
}

/** A label as the log keeps it, with what was read of it then. */
export interface LogLabel {
  readonly codes: readonly string[];
  readonly part: string | null;
  readonly supplierPart: string | null;
  readonly lot: string | null;
}

/** Gathers different labels out of entries, newest last. All of them: a rule that spoils one label in ten thousand must show. */
export function createGatherer(): {
  readonly take: (entries: readonly Entry[]) => void;
  readonly labels: () => readonly LogLabel[];
} {
  const labels = new Map<string, LogLabel>();
  return {
    take: (entries) => {
      for (const entry of entries) {
        const known = entry.kind === 'reel.verified' ? readFloorEntry(entry) : null;
        if (known?.kind !== 'reel.verified' || known.payload.codes.length === 0) continue;
        const { codes, part, supplierPart, lot } = known.payload;
        const key = codes.join('\u0000');
        labels.delete(key);
        labels.set(key, { codes, part, supplierPart, lot });
      }
    },
    labels: () => [...labels.values()],
  };
}

/** A label of the log that the rule fits. */
export interface Fitted {
  readonly label: LogLabel;
  readonly reading: LabelReading;
  /** True where it was read otherwise before. */
  readonly isOtherwise: boolean;
}

/** Another rule that fits labels which a rule fits too. */
export interface Collision {
  readonly rule: string;
  readonly labels: number;
  /** Of these, labels that the two read differently: such a label is refused until one of the rules gives way. */
  readonly disagreeing: number;
}

/** What a rule does to the labels of the log, and which others it meets there. */
export interface LogTrial {
  readonly labels: number;
  /** Labels that the rule fits. */
  readonly fits: number;
  /** Of these, labels of which it reads what was not read before, and labels that were read otherwise. */
  readonly anew: number;
  readonly otherwise: number;
  /** Some of what it fits, contradictions first, then what it reads anew. */
  readonly shown: readonly Fitted[];
  readonly collisions: readonly Collision[];
}

/** A trial that takes the labels of the log bit by bit, so that a long log does not hold up the page. */
export interface RunningTrial {
  readonly take: (labels: readonly LogLabel[]) => void;
  readonly outcome: () => LogTrial;
}

const MOST_SHOWN = 8;

/** Begins to try a rule beside `others`; those of its own name do not count, as it takes their place. */
export function beginTrial(rule: LabelRule, others: readonly LabelRule[]): RunningTrial {
  const count = { labels: 0, fits: 0, anew: 0, otherwise: 0 };
  const shown = { otherwise: [] as Fitted[], anew: [] as Fitted[], same: [] as Fitted[] };
  const met = others
    .filter((other) => other.rule !== rule.rule)
    .map((other) => ({ other, labels: 0, disagreeing: 0 }));
  function takeOne(label: LogLabel): void {
    const reading = tryRule(rule, [label.codes])[0]?.reading ?? null;
    count.labels += 1;
    if (reading === null) return;
    const group = changeOf(label, reading);
    count.fits += 1;
    if (group !== 'same') count[group] += 1;
    if (shown[group].length < MOST_SHOWN)
      shown[group].push({ label, reading, isOtherwise: group === 'otherwise' });
    for (const each of met) {
      const both = parseLabel(label.codes, { rules: [rule, each.other] });
      if (!both.rules.includes(each.other.rule)) continue;
      each.labels += 1;
      if (both.warnings.some(({ code }) => code === 'conflict')) each.disagreeing += 1;
    }
  }
  return {
    take: (labels) => {
      for (const label of labels) takeOne(label);
    },
    outcome: () => ({
      ...count,
      shown: [...shown.otherwise, ...shown.anew, ...shown.same].slice(0, MOST_SHOWN),
      collisions: met
        .filter(({ labels }) => labels > 0)
        .map(({ other, labels, disagreeing }) => ({ rule: other.rule, labels, disagreeing })),
    }),
  };
}

/** Whether a reading says otherwise what the log has of a label, says more, or neither. */
function changeOf(label: LogLabel, reading: LabelReading): 'otherwise' | 'anew' | 'same' {
  const pairs = [
    [label.part, reading.part],
    [label.supplierPart, reading.supplierPart],
    [label.lot, reading.lot],
  ] as const;
  if (pairs.some(([before, now]) => before !== null && now !== null && before !== now)) return 'otherwise';
  return pairs.some(([before, now]) => before === null && now !== null) ? 'anew' : 'same';
}

/** What a reading states, by field, as texts; the fields that a rule can name. */
export function statedFields(
  reading: LabelReading,
): readonly { readonly field: RuleField; readonly value: string }[] {
  const fields = [
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
  ] as const;
  return fields.flatMap((field) => {
    const value = reading[field];
    if (value === null) return [];
    const week = field === 'dateCode' && reading.made ? ` (${reading.made.year}-W${reading.made.week})` : '';
    return [{ field, value: `${value}${week}` }];
  });
}

/** The rules as one document, as `reelward label --rules FILE` takes it. */
export function rulesDocument(rules: readonly LabelRule[]): string {
  return `${JSON.stringify(rules, null, 2)}\n`;
}
