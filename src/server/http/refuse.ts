// How a no travels inside the server: thrown with its closed code, turned into one JSON answer at one place.

import { olderCodes, type WireCode, wireStatuses } from '../../../shared/wire/codes.ts';
import type { Refusal } from '../../../shared/wire/messages.ts';

/** A no with its code. The message is for logs and for people who read raw answers. */
export class Refused extends Error {
  readonly code: WireCode;
  readonly facts: Refusal['facts'];

  constructor(code: WireCode, message: string, facts?: Refusal['facts']) {
    super(message);
    this.code = code;
    this.facts = facts;
  }

  get status(): number {
    return wireStatuses[this.code];
  }
}

/** The answer's body; `isOlder`: in the codes that there were before version 3. */
export function toRefusal(refused: Refused, serverMs: number, isOlder = false): Refusal {
  const { message, facts } = refused;
  const code = (isOlder ? olderCodes[refused.code] : undefined) ?? refused.code;
  return { code, message, serverMs, ...(facts ? { facts } : {}) };
}

/** Codes of the framework's own errors. */
const frameworkCodes: Readonly<Record<string, WireCode>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: 'body-too-large',
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'media-type',
  FST_ERR_CTP_EMPTY_TYPE: 'media-type',
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: 'bad-body',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'bad-body',
  FST_ERR_BAD_URL: 'not-found',
  FST_ERR_ROUTE_MISSING_HANDLER: 'not-found',
};

const statusCodes: Readonly<Record<number, WireCode>> = {
  400: 'bad-body',
  // A path that leads out of the app's folder.
  403: 'not-found',
  404: 'not-found',
  408: 'timed-out',
  413: 'body-too-large',
  415: 'media-type',
  429: 'too-often',
  503: 'stopping',
};

/** Reads any thrown value as a no; null where it is a fault of the server's own. */
export function toRefused(error: unknown): Refused | null {
  if (error instanceof Refused) return error;
  if (!(error instanceof Error)) return null;
  const { code, statusCode } = error as { code?: string; statusCode?: number }; // the framework's errors carry these
  const known = code === undefined ? undefined : frameworkCodes[code];
  if (known) return new Refused(known, error.message);
  const byStatus = statusCode === undefined ? undefined : statusCodes[statusCode];
  return byStatus ? new Refused(byStatus, error.message) : null;
}
