// What is done at a stop of the tour: looked at in every size, theme and language, without leaving it. A state costs seconds to
// get to and a moment to look at, so it is come to once and turned round there.

import type { Page } from 'playwright-core';
import type { Spoken } from '../../../../src/app/words/speak.ts';
import { findings, type LookOptions, withLargeText } from '../look.ts';
import { endPractice, type Here, type Leg } from './here.ts';
import type { Shots } from './sheets.ts';

/** Sizes of the tablets and phones that the app is made for. */
export const sizes = [
  { width: 1280, height: 800 },
  { width: 800, height: 1280 },
  { width: 390, height: 844 },
] as const;

/** Words in which a stop is looked at, beside English. */
export interface Speech extends Spoken {
  readonly name: string;
}

export const pseudoSpeeches: readonly Speech[] = [
  { name: 'long', language: 'en', pseudo: 'long' },
  { name: 'mirrored', language: 'en', pseudo: 'mirrored' },
];

/** What the tour brings home. */
export interface Journal {
  readonly wrong: string[];
  readonly stops: string[];
  /** Every test id that was on the page at some stop. */
  readonly ids: Set<string>;
  readonly shots: Shots;
}

async function speak(page: Page, spoken: Spoken): Promise<void> {
  await page.evaluate(({ language, pseudo }) => {
    dispatchEvent(new CustomEvent('reelward-speak', { detail: { language, pseudo } }));
  }, spoken);
  // The words of a trial come with their first use.
  await page.waitForFunction(
    ({ language, pseudo }) => {
      const { lang, dir } = document.documentElement;
      const text = document.querySelector('nav')?.textContent ?? '';
      if (pseudo === 'long') return text.includes('[');
      if (pseudo === 'mirrored') return dir === 'rtl' && text.includes('\u202e');
      return lang === language && !text.includes('[') && !text.includes('\u202e');
    },
    spoken as { language: string; pseudo: string | null },
  );
}

/** The theme moves nothing, it colours: what is where was looked at in the light. */
const axeAlone: LookOptions = { controls: false, texts: false, pictures: false, sentences: false };

/** Looks at one stop from all sides; what is wrong goes into the journal. */
export async function visit(
  page: Page,
  name: string,
  journal: Journal,
  speeches: readonly Speech[],
): Promise<void> {
  journal.stops.push(name);
  const ids = await page
    .locator('[data-testid]')
    .evaluateAll((all) => all.map((each) => each.getAttribute('data-testid') ?? ''));
  for (const id of ids) journal.ids.add(id);
  const told = new Set<string>();
  const note = async (where: string, options: LookOptions) => {
    // Later looks at a state that stands already need less patience, and what was said of it is not waited for again.
    const patienceMs = told.size > 0 || where !== `${sizes[0].width} light` ? 150 : 1500;
    for (const finding of await findings(page, { patienceMs, ...options })) {
      if (told.has(finding)) continue;
      told.add(finding);
      journal.wrong.push(`${name} · ${where}: ${finding}`);
    }
  };
  // Where the log is gone nothing listens any more.
  const isWhole = (await page.getByTestId('fault').count()) === 0;
  for (const size of sizes) {
    await page.setViewportSize(size);
    // axe is slow: it is asked all its rules once, where most is in sight.
    await note(`${size.width} light`, { axe: size === sizes[0] });
    await journal.shots.take(page, `${size.width}-light`, name);
  }
  await page.emulateMedia({ colorScheme: 'dark' });
  await note(`${sizes[2].width} dark`, { ...axeAlone, axe: 'contrast' });
  for (const size of sizes) {
    await page.setViewportSize(size);
    await journal.shots.take(page, `${size.width}-dark`, name);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  for (const speech of isWhole ? speeches : []) {
    await speak(page, speech);
    for (const size of [sizes[0], sizes[2]]) {
      await page.setViewportSize(size);
      await note(`${size.width} ${speech.name}`, { sentences: speech.pseudo === null, pictures: false });
    }
    await journal.shots.take(page, `${sizes[2].width}-${speech.name}`, name);
  }
  if (isWhole) await speak(page, { language: 'en', pseudo: null });
  await withLargeText(page, async () => {
    for (const size of [sizes[0], sizes[2]]) {
      await page.setViewportSize(size);
      await note(`${size.width} large`, { texts: false, sentences: false, pictures: false });
    }
    await journal.shots.take(page, `${sizes[2].width}-large`, name);
  });
  await page.setViewportSize(sizes[0]);
}

/** Goes along a leg; one that cannot be gone to its end is a finding, and the next leg begins afresh. */
export async function travel(
  here: Here,
  leg: Leg,
  journal: Journal,
  speeches: readonly Speech[],
): Promise<void> {
  let last = 'the beginning';
  try {
    for await (const name of leg.stops(here)) {
      last = name;
      await visit(here.page, name, journal, speeches);
    }
  } catch (error) {
    await journal.shots.takeLost(here.page, leg.name).catch(() => undefined); // the page may be gone
    await endPractice(here).catch(() => undefined); // else every later leg would go on there
    journal.wrong.push(
      `leg "${leg.name}" ends after "${last}": ${String(error).split('\n').slice(0, 3).join(' ')}`,
    );
  }
}
