// "Which panels?" is asked where something wrong is found late: at a splice, in the log, for a floor life that is over, for a block.

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  goTo,
  openAt,
  openTablet,
  ownEntries,
  readLog,
  reelLabel,
  scan,
  seeVerdict,
  showSlot,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();
let tablet: Tablet;

beforeAll(async () => {
  tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-4401' });
});
afterAll(() => tablet?.putAway());

/** Holds the panels that the open dialog lists; the entry that says so. */
async function hold(reason: string) {
  const { page } = tablet;
  const before = (await ownEntries(page, 'panels.contained')).length;
  await page.getByTestId('hold-found').locator('p').first().waitFor();
  await page.getByTestId('hold-reason').fill(reason);
  await page.getByTestId('hold-yes').click();
  await expect.poll(async () => (await ownEntries(page, 'panels.contained')).length).toBe(before + 1);
  return (await ownEntries(page, 'panels.contained')).at(-1)?.payload ?? {};
}

const newestLoad = async (slot: string) => {
  const load = [...(await readLog(tablet.page))]
    .reverse()
    .find(
      ({ kind, payload }) =>
        kind === 'reel.verified' && payload['slot'] === slot && payload['verdict'] === 'accepted',
    );
  if (!load) throw new TypeError(`Cannot go on as ${slot} must be loaded`);
  return { id: `${load.tablet}:${load.epoch}:${load.seq}`, ...load };
};

describe('the panels of a wrong reel', () => {
  it('that a splice finds are those since the slot’s last check, by one act at the dock', async () => {
    const { page } = tablet;
    await goTo(page, 'load');
    await (await showSlot(page, 'M1-F-004')).click();
    await page.getByTestId('slot-use').click();
    await page.getByTestId('well-old-reel').waitFor();
    await scan(page, reelLabel({ P: '10-0603-000', Q: '4000', '1T': 'LOT-ODD', '3S': 'R-950001' }));
    await page.getByTestId('dock-stands-here').click();
    expect(await seeVerdict(page)).toMatchObject({ verdict: 'refused' });
    const [found] = (await ownEntries(page, 'reel.verified')).slice(-1);
    expect(found?.payload).toMatchObject({ act: 'sweep', slot: 'M1-F-004', reel: 'R-950001' });
    await page.getByTestId('verdict-panels').click();
    await page.getByTestId('trace-hold').click();
    const held = await hold('another reel feeds');
    expect(held).toMatchObject({ cause: 'wrong-reel', slot: 'M1-F-004', reel: 'R-950001', lot: 'LOT-ODD' });
    expect(held['of']).toContain(`${found?.seq}`);
    // The desk is back at work: the next scan is no sweep.
    await expect.poll(() => page.getByTestId('well-slot').textContent()).toContain('M1-F-004');
  });

  it('that an audit finds are asked from its entry in the log', async () => {
    const { page } = tablet;
    await goTo(page, 'log');
    await page
      .locator('[data-testid=entry][data-kind="reel.verified"]', { hasText: 'R-950001' })
      .first()
      .click();
    await page.getByTestId('entry-panels').click();
    expect(await hold('found by an audit')).toMatchObject({ cause: 'wrong-reel', reel: 'R-950001' });
  });
});

describe('the panels of a floor life that is over', () => {
  it('are asked from the line’s word on it, from the moment it ended', async () => {
    const { page } = tablet;
    await goTo(page, 'load');
    const all = await readLog(page);
    const slot = all
      .filter(
        ({ kind, payload }) =>
          kind === 'reel.verified' &&
          payload['verdict'] === 'accepted' &&
          payload['slot'] !== null &&
          /^(22-0603|32-00)/.test(String(payload['part'])),
      )
      .map(({ payload }) => String(payload['slot']))
      .at(-1);
    const { payload } = await newestLoad(slot ?? '');
    const hours = String(payload['part']).startsWith('22') ? 672 : 168;
    await (await showSlot(page, String(slot))).click();
    await page.getByTestId('slot-air').click();
    await page.getByTestId('air-hours').fill(String(hours + 5));
    await page.getByTestId('air-yes').click();
    await goTo(page, 'line');
    await page.getByTestId('life-panels').click();
    await page.getByTestId('trace-hold').click();
    await expect.poll(() => page.getByTestId('hold-floor-life').getAttribute('aria-pressed')).toBe('true');
    const held = await hold('was out for too long');
    expect(held).toMatchObject({ cause: 'floor-life', slot, reel: payload['reel'] });
    expect(held['of']).not.toBeNull();
  });
});

describe('the panels of blocked material', () => {
  it('are asked from the list of blocks, and name the block', async () => {
    const { page } = tablet;
    const { payload } = await newestLoad('M1-F-001');
    const lot = String(payload['lot']);
    await goTo(page, 'plant');
    await openAt(page, '#/plant/parts/blocks');
    await page.getByTestId('block-add').click();
    await page.getByTestId('block-value').fill(lot);
    await page.getByTestId('block-reason').fill('Cracked bodies');
    await page.getByTestId('block-save').click();
    await page.getByTestId(`panels-${lot}`).click();
    await page.getByTestId('trace-hold').click();
    const held = await hold('recalled by its maker');
    const blocks = await ownEntries(page, 'material.blocked');
    expect(held).toMatchObject({ cause: 'blocked', lot, of: blocks.at(-1)?.payload['block'] });
  });
});
