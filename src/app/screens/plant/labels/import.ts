// What a file of rules would change here: which rules are new, which newer, which stay as they are and why.
// Method: the file is checked as a whole by the rules' own schema; then each rule is held against the one of its name by
// version. Refused: taking the file's word for the same version, which would change a rule that was approved in silence.

import { type LabelRule, labelRuleSchema, labelRulesSchema } from '../../../../../shared/labels/rules.ts';
import { failedExamples } from '../../../../../shared/labels/teach.ts';

/** How a rule of the file stands to the site's. `differs`: the same version with another content. */
export type ImportStatus = 'new' | 'newer' | 'same' | 'older' | 'differs' | 'fails';

export interface ImportedRule {
  readonly rule: LabelRule;
  readonly status: ImportStatus;
  /** Version here; null = the site has no rule of this name. */
  readonly knownVersion: number | null;
}

/** What is wrong with the file. `at`: the way to the place, `rule`: the name or number of the rule that it is in. */
export type ImportProblem =
  | { readonly code: 'not-json' }
  | { readonly code: 'no-list' }
  | { readonly code: 'empty' }
  | { readonly code: 'not-a-rule'; readonly rule: string; readonly at: string }
  | { readonly code: 'twice'; readonly rule: string };

export type RulesImport =
  | { readonly ok: true; readonly rules: readonly ImportedRule[] }
  | { readonly ok: false; readonly problem: ImportProblem };

function failure(problem: ImportProblem): RulesImport {
  return { ok: false, problem };
}

/** Reads a file of rules as rulesDocument() writes it; `known` are the site's rules. Takes all or nothing. */
export function readRulesFile(text: string, known: readonly LabelRule[]): RulesImport {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return failure({ code: 'not-json' });
  }
  if (!Array.isArray(json)) return failure({ code: 'no-list' });
  if (json.length === 0) return failure({ code: 'empty' });
  const checked = labelRulesSchema.safeParse(json);
  if (!checked.success) {
    const [place, ...way] = checked.error.issues[0]?.path ?? [];
    return failure({ code: 'not-a-rule', rule: nameAt(json, Number(place ?? 0)), at: way.join('.') });
  }
  const names = new Set<string>();
  for (const { rule } of checked.data) {
    if (names.has(rule)) return failure({ code: 'twice', rule });
    names.add(rule);
  }
  return { ok: true, rules: checked.data.map((rule) => compare(rule, known)) };
}

function nameAt(list: readonly unknown[], place: number): string {
  const there = list[place];
  const name = typeof there === 'object' && there !== null && 'rule' in there ? there.rule : null;
  return typeof name === 'string' && name !== '' ? name : String(place + 1);
}

function compare(rule: LabelRule, known: readonly LabelRule[]): ImportedRule {
  const there = known.find((each) => each.rule === rule.rule);
  const knownVersion = there?.version ?? null;
  if (there !== undefined && isEqual(rule, there)) return { rule, status: 'same', knownVersion };
  if (there !== undefined && rule.version < there.version) return { rule, status: 'older', knownVersion };
  if (there !== undefined && rule.version === there.version) return { rule, status: 'differs', knownVersion };
  if (failedExamples(rule).length > 0) return { rule, status: 'fails', knownVersion };
  return { rule, status: there === undefined ? 'new' : 'newer', knownVersion };
}

/** The schema gives both their facts in one order. */
function isEqual(one: LabelRule, other: LabelRule): boolean {
  return JSON.stringify(labelRuleSchema.parse(one)) === JSON.stringify(labelRuleSchema.parse(other));
}

/** The rules that would be taken in. */
export function rulesToTake(rules: readonly ImportedRule[]): readonly LabelRule[] {
  return rules.filter(({ status }) => status === 'new' || status === 'newer').map(({ rule }) => rule);
}
