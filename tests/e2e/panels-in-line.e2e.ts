// Panels in the line learnt from scans at both ends: before a machine nothing is counted; counted later, the rules show what lay between.

import { expect, it } from 'vitest';
import { goTo, keepRunning, ownEntries, readLog, scan } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo({ badge: 'BADGE-4401' });

it('a tablet before a machine sees panels and counts none; with their counts the line learns how many lie between', () =>
  demo.onTablet(async ({ page }) => {
    await keepRunning(page);
    const run = (await readLog(page)).filter(({ kind }) => kind === 'run.started').at(-1)?.payload;
    const codes = [1, 2, 3].map((at) => `${String(run?.['panelPrefix'])}990${at}`);
    const at = async (which: string) => {
      await goTo(page, 'plant');
      await page.getByTestId('tile-tablet').click();
      await page.getByTestId(`panels-at-${which}`).click();
      await goTo(page, 'line');
    };
    await at('M1');
    await page.getByTestId('panels-at').waitFor();
    const before = (await ownEntries(page, 'panels.counted')).length;
    for (const code of codes) await scan(page, code);
    await expect.poll(async () => (await ownEntries(page, 'panel.seen')).length).toBe(3);
    expect((await ownEntries(page, 'panels.counted')).length).toBe(before);
    await at('count');
    await page.getByTestId('panels-at').waitFor({ state: 'detached' });
    for (const code of codes) await scan(page, code);
    await expect.poll(async () => (await ownEntries(page, 'panels.counted')).length).toBe(before + 3);
    await goTo(page, 'plant');
    await page.getByTestId('tile-rules').click();
    // All three went in before any was counted: with itself three lay between for the last.
    await expect
      .poll(() => page.getByTestId('in-line-M1-behind-seen').textContent())
      .toContain('3 panels were scanned at both places: up to 3');
    await page.getByTestId('in-line-take').click();
    await expect.poll(() => page.getByTestId('in-line-M1-behind').inputValue()).toBe('3');
    await page.getByTestId('in-line-save').click();
    await expect.poll(async () => (await ownEntries(page, 'line.panels-ruled')).length).toBe(1);
    expect((await ownEntries(page, 'line.panels-ruled'))[0]?.payload['machines']).toContainEqual({
      machine: 'M1',
      least: 0,
      most: 3,
    });
  }));
