// A changeover that one tablet cancels and another releases, as neither has heard of the other.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeInConflict } from '../../../shared/floor/dropped-change.ts';
import { applyAll } from '../../../shared/floor/fold.ts';
import { emptyState } from '../../../shared/floor/state.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { compareEntries } from '../../../shared/log/order.ts';
import { arrivals, receive, textOf } from './arrivals.ts';
import { payloadExamples } from './examples.ts';
import { beginStory, brookSetup, idOf, type Story, started, startMs, tellPlant } from './story.ts';

const line = 'L1';
const next = { line, from: 'brook-top-a', setup: 'brook-top-b', product: 'Brook', lastPanel: null };
const changes = ['ch-1', 'ch-2'] as const;

function begin(): Story {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', { ...brookSetup, setup: 'brook-top-b', revision: 'B' });
  story.tell('changeover.began', { changeover: 'ch-1', ...next }, { at: 60 });
  return story;
}

const drop = (story: Story, at: number, tablet: string) =>
  story.tell('changeover.dropped', { changeover: 'ch-1', line, reason: '' }, { at, tablet });
const release = (story: Story, at: number, tablet: string) =>
  story.tell('changeover.released', { changeover: 'ch-1', line, by: 'lea', reason: '' }, { at, tablet });

/** Cancelled on one tablet and released on another, two minutes later; what the second one did before it is there too. */
function both() {
  const story = begin();
  const dropped = drop(story, 600, 'T1');
  story.tell('setup.chosen', { line, setup: 'brook-top-b' }, { at: 660, tablet: 'T2' });
  const measured = { ...payloadExamples['panel.measured'], changeover: 'ch-1', slot: 'M1-F-001' };
  story.tell('panel.measured', measured, { at: 700, tablet: 'T2' });
  const released = release(story, 720, 'T2');
  return { story, dropped: idOf(dropped), released: idOf(released) };
}

const settled = (conflict: string, keep: string | null) => ({
  conflict,
  line,
  slot: null,
  keep,
  reason: 'asked both',
  by: 'lea',
});

describe('a changeover that is cancelled and released', () => {
  test('counts as released, with what was measured for it, and both entries are told', () => {
    const { story, dropped, released } = both();
    const floor = story.floor();
    const there = floor.changeovers.get('ch-1');
    expect(there).toMatchObject({ releasedMs: startMs + 720_000, releasedBy: 'lea', released });
    expect(there?.dropped).toEqual({ entry: dropped, atMs: startMs + 600_000 });
    expect(there?.measured).toHaveLength(1);
    expect(floor.chosen.get(line)).toBe('brook-top-b');
    expect(floor.changing.size).toBe(0);
    const told = [...floor.conflicts.values()];
    expect(told).toMatchObject([
      { kind: 'released-though-dropped', line, lines: [line], slots: [], entries: [dropped, released] },
    ]);
    expect(told[0] && changeInConflict(floor, told[0])?.product).toBe('Brook');
  });

  test('is told in the other order too', () => {
    const story = begin();
    const [released, dropped] = [release(story, 600, 'T2'), drop(story, 720, 'T1')].map(idOf);
    const floor = story.floor();
    expect(floor.changeovers.get('ch-1')).toMatchObject({ releasedMs: startMs + 600_000, released });
    expect([...floor.conflicts.values()]).toMatchObject([{ entries: [released, dropped] }]);
  });

  test('stays out of the way of the changeover that was begun after it was cancelled', () => {
    const story = begin();
    drop(story, 600, 'T1');
    story.tell('changeover.began', { changeover: 'ch-2', ...next }, { at: 660 });
    release(story, 720, 'T2');
    expect(story.floor().changing.get(line)).toBe('ch-2');
  });

  test('is what the lead says, and is told no more', () => {
    const { story, dropped, released } = both();
    const [conflict = ''] = story.floor().conflicts.keys();
    const said = (keep: string | null) => {
      const again = both().story;
      again.tell('conflict.settled', settled(conflict, keep), { at: 900, who: 'lea' });
      const floor = again.floor();
      expect(floor.conflicts.size).toBe(0);
      expect(floor.chosen.get(line)).toBe('brook-top-b');
      return floor.changeovers.get('ch-1');
    };
    expect(said(released)).toMatchObject({ released, dropped: null });
    expect(said(dropped)).toMatchObject({ released: null, releasedMs: null, releasedBy: null });
    expect(said(dropped)?.dropped?.entry).toBe(dropped);
    expect(said(null)).toEqual(story.floor().changeovers.get('ch-1'));
  });
});

test("a lead's word stands in every order of arrival, whatever was cancelled or released before it and arrives late", () => {
  const acts = fc.array(
    fc.record({
      is: fc.constantFrom(drop, release),
      tablet: fc.constantFrom('T1', 'T2', 'T3'),
      at: fc.integer({ min: 500, max: 900 }),
    }),
    { maxLength: 4 },
  );
  let renamed = 0;
  fc.assert(
    fc.property(
      acts.chain((late) => {
        const story = begin();
        drop(story, 600, 'T1');
        release(story, 720, 'T2');
        const [conflict] = story.floor().conflicts.values();
        const seen = [...story.entries];
        return fc.constantFrom(0, 1).chain((at) => {
          const keep = conflict?.entries[at] ?? '';
          const said = settled(conflict?.conflict ?? '', keep);
          story.tell('conflict.settled', said, { at: 1000, tablet: 'T4', who: 'lea' });
          const isRelease = seen.some(
            (entry) => idOf(entry) === keep && entry.kind === 'changeover.released',
          );
          for (const { is, tablet, at: second } of late) is(story, second, `${tablet}-late`);
          const entries = [...story.entries].sort(compareEntries);
          return fc.tuple(fc.constant(isRelease), fc.constant(entries), arrivals(entries));
        });
      }),
      ([isRelease, entries, pages]) => {
        const floor = receive(pages);
        expect(textOf(floor)).toBe(textOf(applyAll(emptyState(), entries)));
        const there = floor.changeovers.get('ch-1');
        expect(floor.conflicts.size).toBe(0);
        expect(there?.releasedMs !== null).toBe(isRelease);
        expect(there?.dropped !== null).toBe(!isRelease);
        if (entries.some(({ tablet }) => tablet.endsWith('-late'))) renamed += 1;
      },
    ),
    { numRuns: 200 },
  );
  expect(renamed).toBeGreaterThan(50);
});

test('a correction that names the release or the cancelling undoes nothing, and the contradiction stays', () => {
  for (const which of ['dropped', 'released'] as const) {
    const told = both();
    const before = told.story.floor();
    told.story.tell('entry.corrected', { of: told[which], line, slot: null, reason: 'wrong' }, { at: 900 });
    const after = told.story.floor();
    expect([...after.conflicts]).toEqual([...before.conflicts]);
    expect(after.conflicts.size).toBe(1);
    expect(after.changeovers).toEqual(before.changeovers);
  }
});

const actArb = fc.record({
  is: fc.constantFrom('drop', 'drop', 'release', 'release', 'begin', 'choose', 'run', 'end', 'measure'),
  tablet: fc.constantFrom('T1', 'T2', 'T3'),
  change: fc.constantFrom(...changes),
  setup: fc.constantFrom('brook-top-a', 'brook-top-b'),
  at: fc.integer({ min: 20, max: 60 }),
});
type Act = typeof actArb extends fc.Arbitrary<infer A> ? A : never;

/** Entries of three tablets, in folding order. */
function tell(acts: readonly Act[]): readonly Entry[] {
  const story = beginStory();
  tellPlant(story);
  story.tell('setup.taken', { ...brookSetup, setup: 'brook-top-b', revision: 'B' });
  const seen = story.tell('changeover.began', { changeover: 'ch-1', ...next }, { at: 19 });
  for (const [at, { is, tablet, change: changeover, setup, at: second }] of acts.entries()) {
    const telling = { tablet, at: second, seen };
    const measured = { ...payloadExamples['panel.measured'], changeover, slot: 'M1-F-001' };
    const told: Readonly<Record<Act['is'], () => void>> = {
      drop: () => story.tell('changeover.dropped', { changeover, line, reason: '' }, telling),
      release: () => story.tell('changeover.released', { changeover, line, by: 'lea', reason: '' }, telling),
      begin: () => story.tell('changeover.began', { changeover, ...next }, telling),
      choose: () => story.tell('setup.chosen', { line, setup }, telling),
      run: () => story.tell('run.started', started(`r${at}`), telling),
      end: () =>
        story.tell('run.ended', { run: `r${Math.max(0, at - 1)}`, line, panels: 0, note: '' }, telling),
      measure: () => story.tell('panel.measured', measured, telling),
    };
    told[is]();
  }
  return [...story.entries].sort(compareEntries);
}

test('in every order of arrival both facts stay, a lead sees them, and setup and run are those of their own entries', () => {
  let told = 0;
  fc.assert(
    fc.property(
      fc.array(actArb, { minLength: 1, maxLength: 25 }).chain((acts) => {
        const entries = tell(acts);
        return fc.tuple(fc.constant(entries), arrivals(entries), arrivals(entries));
      }),
      ([entries, one, two]) => {
        const floor = applyAll(emptyState(), entries);
        for (const pages of [one, two]) expect(textOf(receive(pages))).toBe(textOf(floor));
        for (const changeover of changes) {
          const of = (kind: Entry['kind']) =>
            entries.filter((entry) => entry.kind === kind && entry.payload['changeover'] === changeover);
          const [began] = of('changeover.began');
          const since = (kind: Entry['kind']) =>
            of(kind).filter((entry) => began !== undefined && compareEntries(entry, began) > 0);
          const [released, dropped] = [since('changeover.released')[0], since('changeover.dropped')[0]];
          const there = floor.changeovers.get(changeover);
          expect(there?.released ?? null).toBe(released ? idOf(released) : null);
          expect(there?.dropped?.entry ?? null).toBe(dropped ? idOf(dropped) : null);
          expect((there?.measured.length ?? 0) > 0).toBe(since('panel.measured').length > 0);
          const conflicts = [...floor.conflicts.values()].filter(
            (conflict) => changeInConflict(floor, conflict)?.changeover === changeover,
          );
          expect(conflicts).toHaveLength(released && dropped ? 1 : 0);
          told += conflicts.length;
        }
        const isOver = ({ kind }: Entry) => kind === 'changeover.dropped' || kind === 'changeover.released';
        const alone = applyAll(
          emptyState(),
          entries.filter((entry) => !isOver(entry)),
        );
        expect([...floor.chosen]).toEqual([...alone.chosen]);
        expect([...floor.current]).toEqual([...alone.current]);
        expect([...floor.runs]).toEqual([...alone.runs]);
      },
    ),
    { numRuns: 200 },
  );
  expect(told).toBeGreaterThan(20);
});
