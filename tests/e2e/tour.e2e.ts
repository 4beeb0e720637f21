// The tour: every screen, dialog, verdict, empty and error state of the app, looked at in every size and theme, in English and in
// the words that layouts are tried with; over all languages as `npm run tour`. Its pictures lie in .tmp/sheets afterwards.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { languages } from '../../src/app/words/words.ts';
import { type FakeLabel, filmLabel } from './harness/scan/fake-camera.ts';
import { startBrowser } from './support/browser.ts';
import { type RunningDemo, startDemo } from './support/demo.ts';
import { openTablet } from './support/floor.ts';
import { leaveToTour } from './support/look.ts';
import { type PlantServer, startServe } from './support/serve.ts';
import { changeLegs } from './support/tour/change-legs.ts';
import { clockLegs, halfLegs, lensLegs } from './support/tour/clock-legs.ts';
import { gaps } from './support/tour/coverage.ts';
import { deskLegs } from './support/tour/desk-legs.ts';
import { emptyLegs } from './support/tour/empty-legs.ts';
import { floorLegs, lastLegs } from './support/tour/floor-legs.ts';
import type { Leg } from './support/tour/here.ts';
import { plantLegs } from './support/tour/plant-legs.ts';
import { servedLegs } from './support/tour/served-legs.ts';
import { clearSheets, keepFound, Shots } from './support/tour/sheets.ts';
import { type Journal, pseudoSpeeches, type Speech, travel } from './support/tour/visit.ts';

const everyLanguage: readonly Speech[] = languages
  .filter((language) => language !== 'en')
  .map((language) => ({ name: language, language, pseudo: null }));
const speeches =
  process.env['REELWARD_TOUR'] === 'all' ? [...pseudoSpeeches, ...everyLanguage] : pseudoSpeeches;
const only = process.env['REELWARD_TOUR_LEGS']?.split(',');

let browser: Browser;
let demo: RunningDemo;
let server: PlantServer;
const journal: Journal = { wrong: [], stops: [], ids: new Set(), shots: new Shots() };

beforeAll(async () => {
  await clearSheets();
  const camera = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];
  [browser, demo, server] = await Promise.all([startBrowser(camera), startDemo(), startServe()]);
});
afterAll(async () => {
  await journal.shots.write(browser);
  await browser?.close();
  await demo?.stop();
  await server?.stop();
});

/** The label of a reel, each fact a code of its own. */
const label = (part: string, ...pieces: readonly string[]): FakeLabel => ({
  part,
  codes: [`P${part}`, ...pieces].map((text) => ({ text, name: text })),
});

/** Travels with a lens that shows a label. */
async function travelSeeing(seen: FakeLabel, legs: readonly Leg[]): Promise<void> {
  if (only && !legs.some(({ name }) => only.includes(name))) return;
  const seeing = await startBrowser(await filmLabel(browser, seen));
  try {
    await travelAll(demo.url, 'BADGE-4401', legs, seeing);
  } finally {
    await seeing.close();
  }
}

async function travelAll(
  url: string,
  badge: string | null,
  legs: readonly Leg[],
  by: Browser = browser,
): Promise<void> {
  const chosen = only ? legs.filter(({ name }) => only.includes(name)) : legs;
  if (chosen.length === 0) return;
  const tablet = await openTablet(by, url, { badge });
  leaveToTour(tablet.page);
  tablet.page.setDefaultTimeout(20_000);
  const own: Journal = { ...journal, wrong: [] };
  for (const leg of chosen) {
    const before = own.wrong.length;
    await travel({ page: tablet.page, url }, leg, own, speeches);
    journal.wrong.push(...own.wrong.slice(before));
    await keepFound(journal.wrong);
  }
  await tablet.putAway();
  expect(own.wrong).toEqual([]);
}

// Two tablets at a time: one waits for its next stop while the other is looked at.
describe.concurrent('the tour', { timeout: 600_000 }, () => {
  it('of the floor', () => travelAll(demo.url, 'BADGE-4401', floorLegs));
  it('of what the desk asks, refuses and tells', () => travelAll(demo.url, 'BADGE-4401', deskLegs));
  it('of what time does', () => travelAll(demo.url, 'BADGE-4401', clockLegs));
  it('of the camera', () => travelAll(demo.url, 'BADGE-4401', lensLegs));
  it('of the camera before half a label', () =>
    travelSeeing(label('22-0603-B', '1TLT-9400-H', '3SR-975002'), halfLegs));
  it('of the plant’s pages', () => travelAll(demo.url, 'BADGE-4401', plantLegs));
  it('of a change of product', () => travelAll(demo.url, 'BADGE-4401', changeLegs));
  it('of what others see, and of a line without a run', () => travelAll(demo.url, 'BADGE-4401', lastLegs));
  it('of a plant with nothing in it, and of one with a server', () =>
    travelAll(server.url, null, [
      ...emptyLegs,
      ...servedLegs(
        () => browser,
        () => server,
      ),
    ]));
});

it.skipIf(only)('the tour comes to all that the source has', () => {
  expect(gaps(journal.ids, journal.stops)).toEqual([]);
});
