// The trace that the server keeps says what a fold of the whole log says: on both stores, whatever the order in which entries
// come in, over restarts, and while more are written.

import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { simulateShift } from '../../demo/simulate.ts';
import { type Entry, firstPrev } from '../../shared/log/entry.ts';
import { compareEntries } from '../../shared/log/order.ts';
import { sealEntry } from '../../shared/log/seal.ts';
import { tracePanel, tracePlaces } from '../../shared/trace/ask.ts';
import { partsAsked } from '../../shared/trace/material.ts';
import { type TraceIndex, traceLog } from '../../shared/trace/stretches.ts';
import { openStore } from '../../src/server/stores/open.ts';
import type { Store } from '../../src/server/stores/store.ts';
import { answerPanel, answerPlaces } from '../../src/server/trace/answer.ts';
import { createTraceKeeper, type TraceKeeper } from '../../src/server/trace/keeper.ts';
import { play } from '../shared/trace/cut-and-joined.ts';
import { newFolder, startPostgres, type TestPostgres } from './databases.ts';
import { toChecked } from './entries.ts';

const startMs = Date.UTC(2026, 2, 2, 6);
const shift = [...simulateShift({ seed: 3, hours: 6, startMs }).entries].sort(compareEntries);
const endMs = shift.at(-1)?.hlc.ms ?? 0;
const whole = traceLog(shift);
const lots = [...new Set(whole.stretches.map((stretch) => stretch.lot ?? ''))].filter((lot) => lot !== '');

/** The same log as if other tablets had written it. */
function writtenOn(entries: readonly Entry[], tabletOf: (entry: Entry) => string): readonly Entry[] {
  const ends = new Map<string, Entry>();
  return entries.map((entry) => {
    const tablet = tabletOf(entry);
    const end = ends.get(tablet);
    const { hash: _, sig: __, ...draft } = entry;
    const sealed = sealEntry({ ...draft, tablet, seq: (end?.seq ?? 0) + 1, prev: end?.hash ?? firstPrev });
    ends.set(tablet, sealed);
    return sealed;
  });
}

let postgres: TestPostgres | undefined;
beforeAll(async () => {
  postgres = await startPostgres();
}, 120_000);
afterAll(() => postgres?.stop());

describe.each(['sqlite', 'postgres'] as const)('the kept trace on %s', (dialect) => {
  let folder: ReturnType<typeof newFolder>;
  let store: Store;
  let keeper: TraceKeeper;
  /** Far enough after the shift that all of it is settled, or at its end. */
  let nowMs = 0;
  const faults: Error[] = [];

  const open = async (database: string | null) => {
    store = await openStore({ folder: folder.path, database, nowMs: () => nowMs });
  };
  const keep = () => {
    keeper = createTraceKeeper({ store, nowMs: () => nowMs, onFault: (error) => faults.push(error) });
  };
  let database: string | null;
  beforeEach(async () => {
    nowMs = endMs + 3 * 3_600_000;
    faults.length = 0;
    folder = newFolder();
    database = dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? null) : null;
    await open(database);
    keep();
  });
  afterEach(async () => {
    await keeper.stop();
    await store.close();
    folder.remove();
    expect(faults).toEqual([]);
  });

  const push = async (entries: readonly Entry[]) => {
    const chains = new Map<string, Entry[]>();
    for (const entry of entries) {
      const id = `${entry.tablet}/${entry.epoch}`;
      chains.set(id, [...(chains.get(id) ?? []), entry]);
    }
    const batches = [...chains.values()].map((chain) => ({
      sender: chain[0]?.tablet ?? '',
      entries: chain.map((entry) => toChecked(entry)),
    }));
    await store.append(batches, nowMs);
  };

  /** Every lot, and some panels, answered as by a fold of everything. */
  const expectSame = async (index: TraceIndex) => {
    await keeper.caughtUp();
    for (const lot of lots) {
      const answer = await answerPlaces({ store, keeper }, { lot });
      expect(answer).toEqual({ places: tracePlaces(index, { lot }), more: false, behind: 0 });
    }
    for (const serial of [...index.serials.keys()].filter((_, at) => at % 40 === 0)) {
      const answer = await answerPanel({ store, keeper }, serial, undefined);
      expect(answer).toEqual({ panel: tracePanel(index, serial), behind: 0 });
    }
  };

  it('answers for every lot and panel as a fold of the whole log, also after a restart, and goes on from there', async () => {
    const half = Math.floor(shift.length / 2);
    await push(shift.slice(0, half));
    await expectSame(traceLog(shift.slice(0, half)));
    expect(await store.tracePlace()).not.toBeNull();
    await keeper.stop();
    await store.close();
    await open(database);
    keep();
    await expectSame(traceLog(shift.slice(0, half)));
    await push(shift.slice(half));
    await expectSame(whole);
    expect((await store.traceStretches({}, 100_000)).length).toBeGreaterThan(5);
  });

  it('holds the newest hour in memory, so that entries may come late', async () => {
    nowMs = endMs;
    // What was done at the slots in the last half hour was written on a tablet that was out of reach.
    const log = writtenOn(shift, (entry) =>
      entry.kind.startsWith('reel.') && entry.hlc.ms > endMs - 1_800_000 ? 'late' : entry.tablet,
    );
    const late = log.filter((entry) => entry.tablet === 'late');
    expect(late.length).toBeGreaterThan(2);
    await push(log.filter((entry) => !late.includes(entry)));
    await keeper.caughtUp();
    const place = await store.tracePlace();
    await push(late);
    await expectSame(traceLog(log));
    expect(await store.tracePlace()).toBe(place);
  });

  it('begins anew where an entry comes later than that', async () => {
    const tablets = [...new Set(shift.map((entry) => entry.tablet))];
    expect(tablets.length).toBeGreaterThan(1);
    for (const tablet of tablets) {
      await push(shift.filter((entry) => entry.tablet === tablet));
      await keeper.caughtUp();
    }
    await expectSame(whole);
  });

  it('asks by reel, part, feeder, person, run and time as an index does', async () => {
    await push(shift);
    await keeper.caughtUp();
    const one = whole.stretches.find(
      (stretch) => stretch.reel !== null && stretch.feeder !== null && stretch.who !== null,
    );
    if (!one) throw new Error('no stretch with all of it');
    const from = shift[Math.floor(shift.length / 3)]?.at ?? '';
    const to = shift[Math.floor(shift.length / 2)]?.at ?? '';
    const questions = [
      { reel: one.reel ?? '' },
      { part: one.part },
      { feeder: one.feeder ?? '' },
      { who: one.who ?? '' },
      { run: one.run },
      { slot: one.slot, run: one.run },
      { part: one.part, from, to },
      { lot: 'nobody knows this' },
    ];
    for (const question of questions) {
      const { places } = await answerPlaces({ store, keeper }, question);
      expect(places, JSON.stringify(question)).toEqual(tracePlaces(whole, question));
    }
  });

  it('follows cuts and joins as an index does, in whatever order the tablets come and over a restart', async () => {
    const deed = fc.tuple(
      fc.constantFrom(
        'put',
        'load',
        'load',
        'splice',
        'cut',
        'cut',
        'join',
        'build',
        'build',
        'run' as const,
      ),
      fc.nat(40),
      fc.nat(40),
    );
    const history = fc.array(deed, { minLength: 600, maxLength: 700, size: 'max' });
    let followed = 0;
    for (const deeds of fc.sample(history, { numRuns: 1, seed: 5 })) {
      const { entries, packages, lots: told } = play(deeds);
      const index = traceLog(entries);
      await keeper.stop();
      await store.close();
      folder.remove();
      folder = newFolder();
      database = dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? null) : null;
      await open(database);
      keep();
      for (const tablet of ['T3', 'T1', 'T2']) {
        await push(entries.filter((entry) => entry.tablet === tablet));
        await keeper.caughtUp();
      }
      await keeper.stop();
      keep();
      await keeper.caughtUp();
      expect(await store.tracePlace()).not.toBeNull();
      const questions = [
        ...packages.map((reel) => ({ reel })),
        ...told.map((lot) => ({ lot })),
        ...packages.map((reel) => ({ reel, part: 'R-100', run: 'r1' })),
      ];
      for (const question of questions) {
        const { parts = null, more, ...answer } = await answerPlaces({ store, keeper }, question);
        const places = tracePlaces(index, question);
        expect(more).toBe(false);
        // Of the same first panel, in whatever order.
        const sorted = (all: readonly object[]) => all.map((each) => JSON.stringify(each)).sort();
        expect(sorted(answer.places), JSON.stringify(question)).toEqual(sorted(places));
        expect(parts).toEqual(partsAsked(index.state, question));
        if ('reel' in question) followed += places.filter(({ reel }) => reel !== question.reel).length;
      }
    }
    expect(followed).toBeGreaterThan(10);
  });

  it('is the same whatever the order in which the tablets come', async () => {
    const chains = [...new Set(shift.map((entry) => entry.tablet))].map((tablet) =>
      shift.filter((entry) => entry.tablet === tablet),
    );
    const cuts = fc.array(fc.tuple(fc.nat(chains.length - 1), fc.integer({ min: 1, max: 300 })), {
      maxLength: 8,
    });
    await fc.assert(
      fc.asyncProperty(cuts, async (turns) => {
        await keeper.stop();
        await store.close();
        folder.remove();
        folder = newFolder();
        await open(dialect === 'postgres' ? ((await postgres?.newDatabase()) ?? null) : null);
        keep();
        const at = chains.map(() => 0);
        for (const [chain, count] of turns) {
          const from = at[chain] ?? 0;
          const some = (chains[chain] ?? []).slice(from, from + count);
          at[chain] = from + some.length;
          if (some.length === 0) continue;
          await push(some);
          await keeper.caughtUp();
        }
        for (const [chain, from] of at.entries()) {
          const rest = (chains[chain] ?? []).slice(from);
          if (rest.length > 0) await push(rest);
        }
        await expectSame(whole);
      }),
      { numRuns: 4, seed: 11 },
    );
  });
});
