// What is scanned, counted and put away of reels, kind by kind, with the checked shape of each payload.

import * as z from 'zod/mini';
import type { Json } from '../log/entry.ts';
import { count, id, moment, orNull, positive, short, text, whole } from './payload-fields.ts';
import { airs, countBases, packageKinds, sources, verdicts, verifyActs } from './vocabulary.ts';

/** One reason of a verdict: a code and its facts. */
export interface VerdictReason {
  readonly code: string;
  readonly [fact: string]: Json;
}

/** The schema of a reason. */
export const reasonSchema = z.catchall(
  z.object({ code: id }),
  z.json(),
) as unknown as z.ZodMiniType<VerdictReason>; // same values, read only

/** What one scan of a reel's label said, as a verdict entry keeps it. */
export const reelFacts = {
  reel: orNull(id),
  part: orNull(short),
  supplierPart: orNull(short),
  quantity: orNull(count),
  lot: orNull(short),
  dateCode: orNull(short),
} as const;
/** Payloads by kind. */
export const reelPayloadSchemas = {
  'reel.verified': () =>
    z.strictObject({
      act: z.enum(verifyActs),
      line: id,
      setup: id,
      run: orNull(id),
      slot: orNull(short),
      feeder: orNull(id),
      ...reelFacts,
      /** Every code that was read off the label, as scanned. */
      codes: z.array(text),
      verdict: z.enum(verdicts),
      reasons: z.array(reasonSchema),
      panels: whole,
      via: z.enum(sources),
      /** How the quantity is known. */
      basis: orNull(z.enum(countBases)),
      /** Parts of the old tape cut away at a splice. */
      cut: z.optional(count),
      /** Where it was held at a cart, for this slot: clearing it puts it on the cart and not on the line. */
      cart: z.optional(id),
      /** What it comes in, where that is known not to be tape. */
      comesIn: z.optional(z.enum(packageKinds)),
      /** At an exchange: the entry that had put on what stood there as whoever exchanged it saw it; null where they saw nothing. */
      replaces: z.optional(orNull(short)),
      /** The feeder on which it was made ready for another slot or away from the line: it was not verified for a slot. */
      readying: z.optional(z.literal(true)),
    }),
  'reel.unloaded': () =>
    z.strictObject({
      line: id,
      run: orNull(id),
      slot: short,
      feeder: orNull(id),
      reel: orNull(id),
      part: orNull(short),
      lot: orNull(short),
      /** Parts left on it, where somebody counted. */
      quantity: orNull(count),
      /** One deviation of `quantity`, parts; absent where it was counted for certain. */
      sd: z.optional(count),
      basis: orNull(z.enum(countBases)),
      panels: whole,
      via: z.enum(sources),
      /** Where it went off with the bank that this cart replaced: many at once, so it tells nothing of one handling. */
      cart: z.optional(id),
      /** What lay loose in the feeder was emptied out with it. Absent: some of it may be in there still. */
      purged: z.optional(z.literal(true)),
    }),
  'reel.counted': () =>
    z.strictObject({
      line: orNull(id),
      slot: orNull(short),
      reel: orNull(id),
      part: orNull(short),
      lot: orNull(short),
      quantity: count,
      sd: count,
      basis: z.enum(countBases),
      panels: whole,
    }),
  /** A reel was put away: where it lies now, with what its label says, so that a reel never seen before is known from then on. */
  'reel.put': () => z.strictObject({ ...reelFacts, reel: id, place: id, via: z.enum(sources) }),
  /** Since when a moisture-sensitive reel lies open, in dry storage or in the oven; the air there, where it is known. */
  'reel.aired': () =>
    z.strictObject({
      ...reelFacts,
      reel: id,
      air: z.enum(airs),
      from: moment,
      celsius: orNull(z.number().check(z.minimum(-60), z.maximum(200))),
      humidity: orNull(z.number().check(z.minimum(0), z.maximum(100))),
      /** Moisture level that the label states. */
      msl: z.optional(short),
      via: z.enum(sources),
    }),
  /** A full reel of a part, measured or weighed once: reels of the part are counted against it from then on. */
  'reel.calibrated': () =>
    z.strictObject({
      part: short,
      parts: positive,
      /** Outer and hub diameter of the wound tape (not the flange); both or neither. */
      outerMm: orNull(positive),
      hubMm: orNull(positive),
      /** Mass of the full reel and of an empty one; both or neither. */
      massG: orNull(positive),
      emptyG: orNull(count),
    }),
} as const;
