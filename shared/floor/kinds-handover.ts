// One shift hands a line over to the next: what the lead going off leaves open, and the lead coming on who takes it; with the checked shape of
// each payload. What is open is worked out from the floor as it is signed, never typed; the note alone is.
// Method: two entries, one a signature, so that either lead may sign on another tablet, or without a network.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { count, id, orNull, short, text, whole } from './payload-fields.ts';

/** What can be open at a handover, in the order in which it is listed: what is cut off where there is too much is the last. */
export const handedKinds = [
  'hold',
  'blocked',
  'panels-held',
  'conflict',
  'station-silent',
  'changeover',
  'checklist',
  'splice',
  'floor-life',
  'count-unknown',
] as const;
export type HandedKind = (typeof handedKinds)[number];

/** Most things that one entry lists. */
export const mostHanded = 60;
/** Most characters of the note. */
export const mostHandedNote = 500;

/** How a tablet stood to its server; `other-window`: another window of the tablet talks to it, so that this one cannot say. */
export const handedSyncs = ['in-step', 'behind', 'alone', 'other-window'] as const;
export type HandedSync = (typeof handedSyncs)[number];

/** A moment, ms since 1970. */
const ms = z.number().check(z.minimum(0));

const itemSchema = z.strictObject({
  what: z.enum(handedKinds),
  /** Its name in the log: the entry of a hold or of the tape to splice, a block, containment, conflict, changeover, checklist, station. A conflict's is made of two entries' names. */
  of: text,
  slot: orNull(short),
  reel: orNull(short),
  part: orNull(short),
  /** Since when it is open. */
  sinceMs: orNull(ms),
  /** When it is due or ends. */
  dueMs: orNull(ms),
  /** Panels held, steps answered. */
  count: orNull(count),
  /** The code of a hold's first reason, a block's reason, a product, a station's name; `exchange` or `refill` where that is due and no splice. */
  why: orNull(short),
});

/** One thing that was open. */
export type HandedItem = Readonly<z.output<typeof itemSchema>>;

/** What the list rests on. */
const knownSchema = z.strictObject({
  /** When it was worked out, by the tablet's clock. */
  atMs: ms,
  sync: z.enum(handedSyncs),
  /** When the server last answered this tablet; null where it never did, or nobody here knows. */
  heardMs: orNull(ms),
  /** Entries that the server did not have yet. */
  toSend: whole,
  /** Entries of the plant's log that this tablet did not have yet. */
  missing: whole,
  /** Splices are listed up to here; null where nothing was being built, so that none could be foretold. */
  spliceMs: orNull(ms),
  /** Ends of floor life are listed up to here. */
  lifeMs: ms,
});

/** What a list rests on. */
export type HandedKnown = Readonly<z.output<typeof knownSchema>>;

const list = z.array(itemSchema).check(z.maxLength(mostHanded));
const signed = { by: id, checked: z.enum(['tablet', 'server']), ...signedByPasskey } as const;

/** Payloads by kind. */
export const handoverPayloadSchemas = {
  /** The lead going off signs. `more`: open things beyond those in `left`. `panels`: of the run, so far. */
  'shift.handed': () =>
    z.strictObject({
      handover: id,
      line: id,
      run: orNull(id),
      panels: orNull(whole),
      note: z.string().check(z.maxLength(mostHandedNote)),
      left: list,
      more: whole,
      known: knownSchema,
      ...signed,
    }),
  /** The lead coming on signs. `came`: what is open now and was not then, as far as that list knew; `more`: beyond those. */
  'shift.taken': () =>
    z.strictObject({ handover: id, line: id, came: list, more: whole, known: knownSchema, ...signed }),
} as const;
