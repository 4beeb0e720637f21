// The tour of the camera, in the states that a lens and its platform can bring about.

import type { Page } from 'playwright-core';
import { pass } from '../clock.ts';
import { scan } from '../floor.ts';
import { goThere, type Here, type Leg } from './here.ts';

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

/** A lens before a slot, a reel that does not belong on it, and two of a part that is missing, one of them out of date. */
async function* passOver(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await page.getByTestId('find-camera').click();
  await page.getByTestId('found-barred').waitFor({ timeout: 30_000 });
  yield 'find by camera, what is wanted and what may not be used';
  await page.getByTestId('find-close').click();
  await page.getByTestId('find').waitFor({ state: 'detached' });
  await goThere(here, '#/load');
  await page.getByTestId('sweep-camera').click();
  await page.getByTestId('find-asked').waitFor({ timeout: 30_000 });
  yield 'sweep by camera, a reel that does not belong there';
  await page.getByTestId('find-close').click();
  await page.getByTestId('find').waitFor({ state: 'detached' });
}

export const passLegs: readonly Leg[] = [{ name: 'pass', stops: passOver }];
export const lensLegs: readonly Leg[] = [{ name: 'lens', stops: lens }];
export const halfLegs: readonly Leg[] = [{ name: 'half', stops: half }];
