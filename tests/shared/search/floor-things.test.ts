// Whatever is on the floor of a played shift is found by its exact code, and entries by what people read in them.

import { describe, expect, it } from 'vitest';
import { simulateShift } from '../../../demo/simulate.ts';
import { applyEntry } from '../../../shared/floor/fold.ts';
import { laneLine } from '../../../shared/floor/lanes.ts';
import { hasOwnId } from '../../../shared/floor/reel-id.ts';
import { emptyState, type Reel } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { entryThings, textsOfEntry } from '../../../shared/search/entry-things.ts';
import { floorThings, type Thing, type ThingKind, thingKinds } from '../../../shared/search/floor-things.ts';
import { findTexts, indexTexts } from '../../../shared/search/index-of-texts.ts';
import { beginStory, brookSetup, tellPlant, verified, wantedSlot } from '../floor/story.ts';

const { entries } = simulateShift({ seed: 5, hours: 2, startMs: Date.UTC(2026, 2, 2, 6) });
const floor = emptyState();
for (const entry of entries) applyEntry(floor, entry);
const index = indexTexts(floorThings(floor));
const find = (text: string, kind: ThingKind) =>
  findTexts([index], text, { most: 100_000, order: thingKinds }).find((group) => group.kind === kind)
    ?.first ?? [];

/** Fails with every code that does not lead to its thing first. */
function expectFirst<T>(all: Iterable<T>, textOf: (each: T) => string, thingOf: (each: T) => Thing): void {
  const lost: string[] = [];
  let count = 0;
  for (const each of all) {
    count += 1;
    const [best] = find(textOf(each), thingOf(each).kind);
    if (JSON.stringify(best?.thing) !== JSON.stringify(thingOf(each))) lost.push(textOf(each));
  }
  expect(lost).toEqual([]);
  expect(count).toBeGreaterThan(0);
}

describe('by its exact code is found', () => {
  it('every reel with an id', () => {
    const named = [...floor.reels.keys()].filter(hasOwnId);
    expect(named.length).toBeGreaterThan(100);
    expectFirst(named, String, (reel) => ({ kind: 'reel', reel }));
  });

  it('every slot of the chosen setup, and every loaded one', () => {
    const setup = floor.setups.get(floor.chosen.get('L2') ?? '');
    expectFirst(
      setup?.slots ?? [],
      ({ slot }) => slot,
      ({ slot }) => ({ kind: 'slot', line: 'L2', slot }),
    );
    expectFirst(
      floor.slots.values(),
      ({ slot }) => slot,
      ({ line, slot }) => ({ kind: 'slot', line, slot }),
    );
  });

  it('every part and supplier part of setups and reels', () => {
    const wanted = [...floor.setups.values()].flatMap(({ slots }) => slots);
    expectFirst(
      wanted,
      ({ part }) => part,
      ({ part }) => ({ kind: 'part', part }),
    );
    const makers = wanted.flatMap(({ supplierParts }) => supplierParts);
    expectFirst(makers, String, (supplierPart) => ({ kind: 'supplier-part', supplierPart }));
  });

  it('every lot, panel, feeder, person and setup', () => {
    const lots = new Set([...floor.reels.values()].flatMap(({ lot }) => lot ?? []));
    expectFirst(lots, String, (lot) => ({ kind: 'lot', lot }));
    expectFirst(floor.feeders.keys(), String, (feeder) => ({ kind: 'feeder', feeder }));
    expectFirst(
      floor.people.values(),
      ({ name }) => name,
      ({ person }) => ({ kind: 'person', person }),
    );
    expectFirst(
      floor.people.values(),
      ({ badge }) => badge,
      ({ person }) => ({ kind: 'person', person }),
    );
    expectFirst(
      floor.setups.values(),
      ({ product }) => product,
      ({ setup }) => ({ kind: 'setup', setup }),
    );
    const serials = [...floor.codes].map(([key, { run }]) => key.slice(run.length + 1));
    if (serials.length > 0) expectFirst(serials, String, (serial) => ({ kind: 'panel', serial }));
  });

  it('a slot by the reel’s part on it, and a reel by its lot', () => {
    const [loaded] = floor.slots.values();
    const part = loaded?.tapes[0]?.part ?? '';
    expect(find(part, 'slot').map(({ thing }) => thing)).toContainEqual({
      kind: 'slot',
      line: 'L2',
      slot: loaded?.slot,
    });
    const reel = [...floor.reels.values()].find(({ lot }) => lot !== null);
    expect(find(reel?.lot ?? '', 'reel').map(({ thing }) => thing)).toContainEqual({
      kind: 'reel',
      reel: reel?.reel,
    });
  });
});

describe('the floor', () => {
  it('tells reels on slots before those in the store, and used ones last', () => {
    const [used, stored, loaded] = [...floor.reels.values()];
    const reels = [
      { ...used, reel: 'A', at: null, count: 0 },
      { ...stored, reel: 'B', at: null, count: 5 },
      { ...loaded, reel: 'C', at: { line: 'L2', slot: 'M1-F-001' } },
    ] as const;
    const few = { ...emptyState(), reels: new Map(reels.map((reel) => [reel.reel, reel as Reel])) };
    const told = floorThings(few).flatMap(({ thing }) => (thing.kind === 'reel' ? thing.reel : []));
    expect(told).toEqual(['C', 'B', 'A']);
  });

  it('tells a slot that two lanes feed from once, with what each wants there and what stands there', () => {
    const story = beginStory();
    tellPlant(story);
    const line = story.floor().lines.get('L1') ?? expect.fail('no line');
    const lane = laneLine('L1', 2);
    story.tell('line.defined', { ...line, line: lane, name: 'Brae line 1, lane 2' });
    const slots = [wantedSlot('M1-F-001', 'R-777'), wantedSlot('M1-F-009', 'C-777')];
    story.tell('setup.taken', { ...brookSetup, setup: 'fell', line: lane, slots });
    story.tell('setup.chosen', { line: lane, setup: 'fell' });
    for (const slot of ['M1-F-001', 'M1-F-009'])
      story.tell('reel.verified', verified(slot, 'X-1', { line: lane, feeder: `F-${slot}` }));
    const told = floorThings(story.floor()).filter(({ kind }) => kind === 'slot');
    const of = (name: string) => told.filter(({ names }) => names.includes(name));
    expect(of('M1-F-001').map(({ thing, about }) => [thing, about])).toEqual([
      [{ kind: 'slot', line: 'L1', slot: 'M1-F-001' }, ['R-100', 'R-777', 'F-M1-F-001', 'X-1']],
    ]);
    expect(of('M1-F-009').map(({ thing, about }) => [thing, about])).toEqual([
      [{ kind: 'slot', line: lane, slot: 'M1-F-009' }, ['C-777', 'F-M1-F-009', 'X-1']],
    ]);
  });

  it('never finds a person by a piece of a badge', () => {
    for (const { badge } of floor.people.values()) {
      expect(find(badge.slice(0, -1), 'person')).toEqual([]);
      expect(find(badge.toLowerCase(), 'person')).toEqual([]);
    }
  });
});

describe('an entry', () => {
  const things = entryThings(entries, floor);
  const ofEntries = indexTexts(things);
  const findEntry = (text: string) =>
    findTexts([ofEntries], text, { most: 100_000, order: thingKinds })[0]?.first.map(({ thing }) => thing) ??
    [];

  it('is found by each code in it, and by who did it', () => {
    const verified = entries.find(({ kind, who }) => kind === 'reel.verified' && who !== null) as Entry;
    const { slot, reel, lot } = verified.payload;
    const name = floor.people.get(verified.who ?? '')?.name;
    for (const text of [slot, reel, lot, name])
      expect(findEntry(String(text))).toContainEqual({ kind: 'entry', entry: entryId(verified) });
  });

  it('is told in the order given, and not found by ids that only the log knows', () => {
    const [run] = floor.runs.keys();
    expect(findEntry(run ?? 'none')).toEqual([]);
    const started = entries.filter(({ kind }) => kind === 'run.started');
    expect(findEntry(String(started[0]?.payload['product']))[0]).toEqual(
      things.find(({ about }) => about.includes(String(started[0]?.payload['product'])))?.thing,
    );
  });

  it('has no badge among its texts', () => {
    const badges = [...floor.people.values()].map(({ badge }) => badge);
    expect(entries.flatMap(textsOfEntry).filter((text) => badges.includes(text))).toEqual([]);
  });
});
