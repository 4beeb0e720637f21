// A site rule for labels as the state keeps it.

import type { LabelRule } from '../labels/rules.ts';

/** A site rule for labels, and who approved it when. */
export interface TaughtRule {
  readonly rule: LabelRule;
  readonly by: string | null;
  readonly atMs: number;
}
