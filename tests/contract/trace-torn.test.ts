// A process that follows begins to read the trace's index while the one that leads writes it on: it takes the rows of one place only.

import { isDeepStrictEqual } from 'node:util';
import { expect, it } from 'vitest';
import { simulateShift } from '../../demo/simulate.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { tracePlaces } from '../../shared/trace/ask.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { answerPlaces } from '../../src/server/trace/answer.ts';
import { createTraceKeeper } from '../../src/server/trace/keeper.ts';
import { newFolder } from './databases.ts';
import { toChecked } from './entries.ts';

it('an index that moves while it is read is read again', async () => {
  const startMs = Date.UTC(2026, 2, 2, 6);
  const shift = [...simulateShift({ seed: 3, hours: 8, startMs }).entries].sort(compareEntries);
  const nowMs = (shift.at(-1)?.hlc.ms ?? 0) + 3 * 3_600_000;
  const half = Math.floor(shift.length / 2);
  // Each half is more than what is settled at once.
  expect(half).toBeGreaterThan(500);
  const folder = newFolder();
  const faults: Error[] = [];
  const store = await openStore({ folder: folder.path, database: null, nowMs: () => nowMs });
  const keep = (of: Store) =>
    createTraceKeeper({ store: of, nowMs: () => nowMs, onFault: (error) => faults.push(error) });
  const leader = keep(store);
  const push = async (entries: readonly Entry[]) => {
    const tablets = [...new Set(entries.map(({ tablet }) => tablet))];
    const batches = tablets.map((sender) => ({
      sender,
      entries: entries.filter(({ tablet }) => tablet === sender).map((entry) => toChecked(entry)),
    }));
    await store.append(batches, nowMs);
    await leader.caughtUp();
  };
  await push(shift.slice(0, half));
  const place = await store.tracePlace();
  expect(place).not.toBeNull();
  let pages = 0;
  const follower = keep({
    ...store,
    leads: () => false,
    traceState: async (...asked) => {
      pages += 1;
      // The place was read, no row yet.
      if (pages === 1) await push(shift.slice(half));
      return store.traceState(...asked);
    },
  });
  await follower.caughtUp();
  expect(pages).toBeGreaterThan(0);
  expect(await store.tracePlace()).not.toBe(place);
  // What it would write if it led is what the one that leads has.
  const [{ index }, { index: led }] = [await follower.tip(), await leader.tip()];
  expect(isDeepStrictEqual([index.open, index.state], [led.open, led.state])).toBe(true);
  const whole = traceLog(shift);
  const lots = [...new Set(whole.stretches.map(({ lot }) => lot ?? ''))].filter((lot) => lot !== '');
  const differing: string[] = [];
  for (const lot of lots) {
    const { places } = await answerPlaces({ store, keeper: follower }, { lot });
    if (!isDeepStrictEqual(places, tracePlaces(whole, { lot }))) differing.push(lot);
  }
  expect(differing).toEqual([]);
  for (const keeper of [follower, leader]) await keeper.stop();
  await store.close();
  folder.remove();
  expect(faults).toEqual([]);
});
