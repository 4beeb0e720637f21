// What the camera saw besides scans, and the pictures of labels that a line keeps, with the checked shape of each payload. A picture is no
// part of the log: its hash is.

import * as z from 'zod/mini';
import { belongings } from '../labels/scan.ts';
import { reasonSchema, reelFacts } from './kinds-reels.ts';
import { id, orNull, short, text } from './payload-fields.ts';
import { sources } from './vocabulary.ts';

/** The largest picture of a label that is kept, bytes. */
export const MOST_PICTURE_BYTES = 25_000;

/** Payloads by kind. */
export const picturePayloadSchemas = {
  /** A reel's label was read while the camera passed over it. It says where nobody scanned it, so that it moves no reel. */
  'reel.sighted': () =>
    z.strictObject({
      line: id,
      ...reelFacts,
      codes: z.array(text),
      /** Pictures in which it was read, and how many labels like it were in one of them at most. */
      looks: z.int().check(z.minimum(1)),
      copies: z.int().check(z.minimum(1)),
      /** The slot that it was seen to belong to, by what, and the feeder whose label said which slot it is; null where none was seen. */
      slot: orNull(short),
      feeder: orNull(id),
      belongs: orNull(z.enum(belongings)),
      /** Why it may not be used as it is. */
      reasons: z.array(reasonSchema),
      /** The verdict that was made of it; null where none was. */
      of: orNull(id),
      via: z.enum(sources),
    }),
  /** Whether pictures of labels are kept as evidence, for how long, and how much room they may take on each tablet. */
  'line.pictures-ruled': () =>
    z.strictObject({
      line: id,
      evidence: z.boolean(),
      days: z.int().check(z.minimum(1), z.maximum(3650)),
      megabytes: z.int().check(z.minimum(1), z.maximum(10_000)),
    }),
  /** The picture of a label on which the verdict `of` was made: SHA-256 of the file (hex) and its size. */
  'picture.kept': () =>
    z.strictObject({
      of: id,
      line: id,
      slot: orNull(short),
      reel: orNull(id),
      sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)),
      bytes: z.int().check(z.minimum(1), z.maximum(MOST_PICTURE_BYTES)),
    }),
} as const;
