// Of several processes that keep the trace on one database one writes; the others answer the same without reading all that it wrote, and the next
// takes over where it ends.

import { afterAll, beforeAll, expect, it } from 'vitest';
import { simulateShift } from '../../demo/simulate.ts';
import type { Entry } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { tracePlaces } from '../../shared/trace/ask.ts';
import { traceLog } from '../../shared/trace/stretches.ts';
import { openStore } from '../../src/server/stores/open.ts';
import { answerPlaces } from '../../src/server/trace/answer.ts';
import { createTraceKeeper } from '../../src/server/trace/keeper.ts';
import { until } from '../src/server/tablets.ts';
import { newFolder, startPostgres, type TestPostgres } from './databases.ts';
import { toChecked } from './entries.ts';

const startMs = Date.UTC(2026, 2, 2, 6);
const shift = [...simulateShift({ seed: 3, hours: 14, startMs }).entries].sort(compareEntries);
const nowMs = (shift.at(-1)?.hlc.ms ?? 0) + 3 * 3_600_000;
const lots = [...new Set(traceLog(shift).stretches.map(({ lot }) => lot ?? ''))].filter((lot) => lot !== '');

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

it('one leads, the others follow it, and one of them takes over', { timeout: 240_000 }, async () => {
  const database = (await postgres?.newDatabase()) ?? '';
  const folder = newFolder();
  const faults: Error[] = [];
  const begin = async () => {
    const store = await openStore({ folder: folder.path, database, nowMs: () => nowMs, role: 'trace' });
    const did = { read: 0, moved: 0 };
    const counted: typeof store = {
      ...store,
      traceState: (...asked) => {
        did.read += 1;
        return store.traceState(...asked);
      },
      moveTrace: (...asked) => {
        did.moved += 1;
        return store.moveTrace(...asked);
      },
    };
    const keeper = createTraceKeeper({
      store: counted,
      nowMs: () => nowMs,
      onFault: (error) => faults.push(error),
    });
    await keeper.caughtUp();
    return { store, keeper, did };
  };
  const [leader, follower] = [await begin(), await begin()];
  expect([leader.store.leads(), follower.store.leads()]).toEqual([true, false]);
  const push = async (entries: readonly Entry[]) => {
    const tablets = [...new Set(entries.map(({ tablet }) => tablet))];
    const batches = tablets.map((sender) => ({
      sender,
      entries: entries.filter(({ tablet }) => tablet === sender).map((entry) => toChecked(entry)),
    }));
    await follower.store.append(batches, nowMs);
  };
  // Each part is more than what is settled at once.
  const third = Math.floor(shift.length / 3);
  expect(third).toBeGreaterThan(500);
  for (const [from, to] of [
    [0, third],
    [third, 2 * third],
  ] as const) {
    await push(shift.slice(from, to));
    await leader.keeper.caughtUp();
    await follower.keeper.caughtUp();
    const index = traceLog(shift.slice(0, to));
    for (const { store, keeper } of [leader, follower])
      for (const lot of lots)
        expect(await answerPlaces({ store, keeper }, { lot })).toEqual({
          places: tracePlaces(index, { lot }),
          more: false,
          behind: 0,
        });
  }
  expect([leader.did.moved > 0, follower.did]).toEqual([true, { read: 0, moved: 0 }]);
  const place = await follower.store.tracePlace();
  await leader.keeper.stop();
  await leader.store.close();
  await until('the lead', () => follower.store.leads());
  await push(shift.slice(2 * third));
  await follower.keeper.caughtUp();
  expect(follower.did.moved).toBeGreaterThan(0);
  expect(await follower.store.tracePlace()).not.toBe(place);
  const whole = traceLog(shift);
  for (const lot of lots)
    expect((await answerPlaces(follower, { lot })).places).toEqual(tracePlaces(whole, { lot }));
  await follower.keeper.stop();
  await follower.store.close();
  folder.remove();
  expect(faults).toEqual([]);
});
