// What parts come in, and feeders that go on and off while a job runs, with the checked shape of each payload.

import * as z from 'zod/mini';
import { count, id, orNull, short, whole } from './payload-fields.ts';
import { corners, packageKinds, sources } from './vocabulary.ts';

const upTo = (most: number) => z.int().check(z.minimum(1), z.maximum(most));

/** How a stack of trays is laid out and emptied, as it lies in the feeder and seen from above. */
const traySchema = z.strictObject({
  rows: upTo(100),
  columns: upTo(100),
  trays: upTo(100),
  /** The corner of the pocket that is emptied first. */
  first: z.enum(corners),
  /** Whether a whole row is emptied before the next, or a whole column. */
  along: z.enum(['rows', 'columns']),
  /** The corner to which pin 1 of the parts points; null where nobody said. */
  pin1: orNull(z.enum(corners)),
});

/** Payloads by kind. */
export const packPayloadSchemas = {
  /** What a package is: counts are told beside it. `reel` as the log names it, which may be `~` and an entry. */
  'reel.packed': () =>
    z.strictObject({
      reel: short,
      part: orNull(short),
      comesIn: z.enum(packageKinds),
      tray: z.optional(traySchema),
      tube: z.optional(z.strictObject({ tubes: upTo(1000), parts: upTo(10_000) })),
      via: z.enum(sources),
    }),
  /** What lay loose in a feeder is out of it: nothing that was in it before can be on a panel built later. `feeder` null: it has no name. */
  'bulk.purged': () =>
    z.strictObject({
      line: id,
      slot: short,
      feeder: orNull(id),
      run: orNull(id),
      panels: whole,
      via: z.enum(sources),
    }),
  /** A reel was verified onto a feeder away from the line, for this slot: `of` is the verdict. */
  'feeder.readied': () =>
    z.strictObject({
      feeder: id,
      line: id,
      setup: id,
      slot: short,
      reel: orNull(id),
      part: short,
      supplierPart: orNull(short),
      lot: orNull(short),
      dateCode: orNull(short),
      quantity: orNull(count),
      of: short,
    }),
  /** What was ready on a feeder is off it again. */
  'feeder.stripped': () => z.strictObject({ feeder: id, reason: short }),
  /** A feeder with what is on it went from one slot to another. */
  'feeder.moved': () =>
    z.strictObject({
      line: id,
      run: orNull(id),
      feeder: orNull(id),
      from: short,
      to: short,
      reel: orNull(id),
      part: orNull(short),
      panels: whole,
      via: z.enum(sources),
    }),
  /** A feeder must not be used until it was seen to. */
  'feeder.set-aside': () => z.strictObject({ feeder: id, reason: short }),
  /** A feeder was seen to: its placements count from here, and it may be used again. */
  'feeder.cared': () => z.strictObject({ feeder: id, note: short }),
  /** After how many placements a feeder is due for care, by its type; `type` null: every other. `placements` null: no such figure. */
  'feeder.care-ruled': () => z.strictObject({ type: orNull(id), placements: orNull(upTo(1_000_000_000)) }),
} as const;
