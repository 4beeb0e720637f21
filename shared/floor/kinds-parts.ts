// The plant's list of its parts: what each is, how it comes, and who may make it; with the checked shape of each payload.

import * as z from 'zod/mini';
import { id, orNull, positive, short } from './payload-fields.ts';
import { packageFamilies, packageKinds } from './vocabulary.ts';

/** Most parts in one entry of the list. */
export const mostListedAtOnce = 500;
/** Most makers' numbers of one part in one entry, each in one product or in all. */
export const mostMakers = 200;

const length = orNull(positive);

/** What one part costs. `currency`: as the plant writes it; null where its list names none. */
const priceSchema = z.strictObject({ each: positive, currency: orNull(short) });
/** The price of one part. */
export type PartPrice = Readonly<z.output<typeof priceSchema>>;

/** What the list says of one part. Null = nobody knows; lengths in mm. */
export const listedPartSchema = z.strictObject({
  part: id,
  description: orNull(short),
  /** Value and tolerance as the plant writes them ("4.7 kΩ", "1 %"). */
  value: orNull(short),
  tolerance: orNull(short),
  /** The package's name as the plant writes it; `family` and `pins` are what it says, or what a person said. */
  package: orNull(short),
  family: orNull(z.enum(packageFamilies)),
  pins: orNull(z.int().check(z.minimum(1), z.maximum(10_000))),
  bodyMm: length,
  bodyXMm: length,
  bodyYMm: length,
  msl: orNull(short),
  comesIn: orNull(z.enum(packageKinds)),
  tapeWidthMm: length,
  pitchMm: length,
  /** Most months since the parts were made. */
  ageMonths: length,
  /** How the part lies in its pocket, in words. */
  orientation: orNull(short),
  /** Makers' numbers that may be used for it: in one product, or (`product` null) in every product whose setup lists no maker. */
  makers: z
    .array(z.strictObject({ supplierPart: short, product: orNull(short) }))
    .check(z.maxLength(mostMakers)),
});

/** Payloads by kind. */
export const partPayloadSchemas = {
  /**
   * Parts of the plant's list, each whole: a newer entry about a part stands in for an older one. Makers are added to those approved before;
   * one is taken off by `supplier.withdrawn`. `source`: where it stands, such as the file's name.
   */
  'parts.listed': () =>
    z.strictObject({
      source: short,
      parts: z.array(listedPartSchema).check(z.minLength(1), z.maxLength(mostListedAtOnce)),
    }),
  /** What parts cost, each whole; null takes a price away. Apart from the list, which older tablets would not read with a price in it. */
  'parts.priced': () =>
    z.strictObject({
      source: short,
      parts: z
        .array(z.strictObject({ part: id, price: orNull(priceSchema) }))
        .check(z.minLength(1), z.maxLength(mostListedAtOnce)),
    }),
  'part.unlisted': () => z.strictObject({ part: id, reason: short }),
  /** A small picture of a part, as a data URL of an image; null takes it away. */
  'part.pictured': () =>
    z.strictObject({
      part: id,
      picture: orNull(
        z
          .string()
          .check(z.regex(/^data:image\/(?:jpeg|webp|png);base64,[A-Za-z0-9+/=]+$/), z.maxLength(24_000)),
      ),
    }),
} as const;
