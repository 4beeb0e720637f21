// The camera passed over many labels, as a hand does it: from Load, the store and the pick list by one tap, each label once, what is
// wanted lit up, what may not be used crossed out, slots of a sweep ticked by what was seen; one touch leaves.

import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { applyAll } from '../../shared/floor/fold.ts';
import { setupProgress } from '../../shared/floor/progress.ts';
import { emptyState, type FloorState } from '../../shared/floor/state.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { filmPan, type HandAt, type ShelfLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { tap as tapSeen } from './support/finger.ts';
import { openTablet, ownEntries, readLog, reelLabel } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
const open: Browser[] = [];

/** A browser whose lens is passed over these labels. */
async function passOver(labels: readonly ShelfLabel[], hand: readonly HandAt[]): Promise<Browser> {
  const browser = await startBrowser(await filmPan(demo.browser, labels, hand));
  open.push(browser);
  return browser;
}

afterEach(async () => {
  for (const browser of open.splice(0)) await browser.close();
});

/** Taps the button with this name, wherever it stands on the page. */
async function tap(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).scrollIntoViewIfNeeded();
  await tapSeen(page, name);
}

/** To and fro along a shelf, from one place of the hand to another: what lies beside the picture's middle is not shown. */
const passing = (from: number, to: number): readonly HandAt[] => {
  const there = Array.from({ length: 24 }, (_, at) => ({
    x: Math.round(from + ((to - from) * at) / 23),
    y: Math.round(8 * Math.sin(at / 2)),
  }));
  return [...there, ...[...there].reverse()];
};

/** The floor of the demo as a tablet has it. */
async function floorOf(page: Page): Promise<FloorState> {
  const entries = [...(await readLog(page))].sort(compareEntries);
  return applyAll(emptyState(), entries);
}

describe('the camera passed over a shelf', () => {
  const id = (at: number) => `R-9770${String(at).padStart(2, '0')}`;
  /** A dozen reels: two of the part that M2-F-023 waits for, one of them out of date, and others that nobody wants now. */
  const shelf = Array.from({ length: 12 }, (_, at): ShelfLabel => {
    const part = at === 2 || at === 7 ? '22-0603-B' : `77-00${at}-X`;
    const expiry: Readonly<Record<string, string>> = at === 7 ? { '14D': '20200101' } : {};
    const text = reelLabel({ P: part, Q: '4000', '1T': `LT-${at}`, '3S': id(at), ...expiry });
    return { text, print: part, x: 270 + (at % 4) * 195, y: 30 + Math.floor(at / 4) * 225 };
  });

  it('lights up what the line waits for, crosses out what may not be used, and leaves an entry each', async () => {
    const tablet = await openTablet(await passOver(shelf, passing(-12, 40)), demo.url, { hash: '#/load' });
    const { page } = tablet;
    await tap(page, 'Find with the camera');
    const view = page.getByTestId('find');
    await view.getByText('Wanted: 1 · do not use: 1 · read: 12').waitFor({ timeout: 120_000 });
    await expect.poll(() => page.getByTestId('found-wanted').textContent()).toContain('to M2-F-023');
    await expect.poll(() => page.getByTestId('found-wanted').textContent()).toContain(id(2));
    await expect.poll(() => page.getByTestId('found-barred').textContent()).toContain(id(7));
    // On the picture too: a shape and a word each.
    await view.locator('.find-tag.is-wanted text').first().waitFor({ state: 'attached' });
    await expect
      .poll(() => view.locator('.find-tag.is-wanted text').first().textContent())
      .toBe('to M2-F-023');
    await view.locator('.find-outline.is-barred').first().waitFor({ state: 'attached' });
    await look(page, { where: 'find' });
    await tap(page, 'Close camera');
    await view.waitFor({ state: 'detached' });
    await expect.poll(async () => (await ownEntries(page, 'reel.sighted')).length).toBe(12);
    const seen = (await ownEntries(page, 'reel.sighted')).map(({ payload }) => payload);
    expect(new Set(seen.map(({ reel }) => reel)).size).toBe(12);
    expect(seen.find(({ reel }) => reel === id(7))).toMatchObject({
      part: '22-0603-B',
      reasons: [{ code: 'expired' }],
      slot: null,
      of: null,
      via: 'camera',
    });
    for (const { looks } of seen) expect(looks).toBeGreaterThanOrEqual(1);
    // Nothing was put anywhere: the line still waits for its reel.
    expect(await ownEntries(page, 'reel.verified')).toEqual([]);
    expect(await ownEntries(page, 'reel.put')).toEqual([]);
    await tablet.putAway();
  });

  it.each([
    ['the store', '#/stock', 800, 1280],
    ['the store on a phone', '#/stock', 390, 844],
  ] as const)('is one tap away in %s, and Escape leaves it', async (_, hash, width, height) => {
    const tablet = await openTablet(await passOver(shelf.slice(0, 2), passing(0, 0)), demo.url, {
      hash,
      width,
      height,
    });
    const { page } = tablet;
    await tap(page, 'Find with the camera');
    await page.getByTestId('found-other').first().waitFor();
    await look(page, { where: 'find' });
    await page.keyboard.press('Escape');
    await page.getByTestId('find').waitFor({ state: 'detached' });
    expect(await page.locator('video').count()).toBe(0);
    await tablet.putAway();
  });
});

describe('a sweep with the camera', () => {
  it('ticks each slot that hangs with its reel, asks where another reel hangs, and names what is missing', async () => {
    const first = await openTablet(demo.browser, demo.url);
    const floor = await floorOf(first.page);
    await first.putAway();
    const line = [...floor.lines.keys()][0] ?? '';
    const loaded = setupProgress(floor, line).slots.filter(
      ({ phase, loaded: there }) =>
        phase === 'verified' && there !== null && !(there.tapes.at(-1)?.reel ?? '~').startsWith('~'),
    );
    const [one, two, other] = loaded;
    const tapeOf = (slot: typeof one) => slot?.loaded?.tapes.at(-1);
    const hung = [
      { slot: one?.slot ?? '', reel: tapeOf(one)?.reel ?? '', part: tapeOf(one)?.part ?? '' },
      { slot: two?.slot ?? '', reel: tapeOf(two)?.reel ?? '', part: tapeOf(two)?.part ?? '' },
      { slot: other?.slot ?? '', reel: 'R-978001', part: tapeOf(other)?.part ?? '' },
    ];
    const bank = hung.flatMap(({ slot, reel, part }, at): readonly ShelfLabel[] => [
      { text: slot, print: slot, x: 290 + at * 220, y: 60 },
      {
        text: reelLabel({ P: part, Q: '4000', '1T': `LT-${at}`, '3S': reel }),
        print: part,
        x: 290 + at * 220,
        y: 300,
      },
    ]);
    const tablet = await openTablet(await passOver(bank, passing(0, 40)), demo.url, { hash: '#/load' });
    const { page } = tablet;
    await tap(page, 'Sweep with the camera');
    await page.getByTestId('find-asked').getByText('Not the reel in the log').waitFor();
    const swept = async () =>
      (await ownEntries(page, 'reel.verified')).map(({ payload }) => [
        payload['slot'],
        payload['act'],
        payload['verdict'],
      ]);
    await expect.poll(async () => (await swept()).length).toBe(2);
    // Which of the two is sure first is the picture's affair.
    expect((await swept()).sort()).toEqual([
      [hung[0]?.slot, 'sweep', 'accepted'],
      [hung[1]?.slot, 'sweep', 'accepted'],
    ]);
    const sighted = async () =>
      (await ownEntries(page, 'reel.sighted'))
        .map(({ payload: { slot, belongs } }) => [slot, belongs])
        .sort();
    await expect.poll(sighted).toEqual([
      [hung[0]?.slot, 'nearest-below'],
      [hung[1]?.slot, 'nearest-below'],
    ]);
    // Of the three only the one that was not ticked is missing.
    const missing = async () => {
      const told = await page.getByTestId('find-missing').locator('span').allTextContents();
      return hung.map(({ slot }) => told.includes(slot));
    };
    await expect.poll(missing).toEqual([false, false, true]);
    await look(page, { where: 'find' });
    // A person says that it hangs there: the desk judges it as if slot and reel had been scanned.
    await tap(page, 'Check this slot');
    await page.getByTestId('verdict').waitFor();
    expect((await swept()).at(-1)?.slice(0, 2)).toEqual([hung[2]?.slot, 'sweep']);
    await tablet.putAway();
  });
});
