// Entries about moisture besides the exposure of a reel: what is known of a part's package, the plant's own values of the standard, the time
// on a label, and on what a judged floor life rested. Each is an entry of its own, since tablets of an older version must still read
// setups, exposure and verdicts.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, positive, short } from './payload-fields.ts';
import { bakeBodies, packageFamilies } from './vocabulary.ts';

const pins = z.int().check(z.minimum(1), z.maximum(10_000));

/** The payloads of the kinds about moisture. */
export const moisturePayloadSchemas = {
  /**
   * The highest temperature (°C) and relative humidity (%) of a line's floor. Beside the line's rules and not in them, since a tablet of
   * an older version must still read those.
   */
  'line.climate-ruled': () =>
    z.strictObject({
      line: id,
      celsius: z.number().check(z.minimum(0), z.maximum(60)),
      humidity: z.number().check(z.minimum(0), z.maximum(100)),
      ...signedByPasskey,
    }),
  /** What is known of a part's package. Null = not known; a newer entry about the part stands in for an older one whole. */
  'part.described': () =>
    z.strictObject({
      part: id,
      family: z.nullable(z.enum(packageFamilies)),
      pins: z.nullable(pins),
      /** Body thickness, and length and width in either order (both or neither), mm. */
      bodyMm: z.nullable(positive),
      bodyXMm: z.nullable(positive),
      bodyYMm: z.nullable(positive),
      isStacked: z.nullable(z.boolean()),
      /** Moisture level; null = as setups and labels say. */
      msl: z.nullable(short),
      source: short,
    }),
  /** The plant's own values of the moisture standard; what is not listed stays as shipped. The newest entry rules whole. */
  'moisture.ruled': () =>
    z.strictObject({
      edition: short,
      source: short,
      /** Cabinets at 5 % relative humidity or below stop the clock of levels 4, 5 and 5a. */
      cabinetPauses: z.boolean(),
      lives: z
        .array(
          z.strictObject({
            class: z.enum(['A', 'B', 'C']),
            level: z.enum(['2a', '3', '4', '5', '5a']),
            celsius: z.number(),
            humidity: z.number(),
            /** Null = no limit. */
            days: z.nullable(positive),
          }),
        )
        .check(z.maxLength(600)),
      bakes: z
        .array(
          z.strictObject({
            body: z.enum(bakeBodies),
            level: z.enum(['2', '2a', '3', '4', '5', '5a', '6']),
            celsius: z.number(),
            /** The floor life was exceeded by more than 72 h. */
            isLong: z.boolean(),
            hours: positive,
          }),
        )
        .check(z.maxLength(200)),
      ...signedByPasskey,
    }),
  /** The floor life that the label of a level 6 reel states, hours after its bake. */
  'reel.timed': () => z.strictObject({ reel: id, hours: positive }),
  /**
   * What a verdict's floor life rested on, as the tablet saw it: written beside the verdict of a reel whose time out of the bag is limited.
   * `packageClass`: every class that it may belong to. `values`: the entry of the plant's own values in force, null for the shipped ones.
   */
  'reel.life-judged': () =>
    z.strictObject({
      line: id,
      slot: z.nullable(short),
      reel: z.nullable(id),
      part: z.nullable(short),
      msl: short,
      packageClass: short,
      celsius: z.number(),
      humidity: z.number(),
      leftSeconds: z.number().check(z.minimum(0)),
      hotHours: z.number().check(z.minimum(0)),
      edition: short,
      restsOn: z.enum(['own', 'copy', 'memory']),
      values: z.nullable(id),
    }),
} as const;
