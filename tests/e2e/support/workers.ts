// Workers of a page that wait: what is asked of them is held back while the page is looked at.

import type { Page } from 'playwright-core';

interface Held {
  heldBack?: (() => void)[] | null;
  askWorker?: Worker['postMessage'];
}

/** Holds back what workers are asked, so that what waits for an answer can be looked at; lets it go in its order. */
export async function holdWorkers(page: Page, isHeld: boolean): Promise<void> {
  await page.evaluate((hold) => {
    const scope = globalThis as Held;
    scope.askWorker ??= Worker.prototype.postMessage;
    const ask = scope.askWorker;
    const waiting = scope.heldBack ?? [];
    scope.heldBack = hold ? [] : null;
    Worker.prototype.postMessage = function (...given: unknown[]) {
      const go = () => Reflect.apply(ask, this, given);
      if (scope.heldBack) scope.heldBack.push(go);
      else go();
    };
    for (const go of waiting) go();
  }, isHeld);
}
