// Locks a PIN after five wrong tries in a row, for ever longer: 1 min, then 5, then 15. Kept by the caller, so that a reload
// does not forgive.

/** Wrong tries of one person on this tablet. */
export interface Tries {
  readonly wrong: number;
  readonly lockedUntilMs: number;
}

export const noTries: Tries = { wrong: 0, lockedUntilMs: 0 };
const FREE_TRIES = 5;
const LOCKS_MS = [60_000, 5 * 60_000, 15 * 60_000];

/** After one more wrong try. */
export function afterWrong(tries: Tries, nowMs: number): Tries {
  const wrong = tries.wrong + 1;
  if (wrong % FREE_TRIES !== 0) return { wrong, lockedUntilMs: tries.lockedUntilMs };
  const step = Math.min(wrong / FREE_TRIES, LOCKS_MS.length) - 1;
  return { wrong, lockedUntilMs: nowMs + (LOCKS_MS[step] ?? 0) };
}

/** Tries left before the next lock. */
export function triesLeft(tries: Tries): number {
  return FREE_TRIES - (tries.wrong % FREE_TRIES);
}

/** Minutes until another try is taken, rounded up; 0 when it is taken now. */
export function lockedMinutes(tries: Tries, nowMs: number): number {
  return Math.max(0, Math.ceil((tries.lockedUntilMs - nowMs) / 60_000));
}
