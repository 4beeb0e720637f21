// How much may travel at once. Both ends read the same numbers, so that a tablet never sends what the server must refuse.
// Pages are bounded by count and by bytes: entries differ in size by two orders of magnitude.

/** Most entries in one pushed or pulled page. */
export const pageEntries = 500;

/** Most bytes (UTF-8 JSON, before compression) of entries in one page. */
export const pageBytes = 512 * 1024;

/** Most bytes of one entry's RFC 8785 text: a setup of some 1,500 slots; below `pageBytes`, so that every entry fits a page. */
export const entryBytes = 384 * 1024;

/** Most bytes of a request body as it travels. */
export const bodyBytes = 1024 * 1024;

/** Most bytes of a request body once unpacked. */
export const unpackedBytes = 4 * 1024 * 1024;

/** Most bytes of a snapshot as it travels; it is never unpacked by the server. */
export const snapshotBytes = 16 * 1024 * 1024;

/** Most bytes of a snapshot once unpacked: the state of some years; both ends stop unpacking there. */
export const snapshotUnpackedBytes = 192 * 1024 * 1024;

/** Most bytes of the picture of a label. */
export const pictureBytes = 25_000;

/** Most days for which a picture of a label is kept. */
export const pictureDays = 3650;

/** How far a request's time may lie from the server's, in ms; a nonce is remembered for as long. */
export const signatureWindowMs = 60_000;

/** How long an enrolment code lives, in ms. */
export const codeLifeMs = 10 * 60_000;

/** Wrong PINs in a row before a person is locked. */
export const pinTries = 5;

/** PBKDF2-SHA256 rounds for a new PIN (OWASP password storage guidance: 600,000); the entry carries its own number. */
export const pinRounds = 600_000;

/** How long a person stays locked on the server, in ms. Common practice: a quarter of an hour. */
export const pinLockMs = 15 * 60_000;

/** How far the log may grow past the last snapshot before the server asks for a new one, in entries. */
export const snapshotEvery = 5_000;
