// The running line: counting, stopping, the forecast and its warnings, splicing. Order of need is checked against plain
// division (parts left ÷ parts a panel), which knows nothing of the app's forecast.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import { drawn } from './support/clock.ts';
import {
  endRun,
  goOn,
  goTo,
  keepRunning,
  lookAgain,
  ownEntries,
  pad,
  readLog,
  reelLabel,
  scan,
  scanAll,
  seeVerdict,
  steady,
  tap,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const { onTablet } = demo;

interface WantedSlot {
  readonly slot: string;
  readonly part: string;
  readonly perPanel: number;
  readonly pitchMm: number;
}

/** What the running setup wants, slot by slot, from its entry. */
async function wantedSlots(page: Page): Promise<ReadonlyMap<string, WantedSlot>> {
  const taken = (await readLog(page)).find(
    ({ kind, payload }) => kind === 'setup.taken' && payload['setup'] === 'tide-gauge-top-C',
  );
  const slots = (taken?.payload['slots'] ?? []) as unknown as readonly WantedSlot[]; // shape of the entry
  return new Map(slots.map((slot) => [slot.slot, slot]));
}

/** Rows of the forecast as shown: slot and parts left. */
async function shownRows(page: Page): Promise<readonly { slot: string; parts: number; level: string }[]> {
  await page.getByTestId('timeline').waitFor();
  return page.locator('.slotrow').evaluateAll((rows) =>
    rows.map((row) => ({
      slot: row.querySelector('.who b')?.textContent ?? '',
      parts: Number(
        /· ([\d,]+)/.exec(row.querySelector('.due')?.textContent ?? '')?.[1]?.replaceAll(',', ''),
      ),
      level: row.getAttribute('data-level') ?? '',
    })),
  );
}

async function panelsText(page: Page): Promise<string | null> {
  return page.locator('.runbar .panels').textContent();
}

async function runningReel(page: Page, slot: string): Promise<{ reel: string; part: string; lot: string }> {
  const last = (await readLog(page))
    .filter(
      ({ kind, payload }) =>
        kind === 'reel.verified' &&
        payload['slot'] === slot &&
        payload['verdict'] === 'accepted' &&
        payload['act'] !== 'sweep',
    )
    .at(-1)?.payload;
  return { reel: String(last?.['reel']), part: String(last?.['part']), lot: String(last?.['lot']) };
}

describe('a run', () => {
  it('is ended and started, counted by taps and by codes, stopped with a reason, resumed, and a count taken back', async () => {
    await onTablet(async ({ page }) => {
      await endRun(page);
      await page.getByTestId('run-start').click();
      await page.getByTestId('panels-wanted').fill('zero');
      await tap(page.getByTestId('run-start-yes'));
      expect(await ownEntries(page, 'run.started')).toEqual([]);
      await page.getByTestId('panels-wanted').fill('300');
      await page.getByTestId('panel-seconds').fill('20');
      await page.getByTestId('run-start-yes').click();
      await expect.poll(() => panelsText(page)).toBe('0 of 300 panels');

      await page.getByTestId('plus-one').click();
      await expect.poll(() => panelsText(page)).toBe('1 of 300 panels');
      await page.getByTestId('plus-many').click();
      await pad(page, '12');
      await expect.poll(() => panelsText(page)).toBe('13 of 300 panels');
      await scan(page, 'TI4471-0999');
      await expect.poll(() => panelsText(page)).toBe('14 of 300 panels');

      await page.getByTestId('run-stop').click();
      await page.getByTestId('stop-jam').click();
      await expect.poll(() => page.getByTestId('stopped').textContent()).toContain('Stopped: Jam');
      await page.getByTestId('run-resume').click();
      await page.getByTestId('stopped').waitFor({ state: 'detached' });
      await steady(page);

      await page.getByTestId('plus-one').click();
      await expect.poll(() => panelsText(page)).toBe('15 of 300 panels');
      await page.getByTestId('notice').getByRole('button', { name: 'Take back' }).click();
      await expect.poll(() => panelsText(page)).toBe('14 of 300 panels');

      const counted = await ownEntries(page, 'panels.counted');
      expect(counted.map(({ payload }) => [payload['add'], payload['panels'], payload['serial']])).toEqual([
        [1, 1, null],
        [12, 13, null],
        [1, 14, 'TI4471-0999'],
        [1, 15, null],
      ]);
      const [stopped] = (await ownEntries(page, 'run.stopped')).slice(-1);
      expect(stopped?.payload['reason']).toBe('jam');
      const [corrected] = await ownEntries(page, 'entry.corrected');
      const last = counted.at(-1);
      expect(corrected?.payload['of']).toBe(`${last?.tablet}/${last?.epoch}/${last?.seq}`);

      await page.reload();
      await waitReady(page);
      await expect.poll(() => panelsText(page)).toBe('14 of 300 panels');
    });
  });
});

describe('the forecast', () => {
  it('lists what runs out in order of need', async () => {
    await onTablet(async ({ page }) => {
      const wanted = await wantedSlots(page);
      const rows = await shownRows(page);
      expect(rows.length).toBeGreaterThan(5);
      const panels = rows.map(({ slot, parts }) => parts / (wanted.get(slot)?.perPanel ?? Number.NaN));
      panels.forEach((left, index) => {
        // Losses differ a little from slot to slot, so neighbours may be as near as 2 %.
        if (index > 0) expect(left).toBeGreaterThan((panels[index - 1] ?? 0) * 0.98 - 1);
      });
    });
  });

  it('warns once, is taken note of by a person, and neither a reload nor a look repeats it', async () => {
    await onTablet(async ({ page }) => {
      const wanted = await wantedSlots(page);
      const first = (await shownRows(page)).find(({ level }) => level === 'quiet' || level === 'soon');
      const slot = wanted.get(first?.slot ?? '');
      if (!first || !slot) throw new TypeError('no slot to bring into its window');
      // 800 mm of tape from hub to pick point: within them the window is open.
      const opens = Math.floor(800 / slot.pitchMm);
      await keepRunning(page);
      await page.getByTestId('plus-many').click();
      await pad(page, String(Math.ceil((first.parts - 0.85 * opens) / slot.perPanel)));
      const row = page.getByTestId(`row-${first.slot}`);
      await expect.poll(() => row.getAttribute('data-level')).toBe('due');
      await page.getByTestId('warning').waitFor();
      const raised = async () =>
        (await ownEntries(page, 'warning.raised')).filter(
          ({ payload }) => payload['slot'] === first.slot && payload['level'] === 'due',
        );
      await expect.poll(async () => (await raised()).length).toBe(1);

      await page.reload();
      await waitReady(page);
      await page.getByTestId('warning').waitFor();
      await page.getByTestId(`open-${first.slot}`).click();
      await page.getByTestId(`ack-${first.slot}`).click();
      await page.getByTestId(`ack-${first.slot}`).waitFor({ state: 'detached' });
      const [acknowledged] = await ownEntries(page, 'warning.acknowledged');
      expect(acknowledged).toMatchObject({ who: 'p-2201', payload: { slot: first.slot, level: 'due' } });

      await page.reload();
      await waitReady(page);
      await expect.poll(() => row.getAttribute('data-level')).toBe('due');
      await lookAgain(page);
      await page.getByTestId(`open-${first.slot}`).click();
      await page.getByTestId('slot-splice').waitFor();
      expect(await page.getByTestId(`ack-${first.slot}`).count()).toBe(0);
      expect(await raised()).toHaveLength(1);
    });
  });
});

describe('a splice', () => {
  it('from the list wants the old reel, then the new one; both lots are in the log with the panel count', async () => {
    await onTablet(async ({ page }) => {
      const [first] = await shownRows(page);
      const slot = first?.slot ?? '';
      const old = await runningReel(page, slot);
      await page.getByTestId(`splice-${slot}`).click();
      await expect.poll(() => page.getByTestId('well-old-reel').getAttribute('data-filled')).toBe('false');
      await scan(page, reelLabel({ P: old.part, Q: '100', '3S': 'R-910001' }));
      await expect.poll(() => page.getByTestId('told').textContent()).toContain(`not the reel on ${slot}`);
      expect(await ownEntries(page, 'reel.verified')).toEqual([]);
      await scan(page, reelLabel({ P: old.part, Q: '4000', '3S': old.reel }));
      await expect.poll(() => page.getByTestId('well-old-reel').getAttribute('data-filled')).toBe('true');
      const seen = await scanAll(
        page,
        reelLabel({ P: old.part, Q: '4000', '1T': 'LT-NEW-1', '3S': 'R-910002' }),
      );
      expect(seen.verdict).toBe('accepted');
      expect(seen.text).toContain('Right reel to splice');
      expect(seen.text).toContain('Cut away from your fingers');
      const log = await readLog(page);
      const done = log.filter(({ kind }) => kind === 'panels.counted').at(-1)?.payload['panels'];
      const [entry] = await ownEntries(page, 'reel.verified');
      expect(entry?.payload).toMatchObject({
        act: 'splice',
        slot,
        lot: 'LT-NEW-1',
        reel: 'R-910002',
        panels: done,
        run: 'run-1',
      });
      expect(old.lot).toMatch(/^LT-/);

      // The checklist of this very splice is a tap away, and the verdict's page is not in its way.
      await page.getByTestId('verdict-checklist').click();
      await page.getByTestId('list-open').click();
      await page.getByTestId('checklist').waitFor();
      const [opened] = await ownEntries(page, 'checklist.opened');
      expect(opened?.payload).toMatchObject({ slot, changeover: null });

      // The forecast goes on with the joined tape.
      await goTo(page, 'line');
      await page.getByTestId('line-all').click();
      const joined = async () => (await shownRows(page)).find((row) => row.slot === slot)?.parts;
      await expect.poll(joined).toBeGreaterThan(4000);
      expect(await joined()).toBeLessThan((first?.parts ?? 0) + 4100);
    });
  });

  it('by scanning slot and new reel is taken back by a correcting entry', async () => {
    await onTablet(async ({ page }) => {
      await page.getByTestId('line-all').click();
      const [, second] = await shownRows(page);
      const slot = second?.slot ?? '';
      const old = await runningReel(page, slot);
      await scan(page, slot);
      await scan(page, reelLabel({ P: old.part, Q: '3000', '1T': 'LT-NEW-2', '3S': 'R-910003' }));
      expect((await seeVerdict(page)).verdict).toBe('accepted');
      const partsOf = async () => (await shownRows(page)).find((row) => row.slot === slot)?.parts ?? 0;
      await expect.poll(partsOf).toBeGreaterThan(3000);
      await page.getByTestId('verdict-undo').click();
      await page.getByTestId('verdict').waitFor({ state: 'detached' });
      await expect.poll(partsOf).toBe(second?.parts ?? 0);
      const [spliced] = await ownEntries(page, 'reel.verified');
      const [corrected] = await ownEntries(page, 'entry.corrected');
      expect(corrected?.payload).toMatchObject({
        of: `${spliced?.tablet}/${spliced?.epoch}/${spliced?.seq}`,
        slot,
      });
      await goTo(page, 'log');
      await page.getByText('taken back', { exact: true }).first().waitFor();
    });
  });

  it('takes old reel, new reel and slot in any order; what comes after the verdict leaves it there', async () => {
    await onTablet(async ({ page }) => {
      const rows = await shownRows(page);
      for (const [index, order] of ['ONS', 'OSN', 'NOS', 'NSO', 'SON', 'SNO'].entries()) {
        const slot = rows[index + 2]?.slot ?? '';
        const { part, reel } = await runningReel(page, slot);
        const codes: Readonly<Record<string, string>> = {
          O: reelLabel({ P: part, Q: '4000', '3S': reel }),
          N: reelLabel({ P: part, Q: '4000', '1T': 'LT-NEW-3', '3S': `R-91100${index}` }),
          S: slot,
        };
        for (const letter of order) await scan(page, codes[letter] ?? '');
        const seen = await seeVerdict(page);
        expect(seen, order).toMatchObject({ verdict: 'accepted' });
        expect(seen.text).toContain(slot);
        await drawn(page);
        expect((await seeVerdict(page)).text).toBe(seen.text);
        await goOn(page);
        await page.getByTestId('well-idle').waitFor();
        const spliced = await ownEntries(page, 'reel.verified');
        expect(spliced).toHaveLength(index + 1);
        expect(spliced.at(-1)?.payload).toMatchObject({ act: 'splice', slot, reel: `R-91100${index}` });
      }
    });
  });

  it('refuses a running reel in front of another slot', async () => {
    await onTablet(async ({ page }) => {
      const [first, second] = await shownRows(page);
      const { part, reel } = await runningReel(page, first?.slot ?? '');
      const seen = await scanAll(page, reelLabel({ P: part, Q: '4000', '3S': reel }), second?.slot ?? '');
      expect(seen.verdict).toBe('refused');
      expect(seen.text).toContain(first?.slot);
    });
  });

  it('refuses a wrong part, and the tape that runs stays what it was', async () => {
    await onTablet(async ({ page }) => {
      const [first] = await shownRows(page);
      const seen = await scanAll(
        page,
        first?.slot ?? '',
        reelLabel({ P: '10-0402-472', Q: '9000', '3S': 'R-910004' }),
      );
      expect(seen.verdict).toBe('refused');
      expect(seen.text).toContain('Wrong part');
      await goOn(page);
      const again = async () => (await shownRows(page)).find(({ slot }) => slot === first?.slot)?.parts;
      await expect.poll(again).toBe(first?.parts);
    });
  });
});
