// What proves who acted, and what a lead says of what nothing proves, with the checked shape of each payload.

import * as z from 'zod/mini';
import { id } from './payload-fields.ts';

/** The longest id of an entry: three names and what stands between them. */
const entry = z.string().check(z.minLength(1), z.maxLength(200));

/** What a lead may say of an entry that is unproven. */
export const settledAs = ['confirmed', 'rejected'] as const;
/** One of them. */
export type SettledAs = (typeof settledAs)[number];

/** Payloads by kind. */
export const rightPayloadSchemas = {
  /** The server's word that this person stood here, with badge or name and PIN: `ticket.ts` reads it. Good for the entries of this chain after it. */
  'ticket.taken': () =>
    z.strictObject({ person: id, ticket: z.string().check(z.minLength(1), z.maxLength(3000)) }),
  /** A lead knows of entries made without a ticket that they were done by who they say, or were not. */
  'unproven.settled': () =>
    z.strictObject({
      entries: z.array(entry).check(z.minLength(1), z.maxLength(200)),
      settled: z.enum(settledAs),
      by: id,
      reason: z.string().check(z.maxLength(200)),
    }),
} as const;
