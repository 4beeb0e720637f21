// Changing the demo line over, from the plan beside the running line to the release: what is scanned ticks itself off, what was
// ticked is still there after a reload, and what must be done is left out only by a lead with badge, PIN and reason.

import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { waitReady } from './support/browser.ts';
import {
  expectWhole,
  goOn,
  goTo,
  keepRunning,
  openAt,
  openTablet,
  ownEntries,
  pad,
  readLog,
  reelLabel,
  scan,
  scanAll,
  signIn,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const next = 'greenhouse-node-top-F';

/** A lead plans the change to the next product while the line runs. */
async function planned(): Promise<Tablet> {
  const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301' });
  await keepRunning(tablet.page);
  await goTo(tablet.page, 'change');
  await tablet.page.getByTestId(`plan-${next}`).click();
  await tablet.page.getByTestId('changeover').waitFor();
  return tablet;
}

async function lastPanel(page: Page): Promise<void> {
  await page.getByTestId('last-panel').click();
  await page.getByTestId('last-panel-yes').click();
  await page.getByTestId('release').waitFor();
}

async function openChecklist(page: Page): Promise<void> {
  await page.getByTestId('tab-checklist').click();
  await page.getByTestId('checklist-open').click();
  await page.getByTestId('checklist').waitFor();
}

const stateOf = (page: Page, step: string) => page.getByTestId(`step-${step}`).getAttribute('data-state');

async function movesLeft(page: Page): Promise<number> {
  return Number.parseInt((await page.getByTestId('moves-left').textContent()) ?? '', 10);
}

/** What the log has on a slot: its reel as the label would say it, the part, the feeder. */
async function loadedOn(page: Page, slot: string) {
  const loaded = (await readLog(page))
    .filter(
      ({ kind, payload }) =>
        kind === 'reel.verified' && payload['slot'] === slot && payload['verdict'] === 'accepted',
    )
    .at(-1);
  const { part, reel, feeder } = loaded?.payload ?? {};
  const label = reelLabel({ P: String(part), Q: '100', '3S': String(reel) });
  return { label, part: String(part), feeder: String(feeder) };
}

async function wantedNext(
  page: Page,
): Promise<readonly { slot: string; part: string; tapeWidthMm: number }[]> {
  const setup = (await readLog(page)).find(
    ({ kind, payload }) => kind === 'setup.taken' && payload['setup'] === next,
  );
  return setup?.payload['slots'] as { slot: string; part: string; tapeWidthMm: number }[]; // shape of the entry
}

async function takeOut(page: Page, slot: string): Promise<void> {
  await scan(page, slot);
  await scan(page, (await loadedOn(page, slot)).label);
  await expect.poll(() => page.getByTestId('notice').textContent()).toContain(`${slot} unloaded`);
}

describe('a changeover', () => {
  it('is planned beside the running line, its external steps ticked, and survives a reload', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await expect.poll(() => page.getByTestId('changeover').textContent()).toContain('The line is running');
    await openChecklist(page);
    await expect.poll(() => stateOf(page, 'documents')).toBe('open');
    await expect.poll(() => stateOf(page, 'panels-out')).toBe('waiting');
    expect(await page.getByTestId('tick-panels-out').count()).toBe(0);
    await page.getByTestId('tick-documents').click();
    await expect.poll(() => stateOf(page, 'documents')).toBe('done');
    await page.reload();
    await waitReady(page);
    await page.getByTestId('tab-checklist').click();
    await expect.poll(() => stateOf(page, 'documents')).toBe('done');
    await lastPanel(page);
    await page.getByTestId('tab-checklist').click();
    await expect.poll(() => stateOf(page, 'panels-out')).toBe('open');
    const told = ['changeover.began', 'checklist.opened', 'step.answered', 'run.ended', 'setup.chosen'];
    expect((await ownEntries(page, ...told)).map(({ kind }) => kind)).toEqual(told);
    expectWhole(await readLog(page));
    await tablet.putAway();
  });

  it('ticks handlings off as reels come out and go in', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await lastPanel(page);
    const before = await movesLeft(page);
    expect(before).toBeGreaterThan(20);
    const wanted = await wantedNext(page);

    // Two feeders that trade places: out, out, and one of them in again, which is two of its three handlings.
    const parked = await page.locator('.handlings li:has-text("Park")').first().textContent();
    const slot = /M\d-[FR]-\d{3}/.exec(parked ?? '')?.[0] ?? '';
    const moved = await loadedOn(page, slot);
    const to = wanted.find((each) => each.part === moved.part)?.slot ?? '';
    await takeOut(page, slot);
    await takeOut(page, to);
    expect((await scanAll(page, to, moved.feeder, moved.label)).verdict).toBe('accepted');
    await goOn(page);
    await expect.poll(() => movesLeft(page)).toBe(before - 2);

    const listed = await page.locator('.handlings li:not(.done)').allTextContents();
    const loaded = new Set(
      (await readLog(page)).flatMap(({ kind, payload }) =>
        kind === 'reel.verified' && payload['verdict'] === 'accepted' ? [payload['slot']] : [],
      ),
    );
    const goesIn = wanted.find(
      (each) =>
        each.tapeWidthMm === 8 &&
        !loaded.has(each.slot) &&
        listed.some((line) => line.includes(each.slot) && line.includes(each.part)),
    );
    if (!goesIn) throw new TypeError('The next product puts nothing on an empty 8 mm slot');
    const seen = await scanAll(
      page,
      goesIn.slot,
      'F-0113',
      reelLabel({ P: goesIn.part, Q: '4000', '1T': 'LT-7', '3S': 'R-990101' }),
    );
    expect(seen.verdict).toBe('accepted');
    await goOn(page);
    await expect.poll(() => movesLeft(page)).toBe(before - 3);
    await expect
      .poll(() => page.locator('.handlings li.done').allTextContents())
      .toEqual([expect.stringContaining(goesIn.slot), expect.stringContaining(to)]);
    await tablet.putAway();
  });

  it('leaves a mandatory step out only for a lead with badge, PIN and reason', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await openChecklist(page);
    await page.getByTestId('skip-documents').click();
    await scan(page, 'BADGE-2201');
    await page.getByText('Needs: Shift lead').waitFor();
    await scan(page, 'BADGE-3301');
    await pad(page, '3301');
    await expect.poll(() => page.getByTestId('skip-yes').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('skip-reason').fill('Same papers as yesterday');
    await page.getByTestId('skip-yes').click();
    await expect.poll(() => stateOf(page, 'documents')).toBe('skipped');
    const [skipped] = await ownEntries(page, 'step.skipped');
    expect(skipped?.payload).toMatchObject({ by: 'p-3301', reason: 'Same papers as yesterday' });
    await tablet.putAway();
  });

  it('is released with what is still open told, and a reason for it', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await lastPanel(page);
    await page.getByTestId('release').click();
    await expect
      .poll(() => page.getByTestId('release-open').textContent())
      .toMatch(/moves? left.*never opened/);
    await scan(page, 'BADGE-3301');
    await pad(page, '3301');
    await expect.poll(() => page.getByTestId('release-yes').getAttribute('aria-disabled')).toBe('true');
    await page.getByTestId('release-reason').fill('Trial build, feeders follow');
    await page.getByTestId('release-yes').click();
    await page.getByTestId('screen-line').waitFor();
    const [released] = await ownEntries(page, 'changeover.released');
    expect(released?.payload).toMatchObject({ by: 'p-3301', reason: 'Trial build, feeders follow' });
    await goTo(page, 'change');
    await page.getByText('No changeover is open').waitFor();
    await tablet.putAway();
  });
});

describe('the order of jobs', () => {
  it('is searched, proven for few jobs, kept over a reload, and names what comes late by how much', async () => {
    const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301', hash: '#/change/order' });
    const { page } = tablet;
    const asked = [
      ['pump-driver-bottom-B', '900'],
      ['tide-gauge-top-C', '100'],
      ['greenhouse-node-top-F', '200'],
    ] as const;
    for (const [index, [setup, panels]] of asked.entries()) {
      await page.getByTestId('job-setup').selectOption(setup);
      await page.getByTestId('job-panels').fill(panels);
      await page.getByTestId('job-add').click();
      await page.getByTestId(`job-${index}`).waitFor();
    }
    const changes = async () =>
      Number.parseInt((await page.getByTestId('order-total').textContent()) ?? '', 10);
    const before = await changes();
    await page.getByTestId('order-find').click();
    await page.getByText('No order needs fewer.').waitFor();
    await expect.poll(changes).toBeLessThanOrEqual(before);
    const orderOf = () =>
      page
        .locator('[data-testid^=job-][data-setup]')
        .evaluateAll((all) => all.map((one) => one.getAttribute('data-setup')));
    const order = await orderOf();
    const kept = page.getByTestId('order-kept');
    await expect.poll(() => kept.textContent()).toContain('No order is saved');
    await page.getByTestId('order-keep').click();
    await expect.poll(() => kept.textContent()).toContain('This is the saved order.');
    const [plan] = await ownEntries(page, 'plan.kept');
    const jobs = plan?.payload['jobs'] as { setup: string }[] | undefined; // shape of the entry
    expect(jobs?.map(({ setup }) => setup)).toEqual(order);
    await expect.poll(() => page.getByText('No order needs fewer.').count()).toBe(1);
    await page.reload();
    await waitReady(page);
    await page.getByTestId('job-2').waitFor();
    expect(await orderOf()).toEqual(order);

    await page.getByTestId('down-0').click();
    await expect.poll(orderOf).toEqual([order[1], order[0], order[2]]);
    await expect.poll(() => kept.textContent()).toMatch(/^Saved by .*Changed, on this tablet only/);
    expect(await ownEntries(page, 'plan.kept')).toHaveLength(1);
    await page.getByTestId('order-take-kept').click();
    await page.getByTestId('order-take-yes').click();
    await expect.poll(orderOf).toEqual(order);
    await page.getByTestId('down-0').click();
    await expect.poll(orderOf).toEqual([order[1], order[0], order[2]]);
    await page.getByTestId('hold-0').click();
    await page.getByTestId('order-find').click();
    await page.getByTestId('order-stop').waitFor({ state: 'detached' });
    await expect.poll(orderOf).toContain(order[0]);
    expect((await orderOf())[0]).toBe(order[1]);

    const said = (what: string) => page.getByTestId(`handling-${what}`);
    await expect.poll(() => said('putIn-from').textContent()).toContain('has no measured one yet');
    const minutes = await page.getByTestId('order-total').textContent();
    await said('putIn').fill('30');
    await said('putIn').blur();
    await expect.poll(() => said('putIn-from').textContent()).toContain('Set by hand');
    expect(await page.getByTestId('order-total').textContent()).not.toBe(minutes);
    await said('putIn').fill('');
    await said('putIn').blur();
    await expect.poll(() => said('putIn').inputValue()).toBe('2');

    await page.getByTestId('job-panels').fill('5000');
    await page.getByTestId('job-due').fill('2026-01-01T08:00');
    await page.getByTestId('job-add').click();
    await expect.poll(() => page.getByTestId('late-3').textContent()).toMatch(/late by \d+\sh/);
    await tablet.putAway();
  });
});

describe('the first panel', () => {
  it('keeps what was looked at and measured, and what the meter proves', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await page.getByTestId('tab-first').click();
    const first = page.locator('[data-testid^=check-]').first();
    await first.getByRole('button', { name: 'Right' }).click();
    await expect.poll(() => first.getAttribute('data-state')).toBe('accepted');
    await page.getByTestId('measure-other').selectOption({ index: 1 });
    await page.getByTestId('measure-code').fill('4k7');
    await page.getByRole('button', { name: '4.7 kΩ' }).click();
    await page.getByTestId('measure-tolerance').fill('1');
    for (const [reading, verdict] of [
      ['4.7', 'accepted'],
      ['4.66', 'held'],
      ['4,5', 'refused'],
    ] as const) {
      await page.getByTestId('measure-reading').fill(reading);
      await expect.poll(() => page.getByTestId('measure-outcome').getAttribute('data-verdict')).toBe(verdict);
    }
    await page.getByTestId('measure-keep').click();
    await expect.poll(async () => (await ownEntries(page, 'panel.measured')).length).toBe(1);
    const [measured] = await ownEntries(page, 'panel.measured');
    expect(measured?.payload).toMatchObject({
      quantity: 4.5,
      unit: 'kΩ',
      least: 4.653,
      most: 4.747,
      verdict: 'refused',
    });
    expect((await ownEntries(page, 'panel.looked'))[0]?.payload['right']).toBe(true);
    await page.getByTestId('tab-times').click();
    await expect.poll(() => page.getByTestId('times').textContent()).toContain('measured');
    await tablet.putAway();
  });
});

describe('a cart', () => {
  it('is filled off the line by the same verdict and docked at once when the line stands', async () => {
    const tablet = await planned();
    const { page } = tablet;
    const loaded = new Set(
      (await readLog(page)).flatMap(({ kind, payload }) =>
        kind === 'reel.verified' && payload['verdict'] === 'accepted' ? [payload['slot']] : [],
      ),
    );
    const place = (await wantedNext(page)).find((each) => each.tapeWidthMm === 8 && !loaded.has(each.slot));
    if (!place) throw new TypeError('The next product puts nothing on an empty 8 mm slot');
    await page.getByTestId('tab-kit').click();
    await expect.poll(() => page.getByTestId(`pick-${place.part}`).textContent()).toContain(place.slot);
    await page.getByTestId('cart-code').fill('CART-1');
    await page.getByTestId('cart-use').click();
    await page.getByTestId('cart-filling').waitFor();
    const reel = (part: string, id: string) => reelLabel({ P: part, Q: '4000', '1T': 'LT-8', '3S': id });
    for (const text of [place.slot, 'F-0113', reel('10-0402-nothing', 'R-990200')]) await scan(page, text);
    await expect.poll(() => page.getByTestId('cart-told').textContent()).toContain('Do not put it on');
    const inUse = await loadedOn(page, [...loaded][0] as string); // the demo's line is loaded
    await page.getByRole('button', { name: 'Leave the cart' }).click();
    await page.getByTestId('cart-use').click();
    for (const text of [place.slot, inUse.feeder, reel(place.part, 'R-990201')]) await scan(page, text);
    await expect
      .poll(() => page.getByTestId('cart-told').textContent())
      .toContain(`feeder ${inUse.feeder} on`);
    const refused = (await ownEntries(page, 'reel.verified')).at(-1);
    expect(refused?.payload['reasons']).toEqual([expect.objectContaining({ code: 'feeder-elsewhere' })]);

    await scan(page, 'F-0113');
    await scan(page, reelLabel({ P: place.part, '1T': 'LT-8', '3S': 'R-990202' }));
    await expect.poll(() => page.getByTestId('cart-told').textContent()).toContain('Held:');
    const held = (await ownEntries(page, 'reel.verified')).at(-1);
    expect(held?.payload).toMatchObject({ verdict: 'held', cart: 'CART-1', slot: place.slot });

    for (const text of [place.slot, 'F-0113']) await scan(page, text);
    await scan(page, reel(place.part, 'R-990201'));
    await expect.poll(() => page.getByTestId('cart-told').textContent()).toContain(`ready for ${place.slot}`);
    // A slot that the line still fills: what stands there goes off as the cart docks.
    const taken = (await wantedNext(page)).find((each) => each.tapeWidthMm === 8 && loaded.has(each.slot));
    if (!taken) throw new TypeError('The next product wants no 8 mm slot that is loaded now');
    for (const text of [taken.slot, 'F-0114', reel(taken.part, 'R-990203')]) await scan(page, text);
    await expect.poll(() => page.getByTestId('cart-told').textContent()).toContain(`ready for ${taken.slot}`);
    await scan(page, 'CART-1');
    await expect.poll(() => page.getByTestId('cart-told').textContent()).toContain('CART-1 is selected');
    await expect.poll(() => page.getByTestId('dock-CART-1').getAttribute('aria-disabled')).toBe('true');
    await page.getByRole('button', { name: 'Leave the cart' }).click();
    await lastPanel(page);
    await page.getByTestId('tab-kit').click();
    await page.getByTestId('dock-CART-1').click();
    await page.getByTestId('dock-question').waitFor();
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();
    expect(await ownEntries(page, 'cart.docked')).toEqual([]);
    // Scanned on any other screen, the cart's code leads to the same question in one tap.
    await openAt(page, '#/stock');
    await page.getByTestId('stock-print').waitFor();
    await scan(page, 'CART-1');
    await page.getByTestId('dock-cart').click();
    await page.getByTestId('dock-question').waitFor();
    await page.getByRole('button', { name: 'Cancel', exact: true }).click();
    await page.getByTestId('dock-question').waitFor({ state: 'detached' });

    await page.getByTestId('tab-feeders').click();
    const before = await loadedOn(page, taken.slot);
    await scan(page, 'CART-1');
    const question = page.getByTestId('dock-question');
    await question.waitFor();
    await expect
      .poll(() => page.getByTestId('dock-off').textContent())
      .toContain(`${taken.slot} ${before.feeder}`);
    await expect.poll(() => question.textContent()).toContain('2 slots are loaded');
    await page.getByTestId('dock-yes').click();
    await expect.poll(() => page.getByTestId('notice').textContent()).toContain('CART-1 docked');
    const [off, docked] = await ownEntries(page, 'reel.unloaded', 'cart.docked');
    expect(off?.payload).toMatchObject({ slot: taken.slot, feeder: before.feeder, cart: 'CART-1' });
    expect(new Set(docked?.payload['slots'] as string[])).toEqual(new Set([place.slot, taken.slot])); // shape of the entry
    expect((await page.locator('.handlings li.done').allTextContents()).join()).toContain(place.slot);
    expectWhole(await readLog(page));
    await tablet.putAway();
  });
});

describe('a checklist template', () => {
  it('is edited to a next version, and an open checklist keeps the one it was opened with', async () => {
    const tablet = await planned();
    const { page } = tablet;
    await openChecklist(page);
    await signIn(page, 'BADGE-4401');
    await page.goto(`${demo.url}#/plant/checklists`);
    await page.getByTestId('edit-changeover').click();
    await page.getByTestId('step-add').click();
    await expect.poll(() => page.getByTestId('template-save').getAttribute('aria-disabled')).toBe('true');
    const text = page.getByTestId('step-form').getByLabel('Text · English');
    await text.fill('Lamp over the table is on.');
    await text.blur();
    await page.getByTestId('template-save').click();
    await expect.poll(() => page.getByTestId('notice').textContent()).toContain('Version 3');
    const [written] = await ownEntries(page, 'checklist.template');
    expect(written?.payload).toMatchObject({ template: 'changeover', version: 3 });
    await goTo(page, 'change');
    await page.getByTestId('tab-checklist').click();
    await page.getByTestId('checklist').waitFor();
    expect(await page.getByTestId('checklist').textContent()).not.toContain('Lamp over the table');
    await page.goto(`${demo.url}#/change/list/shift-start`);
    await page.getByTestId('list-open').click();
    await page.getByTestId('checklist').waitFor();
    await expect.poll(() => page.getByTestId('checklist').textContent()).toContain('swept');
    await tablet.putAway();
  });
});
