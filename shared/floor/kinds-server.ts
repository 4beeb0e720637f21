// What a server writes of what was done to the plant's tablets and its log, with the checked shape of each payload. `person`: who did it at a
// tablet, with PIN; `account`: as whom somebody at the server's own terminal was signed in. One of the two is null.

import * as z from 'zod/mini';
import { id, orNull, short, text, whole } from './payload-fields.ts';

const by = { person: orNull(id), account: orNull(short) };

/** The shapes. */
export const serverPayloadSchemas = {
  /** `tablet` joined by a one-time code that `person` or `account` asked for. */
  'tablet.let-in': () => z.strictObject({ tablet: id, name: short, ...by }),
  'tablet.shut-out': () => z.strictObject({ tablet: id, ...by }),
  /** A link to an export was given out, at a tablet. */
  'log.fetched': () => z.strictObject({ format: short, filter: text, tablet: id, person: id }),
  /** A backup with so many entries was put in the place of what was there. */
  'log.restored': () => z.strictObject({ entries: whole, ...by }),
};
