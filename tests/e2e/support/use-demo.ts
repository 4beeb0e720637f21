// One demo and one browser for all tests of a file, put away after the last.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { startBrowser } from './browser.ts';
import { type RunningDemo, startDemo } from './demo.ts';
import { expectWhole, openTablet, readLog, type Tablet, type TabletOptions } from './floor.ts';

/** What a file's tests share. Not to be read before its first test or hook runs. */
export interface SharedDemo {
  readonly url: string;
  readonly browser: Browser;
  /** Works on a tablet of its own; afterwards its log must be whole and its page without a fault. */
  readonly onTablet: (work: (tablet: Tablet) => Promise<void>, options?: TabletOptions) => Promise<void>;
}

/** Starts them before the file's tests. `usually`: how its tablets are opened where a test does not say. */
export function useDemo(usually: TabletOptions = {}): SharedDemo {
  let demo: RunningDemo | null = null;
  let browser: Browser | null = null;
  beforeAll(async () => {
    [demo, browser] = await Promise.all([startDemo(), startBrowser()]);
  });
  afterAll(async () => {
    await browser?.close();
    await demo?.stop();
  });
  const shared = {
    get url() {
      return started(demo).url;
    },
    get browser() {
      return started(browser);
    },
    onTablet: async (work: (tablet: Tablet) => Promise<void>, options: TabletOptions = {}) => {
      const tablet = await openTablet(shared.browser, shared.url, { ...usually, ...options });
      await work(tablet);
      expectWhole(await readLog(tablet.page));
      await tablet.putAway();
    },
  };
  return shared;
}

function started<T>(value: T | null): T {
  if (value === null)
    throw new Error('Cannot use the demo as a test or hook of the file must run: current value is none');
  return value;
}
