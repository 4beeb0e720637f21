// Entry kinds of stations: places on a line where a device, not a person, tells how many panels have passed, and who counts on a line.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, orNull, short, whole } from './payload-fields.ts';
import {
  airedSays,
  interlockResults,
  interlockWhys,
  sides,
  stationPlaces,
  unsureResults,
} from './vocabulary.ts';

const station = { station: id, line: id } as const;
/** A machine's own numbers of parts; it may tell fractions. */
const parts = z.number().check(z.minimum(0), z.maximum(1e10));

/** Boards skipped on one panel: how many, or which of them, from 1. */
export const skippedSchema = z.union([whole, z.array(z.int().check(z.minimum(1))).check(z.maxLength(1000))]);

/** Payloads of the kinds named in the head. */
export const stationPayloadSchemas = {
  /** A link says which station it speaks for: where it stands, by what means it hears, which version it is, where devices send to. */
  'station.known': () =>
    z.strictObject({
      ...station,
      machine: orNull(id),
      at: z.enum(stationPlaces),
      means: short,
      version: short,
      address: short,
      /** Its link may answer a machine that asks about materials, once an engineer turns that on. */
      answers: z.optional(z.literal(true)),
    }),
  /**
   * A device's own running total since it was switched on (`boot` names that), also told while it does not rise. `serial`: the code of the panel
   * that made it rise; `skipped`: boards skipped on that panel. `once`: the total is the link's own reckoning of panels that a machine named one
   * by one, so a code that the run has counted already is no further panel.
   */
  'station.counted': () =>
    z.strictObject({
      ...station,
      boot: id,
      total: whole,
      serial: orNull(short),
      skipped: orNull(skippedSchema),
      once: z.optional(z.literal(true)),
    }),
  /** Nothing is heard of a device any more; `told` by its link, or by a tablet that heard nothing of either. */
  'station.silent': () =>
    z.strictObject({
      ...station,
      since: z.string().check(z.maxLength(40)),
      told: z.enum(['link', 'tablet']),
    }),
  /** What the device says of itself, by the numbers of SEMI E58: thousands are classes of states. `late`: seconds since when it is so; absent: none. */
  'station.state': () => z.strictObject({ ...station, code: z.int(), late: z.optional(whole) }),
  /** The recipe that a machine has activated, as it calls it. */
  'station.recipe': () =>
    z.strictObject({ ...station, recipe: short.check(z.minLength(1)), revision: orNull(short) }),
  /** An engineer says once which side of which product a machine's recipe builds; a newer word about it stands in for an older one. */
  'recipe.known': () =>
    z.strictObject({ line: id, recipe: short.check(z.minLength(1)), product: short, side: z.enum(sides) }),
  /** Two devices send under one name. What `boot` counted is taken off again and no more of it counts; `kept` counts on. */
  'station.doubled': () => z.strictObject({ ...station, boot: id, kept: id }),
  /** What a link did not take, told once; `times`: how often so far. */
  'station.noticed': () => z.strictObject({ ...station, what: id, said: short, times: whole }),
  /**
   * A machine saw the joint of two tapes pass: `depleted` is used up and `active` begins with what it had (`quantity`, parts, as the machine has it).
   * Reels, slot and feeder as the machine names them, null where it does not. `grey`: parts from now on of which it cannot tell to which tape
   * they belong. `late`: seconds from then to this entry.
   */
  'tape.changed': () =>
    z.strictObject({
      ...station,
      slot: orNull(id),
      depleted: orNull(id),
      active: orNull(id),
      feeder: orNull(id),
      quantity: orNull(parts),
      grey: parts,
      late: whole,
    }),
  /** A machine says that it has no parts left at a place. Names and `late` as above. */
  'tape.empty': () =>
    z.strictObject({
      ...station,
      slot: orNull(id),
      reel: orNull(id),
      feeder: orNull(id),
      late: whole,
    }),
  /** Parts that a machine placed and spoiled since it last said so, place by place. Names as above. */
  'parts.used': () =>
    z.strictObject({
      ...station,
      uses: z
        .array(
          z.strictObject({
            slot: orNull(id),
            reel: orNull(id),
            feeder: orNull(id),
            used: parts,
            spoiled: parts,
          }),
        )
        .check(z.maxLength(200)),
    }),
  /**
   * Faults of picking that a machine told since it last said so, place by place: `times` each. `late`: seconds from the
   * first of them to this entry. Names as above. They are no lost parts: how many those are, `parts.used` and counts say.
   */
  'parts.missed': () =>
    z.strictObject({
      ...station,
      late: whole,
      misses: z
        .array(
          z.strictObject({
            slot: orNull(id),
            reel: orNull(id),
            feeder: orNull(id),
            times: z.int().check(z.minimum(1)),
          }),
        )
        .check(z.minLength(1), z.maxLength(200)),
    }),
  /**
   * A machine says of moisture-sensitive reels that their bags were opened, that they were put into dry storage or taken out of it, that their
   * time is over, or that they were made fit again. `late`: seconds from then to this entry.
   */
  'parts.aired': () =>
    z.strictObject({
      ...station,
      says: z.enum(airedSays),
      late: whole,
      reels: z.array(id).check(z.minLength(1), z.maxLength(200)),
    }),
  /**
   * What a machine believes to be loaded, in pages of one `report`; a report's name follows from what it says. `places` null: it says so again.
   * `whole`: all that it has was asked for and could be read, so that a place not named is empty. Names as above; a row with neither reel nor
   * part is a place that the machine calls empty. It changes no slot.
   */
  'machine.loaded': () =>
    z.strictObject({
      ...station,
      report: id,
      page: whole,
      pages: z.int().check(z.minimum(1), z.maximum(20)),
      whole: z.boolean(),
      places: orNull(
        z
          .array(z.strictObject({ slot: id, reel: orNull(id), part: orNull(id), feeder: orNull(id) }))
          .check(z.maxLength(200)),
      ),
    }),
  /** An engineer lets a station's link answer its machine, or no more; `unsure`: what is said where it cannot know. */
  'station.interlock-ruled': () =>
    z.strictObject({ ...station, on: z.boolean(), unsure: z.enum(unsureResults), ...signedByPasskey }),
  /** What a link answered when a machine asked whether materials are right where they are: each with the result as sent, and why. */
  'station.answered': () =>
    z.strictObject({
      ...station,
      results: z
        .array(
          z.strictObject({
            slot: orNull(id),
            reel: orNull(id),
            part: orNull(id),
            result: z.enum(interlockResults),
            why: z.enum(interlockWhys),
          }),
        )
        .check(z.maxLength(200)),
    }),
  /** A link gave answers that the log had already, since it last told of answers: to so many questions, for some of their places or all. */
  'station.answered-again': () => z.strictObject({ ...station, times: z.int().check(z.minimum(1)) }),
  /** A lead is done with a finding: `finding` is the machine's entry that it came of. Both sides stay in the log. */
  'station.finding-cleared': () =>
    z.strictObject({
      ...station,
      finding: short.check(z.minLength(1)),
      reason: short.check(z.minLength(1)),
      by: id,
      checked: z.enum(['tablet', 'server']),
    }),
  /** What people call a station; its link goes on under its own name. */
  'station.named': () => z.strictObject({ ...station, name: short.check(z.minLength(1), z.maxLength(64)) }),
  /**
   * A setup that a machine asks for, in pages of one `report`: slot by slot what it wants. No placements a panel are in it. A proposal only: an
   * engineer takes it in as any sheet.
   */
  'setup.offered': () =>
    z.strictObject({
      ...station,
      report: id,
      page: whole,
      pages: z.int().check(z.minimum(1), z.maximum(20)),
      recipe: orNull(short),
      revision: orNull(short),
      wants: z
        .array(
          z.strictObject({
            slot: id,
            part: id,
            alternates: z.array(id).check(z.maxLength(8)),
            suppliers: z.array(id).check(z.maxLength(8)),
          }),
        )
        .check(z.maxLength(100)),
    }),
  /** Who counts the line's panels from now on: a station; null: people. */
  'line.counted-by': () => z.strictObject({ line: id, station: orNull(id) }),
  /** How many panels the run has by somebody's own count, and why it is said. */
  'panels.corrected': () =>
    z.strictObject({
      run: id,
      line: id,
      panels: whole,
      reason: short.check(z.minLength(1)),
    }),
} as const;
