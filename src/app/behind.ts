// Whether this tablet's log is whole: after a start from another tablet's state the history behind it comes in later, and until
// then whatever reads the whole log would quietly leave most of it out.

import { useApp } from './app.ts';
import type { Behind } from './store/store.ts';
import { syncWords } from './words/sync.ts';
import { formatCount, formatShare, say } from './words/words.ts';

/** How much history is not here yet; null where the log is whole. A component that calls this is drawn again as it comes in. */
export function useBehind(): Behind | null {
  const app = useApp();
  app.tick.value;
  return app.store.behind();
}

/** Why nothing may be taken from the log just now; null where it is whole. */
export function useNotWhole(): string | null {
  const behind = useBehind();
  return behind && behind.missing > 0 ? say(syncWords).notWhole(formatCount(behind.missing)) : null;
}

/** Share of the history that is here; never all of it while something is missing. */
export function sayShare({ missing, of }: Behind): string {
  return formatShare(Math.floor((1 - missing / of) * 100) / 100);
}
