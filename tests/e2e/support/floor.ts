// A tablet of the demo plant in a browser: signed in by a scanned badge, scanned at like a scanner does, its log read straight
// from the browser's database, behind the app's back. What the page must never do (throw, break its own policy, ask a third
// party) is written down from the first moment and told when the tablet is put away.

import assert from 'node:assert/strict';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { formatEnvelope } from '../../../shared/labels/envelope.ts';
import { verifyChains } from '../../../shared/log/chain.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { waitReady } from './browser.ts';
import { drawn, giveClock, pass, withoutTimers } from './clock.ts';
import { listen, look } from './look.ts';

/** A page with what it did wrong. */
export interface Tablet {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Closes it; fails where the page threw, broke its policy or asked a third party. */
  readonly putAway: () => Promise<void>;
}

/** How a tablet is opened. */
export interface TabletOptions {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Badge scanned at once; null = nobody signs in. */
  readonly badge?: string | null;
  readonly hash?: string;
  readonly context?: BrowserContext;
  /**
   * Keeps the app on the tablet for offline work, as a person's tablet does; default not: two hundred files, fetched and stored, are most
   * of what a tablet of a few seconds' life would do. A context that is given keeps it.
   */
  readonly offlineCopy?: boolean;
}

/** The copy for offline work is never there yet, as on a slow network. */
function holdOfflineCopy(): void {
  ServiceWorkerContainer.prototype.register = () => new Promise(() => undefined);
}

/** Opens the app on a tablet of its own (or in a given context) and signs an operator in. */
export async function openTablet(
  browser: Browser,
  url: string,
  options: TabletOptions = {},
): Promise<Tablet> {
  const context =
    options.context ??
    (await browser.newContext({
      viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
      colorScheme: options.dark ? 'dark' : 'light',
      acceptDownloads: true,
    }));
  if (!options.context && !options.offlineCopy) await context.addInitScript(holdOfflineCopy);
  await giveClock(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000); // a busy machine is slow, not wrong
  const wrongs = await watchPage(page, url);
  await page.goto(`${url}${options.hash ?? ''}`);
  await waitReady(page);
  const { badge = 'BADGE-2201' } = options;
  if (badge !== null) await signIn(page, badge);
  return {
    page,
    context,
    putAway: async () => {
      const policy = await page.evaluate(
        () => (globalThis as { policyBroken?: string[] }).policyBroken ?? ['nobody watched the policy'],
      );
      if (options.context) await page.close();
      else await context.close();
      assert.deepEqual([...wrongs, ...policy], []);
    },
  };
}

/** Questions to the page's workers and their answers: every look of the watch ends in one. */
interface Counted {
  readonly asked: number;
  readonly answered: number;
}

/** Collects what a page throws and whom it asks. Before the page is sent anywhere: what it counts is counted from its first script on. */
async function watchPage(page: Page, url: string): Promise<string[]> {
  const wrongs: string[] = [];
  listen(page);
  const home = new URL(url).origin;
  page.on('pageerror', (error) => wrongs.push(`thrown: ${error.message}`));
  page.on('request', (request) => {
    const { origin, protocol } = new URL(request.url());
    if (origin !== home && !['data:', 'blob:'].includes(protocol)) wrongs.push(`asked: ${request.url()}`);
  });
  await page.addInitScript(() => {
    const scope = globalThis as { policyBroken?: string[]; counted?: Counted };
    scope.policyBroken = [];
    const counted = { asked: 0, answered: 0 };
    scope.counted = counted;
    const { postMessage } = Worker.prototype;
    const known = new WeakSet<Worker>();
    Worker.prototype.postMessage = function (...given: unknown[]) {
      counted.asked += 1;
      if (!known.has(this)) this.addEventListener('message', () => counted.answered++);
      known.add(this);
      return Reflect.apply(postMessage, this, given);
    };
    addEventListener('securitypolicyviolation', (event) => {
      scope.policyBroken?.push(
        `${event.violatedDirective}: ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`,
      );
    });
  });
  return wrongs;
}

const controlKeys: Readonly<Record<number, readonly [key: string, code: string]>> = {
  4: ['d', 'KeyD'],
  28: ['\\', 'Backslash'],
  29: [']', 'BracketRight'],
  30: ['^', 'Digit6'],
  31: ['_', 'Minus'],
};

/** Between two characters of a scanner on a cable, ms. */
const SCANNER_GAP_MS = 1;

/**
 * One scan: all keys sent without waiting for the page in between, as a scanner does, and Enter. The keys carry the moments at which
 * a scanner sends them, so that its pace does not hang on how busy this machine is. A hand scans after it has seen what it did last.
 */
export async function scan(page: Page, text: string): Promise<void> {
  await drawn(page);
  const session = await page.context().newCDPSession(page);
  const startMs = performance.timeOrigin + performance.now();
  await withoutTimers(page, () =>
    Promise.all(
      scannerKeys(text).flatMap((strokes, at) => {
        const timestamp = (startMs + at * SCANNER_GAP_MS) / 1000;
        return strokes.map((stroke) => session.send('Input.dispatchKeyEvent', { ...stroke, timestamp }));
      }),
    ),
  );
  await session.detach();
}

/** A key going down or up, as the browser's debugging protocol takes it. */
export interface Stroke {
  readonly type: 'rawKeyDown' | 'keyDown' | 'keyUp';
  readonly key: string;
  readonly code: string;
  readonly text?: string;
  readonly modifiers?: number;
  readonly windowsVirtualKeyCode?: number;
}

/** What a scanner sends for a text: the strokes of each character, those of Enter last. */
export function scannerKeys(text: string): readonly (readonly Stroke[])[] {
  const enter = { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13 };
  return [
    ...[...text].map(strokesOf),
    [
      { ...enter, type: 'keyDown', text: '\r' },
      { ...enter, type: 'keyUp' },
    ],
  ];
}

function strokesOf(char: string): readonly Stroke[] {
  const control = controlKeys[char.charCodeAt(0)];
  if (control) {
    const [key, code] = control;
    return [
      { type: 'rawKeyDown', modifiers: 2, key: 'Control', code: 'ControlLeft' },
      { type: 'rawKeyDown', modifiers: 2, key, code },
      { type: 'keyUp', modifiers: 2, key, code },
      { type: 'keyUp', key: 'Control', code: 'ControlLeft' },
    ];
  }
  const code = /[a-z]/i.test(char) ? `Key${char.toUpperCase()}` : /\d/.test(char) ? `Digit${char}` : '';
  return [
    { type: 'keyDown', key: char, code, text: char },
    { type: 'keyUp', key: char, code },
  ];
}

/** Between two keys of a person who types, ms: slower than any scanner that sends at an even pace. */
const TYPIST_GAP_MS = 90;

/** Types as a person does: between two keys the tablet's clock goes on. */
export async function typeByHand(page: Page, text: string): Promise<void> {
  for (const char of text) {
    await page.keyboard.press(char === ' ' ? 'Space' : char);
    await pass(page, TYPIST_GAP_MS);
  }
}

/** A button takes a second tap on the same place for a tremble of the hand until this long after the first, ms. */
const TREMBLE_MS = 400;

/** Takes the time that a hand takes between two acts on the same place. */
export async function steady(page: Page): Promise<void> {
  await pass(page, TREMBLE_MS + 50);
}

/** Taps where something stands, whether it takes taps or not: a finger does not ask. */
export async function tap(target: Locator): Promise<void> {
  await target.scrollIntoViewIfNeeded();
  await drawn(target.page()); // what it was scrolled past has found its place
  const box = await target.boundingBox();
  assert.ok(box, 'nothing to tap at');
  await target.page().mouse.click(box.x + box.width / 2, box.y + box.height / 2);
}

/** The watch over the line looks at the clock this often, ms. */
const LOOK_EVERY_MS = 5000;

/** Lets the watch over the line look once more, and waits until what followed from that look has been computed. */
export async function lookAgain(page: Page): Promise<void> {
  // No look by itself may come between what was asked until now and the time that goes by.
  const before = await withoutTimers(page, async () => {
    const asked = await page.evaluate(() => (globalThis as { counted?: Counted }).counted?.asked);
    await pass(page, LOOK_EVERY_MS);
    return asked;
  });
  assert.ok(before !== undefined, 'nobody counts what the page asks its workers');
  await page.waitForFunction((old) => {
    const { counted } = globalThis as { counted?: Counted };
    return counted !== undefined && counted.asked > old && counted.answered === counted.asked;
  }, before);
  await drawn(page);
}

/** Scans a badge and waits until its holder is signed in. */
export async function signIn(page: Page, badge: string): Promise<void> {
  const before = await page.getByTestId('sign-in').textContent();
  await scan(page, badge);
  await page.waitForFunction(
    (old) => document.querySelector('[data-testid=sign-in]')?.textContent !== old,
    before,
  );
}

/** A reel's label as one Data Matrix (ISO/IEC 15434 format 06), by data identifier. */
export function reelLabel(fields: Readonly<Record<string, string>>): string {
  return formatEnvelope({
    format: '06',
    fields: Object.entries(fields).map(([id, value]) => ({ id, value })),
  });
}

/** The label of a reel of one lot; `quantity`: null where it tells none. */
export function labelOf(part: string, reel: string, quantity: string | null = '4000'): string {
  return reelLabel({ P: part, ...(quantity === null ? {} : { Q: quantity }), '1T': 'LT-9800', '3S': reel });
}

/** A verdict as it stands on the screen. */
export interface SeenVerdict {
  readonly verdict: string | null;
  readonly text: string;
  /** Marked characters of the two part numbers. */
  readonly marks: readonly string[];
}

/** Waits for a verdict on the screen, reads it. */
export async function seeVerdict(page: Page): Promise<SeenVerdict> {
  const band = page.getByTestId('verdict');
  await band.waitFor();
  await look(page, { where: 'verdict' });
  return band.evaluate((shown) => ({
    verdict: shown.getAttribute('data-verdict'),
    text: (shown.textContent ?? '').replace(/\s+/g, ' '),
    marks: [...shown.querySelectorAll('mark')].map(({ textContent }) => textContent ?? ''),
  }));
}

/** Scans several codes one after the other and reads the verdict that follows. */
export async function scanAll(page: Page, ...texts: readonly string[]): Promise<SeenVerdict> {
  for (const text of texts) await scan(page, text);
  return seeVerdict(page);
}

/** Goes on from a shown verdict. */
export async function goOn(page: Page): Promise<void> {
  await page.getByTestId('verdict-go-on').click();
  await page.getByTestId('verdict').waitFor({ state: 'detached' });
  await look(page, { where: 'after a verdict' });
}

/** Clears what the dock still holds of the last scans, where it holds something. */
export async function clearDock(page: Page): Promise<void> {
  // Found and pressed in one: what is in hand may go by itself.
  await page
    .getByTestId('dock-clear')
    .evaluateAll(([button]) => (button as HTMLElement | undefined)?.click());
}

/** Goes on from a shown verdict, to scans that have nothing to do with those before. */
export async function goOnAfresh(page: Page): Promise<void> {
  await goOn(page);
  await clearDock(page);
}

/** Every entry of the tablet's log, in folding order, read from the database itself; `name`: that of the database. */
export async function readLog(page: Page, name = 'reelward-demo'): Promise<readonly Entry[]> {
  // As one text: the driver walks through every value of an answer, twice, which for a log is slower than all that was tested.
  const text = await page.evaluate(
    (database) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open(database);
        opening.onerror = () => reject(opening.error);
        opening.onupgradeneeded = () => opening.transaction?.abort(); // looking must not make it
        opening.onsuccess = () => {
          const db = opening.result;
          const reading = db.transaction(['entries', 'meta']);
          const all = reading.objectStore('entries').index('[ms+n+tablet+epoch+seq]').getAll();
          const signed = reading.objectStore('meta').get('signed-heads');
          reading.onabort = () => reject(reading.error);
          reading.oncomplete = () => {
            db.close();
            const rows = all.result as { entry: unknown }[];
            const heads = (signed.result as { value?: unknown } | undefined)?.value;
            resolve(JSON.stringify({ entries: rows.map(({ entry }) => entry), heads }));
          };
        };
      }),
    name,
  );
  const { entries, heads } = JSON.parse(text) as {
    readonly entries: readonly Entry[];
    readonly heads?: Readonly<Record<string, { readonly hash: string; readonly sig: string }>>;
  };
  // The store checked them when they were written; the end of a chain is signed beside it, and read with it.
  return entries.map((entry) => {
    const head = heads?.[entry.epoch];
    return head?.hash === entry.hash ? { ...entry, sig: head.sig } : entry;
  });
}

/** The entries that this tablet wrote, oldest first; kinds may be narrowed. */
export async function ownEntries(page: Page, ...kinds: readonly string[]): Promise<readonly Entry[]> {
  const own = (await readLog(page)).filter((entry) => !entry.tablet.startsWith('demo0'));
  return kinds.length === 0 ? own : own.filter((entry) => kinds.includes(entry.kind));
}

/** Fails unless every chain of the log holds. */
export function expectWhole(entries: readonly Entry[]): void {
  const report = verifyChains(entries);
  assert.equal(report.firstBroken, null);
  assert.equal(report.ok, true);
}

/** Types a PIN or a number on the pad and enters it. */
export async function pad(page: Page, digits: string): Promise<void> {
  await look(page, { where: 'pad' });
  await steady(page);
  for (const digit of digits)
    await page.locator('.pinpad').getByRole('button', { name: digit, exact: true }).click();
  await page.getByTestId('pin-enter').click();
}

/** Waits until no screen or question is still being fetched. */
export async function arrived(page: Page): Promise<void> {
  await page.locator('[data-coming]').first().waitFor({ state: 'detached' });
}

/** Goes to an address of the app, as a link does. */
export async function openAt(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
}

/** Goes to a screen by its navigation. */
export async function goTo(page: Page, screen: string): Promise<void> {
  await page.getByTestId(`nav-${screen}`).click();
  await page.getByTestId(`screen-${screen}`).waitFor();
  await arrived(page);
  await look(page, { where: screen });
}

/** On the line: sees to it that the run is running; the demo's shift has stops of its own, as a real one has. */
export async function resumeRun(page: Page): Promise<void> {
  const [resume, stop] = [page.getByTestId('run-resume'), page.getByTestId('run-stop')];
  await resume.or(stop).first().waitFor();
  if (await resume.isVisible()) await resume.click();
  await stop.waitFor();
}

/** Goes to the line and sees to it that the run is running. */
export async function keepRunning(page: Page): Promise<void> {
  await goTo(page, 'line');
  await resumeRun(page);
}

/** Ends the demo's run, as its screens ask for it. */
export async function endRun(page: Page): Promise<void> {
  await keepRunning(page);
  await page.getByTestId('run-stop').click();
  await page.getByTestId('stop-break').click();
  await page.getByTestId('run-end').click();
  await page.getByTestId('run-end-yes').click();
  await page.getByTestId('run-start').waitFor();
}

/** On Load: opens the bank that a slot stands in, by a tap on it in the small picture of the line, and gives the slot's own button. */
export async function showSlot(page: Page, slot: string): Promise<Locator> {
  const bank = page.locator('.bankcard', { has: page.locator(`[data-cell="${slot}"]`) });
  if ((await bank.getAttribute('aria-pressed')) !== 'true') await bank.click();
  const button = page.locator(`button[data-slot="${slot}"]`);
  await button.waitFor();
  return button;
}

/** On Load: the first slot that stands so, by its name in the small picture of the line. */
export async function firstSlot(page: Page, standing: 'other' | 'held' | 'missing'): Promise<string> {
  const cell = page.locator(`.plan .cells .cell.${standing}`).first();
  await cell.waitFor();
  return (await cell.getAttribute('data-cell')) ?? '';
}

/** On Reels: opens a reel and does what can be done with it there. */
export async function reelAct(
  page: Page,
  act: 'count' | 'mark' | 'put' | 'air' | 'split' | 'merge' | 'block' | 'pack',
  reel: string,
): Promise<void> {
  await page.getByTestId(`reel-${reel}`).click();
  await page.getByTestId(`${act}-${reel}`).click();
}

/** On Log: opens what leaves the log. */
export async function openExport(page: Page): Promise<void> {
  await page.getByTestId('log-export').click();
  await page.getByTestId('export-csv').waitFor();
}
