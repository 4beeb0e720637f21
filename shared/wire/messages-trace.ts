// What is asked of the trace, and what it answers.

import * as z from 'zod/mini';

const asked = z.optional(z.string().check(z.minLength(1), z.maxLength(200)));
/** `POST /api/trace`: which panels carry some material (every field given must fit), or what one panel carries. */
export const traceSchema = z.object({
  lot: asked,
  reel: asked,
  part: asked,
  feeder: asked,
  slot: asked,
  who: asked,
  run: asked,
  /** Stretches that began within these moments, ISO 8601 with offset. */
  from: z.optional(z.iso.datetime({ offset: true })),
  to: z.optional(z.iso.datetime({ offset: true })),
  /** A panel's code, or its number within `run`; then only `run` goes with it. */
  panel: asked,
});

const panels = z.nullable(z.object({ first: z.int(), last: z.int() }));
const known = z.nullable(z.string());
/** What an answer rests on that nobody has entered; absent from an older server. */
const guessed = z.optional(z.array(z.enum(['in-line', 'label', 'boards'])));
const mixed = z.optional(z.boolean()); // lots poured over each other; absent from an older server too
const madeOf = z.optional(z.array(z.string())); // other reels whose parts are in it; absent where there are none
const panelRun = {
  run: z.string(),
  line: z.string(),
  product: z.string(),
  side: z.optional(z.nullable(z.enum(['top', 'bottom']))),
  panel: z.int(),
  serial: known,
  guessed,
  slots: z.array(
    z.object({
      slot: z.string(),
      part: z.string(),
      lots: z.array(
        z.object({ lot: known, reel: known, supplierPart: known, madeOf, sure: z.boolean(), mixed }),
      ),
    }),
  ),
} as const;
/** The answer to a trace: places for material, a panel for a panel. */
export const tracedSchema = z.object({
  places: z.array(
    z.object({
      mixed,
      line: z.string(),
      run: z.string(),
      product: z.string(),
      slot: z.string(),
      feeder: known,
      reel: known,
      part: z.string(),
      supplierPart: known,
      lot: known,
      dateCode: known,
      madeOf,
      sure: panels,
      possible: panels,
      guessed,
      serials: z.array(z.string()),
      goesOn: z.boolean(),
      entry: z.string(),
      who: known,
      at: z.string(),
    }),
  ),
  /** What the reel asked for is made of and went into; absent where it was never cut nor joined. */
  parts: z.optional(z.object({ madeOf: z.array(z.string()), wentInto: z.array(z.string()) })),
  /** A panel as it was built last. `runs`: every time that it was built, oldest first; absent from an older server. */
  panel: z.nullable(z.object({ ...panelRun, runs: z.optional(z.array(z.object(panelRun))) })),
  /** True where there are more places than are answered. */
  more: z.boolean(),
  /** Entries of the log that are not in the answer yet: more than none only while the server makes its index. */
  behind: z.int().check(z.minimum(0)),
});
export type Traced = z.infer<typeof tracedSchema>;
