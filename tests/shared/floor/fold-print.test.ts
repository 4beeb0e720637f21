// A package that came without an id and gets a printed one keeps its count and its time out of the bag, whatever happened to it before and after, and
// whichever of three tablets that were apart told it. Held against the same story of a package that had its id from the start.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { emptyDesk } from '../../../shared/desk/model.ts';
import { takeScan } from '../../../shared/desk/take-scan.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { timesPrinted } from '../../../shared/floor/fold-print.ts';
import { packageIdOf } from '../../../shared/floor/package-name.ts';
import { createReplica, foldIn } from '../../../shared/floor/replica.ts';
import { emptyState, type FloorState, slotKey } from '../../../shared/floor/state.ts';
import { packageMessage } from '../../../shared/labels/package-label.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { moistureOfParts, reelLife } from '../../../shared/moisture/reel-life.ts';
import { earlierUnnamed } from '../../../shared/verdict/verify.ts';
import {
  beginStory,
  brookSetup,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from './story.ts';

const slot = 'M1-F-010';
const moist = {
  ...brookSetup,
  setup: 'moist',
  slots: [wantedSlot(slot, 'U-300', { msl: '3', perPanel: 2 })],
};
const label = { part: 'U-300', supplierPart: 'SUP-300', lot: 'L-1', dateCode: '2618' };
const iso = (second: number) => new Date(startMs + second * 1000).toISOString();

const actArb = fc.record({
  is: fc.constantFrom('count', 'unload', 'dry', 'air', 'panels', 'name', 'reload', 'undo', 'date'),
  tablet: fc.constantFrom('T1', 'T2', 'T3'),
  /** Seconds since the start: tablets tell things late and out of turn. */
  at: fc.integer({ min: 20, max: 40_000 }),
  parts: fc.integer({ min: 1, max: 900 }),
  /** Whether whoever tells it has heard of the printed id. */
  knows: fc.boolean(),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

/** Tells the acts of a package; `hadId`: it had its id from the start, and is never named. */
function tell(
  acts: readonly Act[],
  hadId: boolean,
): { readonly entries: readonly Entry[]; readonly id: string } {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', moist);
  story.tell('setup.chosen', { line: 'L1', setup: 'moist' });
  const start = story.tell('run.started', started('r1', { setup: 'moist' }));
  // The id is that of the entry which comes next, whatever that says.
  const id = packageIdOf(`T1/T1-life-1/${story.entries.length + 1}`);
  const first = verified(slot, 'U-300', { ...label, setup: 'moist', run: 'r1', reel: hadId ? id : null });
  const loaded = story.tell('reel.verified', first, { seen: start });
  expect(packageIdOf(idOf(loaded))).toBe(id);
  let named: Entry | null = null;
  for (const act of acts) named = tellOne(story, act, { hadId, id, loaded, named }) ?? named;
  return { entries: story.entries, id };
}

interface Told {
  readonly hadId: boolean;
  readonly id: string;
  readonly loaded: Entry;
  readonly named: Entry | null;
}

/** Tells one act; the entry that named the package, where it did. */
function tellOne(story: Story, { is, tablet, at, parts, knows }: Act, told: Told): Entry | null {
  const { hadId, id, loaded, named } = told;
  const heard = knows && named !== null;
  const telling = { tablet, at, seen: heard ? named : loaded };
  const reel = hadId || heard ? id : `~${idOf(loaded)}`;
  const known = { reel, ...label, quantity: parts };
  switch (is) {
    case 'count':
      story.tell(
        'reel.counted',
        {
          line: null,
          slot: null,
          reel,
          part: 'U-300',
          lot: 'L-1',
          quantity: parts,
          sd: 3,
          basis: 'weighed',
          panels: 0,
        },
        telling,
      );
      return null;
    case 'unload': {
      const facts = {
        run: 'r1',
        part: 'U-300',
        lot: 'L-1',
        quantity: parts % 2 === 0 ? null : parts,
        basis: 'typed' as const,
      };
      story.tell('reel.unloaded', unloaded(slot, { ...facts, reel: hadId || heard ? id : null }), telling);
      return null;
    }
    case 'dry':
    case 'air': {
      const air = is === 'dry' ? ('dry' as const) : ('floor' as const);
      story.tell(
        'reel.aired',
        { ...known, air, from: iso(at), celsius: null, humidity: null, via: 'typed' },
        telling,
      );
      return null;
    }
    case 'panels':
      story.tell('panels.counted', counted('r1', parts % 9), telling);
      return null;
    case 'date':
      story.tell('reel.dated', { reel, expires: '2027-05-31' }, telling);
      return null;
    case 'undo': {
      const of = story.entries.filter(({ kind }) => kind === 'reel.unloaded' || kind === 'reel.aired').at(-1);
      if (of) story.tell('entry.corrected', { of: idOf(of), line: 'L1', slot, reason: 'slip' }, telling);
      return null;
    }
    case 'reload':
      // Only by its label: it cannot be loaded by an id that nobody has heard of.
      if (heard || (hadId && knows && named !== null))
        story.tell(
          'reel.verified',
          verified(slot, 'U-300', { ...label, setup: 'moist', reel: id, quantity: parts, basis: 'weighed' }),
          telling,
        );
      return null;
    case 'name':
      // In the other story something that changes nothing is told in its place, so that both have the same numbers.
      return hadId
        ? story.tell('log.exported', { format: 'csv', filter: '{}', rows: 1 }, telling)
        : story.tell(
            'reel.named',
            { reel: id, was: `~${idOf(loaded)}`, ...label, quantity: 1, sd: 0, basis: 'label', via: 'typed' },
            telling,
          );
  }
}

/** What matters of the package: count, where it is, where it was, what hangs on it. */
function known(floor: FloorState, id: string) {
  const atMs = startMs + 50_000_000;
  const part = moistureOfParts(floor).get('U-300') ?? null;
  return {
    reel: floor.reels.get(id),
    exposure: floor.exposures.get(id),
    expires: floor.expiries.get(id),
    slot: floor.slots.get(slotKey('L1', slot)),
    off: floor.takenOff.get(slotKey('L1', slot)),
    conflicts: [...floor.conflicts.values()],
    life: reelLife(floor, id, { line: 'L1', part, nowMs: atMs }),
  };
}

describe('a package that is given an id', () => {
  test('keeps count, place and floor life in every history of three tablets', () => {
    const acts = fc.array(actArb, { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(acts, (told) => {
        const all = [...told, { is: 'name', tablet: 'T2', at: 40_001, parts: 1, knows: false } as const];
        const real = tell(all, false);
        const oracle = tell(all, true);
        const floor = applyAll(emptyState(), [...real.entries].sort(compareEntries));
        const wanted = applyAll(emptyState(), [...oracle.entries].sort(compareEntries));
        expect(known(floor, real.id)).toEqual(known(wanted, oracle.id));
        expect([...floor.reels.keys()].filter((reel) => reel.startsWith('~'))).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test('is the same package on every tablet, in whatever order the entries come', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 10 }), fc.infiniteStream(fc.nat()), (told, chance) => {
        const { entries } = tell(
          [...told, { is: 'name', tablet: 'T3', at: 100, parts: 1, knows: false }],
          false,
        );
        const straight = applyAll(emptyState(), [...entries].sort(compareEntries));
        const shuffled = entries
          .map((entry) => ({ entry, by: chance.next().value }))
          .sort((a, b) => a.by - b.by);
        const replica = createReplica();
        for (const { entry } of shuffled) foldIn(replica, [entry]);
        expect(replica.state).toEqual(straight);
      }),
      { numRuns: 100 },
    );
  });

  test('is read from its own printed label with the count that the log has by now', () => {
    fc.assert(
      fc.property(fc.array(actArb, { maxLength: 8 }), (told) => {
        const off = { is: 'unload', tablet: 'T1', at: 40_001, parts: 321, knows: false } as const;
        const { entries, id } = tell(
          [{ is: 'name', tablet: 'T1', at: 30, parts: 1, knows: false }, ...told, off],
          false,
        );
        const floor = applyAll(emptyState(), [...entries].sort(compareEntries));
        // The label was printed long ago: what it says of the count is not what counts.
        const message = packageMessage({ reel: id, ...label, quantity: 77, msl: '3', expires: null });
        const scan = {
          atMs: startMs,
          via: 'camera' as const,
          codes: [{ text: message, format: null, symbologyId: null }],
        };
        const { reel } = takeScan({ ...emptyDesk, slot: null }, scan, {
          floor,
          line: 'L1',
        });
        expect(reel?.reel).toBe(id);
        expect(reel?.quantity).toBe(floor.reels.get(id)?.count);
      }),
      { numRuns: 100 },
    );
  });

  test('is known by its id as somebody types it', () => {
    const { entries, id } = tell(
      [
        { is: 'name', tablet: 'T1', at: 30, parts: 1, knows: false },
        { is: 'unload', tablet: 'T1', at: 60, parts: 321, knows: true },
      ],
      false,
    );
    const floor = applyAll(emptyState(), [...entries].sort(compareEntries));
    for (const text of [id, id.toLowerCase(), id.replace('-', '')]) {
      const scan = {
        atMs: startMs,
        via: 'typed' as const,
        codes: [{ text, format: null, symbologyId: null }],
      };
      const { reel } = takeScan(emptyDesk, scan, { floor, line: 'L1' });
      expect([reel?.reel, reel?.quantity]).toEqual([id, 321]);
    }
  });

  test('may still be found by its maker’s label, which names it by no id', () => {
    const used = tell(
      [
        { is: 'name', tablet: 'T1', at: 30, parts: 1, knows: false },
        { is: 'unload', tablet: 'T1', at: 60, parts: 321, knows: true },
      ],
      false,
    );
    const floor = applyAll(emptyState(), [...used.entries].sort(compareEntries));
    expect(earlierUnnamed(floor, { part: 'U-300', supplierPart: null, lot: 'L-1' })?.reel).toBe(used.id);
  });
});

describe('a package that is new to the log', () => {
  const fresh = {
    part: 'R-100',
    supplierPart: null,
    lot: 'L-9',
    dateCode: null,
    quantity: 5000,
    sd: 0,
    basis: 'label',
    via: 'camera',
  } as const;

  test('is known by the id of the entry that named it', () => {
    const story = beginStory();
    const id = packageIdOf('T1/T1-life-1/1');
    story.tell('reel.named', { reel: id, was: null, ...fresh });
    expect(story.floor().reels.get(id)).toMatchObject({ reel: id, part: 'R-100', count: 5000, at: null });
    // Nothing was taken from it: another one with the same label is no earlier word of it.
    expect(earlierUnnamed(story.floor(), { part: 'R-100', supplierPart: null, lot: 'L-9' })).toBeNull();
  });

  test('gets no id that is not its own', () => {
    const story = beginStory();
    story.tell('reel.named', { reel: 'K7PM2Q3-4F9C', was: null, ...fresh });
    expect(story.floor().reels.size).toBe(0);
  });
});

test('prints are counted by what they name', () => {
  const story = beginStory();
  const facts = { line: 'L1', reel: null, again: [], size: 'Shelf' };
  story.tell('labels.printed', { what: 'slot', names: ['M1-F-001', 'M1-F-002'], ...facts });
  story.tell(
    'labels.printed',
    { what: 'slot', names: ['M1-F-001'], ...facts, again: ['M1-F-001'] },
    { tablet: 'T2' },
  );
  const floor = story.floor();
  expect(['M1-F-001', 'M1-F-002', 'M1-F-003'].map((name) => timesPrinted(floor, 'slot', name))).toEqual([
    2, 1, 0,
  ]);
  expect(timesPrinted(floor, 'feeder', 'M1-F-001')).toBe(0);
});
