// The clock that tests hold in their hand, in a real browser: if it told the time wrong, every test that moves it would.

import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { startBrowser } from './support/browser.ts';
import { aheadMs, giveClock, pass, withoutTimers } from './support/clock.ts';

let browser: Browser;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  browser = await startBrowser();
});
beforeEach(async () => {
  context = await browser.newContext();
  await giveClock(context);
  page = await context.newPage();
  await page.goto('data:text/html,<title>blank</title>');
});
afterEach(() => context.close());
afterAll(() => browser?.close());

const HOUR_MS = 3_600_000;

it('lets what was to happen meanwhile happen, in order, and what comes again and again happen once and go on at its beat', async () => {
  await page.evaluate(() => {
    const scope = globalThis as unknown as { heard: string[] };
    scope.heard = [];
    setTimeout(() => scope.heard.push('in an hour'), 3_600_000);
    setTimeout(() => scope.heard.push('in half an hour'), 1_800_000);
    clearTimeout(setTimeout(() => scope.heard.push('never'), 1000));
    setInterval(() => scope.heard.push('each 20 min'), 1_200_000);
    setTimeout(() => scope.heard.push('in two hours'), 7_200_000);
  });
  const heard = () => page.evaluate(() => (globalThis as unknown as { heard: string[] }).heard);
  expect(await heard()).toEqual([]);
  await pass(page, HOUR_MS + 1);
  await expect
    .poll(async () => [...(await heard())].sort())
    .toEqual(['each 20 min', 'in an hour', 'in half an hour']);
  expect((await heard()).indexOf('in half an hour')).toBeLessThan((await heard()).indexOf('in an hour'));
  await pass(page, HOUR_MS / 3);
  await expect.poll(async () => (await heard()).slice(3)).toEqual(['each 20 min']);
});

it('moves the date, the time since the start and the moments of events together, in a next document and window too', async () => {
  const times = (of: Page) =>
    of.evaluate(() => {
      const stamp = new Event('x').timeStamp;
      return {
        date: Date.now(),
        made: Date.parse(new Date().toISOString()),
        since: performance.now(),
        stamp,
      };
    });
  const before = await times(page);
  expect(Math.abs(before.date - Date.now())).toBeLessThan(HOUR_MS / 2);
  await pass(page, HOUR_MS);
  const after = await times(page);
  for (const key of ['date', 'made', 'since', 'stamp'] as const)
    expect(after[key] - before[key], key).toBeGreaterThanOrEqual(HOUR_MS - 1);
  await page.reload();
  const second = await context.newPage();
  await second.goto('data:text/html,<title>second</title>');
  for (const each of [page, second])
    expect((await times(each)).date - before.date).toBeGreaterThanOrEqual(HOUR_MS - 1);
});

it('lets no timer come between what is held together', async () => {
  const order = await withoutTimers(page, async () => {
    await page.evaluate(() => {
      const scope = globalThis as unknown as { order: string[] };
      scope.order = [];
      setTimeout(() => scope.order.push('timer'), 0);
    });
    // A native task that is queued after the timer's.
    await page.evaluate(
      () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
    );
    return page.evaluate(() => [...(globalThis as unknown as { order: string[] }).order]);
  });
  expect(order).toEqual([]);
  await expect
    .poll(() => page.evaluate(() => (globalThis as unknown as { order: string[] }).order))
    .toEqual(['timer']);
});

it('is as far ahead as the run was told', async () => {
  const real = performance.timeOrigin + performance.now();
  const shown = await page.evaluate(() => Date.now());
  expect(Math.abs(shown - real - aheadMs)).toBeLessThan(60_000);
});
