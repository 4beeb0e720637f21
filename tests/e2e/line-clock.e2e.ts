// The line while nobody counts, and a tablet whose clock is set wrong. Time is moved by the page's clock, never waited for: what it shows
// is read like a person reads it, by the clock and by how far away it is.

import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  endRun,
  goTo,
  keepRunning,
  lookAgain,
  openTablet,
  ownEntries,
  signIn,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const minuteMs = 60_000;

/** A tablet whose clock, and the time that passes on it, a test can move: `passed` moves both, `off` the clock alone. */
async function withClock(work: (tablet: Tablet) => Promise<void>): Promise<void> {
  const context = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
  await moveable(context);
  const tablet = await openTablet(demo.browser, demo.url, { context });
  await work(tablet);
  await tablet.putAway();
  await context.close();
}

async function moveable(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const read = (key: string) => Number(localStorage.getItem(key) ?? 0);
    const wall = Date.now.bind(Date);
    const elapsed = performance.now.bind(performance);
    Date.now = () => wall() + read('test-passed') + read('test-off');
    performance.now = () => elapsed() + read('test-passed');
    // A tap's own time passes too, else the tap before 25 minutes and the one after look like one tremble on a fast machine.
    const stamp = Object.getOwnPropertyDescriptor(Event.prototype, 'timeStamp')?.get;
    Object.defineProperty(Event.prototype, 'timeStamp', {
      get(this: Event) {
        return Number(stamp?.call(this)) + read('test-passed');
      },
    });
  });
}

/** Time goes by, or somebody sets the clock; the page looks again at once, as it does when it is turned to. */
async function move(page: Page, key: 'test-passed' | 'test-off', ms: number): Promise<void> {
  await page.evaluate(
    ([name, by]) => {
      localStorage.setItem(name, String(Number(localStorage.getItem(name) ?? 0) + by));
      document.dispatchEvent(new Event('visibilitychange'));
    },
    [key, ms] as const,
  );
}

/** The clock of the soonest row, such as 14:07, and how far away it says that is. */
async function soonest(page: Page): Promise<{ slot: string; clock: string; away: string }> {
  const row = page.locator('.slotrow').first();
  // In one look: another row may be the soonest by the next.
  return row.evaluate((soon) => {
    const text = (of: string) => soon.querySelector(of)?.textContent ?? '';
    return {
      slot: text('.who b'),
      clock: /\d\d:\d\d/.exec(text('.due'))?.[0] ?? '',
      away: text('.due b'),
    };
  });
}

const quiet = (page: Page) => page.getByTestId('nobody-counts');

/** Counts a panel, and waits until the log has it: time that goes by before that would make it a later one. */
async function count(page: Page): Promise<void> {
  const own = async () => (await ownEntries(page, 'panels.counted')).length;
  const before = await own();
  await page.getByTestId('plus-one').click();
  await expect.poll(own).toBe(before + 1);
}

describe('where nobody counts', () => {
  it('says since when, goes on by the clock, marks its times, and comes back with the next count', async () => {
    await withClock(async ({ page }) => {
      await keepRunning(page);
      // What is read next rests on this count: the strip and the rows are drawn from one look at the line.
      const panels = page.locator('.runbar .panels');
      const counted = await panels.textContent();
      await page.getByTestId('plus-one').click();
      await expect.poll(() => panels.textContent()).not.toBe(counted);
      await quiet(page).waitFor({ state: 'detached' });
      const before = await soonest(page);
      await move(page, 'test-passed', 25 * minuteMs);
      await quiet(page).waitFor();
      await expect
        .poll(() => quiet(page).textContent())
        .toMatch(/No panel counted since \d\d:\d\d, for 25\smin/);
      const row = page.getByTestId(`row-${before.slot}`);
      await expect.poll(() => row.locator('.due').textContent()).toContain(before.clock);
      await expect.poll(() => row.locator('.due').textContent()).toContain('if it kept its pace');
      await expect
        .poll(() => page.getByTestId('line-summary').textContent())
        .toMatch(/\d\d:\d\d, in .*, if it kept its pace/);
      await page.getByTestId('walks-open').click();
      await page.getByTestId('walks').waitFor();
      const unmarked = async () =>
        (await page.locator('.walks ol > li').allTextContents()).filter(
          (walk) => !walk.includes('if it kept its pace'),
        );
      await expect.poll(unmarked).toEqual([]);
      await page.getByTestId('walks-close').click();
      // Warnings come all the same, and say what they rest on.
      await page.getByTestId('warning').waitFor();
      await expect.poll(() => page.getByTestId('warning').textContent()).toContain('if it kept its pace');
      await page.getByTestId('plus-one').click();
      await quiet(page).waitFor({ state: 'detached' });
      await expect.poll(() => row.locator('.due').textContent()).not.toContain('if it kept its pace');
    });
  });

  it('asks at a stop since when the line stands, takes the last panel, or now where a person says so', async () => {
    await withClock(async ({ page }) => {
      await keepRunning(page);
      await count(page);
      await page.getByTestId('run-stop').click();
      expect(await page.getByTestId('stood').count()).toBe(0);
      await page.getByTestId('stop-jam').click();
      await page.getByTestId('run-resume').click();
      await count(page);
      const [counted] = (await ownEntries(page, 'panels.counted')).slice(-1);
      await move(page, 'test-passed', 20 * minuteMs);
      await quiet(page).waitFor();
      await page.getByTestId('run-stop').click();
      await expect
        .poll(() => page.getByTestId('stood-last').textContent())
        .toMatch(/^\d\d:\d\d, the last panel, \d\d\smin ago$/);
      await page.getByTestId('stop-jam').click();
      await expect
        .poll(() => page.getByTestId('stopped').textContent())
        .toMatch(/since \d\d:\d\d, for (19|20)\smin/);
      await quiet(page).waitFor({ state: 'detached' });
      const stopped = (await ownEntries(page, 'run.stopped')).at(-1);
      const stoodAfterMs = Date.parse(String(stopped?.payload['stoodFrom'])) - (counted?.hlc.ms ?? 0);
      // One cycle of the demo's line: it builds a panel in well under two minutes.
      expect(stoodAfterMs).toBeGreaterThan(5000);
      expect(stoodAfterMs).toBeLessThan(2 * minuteMs);

      await page.getByTestId('run-resume').click();
      await count(page);
      await move(page, 'test-passed', 20 * minuteMs);
      await quiet(page).waitFor();
      await page.getByTestId('run-stop').click();
      await page.getByTestId('stood-now').click();
      await page.getByTestId('stop-jam').click();
      await expect.poll(() => page.getByTestId('stopped').textContent()).toMatch(/for \d+\ss/);
    });
  });
});

it('says of one setup that it is being built while a run is open, and of none once it is ended', async () => {
  const { page, putAway } = await openTablet(demo.browser, demo.url, { hash: '#/plant/setups' });
  const built = page.locator('.listed').filter({ hasText: 'being built' });
  await built.waitFor();
  await endRun(page);
  await page.getByText('Nothing is being built').waitFor();
  await page.goto(`${demo.url}#/plant/setups`);
  await page.locator('.listed').filter({ hasText: 'chosen for this line' }).waitFor();
  await built.waitFor({ state: 'detached' });
  await putAway();
});

describe('a clock set wrong', () => {
  it('back an hour is told, takes no warning away, and moves no time', async () => {
    await withClock(async ({ page }) => {
      await keepRunning(page);
      await count(page);
      await move(page, 'test-passed', 30 * minuteMs);
      await page.getByTestId('warning').waitFor();
      await lookAgain(page); // all that the half hour brought has been worked out
      const slot = await page.getByTestId('warning').locator('b').textContent();
      const before = await soonest(page);
      await move(page, 'test-off', -60 * minuteMs);
      const told = page.getByTestId('clock-slip');
      await told.waitFor();
      await expect
        .poll(() => told.textContent())
        .toMatch(/This tablet’s clock went back 1\u00a0h\u00a000 at \d\d:\d\d: correct it\./);
      await expect.poll(() => page.getByTestId('warning').locator('b').textContent()).toBe(slot);
      await expect.poll(async () => (await soonest(page)).clock).toBe(before.clock);
      // What is written says what the clock said, and comes after all that was known. Half an hour untouched, nobody is signed in.
      await signIn(page, 'BADGE-2201');
      await page.getByTestId('plus-one').click();
      await quiet(page).waitFor({ state: 'detached' });
      await page.reload();
      await told.waitFor();
      await expect.poll(() => told.textContent()).toContain('behind the newest entry');
      await move(page, 'test-off', 60 * minuteMs);
      await told.waitFor({ state: 'detached' });
    });
  });

  it('ahead by hours is told, and a person may say that it is right', async () => {
    await withClock(async ({ page }) => {
      await goTo(page, 'line');
      await move(page, 'test-off', 9 * 60 * minuteMs);
      await page.getByTestId('clock-slip').waitFor();
      await expect.poll(() => page.getByTestId('clock-slip').textContent()).toContain('9\u00a0h\u00a000');
      await page.getByTestId('clock-right').click();
      await page.getByTestId('clock-slip').waitFor({ state: 'detached' });
    });
  });
});
