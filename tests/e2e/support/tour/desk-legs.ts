// The tour of what the desk asks and tells, of refusals in their kinds, of a lot blocked while it runs, and of practice.

import { waitReady } from '../browser.ts';
import { pad, readLog, reelLabel, scan, scanAll, showSlot, steady } from '../floor.ts';
import { closeDialogs, confirm, goThere, type Here, type Leg, openBy, openReel } from './here.ts';

/** What the log has on a slot: the newest reel accepted there. */
async function loadedOn({ page }: Here, slot: string) {
  const entries = await readLog(page);
  const loaded = entries
    .filter(
      ({ kind, payload }) =>
        kind === 'reel.verified' && payload['slot'] === slot && payload['verdict'] === 'accepted',
    )
    .at(-1)?.payload;
  if (!loaded) throw new TypeError(`Nothing was loaded on ${slot}`);
  const text = (key: string) => String(loaded[key] ?? '');
  return { part: text('part'), lot: text('lot'), reel: text('reel'), quantity: text('quantity') };
}

/** What the desk asks, and what it tells besides verdicts. */
async function* asks(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  const { part, lot, reel, quantity } = await loadedOn(here, 'M1-F-003');
  const same = reelLabel({ P: part, Q: quantity, '1T': lot, '3S': reel });
  await scan(page, 'M1-F-003');
  await page.getByTestId('well-slot').waitFor();
  await scan(page, same);
  await scan(page, same);
  await page.getByTestId('runs-here').waitFor();
  yield 'question: a second reel with the same label';
  await page.getByTestId('runs-here-same').click();
  await goThere(here, '#/load');
  await scan(page, 'M2-R-010');
  await page.getByTestId('well-slot').waitFor();
  await scan(page, 'MV-12');
  await page.getByTestId('told').or(page.locator('dialog[open]')).first().waitFor();
  yield 'told: no list knows it';
  await goThere(here, '#/load');
  await scan(page, 'M2-F-023');
  await scan(page, 'F-0112');
  await page.locator('[data-testid=well-feeder][data-filled=true]').waitFor();
  await page.reload();
  await waitReady(page);
  await page.getByTestId('dock-go-on').waitFor();
  yield 'told: this was in hand';
  await page.getByTestId('dock-go-on').click();
  await page.getByTestId('told').waitFor({ state: 'detached' });
  yield 'in hand again';
  await goThere(here, '#/load');
}

/** Refusals that differ in what they compare and offer. */
async function* refusals(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-026', reelLabel({ P: '25-0023-311', Q: '4000', '1T': 'LT-1', '3S': 'R-980001' }));
  yield 'refused, another part at its first scan';
  await goThere(here, '#/load');
  await scanAll(page, 'P25-0023-13H', 'Q4000', '1TLT-9500');
  yield 'refused, in no slot of this product';
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-023', 'F-0186');
  yield 'refused, a feeder too wide';
  await goThere(here, '#/load');
  const { part } = await loadedOn(here, 'M1-F-004');
  await scanAll(page, 'M2-F-023', reelLabel({ P: part, Q: '4000', '1T': 'LT-1', '3S': 'R-980003' }));
  yield 'refused, a reel of another slot';
  await goThere(here, '#/load');
}

/** A lot is blocked while it runs. */
async function* blocked(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/parts/blocks');
  const { lot } = await loadedOn(here, 'M1-F-001');
  await page.getByTestId('block-add').click();
  await page.getByTestId('block-value').fill(lot);
  await page.getByTestId('block-reason').fill('Cracked bodies');
  await page.getByTestId('block-save').click();
  await page.getByTestId('blocked').waitFor();
  await goThere(here, '#/line');
  await page.getByTestId('blocked-panels').waitFor();
  yield 'line, a blocked reel runs';
  await goThere(here, '#/load');
  yield 'load, a blocked reel runs';
  await (await showSlot(page, 'M1-F-001')).click();
  await page.getByTestId('slot-blocked').waitFor();
  yield 'slot, its reel is blocked';
  await closeDialogs(page);
  await openBy(here, 'blocked-off');
  yield 'blocked reel, taken off';
  await closeDialogs(page);
  await scan(page, 'BADGE-3301');
  await page.locator('[data-testid=blocked-let-run]:not([aria-disabled=true])').waitFor();
  await openBy(here, 'blocked-let-run');
  yield 'blocked reel, let run: badge';
  await scan(page, 'BADGE-3301');
  await page.locator('.pinpad').waitFor();
  yield 'blocked reel, let run: PIN';
  await pad(page, '3301');
  await page.getByTestId('let-run-reason').fill('Customer agrees in writing');
  yield 'blocked reel, let run: reason';
  await closeDialogs(page);
  await page.getByTestId('blocked-heard').click();
  await page.getByTestId('blocked-heard').waitFor({ state: 'detached' });
  await goThere(here, '#/change');
  yield 'change, a blocked reel runs';
  await openBy(here, 'blocked-let-run');
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('let-run-reason').fill('Customer agrees in writing');
  await page.getByTestId('let-run-yes').click();
  await page.getByTestId('blocked').waitFor({ state: 'detached' });
  yield 'change, a blocked reel was let run';
  await goThere(here, '#/log');
  await page.getByTestId('entry').first().click();
  await page.locator('dialog[open]').waitFor();
  yield 'entry, a blocked reel was let run';
  await closeDialogs(page);
}

/** A bake that was too short, until a lead lets it count. */
async function* bakes(here: Here): AsyncGenerator<string> {
  const { page } = here;
  const label = reelLabel({ P: '22-0603-B', Q: '4000', '1T': 'LT-9600', '3S': 'R-980007' });
  await goThere(here, '#/stock');
  await scan(page, label);
  await page.getByTestId('put-new').click();
  await scan(page, 'A2-S11');
  const told = async (air: string, hours: string) => {
    await page.getByTestId('reel-R-980007').waitFor();
    await steady(page);
    await openReel(here, 'air', 'R-980007');
    await page.getByTestId(`air-${air}`).click();
    if (air === 'bake') await page.getByTestId('air-oven-dry').click();
    await page.getByTestId('air-hours').fill(hours);
    await page.getByTestId('air-yes').click();
    await page.getByTestId('air-yes').waitFor({ state: 'detached' });
  };
  await told('floor', '100');
  await told('bake', '1');
  await told('floor', '0');
  await page.getByTestId('life-R-980007').getByText('baked shorter').waitFor();
  yield 'reels, baked too short';
  await steady(page);
  await openReel(here, 'air', 'R-980007');
  await page.getByTestId('let-bake').waitFor();
  yield 'out of the bag, a bake too short';
  await page.getByTestId('let-bake').click();
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('let-bake-reason').waitFor();
  yield 'a bake let count: reason';
  await goThere(here, '#/load');
  await scanAll(page, 'M2-F-023', 'F-0112', label);
  yield 'held, baked too short';
  await page.getByTestId('verdict-clear').click();
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('held-bake').waitFor();
  await page.getByTestId('held-bake-good').click();
  yield 'held, the bake counts from now on';
  await page.locator('dialog[open] .choice button').first().click();
  await page.getByTestId('clear-accept').click();
  await page.getByTestId('clear-accept').waitFor({ state: 'detached' });
  await goThere(here, '#/stock');
  await scan(page, label);
  await page.getByTestId('life-R-980007').getByText('short bake counts').waitFor();
  yield 'reels, a bake let count';
}

/** A wrong reel is found by a sweep: its panels are traced, held and signed. */
async function* held(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/log/shift');
  await page.getByTestId('plot-reasons').waitFor();
  yield 'log, the shift';
  await goThere(here, '#/log/held');
  await page.locator('main .empty').waitFor();
  yield 'held panels, none';
  await goThere(here, '#/load');
  await page.getByTestId('sweep-start').click();
  await page.getByTestId('sweep-progress').waitFor();
  await scanAll(
    page,
    'M2-F-001',
    reelLabel({ P: '10-0603-000', Q: '4000', '1T': 'LOT-ODD', '3S': 'R-980009' }),
  );
  yield 'refused, a wrong reel found by a sweep';
  await page.getByTestId('verdict-panels').click();
  await page.getByTestId('trace-places').waitFor();
  yield 'trace, a reel found where it did not belong';
  await openBy(here, 'trace-hold');
  await page.getByTestId('hold-reason').fill('Wrong value');
  yield 'panels to hold';
  await page.getByTestId('hold-yes').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await goThere(here, '#/log/held');
  await page.getByTestId('held-panels').waitFor();
  yield 'held panels';
  await openBy(here, 'held-sign');
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('sign-reason').fill('Reworked');
  await page.getByTestId('sign-held').locator('button.code').first().click();
  yield 'held panels, to be signed';
  await page.getByTestId('sign-all').click();
  await page.locator('dialog[open]').waitFor({ state: 'detached' });
  await goThere(here, '#/load');
  await page.getByTestId('sweep-end').click();
}

/** A shift hands over with a reel held, the next one takes over, and decides. */
async function* handover(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/load');
  const label = reelLabel({ P: '12-0603-105H', Q: '4000', '1T': 'LOT-H', '3S': 'R-980021' });
  await scanAll(page, 'M2-R-010', label);
  await goThere(here, '#/log/shift');
  await page.locator('.handover [data-what=hold]').first().waitFor();
  const all = page.getByTestId('matters-all').first();
  if (await all.isVisible()) await all.click();
  yield 'handover, what is open';
  await openBy(here, 'hand-over');
  await page.getByTestId('hand-note').fill('Feeder F-0231 goes to repair after this reel');
  yield 'handover, a note';
  await confirm(page, 'BADGE-3301', '3301');
  await page.getByTestId('hand-yes').waitFor();
  yield 'handover, signed';
  await page.getByTestId('hand-yes').click();
  await page.getByTestId('handed-note').waitFor();
  yield 'handover, not taken yet';
  await openBy(here, 'take-over');
  await confirm(page, 'BADGE-3302', '3302');
  await page.getByTestId('take-yes').waitFor();
  yield 'handover, taking over';
  await page.getByTestId('take-yes').click();
  await page.getByTestId('handover-before').click();
  await page.getByTestId('handed-taken').waitFor();
  yield 'handover, both signed';
  await goThere(here, '#/line');
  await page.getByTestId('left-open').waitFor();
  yield 'line, a hold left by the last shift';
  await page.getByTestId('left-open-decide').click();
  await confirm(page, 'BADGE-3302', '3302');
  await page.locator('dialog[open] .choice button').first().click();
  await page.getByTestId('clear-accept').click();
  await page.getByTestId('left-open').waitFor({ state: 'detached' });
}

/** The newest entry of each of these kinds, opened. */
const openedKinds = [
  ['reel.verified', 'entry, a verdict'],
  ['run.stopped', 'entry, a stop'],
  ['hold.cleared', 'entry, a hold decided'],
  ['shift.handed', 'entry, a handover'],
] as const;

/** The log and the trace, asked in each of their ways. */
async function* traces(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/log/trace');
  await page.getByTestId('trace-slot').click();
  await page.getByTestId('trace-text').fill('M1-F-003');
  await page.getByTestId('trace-ask').click();
  await page.getByTestId('trace-places').waitFor();
  yield 'trace, a slot';
  await page.getByTestId('trace-person').click();
  await page.getByTestId('trace-who').selectOption({ index: 1 });
  await page.getByTestId('trace-ask').click();
  await page.locator('[data-testid=trace-places], main .empty').first().waitFor();
  yield 'trace, a person';
  for (const [kind, name] of openedKinds) {
    await goThere(here, '#/log');
    await page.getByTestId('span-all').click();
    const row = page.locator(`[data-testid=entry][data-kind="${kind}"]`).first();
    // However much was written since, and whatever shift it is. Rows come piece by piece, and the button goes with its last press: it is
    // pressed only where it is.
    const older = page.getByTestId('older');
    for (;;) {
      await steady(page);
      await row.or(older).first().waitFor();
      if (await row.isVisible()) break;
      await older.evaluateAll(([button]) => (button as HTMLElement | undefined)?.click());
    }
    await row.click();
    await page.locator('dialog[open]').waitFor();
    yield name;
  }
  await closeDialogs(page);
  yield* held(here);
}

/** What practice adds to every screen. */
async function* practising(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await goThere(here, '#/plant/practice');
  await page.getByTestId('practice-start').click();
  await page.getByTestId('practice-band').waitFor();
  await page.getByTestId('practice-print').waitFor();
  await goThere(here, '#/line');
  yield 'line, practice';
  await goThere(here, '#/load');
  yield 'load, practice';
  await scanAll(page, 'M2-F-022', reelLabel({ P: '10-0603-101', Q: '4000', '3S': 'R-970002' }));
  yield 'refused, practice';
  await goThere(here, '#/change');
  await openBy(here, 'sign-in');
  yield 'sign in, practice';
  await closeDialogs(page);
  await goThere(here, '#/log');
  yield 'log, practice';
  await steady(page);
  await page.getByTestId('practice-end').click();
  await page.getByTestId('practice-band').waitFor({ state: 'detached' });
  await waitReady(page);
}

/** Parts that a line wants measured before they feed: its rule, the question at the slot, and what is said where it is not right. */
async function* values(here: Here): AsyncGenerator<string> {
  const { page } = here;
  await scan(page, 'BADGE-4401');
  await goThere(here, '#/plant/parts/list');
  await page.getByTestId('listed-add').click();
  await page.getByTestId('part-part').fill('10-0603-3R3');
  // By its code 3.3 Ω or 3.3 pF: a person says which.
  await page.getByTestId('part-value').fill('3R3');
  await page.getByTestId('part-tolerance').fill('1 %');
  await page.getByTestId('part-save').click();
  await page.getByTestId('part-form').waitFor({ state: 'detached' });
  await goThere(here, '#/plant/rules');
  await page.getByTestId('value-add').click();
  await page.getByTestId('value-0-begins').fill('10-0603-3R3');
  await page.getByTestId('value-percent').fill('much');
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor();
  yield 'rules, a meter without figures';
  await page.getByTestId('value-percent').fill('0.5');
  await page.getByTestId('value-rules').evaluate((field) => field.scrollIntoView());
  yield 'rules, parts to be measured';
  await page.getByTestId('rules-save').click();
  await page.getByTestId('rules-wrong').waitFor({ state: 'detached' });
  await goThere(here, '#/load');
  const label = reelLabel({ P: '10-0603-3R3', Q: '4000', '1T': 'LT-9700', '3S': 'R-980011' });
  await scan(page, 'M2-R-005');
  await scan(page, 'F-0114');
  await scan(page, label);
  await page.getByTestId('value-dialog').waitFor();
  yield 'question: a part to be measured, its code read in two ways';
  await page.getByTestId('value-is-0').click();
  await page.getByTestId('value-typed').fill('OL');
  await page.getByTestId('value-check').click();
  yield 'question: a part to be measured, no reading';
  await page.getByTestId('value-typed').fill('3.50');
  await page.getByTestId('value-check').click();
  await page.getByTestId('verdict').waitFor();
  yield 'refused, it measures wrong';
  await page.getByTestId('verdict-go-on').click();
  await scan(page, label);
  await page.getByTestId('value-cannot').click();
  await page.getByTestId('verdict').waitFor();
  yield 'held, it cannot be measured';
  await goThere(here, '#/log');
  await scan(page, 'BADGE-3301');
}

export const deskLegs: readonly Leg[] = [
  { name: 'asks', stops: asks },
  { name: 'refusals', stops: refusals },
  { name: 'blocked', stops: blocked },
  { name: 'bakes', stops: bakes },
  { name: 'handover', stops: handover },
  { name: 'values', stops: values },
  { name: 'traces', stops: traces },
  { name: 'practising', stops: practising },
];
