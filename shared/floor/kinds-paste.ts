// Solder paste, the material of every joint: what the plant's sheet says of it, and what becomes of each jar; with the checked shape of each payload.

import * as z from 'zod/mini';
import { count, id, moment, orNull, short } from './payload-fields.ts';
import { sources } from './vocabulary.ts';

/** What is told of a jar: it came out of the cold or went back, was opened, went onto a stencil or came off, is used up. */
export const jarSays = ['out', 'cold', 'opened', 'on', 'off', 'empty'] as const;
export type JarSays = (typeof jarSays)[number];

const hours = orNull(count);

/** Payloads by kind. */
export const pastePayloadSchemas = {
  /** The plant's sheet of one paste, hours; null = no limit. The newest entry about a paste stands in for the older one. */
  'paste.ruled': () =>
    z.strictObject({
      paste: id,
      /** Least hours out of the cold before it is opened. */
      thawHours: hours,
      /** Most hours out of the cold in all, while it is closed. */
      outHours: hours,
      /** Most hours from the opening on. */
      openHours: hours,
      /** Most hours on a stencil in all. */
      stencilHours: hours,
      source: short,
    }),
  /** A jar came in, in the cold. `expires`: `YYYY-MM-DD`. */
  'jar.known': () =>
    z.strictObject({ jar: id, paste: id, lot: orNull(short), expires: orNull(short), via: z.enum(sources) }),
  /** `line`: whose stencil, for `on` and `off`; null otherwise. `onTop`, for `on`: the paste that was on the stencil is there still. */
  'jar.told': () =>
    z.strictObject({
      jar: id,
      says: z.enum(jarSays),
      from: moment,
      line: orNull(id),
      lot: orNull(short),
      via: z.enum(sources),
      onTop: z.optional(z.literal(true)),
    }),
  /** A jar was kept off a stencil, and why: codes. */
  'jar.held': () =>
    z.strictObject({
      jar: id,
      line: orNull(id),
      lot: orNull(short),
      reasons: z.array(short).check(z.minLength(1)),
    }),
  /** A lead let it onto the stencil all the same. */
  'jar.let': () =>
    z.strictObject({
      jar: id,
      line: orNull(id),
      lot: orNull(short),
      reasons: z.array(short).check(z.minLength(1)),
      reason: short,
      by: id,
    }),
} as const;
