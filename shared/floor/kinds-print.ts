// Labels that the plant prints, and the ids that it gives to packages without one, with the checked shape of each payload.

import * as z from 'zod/mini';
import { count, id, orNull, short } from './payload-fields.ts';
import { countBases, labelSubjects, sources } from './vocabulary.ts';

/** Millimetres on paper. */
const side = z.number().check(z.minimum(5), z.maximum(1000));
const edge = z.number().check(z.minimum(0), z.maximum(200));

/** A size of labels and how they lie on the paper, mm. A roll carries one label after the other: its page is one label, or a row of them. */
export const labelSizeSchema = z.strictObject({
  /** The name that the plant gives it. */
  size: id,
  paper: z.enum(['roll', 'sheet']),
  widthMm: side,
  heightMm: side,
  /** The paper that the printer is told of. */
  pageWidthMm: side,
  pageHeightMm: side,
  columns: z.int().check(z.minimum(1), z.maximum(30)),
  rows: z.int().check(z.minimum(1), z.maximum(60)),
  /** From the edge of the paper to the first label. */
  leftMm: edge,
  topMm: edge,
  /** Between two labels. */
  gapXMm: edge,
  gapYMm: edge,
  /** White edge inside each label. */
  marginMm: edge,
  /** Dots per inch of the printer: the squares of a code are whole dots. */
  dpi: z.int().check(z.minimum(100), z.maximum(2400)),
});

/** Payloads by kind. */
export const printPayloadSchemas = {
  /**
   * A package got the plant's own id. `was`: what the log called it until then (`~` and the entry that first named it); null: it is new to the log,
   * and is named by this entry. The other facts are what is known of it now.
   */
  'reel.named': () =>
    z.strictObject({
      reel: id,
      was: orNull(short),
      part: orNull(short),
      supplierPart: orNull(short),
      lot: orNull(short),
      dateCode: orNull(short),
      quantity: orNull(count),
      /** One deviation of `quantity`, parts. */
      sd: count,
      basis: orNull(z.enum(countBases)),
      via: z.enum(sources),
    }),
  /** Labels were given to the printer; whether paper came out nobody knows. `again`: those of `names` that this tablet knew as printed before. */
  'labels.printed': () =>
    z.strictObject({
      what: z.enum(labelSubjects),
      line: orNull(id),
      /** The one package, where it is one. */
      reel: orNull(id),
      /** What the codes say; of a badge the person's id, since a badge's own text opens the door. */
      names: z.array(short).check(z.minLength(1), z.maxLength(2000)),
      again: z.array(short),
      size: short,
    }),
  /** A size of labels as it was last entered. */
  'labels.sized': () => labelSizeSchema,
  'labels.size-withdrawn': () => z.strictObject({ size: id }),
} as const;
