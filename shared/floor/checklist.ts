// What a checklist asks: its steps as data. A template is a version that never changes once used; an engineer who edits it makes
// the next version, so that what was ticked months ago can still be read as it was asked.

import * as z from 'zod/mini';
import { type Role, roles } from './vocabulary.ts';

/** What a checklist is for. */
export const checklistPurposes = ['changeover', 'splice', 'exchange', 'shift-start', 'other'] as const;
export type ChecklistPurpose = (typeof checklistPurposes)[number];

/** How a step is answered. */
export const stepKinds = ['tick', 'measure', 'scan', 'choice', 'photo', 'note', 'sign', 'known'] as const;
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

/**
 * What a `scan` step asks for. `feeder`, `slot`, `reel`: one of this plant. The others are codes of the site's own, of which only that
 * they are nothing else can be told.
 */
export const scanWants = ['stencil', 'paste', 'program', 'feeder', 'slot', 'reel', 'other'] as const;
export type ScanWant = (typeof scanWants)[number];

/** What a `known` step asks, which nobody ticks: no feeder left to handle, every slot with its verified reel, the first panel right. */
export const knownFacts = ['moves', 'slots', 'first-panel'] as const;
export type KnownFact = (typeof knownFacts)[number];

/** What can still be open or wrong when a run is released. */
export const openKinds = [
  'misfit',
  'move',
  'slot-empty',
  'slot-other',
  'slot-held',
  'measured-wrong',
  'looked-wrong',
  'cannot-tell',
  'unchecked',
  'step',
  'no-checklist',
] as const;
export type OpenKind = (typeof openKinds)[number];

const id = z.string().check(z.minLength(1), z.maxLength(64));
const text = z.string().check(z.maxLength(500));

/** One step as a template keeps it. `text` and `caution` by language code; any one language is enough. */
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
  /** For `sign`: the least role of each of them; absent: people of any role. */
  roles: z.optional(z.array(z.enum(roles)).check(z.minLength(1), z.maxLength(3))),
  /** For `scan`: what kind of code is taken; absent: `other`. */
  wants: z.optional(z.enum(scanWants)),
  /** For `known`: what must be so. */
  knows: z.optional(z.enum(knownFacts)),
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

/** One signature under a step, by a person who was made sure of by badge or PIN, on the server or by the tablet alone. */
export interface Signature {
  readonly person: string;
  /** The role signed in. */
  readonly role: Role;
  readonly how: 'badge' | 'pin' | 'badge-and-pin' | 'passkey';
  readonly checked: 'tablet' | 'server';
  readonly atMs: number;
}

/** The roles that sign a step, in the order in which it names them. */
export function signingRoles(step: ChecklistStep): readonly Role[] {
  return step.roles ?? Array.from({ length: step.signatures }, () => 'operator' as const);
}
