// When to try again: full jitter, so that a plant's tablets do not all knock at once when power comes back.
// Source: "Exponential Backoff and Jitter", Architecture Blog of a cloud provider, 2015 (full jitter variant).

/** Longest wait, ms. */
export const longestWaitMs = 60_000;
const FIRST_MS = 500;

/** The wait before try `failures + 1`: uniform from 0 to min(60 s, 0.5 s · 2^failures). `chance` is in [0, 1). */
export function waitAfter(failures: number, chance: number): number {
  return chance * Math.min(longestWaitMs, FIRST_MS * 2 ** Math.min(failures, 30));
}

/** `Retry-After` in seconds as ms; null where it is no number of seconds. */
export function retryAfterMs(header: string | null): number | null {
  if (header === null || !/^\d{1,6}$/.test(header.trim())) return null;
  return Number(header.trim()) * 1000;
}

/** Codes that trying again soon does not change: a person has to act first. */
export const finalCodes: ReadonlySet<string> = new Set([
  'tablet-unknown',
  'other-plant',
  'tablet-revoked',
  'signature-wrong',
  'signature-missing',
  'wire-too-old',
  'wire-too-new',
  'wire-unreadable',
]);

/**
 * True where it is asked again much later only. Not so for a server that does not speak these words yet: of several that are replaced one after the other the next
 * that is asked may.
 */
export function isAskedLater(code: string): boolean {
  return finalCodes.has(code) && code !== 'wire-too-new';
}

/** A wait that ends early when the signal is raised. */
export function sleep(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) return resolve();
    const end = () => {
      clearTimeout(timer);
      signal.removeEventListener('abort', end);
      resolve();
    };
    const timer = setTimeout(end, ms);
    signal.addEventListener('abort', end);
  });
}
