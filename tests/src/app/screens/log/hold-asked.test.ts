// From wherever it is asked which panels carry something wrong: the right panels, the right cause, and the entry or block that tells it.

import { describe, expect, test } from 'vitest';
import { packageIdOf } from '../../../../../shared/floor/package-name.ts';
import { type Entry, entryId } from '../../../../../shared/log/entry.ts';
import { compareEntries } from '../../../../../shared/log/order.ts';
import { namesToo } from '../../../../../shared/trace/material.ts';
import { traceLog } from '../../../../../shared/trace/stretches.ts';
import { heldPayload } from '../../../../../src/app/screens/log/held-model.ts';
import {
  askedByName,
  askedFrom,
  askedOfEntry,
  type HoldAsked,
  materialAsked,
  panelsAsked,
  sourceOf,
} from '../../../../../src/app/screens/log/hold-asked.ts';
import {
  beginStory,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../../../../shared/floor/story.ts';

const slot = 'M1-F-001';
const HOUR = 3600;

function begun(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('line.panels-ruled', {
    line: 'L1',
    machines: [{ machine: 'M1', least: 0, most: 0 }],
    missed: 0,
  });
  return story;
}

const indexOf = (story: Story) => traceLog([...story.entries].sort(compareEntries));
const scan = (story: Story, from: number, to: number, at?: number) => {
  for (let panel = from; panel <= to; panel++)
    story.tell('panels.counted', counted('r1', 1, `PN${panel}`), at === undefined ? {} : { at: at + panel });
};

/** What is written when the panels of a question are held, an hour after the newest entry. */
function heldBy(story: Story, asked: HoldAsked | null, nowMs = startMs + 1000 * HOUR * 1000) {
  if (asked === null) throw new TypeError('Cannot go on as nothing is asked');
  const index = indexOf(story);
  const { cause } = asked;
  return heldPayload(panelsAsked(index, asked, nowMs), {
    containment: 'c1',
    line: 'L1',
    cause,
    of: sourceOf(index, asked),
    reason: 'seen',
    material: materialAsked(index, asked),
  });
}

const loadedBy = (story: Story, reel: string | null, lot: string, at?: number) =>
  story.tell(
    'reel.verified',
    verified(slot, 'R-100', { reel, lot, quantity: 5000 }),
    at === undefined ? {} : { at },
  );

/** The package that an entry named first gets its id; the id. */
function named(story: Story, first: Entry): string {
  const reel = packageIdOf(entryId(first));
  const label = {
    part: 'R-100',
    supplierPart: null,
    lot: 'LA',
    dateCode: null,
    quantity: 80,
    sd: 0,
  } as const;
  story.tell('reel.named', { ...label, reel, was: `~${entryId(first)}`, basis: 'label', via: 'typed' });
  return reel;
}

describe('the panels of a hold that was cleared in error', () => {
  test('are those since its clearing, asked from the entry in the log, and name it', () => {
    const story = begun();
    loadedBy(story, 'K1', 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 10);
    story.tell('reel.unloaded', {
      line: 'L1',
      run: 'r1',
      slot,
      feeder: null,
      reel: 'K1',
      part: 'R-100',
      lot: 'LA',
      quantity: null,
      basis: null,
      panels: 10,
      via: 'typed',
    });
    const reasons = [{ code: 'no-quantity' }];
    const held = story.tell(
      'reel.verified',
      verified(slot, 'R-100', { reel: 'K2', lot: 'LB', verdict: 'held', reasons, run: 'r1' }),
    );
    const decided = { line: 'L1', slot, reason: 'seen', by: 'lea', checked: 'tablet' } as const;
    const cleared = story.tell('hold.cleared', { ...decided, of: entryId(held) });
    scan(story, 11, 15);
    const floor = story.floor();
    expect(askedOfEntry(floor, held)).toBeNull();
    const written = heldBy(story, askedOfEntry(floor, cleared));
    expect(written).toMatchObject({ cause: 'cleared', of: entryId(cleared), reel: 'K2', lot: 'LB' });
    expect(written.runs).toMatchObject([{ slot, sure: { first: 12, last: 15 } }]);
    expect(written.codes).toEqual(expect.arrayContaining(['PN11', 'PN12', 'PN15']));
    expect(written.codes).not.toContain('PN9');
  });
});

describe('the panels of a wrong reel that a check found', () => {
  test('are asked from its verdict, from the address on the refusal, and by its name', () => {
    const story = begun();
    loadedBy(story, 'K1', 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 10);
    const found = story.tell(
      'reel.verified',
      verified(slot, 'C-200', {
        act: 'sweep',
        reel: 'X1',
        lot: 'LX',
        run: 'r1',
        verdict: 'refused',
        reasons: [{ code: 'not-the-loaded-reel' }],
      }),
    );
    scan(story, 11, 12);
    const floor = story.floor();
    const of = entryId(found);
    const ways = [
      askedOfEntry(floor, found),
      askedFrom(floor, { cause: 'wrong-reel', of, reel: 'X1' }),
      askedByName({ reel: 'X1' }),
    ];
    for (const asked of ways)
      expect(heldBy(story, asked)).toMatchObject({ cause: 'wrong-reel', of, reel: 'X1', slot });
    expect(heldBy(story, ways[0] ?? null).runs).toMatchObject([
      { sure: null, possible: { first: 1, last: 13 } },
    ]);
  });

  test('or an audit, are asked from the entry that put the reel on: that stay alone', () => {
    const story = begun();
    const first = loadedBy(story, 'K1', 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 5);
    const floor = story.floor();
    const written = heldBy(story, askedOfEntry(floor, first));
    expect(written).toMatchObject({ of: entryId(first), reel: 'K1', lot: 'LA', part: 'R-100' });
    expect(written.runs).toMatchObject([{ sure: { first: 1, last: 5 } }]);
  });
});

describe('the panels of blocked material', () => {
  test('are asked from the block and from the entry that blocks, and name the block', () => {
    const story = begun();
    loadedBy(story, null, 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 5);
    const blocked = story.tell('material.blocked', {
      block: 'b1',
      reel: null,
      lot: 'LA',
      part: 'R-100',
      reason: 'cracked',
    });
    const floor = story.floor();
    const asked = [
      askedOfEntry(floor, blocked),
      askedFrom(floor, { cause: 'blocked', of: 'b1' }),
      { ...askedByName({ lot: 'LA' }), cause: 'blocked' as const },
    ];
    for (const each of asked) {
      expect(heldBy(story, each)).toMatchObject({ cause: 'blocked', of: 'b1', lot: 'LA' });
      expect(heldBy(story, each).codes).toEqual(['PN1', 'PN2', 'PN3', 'PN4', 'PN5']);
    }
    expect(askedFrom(floor, { cause: 'blocked', of: 'gone' })).toBeNull();
  });

  test('of a reel without an id are those of the entry that first named it', () => {
    const story = begun();
    const loaded = loadedBy(story, null, 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 3);
    const reel = `~${entryId(loaded)}`;
    const blocked = story.tell('material.blocked', { block: 'b1', reel, lot: null, part: null, reason: 'x' });
    expect(heldBy(story, askedOfEntry(story.floor(), blocked)).codes).toEqual(['PN1', 'PN2', 'PN3']);
  });

  test('of a reel that got its id after the block are found by the entry, and told by the id', () => {
    const story = begun();
    const loaded = loadedBy(story, null, 'LA');
    story.tell('run.started', started('r1'));
    scan(story, 1, 3);
    const reel = `~${entryId(loaded)}`;
    const blocked = story.tell('material.blocked', { block: 'b1', reel, lot: null, part: null, reason: 'x' });
    const given = named(story, loaded);
    const floor = story.floor();
    for (const asked of [askedOfEntry(floor, blocked), askedFrom(floor, { cause: 'blocked', of: 'b1' })])
      expect(heldBy(story, asked)).toMatchObject({ reel: given, codes: ['PN1', 'PN2', 'PN3'] });
    expect(namesToo(floor, { reel })).toEqual(namesToo(floor, { reel: given }));
  });
});

describe('the panels of a floor life that had ended', () => {
  /** A level 3 reel on its slot since the start; its panels are counted before and after its 168 hours. */
  function aged(more: (story: Story) => void = () => undefined) {
    const story = begun();
    story.tell('part.described', {
      part: 'R-100',
      msl: '3',
      family: null,
      pins: null,
      bodyMm: null,
      bodyXMm: null,
      bodyYMm: null,
      isStacked: null,
      source: '',
    });
    const loaded = loadedBy(story, 'K1', 'LA', 60);
    story.tell('run.started', started('r1'), { at: 61 });
    scan(story, 1, 10, 100 * HOUR);
    scan(story, 11, 20, 200 * HOUR);
    more(story);
    return { story, loaded };
  }
  const life = (reel: string | null, of: string): HoldAsked | null =>
    askedFrom(beginStory().floor(), { cause: 'floor-life', of, reel });

  test('are those from the moment it ended, by the reel or by the entry that put it on', () => {
    const { story, loaded } = aged();
    for (const asked of [life('K1', entryId(loaded)), life(null, entryId(loaded))]) {
      const written = heldBy(story, asked);
      expect(written).toMatchObject({ cause: 'floor-life', of: entryId(loaded) });
      expect(written.runs).toMatchObject([{ possible: { first: 11 }, sure: { first: 13, last: 20 } }]);
      expect(written.codes).toEqual(Array.from({ length: 10 }, (_, at) => `PN${11 + at}`));
    }
  });

  test('are the same after a bake that gave the life back', () => {
    const { story, loaded } = aged((told) => {
      const facts = { part: 'R-100', supplierPart: null, quantity: null, lot: null, dateCode: null };
      const air = (is: 'bake' | 'floor', hours: number) =>
        told.tell(
          'reel.aired',
          {
            ...facts,
            reel: 'K1',
            air: is,
            from: new Date(startMs + hours * HOUR * 1000).toISOString(),
            celsius: is === 'bake' ? 125 : null,
            humidity: null,
            via: 'typed',
          },
          { at: hours * HOUR },
        );
      air('bake', 210);
      air('floor', 300);
    });
    const written = heldBy(story, life('K1', entryId(loaded)), startMs + 301 * HOUR * 1000);
    expect(written.codes[0]).toBe('PN11');
  });

  test('are none while it lasts: nothing is held for it', () => {
    const { story, loaded } = aged();
    expect(heldBy(story, life('K1', entryId(loaded)), startMs + 150 * HOUR * 1000).runs).toEqual([]);
  });

  test('count from when the bag was opened, before the load, for a reel that got its id later', () => {
    const story = begun();
    const msl3 = { msl: '3', family: null, pins: null, bodyMm: null, bodyXMm: null, bodyYMm: null } as const;
    story.tell('part.described', { part: 'R-100', ...msl3, isStacked: null, source: '' });
    const loaded = loadedBy(story, null, 'LA', 60 * HOUR);
    const facts = { part: 'R-100', supplierPart: null, quantity: null, lot: null, dateCode: null } as const;
    const from = new Date(startMs).toISOString();
    const air = { air: 'floor', from, celsius: null, humidity: null, via: 'typed' } as const;
    story.tell('reel.aired', { ...facts, ...air, reel: `~${entryId(loaded)}` });
    story.tell('run.started', started('r1'));
    scan(story, 1, 10, 100 * HOUR);
    scan(story, 11, 20, 200 * HOUR);
    const given = named(story, loaded);
    // Since the load 168 hours are over only after 228.
    for (const reel of [given, null])
      expect(heldBy(story, life(reel, entryId(loaded)), startMs + 210 * HOUR * 1000).codes[0]).toBe('PN11');
  });

  test('are asked from the entry that tells how long the reel was out', () => {
    const { story } = aged();
    const aired: Entry = story.tell('reel.aired', {
      reel: 'K1',
      part: 'R-100',
      supplierPart: null,
      quantity: null,
      lot: null,
      dateCode: null,
      air: 'floor',
      from: new Date(startMs).toISOString(),
      celsius: null,
      humidity: null,
      via: 'typed',
    });
    const written = heldBy(story, askedOfEntry(story.floor(), aired));
    expect(written).toMatchObject({ of: entryId(aired), cause: 'floor-life' });
    expect(written.codes).toContain('PN11');
  });
});

test('an entry that puts nothing on panels asks nothing', () => {
  const story = begun();
  const entry = story.tell('run.started', started('r1'));
  expect(askedOfEntry(story.floor(), entry)).toBeNull();
  const swept = story.tell('reel.verified', verified(slot, 'R-100', { act: 'sweep' }));
  expect(askedOfEntry(story.floor(), swept)).toBeNull();
  expect(askedFrom(story.floor(), { cause: 'other', of: 'x' })).toBeNull();
});
