import { describe, expect, test } from 'vitest';
import { kitList } from '../../../shared/changeover/kit.ts';
import { shelfFor } from '../../../shared/floor/shelf.ts';
import type { Setup } from '../../../shared/floor/state.ts';
import { waitingReels } from '../../../shared/outlook/supply.ts';
import {
  beginStory,
  brookSetup,
  counted,
  type Story,
  started,
  startMs,
  tellPlant,
  unloaded,
  verified,
  wantedSlot,
} from '../floor/story.ts';

const setupOf = (story: Story) => story.floor().setups.get('brook-top-a') as Setup; // told by tellPlant()

/** A reel that the log knows off the line: loaded once, then taken off counted. */
function tellFree(story: Story, reel: string, part: string, quantity: number): void {
  story.tell('reel.verified', verified('M1-F-002', part, { reel, quantity }));
  story.tell('reel.unloaded', unloaded('M1-F-002', { reel, part, quantity, basis: 'weighed' }));
}

const rowOf = (story: Story, part: string, panels = 100, loss = 0) =>
  kitList(story.floor(), setupOf(story), { panels, loss, nowMs: startMs }).find((row) => row.part === part);

describe('kitList()', () => {
  test('sums usage over all slots of a part, lost picks included', () => {
    const story = beginStory();
    tellPlant(story);
    expect(rowOf(story, 'R-100')).toMatchObject({
      slots: ['M1-F-001', 'M1-R-003'],
      needed: 600,
      short: 600,
      isOnLine: false,
      reels: [],
    });
    expect(rowOf(story, 'R-100', 100, 0.25)?.needed).toBe(800);
  });

  test('takes the fullest reels first where the line wants that, and no more than are needed', () => {
    const story = beginStory();
    tellPlant(story, { rules: { pickOrder: 'fullest-first' } });
    tellFree(story, 'K-1', 'C-200', 50);
    tellFree(story, 'K-2', 'C-200', 180);
    tellFree(story, 'K-3', 'C-200', 30);
    const row = rowOf(story, 'C-200');
    expect(row?.reels.map((reel) => reel.reel)).toEqual(['K-2', 'K-1']);
    expect(row).toMatchObject({ needed: 200, found: 230, short: 0, enough: 'sure', missing: 0 });
  });

  test('takes the oldest date code first, then what was opened, then the smaller reel', () => {
    // Common practice: first made, first used; begun reels before closed ones.
    const story = beginStory();
    tellPlant(story);
    const putOf = (reel: string, quantity: number, dateCode: string | null) =>
      story.tell('reel.put', {
        reel,
        part: 'C-200',
        place: 'A1',
        supplierPart: null,
        quantity,
        lot: null,
        via: 'typed' as const,
        dateCode,
      });
    putOf('K-NEW', 5000, '2540');
    putOf('K-UNDATED', 100, null);
    putOf('K-UNCLEAR', 90, '25123');
    putOf('K-OLD', 60, '2510');
    story.tell(
      'reel.verified',
      verified('M1-F-002', 'C-200', { reel: 'K-OPEN', quantity: 400, dateCode: '2540' }),
    );
    story.tell('reel.unloaded', unloaded('M1-F-002', { reel: 'K-OPEN', quantity: 4000, basis: 'typed' }));
    const all = rowOf(story, 'C-200', 10_000)?.reels.map(({ reel }) => reel);
    expect(all).toEqual(['K-OLD', 'K-OPEN', 'K-NEW', 'K-UNCLEAR', 'K-UNDATED']);
  });

  test('enough only where it is so with 95 %, else probably, with what is missing to be sure', () => {
    const story = beginStory();
    tellPlant(story);
    // A printed 10 000 has a deviation of 25 (a quarter percent of it): 9990 wanted is 0.4 deviations below, 9900 four.
    story.tell('reel.put', {
      reel: 'K-1',
      part: 'U-300',
      place: 'A1',
      supplierPart: null,
      quantity: 10_000,
      lot: null,
      dateCode: null,
      via: 'typed' as const,
    });
    const row = rowOf(story, 'U-300', 9990);
    expect(row).toMatchObject({ enough: 'probably', short: 0, missing: Math.ceil(1.645 * 25 - 10) });
    expect(row?.chance).toBeCloseTo(0.6554, 3); // table of the standard normal law at 0.4
    expect(rowOf(story, 'U-300', 9900)).toMatchObject({ enough: 'sure', missing: 0 });
    expect(rowOf(story, 'U-300', 10_010)).toMatchObject({ enough: 'no', short: 10 });
  });

  test('counts what is left on a reel, not what was joined', () => {
    // 5000 joined, 4510 placed: 490 are left, and 4500 wanted.
    const story = beginStory();
    tellPlant(story);
    story.tell('run.started', started('run-1', { panelsWanted: 4510 }));
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K-1', quantity: 5000 }));
    story.tell('panels.counted', counted('run-1', 4510));
    const row = rowOf(story, 'U-300', 4500);
    expect(row?.enough).toBe('no');
    expect(Math.abs((row?.short ?? 0) - 4010)).toBeLessThanOrEqual(2); // what the line assumes of losses
    expect(row?.missing).toBeGreaterThan(row?.short ?? 0);
  });

  test('a splice beyond the first reel of a slot costs what the line says', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('line.splices-ruled', { line: 'L1', costs: [{ tapeWidthMm: 8, parts: 20 }] });
    tellFree(story, 'K-1', 'U-300', 1000);
    tellFree(story, 'K-2', 'U-300', 1100);
    // 2100 are there; one splice takes 20.
    expect(rowOf(story, 'U-300', 2000)).toMatchObject({ enough: 'sure' });
    expect(rowOf(story, 'U-300', 2090)).toMatchObject({ enough: 'no' });
  });

  test('wants a reel for each slot even where one reel would last', () => {
    const story = beginStory();
    tellPlant(story);
    tellFree(story, 'K-1', 'R-100', 5000);
    tellFree(story, 'K-2', 'R-100', 100);
    expect(rowOf(story, 'R-100')?.reels.map((reel) => reel.reel)).toEqual(['K-2', 'K-1']);
  });

  test('walks the store by its places; what has none comes after, by slot', () => {
    const story = beginStory();
    tellPlant(story);
    const order = () =>
      kitList(story.floor(), setupOf(story), { panels: 100, loss: 0, nowMs: startMs }).map((row) => row.part);
    const [first, second] = order();
    expect([first, second]).toEqual(['R-100', 'C-200']);
    const put = (reel: string, part: string, place: string) =>
      story.tell('reel.put', {
        reel,
        part,
        place,
        supplierPart: null,
        quantity: 5000,
        lot: null,
        dateCode: null,
        via: 'typed',
      });
    put('K-2', 'C-200', 'A10');
    expect(order().slice(0, 2)).toEqual(['C-200', 'R-100']);
    put('K-1', 'R-100', 'A9');
    expect(order().slice(0, 2)).toEqual(['R-100', 'C-200']);
  });

  test('counts what stands on its slot already, and tells what is short', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('reel.verified', verified('M1-F-002', 'C-200', { reel: 'K-9', quantity: 150 }));
    expect(rowOf(story, 'C-200')).toMatchObject({ isOnLine: true, found: 150, short: 50, reels: [] });
  });

  /** Brook runs, with all its slots loaded; Fern wants two of its parts elsewhere. */
  function tellRunning(): Story {
    const story = beginStory();
    tellPlant(story);
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'fern',
      product: 'Fern',
      slots: [
        wantedSlot('M1-F-001', 'R-100'),
        wantedSlot('M1-F-005', 'C-200', { alternates: ['C-201'] }),
        wantedSlot('M1-F-006', 'U-300', { perPanel: 3 }),
      ],
    });
    story.tell('reel.verified', verified('M1-F-001', 'R-100', { reel: 'K-1', quantity: 3000 }));
    story.tell('reel.verified', verified('M1-F-002', 'C-201', { reel: 'K-2', quantity: 1400 }));
    story.tell('reel.verified', verified('M1-F-010', 'U-300', { reel: 'K-3', quantity: null }));
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K-4', quantity: 5000 }));
    story.tell('run.started', started('run-1', { panelsWanted: 500 }));
    story.tell('panels.counted', counted('run-1', 100));
    return story;
  }

  const fernRow = (story: Story, part: string) =>
    kitList(story.floor(), story.floor().setups.get('fern') as Setup, {
      panels: 100,
      loss: 0,
      nowMs: startMs,
    }).find((row) => row.part === part);

  test('takes what stays or moves on the line for there, with what the running job will leave', () => {
    const story = tellRunning();
    // 3000 and 1400 parts less two placements on each of 500 panels; the losses that the line assumes take no whole part more than a few.
    const [stays, comesOff] = fernRow(story, 'R-100')?.here ?? [];
    expect(stays).toMatchObject({ slot: 'M1-F-001', to: 'M1-F-001' });
    expect(stays?.left).toBeGreaterThan(1990);
    expect(stays?.left).toBeLessThanOrEqual(2000);
    expect(comesOff).toMatchObject({ slot: 'M1-R-003', to: null });
    const moves = fernRow(story, 'C-200');
    expect(moves).toMatchObject({
      short: 0,
      isOnLine: true,
      reels: [],
      uncounted: 0,
      here: [{ reel: 'K-2', slot: 'M1-F-002', to: 'M1-F-005' }],
    });
    expect(moves?.here[0]?.left).toBeLessThanOrEqual(400);
  });

  test('does not call short what only nobody counted, and says how many reels that are', () => {
    expect(fernRow(tellRunning(), 'U-300')).toMatchObject({ short: 300, uncounted: 1, isOnLine: true });
  });

  test('a reel that may not be used as it is counts as none, and is named', () => {
    const story = beginStory();
    tellPlant(story);
    tellFree(story, 'K-1', 'C-200', 180);
    tellFree(story, 'K-2', 'C-200', 50);
    const lifeOf = (reel: { reel: string }, part: string) =>
      reel.reel === 'K-1' && part === 'C-200' ? { leftSeconds: 0, neededSeconds: null } : null;
    const rows = kitList(story.floor(), setupOf(story), { panels: 100, loss: 0, nowMs: startMs, lifeOf });
    const row = rows.find(({ part }) => part === 'C-200');
    expect(row).toMatchObject({ found: 50, short: 150 });
    expect(row?.reels.map(({ reel }) => reel)).toEqual(['K-2']);
    expect(row?.spent.map(({ reel }) => reel)).toEqual(['K-1']);
  });

  describe('what the calendar took', () => {
    // The story is told on 2 March 2026: week 10.
    const putDated = (story: Story, reel: string, dateCode: string | null = '2608') =>
      story.tell('reel.put', {
        reel,
        part: 'C-200',
        supplierPart: null,
        place: 'A1',
        quantity: 5000,
        lot: null,
        dateCode,
        via: 'typed',
      });
    const limit = (story: Story, months: number) =>
      story.tell('line.age-ruled', { line: 'L1', limits: [{ begins: 'C-', months }] });
    const expire = (story: Story, reel: string, expires: string) =>
      story.tell('reel.dated', { reel, expires });
    const spentIn = (row: ReturnType<typeof rowOf>) => row?.spent.map(({ reel }) => reel);
    /** What the outlook of a running job would send for. */
    const waiting = (story: Story) => {
      const floor = story.floor();
      const wanted = setupOf(story).slots.find(({ part }) => part === 'C-200');
      const shelf = shelfFor(floor, { line: 'L1', setup: 'brook-top-a', nowMs: startMs });
      return wanted ? waitingReels(shelf(wanted)).map(({ reel }) => reel) : null;
    };

    test('an expired reel is never picked, neither for a change nor for the run; the day itself still serves', () => {
      const story = beginStory();
      tellPlant(story);
      putDated(story, 'K-PAST');
      putDated(story, 'K-TODAY');
      expire(story, 'K-PAST', '2026-03-01');
      expire(story, 'K-TODAY', '2026-03-02');
      const row = rowOf(story, 'C-200', 5000);
      expect(row?.reels.map(({ reel }) => reel)).toEqual(['K-TODAY']);
      expect(row).toMatchObject({ needed: 10_000, found: 5000, short: 5000, enough: 'no', uncounted: 0 });
      expect(spentIn(row)).toEqual(['K-PAST']);
      expect(waiting(story)).toEqual(['K-TODAY']);
    });

    test('nor one that is older than the line allows, or whose age nobody can tell', () => {
      const story = beginStory();
      tellPlant(story);
      putDated(story, 'K-OLD', '2409');
      putDated(story, 'K-JUST', '2410');
      putDated(story, 'K-UNDATED', null);
      // Without a rule no age counts.
      expect(spentIn(rowOf(story, 'C-200', 50_000))).toEqual([]);
      expect(waiting(story)).toHaveLength(3);
      limit(story, 24);
      // Made on the Monday of its week: 26 February 2024 is over by a few days, 4 March 2024 is not.
      const row = rowOf(story, 'C-200', 50_000);
      expect(row?.reels.map(({ reel }) => reel)).toEqual(['K-JUST']);
      expect(row?.found).toBe(5000);
      expect(spentIn(row)?.sort()).toEqual(['K-OLD', 'K-UNDATED']);
      expect(waiting(story)).toEqual(['K-JUST']);
    });

    test('nor when it stands on the line already', () => {
      const tell = (more: { dateCode: string | null; expires: string | null }) => {
        const story = beginStory();
        tellPlant(story);
        const facts = { reel: 'K-1', quantity: 5000, dateCode: more.dateCode };
        story.tell('reel.verified', verified('M1-F-002', 'C-200', facts));
        if (more.expires !== null) expire(story, 'K-1', more.expires);
        limit(story, 24);
        return rowOf(story, 'C-200');
      };
      expect(tell({ dateCode: '2608', expires: null })).toMatchObject({ found: 5000, short: 0, spent: [] });
      for (const row of [
        tell({ dateCode: '2608', expires: '2026-02-28' }),
        tell({ dateCode: '2301', expires: null }),
      ]) {
        expect(row).toMatchObject({ found: 0, short: 200, here: [], isOnLine: false, enough: 'no' });
        expect(spentIn(row)).toEqual(['K-1']);
      }
    });

    test('an alternate that expired is no way out', () => {
      const story = beginStory();
      tellPlant(story);
      put(story, 'K-A', { part: 'C-201' });
      expire(story, 'K-A', '2025-12-31');
      expect(rowOf(story, 'C-200')).toMatchObject({ short: 200, reels: [], spent: [{ reel: 'K-A' }] });
      expect(waiting(story)).toEqual([]);
    });
  });

  const put = (story: Story, reel: string, more: { part: string | null; supplierPart?: string }) =>
    story.tell('reel.put', {
      reel,
      part: more.part,
      supplierPart: more.supplierPart ?? null,
      place: 'A1',
      quantity: 5000,
      lot: null,
      dateCode: null,
      via: 'typed',
    });
  const block = (story: Story, more: { reel?: string; part?: string }) =>
    story.tell('material.blocked', {
      block: `block-${more.reel ?? more.part}`,
      reel: more.reel ?? null,
      lot: null,
      part: more.part ?? null,
      reason: 'cracked',
    });

  test('sends nobody for a blocked reel, and says short', () => {
    const story = beginStory();
    tellPlant(story);
    put(story, 'K-1', { part: 'C-200' });
    block(story, { reel: 'K-1' });
    expect(rowOf(story, 'C-200')).toMatchObject({ reels: [], found: 0, short: 200, spent: [], uncounted: 0 });
  });

  test('an approved alternate on the shelf counts, after the reels of the part itself', () => {
    const story = beginStory();
    tellPlant(story);
    put(story, 'K-A', { part: 'C-201' });
    expect(rowOf(story, 'C-200')).toMatchObject({ short: 0, found: 5000, reels: [{ reel: 'K-A' }] });
    tellFree(story, 'K-1', 'C-200', 150);
    expect(rowOf(story, 'C-200')?.reels.map(({ reel }) => reel)).toEqual(['K-1', 'K-A']);
    tellFree(story, 'K-2', 'C-200', 60);
    expect(rowOf(story, 'C-200')?.reels.map(({ reel }) => reel)).toEqual(['K-2', 'K-1']);
  });

  test('a reel counts for one part only, its own before another whose alternate it is', () => {
    const story = beginStory();
    tellPlant(story);
    story.tell('setup.taken', {
      ...brookSetup,
      setup: 'fern',
      product: 'Fern',
      slots: [wantedSlot('M1-F-001', 'C-200', { alternates: ['C-201'] }), wantedSlot('M1-F-002', 'C-201')],
    });
    put(story, 'K-A', { part: 'C-201' });
    expect(fernRow(story, 'C-201')).toMatchObject({ short: 0, reels: [{ reel: 'K-A' }] });
    expect(fernRow(story, 'C-200')).toMatchObject({ short: 200, reels: [] });
  });

  test('a part of an approved maker counts where the label bears no number of the site, unless the part is blocked', () => {
    const story = beginStory();
    tellPlant(story);
    put(story, 'K-M', { part: null, supplierPart: 'SUP-300' });
    put(story, 'K-N', { part: null, supplierPart: 'SUP-999' });
    expect(rowOf(story, 'U-300')).toMatchObject({ short: 0, reels: [{ reel: 'K-M' }] });
    block(story, { part: 'U-300' });
    expect(rowOf(story, 'U-300')).toMatchObject({ short: 100, reels: [] });
  });
});
