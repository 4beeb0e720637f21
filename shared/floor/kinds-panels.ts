// Entry kinds about panels: how many lie between a machine and the place of counting, and which are held for wrong material.

import * as z from 'zod/mini';
import { signedByPasskey } from './kinds-passkeys.ts';
import { id, short } from './payload-fields.ts';
import { containCauses, sources } from './vocabulary.ts';

const code = z.string().check(z.maxLength(2000));
const place = z.int().check(z.minimum(1));
const panels = z.int().check(z.minimum(-500), z.maximum(500));

/** Payloads of the kinds named in the head. */
export const panelPayloadSchemas = {
  /**
   * Panels between each machine and the place of counting, at least and at most (less than none where they are counted before it), and
   * the most of all panels that pass uncounted, as a share. Beside the line's rules, which older tablets must read.
   */
  'line.panels-ruled': () =>
    z.strictObject({
      line: id,
      machines: z.array(
        z
          .strictObject({ machine: id, least: panels, most: panels })
          .check(z.refine(({ least, most }) => least <= most)),
      ),
      missed: z.number().check(z.minimum(0), z.maximum(0.5)),
      ...signedByPasskey,
    }),
  /** A panel's code was scanned where it goes into a machine. With its count it tells how many panels lie between the two. */
  'panel.seen': () =>
    z.strictObject({
      line: id,
      machine: id,
      serial: short.check(z.minLength(1)),
      via: z.enum(sources),
    }),
  /**
   * Panels held since wrong material may be on them: found late by a check, cleared in error, blocked, or open for too long. `of`: the
   * entry or the block that tells it. Panels by their places in their run's order of counting (tally.ts).
   */
  'panels.contained': () =>
    z.strictObject({
      containment: id,
      line: id,
      slot: z.nullable(short),
      cause: z.enum(containCauses),
      of: z.nullable(short),
      reel: z.nullable(id),
      part: z.nullable(short),
      lot: z.nullable(short),
      runs: z.array(
        z.strictObject({
          run: id,
          line: id,
          slot: short,
          /** Panels that surely carry it; null where none does. */
          sure: z.nullable(z.strictObject({ first: place, last: place })),
          /** Panels that may carry it, those that were still in the line among them. */
          possible: z.strictObject({ first: place, last: place }),
        }),
      ),
      /** Their own codes, as far as they were scanned by then. */
      codes: z.array(code),
      reason: short,
    }),
  /** A lead signs panels of a containment as dealt with: these codes, or all of them (`codes` null). */
  'containment.signed': () =>
    z.strictObject({
      containment: id,
      line: id,
      codes: z.nullable(z.array(code).check(z.minLength(1))),
      reason: short,
      by: id,
      checked: z.enum(['tablet', 'server']),
      ...signedByPasskey,
    }),
} as const;
