// Puts what lies in the store in order before anybody asks for a pick list or is refused a reel: with thousands of packages the first such question would
// hold the page up. Slice by slice while nothing else is to be done; a question that comes before the end does the rest itself.

import { shelfSteps } from '../../shared/floor/shelf.ts';
import type { App } from './app.ts';
import { later } from './device/later.ts';
import { takeSlice } from './device/slices.ts';

/** So many entries at once, as a sync brings them, are worth another look at the store. */
const MANY_ENTRIES = 200;

/**
 * Does it for the line that is in hand when it begins and the setup that this builds, and again where the floor changed as a whole. For a line
 * taken in hand later the first question puts in order what its own slots take.
 */
export function warmShelf(app: Pick<App, 'store' | 'clock' | 'line'>): void {
  let isWarming = false;
  const warm = () => {
    isWarming = false;
    const floor = app.store.floor();
    const line = app.line.peek();
    if (line === null) return;
    const setup = floor.chosen.get(line) ?? '';
    const steps = shelfSteps(floor, { line, setup, nowMs: app.clock.nowMs() });
    const goOn = () => {
      // A later look at the store has taken its place.
      if (!isWarming && takeSlice(steps) === undefined) later(goOn);
    };
    goOn();
  };
  const soon = () => {
    if (isWarming) return;
    isWarming = true;
    later(warm);
  };
  app.store.onChange((entries) => {
    if (entries.length === 0 || entries.length >= MANY_ENTRIES) soon();
  });
  soon();
}
