// A changeover from the plan to the last move, by scans: beside the running line the page leads to what needs no stop; while the moves
// are done Change, Load and Line say the same numbers, and at the end all three say that every slot is right.

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { applyAll } from '../../shared/floor/fold.ts';
import { emptyState, type FloorState, type SlotState } from '../../shared/floor/state.ts';
import { goOn, goTo, keepRunning, openTablet, readLog, reelLabel, scan, scanAll } from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const next = 'greenhouse-node-top-F';
const numbers = (text: string | null) => (text ?? '').match(/\d+/g)?.map(Number) ?? [];

/** What Change, Load and Line say: slots right, and slots in all; they must agree. */
async function expectSame(page: Page): Promise<readonly [right: number, all: number]> {
  await goTo(page, 'change');
  const [right = -1, all = -1] = numbers(await page.getByTestId('slots-right').textContent());
  await goTo(page, 'load');
  await expect
    .poll(async () => numbers(await page.getByTestId('load-progress').textContent()))
    .toEqual([right, all]);
  await expect.poll(() => page.locator('.plan .cells .cell.verified').count()).toBe(right);
  await goTo(page, 'line');
  await page.getByTestId('run-start').click();
  await page.getByTestId('panels-wanted').waitFor();
  const notRight = async () =>
    numbers((await page.getByTestId('start-not-right').allTextContents())[0] ?? '0')[0];
  await expect.poll(notRight).toBe(all - right);
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await goTo(page, 'change');
  return [right, all];
}

/** Reels and feeders in the hands of whoever carries the moves out. */
interface Hands {
  readonly floor: FloorState;
  readonly parked: Map<string, SlotState>;
  readonly inUse: Set<string>;
  made: number;
}

const labelOf = ({ tapes }: SlotState) =>
  reelLabel({ P: tapes.at(-1)?.part ?? '', Q: '100', '3S': tapes.at(-1)?.reel ?? '' });

async function takeOut(page: Page, loaded: SlotState): Promise<void> {
  await scan(page, loaded.slot);
  await scan(page, labelOf(loaded));
  await expect.poll(() => page.getByTestId('notice').textContent()).toContain(`${loaded.slot} unloaded`);
}

async function put(page: Page, slot: string, feeder: string, label: string): Promise<void> {
  const seen = await scanAll(page, slot, feeder, label);
  expect(`${slot}: ${seen.verdict}`).toBe(`${slot}: accepted`);
  await goOn(page);
}

/** A feeder that nothing uses and that fits the slot. */
function freeFeeder({ floor, inUse }: Hands, slot: string): string {
  const wanted = floor.setups.get(next)?.slots.find((each) => each.slot === slot);
  const fits = [...floor.feeders.values()].find(
    (each) =>
      !inUse.has(each.feeder) &&
      each.tapeWidthMm === wanted?.tapeWidthMm &&
      each.positions === wanted.positions &&
      (each.pitchesMm.length === 0 || each.pitchesMm.includes(wanted.pitchMm ?? 0)),
  );
  if (!fits) throw new Error(`The demo has no free feeder for ${slot}`);
  return fits.feeder;
}

/** Does the move that the page names next. */
async function doNext(page: Page, hands: Hands): Promise<void> {
  const text = (await page.locator('.handlings li.next').textContent()) ?? '';
  const [slot = '', to = ''] = text.match(/M\d-[FR]-\d{3}/g) ?? [];
  const there =
    hands.floor.slots.get(`smt-1/${slot}`) ??
    [...hands.floor.slots.values()].find((each) => each.slot === slot);
  if (text.includes('Take ') || text.includes('Park ')) {
    if (!there) throw new Error(`Nothing stands on ${slot}: ${text}`);
    await takeOut(page, there);
    if (text.includes('Park ')) hands.parked.set(there.tapes.at(-1)?.part ?? '', there);
    else if (there.feeder) hands.inUse.delete(there.feeder);
  } else if (text.includes('Move ')) {
    if (!there) throw new Error(`Nothing stands on ${slot}: ${text}`);
    await takeOut(page, there);
    await put(page, to, there.feeder ?? '', labelOf(there));
  } else if (text.includes('Put parked')) {
    const [part, one] = [...hands.parked].find(([each]) => text.includes(each)) ?? [];
    if (!one || part === undefined) throw new Error(`Nothing is parked: ${text}`);
    await put(page, slot, one.feeder ?? '', labelOf(one));
    hands.parked.delete(part);
  } else {
    const part = hands.floor.setups.get(next)?.slots.find((each) => each.slot === slot)?.part ?? '';
    const feeder = freeFeeder(hands, slot);
    hands.inUse.add(feeder);
    hands.made += 1;
    const label = reelLabel({
      P: part,
      Q: '4000',
      '1T': `LT-${hands.made}`,
      '3S': `R-97${1000 + hands.made}`,
    });
    await put(page, slot, feeder, label);
  }
}

it('leads beside the running line, and at the end all screens say that every slot is right', async () => {
  const tablet = await openTablet(demo.browser, demo.url, { badge: 'BADGE-3301' });
  const { page } = tablet;
  await keepRunning(page);
  await goTo(page, 'change');
  await page.getByTestId(`plan-${next}`).click();
  await page.getByTestId('ready-now').waitFor();
  await page.getByTestId('tab-feeders').click();
  await expect.poll(() => page.getByTestId('moves-left').textContent()).toContain('wait for the stop');
  await expect.poll(() => page.getByTestId('moves-caution').textContent()).toContain('do not reach in');
  expect(await page.locator('.handlings li.next').count()).toBe(0);
  await page.getByTestId('last-panel').click();
  await page.getByTestId('last-panel-yes').click();
  await expect.poll(() => page.getByTestId('moves-caution').textContent()).toContain('Stop the machine');

  const floor = applyAll(emptyState(), await readLog(page));
  const feeders = [...floor.slots.values()].flatMap(({ feeder }) => feeder ?? []);
  const hands: Hands = { floor, parked: new Map(), inUse: new Set(feeders), made: 0 };
  const [rightBefore, all] = await expectSame(page);
  const left = page.getByTestId('moves-left');
  const moves = numbers(await left.textContent())[0] ?? 0;
  expect(moves).toBeGreaterThan(20);
  for (let done = 1; done <= moves; done++) {
    await doNext(page, hands);
    await expect.poll(async () => numbers(await left.textContent())[0] ?? 0).toBe(moves - done);
    if (done === Math.ceil(moves / 2)) {
      const [right] = await expectSame(page);
      expect(right).toBeGreaterThan(rightBefore);
    }
  }
  await expect.poll(() => left.textContent()).toContain('No moves left');
  expect(await expectSame(page)).toEqual([all, all]);
  await goTo(page, 'load');
  expect(await page.locator('.plan .cells .cell.other').count()).toBe(0);
  await expect.poll(() => page.getByText('Every slot has its reel.').count()).toBe(1);
  await tablet.putAway();
});
