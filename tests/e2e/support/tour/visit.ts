// What is done at a stop of the tour: looked at in every size, theme and language, without leaving it. A state costs seconds to
// get to and a moment to look at, so it is come to once and turned round there.

import type { Page } from 'playwright-core';
import type { Spoken } from '../../../../src/app/words/speak.ts';
import { findings, type LookOptions, withGloves, withLargeText } from '../look.ts';
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

/**
 * Was the tour asked for by itself? Then pictures are kept of every stop, and axe is asked in every language and theme. A run that nobody
 * looks at keeps only pictures of what it found, else they are a quarter of its time; axe would be as much again for each language.
 */
const isAsked = process.env['REELWARD_TOUR'] !== undefined;

/** A language of each script but Latin, which English shows: pictures are taken of it in every size and theme. */
const scripts: readonly string[] = ['zh', 'ar'];

/** Is every stop looked at as a tablet for gloves and the left hand shows it too? */
const isGloved = process.env['REELWARD_TOUR']?.split(',').includes('gloves') ?? false;

/** What the tour brings home. */
export interface Journal {
  readonly wrong: string[];
  readonly stops: string[];
  /** Every test id that was on the page at some stop. */
  readonly ids: Set<string>;
  readonly shots: Shots;
}

/** Has the page speak a language, or a trial of longest or mirrored words, and waits until it does. */
export async function speak(page: Page, spoken: Spoken): Promise<void> {
  await page.evaluate(({ language, pseudo }) => {
    dispatchEvent(new CustomEvent('reelward-speak', { detail: { language, pseudo } }));
  }, spoken);
  // The words of a trial come with their first use.
  await page.waitForFunction(
    ({ language, pseudo }) => {
      const { lang, dir } = document.documentElement;
      const text = (document.querySelector('nav') ?? document.querySelector('main'))?.textContent ?? '';
      if (pseudo === 'long') return text.includes('[');
      if (pseudo === 'mirrored') return dir === 'rtl' && text.includes('\u202e');
      return lang === language && !text.includes('[') && !text.includes('\u202e');
    },
    spoken as { language: string; pseudo: string | null },
  );
}

/** The theme moves nothing, it colours: what is where was looked at in the light. */
const axeAlone: LookOptions = { controls: false, texts: false, pictures: false, sentences: false };

/** Takes the pictures of a script that a look at both ends in the light left out; begins in the dark and ends so. */
async function takeScript(page: Page, name: string, { shots }: Journal, script: string): Promise<void> {
  for (const size of sizes) {
    await page.setViewportSize(size);
    await shots.take(page, `${size.width}-${script}-dark`, name);
  }
  const [, middle] = sizes;
  await page.setViewportSize(middle);
  await page.emulateMedia({ colorScheme: 'light' });
  await shots.take(page, `${middle.width}-${script}`, name);
  await page.emulateMedia({ colorScheme: 'dark' });
}

/** Looks at one stop from all sides; what is wrong goes into the journal. */
export async function visit(
  page: Page,
  name: string,
  journal: Journal,
  speeches: readonly Speech[],
): Promise<void> {
  journal.stops.push(name);
  const noteIds = async () => {
    const ids = await page
      .locator('[data-testid]')
      .evaluateAll((all) => all.map((each) => each.getAttribute('data-testid') ?? ''));
    for (const id of ids) journal.ids.add(id);
  };
  await noteIds(); // what is there for a moment alone
  const told = new Set<string>();
  const note = async (where: string, options: LookOptions) => {
    // What was said of a stop is not waited for again.
    const patienceMs = told.size > 0 ? 150 : 3000;
    const toldBefore = told.size;
    for (const finding of await findings(page, { patienceMs, ...options })) {
      if (told.has(finding)) continue;
      told.add(finding);
      journal.wrong.push(`${name} · ${where}: ${finding}`);
    }
    if (!isAsked && told.size > toldBefore) await journal.shots.takeFound(page, `${name} ${where}`);
  };
  // Where the log is gone, or the words are, nothing listens any more.
  const isWhole = (await page.getByTestId('fault').or(page.getByTestId('no-words')).count()) === 0;
  for (const size of sizes) {
    await page.setViewportSize(size);
    // axe is slow: it is asked all its rules at one size alone, where most is in sight.
    await note(`${size.width} light`, { axe: size === sizes[0] });
    if (size === sizes[0]) await noteIds();
    if (isAsked) await journal.shots.take(page, `${size.width}-light`, name);
  }
  // From each size to the nearest: a window that changes its size is laid out anew.
  const [wide, , narrow] = sizes;
  await page.emulateMedia({ colorScheme: 'dark' });
  await note(`${narrow.width} dark`, { ...axeAlone, axe: 'contrast' });
  for (const size of isAsked ? [...sizes].reverse() : []) {
    await page.setViewportSize(size);
    if (size === wide) await note(`${size.width} dark`, { ...axeAlone, axe: true });
    await journal.shots.take(page, `${size.width}-dark`, name);
  }
  await page.emulateMedia({ colorScheme: 'light' });
  let ends: readonly (typeof sizes)[number][] = [wide, narrow];
  const atBothEnds = async (kind: string, options: LookOptions) => {
    for (const size of ends) {
      await page.setViewportSize(size);
      await note(`${size.width} ${kind}`, {
        ...options,
        pictures: false,
        axe: options.axe === true && size === wide,
      });
      const isTaken = isAsked && (size === narrow || scripts.includes(kind));
      if (isTaken) await journal.shots.take(page, `${size.width}-${kind}`, name);
    }
    ends = [...ends].reverse();
  };
  const atEachSize = async (kind: string, options: LookOptions) => {
    for (const size of sizes) {
      await page.setViewportSize(size);
      await note(`${size.width} ${kind}`, options);
      if (isAsked) await journal.shots.take(page, `${size.width}-${kind}`, name);
    }
  };
  for (const speech of isWhole ? speeches : []) {
    await speak(page, speech);
    await atBothEnds(speech.name, { sentences: speech.pseudo === null, axe: isAsked });
    if (!isAsked) continue;
    await page.emulateMedia({ colorScheme: 'dark' });
    await note(`${page.viewportSize()?.width} ${speech.name} dark`, { ...axeAlone, axe: 'contrast' });
    if (scripts.includes(speech.name)) await takeScript(page, name, journal, speech.name);
    await page.emulateMedia({ colorScheme: 'light' });
  }
  if (isWhole) await speak(page, { language: 'en', pseudo: null });
  await withLargeText(page, () => atBothEnds('large', { texts: false, sentences: false }));
  if (isGloved) await withGloves(page, () => atEachSize('gloves', { sentences: false }));
  await page.setViewportSize(wide);
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
