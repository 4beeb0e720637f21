// One part of the tour: a file of tests with a browser, a demo or a server of its own, whose tablets go along their legs. What was
// seen lies in .tmp/sheets/PART afterwards: contact sheets for a person's eyes, and the stops for the test that holds the parts together.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { languages } from '../../../../src/app/words/words.ts';
import { startBrowser } from '../browser.ts';
import { startDemo } from '../demo.ts';
import { openTablet } from '../floor.ts';
import { leaveToTour } from '../look.ts';
import type { Leg } from './here.ts';
import { Shots } from './sheets.ts';
import { keepStops } from './stops.ts';
import { type Journal, pseudoSpeeches, type Speech, travel } from './visit.ts';

/** What serves the app. */
interface Serving {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

const everyLanguage: readonly Speech[] = languages
  .filter((language) => language !== 'en')
  .map((language) => ({ name: language, language, pseudo: null }));
const asked = process.env['REELWARD_TOUR']?.split(',') ?? [];
const askedLanguages = everyLanguage.filter(({ name }) => asked.includes(name));
const chosenSpeeches = askedLanguages.length > 0 ? askedLanguages : pseudoSpeeches;
const speeches = asked.includes('all') ? [...pseudoSpeeches, ...everyLanguage] : chosenSpeeches;
/** How long the legs of one tablet may take: a tour in every language asks axe at each stop a dozen times over. */
export const tourMs = asked.length > 0 ? 4 * 3_600_000 : 600_000;
/** Legs asked for by name, while one is being written. */
const only = process.env['REELWARD_TOUR_LEGS']?.split(',');

/** What the tests of a part share. Not to be read before its first test runs. */
export interface Tour<S extends Serving> {
  readonly browser: () => Browser;
  readonly serving: () => S;
  /** Goes along legs with a tablet of its own; `by`: starts the browser to go with, where it is another. */
  readonly go: (
    legs: readonly Leg[],
    options?: { readonly badge?: string | null; readonly by?: () => Promise<Browser> },
  ) => Promise<void>;
}

/** Prepares a part of the tour by its name. `start`: what serves the app, the demo where left out. */
export function useTour(part: string): Tour<Serving>;
export function useTour<S extends Serving>(part: string, start: () => Promise<S>): Tour<S>;
export function useTour(part: string, start: () => Promise<Serving> = startDemo): Tour<Serving> {
  const shots = new Shots(part);
  const journal: Journal = { wrong: [], stops: [], ids: new Set(), shots };
  let started: { readonly browser: Browser; readonly serving: Serving } | null = null;
  const ready = () => {
    if (started === null) throw new Error('Cannot go on tour as its hooks must have run');
    return started;
  };

  beforeAll(async () => {
    await shots.clear();
    const camera = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];
    const [browser, serving] = await Promise.all([startBrowser(camera), start()]);
    started = { browser, serving };
  });
  afterAll(async () => {
    const { browser, serving } = ready();
    if (!only) await keepStops(part, journal);
    await shots.write(browser);
    await browser.close();
    await serving.stop();
  });

  return {
    browser: () => ready().browser,
    serving: () => ready().serving,
    go: async (legs, { badge = 'BADGE-4401', by } = {}) => {
      const chosen = only ? legs.filter(({ name }) => only.includes(name)) : legs;
      if (chosen.length === 0) return;
      const { url } = ready().serving;
      const own = await by?.();
      const tablet = await openTablet(own ?? ready().browser, url, { badge, offlineCopy: true });
      leaveToTour(tablet.page);
      const found: Journal = { ...journal, wrong: [] };
      for (const leg of chosen) {
        const before = found.wrong.length;
        await travel({ page: tablet.page, url }, leg, found, speeches);
        await shots.keepFound(found.wrong.slice(before));
      }
      await tablet.putAway();
      await own?.close();
      expect(found.wrong).toEqual([]);
    },
  };
}
