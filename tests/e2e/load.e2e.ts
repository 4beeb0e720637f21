// Loading the line of the demo plant, scanned as with a scanner: every verdict shows its reason and its next act, and whatever
// was scanned is in the log before the verdict stands on the screen.

import { describe, expect, it } from 'vitest';
import {
  endRun,
  firstSlot,
  goOn,
  goTo,
  openTablet,
  ownEntries,
  pad,
  readLog,
  reelLabel,
  scan,
  scanAll,
  seeVerdict,
  showSlot,
  signIn,
  type Tablet,
} from './support/floor.ts';
import { useDemo } from './support/use-demo.ts';

const demo = useDemo();

const { onTablet } = demo;

/** The three slots that the demo leaves empty, with a feeder that fits and the part wanted. */
const empty = [
  { slot: 'M2-F-023', feeder: 'F-0112', part: '22-0603-B' },
  { slot: 'M2-F-026', feeder: 'F-0113', part: '25-0023-113' },
  { slot: 'M2-R-005', feeder: 'F-0114', part: '10-0603-3R3' },
] as const;

let lastReel = 900_000;
const reelOf = (part: string, more: Readonly<Record<string, string>> = {}) =>
  reelLabel({ P: part, Q: '4000', '1T': 'LT-9100-E', '3S': `R-${++lastReel}`, ...more });

async function verifiedCount({ page }: Tablet): Promise<number> {
  return (await ownEntries(page, 'reel.verified')).length;
}

describe('a reel that is right', () => {
  it('is accepted in every order of slot, feeder and reel, and can be taken back', async () => {
    await onTablet(async ({ page }) => {
      const orders = ['SFR', 'SRF', 'FSR', 'FRS', 'RSF', 'RFS'];
      for (const [index, order] of orders.entries()) {
        const place = empty[index % 3];
        if (!place) throw new TypeError('no place');
        const codes = { S: place.slot, F: place.feeder, R: reelOf(place.part) } as Record<string, string>;
        const seen = await scanAll(page, ...[...order].map((letter) => codes[letter] ?? ''));
        expect(seen, order).toMatchObject({ verdict: 'accepted' });
        expect(seen.text).toContain('Right reel');
        const entry = (await ownEntries(page, 'reel.verified')).at(-1);
        expect(entry?.payload).toMatchObject({
          verdict: 'accepted',
          act: 'load',
          slot: place.slot,
          feeder: place.feeder,
          part: place.part,
          quantity: 4000,
          lot: 'LT-9100-E',
          via: 'wedge',
        });
        expect(entry?.who).toBe('p-2201');
        await page.getByTestId('verdict-undo').click();
        await page.getByTestId('verdict').waitFor({ state: 'detached' });
      }
      expect(await ownEntries(page, 'entry.corrected')).toHaveLength(orders.length);
      await goTo(page, 'load');
      await expect
        .poll(() => page.getByTestId('load-progress').textContent())
        .toBe('147 of 150 slots loaded');
    });
  });

  it('is on the disk before its verdict is on the screen', async () => {
    const context = await demo.browser.newContext();
    await context.addInitScript(() => {
      const scope = globalThis as unknown as { story: string[] };
      scope.story = [];
      const { transaction } = IDBDatabase.prototype;
      const { add } = IDBObjectStore.prototype;
      const verdicts = new WeakSet<IDBTransaction>();
      // Listens before anybody who waits for the same transaction, so that the order told is the order of events.
      IDBDatabase.prototype.transaction = function (...asked: Parameters<typeof transaction>) {
        const made = transaction.apply(this, asked);
        if (made.mode === 'readwrite')
          made.addEventListener('complete', () => verdicts.has(made) && scope.story.push('complete'));
        return made;
      };
      // The verdict's own entry: what the tablet writes by itself, such as a warning, may come at any moment.
      IDBObjectStore.prototype.add = function (...row: Parameters<typeof add>) {
        const [{ entry }] = row as [{ entry?: { kind: string } }]; // as the log's store writes it
        if (this.name === 'entries' && entry?.kind === 'reel.verified') {
          scope.story.push(`write, ${this.transaction.durability}`);
          verdicts.add(this.transaction);
        }
        return add.apply(this, row);
      };
      new MutationObserver(() => {
        if (document.querySelector('[data-testid=verdict]')) scope.story.push('shown');
      }).observe(document, { childList: true, subtree: true });
    });
    const tablet = await openTablet(demo.browser, demo.url, { context });
    await tablet.page.evaluate(() => {
      (globalThis as unknown as { story: unknown[] }).story.length = 0; // the demo's own entries
    });
    const place = empty[0];
    await scanAll(tablet.page, place.slot, place.feeder, reelOf(place.part));
    const story = await tablet.page.evaluate(() => (globalThis as unknown as { story: string[] }).story);
    expect(story.slice(0, story.indexOf('shown') + 1)).toEqual(['write, strict', 'complete', 'shown']);
    await tablet.putAway();
    await context.close();
  });

  it('moves the progress and the next slot on in walking order', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'load');
      await expect.poll(() => page.getByTestId('next-slot').textContent()).toContain('M2-F-023');
      const [first, second] = empty;
      expect((await scanAll(page, first.slot, first.feeder, reelOf(first.part))).text).toContain(
        'Next: M2-F-026',
      );
      await goOn(page);
      await expect
        .poll(() => page.getByTestId('load-progress').textContent())
        .toBe('148 of 150 slots loaded');
      await expect.poll(() => page.getByTestId('next-slot').textContent()).toContain('M2-F-026');
      expect((await scanAll(page, second.slot, second.feeder, reelOf(second.part))).text).toContain(
        'Next: M2-R-005',
      );
      await page.reload();
      await page.waitForSelector('html[data-ready]');
      await expect
        .poll(() => page.getByTestId('load-progress').textContent())
        .toBe('149 of 150 slots loaded');
    });
  });

  it('is accepted on the first badge where nobody had signed in', async () => {
    await onTablet(
      async ({ page }) => {
        const place = empty[0];
        for (const code of [place.slot, place.feeder, reelOf(place.part)]) await scan(page, code);
        await expect.poll(() => page.getByTestId('told').textContent()).toBe('Scan your badge first');
        expect(await ownEntries(page, 'reel.verified')).toEqual([]);
        await scan(page, 'BADGE-2203');
        expect((await seeVerdict(page)).verdict).toBe('accepted');
        expect((await ownEntries(page, 'reel.verified'))[0]?.who).toBe('p-2203');
      },
      { badge: null },
    );
  });
});

describe('a reel that is refused', () => {
  const place = empty[0];
  const cases = [
    {
      what: 'another part: the differing characters marked, where it goes, the next act',
      codes: () => [place.slot, place.feeder, reelOf('22-0603-Y')],
      says: ['Wrong part', 'M2-F-023 wants', 'the reel says', 'This reel goes to M2-F-022', 'Put it back'],
      reason: 'wrong-part',
      marks: ['B', 'Y'],
    },
    {
      what: 'a reel that the log has on another slot',
      codes: () => [place.slot, place.feeder, reelOf(place.part, { '3S': 'LOADED' })],
      says: ['Reel is on another slot', 'unload it there first'],
      reason: 'reel-elsewhere',
      marks: [],
    },
    {
      what: 'a feeder too wide for the tape, at its own scan',
      codes: () => [place.slot, 'F-0186'],
      says: ['Feeder does not fit the tape', '24 mm tape; this slot wants 8 mm', 'right width'],
      reason: 'feeder-width',
      marks: [],
    },
    {
      what: 'a lot on the block list',
      codes: () => [place.slot, place.feeder, reelOf(place.part, { '1T': 'LT-7781-Q' })],
      says: ['Reel is blocked', 'parts rotated in their pockets', 'Set it aside. Get the lead.'],
      reason: 'reel-blocked',
      marks: [],
    },
  ];

  it.each(cases)('tells $what', async ({ codes, says, reason, marks }) => {
    await onTablet(async (tablet) => {
      const { page } = tablet;
      const loaded = (await readLog(page))
        .filter(
          ({ kind, payload }) =>
            kind === 'reel.verified' && payload['slot'] === 'M2-F-022' && payload['verdict'] === 'accepted',
        )
        .at(-1);
      const texts = codes().map((code) => code.replace('LOADED', String(loaded?.payload['reel'])));
      const seen = await scanAll(page, ...texts);
      expect(seen.verdict).toBe('refused');
      for (const text of says) expect(seen.text).toContain(text);
      if (marks.length > 0) expect(seen.marks).toEqual(marks);
      const entry = (await ownEntries(page, 'reel.verified')).at(-1);
      expect(JSON.stringify(entry?.payload['reasons'])).toContain(`"code":"${reason}"`);
      // Slot and feeder stay for the next reel.
      await goOn(page);
      await expect.poll(() => page.getByTestId('well-slot').getAttribute('data-filled')).toBe('true');
      await scan(page, place.feeder);
      expect((await scanAll(page, reelOf(place.part))).verdict).toBe('accepted');
      expect(await verifiedCount(tablet)).toBe(2);
    });
  });

  it('tells a feeder whose pitch throws parts away', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'load');
      await (await showSlot(page, 'M1-F-001')).click();
      await page.getByTestId('slot-unload').click();
      await page.getByTestId('unload-uncounted').click();
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain('M1-F-001 unloaded');
      const seen = await scanAll(page, 'M1-F-001', 'F-0120');
      expect(seen.verdict).toBe('refused');
      expect(seen.text).toContain('Feeder pitch does not fit');
      expect(seen.text).toContain('advances 4 mm; this tape wants 2 mm');
      expect(seen.text).toContain('Set the pitch or take another feeder');
    });
  });

  it('tells a slot that still carries a reel of the setup before', async () => {
    await onTablet(
      async ({ page }) => {
        await endRun(page);
        await page.goto(`${demo.url}#/plant/setups`);
        await page.getByTestId('choose-greenhouse-node-top-F').click();
        await page.getByTestId('screen-load').waitFor();
        const slot = await firstSlot(page, 'other');
        const chosen = (await readLog(page)).find(
          ({ kind, payload }) => kind === 'setup.taken' && payload['setup'] === 'greenhouse-node-top-F',
        );
        const slots = chosen?.payload['slots'] as { slot: string; part: string }[]; // shape of the entry
        const part = slots.find((each) => each.slot === slot)?.part ?? '';
        const seen = await scanAll(page, slot, 'F-0112', reelOf(part));
        expect(seen.verdict).toBe('refused');
        expect(seen.text).toContain('Slot already loaded');
        expect(seen.text).toContain('Unload that reel first');
      },
      { badge: 'BADGE-3301' },
    );
  });
});

describe('a slot that nobody knows', () => {
  it('answers what was scanned, writes nothing and keeps what was in hand', async () => {
    await onTablet(async ({ page }) => {
      const place = empty[0];
      await scan(page, place.feeder);
      await scan(page, 'M9-F-001');
      await expect
        .poll(() => page.getByTestId('told').textContent())
        .toBe('This line has no slot M9-F-001. Scan the slot’s code at the machine.');
      expect(await ownEntries(page, 'reel.verified')).toEqual([]);
      expect((await scanAll(page, place.slot, reelOf(place.part))).verdict).toBe('accepted');
    });
  });
});

describe('a reel that a lead decides on', () => {
  it('is held as an alternate of another product, and cleared by badge, PIN and reason', async () => {
    await onTablet(async ({ page }) => {
      const seen = await scanAll(page, 'M2-R-010', reelOf('12-0603-105H'));
      expect(seen.verdict).toBe('held');
      expect(seen.text).toContain('Alternate not approved here');
      expect(seen.text).toContain('A lead must decide');
      await page.getByTestId('verdict-clear').click();
      await page.getByTestId('badge').waitFor();
      await scan(page, 'BADGE-2202');
      await page.getByText('Needs: Shift lead').waitFor();
      await scan(page, 'BADGE-3301');
      await page.getByText('PIN of Morag').waitFor();
      await pad(page, '1111');
      await page.getByText('4 tries left').waitFor();
      await pad(page, '3301');
      await page.getByRole('button', { name: 'Checked and measured by hand' }).click();
      await page.getByTestId('clear-accept').click();
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain('Cleared for M2-R-010');
      const [held] = await ownEntries(page, 'reel.verified');
      const [cleared] = await ownEntries(page, 'hold.cleared');
      expect(cleared?.payload).toMatchObject({
        of: `${held?.tablet}/${held?.epoch}/${held?.seq}`,
        by: 'p-3301',
        reason: 'Checked and measured by hand',
        slot: 'M2-R-010',
      });
    });
  });

  it('waits on the load screen until a lead declines it', async () => {
    await onTablet(async ({ page }) => {
      await scanAll(page, 'M2-R-010', reelOf('12-0603-105H'));
      await goTo(page, 'load');
      const holds = page.getByTestId('holds');
      await expect.poll(() => holds.textContent()).toContain('M2-R-010');
      await holds.getByRole('button').click();
      await page.getByTestId('badge').waitFor();
      await scan(page, 'BADGE-3302');
      await pad(page, '3302');
      await page.getByRole('button', { name: 'Counted by hand' }).click();
      await page.getByRole('button', { name: 'Decline' }).click();
      await holds.waitFor({ state: 'detached' });
      expect(await ownEntries(page, 'hold.declined')).toHaveLength(1);
    });
  });

  it('is held on a feeder that nobody listed, once a person says that it is one', async () => {
    await onTablet(async ({ page }) => {
      const place = empty[0];
      await scan(page, place.slot);
      await scan(page, 'F-9999');
      await page.getByText('Is it the feeder?').waitFor();
      await page.getByRole('button', { name: 'Feeder', exact: true }).click();
      const seen = await scanAll(page, reelOf(place.part));
      expect(seen.verdict).toBe('held');
      expect(seen.text).toContain('Feeder not known');
    });
  });

  it('asks for a quantity where the label has none, and is accepted with what was typed', async () => {
    await onTablet(async ({ page }) => {
      const place = empty[1];
      const bare = reelLabel({ P: place.part, '1T': 'LT-9101-E', '3S': 'R-990001' });
      const seen = await scanAll(page, place.slot, place.feeder, bare);
      expect(seen.verdict).toBe('held');
      expect(seen.text).toContain('No quantity');
      await page.getByRole('button', { name: 'Type the quantity' }).click();
      await pad(page, '2500');
      await page.locator('[data-verdict=accepted]').waitFor();
      const entries = await ownEntries(page, 'reel.verified');
      expect(
        entries.map(({ payload }) => [payload['verdict'], payload['quantity'], payload['basis']]),
      ).toEqual([
        ['held', null, null],
        ['accepted', 2500, 'typed'],
      ]);
    });
  });
});

describe('a label whose bar codes are scanned one by one', () => {
  it('is judged once part, quantity and lot are there, or a person says that this is all', async () => {
    await onTablet(async ({ page }) => {
      const [place, other] = empty;
      for (const code of [place.slot, place.feeder, `P${place.part}`, 'Q4000']) await scan(page, code);
      await expect.poll(() => page.getByTestId('well-reel').textContent()).toBe(`Reel ${place.part}lot?`);
      expect(await ownEntries(page, 'reel.verified')).toEqual([]);
      expect((await scanAll(page, '1TLT-9102-E')).verdict).toBe('accepted');

      for (const code of [other.slot, other.feeder, `P${other.part}`, '1TLT-9103-E']) await scan(page, code);
      await page.getByTestId('dock-enough').click();
      expect(await seeVerdict(page)).toMatchObject({ verdict: 'held' });
      const entries = await ownEntries(page, 'reel.verified');
      expect(
        entries.map(({ payload: { part, quantity, lot, codes } }) => [part, quantity, lot, codes]),
      ).toEqual([
        [place.part, 4000, 'LT-9102-E', [`P${place.part}`, 'Q4000', '1TLT-9102-E']],
        [other.part, null, 'LT-9103-E', [`P${other.part}`, '1TLT-9103-E']],
      ]);
    });
  });
});

describe('the sweep', () => {
  it('names what was not seen', async () => {
    await onTablet(async ({ page }) => {
      await goTo(page, 'load');
      await page.getByTestId('sweep-start').click();
      await page.getByTestId('sweep-progress').waitFor();
      const log = await readLog(page);
      const loaded = log
        .filter(
          ({ kind, payload }) =>
            kind === 'reel.verified' && payload['verdict'] === 'accepted' && payload['slot'] === 'M2-F-022',
        )
        .at(-1);
      const seen = await scanAll(
        page,
        'M2-F-022',
        reelLabel({ P: '22-0603-Y', Q: '4000', '3S': String(loaded?.payload['reel']) }),
      );
      expect(seen.verdict).toBe('accepted');
      await goOn(page);
      // A reload ends no sweep; whether this tablet goes on with it, a person says.
      await page.reload();
      await page.getByTestId('sweep-resume').click();
      await page.getByTestId('sweep-resume').waitFor({ state: 'detached' });
      const wrong = await scanAll(page, 'M2-F-001', reelOf('10-0603-000'));
      expect(wrong.verdict).toBe('refused');
      expect(wrong.text).toContain('Not the reel in the log');
      await goOn(page);
      await expect.poll(() => page.getByTestId('sweep-progress').textContent()).toContain('1 of 147 seen');
      await page.getByTestId('sweep-end').click();
      await expect.poll(() => page.getByTestId('notice').textContent()).toContain('146 not seen');
      const [ended] = await ownEntries(page, 'sweep.ended');
      expect(ended?.payload['seen']).toBe(1);
      expect(ended?.payload['missing']).toHaveLength(146);
      expect(ended?.payload['missing']).not.toContain('M2-F-022');
    });
  });
});

describe('signing in', () => {
  it('changes hands with a badge, and each entry says whose it is', async () => {
    await onTablet(async ({ page }) => {
      const [first, second] = empty;
      await scanAll(page, first.slot, first.feeder, reelOf(first.part));
      await signIn(page, 'BADGE-2204');
      await scanAll(page, second.slot, second.feeder, reelOf(second.part));
      await expect
        .poll(async () => (await ownEntries(page, 'reel.verified')).map(({ who }) => who))
        .toEqual(['p-2201', 'p-2204']);
      expect(await ownEntries(page, 'person.signed-in')).toHaveLength(2);
    });
  });

  it('is done at the scan of the badge, though the dialogs are still on their way', async () => {
    const context = await demo.browser.newContext();
    let send: () => void = () => undefined;
    const sent = new Promise<void>((resolve) => {
      send = resolve;
    });
    await context.route(/PeopleDialogs/, async (route) => {
      await sent;
      await route.continue();
    });
    const tablet = await openTablet(demo.browser, demo.url, { context });
    const { page } = tablet;
    await signIn(page, 'BADGE-2204');
    const [place] = empty;
    expect((await scanAll(page, place.slot, place.feeder, reelOf(place.part))).verdict).toBe('accepted');
    expect((await ownEntries(page, 'reel.verified')).map(({ who }) => who)).toEqual(['p-2204']);
    send();
    await tablet.putAway();
    await context.close();
  });
});
