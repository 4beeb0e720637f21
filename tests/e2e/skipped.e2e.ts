// Panels of several boards on a line: which boards of the next panel are skipped, how many on many panels, panels that are scrapped; what
// the log then says, and what is left on the slot.

import { mkdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tap } from './support/finger.ts';
import { goOn, goTo, ownEntries, pad, reelLabel, scanAll, steady } from './support/floor.ts';
import { look } from './support/look.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
const shots = process.env['REELWARD_SHOTS'];

describe('skipped boards', () => {
  it('are entered beside the count, and no parts are taken off for them', () =>
    demo.onTablet(
      async ({ page }) => {
        const picture = async (name: string) => {
          await look(page, { where: name });
          if (shots === undefined) return;
          mkdirSync(shots, { recursive: true });
          for (const [width, height] of [
            [1280, 800],
            [390, 844],
          ] as const) {
            await page.setViewportSize({ width, height });
            await page.screenshot({ path: `${shots}/${name}-${width}.png` });
          }
          await page.setViewportSize({ width: 1280, height: 800 });
        };
        await goTo(page, 'plant');
        await page.getByTestId('tile-sheet').click();
        await page
          .getByTestId('sheet-paste')
          .fill('Slot\tPart\tQty per panel\tTape width\tPitch\nK1-F-001\tBW-1\t80\t8\t4\n');
        await page.getByTestId('sheet-paste-read').click();
        await page.getByTestId('take-product').fill('Fell switch');
        await page.getByTestId('take-revision').fill('1');
        await page.getByTestId('take-boards').fill('0');
        await page.getByTestId('take-bottom').click();
        await page.getByTestId('take-new-line').click();
        await expect.poll(() => page.getByTestId('sheet-take').getAttribute('aria-disabled')).toBe('true');
        await page.getByTestId('take-boards').fill('8');
        await page.getByTestId('sheet-take').click();
        await page.getByTestId('sheet-build').click();
        const reel = reelLabel({ P: 'BW-1', Q: '17000', '1T': 'LT-A', '3S': 'R-981001' });
        expect((await scanAll(page, 'K1-F-001', reel)).verdict).toBe('accepted');
        await goOn(page);
        await goTo(page, 'line');
        await page.getByTestId('run-start').click();
        await page.getByTestId('panels-wanted').fill('400');
        await page.getByTestId('panel-seconds').fill('30');
        await page.getByTestId('run-start-yes').click();
        const panels = () => page.locator('.runbar .panels').textContent();
        await expect.poll(panels).toBe('0 of 400 panels');

        // A tap says nothing of skips while nobody entered any, and the screen says so.
        await page.getByTestId('plus-one').click();
        await expect.poll(panels).toBe('1 of 400 panels');
        await page.getByTestId('skips-unknown').waitFor();
        await picture('runbar-unknown');

        await page.getByTestId('skipped').click();
        await page.getByTestId('board-3').click();
        await page.getByTestId('board-8').click();
        await picture('boards');
        await page.getByTestId('skipped-use').click();
        await page.getByTestId('plus-one').click();
        await expect.poll(panels).toBe('2 of 400 panels');
        await page.getByTestId('skips-unknown').waitFor({ state: 'detached' });
        await steady(page);
        await page.getByTestId('plus-one').click();
        await expect.poll(panels).toBe('3 of 400 panels');

        await page.getByTestId('plus-many').click();
        await pad(page, '197');
        await page.getByTestId('skipped-unknown').waitFor();
        await picture('many');
        await pad(page, '198');
        await expect.poll(panels).toBe('200 of 400 panels');
        const counted = await ownEntries(page, 'panels.counted');
        expect(counted.map(({ payload }) => payload['skipped'])).toEqual([undefined, [3, 8], 0, 198]);

        // Scrapped panels stay counted.
        await page.getByTestId('plus-many').click();
        await page.getByTestId('panels-scrapped').click();
        await pad(page, '2');
        await expect.poll(() => page.getByTestId('scrapped').textContent()).toBe('2 panels scrapped');
        await expect.poll(panels).toBe('200 of 400 panels');
        await picture('runbar');
        // Also while the line stands, which is when they are looked at.
        await page.getByTestId('run-stop').click();
        await page.getByTestId('stop-quality').click();
        await tap(page, 'Scrap panels');
        await picture('stopped');
        await pad(page, '1');
        await expect.poll(() => page.getByTestId('scrapped').textContent()).toBe('3 panels scrapped');
        await page.getByTestId('run-resume').click();
        await page.getByTestId('run-stop').waitFor();
        const [taken] = await ownEntries(page, 'setup.taken');
        expect(taken?.payload['boardsPerPanel']).toBe(8);

        // A figure for each width of tape that the line knows.
        await goTo(page, 'plant');
        await page.getByTestId('tile-rules').click();
        await page.getByTestId('rule-splice-8').fill('6');
        await picture('rules');
        await page.getByTestId('rule-fullest-first').click();
        await page.getByTestId('rules-save').click();
        await expect.poll(async () => (await ownEntries(page, 'line.ruled')).length).toBeGreaterThan(0);
        await expect.poll(async () => (await ownEntries(page, 'line.splices-ruled')).length).toBe(1);
        const [ruled] = await ownEntries(page, 'line.splices-ruled');
        expect(ruled?.payload['costs']).toEqual([{ tapeWidthMm: 8, parts: 6 }]);
        const rules = await ownEntries(page, 'line.ruled');
        expect(rules.at(-1)?.payload['pickOrder']).toBe('fullest-first');

        // 199 panels of known skips: 200 of 1592 boards; 17 000 less about 10 a board built.
        await goTo(page, 'load');
        await page.getByRole('button', { name: 'K1-F-001' }).first().click();
        await expect
          .poll(async () => {
            const text = (await page.getByRole('dialog').textContent()) ?? '';
            return [...text.matchAll(/(\d,\d{3})/g)].map(([found]) => Number(found.replace(',', '')));
          })
          .toSatisfy((seen: readonly number[]) => seen.some((parts) => parts > 2900 && parts < 3100));
      },
      { badge: 'BADGE-4401' },
    ));
});
