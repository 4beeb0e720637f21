// What a checklist asks: its steps as data. A template is a version that never changes once used; an engineer who edits it makes
// the next version, so that what was ticked months ago can still be read as it was asked.

import * as z from 'zod/mini';

/** What a checklist is for. */
export const checklistPurposes = ['changeover', 'splice', 'shift-start', 'other'] as const;
export type ChecklistPurpose = (typeof checklistPurposes)[number];

/** How a step is answered. */
export const stepKinds = ['tick', 'measure', 'scan', 'choice', 'photo', 'note', 'sign'] as const;
export type StepKind = (typeof stepKinds)[number];

/**
 * When a step can be done. `running` = while the line still builds the old product (external setup, in the terms of SMED);
 * `stopped` = only while it stands (internal setup).
 */
export const stepTimes = ['running', 'stopped'] as const;
export type StepTime = (typeof stepTimes)[number];

/** What must have changed for a step to be asked; `always` asks every time. */
export const stepConditions = [
  'always',
  'side-changes',
  'stencil-changes',
  'product-changes',
  'program-changes',
] as const;
export type StepCondition = (typeof stepConditions)[number];

const id = z.string().check(z.minLength(1), z.maxLength(64));
const text = z.string().check(z.maxLength(500));

/** One step as a template keeps it. `text` and `caution` by language code; a missing language falls back to English. */
export const checklistStepSchema = z.strictObject({
  step: id,
  /** Heading under which it stands, by language. */
  group: z.record(z.string(), text),
  text: z.record(z.string(), text),
  caution: z.nullable(z.record(z.string(), text)),
  kind: z.enum(stepKinds),
  time: z.enum(stepTimes),
  condition: z.enum(stepConditions),
  mandatory: z.boolean(),
  /** For `measure`: limits both included, null where open, and the unit as shown. */
  least: z.nullable(z.number()),
  most: z.nullable(z.number()),
  unit: z.nullable(z.string().check(z.maxLength(20))),
  /** For `scan`: the text that must come, null where any text is kept. */
  expects: z.nullable(text),
  /** For `choice`: what can be chosen, and which of it is right (empty: all). */
  options: z.array(text),
  right: z.array(text),
  /** For `sign`: how many different people. */
  signatures: z.int().check(z.minimum(1), z.maximum(3)),
});
export type ChecklistStep = Readonly<z.output<typeof checklistStepSchema>>;

/** A checklist's template in one version. */
export interface ChecklistTemplate {
  readonly template: string;
  readonly version: number;
  readonly purpose: ChecklistPurpose;
  readonly title: Readonly<Record<string, string>>;
  readonly steps: readonly ChecklistStep[];
}
