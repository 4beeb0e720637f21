// Work that the first screen does not need: begins once that stands and the page has nothing else to do.

/** By then the first screen stands, also on a slow tablet. */
const FIRST_SCREEN_MS = 800;
/** Begins after this long at the latest. */
const LATEST_MS = 2000;

/** Does something soon, but not while the first screen is being made. */
export function later(work: () => void): void {
  setTimeout(() => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => work(), { timeout: LATEST_MS });
    else work(); // not every browser tells when it is idle
  }, FIRST_SCREEN_MS);
}
