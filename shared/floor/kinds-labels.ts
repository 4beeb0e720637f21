// What can happen to a plant's own label rules, with the checked shape of each payload.

import * as z from 'zod/mini';
import { labelRuleSchema } from '../labels/rules.ts';
import { id, short } from './payload-fields.ts';

/** Payloads by kind. */
export const labelPayloadSchemas = {
  /** A site rule for labels that follow no standard, with the labels that it was made from. A later version takes its place. */
  'label.taught': () =>
    z.strictObject({
      rule: id,
      version: z.int().check(z.minimum(1)),
      definition: labelRuleSchema,
      /** The lead who approved it, null where the plant has no people yet. */
      by: z.nullable(id),
    }),
  'label.withdrawn': () => z.strictObject({ rule: id, reason: short, by: z.nullable(id) }),
} as const;
