// The checked shape of an envelope: for the borders, where entries come from a server, a file or another process. Apart from the envelope
// itself, which every start reads.

import * as z from 'zod/mini';
import {
  clockCountMost,
  clockMsMost,
  type Entry,
  isWithinLevels,
  type JsonObject,
  payloadLevelsMost,
  signatureForm,
} from './entry.ts';

/** Longest text allowed for tablet, epoch, who and kind. */
const NAME_MAX = 64;
const hexHash = z.string().check(z.regex(/^[0-9a-f]{64}$/, 'expected 64 lower-case hex digits'));
const name = z
  .string()
  .check(
    z.minLength(1),
    z.maxLength(NAME_MAX),
    z.regex(/^[\x21-\x7e]+$/, 'expected visible ASCII without blanks'),
  );

/** A wall clock reading: ISO 8601 with seconds and an offset. */
export const isoMoment = z.string().check(
  z.regex(
    /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,3})?(Z|[+-]\d{2}:\d{2})$/,
    'expected ISO 8601 with offset, e.g. 2026-03-02T06:00:00+01:00',
  ),
  z.refine((text) => Number.isFinite(Date.parse(text)), 'expected a date that exists'),
);

/** Levels first: going through the values recurses, and what is nested deeper than the stack would stop whoever reads. */
const payload = z.pipe(
  z
    .unknown()
    .check(
      z.refine(
        (value) => isWithinLevels(value, payloadLevelsMost),
        `expected ${payloadLevelsMost} levels of lists and objects at most`,
      ),
    ),
  z.record(z.string(), z.json()),
);

/** The envelope's schema: unknown keys are refused. */
export const entrySchema: z.ZodMiniType<Entry> = z.strictObject({
  v: z.literal(1),
  tablet: name,
  epoch: name,
  seq: z.int().check(z.minimum(1)),
  at: isoMoment,
  hlc: z.strictObject({
    ms: z.int().check(z.minimum(0), z.maximum(clockMsMost)),
    n: z.int().check(z.minimum(0), z.maximum(clockCountMost)),
  }),
  who: z.nullable(z.string().check(z.minLength(1), z.maxLength(NAME_MAX))),
  kind: name,
  payload: payload as unknown as z.ZodMiniType<JsonObject>, // same values; zod's own type allows mutation
  prev: hexHash,
  hash: hexHash,
  sig: z.nullable(z.string().check(z.regex(signatureForm, 'expected 64 bytes, base64url'))),
}) as z.ZodMiniType<Entry>; // readonly view of the same shape
