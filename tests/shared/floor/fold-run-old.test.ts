// What a plant's age leaves in the state of runs that ended long ago: little, and nothing that is wrong.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAll } from '../../../shared/floor/fold.ts';
import { createReplica, foldIn, type Replica, snapshotOf } from '../../../shared/floor/replica.ts';
import { emptyState, type FloorState, type Run } from '../../../shared/floor/state.ts';
import { tallyOf } from '../../../shared/floor/tally.ts';
import { packClosely, unpackValue } from '../../../shared/kit/pack.ts';
import { type Entry, entryId } from '../../../shared/log/entry.ts';
import { compareEntries, compareText } from '../../../shared/log/order.ts';
import { lagAt } from '../../../shared/trace/line.ts';
import { beginStory, counted, type Story, started, startMs, tellPlant } from './story.ts';

const day = 86_400;
const panels = 5;

/** So many runs, `gap` seconds from start to start, each with some panels counted one by one and one of them taken off again. */
function played(runs: number, gap: number, each = panels): Story {
  const story = beginStory();
  tellPlant(story);
  for (let number = 1; number <= runs; number++) {
    const at = 100 + number * gap;
    const run = `run-${number}`;
    story.tell('run.started', started(run), { at });
    for (let panel = 1; panel <= each; panel++)
      story.tell('panels.counted', counted(run, 1), { at: at + panel });
    story.tell('panels.counted', counted(run, -1), { at: at + each + 5 });
    story.tell('run.ended', { run, line: 'L1', panels: each - 1, note: '' }, { at: at + each + 15 });
  }
  return story;
}

const runIn = (floor: FloorState, number: number): Run => {
  const run = floor.runs.get(`run-${number}`);
  if (!run) throw new Error(`no run ${number}`);
  return run;
};
const countsKept = (floor: FloorState, number: number) => runIn(floor, number).counts.length;

describe('runs that ended long ago', () => {
  test('keep the newest count and the newest that added, and all that is asked of them later', () => {
    const story = played(40, day);
    const floor = story.floor();
    expect([1, 15, 16, 40].map((number) => countsKept(floor, number))).toEqual([2, 2, 6, 6]);
    const old = runIn(floor, 3);
    expect(old).toMatchObject({ done: panels - 1, phase: 'ended', said: [] });
    expect(tallyOf(old)).toBe(panels);
    const endMs = startMs + (100 + 3 * day + 20) * 1000;
    expect(old.counts.map(([, ms, add]) => [ms - endMs, add])).toEqual([
      [-15_000, 1],
      [-10_000, -1],
    ]);
    expect(lagAt(floor, 'L1', endMs - 15_000)).toBe(0);
  });

  test('stay the records that they are once their counts are gone', () => {
    const story = played(40, day);
    const replica = createReplica();
    foldIn(replica, story.entries);
    const before = replica.state.runs.get('run-3');
    foldIn(replica, [story.tell('run.started', started('next'))]);
    expect(replica.state.runs.get('run-3')).toBe(before);
    expect(countsKept(replica.state, 16)).toBe(2);
  });

  test('keep all counts where many runs are short, and where a clock ran ahead', () => {
    const short = played(40, 600).floor();
    expect([1, 40].map((number) => countsKept(short, number))).toEqual([6, 6]);
    const ahead = played(20, 600);
    ahead.tell('run.started', started('ahead'), { at: 4000 * day });
    expect(countsKept(ahead.floor(), 1)).toBe(6);
  });

  test('have a count taken back while they keep it, and stand as they are after that', () => {
    const story = played(40, day);
    const takeBack = (number: number) => {
      const first = story.entries.find(
        ({ kind, payload }) => kind === 'panels.counted' && payload['run'] === `run-${number}`,
      );
      if (!first) throw new Error(`nothing counted in run ${number}`);
      story.tell('entry.corrected', { of: entryId(first), line: 'L1', slot: null, reason: 'slip' });
      return runIn(story.floor(), number).done;
    };
    expect(takeBack(39)).toBe(panels - 2);
    expect(takeBack(3)).toBe(panels - 1);
  });

  test('stand alike wherever entries come in whatever order', () => {
    const story = played(40, day);
    const late = createReplica();
    const held = story.entries.filter((_, at) => at % 7 === 3);
    foldIn(
      late,
      story.entries.filter((_, at) => at % 7 !== 3),
    );
    expect(foldIn(late, held)).toBe(true);
    expect(late.state).toEqual(story.floor());
  });

  test('are the same whatever place they have in the state: the server reads its own back in the order of names', () => {
    const story = played(40, day);
    const inStarts = story.floor();
    const inNames: FloorState = {
      ...story.floor(),
      runs: new Map([...inStarts.runs].sort(([a], [b]) => compareText(b, a))),
    };
    const next = story.tell('run.started', started('next'));
    for (const state of [inStarts, inNames]) applyAll(state, [next]);
    expect(countsKept(inStarts, 16)).toBe(2);
    for (const [name, run] of inStarts.runs) expect(inNames.runs.get(name), name).toEqual(run);
  });

  test('stand as the whole log folded at once says, whatever comes late, in pieces, and over a handed state', () => {
    const runs = 36;
    let thinned = 0;
    let replayed = 0;
    const moment = fc.tuple(fc.nat(runs), fc.nat(day), fc.nat(4));
    fc.assert(
      fc.property(
        fc.array(moment, { maxLength: 25 }),
        fc.array(fc.record({ size: fc.integer({ min: 1, max: 120 }), late: fc.nat(3), start: fc.nat(9) }), {
          minLength: 5,
          maxLength: 40,
        }),
        (others, pieces) => {
          const all = withOthers(played(runs, day, 20), others);
          const whole = applyAll(emptyState(), all);
          thinned += [...whole.runs.values()].filter(({ counts, done }) => counts.length < done).length;
          const { state, anew } = foldedInPieces(all, pieces);
          replayed += anew;
          expect(state).toEqual(whole);
          expect([...state.runs.keys()]).toEqual([...whole.runs.keys()]);
        },
      ),
      { numRuns: 25 },
    );
    expect(thinned).toBeGreaterThan(100);
    expect(replayed).toBeGreaterThan(0);
  });
});

/** Entries of another tablet around a story's runs: late counts of old ones, some taken back, scrapped panels. */
function withOthers(story: Story, others: readonly (readonly [number, number, number])[]): readonly Entry[] {
  const own = [...story.entries];
  const counts = own.filter(({ kind }) => kind === 'panels.counted');
  for (const [number, after, what] of [...others].sort(([a, b], [c, d]) => a - c || b - d)) {
    const run = `run-${Math.max(1, (number * (after + 1)) % (number + 1))}`;
    const telling = { tablet: 'T2', at: 100 + number * day + after };
    const of = counts[(number * 7 + after) % counts.length];
    if (what === 0 && of)
      story.tell('entry.corrected', { of: entryId(of), line: 'L1', slot: null, reason: 'slip' }, telling);
    else if (what === 1)
      story.tell(
        'panels.scrapped',
        { run, line: 'L1', panels: 1, serial: null, note: '', via: 'typed' },
        telling,
      );
    else story.tell('panels.counted', counted(run, what - 1), telling);
  }
  return [...story.entries].sort(compareEntries);
}

/** The state where entries come piece by piece, some of them late, some of the starts from a state that was handed over. */
function foldedInPieces(
  all: readonly Entry[],
  pieces: readonly { readonly size: number; readonly late: number; readonly start: number }[],
): { readonly state: FloorState; readonly anew: number } {
  let replica: Replica = createReplica();
  let anew = 0;
  let held: Entry[] = [];
  const here: Entry[] = [];
  const take = (entries: readonly Entry[]) => {
    here.push(...entries);
    if (foldIn(replica, entries)) return;
    anew += 1;
    replica = createReplica();
    foldIn(replica, here);
  };
  let from = 0;
  for (const { size, late, start } of pieces) {
    const piece = all.slice(from, from + size);
    from += size;
    take([...piece.filter((_, at) => at % 5 > late), ...held]);
    held = piece.filter((_, at) => at % 5 <= late);
    const snapshot = start === 0 ? snapshotOf(replica) : null;
    if (snapshot) {
      const state = unpackValue(JSON.parse(JSON.stringify(packClosely(snapshot.state)))) as FloorState; // packed here
      replica = createReplica({ ...snapshot, state });
    }
  }
  take([...all.slice(from), ...held]);
  return { state: replica.state, anew };
}
