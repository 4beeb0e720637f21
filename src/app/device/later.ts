// Work that the first screen does not need: begins once that stands and the page has nothing else to do, so that neither the
// network nor the processor is shared with what a person waits for. A fixed wait was refused: a slow tablet needs longer.

/** Begins after this long in a page that is never idle. */
const LATEST_MS = 2000;
/** A first screen that has not told by then never will (a fault stands there); the rest must come all the same. */
const NO_SCREEN_MS = 10_000;

const waiting: (() => void)[] = [];
let stands = false;

/** Does something once the page has nothing else to do: a frame that is to be drawn goes before. */
export function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(() => work(), { timeout: LATEST_MS });
  else setTimeout(work, 0); // not every browser tells when it is idle
}

/** Told by the first screen once it is drawn with what it shows; later calls change nothing. */
export function screenStands(): void {
  if (stands) return;
  stands = true;
  for (const work of waiting.splice(0)) whenIdle(work);
}

/** True once the first screen stands. */
export function hasScreen(): boolean {
  return stands;
}

/** Does something soon, but not while the first screen is being made. */
export function later(work: () => void): void {
  if (stands) {
    whenIdle(work);
    return;
  }
  if (waiting.length === 0) setTimeout(screenStands, NO_SCREEN_MS);
  waiting.push(work);
}
