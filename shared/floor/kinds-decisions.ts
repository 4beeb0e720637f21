// What a lead decides about reels, made sure of by badge and PIN or by passkey, with the checked shape of each payload.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, short } from './payload-fields.ts';

/** Who decided, and where the PIN was checked; or the passkey that signed it. */
const decided = { by: id, checked: z.enum(['tablet', 'server']), ...signedByPasskey } as const;

/** Payloads by kind. */
export const decisionPayloadSchemas = {
  'hold.cleared': () =>
    z.strictObject({
      of: id,
      line: id,
      slot: z.nullable(short),
      reason: short,
      ...decided,
    }),
  'hold.declined': () =>
    z.strictObject({
      of: id,
      line: id,
      slot: z.nullable(short),
      by: z.nullable(id),
      reason: short,
      ...signedByPasskey,
    }),
  /** A lead lets a blocked reel run on where it stands, for a reason; `of`: the entry that put it there. The block itself stays. */
  'blocked.let-run': () =>
    z.strictObject({
      block: id,
      line: id,
      slot: short,
      of: id,
      reason: short,
      ...decided,
    }),
  /**
   * A lead lets one bake count though the table asks for more; `of`: the entry that put the reel into the oven. It holds for the hours that
   * the lead saw: a bake that turns out to have been shorter is not the one that was approved.
   */
  'bake.approved': () =>
    z.strictObject({
      reel: id,
      /** The line where it was decided, null off any line. */
      line: z.nullable(id),
      of: id,
      hours: z.number().check(z.gt(0)),
      celsius: z.nullable(z.number().check(z.minimum(-60), z.maximum(200))),
      reason: short,
      ...decided,
    }),
} as const;
