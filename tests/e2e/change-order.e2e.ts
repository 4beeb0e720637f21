// The order of jobs in a person's hand: what a hand moves stays while the search runs, the job in hand counts before the first of the
// list, and the order kept is what Change offers first. The search's worker is played by the test, so that no test waits for a search.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { applyAll } from '../../shared/floor/fold.ts';
import { emptyState } from '../../shared/floor/state.ts';
import { keepRunning, openAt, openTablet, readLog, type Tablet } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

interface PlayedWorker {
  asked: { question: { jobs: { id: string }[]; locks: { job: string; place: number }[] } } | null;
  isOver: boolean;
  onmessage: ((event: { data: unknown }) => void) | null;
}

/** Every worker of the search is a dummy that the test speaks for. */
function playWorkers(): void {
  const scope = globalThis as unknown as { Worker: unknown; played: PlayedWorker[] };
  const Real = Worker;
  scope.played = [];
  scope.Worker = function Played(url: URL, options: WorkerOptions) {
    if (!/\/order-[^/]*\.js$/.test(String(url))) return new Real(url, options);
    const played: PlayedWorker & {
      postMessage: (asked: PlayedWorker['asked']) => void;
      terminate: () => void;
    } = {
      asked: null,
      isOver: false,
      onmessage: null,
      postMessage(asked) {
        played.asked = asked;
      },
      terminate() {
        played.isOver = true;
      },
    };
    scope.played.push(played);
    return played;
  };
}

const tell = (page: Page, worker: number, kind: 'step' | 'done', order: readonly number[]) =>
  page.evaluate(
    ([at, data]) => {
      const { played } = globalThis as unknown as { played: PlayedWorker[] };
      played[at]?.onmessage?.({ data });
    },
    [
      worker,
      { kind, answer: { order, changes: 9, share: 0.5, isProven: false, lowest: 8, gap: 0.125, late: [] } },
    ] as const,
  );

const workers = (page: Page) =>
  page.evaluate(() =>
    (globalThis as unknown as { played: PlayedWorker[] }).played.map(({ asked, isOver }) => ({
      asked,
      isOver,
    })),
  );

async function openOrder(): Promise<Tablet> {
  const context = await demo.browser.newContext({ viewport: { width: 1280, height: 800 } });
  await context.addInitScript(playWorkers);
  const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301', context });
  await keepRunning(tablet.page);
  await openAt(tablet.page, '#/change/order');
  return { ...tablet, putAway: () => tablet.putAway().finally(() => context.close()) };
}

async function add(page: Page, setup: string, panels: string): Promise<void> {
  const before = (await orderOf(page)).length;
  await page.getByTestId('job-setup').selectOption(setup);
  await page.getByTestId('job-panels').fill(panels);
  await page.getByTestId('job-add').click();
  await expect.poll(async () => (await orderOf(page)).length).toBe(before + 1);
}

const orderOf = (page: Page) =>
  page
    .locator('[data-testid^=job-][data-setup]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('data-setup')));

const [pump, tide, green] = ['pump-driver-bottom-B', 'tide-gauge-top-C', 'greenhouse-node-top-F'] as const;

async function openWithJobs(): Promise<Tablet> {
  const tablet = await openOrder();
  for (const setup of [pump, tide, green]) await add(tablet.page, setup, '200');
  await expect.poll(() => orderOf(tablet.page)).toEqual([pump, tide, green]);
  return tablet;
}

describe('the order of jobs in hand', () => {
  it('keeps what a hand moved while the search runs, and searches on around it', async () => {
    const tablet = await openWithJobs();
    const { page } = tablet;
    await page.getByTestId('order-find').click();
    await expect.poll(async () => (await workers(page)).length).toBe(1);
    await tell(page, 0, 'step', [2, 1, 0]);
    await expect.poll(() => orderOf(page)).toEqual([green, tide, pump]);
    await page.getByTestId('down-0').click();
    await expect.poll(() => orderOf(page)).toEqual([tide, green, pump]);
    await expect.poll(async () => (await workers(page))[1]?.asked ?? null).not.toBeNull();
    const [first, second] = await workers(page);
    expect(first?.isOver).toBe(true);
    const { jobs, locks } = second?.asked?.question ?? { jobs: [], locks: [] };
    expect(locks).toEqual([{ job: jobs[1]?.id, place: 1 }]);
    await tell(page, 0, 'step', [2, 1, 0]);
    await tell(page, 1, 'step', [2, 1, 0]);
    await expect.poll(() => orderOf(page)).toEqual([pump, green, tide]);
    await expect.poll(() => page.getByTestId('hold-1').textContent()).toContain('Unlock');
    await tell(page, 1, 'done', [2, 1, 0]);
    await page.getByTestId('order-find').waitFor();
    expect(await orderOf(page)).toEqual([pump, green, tide]);
    await tablet.putAway();
  });

  it('takes every tap, faster than it is drawn too', async () => {
    const tablet = await openWithJobs();
    const { page } = tablet;
    // In one go, which no finger can: the page draws only after all of them.
    await page.evaluate(() => {
      for (const name of ['hold-0', 'hold-1', 'hold-0', 'hold-2'])
        document.querySelector<HTMLElement>(`[data-testid=${name}]`)?.click();
    });
    await expect
      .poll(() => page.locator('[data-testid^=hold-]').allTextContents())
      .toEqual(['▢ Lock this place', '▣ Unlock', '▣ Unlock']);
    await tablet.putAway();
  });

  it('begins after the job in hand: what is due before that is done comes late', async () => {
    const tablet = await openOrder();
    const { page } = tablet;
    const floor = applyAll(emptyState(), await readLog(page));
    const run = [...floor.runs.values()].find((each) => each.phase !== 'ended');
    if (!run) throw new Error('The demo builds something');
    const left = run.panelsWanted - run.done;
    const running = page.getByTestId('order-running');
    await running.waitFor();
    await expect.poll(() => running.textContent()).toContain(run.product);
    expect(Number((await running.textContent())?.match(/(\d+) panels? left/)?.[1])).toBeLessThanOrEqual(left);
    // One panel more of the same product needs no move: alone it would be done in a minute.
    const dueInMinutes = Math.floor((left * run.panelSeconds) / 120);
    expect(dueInMinutes).toBeGreaterThan(5);
    const zone = floor.lines.get(run.line)?.zone ?? 'UTC';
    const due = await page.evaluate(
      ([minutes, timeZone]) =>
        new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' })
          .format(Date.now() + minutes * 60_000)
          .replace(' ', 'T'),
      [dueInMinutes, zone] as const,
    );
    await page.getByTestId('job-due').fill(due);
    await add(page, run.setup, '1');
    await expect.poll(() => page.getByTestId('late-0').textContent()).toContain('late by');
    await tablet.putAway();
  });

  it('once kept is what Change offers first', async () => {
    const tablet = await openOrder();
    const { page } = tablet;
    // By what it takes, the greenhouse would come first.
    for (const setup of [pump, green]) await add(page, setup, '200');
    await expect.poll(() => orderOf(page)).toEqual([pump, green]);
    await page.getByTestId('order-keep').click();
    await expect
      .poll(() => page.getByTestId('order-kept').textContent())
      .toContain('This is the saved order.');
    await page.getByRole('link', { name: 'Change over' }).first().click();
    const offered = page.locator('[data-testid^=next-][data-setup]');
    await expect
      .poll(() => offered.evaluateAll((all) => all.map((one) => one.getAttribute('data-setup'))))
      .toEqual([pump, green, tide, 'flood-beacon-top-A']);
    await expect.poll(() => page.getByTestId('next-kept').textContent()).toContain('Saved by');
    await page.getByTestId('plan-job-0').click();
    await page.getByTestId('changeover').waitFor();
    await expect.poll(() => page.getByTestId('changeover').textContent()).toContain('Pump driver');
    await tablet.putAway();
  });
});
