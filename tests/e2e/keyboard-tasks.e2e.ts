// The five main tasks without a pointer: everything that a task needs is come to by Tab, pressed by Enter or Space, and the place is never lost.
// WCAG 2.2: 2.1.1 keyboard, 2.1.2 no trap, 2.4.3 order, 2.4.7 focus visible, 2.4.11 focus not obscured.

import { expect, it } from 'vitest';
import { ownEntries } from './support/floor.ts';
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

/** Does a task on a tablet of its own; the kinds of entries that it left. */
async function done(task: Task, badge = 'BADGE-2201'): Promise<readonly string[]> {
  let kinds: readonly string[] = [];
  await demo.onTablet(
    async ({ page }) => {
      for await (const _ of task(page));
      kinds = (await ownEntries(page)).map(({ kind }) => kind);
    },
    { badge },
  );
  return kinds;
}

it('loads a reel after a wrong one was refused', async () => {
  expect((await done(loadReel)).filter((kind) => kind === 'reel.verified')).toHaveLength(2);
});

it('answers a warning and splices', async () => {
  const kinds = await done(answerAndSplice);
  expect(kinds).toContain('warning.acknowledged');
  expect(kinds).toContain('reel.verified');
});

it('changes over to the next product', async () => {
  expect(await done(changeOver, 'BADGE-3301')).toContain('changeover.began');
});

it('traces a lot and exports the log', async () => {
  expect(await done(traceAndExport, 'BADGE-4401')).toContain('log.exported');
});

it('clears a hold as a lead', async () => {
  expect(await done(clearHold)).toContain('hold.cleared');
});
