// Entry kinds about panels: how many lie between a machine and the place of counting, and which are held for wrong material.

import * as z from 'zod/mini';

const id = z.string().check(z.minLength(1), z.maxLength(64));
const panels = z.int().check(z.minimum(-500), z.maximum(500));

/** Payloads of the kinds named in the head. */
export const panelPayloadSchemas = {
  /**
   * Panels between each machine and the place of counting, at least and at most (less than none where they are counted before it), and
   * the most of all panels that pass uncounted, as a share. Beside the line's rules, which older tablets must read.
   */
  'line.panels-ruled': z.strictObject({
    line: id,
    machines: z.array(
      z
        .strictObject({ machine: id, least: panels, most: panels })
        .check(z.refine(({ least, most }) => least <= most)),
    ),
    missed: z.number().check(z.minimum(0), z.maximum(0.5)),
  }),
} as const;
