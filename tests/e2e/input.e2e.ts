// Where a scan goes and where it does not: to the task in hand, never into the field or onto the button that has the focus; and
// what the app says to codes that are none of its business.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { drawn, pass } from './support/clock.ts';
import {
  goTo,
  keepRunning,
  openTablet,
  ownEntries,
  reelLabel,
  scan,
  scanAll,
  seeVerdict,
  steady,
  type Tablet,
  typeByHand,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const onTablet = (badge: string, work: (tablet: Tablet) => Promise<void>) => demo.onTablet(work, { badge });

/** Counts clicks that reach the page from now on. */
async function countClicks(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const scope = globalThis as { clicks?: number };
    scope.clicks = 0;
    addEventListener('click', () => (scope.clicks = (scope.clicks ?? 0) + 1), true);
  });
  return () => page.evaluate(() => (globalThis as { clicks?: number }).clicks ?? 0);
}

describe('a scan', () => {
  it('in the middle of a dialog goes to the task, and the focused field stays as it was', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await page.getByTestId('dock-type').click();
      const field = page.getByTestId('typed');
      await field.fill('half a word');
      await field.focus();
      await scan(page, 'M2-F-023');
      await expect.poll(() => page.getByTestId('well-slot').textContent()).toContain('M2-F-023');
      await expect.poll(() => field.inputValue()).toBe('half a word');
      await scan(page, 'F-0112');
      expect((await scanAll(page, reelLabel({ P: '22-0603-B', Q: '4000', '3S': 'R-950001' }))).verdict).toBe(
        'accepted',
      );
      await expect.poll(() => field.inputValue()).toBe('half a word');
    });
  });

  it('made while a screen is still coming in is that screen’s', async () => {
    const context = await demo.browser.newContext({ serviceWorkers: 'block' });
    let arrive = () => {};
    const arrived = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    await context.route(/\/assets\/Stock-[^/]*\.js/, async (route) => {
      await arrived;
      await route.continue();
    });
    const { page, putAway } = await openTablet(demo.browser, demo.url, { context });
    await page.getByTestId('nav-stock').click();
    await page.locator('main [data-coming]').waitFor({ state: 'attached' });
    await scan(page, reelLabel({ P: '22-0603-B', Q: '4000', '3S': 'R-950004' }));
    arrive();
    await page.getByTestId('put-new').waitFor();
    await page.getByTestId('well-idle').waitFor(); // not taken by the line's task as well
    await putAway();
    await context.close();
  });

  it('of a badge fills the form of a person, whichever field has the focus', async () => {
    await onTablet('BADGE-4401', async ({ page }) => {
      await page.goto(`${demo.url}#/plant/people`);
      await page.getByTestId('person-add').click();
      await page.getByTestId('person-name').fill('Sorcha');
      await page.getByTestId('person-name').focus();
      await scan(page, 'BADGE-7701');
      await expect.poll(() => page.getByTestId('person-badge').inputValue()).toBe('BADGE-7701');
      await expect.poll(() => page.getByTestId('person-name').inputValue()).toBe('Sorcha');
      await page.getByTestId('person-save').click();
      await page.getByText('Sorcha saved.').waitFor();
      const added = (await ownEntries(page, 'person.added')).at(-1)?.payload;
      expect(added).toMatchObject({ name: 'Sorcha', badgeMark: { key: expect.any(String) } });
      expect(JSON.stringify(added)).not.toContain('BADGE-7701');
    });
  });

  it.each(['line', 'load', 'log', 'plant'])(
    'presses nothing that has the focus on the %s screen',
    async (screen) => {
      await onTablet('BADGE-2201', async ({ page }) => {
        await goTo(page, screen);
        const clicks = await countClicks(page);
        // The badge's keys have unlocked the sound: what said that it was locked goes.
        await page.getByTestId('sound-locked').waitFor({ state: 'detached' });
        const buttons = page.locator('main button, main a, .dock button, nav a, .topbar button');
        const count = await buttons.count();
        expect(count).toBeGreaterThan(8);
        // Of the many alike, every seventh; of the few that stand alone, each.
        const chosen = Array.from({ length: count }, (_, index) => index).filter(
          (i) => count < 40 || i % 7 === 0,
        );
        for (const index of chosen) {
          // There may be fewer by now: a message that offered something has gone.
          const focused = await buttons.evaluateAll((elements, at) => {
            const element = elements[at] as HTMLElement | undefined;
            element?.focus();
            return element !== undefined && document.activeElement === element;
          }, index);
          if (!focused) continue;
          await scan(page, 'BADGE-2201');
        }
        expect(await clicks()).toBe(0);
      });
    },
  );

  it('presses no button of a dialog', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await keepRunning(page);
      await page.getByTestId('run-stop').click();
      const clicks = await countClicks(page);
      for (const name of ['stop-jam', 'stop-other']) {
        await page.getByTestId(name).focus();
        await scan(page, 'M2-F-023');
      }
      expect(await clicks()).toBe(0);
      expect((await ownEntries(page, 'run.stopped')).length).toBe(0);
    });
  });
});

describe('a person', () => {
  it('types into a field, space and Enter included', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await goTo(page, 'log');
      await page.getByTestId('log-filters').click();
      const field = page.getByTestId('filter-slot');
      await field.focus();
      await typeByHand(page, 'm2-f-023');
      await expect.poll(() => field.inputValue()).toBe('m2-f-023');
      await page.keyboard.press('Backspace');
      await expect.poll(() => field.inputValue()).toBe('m2-f-02');
      await page.getByTestId('dock-type').click();
      const typed = page.getByTestId('typed');
      await typed.focus();
      await typeByHand(page, 'M2-F-023');
      await page.keyboard.press('Enter');
      await typeByHand(page, 'F-0112');
      await expect.poll(() => typed.inputValue()).toBe('M2-F-023\nF-0112');
      await page.getByTestId('typed-done').click();
      await expect.poll(() => page.getByTestId('well-feeder').textContent()).toContain('F-0112');
      await expect.poll(() => page.getByTestId('well-slot').textContent()).toContain('M2-F-023');
    });
  });

  it('finds a question open as soon as it stands there, and keeps the field that was taken in hand', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      const seen = await page.evaluate(
        () =>
          new Promise<boolean>((resolve) => {
            new MutationObserver((_, observer) => {
              const dialog = document.querySelector('dialog');
              if (!dialog) return;
              observer.disconnect();
              dialog.querySelector('textarea')?.focus();
              resolve(dialog.open);
            }).observe(document, { childList: true, subtree: true });
            document.querySelector<HTMLElement>('[data-testid=dock-type]')?.click();
          }),
      );
      expect(seen).toBe(true);
      await drawn(page);
      await typeByHand(page, 'M2-F-023');
      await expect.poll(() => page.getByTestId('typed').inputValue()).toBe('M2-F-023');
    });
  });

  it('leaves a question at once by Escape, and one that the browser closed is gone for the app too', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      const left = () => page.locator('dialog').waitFor({ state: 'detached' });
      await page.getByTestId('dock-type').click();
      // Its part comes with the first use: Escape before it is there has nothing to leave.
      await page.locator('dialog').waitFor();
      await page.keyboard.press('Escape');
      await left();
      await steady(page);
      await page.getByTestId('dock-type').click();
      await page.locator('dialog').evaluate((dialog: HTMLDialogElement) => dialog.close());
      await left();
    });
  });

  it('presses a focused button with Enter and with the space bar', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await pass(page, 900); // later than a scanner's stray Enter
      await page.getByTestId('line-all').focus();
      const before = await page.getByTestId('line-all').textContent();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByTestId('line-all').textContent()).not.toBe(before);
      await steady(page);
      await page.keyboard.press('Space');
      await expect.poll(() => page.getByTestId('line-all').textContent()).toBe(before);
    });
  });

  it('types a whole label by hand', async () => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await page.getByTestId('dock-type').click();
      await page.getByTestId('typed').fill('M2-F-023\nF-0112\nP22-0603-B\nQ3500\n1TLT-9300-G\n3SR-950002');
      await page.getByTestId('typed-done').click();
      expect((await seeVerdict(page)).verdict).toBe('accepted');
      const [entry] = await ownEntries(page, 'reel.verified');
      expect(entry?.payload).toMatchObject({
        part: '22-0603-B',
        quantity: 3500,
        lot: 'LT-9300-G',
        via: 'typed',
      });
    });
  });
});

describe('a code that is not what is wanted', () => {
  const told = (page: Page) => page.getByTestId('told').textContent();

  it.each([
    {
      what: 'half a label',
      text: '[)>\u001e06\u001dQ4000\u001d1TLT-1',
      says: 'Only part of the label was read',
    },
    {
      what: 'a whole label without a part number',
      text: '[)>\u001e06\u001dQ4000\u001d1TLT-1\u001e\u0004',
      says: 'No part number on this label is known here',
    },
    {
      what: 'what another keyboard spoiled',
      text: 'P22ß0603ßY',
      says: 'The scanner types for another keyboard, German (QWERTZ)',
    },
    {
      // GS1 General Specifications, 3.2 and 3.4.1: (01) GTIN, (17) use by, (10) batch; the GTIN is GS1's own example.
      what: 'a food label',
      text: '0109506000134352172612311\u001d10AB12',
      says: null,
    },
    {
      what: 'an address on the web',
      text: 'https://example.org/menu?table=4',
      says: 'is not a known slot, feeder, badge',
    },
    { what: 'a ticket', text: 'M1DOE/JANE EABC123', says: 'is not a known slot, feeder, badge' },
  ])('is told as such and changes nothing: $what', async ({ text, says }) => {
    await onTablet('BADGE-2201', async ({ page }) => {
      await scan(page, 'M2-F-022');
      await scan(page, text);
      if (says === null)
        await expect.poll(() => told(page)).toMatch(/No part number on this label|is not a known slot/);
      else await expect.poll(() => told(page)).toContain(says);
      expect(await ownEntries(page, 'reel.verified')).toEqual([]);
      // The slot stays in hand.
      const good = reelLabel({ P: '22-0603-Y', Q: '4000', '3S': 'R-950003' });
      expect((await scanAll(page, good)).verdict).toBe('accepted');
    });
  });

  it('is asked about where two lists know it', async () => {
    await onTablet('BADGE-4401', async ({ page }) => {
      await page.goto(`${demo.url}#/plant/people`);
      await page.getByTestId('person-add').click();
      await page.getByTestId('person-name').fill('Two of a kind');
      await page.getByTestId('person-badge').fill('F-0112');
      await page.getByTestId('person-save').click();
      await page.getByText('Two of a kind saved.').waitFor();
      await goTo(page, 'load');
      await scan(page, 'M2-F-023');
      await scan(page, 'F-0112');
      const dialog = page.locator('dialog[open]');
      await dialog.getByText('This code has two meanings').waitFor();
      await expect
        .poll(() => dialog.getByRole('button').allTextContents())
        .toEqual(['Feeder', 'Badge', 'Cancel']);
      await dialog.getByRole('button', { name: 'Feeder' }).click();
      await expect.poll(() => page.getByTestId('well-feeder').textContent()).toContain('F-0112');
      await expect.poll(() => page.getByTestId('sign-in').textContent()).toContain('Elif');
    });
  });
});

describe('who works here', () => {
  it('goes off the list only after the question, and not where nobody could add people afterwards', async () => {
    await onTablet('BADGE-4401', async ({ page }) => {
      await page.goto(`${demo.url}#/plant/people`);
      await page.getByTestId('person-remove-BADGE-2201').click();
      const dialog = page.locator('dialog[open]');
      await dialog.getByText('Ailsa').first().waitFor();
      await dialog.getByRole('button', { name: 'Cancel', exact: true }).click();
      expect(await ownEntries(page, 'person.removed')).toEqual([]);
      // Everybody who may add people goes, but the last one stays.
      const leads = await page
        .locator('[data-testid^="person-remove-BADGE-3"], [data-testid^="person-remove-BADGE-4"]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-testid') ?? ''));
      const others = leads.filter((id) => !id.endsWith('BADGE-4401'));
      for (const id of others) {
        await page.getByTestId(id).click();
        await page.getByTestId('person-remove-yes').click();
        await dialog.waitFor({ state: 'detached' });
      }
      await page.getByTestId('person-remove-BADGE-4401').click();
      await expect
        .poll(() => page.getByTestId('person-remove-yes').getAttribute('aria-disabled'))
        .toBe('true');
      await dialog.getByText('Nobody else here may add people').waitFor();
      expect(await ownEntries(page, 'person.removed')).toHaveLength(others.length);
    });
  });
});
