// Entry kinds of a line beside its rules, which a tablet of an older version must still read: people, what a splice costs, and
// panels that were scrapped.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, short } from './payload-fields.ts';
import { sources } from './vocabulary.ts';

/** Payloads of the kinds named in the head. */
export const linePayloadSchemas = {
  /** Minutes without a touch after which whoever is signed in on a tablet of the line is signed out. */
  'line.idle-ruled': () =>
    z.strictObject({ line: id, minutes: z.int().check(z.minimum(1), z.maximum(1440)), ...signedByPasskey }),
  /** A further lane of a line's conveyor is taken away again. */
  'lane.withdrawn': () => z.strictObject({ line: id }),
  /** How many people share the line's splices now. */
  'line.crewed': () => z.strictObject({ line: id, operators: z.int().check(z.minimum(1), z.maximum(6)) }),
  /** Parts that a splice itself costs, by the width of tape that the feeder takes, mm; null: every other width. An empty list: not known. */
  'line.splices-ruled': () =>
    z.strictObject({
      line: id,
      costs: z.array(
        z.strictObject({
          tapeWidthMm: z.nullable(z.number().check(z.gt(0))),
          parts: z.number().check(z.minimum(0), z.maximum(1000)),
        }),
      ),
      ...signedByPasskey,
    }),
  /** Panels built and counted that are thrown away: their parts are gone, and as many more are to be built. */
  'panels.scrapped': () =>
    z.strictObject({
      run: id,
      line: id,
      panels: z.int().check(z.minimum(1)),
      serial: z.nullable(short),
      note: short,
      via: z.enum(sources),
    }),
} as const;
