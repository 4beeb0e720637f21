// An engineer comes with a placement file and a bill of materials and no sheet: from the two files to the first accepted reel on a slot that was
// proposed, by what is touched on the page.

import type { Locator, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { drawn } from './support/clock.ts';
import { press, touch } from './support/finger.ts';
import { goOn, ownEntries, reelLabel, scanAll } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401', hash: '#/plant/sheet' });

async function give(page: Page, name: string, content: string, input: string): Promise<void> {
  const file = { name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) };
  await page.getByTestId(`file-${input}`).first().setInputFiles(file);
  await drawn(page);
  await page.getByTestId('reading').waitFor({ state: 'detached', timeout: 60_000 });
}

/** A line of its own, known by one sheet: nothing runs on it, and nothing stands there. */
async function defineLine(page: Page): Promise<void> {
  const rows =
    'Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-003\tBW-1\t4\t8\t4\nK1-F-012\tBW-9\t1\t8\t4\n';
  await page.getByTestId('sheet-paste').fill(rows);
  await press(page, 'sheet-paste-read');
  await page.getByTestId('take-product').fill('Fell switch');
  await page.getByTestId('take-revision').fill('1');
  await press(page, 'take-top');
  await press(page, 'take-new-line');
  await press(page, 'sheet-take');
  await page.getByTestId('sheet-taken').waitFor();
  await press(page, 'sheet-next');
}

const places = [
  'Ref      Val     Package  PosX    PosY   Rot    Side',
  'R1       10k     R_0603   10.5    3.2    0      top',
  'R2       10k     R_0603   12.5    3.2    0      top',
  'C1       100n    C_0603   14.5    3.2    90     top',
  'U1       ctl     SOIC-8   20.0    9.9    180    top',
  'H1       hole    M3       1.0     1.0    0      top',
  'FID1     fid     FID      0.5     0.5    0      top',
].join('\n');
const bill = 'Part,Qty,Designators,MPN\nBW-1,2,R1-R2,KP-1\nBW-2,1,C1,KP-2\nBW-3,1,U1,KP-3\n';

it('leads from two files to the first accepted reel on a proposed slot', async () => {
  await demo.onTablet(async ({ page }) => {
    await page.getByTestId('file-sheet').first().waitFor({ state: 'attached' });
    await defineLine(page);
    // Chosen where a sheet is looked for, and told as what it is.
    await give(page, 'tarn.pos', `${places}\n`, 'sheet');
    await page.getByTestId('board').waitFor();
    await expect.poll(() => page.getByTestId('board-not-placed').textContent()).toContain('FID1');
    await give(page, 'tarn-bill.csv', bill, 'bill');
    await expect.poll(() => page.getByTestId('bill-count').textContent()).toContain('3 parts');
    await page.getByTestId('boards').fill('2');
    await page.getByTestId('reading').waitFor({ state: 'detached' });
    await expect.poll(() => page.getByTestId('slots').textContent()).toContain('not a placement program');
    await look(page, { where: 'a board before its proposal' });
    await press(page, 'propose');
    await page.getByTestId('slots-difference').waitFor();
    const row = (part: string) => page.getByTestId(`slot-row-${part}`);
    await expect.poll(() => row('BW-1').textContent()).toContain('K1-F-003');
    await expect.poll(() => row('BW-1').textContent()).toContain('as in Fell switch');
    await expect.poll(() => row('BW-1').textContent()).toContain('4 per panel');
    await expect
      .poll(() => page.getByTestId('slots-difference').textContent())
      .toContain('3 feeders to put in');
    await look(page, { where: 'a board with its proposal' });
    // On paper there is the loading sheet and nothing else.
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.load-paper').isVisible()).toBe(true);
    await expect.poll(() => page.locator('.load-paper').textContent()).toContain('K1-F-003');
    await expect.poll(() => page.locator('.load-paper svg').count()).toBe(3);
    expect(await page.getByTestId('slots').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    // Another slot for one part: what it breaks is told before, and a free one is taken.
    await touch(page, row('BW-3'));
    await press(page, 'pick-K1-F-012');
    await expect
      .poll(() => page.getByTestId('pick-effects').textContent())
      .toContain('past the end of the bank');
    await press(page, 'pick-K1-F-006');
    await expect.poll(() => page.getByTestId('pick-effects').textContent()).toContain('K1-F-006 is free.');
    await look(page, { where: 'another slot' });
    await press(page, 'pick-use');
    await expect.poll(() => row('BW-3').textContent()).toContain('K1-F-006');
    // On a slot that another part has, the two change places.
    await touch(page, row('BW-2'));
    await press(page, 'pick-K1-F-003');
    await expect
      .poll(() => page.getByTestId('pick-effects').textContent())
      .toContain('BW-1 stands on K1-F-003');
    await press(page, 'pick-use');
    await expect.poll(() => row('BW-2').textContent()).toContain('K1-F-003');
    await page.getByTestId('take-product').fill('Tarn switch');
    await page.getByTestId('take-revision').fill('1');
    await press(page, 'sheet-take');
    await page.getByTestId('sheet-taken').waitFor();
    const [, taken] = await ownEntries(page, 'setup.taken');
    expect(taken?.payload).toMatchObject({
      product: 'Tarn switch',
      side: 'top',
      source: 'tarn.pos + tarn-bill.csv',
      boardsPerPanel: 2,
    });
    const { slots } = (taken ?? { payload: { slots: [] } }).payload as { readonly slots: readonly object[] }; // a setup's payload
    expect(slots).toContainEqual(
      expect.objectContaining({ slot: 'K1-F-003', part: 'BW-2', perPanel: 2, supplierParts: ['KP-2'] }),
    );
    // A usual width gives room and is not written down as known.
    expect(slots).toContainEqual(
      expect.objectContaining({ slot: 'K1-F-006', part: 'BW-3', positions: 2, tapeWidthMm: null }),
    );
    await press(page, 'sheet-build');
    await page.getByTestId('screen-load').waitFor();
    const label = reelLabel({ P: 'BW-2', '1P': 'KP-2', Q: '4000', '1T': 'LT-7', '3S': 'R-77001' });
    expect((await scanAll(page, 'K1-F-003', 'F-0113', label)).verdict).toBe('accepted');
    await goOn(page);
  });
});

/** From the middle of one thing to the middle of another, in steps as a hand moves. */
async function middles(from: Locator, to: Locator) {
  await from.scrollIntoViewIfNeeded();
  const [a, b] = [await from.boundingBox(), await to.boundingBox()];
  if (a === null || b === null) throw new Error('nothing to drag is shown');
  const middle = ({ x, y, width, height }: typeof a) => ({ x: x + width / 2, y: y + height / 2 });
  const [start, end] = [middle(a), middle(b)];
  const steps = [0.25, 0.5, 0.75, 1].map((part) => ({
    x: start.x + (end.x - start.x) * part,
    y: start.y + (end.y - start.y) * part,
  }));
  return { start, steps };
}

it('has a part dragged to another slot by mouse and by finger, and put back where it is let go elsewhere', async () => {
  await demo.onTablet(async ({ page }) => {
    await page.getByTestId('file-sheet').first().waitFor({ state: 'attached' });
    await defineLine(page);
    await give(page, 'tarn.pos', `${places}\n`, 'sheet');
    await give(page, 'tarn-bill.csv', bill, 'bill');
    await press(page, 'propose');
    await page.getByTestId('slots-difference').waitFor();
    const row = (part: string) => page.getByTestId(`slot-row-${part}`);
    const slotOf = async (part: string) => /K1-F-\d+/.exec((await row(part).textContent()) ?? '')?.[0];
    const free = page.locator('[data-testid^=slot-free-]').last();
    const target = await free.getAttribute('data-drop');
    // By mouse, onto a free slot: what it does is told on the way.
    const byMouse = await middles(page.getByTestId('grip-BW-3'), free);
    await page.mouse.move(byMouse.start.x, byMouse.start.y);
    await page.mouse.down();
    for (const { x, y } of byMouse.steps) await page.mouse.move(x, y);
    await expect.poll(() => page.getByTestId('drag-ghost').textContent()).toContain(`BW-3 → ${target}`);
    await look(page, { where: 'a part on its way' });
    await page.mouse.up();
    await expect.poll(() => slotOf('BW-3')).toBe(target);
    await expect.poll(() => row('BW-3').textContent()).toContain('chosen by you');
    // By finger, onto a slot that is taken: the two change places.
    const [first, second] = [await slotOf('BW-1'), await slotOf('BW-2')];
    const byFinger = await middles(page.getByTestId('grip-BW-2'), row('BW-1'));
    const hand = await page.context().newCDPSession(page);
    const touchPoint = ({ x, y }: { readonly x: number; readonly y: number }) => [{ x, y }];
    await hand.send('Input.dispatchTouchEvent', {
      type: 'touchStart',
      touchPoints: touchPoint(byFinger.start),
    });
    for (const at of byFinger.steps)
      await hand.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: touchPoint(at) });
    await hand.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(async () => [await slotOf('BW-2'), await slotOf('BW-1')]).toEqual([first, second]);
    // Let go beside the list: nothing moves.
    const beside = await middles(page.getByTestId('grip-BW-2'), page.locator('.topbar'));
    await page.mouse.move(beside.start.x, beside.start.y);
    await page.mouse.down();
    for (const { x, y } of beside.steps) await page.mouse.move(x, y);
    await page.getByTestId('drag-ghost').waitFor();
    await page.mouse.up();
    await page.getByTestId('drag-ghost').waitFor({ state: 'detached' });
    expect([await slotOf('BW-1'), await slotOf('BW-2')]).toEqual([second, first]);
    // Given up with Escape, and let go over a free slot after that: nothing moves either.
    const back = await middles(page.getByTestId('grip-BW-2'), free);
    await page.mouse.move(back.start.x, back.start.y);
    await page.mouse.down();
    for (const { x, y } of back.steps) await page.mouse.move(x, y);
    await page.keyboard.press('Escape');
    await page.getByTestId('drag-ghost').waitFor({ state: 'detached' });
    await page.mouse.up();
    expect(await slotOf('BW-2')).toBe(first);
  });
});

it('proposes two boards together, and takes in first the one in hand and then the one that waited', async () => {
  await demo.onTablet(async ({ page }) => {
    await page.getByTestId('file-sheet').first().waitFor({ state: 'attached' });
    await defineLine(page);
    await give(page, 'tarn.pos', `${places}\n`, 'sheet');
    await give(page, 'tarn-bill.csv', bill, 'bill');
    await press(page, 'propose');
    await page.getByTestId('slots-difference').waitFor();
    await page.getByTestId('take-product').fill('Tarn switch');
    await page.getByTestId('take-revision').fill('1');
    await press(page, 'slots-add-board');
    await page.getByTestId('boards-held').waitFor();
    await give(page, 'moor.pos', `${places}\n`, 'sheet');
    await give(page, 'moor-bill.csv', bill.replace('BW-1', 'BW-7'), 'bill');
    await expect.poll(() => page.getByTestId('slots-together').textContent()).toContain('Tarn switch');
    await press(page, 'propose');
    await page.getByTestId('slots-difference').waitFor();
    await look(page, { where: 'two boards together' });
    await page.getByTestId('take-product').fill('Moor switch');
    await page.getByTestId('take-revision').fill('1');
    await press(page, 'sheet-take');
    await page.getByTestId('sheet-taken').waitFor();
    await press(page, 'board-take-up');
    // All that was said of it is still there.
    await expect.poll(() => page.getByTestId('take-product').inputValue()).toBe('Tarn switch');
    await press(page, 'sheet-take');
    await page.getByTestId('sheet-taken').waitFor();
    interface Taken {
      readonly product: string;
      readonly slots: readonly { readonly slot: string; readonly part: string }[];
    }
    const taken = (await ownEntries(page, 'setup.taken')).map(({ payload }) => payload as unknown as Taken); // as the sheet wrote it
    const slotsOf = (product: string) =>
      Object.fromEntries(
        taken.find((each) => each.product === product)?.slots.map(({ part, slot }) => [part, slot]) ?? [],
      );
    const [moor, tarn] = [slotsOf('Moor switch'), slotsOf('Tarn switch')];
    expect(Object.keys(moor).sort()).toEqual(['BW-2', 'BW-3', 'BW-7']);
    expect(Object.keys(tarn).sort()).toEqual(['BW-1', 'BW-2', 'BW-3']);
    // What both place stands on one slot of the line.
    expect([moor['BW-2'], moor['BW-3']]).toEqual([tarn['BW-2'], tarn['BW-3']]);
    expect(moor['BW-7']).not.toBe(tarn['BW-1']);
  });
});

it('has a bill corrected column by column, remembers it, and goes back to a sheet where the file was one', async () => {
  await demo.onTablet(async ({ page }) => {
    await give(page, 'tarn.pos', `${places}\n`, 'placements');
    const odd = bill.replace('Part,Qty,Designators,MPN', 'Thing,Much,Where,Whose');
    await give(page, 'tarn-bill.csv', odd, 'bill');
    await expect.poll(() => page.getByTestId('problems').textContent()).toContain('No column for');
    await expect.poll(() => page.getByTestId('propose').getAttribute('aria-disabled')).toBe('true');
    await look(page, { where: 'a bill that is refused' });
    const choose = async (index: number, field: string) => {
      await page.getByTestId(`bill-columns-${index}`).locator('select').selectOption(field);
      await drawn(page);
      await page.getByTestId('reading').waitFor({ state: 'detached' });
    };
    await expect.poll(() => page.getByTestId('bill-columns-0').textContent()).toContain('BW-1 · BW-2 · BW-3');
    await choose(0, 'part');
    await choose(3, 'supplierParts');
    await expect.poll(() => page.getByTestId('joined').textContent()).toContain('KP-1');
    await give(page, 'moor-bill.csv', odd, 'bill');
    await expect
      .poll(() => page.getByTestId('bill-columns').textContent())
      .toContain('as you set them last time');
    await expect.poll(() => page.getByTestId('propose').getAttribute('aria-disabled')).toBe('false');
    await press(page, 'read-as-sheet');
    await page.getByTestId('columns').waitFor();
    await expect.poll(() => page.getByTestId('problems').textContent()).toContain('No column for slot');
  });
});
