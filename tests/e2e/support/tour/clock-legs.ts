// The tour of what time does: nobody counts, a tablet left alone, a clock set wrong; and of the camera in the states that a lens can bring
// about. Each on a tablet of its own, since its time goes on.

import type { Page } from 'playwright-core';
import { pass } from '../clock.ts';
import { keepRunning, lookAgain, scan } from '../floor.ts';
import { closeDialogs, goThere, type Here, type Leg, openBy } from './here.ts';

const minuteMs = 60_000;

/** Counts have ceased: what the screens say, and what a stop asks. */
async function* nobody(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await keepRunning(page);
  await page.getByTestId('plus-one').click();
  await pass(page, 25 * minuteMs);
  await lookAgain(page);
  await page.getByTestId('nobody-counts').waitFor();
  await page.getByTestId('warning').waitFor();
  yield 'line, nobody counts';
  await openBy(here, 'run-stop');
  await page.getByTestId('stood').waitFor();
  yield 'why it stopped, and since when';
  await closeDialogs(page);
  await goThere(here, '#/change');
  await page.locator('[data-testid^=plan-]').first().click();
  await page.getByTestId('changeover').waitFor();
  await openBy(here, 'last-panel');
  await page.getByTestId('stood').waitFor();
  yield 'last panel, and since when';
  await closeDialogs(page);
}

/** Left alone with a dialog open, and with none. */
async function* leftAlone(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await openBy(here, 'dock-type');
  await pass(page, 31 * minuteMs);
  await page.getByTestId('away').waitFor();
  yield 'left alone, a dialog open';
  await scan(page, 'BADGE-4401');
  await page.getByTestId('away').waitFor({ state: 'detached' });
  await closeDialogs(page);
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  await pass(page, 31 * minuteMs);
  await page.getByTestId('sign-in').getByText('Sign in').or(page.getByTestId('notice')).first().waitFor();
  yield 'left alone, a slot in hand';
  await scan(page, 'BADGE-4401');
  await page.getByTestId('sign-in').getByText('Elif').waitFor();
}

/** Somebody sets the tablet's clock, and the page looks at it at once. */
async function setClock(page: Page, byMs: number): Promise<void> {
  await page.evaluate((by) => {
    const before = Date.now;
    Date.now = () => before() + by;
    document.dispatchEvent(new Event('visibilitychange'));
  }, byMs);
}

async function* clock(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/line');
  await setClock(page, 9 * 60 * minuteMs);
  await page.getByTestId('clock-right').waitFor();
  yield 'line, a clock ahead';
  await page.getByTestId('clock-right').click();
  await page.getByTestId('clock-slip').waitFor({ state: 'detached' });
  await setClock(page, -60 * minuteMs);
  await page.getByTestId('clock-slip').waitFor();
  yield 'line, a clock set back';
  await goThere(here, '#/load');
  yield 'load, a clock set back';
}

/** No picture comes, by this error of the platform; null = as the device is. */
async function refuse(page: Page, name: string | null): Promise<void> {
  await page.evaluate((refusal) => {
    const scope = globalThis as { askLens?: MediaDevices['getUserMedia'] };
    scope.askLens ??= navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
    const ask = scope.askLens;
    navigator.mediaDevices.getUserMedia = (wishes) =>
      refusal === null
        ? ask(wishes)
        : refusal === 'never'
          ? new Promise(() => undefined)
          : Promise.reject(new DOMException('refused', refusal));
  }, name);
}

const blind = [
  ['never', 'camera, being opened'],
  ['NotFoundError', 'camera, none there'],
  ['NotAllowedError', 'camera, not allowed'],
  ['NotReadableError', 'camera, held by another app'],
] as const;

async function closeCamera(page: Page): Promise<void> {
  await page.getByTestId('camera-close').click();
  await page.getByTestId('camera').waitFor({ state: 'detached' });
}

/** A lens that shows no code. */
async function* lens(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scan(page, 'M2-F-023');
  await page.getByTestId('well-slot').waitFor();
  await page.getByTestId('dock-camera').click();
  await page.locator('video').waitFor();
  await page.getByTestId('camera-blind').waitFor({ state: 'detached' });
  yield 'camera, a slot in hand';
  await pass(page, 31_000);
  await page.getByTestId('camera-start').waitFor();
  yield 'camera, stopped by itself';
  await closeCamera(page);
  for (const [refusal, name] of blind) {
    await refuse(page, refusal);
    await page.getByTestId('dock-camera').click();
    await page.getByTestId('camera-blind').waitFor();
    if (refusal !== 'never') await page.getByTestId('camera-type').waitFor();
    yield name;
    await closeCamera(page);
  }
  await refuse(page, null);
}

/** A lens that shows half a label. Two labels have no stop: upright, only one of them lies in the frame. */
async function* half(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await page.getByTestId('dock-camera').click();
  await page.getByTestId('camera-take').waitFor({ timeout: 30_000 });
  yield 'camera, half a label';
  await page.getByTestId('camera-take').click();
  await page.locator('[data-testid=well-reel][data-filled=true]').waitFor();
  yield 'camera, a reel read';
  await closeCamera(page);
}

export const clockLegs: readonly Leg[] = [
  { name: 'nobody', stops: nobody },
  { name: 'left alone', stops: leftAlone },
  { name: 'clock', stops: clock },
];
export const lensLegs: readonly Leg[] = [{ name: 'lens', stops: lens }];
export const halfLegs: readonly Leg[] = [{ name: 'half', stops: half }];
