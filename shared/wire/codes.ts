// Why the server says no: a closed list of codes, each with its HTTP status. Words for people live in the app, by code.

/** Code to HTTP status. */
export const wireStatuses = {
  'bad-body': 400,
  'bad-query': 400,
  'bad-entry': 400,
  'wire-unreadable': 400,
  'signature-missing': 401,
  'signature-wrong': 401,
  'signature-replayed': 401,
  'time-off': 401,
  'tablet-unknown': 401,
  'person-unproven': 401,
  'pin-wrong': 401,
  'tablet-revoked': 403,
  'role-lacking': 403,
  'code-wrong': 403,
  'tablet-active': 409,
  'not-found': 404,
  'no-snapshot': 404,
  'timed-out': 408,
  'epoch-changed': 409,
  'body-too-large': 413,
  'media-type': 415,
  'person-locked': 423,
  'wire-too-old': 426,
  'wire-too-new': 426,
  'too-often': 429,
  'server-fault': 500,
  'store-away': 503,
  'store-full': 507,
  'store-read-only': 503,
  stopping: 503,
} as const;

/** A reason to say no. */
export type WireCode = keyof typeof wireStatuses;

/** Every code. */
export const wireCodes = Object.keys(wireStatuses) as readonly WireCode[]; // keys of a literal object

/** Version of the wire in which codes were last added. */
export const codesSince = 3;

/** Codes that tablets before version 3 of the wire cannot read, and what they are told instead. */
export const olderCodes: Readonly<Partial<Record<WireCode, WireCode>>> = {
  'tablet-active': 'code-wrong',
  'store-full': 'store-away',
  'store-read-only': 'store-away',
};

/** Why one entry of a page was not taken into the log. It is quarantined on the server, never thrown away. */
export const entryFaults = [
  'hash-differs',
  'prev-differs',
  'name-taken',
  'signature-missing',
  'signature-differs',
  'clock-ahead',
] as const;
export type EntryFault = (typeof entryFaults)[number];
