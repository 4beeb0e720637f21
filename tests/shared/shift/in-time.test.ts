// Run-outs that were prevented, missed or not sure: worked by hand on small stories, and against the floor as it was just before each splice.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { type FloorEntry, type PayloadOf, readFloorEntry } from '../../../shared/floor/kinds.ts';
import { slotLeft } from '../../../shared/floor/remaining.ts';
import { emptyState, type FloorState } from '../../../shared/floor/state.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { shiftReport } from '../../../shared/shift/report.ts';
import { arrivals, receive } from '../floor/arrivals.ts';
import {
  beginStory,
  counted,
  idOf,
  type Story,
  started,
  startMs,
  tellPlant,
  verified,
} from '../floor/story.ts';
import { begunInTurn, load as loadInTurn } from '../floor/turns-story.ts';

const slot = 'M1-F-001';
const floorEntries = (entries: readonly Entry[]) =>
  entries.map(readFloorEntry).filter((each): each is FloorEntry => each !== null);
const cameOn = (floor: FloorState, entries: readonly Entry[], line = 'L1') =>
  shiftReport(floor, floorEntries(entries), { line, fromMs: startMs, toMs: startMs + 8 * 3_600_000 }).came;
const came = (story: Story, line = 'L1') => cameOn(story.floor(), story.entries, line);
const told = (story: Story, line = 'L1') => came(story, line).map(({ is, left }) => [is, left]);

/** A reel of 400 on a slot that gives two a panel, and a run of 500 panels that takes 1000. */
function begun(first: Partial<PayloadOf<'reel.verified'>> = {}): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', quantity: 400, ...first }));
  story.tell('run.started', started('r1'));
  return story;
}
const build = (story: Story, panels: number, at: number) =>
  story.tell('panels.counted', counted('r1', panels), { at });
const join = (story: Story, reel: string, at: number, more: Partial<PayloadOf<'reel.verified'>> = {}) =>
  story.tell(
    'reel.verified',
    verified(slot, 'R-100', { reel, quantity: 400, act: 'splice', run: 'r1', ...more }),
    { at },
  );
const stop = (story: Story, reason: 'run-out' | 'jam', at: number, line = 'L1', run = 'r1') =>
  story.tell('run.stopped', { run, line, reason, note: '' }, { at });
const correct = (story: Story, entry: Entry, at: number) =>
  story.tell('entry.corrected', { of: idOf(entry), line: 'L1', slot, reason: 'wrong' }, { at });

describe('a run-out is prevented', () => {
  test('where a reel comes while the old one has parts, too few for the run', () => {
    const story = begun();
    build(story, 150, 1000);
    join(story, 'K2', 1100);
    expect(came(story)).toEqual([{ atMs: startMs + 1_100_000, slot, left: 100, is: 'prevented' }]);
  });

  test('not where the old one would have lasted the run, nothing is built, or the slot was emptied first', () => {
    const lasting = begun({ quantity: 1000 });
    build(lasting, 150, 1000);
    join(lasting, 'K2', 1100);
    expect(told(lasting)).toEqual([]);
    const idle = begun();
    idle.tell('run.ended', { run: 'r1', line: 'L1', panels: 0, note: '' }, { at: 500 });
    join(idle, 'K2', 1100);
    expect(told(idle)).toEqual([]);
    const loaded = begun();
    build(loaded, 150, 1000);
    join(loaded, 'K2', 1100, { act: 'load' });
    expect(told(loaded)).toEqual([]);
  });

  test('by an exchange of what stood there, not of something else', () => {
    const story = begun();
    const first = story.entries.find(({ kind }) => kind === 'reel.verified') as Entry; // told by begun()
    build(story, 150, 1000);
    join(story, 'K2', 1100, { act: 'exchange', replaces: idOf(first) });
    expect(told(story)).toEqual([['prevented', 100]]);
    build(story, 100, 1200);
    // Which of the two is there is for a lead to say.
    join(story, 'K3', 1300, { act: 'exchange', replaces: idOf(first) });
    expect(told(story)).toEqual([['unsure', 100]]);
  });

  test('by a held reel when a lead clears it; declined it is none, nor is a refused one', () => {
    const story = begun();
    build(story, 150, 1000);
    join(story, 'K9', 1010, { verdict: 'refused' });
    const hold = idOf(join(story, 'K2', 1020, { verdict: 'held' }));
    const other = idOf(join(story, 'K3', 1030, { verdict: 'held' }));
    const on = { line: 'L1', slot, reason: 'seen', by: 'ana' };
    story.tell('hold.declined', { of: other, ...on }, { at: 1100 });
    story.tell('hold.cleared', { of: other, ...on, checked: 'server' }, { at: 1110 });
    expect(told(story)).toEqual([]);
    story.tell('hold.cleared', { of: hold, ...on, checked: 'server' }, { at: 1200 });
    expect(came(story)).toEqual([{ atMs: startMs + 1_200_000, slot, left: 100, is: 'prevented' }]);
  });

  test('no more once the splice is taken back, and once only where the same reel is scanned again', () => {
    const story = begun();
    build(story, 150, 1000);
    const entry = join(story, 'K2', 1100);
    join(story, 'K2', 1110);
    expect(told(story)).toEqual([['prevented', 100]]);
    correct(story, entry, 1200);
    expect(told(story)).toEqual([]);
  });
});

describe('it is not sure', () => {
  test('where the old count is unknown or used up', () => {
    const unknown = begun({ quantity: null, basis: null });
    build(unknown, 150, 1000);
    join(unknown, 'K2', 1100);
    expect(told(unknown)).toEqual([['unsure', null]]);
    const used = begun();
    build(used, 250, 1000);
    join(used, 'K2', 1100);
    expect(told(used)).toEqual([['unsure', 0]]);
  });

  test('where what stood there is taken back later', () => {
    const story = begun();
    const first = story.entries.find(({ kind }) => kind === 'reel.verified') as Entry; // told by begun()
    build(story, 150, 1000);
    join(story, 'K2', 1100);
    correct(story, first, 1200);
    expect(told(story)).toEqual([['unsure', 100]]);
  });

  test('where a stop for an empty slot was entered just after it', () => {
    const stoppedAfter = (seconds: number) => {
      const story = begun();
      build(story, 150, 1000);
      join(story, 'K2', 1100);
      stop(story, 'run-out', 1100 + seconds);
      return told(story);
    };
    expect(stoppedAfter(300)).toEqual([['unsure', 100]]);
    expect(stoppedAfter(301)).toEqual([['prevented', 100]]);
  });

  test('while the reel is said to be on two slots; then where it is kept alone', () => {
    const story = begun();
    story.tell('reel.verified', verified('M1-R-003', 'R-100', { reel: 'K5', quantity: 900 }), { at: 10 });
    build(story, 150, 1000);
    const here = join(story, 'K2', 1100);
    story.tell(
      'reel.verified',
      verified('M1-R-003', 'R-100', { reel: 'K2', quantity: 400, act: 'splice', run: 'r1' }),
      { at: 1110, tablet: 'T2' },
    );
    expect(told(story)).toEqual([
      ['unsure', 100],
      ['unsure', 300],
    ]);
    const [conflict] = story.floor().conflicts.values();
    story.tell(
      'conflict.settled',
      {
        conflict: conflict?.conflict ?? '',
        line: 'L1',
        slot,
        keep: conflict?.entries.find((each) => each === idOf(here)) ?? '',
        reason: 'seen',
        by: 'lea',
      },
      { at: 1200 },
    );
    expect(told(story)).toEqual([['prevented', 100]]);
  });
});

describe('it came too late', () => {
  test('while the line stands for an empty slot, not while it stands for something else', () => {
    for (const [reason, is] of [
      ['run-out', 'late'],
      ['jam', 'prevented'],
    ] as const) {
      const story = begun();
      build(story, 150, 1000);
      stop(story, reason, 1050);
      join(story, 'K2', 1100);
      story.tell('run.resumed', { run: 'r1', line: 'L1' }, { at: 1150 });
      expect(told(story)).toEqual([[is, 100]]);
    }
  });

  test('where a machine had none left there before; what it says of another place or reel is nothing', () => {
    const says = (more: Partial<PayloadOf<'tape.empty'>>) => {
      const story = begun();
      build(story, 150, 1000);
      const at = { station: 'S1', line: 'L1', slot: null, reel: null, feeder: null, late: 0 };
      story.tell('tape.empty', { ...at, ...more }, { at: 1050, who: null });
      join(story, 'K2', 1100);
      return told(story);
    };
    expect(says({ slot })).toEqual([['late', 100]]);
    expect(says({ reel: 'K1' })).toEqual([['late', 100]]);
    expect(says({ slot: 'M1-F-002' })).toEqual([['prevented', 100]]);
    expect(says({ slot, reel: 'K0' })).toEqual([['prevented', 100]]);
  });
});

test('slots in turn count as one: a splice on the first is none while the others have enough, and none is sure where one is unknown', () => {
  const story = begunInTurn();
  loadInTurn(story, 'M1-F-001', 'K1', 100);
  loadInTurn(story, 'M1-F-002', 'K2', 1000);
  loadInTurn(story, 'M1-F-001', 'K3', 100, 'splice');
  expect(told(story)).toEqual([]);
  const short = begunInTurn();
  loadInTurn(short, 'M1-F-001', 'K1', 100);
  loadInTurn(short, 'M1-F-002', 'K2', 500);
  loadInTurn(short, 'M1-F-001', 'K3', 100, 'splice');
  expect(told(short)).toEqual([['prevented', 600]]);
  const unknown = begunInTurn();
  loadInTurn(unknown, 'M1-F-001', 'K1', 100);
  unknown.tell('reel.verified', {
    ...verified('M1-F-002', 'R-100', { reel: 'K2', quantity: null, basis: null }),
    setup: 'turns',
  });
  loadInTurn(unknown, 'M1-F-001', 'K3', 100, 'splice');
  expect(told(unknown)).toEqual([['unsure', null]]);
});

test('lanes take from one slot: what both still build counts, it is told where it was done, and the other lane’s empty slot may be this one', () => {
  const story = beginStory();
  tellPlant(story);
  const lane = 'L1~lane2';
  story.tell('line.defined', { line: lane, name: 'rear lane', zone: 'Europe/London', machines: [] });
  story.tell('setup.chosen', { line: lane, setup: 'brook-top-a' });
  story.tell('reel.verified', verified(slot, 'R-100', { reel: 'K1', quantity: 1200 }));
  story.tell('run.started', started('r1'));
  story.tell('run.started', started('r2', { line: lane }));
  // Enough for either lane, not for both.
  join(story, 'K2', 1100, { quantity: 700 });
  expect(told(story)).toEqual([['prevented', 1200]]);
  expect(told(story, lane)).toEqual([]);
  join(story, 'K3', 1200, { line: lane });
  expect(told(story, lane)).toEqual([['prevented', 1900]]);
  stop(story, 'run-out', 1150, lane, 'r2');
  expect(told(story, lane)).toEqual([['late', 1900]]);
});

describe('in whatever order entries arrive', () => {
  const actArb = fc.record({
    is: fc.oneof(
      { weight: 5, arbitrary: fc.constant('splice' as const) },
      { weight: 4, arbitrary: fc.constant('panels' as const) },
      { weight: 3, arbitrary: fc.constantFrom('load', 'exchange', 'correct', 'stop', 'resume') },
    ),
    tablet: fc.constantFrom('T1', 'T2', 'T3'),
    slot: fc.constantFrom(slot, 'M1-R-003'),
    quantity: fc.constantFrom(null, 150, 200, 250, 300, 300, 2000),
    back: fc.nat(3),
    at: fc.integer({ min: 20, max: 20_000 }),
  });

  function tell(
    acts: readonly (typeof actArb extends fc.Arbitrary<infer A> ? A : never)[],
  ): readonly Entry[] {
    const story = beginStory();
    tellPlant(story);
    for (const each of [slot, 'M1-R-003'])
      story.tell('reel.verified', verified(each, 'R-100', { reel: `K-${each}`, quantity: 300 }));
    const start = story.tell('run.started', started('r1'));
    for (const [at, act] of acts.entries()) {
      const telling = { tablet: act.tablet, at: act.at, seen: start };
      const put = story.entries.filter(({ kind }) => kind === 'reel.verified');
      const earlier = put.at(-1 - act.back);
      if (act.is === 'panels') story.tell('panels.counted', counted('r1', 20), telling);
      else if (act.is === 'stop')
        story.tell('run.stopped', { run: 'r1', line: 'L1', reason: 'run-out', note: '' }, telling);
      else if (act.is === 'resume') story.tell('run.resumed', { run: 'r1', line: 'L1' }, telling);
      else if (act.is === 'correct') {
        if (!earlier) continue;
        const of = idOf(earlier);
        story.tell('entry.corrected', { of, line: 'L1', slot: act.slot, reason: 'wrong' }, telling);
      } else {
        const facts = { act: act.is, reel: `K${at}`, quantity: act.quantity, run: 'r1' };
        const replaces = act.is === 'exchange' ? { replaces: earlier ? idOf(earlier) : null } : {};
        story.tell('reel.verified', verified(act.slot, 'R-100', { ...facts, ...replaces }), telling);
      }
    }
    return story.entries;
  }

  /** What was left just before each splice and exchange, from the floor as it was then; of those that stand. */
  function leftThen(entries: readonly Entry[]): ReadonlyMap<string, readonly (number | null)[]> {
    const ordered = [...entries].sort(compareEntries);
    const now = applyAll(emptyState(), ordered);
    const found = new Map<string, readonly (number | null)[]>();
    for (const [at, entry] of ordered.entries()) {
      const { act, slot: on } = entry.payload;
      if ((act !== 'splice' && act !== 'exchange') || now.corrected.has(entryId(entry))) continue;
      const then = applyAll(emptyState(), ordered.slice(0, at));
      const there = then.slots.get(`L1/${String(on)}`);
      const key = `${entry.hlc.ms} ${String(on)}`;
      if (there) found.set(key, [...(found.get(key) ?? []), slotLeft(then, there, 0).parts]);
    }
    return found;
  }

  test('the answer is the same, and nothing is called prevented that had nothing left then', () => {
    let prevented = 0;
    fc.assert(
      fc.property(
        fc.array(actArb, { minLength: 5, maxLength: 30 }).chain((acts) => {
          const entries = tell(acts);
          return fc.tuple(
            fc.constant(entries),
            arrivals(entries),
            fc.shuffledSubarray([...entries], {
              minLength: entries.length,
            }),
          );
        }),
        ([entries, pages, mixed]) => {
          const wanted = cameOn(applyAll(emptyState(), [...entries].sort(compareEntries)), entries);
          expect(cameOn(receive(pages), mixed)).toEqual(wanted);
          const then = leftThen(entries);
          for (const { atMs, slot: on, left, is } of wanted) {
            if (is !== 'prevented') continue;
            prevented += 1;
            expect(then.get(`${atMs} ${on}`)).toContain(left);
            expect(left).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 100 },
    );
    expect(prevented).toBeGreaterThan(50);
  });
});
