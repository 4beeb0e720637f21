// What can be said of a plant beside its lines' rules and its feeders' records, with the checked shape of each payload: its name, working hours, age limits,
// types of feeders and the lengths of tape in them, dates of reels. Kinds of their own, since a tablet of an older version must still read those.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { count, id, orNull, positive, short } from './payload-fields.ts';
import { packageKinds } from './vocabulary.ts';

/**
 * Lengths of tape in mm, null where nobody measured them: from hub and from intake to the pick point, the empty trailer that follows the
 * last part, and the empty leader before the first.
 */
const tapeLengths = {
  hubToPickMm: orNull(positive),
  intakeToPickMm: orNull(positive),
  trailerMm: orNull(count),
  leaderMm: orNull(count),
} as const;

/** A stretch of the wall clock on some days of the week. */
export const weekly = z.strictObject({
  /** ISO weekdays, 1 = Monday. */
  days: z.array(z.int().check(z.minimum(1), z.maximum(7))),
  /** Local wall clock, `HH:MM`; `to` at or before `from` means the next day. */
  from: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/)),
  to: z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/)),
});

const day = z.string().check(z.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/));
/** A moment on the plant's own clock, `YYYY-MM-DDTHH:MM`. */
const wallMoment = z
  .string()
  .check(z.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d$/));
const spell = z.strictObject({ from: wallMoment, to: wallMoment, note: short });

/** Payloads by kind. */
export const plantPayloadSchemas = {
  /** What the plant is called, and the IANA zone that its new lines get. The newest rules. */
  'plant.named': () => z.strictObject({ name: short, zone: short }),
  /** How old parts of a class may be by their date code, months; a class is what its part numbers begin with. Replaces what stood before. */
  'line.age-ruled': () =>
    z.strictObject({
      line: id,
      limits: z.array(z.strictObject({ begins: short, months: z.int().check(z.minimum(1), z.maximum(600)) })),
      ...signedByPasskey,
    }),
  /**
   * When the line works. It stands beside the shifts in the line's rules, which older tablets read: those are the shifts and breaks of all its
   * weeks together. A later change of the rules' own shifts takes its place.
   */
  'line.calendar-ruled': () =>
    z.strictObject({
      line: id,
      /** One week for all, or two that take turns. A break's days are those on which its shift begins, whatever the date of the break. */
      weeks: z
        .array(z.array(z.strictObject({ ...weekly.shape, breaks: z.array(weekly) })))
        .check(z.minLength(1), z.maxLength(2)),
      /** The Monday of a week like the first one; null where there is one for all. */
      firstWeek: orNull(day),
      /** From the first day to the last; no shift begins on them. */
      holidays: z.array(z.strictObject({ from: day, to: day, note: short })),
      /** The line works, whatever shifts and holidays say. */
      overtime: z.array(spell),
      /** The line stands, whatever else says. */
      stops: z.array(spell),
      ...signedByPasskey,
    }),
  /** What feeders of one type have in common; null: nobody said. `pocketMm`: the deepest pocket that passes. */
  'feeder-type.known': () =>
    z.strictObject({
      type: id,
      lanes: z.int().check(z.minimum(1), z.maximum(8)),
      drive: orNull(short),
      pocketMm: orNull(positive),
      /** What it feeds from, where that is no tape. */
      comesIn: z.optional(z.enum(packageKinds)),
      ...tapeLengths,
    }),
  'feeder-type.withdrawn': () => z.strictObject({ type: id, reason: short }),
  /** Which type a feeder is of, and lengths measured on this very one. Beside its record, which older tablets must read. */
  'feeder.typed': () => z.strictObject({ feeder: id, type: orNull(id), ...tapeLengths }),
  /** The line's own trailer and leader, where no feeder and no type says otherwise; its other lengths stand in its rules. */
  'line.tape-ruled': () =>
    z.strictObject({ line: id, trailerMm: orNull(count), leaderMm: orNull(count), ...signedByPasskey }),
  /** The day after which a reel must not be used, as its label says. Beside the entry of the scan, which older tablets must read. */
  'reel.dated': () => z.strictObject({ reel: id, expires: z.string().check(z.regex(/^\d{4}-\d\d-\d\d$/)) }),
} as const;
