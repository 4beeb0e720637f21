// Entry kinds of a changeover: checklists, the change from one setup to the next, carts made ready off the line, the first panel,
// the order of jobs that a lead keeps.

import * as z from 'zod/mini';
import { checklistPurposes, checklistStepSchema, openKinds } from './checklist.ts';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, short } from './payload-fields.ts';
import { roles } from './vocabulary.ts';

const minutes = z.number().check(z.minimum(0));
const value = z.nullable(z.union([z.number(), z.string().check(z.maxLength(400_000))]));

/** Who checked the lead: the tablet alone where the server did not answer. */
const checked = z.enum(['tablet', 'server']);

/** Payloads of the kinds named in the head. */
export const changePayloadSchemas = {
  'checklist.template': () =>
    z.strictObject({
      template: id,
      version: z.int().check(z.minimum(1)),
      purpose: z.enum(checklistPurposes),
      title: z.record(z.string(), short),
      steps: z.array(checklistStepSchema),
    }),
  'checklist.opened': () =>
    z.strictObject({
      checklist: id,
      template: id,
      version: z.int().check(z.minimum(1)),
      line: id,
      /** The changeover it belongs to; null where none. */
      changeover: z.nullable(id),
      slot: z.nullable(short),
      /** What differs, for the steps' conditions. */
      facts: z.strictObject({
        sideChanges: z.boolean(),
        stencilChanges: z.boolean(),
        productChanges: z.boolean(),
        programChanges: z.boolean(),
      }),
    }),
  'step.answered': () =>
    z.strictObject({ checklist: id, line: id, step: id, value, unit: z.nullable(short) }),
  'step.skipped': () =>
    z.strictObject({
      checklist: id,
      line: id,
      step: id,
      by: id,
      reason: short,
      checked: z.optional(checked),
      ...signedByPasskey,
    }),
  /** A person signed a step, by badge, PIN or passkey, as somebody of this role. */
  'step.signed': () =>
    z.strictObject({
      checklist: id,
      line: id,
      step: id,
      by: id,
      role: z.enum(roles),
      how: z.enum(['badge', 'pin', 'badge-and-pin', 'passkey']),
      checked,
      ...signedByPasskey,
    }),
  /** Who signed takes the own signature back; until the run is released. */
  'step.unsigned': () => z.strictObject({ checklist: id, line: id, step: id, by: id, checked }),
  'step.reopened': () => z.strictObject({ checklist: id, line: id, step: id, reason: short }),
  'checklist.handed': () => z.strictObject({ checklist: id, line: id, to: id }),
  'checklist.closed': () =>
    z.strictObject({ checklist: id, line: id, done: z.int(), asked: z.int(), note: short }),
  /** From the last good panel of `from` on; `from` null where nothing was built before. */
  'changeover.began': () =>
    z.strictObject({
      changeover: id,
      line: id,
      from: z.nullable(id),
      setup: id,
      product: short,
      lastPanel: z.nullable(z.string().check(z.maxLength(40))),
    }),
  'changeover.released': () =>
    z.strictObject({
      changeover: id,
      line: id,
      by: id,
      reason: short,
      checked: z.optional(checked),
      ...signedByPasskey,
    }),
  /** What was open or wrong when a lead released the run all the same. Beside the release, which older tablets must read. */
  'changeover.left-open': () =>
    z.strictObject({
      changeover: id,
      line: id,
      by: id,
      left: z
        .array(
          z.strictObject({
            what: z.enum(openKinds),
            slot: z.nullable(short),
            part: z.nullable(short),
            reel: z.nullable(id),
            step: z.nullable(id),
          }),
        )
        .check(z.minLength(1)),
      ...signedByPasskey,
    }),
  'changeover.dropped': () => z.strictObject({ changeover: id, line: id, reason: short }),
  /** A feeder made ready off the line for a slot: its reel was verified as for that slot. */
  'cart.filled': () =>
    z.strictObject({
      cart: id,
      line: id,
      setup: id,
      slot: short,
      feeder: z.nullable(id),
      reel: z.nullable(id),
      part: short,
      supplierPart: z.nullable(short),
      lot: z.nullable(short),
      dateCode: z.nullable(short),
      quantity: z.nullable(z.number().check(z.minimum(0))),
      /** The verdict entry that let it on. */
      of: id,
    }),
  'cart.emptied': () => z.strictObject({ cart: id, line: id, slot: short }),
  /** The whole cart on the line: what it carries is loaded with the verdicts it had. */
  'cart.docked': () => z.strictObject({ cart: id, line: id, setup: id, slots: z.array(short) }),
  /** The order of jobs of a line, as a lead kept it; the newest counts. */
  'plan.kept': () =>
    z.strictObject({
      line: id,
      jobs: z
        .array(
          z.strictObject({
            id,
            setup: id,
            panels: z.number().check(z.positive()),
            panelSeconds: z.number().check(z.positive()),
            /** When it must be done, ms since 1970; null where it does not matter. */
            dueMs: z.nullable(z.number()),
            /** Holds its place in the order. */
            isHeld: z.boolean(),
          }),
        )
        .check(z.maxLength(500)),
      /** Minutes of handling that the lead set by hand; absent where they are learnt or usual. */
      byHand: z.strictObject({
        putIn: z.optional(minutes),
        takeOut: z.optional(minutes),
        perChange: z.optional(minutes),
      }),
    }),
  'panel.measured': () =>
    z.strictObject({
      changeover: id,
      line: id,
      setup: id,
      slot: short,
      part: short,
      quantity: z.number(),
      unit: short,
      /** The meter's own uncertainty, in the same unit (95 %). */
      uncertainty: z.number().check(z.minimum(0)),
      least: z.number(),
      most: z.number(),
      verdict: z.enum(['accepted', 'refused', 'held']),
    }),
  /** Somebody looked at a part on the first panel: right part, right way round, or not. */
  'panel.looked': () =>
    z.strictObject({
      changeover: id,
      line: id,
      setup: id,
      slot: short,
      part: short,
      right: z.boolean(),
      note: short,
    }),
} as const;
