// Which parts are measured before they feed, and what was measured, with the checked shape of each payload. Kinds of their own beside the line's
// rules and the verdict, since a tablet of an older version must still read those.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { count, id, orNull, short } from './payload-fields.ts';
import { sources, verdicts, verifyActs } from './vocabulary.ts';

/** Payloads by kind. */
export const valuePayloadSchemas = {
  /**
   * Whose value is measured before a reel feeds on the line. A class is what its part numbers begin with; empty: every part whose value is
   * stated. Replaces what stood before; no class, no check.
   */
  'line.values-ruled': () =>
    z.strictObject({
      line: id,
      begins: z.array(short),
      /** The meter's uncertainty: percent of the reading, and digits of the last place that it shows. */
      percent: z.number().check(z.minimum(0), z.maximum(100)),
      digits: z.int().check(z.minimum(0), z.maximum(1000)),
      /** Guard band kept from each limit, percent of the uncertainty. */
      guard: z.number().check(z.minimum(0), z.maximum(500)),
      ...signedByPasskey,
    }),
  /** One part off a reel under the meter, before it feeds. All figures in `unit`. */
  'reel.measured': () =>
    z.strictObject({
      act: z.enum(verifyActs),
      line: id,
      setup: id,
      slot: id,
      reel: orNull(id),
      part: id,
      lot: orNull(short),
      /** The value wanted, and the limits that its tolerance leaves. */
      nominal: z.number(),
      unit: short,
      least: z.number(),
      most: z.number(),
      /** What the meter showed. */
      quantity: z.number(),
      uncertainty: count,
      /** The band kept from each limit. */
      guard: count,
      verdict: z.enum(verdicts),
      via: z.enum(sources),
    }),
} as const;
