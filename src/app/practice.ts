// Is this window practising? One mark in the window's own memory: it is there after a reload, and gone with the window, so that a tablet
// that is started again is on the real floor. What is practised lies in a store of its own (see practising.ts).

/** The store of a practice floor: never the plant's, never synced. */
export const practiceStoreName = 'reelward-practice';

/** After this long a practice is over by itself: no shift is longer (common practice). */
export const PRACTICE_LASTS_MS = 12 * 3_600_000;

const markKey = 'reelward-practice';

/** When this window began to practise, ms since 1970; null where it does not, or where the time is over. */
export function practiceSince(nowMs: number): number | null {
  const since = Number(sessionStorage.getItem(markKey) ?? Number.NaN);
  return Number.isFinite(since) && Math.abs(nowMs - since) < PRACTICE_LASTS_MS ? since : null;
}

/** Begins to practise: the page starts anew on a floor of its own, at its labels. */
export function beginPractice(nowMs: number): void {
  sessionStorage.setItem(markKey, String(nowMs));
  location.hash = '#/plant/practice';
  location.reload();
}

/** Forgets that this window practises. */
export function forgetPractice(): void {
  sessionStorage.removeItem(markKey);
}

/** Waiting this long for a window that is going away is enough, ms. */
const WAIT_MS = 3000;

/** Holds the practice store for this window until it goes away; false where another window practises. */
export async function holdPractice(waitMs = WAIT_MS): Promise<boolean> {
  if (!navigator.locks) return true; // only secure pages have it
  const signal = AbortSignal.timeout(waitMs);
  return new Promise((resolve) => {
    navigator.locks
      .request(practiceStoreName, { signal }, () => {
        resolve(true);
        return new Promise(() => undefined); // until the window is gone
      })
      .catch(() => resolve(false));
  });
}

/** True where some window of this tablet practises. */
export async function isPractised(): Promise<boolean> {
  const held = (await navigator.locks?.query())?.held ?? [];
  return held.some(({ name }) => name === practiceStoreName);
}
