// What happens in the store besides putting away and counting: places with an air of their own, packages cut in two and joined; with the checked
// shape of each payload.

import * as z from 'zod/mini';
import { count, id, orNull, positive, short } from './payload-fields.ts';
import { airs, countBases, sources } from './vocabulary.ts';

/** Payloads by kind. */
export const storePayloadSchemas = {
  /** The air at a place of the store: a dry cabinet, an oven; `air` null: it is a shelf like any other again. */
  'place.described': () =>
    z.strictObject({
      place: id,
      air: orNull(z.enum(airs)),
      celsius: orNull(z.number().check(z.minimum(-60), z.maximum(200))),
      humidity: orNull(z.number().check(z.minimum(0), z.maximum(100))),
    }),
  /**
   * Parts of a package off the line became a package of their own, such as a strip of cut tape. `reel`: the one that they came from, `into`: the new
   * one. `left`: what stays on the first, null where nobody knows. Lot, maker and floor life are those of the first.
   */
  'reel.split': () =>
    z.strictObject({
      reel: id,
      into: id,
      part: orNull(short),
      lot: orNull(short),
      /** Parts of the new package, counted. */
      quantity: positive,
      left: orNull(count),
      via: z.enum(sources),
    }),
  /** Two packages of one part, lot and date code off the line were joined: `from` is used up, `reel` has what both had. */
  'reel.merged': () =>
    z.strictObject({
      reel: id,
      from: id,
      part: orNull(short),
      lot: orNull(short),
      /** Parts of both, null where nobody knows, and one deviation. */
      quantity: orNull(count),
      sd: count,
      basis: z.enum(countBases),
      via: z.enum(sources),
    }),
} as const;
