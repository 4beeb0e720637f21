// What a tablet says of heads that it signs as a witness, and asks about an entry that it prints.

import * as z from 'zod/mini';
import { headNote, leaf, ms, name, proof, signature } from './fields.ts';

/** `POST /api/witness`: a tablet's signature under that head (`log/tablet-cosignature.ts`). */
export const cosignSchema = z.object({
  /** The head's entries. */
  size: leaf,
  /** When it signed by the server's clock, seconds since 1970. */
  seconds: z.int().check(z.minimum(0)),
  sig: signature,
});
export type Cosign = z.infer<typeof cosignSchema>;
/** The answer; false where that head is signed no more. */
export const cosignedSchema = z.object({ kept: z.boolean() });
export type Cosigned = z.infer<typeof cosignedSchema>;

/** `POST /api/record`: where an entry lies in the log's tree, to be put on paper. */
export const recordAskSchema = z.object({ tablet: name, epoch: name, seq: z.int().check(z.minimum(1)) });
export type RecordAsk = z.infer<typeof recordAskSchema>;
/** The answer: the entry's leaf, its proof, and the head that this leads to: one that tablets signed, where one holds the entry. */
export const recordToldSchema = z.object({
  serverEpoch: name,
  serverMs: ms,
  index: leaf,
  proof,
  head: headNote,
});
export type RecordTold = z.infer<typeof recordToldSchema>;
