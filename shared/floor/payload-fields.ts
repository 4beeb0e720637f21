// The fields that payloads of many kinds are made of: one limit each, so that a name, an id or a moment is as long everywhere. A log is read for
// good: a narrower limit would make old entries unreadable.

import * as z from 'zod/mini';

/** An id, at most 64 characters. */
export const id = z.string().check(z.minLength(1), z.maxLength(64));
/** What was read off a label, as it was. */
export const text = z.string().check(z.maxLength(2000));
/** Most characters of a name, a number of a part, a reason. */
export const mostShort = 200;
/** A name, a number of a part, a reason. */
export const short = z.string().check(z.maxLength(mostShort));
/** A moment in ISO 8601. */
export const moment = z.string().check(z.maxLength(40));
/** How many or how much; parts may be broken where they are computed. */
export const count = z.number().check(z.minimum(0));
/** How many, whole. */
export const whole = z.int().check(z.minimum(0));
/** A measure above zero; the unit stands in the field's name. */
export const positive = z.number().check(z.gt(0));
/** Or null, where it is not known. */
export const orNull = <T extends z.core.$ZodType>(schema: T) => z.nullable(schema);
