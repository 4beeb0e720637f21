// The five main tasks without a pointer and for a person who hears the screen. All that a task needs is come to by Tab, pressed by Enter or Space, and
// the place is never lost (WCAG 2.2: 2.1.1 keyboard, 2.1.2 no trap, 2.4.3 order, 2.4.7 focus visible, 2.4.11 focus not obscured). At every step each
// control has a name that is its alone and tells its state, headings follow each other, questions are named; and what happens by itself is said, whole,
// in its order and once.

import { expect, it } from 'vitest';
import { pass } from './support/clock.ts';
import { goTo, keepRunning, ownEntries } from './support/floor.ts';
import { faultsOf, heard, listenAsReader, readTree } from './support/reader.ts';
import {
  answerAndSplice,
  changeOver,
  clearHold,
  loadReel,
  type Task,
  traceAndExport,
} from './support/tasks.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

/** What a task left: what was said at each of its steps, and the kinds of entries that the tablet wrote. */
interface Done {
  readonly said: Readonly<Record<string, readonly string[]>>;
  readonly kinds: readonly string[];
}

/** A slot that comes due, and paste whose time ends: by the clock, so at any step of a slow machine. */
const isDue = (text: string) => /^(alert: M\d-[FR]-\d+|status: Paste \S+ on the stencil) /.test(text);

/** Does a task on a tablet of its own. What cannot be told from the tree fails, and so does a place that is lost. */
async function done(task: Task, badge = 'BADGE-2201'): Promise<Done> {
  const said: Record<string, readonly string[]> = {};
  let kinds: readonly string[] = [];
  await demo.onTablet(
    async ({ page }) => {
      await listenAsReader(page);
      for await (const step of task(page)) {
        said[step] = await heard(page);
        expect(faultsOf(await readTree(page)), step).toEqual([]);
      }
      said['after'] = await heard(page);
      kinds = (await ownEntries(page)).map(({ kind }) => kind);
    },
    { badge },
  );
  return { said, kinds };
}

/** What was said of the task alone. */
const ofTask = (said: Done['said']): Done['said'] =>
  Object.fromEntries(
    Object.entries(said).map(([step, texts]) => [step, texts.filter((text) => !isDue(text))]),
  );

/** Without what is another each time: clocks, and how long the log is. */
const steadyText = (text: string) =>
  text
    .replace(/\b\d\d:\d\d\b/g, '00:00')
    .replace(/\b\d+ entries/, 'all entries')
    .replace(/reelward-log-[\d-]+/, 'reelward-log')
    .replace(/status: \S+: Answered/, 'status: LOT: Answered');

it('load a reel after a wrong one was refused: the refusal and the verdict are said', async () => {
  const { said, kinds } = await done(loadReel);
  expect(kinds.filter((kind) => kind === 'reel.verified')).toHaveLength(2);
  const { refused, left, accepted, after } = ofTask(said);
  expect([refused, left, accepted, after].map((each) => each?.map(steadyText))).toEqual([
    [
      'alert: Refused Wrong part Put it back. Scan another reel. Nothing is loaded. 00:00, in the log M2-F-026 wants 25-0023-113 25-0023-311 the reel says 2 characters differ. No slot of this setup wants this part. ≈ 25-0023-113 and 25-0023-311 are look-alikes: 2 characters apart. This reel belongs on No slot here wants it. M2-F-026 needs 25-0023-113 The log has no reel of it in the store. ⚠ Stop the machine before you reach in. Scan another reel',
    ],
    [],
    [
      'alert: Right reel M2-F-026 25-0023-113 4,000 parts lot LT-9800 reel R-980103 Next: M2-F-023 Go on Take back Stop the machine and wait for the head before reaching in. Local rules come first.',
    ],
    [],
  ]);
});

it('answer a warning and splice: each warning is said once, and the splice', async () => {
  const { said, kinds } = await done(answerAndSplice);
  expect(kinds).toContain('warning.acknowledged');
  expect(kinds).toContain('reel.verified');
  const warnings = [...(said['warned'] ?? []), ...(said['answered'] ?? [])].filter((each) =>
    /^alert: .*\bM\d-[FR]-\d+/.test(each),
  );
  expect(warnings.length).toBeGreaterThan(0);
  const levels = warnings.flatMap((each) => each.match(/M\d-[FR]-\d+ [A-Za-z]+/g) ?? []);
  expect(new Set(levels).size).toBe(levels.length);
  expect(said['spliced']?.filter((each) => each.startsWith('alert: Right reel to splice'))).toHaveLength(1);
});

it('hear a warning that came under a question once that is closed, as it then stands', () =>
  demo.onTablet(async ({ page }) => {
    const warnings = async () => (await heard(page)).filter((each) => /^alert: .*\bM\d-[FR]-\d+/.test(each));
    await keepRunning(page);
    await goTo(page, 'load');
    await listenAsReader(page);
    await page.getByTestId('open-help').click();
    await page.locator('dialog[open]').waitFor();
    const open = async () => Number(await page.locator('[data-testid=warning] .many').textContent());
    const before = await open();
    const openLater = async () => {
      await pass(page, 60_000);
      return open();
    };
    await expect.poll(openLater).toBeGreaterThan(before);
    expect(await warnings()).toEqual([]);
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
    const said: string[] = [];
    await expect.poll(async () => said.push(...(await warnings()))).toBeGreaterThan(0);
    said.push(...(await warnings()));
    expect(new Set(said).size).toBe(said.length);
  }));

it('change over to the next product: how far that is is said', async () => {
  const { said, kinds } = await done(changeOver, 'BADGE-3301');
  expect(kinds).toContain('changeover.began');
  expect(kinds).toContain('changeover.released');
  for (const [at, step] of ['ticked', 'scanned', 'noted', 'measured', 'skipped'].entries()) {
    const far = said[step]?.filter((each) => /^status: \d+ of \d+ steps$/.test(each));
    expect(far, step).toEqual([expect.stringMatching(`^status: ${at + 1} of `)]);
  }
  expect(said['scanned']).toContain('status: Step answered: ST-GN-F'); // though its field has the focus
  const released = 'status: Released. Start the run on the line screen.';
  expect(
    Object.values(said)
      .flat()
      .filter((each) => each === released),
  ).toEqual([released]);
});

it('trace a lot and export the log: the answer is said, and that it was saved', async () => {
  const { said, kinds } = await done(traceAndExport, 'BADGE-4401');
  expect(kinds).toContain('log.exported');
  const { traced, exported, ...rest } = ofTask(said);
  expect([traced, exported].map((each) => each?.map(steadyText))).toEqual([
    ['status: Reading the log… all entries', 'status: LOT: Answered from the log on this tablet.'],
    ['status: Collecting entries…', 'status: all entries saved as reelward-log.csv.'],
  ]);
  expect(Object.values(rest).flat()).toEqual([]);
});

it('clear a hold as a lead: what it waits for, a wrong PIN, and that it is cleared are said', async () => {
  const { said, kinds } = await done(clearHold);
  expect(kinds).toContain('hold.cleared');
  expect(ofTask(said)).toEqual({
    held: [
      'alert: Held for the lead No quantity M2-F-026 25-0023-113 lot LT-9800 reel R-980102 The label gives no quantity, so the run-out is unknown. Type the quantity, or let a lead decide. Type the quantity Let a lead decide Go on',
    ],
    asked: [],
    'badge read': [],
    'wrong PIN': ['status: Checking…', 'alert: That is not the PIN. 4 tries left.'],
    'PIN read': ['status: Checking…'],
    cleared: ['status: Cleared for M2-F-026.'],
    after: [],
  });
});
