// The pieces of the assignment's search, each against plain ways that try everything: small lines only, but every way there is.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spreadLoad } from '../../../shared/assign/balance.ts';
import { build, joinStays, packJob } from '../../../shared/assign/build.ts';
import { fewestChanges, proveAssignment } from '../../../shared/assign/exact.ts';
import { packBlocks } from '../../../shared/assign/pack.ts';
import { type AssignModel, modelOf } from '../../../shared/assign/problem.ts';
import { searchAssignment } from '../../../shared/assign/search.ts';
import { keepSoonest } from '../../../shared/assign/soonest.ts';
import { changesOf, type Stay, usesOf } from '../../../shared/assign/stays.ts';

interface Part {
  readonly width: number;
  /** Jobs that need it, 1 = the first. */
  readonly uses: readonly number[];
  readonly perPanel?: number;
  /** Slot where it stands loaded. */
  readonly at?: string;
}

/** A line with a machine a bank (M1, M2, …), so many jobs, and parts named P0, P1, … */
function modelWith(banks: readonly number[], jobs: number, parts: readonly Part[]): AssignModel {
  const made = modelOf({
    line: {
      machines: banks.map((positions, at) => ({
        machine: `M${at + 1}`,
        banks: [{ bank: 'F', positions }],
      })),
    },
    loaded: parts.flatMap(({ at, width }, index) =>
      at === undefined ? [] : [{ slot: at, part: `P${index}`, width }],
    ),
    jobs: Array.from({ length: jobs }, (_, job) => ({
      id: `J${job + 1}`,
      parts: parts.flatMap(({ uses, width, perPanel = 1 }, index) =>
        uses.includes(job + 1) ? [{ part: `P${index}`, width, perPanel }] : [],
      ),
    })),
  });
  if (!made.ok) throw new Error(`no question: ${made.error.code}`);
  return made.value;
}

const bankAt = (model: AssignModel, start: number) =>
  model.banks.findIndex(({ from, positions }) => start >= from && start < from + positions);

/** Whether stays stand side by side within banks, in every job from their first to their last. */
function standTogether(model: AssignModel, stays: readonly Stay[]): boolean {
  for (let job = 1; job <= model.jobs; job++) {
    const taken = new Set<number>();
    for (const { feeder, uses, start } of stays) {
      if (Math.max(1, uses[0]!) > job || uses.at(-1)! < job) continue;
      const { width } = model.feeders[feeder]!;
      const bank = bankAt(model, start);
      if (bank < 0 || bankAt(model, start + width - 1) !== bank) return false;
      for (let at = start; at < start + width; at++) {
        if (taken.has(at)) return false;
        taken.add(at);
      }
    }
  }
  return stays.every(
    ({ feeder, uses, start }) => uses[0] !== 0 || model.feeders[feeder]!.loadedAt.includes(start),
  );
}

/** Every job's use of every feeder, once each. */
function served(stays: readonly Pick<Stay, 'feeder' | 'uses'>[]): readonly string[] {
  return stays
    .flatMap(({ feeder, uses }) => uses.filter((use) => use > 0).map((use) => `${feeder} in ${use}`))
    .sort();
}
const wanted = (model: AssignModel) => served(model.feeders.map(({ uses }, feeder) => ({ feeder, uses })));

const jobsOf = (jobs: number) =>
  fc.subarray(
    Array.from({ length: jobs }, (_, at) => at + 1),
    { minLength: 1 },
  );
const partsOf = (jobs: number, widths: readonly number[], most: number) =>
  fc.array(
    fc.record({
      width: fc.constantFrom(...widths),
      uses: jobsOf(jobs),
      perPanel: fc.integer({ min: 1, max: 40 }),
    }),
    { minLength: 1, maxLength: most },
  );

/** The parts with some of them loaded from the first slot on, side by side, as far as the first bank reaches. */
function withLoad(
  banks: readonly number[],
  parts: readonly Part[],
  loaded: readonly boolean[],
): readonly Part[] {
  let next = 1;
  return parts.map((part, index) => {
    if (!loaded[index] || next + part.width - 1 > banks[0]!) return part;
    const at = `M1-F-${String(next).padStart(3, '0')}`;
    next += part.width;
    return { ...part, at };
  });
}
const lineOf = fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 1, maxLength: 2 });
const loads = fc.array(fc.boolean(), { minLength: 6, maxLength: 6 });

describe('packJob()', () => {
  /** Whether widths go into banks, every way tried. */
  const goIn = (widths: readonly number[], left: readonly number[]): boolean => {
    const [first, ...rest] = widths;
    if (first === undefined) return true;
    return left.some(
      (room, bank) =>
        room >= first &&
        goIn(
          rest,
          left.map((each, at) => (at === bank ? each - first : each)),
        ),
    );
  };

  test('finds places for feeders in one job exactly where there are some', () => {
    const widths = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 7 });
    const banks = fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(banks, widths, (line, each) => {
        const model = modelWith(
          line,
          1,
          each.map((width) => ({ width, uses: [1] })),
        );
        const starts = packJob(
          model,
          each.map((_, feeder) => feeder),
        );
        expect(starts !== null).toBe(goIn(each, line));
        const stays = [...(starts ?? [])].map(([feeder, start]) => ({ feeder, start, uses: [1] }));
        if (starts !== null) expect(stays).toHaveLength(each.length);
        expect(standTogether(model, stays)).toBe(true);
      }),
      { numRuns: 120 },
    );
  });
});

describe('packBlocks()', () => {
  /** Whether blocks can stand together, every place of every block tried. */
  const canStand = (model: AssignModel, blocks: readonly Pick<Stay, 'feeder' | 'uses'>[]): boolean => {
    const put = (at: number, stays: readonly Stay[]): boolean => {
      const block = blocks[at];
      if (block === undefined) return true;
      for (let start = 0; start < model.length; start++) {
        const next = [...stays, { ...block, start }];
        if (standTogether(model, next) && put(at + 1, next)) return true;
      }
      return false;
    };
    return put(0, []);
  };

  test('finds places for stays over several jobs exactly where there are some', () => {
    fc.assert(
      fc.property(lineOf, partsOf(3, [1, 1, 2, 3], 6), loads, (line, parts, loaded) => {
        const model = modelWith(line, 3, withLoad(line, parts, loaded));
        const blocks = model.feeders.map((feeder, index) => ({ feeder: index, uses: usesOf(feeder) }));
        const packing = packBlocks(model, blocks, 100_000);
        expect(packing).not.toBe('unknown');
        if (typeof packing === 'string') expect(canStand(model, blocks)).toBe(false);
        else
          expect(
            standTogether(
              model,
              blocks.map((block, at) => ({ ...block, start: packing[at]! })),
            ),
          ).toBe(true);
      }),
      { numRuns: 120 },
    );
  });

  test('says that it does not know where its steps are used up', () => {
    const model = modelWith([4], 1, [
      { width: 1, uses: [1] },
      { width: 2, uses: [1] },
    ]);
    const blocks = [0, 1].map((feeder) => ({ feeder, uses: [1] }));
    // One step a block, and one to see that all stand.
    expect(packBlocks(model, blocks, 2)).toBe('unknown');
    expect(packBlocks(model, blocks, 3)).toHaveLength(2);
  });
});

/** The fewest feeders put in where all are one position wide and places do not matter: every choice of what stays, job by job. */
function fewestByRoom(model: AssignModel): number {
  let states = new Map<string, number>([
    [model.feeders.flatMap(({ loadedAt }, at) => (loadedAt.length > 0 ? [at] : [])).join(), 0],
  ]);
  for (let job = 1; job <= model.jobs; job++) {
    const next = new Map<string, number>();
    for (const [key, cost] of states) {
      const standing = key === '' ? [] : key.split(',').map(Number);
      const needed = model.feeders.flatMap(({ uses }, at) => (uses.includes(job) ? [at] : []));
      const idle = standing.filter((at) => !needed.includes(at));
      const put = needed.filter((at) => !standing.includes(at)).length;
      for (let bits = 0; bits < 1 << idle.length; bits++) {
        const kept = idle.filter((_, at) => bits & (1 << at));
        if (kept.length + needed.length > model.capacity) continue;
        const now = [...needed, ...kept].sort((a, b) => a - b).join();
        next.set(now, Math.min(next.get(now) ?? Number.POSITIVE_INFINITY, cost + put));
      }
    }
    states = next;
  }
  return Math.min(...states.values());
}

describe('keepSoonest()', () => {
  test('puts in as few as any way does where all feeders are equally wide', () => {
    fc.assert(
      fc.property(partsOf(5, [1], 6), loads, fc.integer({ min: 0, max: 2 }), (parts, loaded, spare) => {
        const most = Math.max(
          ...[1, 2, 3, 4, 5].map((job) => parts.filter(({ uses }) => uses.includes(job)).length),
        );
        const line = [most + spare];
        const model = modelWith(line, 5, withLoad(line, parts, loaded));
        const { claims, changes, isBound } = keepSoonest(model);
        expect(isBound).toBe(true);
        expect(changes).toBe(fewestByRoom(model));
        expect(changesOf(claims.map((claim) => ({ ...claim, start: 0 })))).toBe(changes);
        expect(fewestChanges(model)).toBeLessThanOrEqual(changes);
        expect(served(claims)).toEqual(wanted(model));
      }),
      { numRuns: 60 },
    );
  });

  test('never keeps more than there is room for, whatever the widths, and is no bound then', () => {
    fc.assert(
      fc.property(partsOf(4, [1, 2, 3], 6), fc.integer({ min: 0, max: 3 }), (parts, spare) => {
        const need = (job: number) =>
          parts.reduce((sum, { uses, width }) => sum + (uses.includes(job) ? width : 0), 0);
        const model = modelWith([Math.max(...[1, 2, 3, 4].map(need)) + spare], 4, parts);
        const { claims, isBound } = keepSoonest(model);
        expect(served(claims)).toEqual(wanted(model));
        expect(isBound).toBe(new Set(parts.map(({ width }) => width)).size === 1);
        for (let job = 1; job <= 4; job++) {
          const stands = claims.filter(({ uses }) => uses[0]! <= job && uses.at(-1)! >= job);
          const taken = stands.reduce((sum, { feeder }) => sum + model.feeders[feeder]!.width, 0);
          expect(taken).toBeLessThanOrEqual(model.capacity);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('keeps of two that are needed next at the same job the narrower one', () => {
    // Job 2 fills two of five positions; P0 (2 wide) and P1 (1 wide) are needed again in job 3, P2 (2 wide) in job 4: 5 − 2 = 3 are left.
    const model = modelWith([5], 4, [
      { width: 2, uses: [1, 3] },
      { width: 1, uses: [1, 3] },
      { width: 2, uses: [1, 4] },
      { width: 2, uses: [2] },
    ]);
    const { claims, changes } = keepSoonest(model);
    expect(claims.filter(({ feeder }) => feeder === 1)).toEqual([{ feeder: 1, uses: [1, 3] }]);
    expect(claims.filter(({ feeder }) => feeder === 0)).toEqual([{ feeder: 0, uses: [1, 3] }]);
    expect(changes).toBe(5);
    const tight = modelWith([4], 3, [
      { width: 3, uses: [1, 3] },
      { width: 1, uses: [1, 3] },
      { width: 2, uses: [2] },
    ]);
    // Two positions are left beside job 2: the wide one must come out, the narrow one stays.
    expect(keepSoonest(tight).claims).toContainEqual({ feeder: 1, uses: [1, 3] });
    expect(keepSoonest(tight).changes).toBe(4);
  });
});

describe('build(), searchAssignment() and joinStays()', () => {
  test('packing a job anew takes no feeder from a job before it', () => {
    // Loaded in the second and fourth of five places, the first two leave three single ones: a wide feeder needs all of job 2 moved.
    const parts = [
      { width: 1, uses: [2], at: 'M1-F-002' },
      { width: 1, uses: [2], at: 'M1-F-004' },
      { width: 2, uses: [2] },
      { width: 1, uses: [1, 2] },
    ];
    const model = modelWith([5], 2, parts);
    const [ofBoth, ...ofSecond] = model.feeders.map((feeder, at) => ({ feeder: at, uses: usesOf(feeder) }));
    expect(ofBoth?.uses).toEqual([1, 2]);
    const stays = build(model, [...ofSecond, ofBoth!])?.stays ?? [];
    expect(served(stays)).toEqual(wanted(model));
    expect(standTogether(model, stays)).toBe(true);
  });

  const cases = fc.tuple(lineOf, partsOf(4, [1, 1, 2, 3], 6), loads);

  test('serve every use once on places that are free, or say that a job does not fit', () => {
    fc.assert(
      fc.property(cases, ([line, parts, loaded]) => {
        const model = modelWith(line, 4, withLoad(line, parts, loaded));
        const feeders = [1, 2, 3, 4].map((job) =>
          model.feeders.flatMap(({ uses }, at) => (uses.includes(job) ? [at] : [])),
        );
        const fits = feeders.every((each) => packJob(model, each) !== null);
        const whole = model.feeders.map((feeder, at) => ({ feeder: at, uses: usesOf(feeder) }));
        const built = build(model, whole);
        const found = searchAssignment(model, keepSoonest(model).claims, 0);
        if (!fits) return;
        for (const stays of [built?.stays ?? [], found ?? []]) {
          expect(served(stays)).toEqual(wanted(model));
          expect(standTogether(model, stays)).toBe(true);
        }
        // The search is never worse than its first try, and the proof never worse than the search.
        const best = changesOf(found ?? []);
        expect(best).toBeLessThanOrEqual(changesOf(built?.stays ?? []));
        const { stays: exact, isProven } = proveAssignment(model, best);
        if (exact !== null) {
          expect(standTogether(model, exact)).toBe(true);
          expect(served(exact)).toEqual(wanted(model));
          expect(changesOf(exact)).toBeLessThan(best);
        }
        if (isProven) expect(fewestChanges(model)).toBeLessThanOrEqual(exact ? changesOf(exact) : best);
      }),
      { numRuns: 25 },
    );
  });

  test('join stays of one feeder on one place where nothing stood between, and begin loaded where it stands', () => {
    const model = modelWith([3], 5, [
      { width: 1, uses: [1, 3, 5], at: 'M1-F-002' },
      { width: 1, uses: [2] },
      { width: 1, uses: [4] },
    ]);
    const own = (start: number, ...uses: number[]) => ({ feeder: 0, uses, start });
    const join = (...stays: Stay[]) =>
      joinStays(model, stays)
        .filter(({ feeder }) => feeder === 0)
        .map(({ uses }) => uses);
    expect(join(own(1, 1), own(1, 3), own(1, 5))).toEqual([[0, 1, 3, 5]]);
    expect(join(own(0, 1), own(0, 3), own(0, 5))).toEqual([[1, 3, 5]]);
    expect(join(own(1, 0, 1), own(1, 3), own(2, 5))).toEqual([[0, 1, 3], [5]]);
    // Another stood there meanwhile.
    expect(join(own(1, 1), own(1, 3), { feeder: 1, uses: [2], start: 1 })).toEqual([[0, 1], [3]]);
    expect(join(own(0, 3), own(0, 5), { feeder: 2, uses: [4], start: 0 })).toEqual([[3], [5]]);
    // It was put in elsewhere first: the one that stands loaded still does.
    expect(join(own(0, 1), own(1, 3))).toEqual([[1], [0, 3]]);
    expect(join(own(1, 3), { feeder: 1, uses: [2], start: 1 })).toEqual([[3]]);
    expect(join(own(1, 5), own(1, 1))).toEqual([[0, 1, 5]]);
  });
});

describe('spreadLoad()', () => {
  const stayOf = (feeder: number, start: number, uses: readonly number[] = [1]) => ({ feeder, uses, start });

  test('brings two machines together: 40 + 10 against 2 + 1 placements a panel become 41 against 12', () => {
    const parts = [40, 10, 2, 1].map((perPanel) => ({ width: 1, uses: [1], perPanel }));
    const model = modelWith([2, 2], 1, parts);
    // Places 0 and 1 are the first machine's, 3 and 4 the second's.
    const spread = spreadLoad(model, [stayOf(0, 0), stayOf(1, 1), stayOf(2, 3), stayOf(3, 4)]);
    const onFirst = spread.filter(({ start }) => start < 2).map(({ feeder }) => parts[feeder]!.perPanel);
    expect([41, 12]).toContain(onFirst.reduce((sum, each) => sum + each, 0));
  });

  test('leaves what is loaded, of another width or of other jobs where it stands, and no swap would help any more', () => {
    fc.assert(
      fc.property(partsOf(2, [1, 1, 2], 6), loads, (parts, loaded) => {
        const line = [6, 6];
        const model = modelWith(line, 2, withLoad(line, parts, loaded));
        const built = build(
          model,
          model.feeders.map((feeder, at) => ({ feeder: at, uses: usesOf(feeder) })),
        );
        const given = built?.stays ?? [];
        const spread = spreadLoad(model, given);
        expect(standTogether(model, spread)).toBe(true);
        expect(served(spread)).toEqual(served(given));
        expect(changesOf(spread)).toBe(changesOf(given));
        const weight = ({ feeder, uses }: Stay) => model.feeders[feeder]!.perPanel * uses.length;
        const load = [0, 1].map((bank) =>
          spread.reduce((sum, stay) => sum + (bankAt(model, stay.start) === bank ? weight(stay) : 0), 0),
        );
        const kindOf = ({ feeder, uses }: Stay) =>
          `${model.feeders[feeder]!.width} ${uses[0]} ${uses.at(-1)}`;
        for (const [at, a] of spread.entries()) {
          if (a.uses[0] === 0) expect(a).toEqual(given[at]);
          for (const b of spread) {
            if (a.uses[0] === 0 || b.uses[0] === 0 || kindOf(a) !== kindOf(b)) continue;
            const [from, to] = [bankAt(model, a.start), bankAt(model, b.start)];
            const more = weight(a) - weight(b);
            if (from !== to && more > 0) expect(load[from]! - load[to]!).toBeLessThanOrEqual(more);
          }
        }
      }),
      { numRuns: 80 },
    );
  });
});
