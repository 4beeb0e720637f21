// What an error says of the store it came from, by the codes of the databases and of the operating system.

/** What can be wrong. */
export const storeTroubles = [
  'disk-full',
  'read-only',
  'away',
  'damaged',
  'text-changed',
  'log-broken',
  'month-away',
  'restored',
  'lost',
  'outgrown',
] as const;
export type StoreTrouble = (typeof storeTroubles)[number];

/** Codes of the databases and of the operating system, by what they mean for the store. */
const meanings: readonly (readonly [RegExp, StoreTrouble])[] = [
  [/^(SQLITE_FULL|ENOSPC|EDQUOT|53100)$/, 'disk-full'],
  [/^(SQLITE_READONLY\w*|EROFS|SQLITE_CANTOPEN\w*|25006)$/, 'read-only'],
  [/^(SQLITE_CORRUPT\w*|SQLITE_NOTADB|XX001|XX002)$/, 'damaged'],
  [/^REELWARD_RESTORED$/, 'restored'],
  [/^REELWARD_LOST$/, 'lost'],
  [/^REELWARD_MONTH_AWAY$/, 'month-away'],
  [/^REELWARD_PLACE_CHANGED$/, 'text-changed'],
  [/^REELWARD_OUTGROWN$/, 'outgrown'],
  [/^(ECONNREFUSED|ECONNRESET|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|EPIPE|57P0[123]|08\w{3})$/, 'away'],
];

/** What an error says about the store; null where it says nothing. */
export function troubleOf(error: unknown): StoreTrouble | null {
  for (let cause = error, depth = 0; cause instanceof Error && depth < 5; depth += 1) {
    const { code, message } = cause as { code?: unknown; message: string }; // the drivers' errors carry one
    const found = meanings.find(([pattern]) => typeof code === 'string' && pattern.test(code));
    if (found) return found[1];
    if (
      /connection terminated|timeout exceeded when trying to connect|^timeout expired$|^query read timeout$/i.test(
        message,
      )
    )
      return 'away';
    cause = cause.cause;
  }
  return null;
}
