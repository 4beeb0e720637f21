// How the search for places goes: the same way every time, and through no more steps than it takes. Whoever changes a way on purpose measures
// it on the bench first and writes it anew here.

import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { assignSlots } from '../../../shared/assign/assign.ts';
import { build, packJob } from '../../../shared/assign/build.ts';
import { fewestChanges, isSmallEnough, proveAssignment } from '../../../shared/assign/exact.ts';
import { packBlocks } from '../../../shared/assign/pack.ts';
import { type AssignModel, type AssignQuestion, modelOf } from '../../../shared/assign/problem.ts';
import { searchAssignment } from '../../../shared/assign/search.ts';
import { keepSoonest } from '../../../shared/assign/soonest.ts';
import { changesOf, type Stay, usesOf } from '../../../shared/assign/stays.ts';
import { type Chance, chanceBelow, seededChance } from '../../../shared/kit/chance.ts';
import { smallCase } from './cases.ts';

interface Drawn {
  /** Positions of each bank; two banks a machine. */
  readonly banks: readonly number[];
  readonly jobs: number;
  readonly parts: number;
  /** Chance that a job needs a part. */
  readonly share: number;
  readonly widths?: readonly number[];
  /** How many parts are loaded, from the first slots on. */
  readonly loaded?: number;
}

function questionBy(seed: number, how: Drawn): AssignQuestion {
  const chance = seededChance(seed);
  const { banks, jobs, widths = [1, 1, 2, 3], loaded = 0 } = how;
  const parts = Array.from({ length: how.parts }, (_, at) => ({
    part: `P${at}`,
    width: widths[chanceBelow(chance, widths.length)]!,
    perPanel: 1 + chanceBelow(chance, 40),
  }));
  const room = banks.reduce((sum, positions) => sum + positions, 0) - banks.length;
  const machines = Array.from({ length: Math.ceil(banks.length / 2) }, (_, m) => ({
    machine: `M${m + 1}`,
    banks: banks.slice(2 * m, 2 * m + 2).map((positions, b) => ({ bank: 'FR'[b]!, positions })),
  }));
  return {
    line: { machines },
    loaded: loadOf(parts.slice(0, loaded), banks[0]!),
    jobs: Array.from({ length: jobs }, (_, at) => ({
      id: `J${at + 1}`,
      parts: jobParts(chance, parts, how.share, room),
    })),
  };
}

function loadOf(parts: readonly { readonly part: string; readonly width: number }[], positions: number) {
  let next = 1;
  return parts.flatMap(({ part, width }) => {
    const slot = `M1-F-${String(next).padStart(3, '0')}`;
    if (next + width - 1 > positions) return [];
    next += width;
    return [{ slot, part, width }];
  });
}

function jobParts<T extends { readonly width: number }>(
  chance: Chance,
  parts: readonly T[],
  share: number,
  room: number,
): T[] {
  let left = room;
  return parts.filter(({ width }) => {
    if (chance() >= share || width > left) return false;
    left -= width;
    return true;
  });
}

function modelBy(seed: number, how: Drawn): AssignModel {
  const made = modelOf(questionBy(seed, how));
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

const whole = (model: AssignModel) =>
  model.feeders.map((feeder, at) => ({ feeder: at, uses: usesOf(feeder) }));
/** `2:013@5`: feeder 2 in jobs 1 and 3, loaded before, from position 5 on. */
const written = (stays: readonly Stay[]) =>
  stays.map(({ feeder, uses, start }) => `${feeder}:${uses.join('')}@${start}`).join(' ');

/** Long texts are kept by their beginning and a sum over all of it. */
const short = (text: string) =>
  text.length <= 100
    ? text
    : `${text.slice(0, 60)}… ${createHash('sha256').update(text).digest('hex').slice(0, 8)}`;

/** The fewest steps with which something is known. */
function stepsFor(isKnown: (steps: number) => boolean, most: number): number {
  let low = 0;
  let high = most;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (isKnown(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const tight: Drawn = { banks: [6], jobs: 4, parts: 7, share: 0.5 };
const two: Drawn = { banks: [5, 5], jobs: 4, parts: 9, share: 0.5 };
const three: Drawn = { banks: [5, 4, 5], jobs: 4, parts: 12, share: 0.5, loaded: 3 };
const even: Drawn = { banks: [4, 4], jobs: 5, parts: 9, share: 0.5, widths: [1], loaded: 2 };
const larger: Drawn = {
  banks: [10, 10, 10],
  jobs: 6,
  parts: 26,
  share: 0.5,
  widths: [1, 1, 2, 2, 3],
  loaded: 4,
};
/** So much in jobs that not all of it finds places, one stay a feeder. */
const crowded: Drawn = { banks: [5, 5, 5], jobs: 3, parts: 9, share: 0.8, widths: [2, 3] };
const crowds = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => modelBy(seed, { ...crowded, loaded: seed % 2 }));
const all = [tight, two, three, even];
const seeds = [1, 2, 3, 4, 5];
const small = all.flatMap((how) => seeds.map((seed) => modelBy(seed, how)));

describe('packJob()', () => {
  test('puts the widest first where it leaves least', () => {
    const packed = small.map((model) =>
      [
        ...(packJob(
          model,
          model.feeders.map((_, at) => at).filter((at) => model.feeders[at]!.uses.includes(1)),
        ) ?? []),
      ]
        .map(([feeder, start]) => `${feeder}@${start}`)
        .join(' '),
    );
    expect(packed).toEqual([
      '0@0 1@2 2@4',
      '2@0 0@3 1@4',
      '0@0 1@3',
      '0@0 1@1',
      '0@0 2@2 1@4',
      '1@0 0@3 2@6 3@8',
      '2@0 3@6 0@3 1@4',
      '2@0 0@3 1@6',
      '1@0 2@2 0@4',
      '2@0 1@3 3@6 0@8',
      '0@6 1@0 2@9 3@2',
      '1@6 2@0 0@3 4@11 3@9',
      '3@6 2@0 5@2 0@4 1@9 4@11',
      '0@6 3@0 2@3 4@11 1@9',
      '3@6 4@0 0@3 1@9 2@11 5@12',
      '0@0 1@1 2@2 3@3 4@5 5@6',
      '0@0 1@1 2@2 3@3 4@5 5@6',
      '0@0 1@1 2@2',
      '0@0 1@1 2@2',
      '0@0 1@1 2@2 3@3 4@5 5@6',
    ]);
  });

  test('tries other banks where the first that fits is none in the end', () => {
    // 3 + 2 + 2 + 2 + 1 in banks of five and five: beside the three stands a two.
    const [model] = [modelBy(1, { ...two, jobs: 1, share: 1, parts: 0 })];
    const feeders = [3, 2, 2, 2, 1].map((width, at) => ({
      part: `Q${at}`,
      width,
      uses: [1],
      loadedAt: [],
      perPanel: 1,
    }));
    const starts = packJob({ ...model!, feeders }, [0, 1, 2, 3, 4]);
    expect([...(starts ?? [])]).toEqual([
      [0, 0],
      [1, 3],
      [2, 6],
      [3, 8],
      [4, 10],
    ]);
    expect(
      packJob({ ...model!, feeders: feeders.map((feeder) => ({ ...feeder, width: 3 })) }, [0, 1, 2]),
    ).toBeNull();
  });
});

describe('packBlocks()', () => {
  test('finds the same places, in few steps', () => {
    const found = [...small, ...crowds].map((model) => {
      const steps = stepsFor((most) => packBlocks(model, whole(model), most) !== 'unknown', 20_000);
      const packing = packBlocks(model, whole(model), steps);
      return `${steps} ${typeof packing === 'string' ? packing : packing.join(' ')}`;
    });
    expect(found).toEqual([
      '6 2 0 4 5 2',
      '73 none',
      '4 0 3 3',
      '5 4 3 0 5',
      '5 0 4 2 5',
      '8 3 0 6 8 9 6 8',
      '9 4 3 0 6 6 3 3 6',
      '10 3 6 0 6 7 8 3 0 3',
      '9 10 3 6 0 8 9 0 6',
      '9 10 0 6 3 9 0 6 8',
      '10 2 6 8 9 0 12 8 11 0',
      '20 none',
      '12 2 9 11 6 15 3 13 0 2 11 0',
      '29 none',
      '19 none',
      '9 0 3 6 7 5 2 8 1',
      '10 1 2 3 6 5 7 8 1 0',
      '10 0 3 2 1 0 6 5 3 2',
      '10 7 2 5 0 1 6 3 5 1',
      '119 none',
      '14 none',
      '9 12 9 0 6 3 12 6 12',
      '7 0 3 6 9 12 14',
      '7 0 3 6 12 9 12',
      '9 0 9 3 6 15 6 12 12',
      '49 none',
      '8 0 2 6 9 12 12 15',
      '6 3 9 0 6 12',
    ]);
  });
});

describe('proveAssignment()', () => {
  test('is sure after few steps, finds the same places, and is not sure a step before', () => {
    const found = small.map((model) => {
      const steps = stepsFor((most) => proveAssignment(model, 99, most).isProven, 200_000);
      const { stays, isProven } = proveAssignment(model, 99, steps);
      const before = proveAssignment(model, 99, steps - 1);
      expect([isProven, before.isProven]).toEqual([true, false]);
      const changes = changesOf(stays ?? []);
      const none = stepsFor((most) => proveAssignment(model, changes, most).isProven, 200_000);
      expect(proveAssignment(model, changes).stays).toBeNull();
      return `${steps} ${none} ${changes}/${fewestChanges(model)} ${written(stays ?? [])}`;
    });
    expect(found).toEqual([
      '7 1 5/5 0:12@2 1:124@0 2:14@4 3:23@5 4:34@2',
      '9 1 6/6 0:123@4 1:1234@3 2:1@0 3:2@0 3:4@0 4:3@0',
      '5 1 3/3 0:123@0 1:12@3 2:34@3',
      '6 1 4/4 0:13@4 1:124@3 2:234@0 3:234@5',
      '6 1 4/4 0:1234@0 1:134@4 2:123@2 3:2@5',
      '9 1 7/7 0:1234@3 1:134@0 2:13@6 3:123@8 4:2@9 5:4@6 6:4@8',
      '10 1 8/8 0:1@4 1:12@3 2:1234@0 3:1@6 4:23@6 5:3@3 6:4@3 7:4@6',
      '11 1 9/9 0:1@3 1:1@6 2:123@0 3:24@6 4:24@7 5:2@8 6:23@3 7:4@0 8:4@3',
      '10 1 8/8 0:12@10 1:134@3 2:123@6 3:23@0 4:24@8 5:234@9 6:4@0 7:4@6',
      '10 1 8/8 0:12@10 1:1@0 2:12@6 3:14@3 4:24@9 5:24@0 6:3@6 7:34@8',
      '11 1 8/8 0:1234@2 1:124@6 2:1@8 3:12@9 4:02@0 5:2@12 6:234@8 7:23@11 8:4@0',
      '627 211 10/9 0:01@0 1:12@2 2:1@6 2:4@0 3:14@9 4:12@14 5:24@6 6:23@11 7:34@3 8:3@0 9:4@11',
      '13 1 9/9 0:01@2 1:14@9 2:12@11 3:124@6 4:14@15 5:124@3 6:2@13 7:03@0 8:3@2 9:3@11 10:4@0',
      '14 1 8/8 0:012@0 1:1@9 2:124@11 3:1@6 3:34@0 4:123@13 5:0234@4 6:2@6 7:034@3 8:3@6 9:4@6',
      '13 1 7/7 0:0124@0 1:013@2 2:014@3 3:134@6 4:1@11 4:4@11 5:123@4 6:24@9 7:3@11 8:3@13',
      '10 1 6/6 0:012345@0 1:134@3 2:13@6 3:123@7 4:134@5 5:145@2 6:23@8 7:04@1',
      '11 1 7/7 0:01@1 1:125@2 2:1234@3 3:12@6 4:14@5 5:12@7 6:23@8 7:235@1 8:04@0',
      '11 1 7/7 0:01@0 1:1@3 2:123@2 3:024@1 4:24@0 5:2@6 6:23@5 7:24@3 8:45@2',
      '11 1 7/7 0:12@7 1:134@2 2:123@5 3:0235@0 4:024@1 5:234@6 6:245@3 7:45@5 8:5@1',
      '13 1 8/8 0:12@8 1:1@7 1:5@6 2:125@2 3:145@3 4:1234@6 5:125@5 6:0245@1 7:24@7 8:035@0',
    ]);
  });

  test('is for few gaps and short banks', () => {
    const withJobs = (jobs: number, parts: number) =>
      modelBy(1, { banks: [30], jobs, parts, share: 1, widths: [1] });
    // A part that each of 16 jobs needs has 15 gaps.
    expect([withJobs(16, 4), withJobs(16, 5)].map(isSmallEnough)).toEqual([true, false]);
    const long = (positions: number) => modelBy(1, { ...tight, banks: [3, positions] });
    expect([long(30), long(31)].map(isSmallEnough)).toEqual([true, false]);
  });
});

describe('build(), keepSoonest() and searchAssignment()', () => {
  const models = [...small, ...[1, 2].map((seed) => modelBy(seed, larger))];

  test('cut the same uses', () => {
    const cut = models.map((model) => {
      const { claims, changes } = keepSoonest(model);
      return short(`${changes} ${claims.map(({ feeder, uses }) => `${feeder}:${uses.join('')}`).join(' ')}`);
    });
    expect(cut).toEqual([
      '5 0:12 3:23 1:124 2:14 4:34',
      '6 2:1 3:2 0:123 4:3 1:1234 3:4',
      '3 1:12 0:123 2:34',
      '4 0:13 1:124 2:234 3:234',
      '4 3:2 2:123 0:1234 1:134',
      '7 4:2 3:123 2:13 0:1234 1:134 5:4 6:4',
      '8 0:1 3:1 1:12 5:3 4:23 2:1234 6:4 7:4',
      '9 1:1 0:1 5:2 6:23 2:123 3:24 4:24 7:4 8:4',
      '8 0:12 2:123 3:23 1:134 4:24 5:234 6:4 7:4',
      '8 1:1 0:12 2:12 6:3 3:14 4:24 5:24 7:34',
      '8 2:1 3:12 5:2 4:02 7:23 0:1234 1:124 6:234 8:4',
      '9 2:1 0:01 4:12 1:12 8:3 6:23 7:034 3:14 5:24 2:4 9:4',
      '9 0:01 2:12 6:2 8:3 9:3 7:03 1:14 3:124 4:14 5:124 10:4',
      '8 3:1 1:1 0:012 6:2 8:3 4:123 5:0234 7:034 2:124 3:34 9:4',
      '7 4:1 1:013 5:123 7:3 8:3 0:0124 2:014 3:134 6:24 4:4',
      '6 2:13 3:123 6:23 1:134 4:134 7:04 0:012345 5:145',
      '7 0:01 3:12 5:12 6:23 2:1234 4:14 8:04 1:125 7:235',
      '7 0:01 1:1 5:2 2:123 6:23 3:024 4:24 7:24 8:45',
      '7 0:12 2:123 1:134 4:024 5:234 3:0235 6:245 7:45 8:5',
      '8 1:1 0:12 4:1234 7:24 6:0245 8:035 2:125 3:145 5:125 1:5',
      '23 8:1 0:012 1:013 5:1234 14:24 2:1235 6:135 8:5 12:2345 15:… cbb9ae4d',
      '32 8:1 1:1 7:1 10:02 14:2 5:12 2:12 0:123 17:23 18:03 6:123 … 6e8501e5',
    ]);
  });

  test('build the same for an order of preference, and say what was split', () => {
    const built = models.map((model) => {
      const made = build(model, [...whole(model)].reverse());
      return made === null ? '' : short(`${written(made.stays)} | ${made.split.join(' ')}`);
    });
    expect(built).toEqual([
      '4:34@0 3:23@5 2:14@2 1:124@3 0:12@0 | ',
      '4:3@0 2:1@0 1:1234@3 0:1@4 0:2@0 0:3@4 3:2@4 3:4@4 | 0 0',
      '2:34@0 1:12@0 0:123@3 | ',
      '3:234@0 2:234@1 1:124@5 0:13@4 | ',
      '3:2@0 2:123@4 1:134@3 0:1234@1 | ',
      '6:4@0 5:4@1 4:2@0 3:123@4 2:13@2 1:134@6 0:1234@9 | ',
      '7:4@0 6:4@1 5:3@0 4:23@2 3:1@0 2:1234@6 1:12@9 0:1@10 | ',
      '8:4@0 7:4@1 6:23@0 5:2@2 4:24@4 3:24@6 2:123@8 1:1@0 0:1@6 | ',
      '7:4@0 6:4@1 5:234@4 4:24@6 3:23@0 2:123@9 1:134@7 0:12@3 | ',
      '7:34@0 6:3@1 5:24@6 4:24@4 3:14@9 2:12@0 1:1@3 0:1@6 0:2@3 | 0',
      '8:4@0 7:23@0 6:234@1 5:2@2 4:2@3 3:12@6 2:1@0 1:124@8 0:1234@11 | 4',
      '9:4@0 8:3@0 6:23@6 5:24@11 4:12@0 3:14@9 2:1@6 2:4@6 1:1@11 1:2@2 0:1@3 7:34@4 | 2 1 0 1',
      '10:4@0 9:3@0 8:3@1 7:3@2 6:2@0 5:124@6 4:14@4 3:124@11 2:12@8 1:14@14 0:01@2 | 7',
      '9:4@0 8:3@0 6:2@0 5:0234@4 4:123@6 2:124@14 1:1@0 0:1@1 0:2@11 3:1@11 3:34@11 7:34@3 | 0 0',
      '8:3@0 7:3@2 6:24@4 5:123@6 4:14@7 3:134@11 2:01@3 2:4@6 1:01@2 1:3@14 0:012@0 0:4@14 | 2 1 0',
      '7:04@1 6:23@0 5:145@3 4:134@2 3:123@5 2:13@6 1:134@8 0:12345@7 | 0',
      '8:04@0 7:235@3 6:23@1 5:12@2 4:14@5 3:12@6 2:1234@8 1:125@7 0:01@1 | ',
      '8:45@0 7:24@3 6:23@0 5:2@1 4:24@2 3:24@5 2:123@8 1:1@0 0:1@1 | 3 0',
      '8:5@0 7:45@3 6:245@5 5:234@0 4:024@1 3:235@2 2:123@3 1:134@8 0:12@7 | 3',
      '7:24@1 6:245@3 5:125@2 4:1234@5 3:145@8 2:125@7 1:15@6 0:1@1 0:2@0 8:35@0 | 6 0 0',
      '23:5@0 22:45@8 21:3456@11 20:346@13 19:346@14 18:2346@19 17:… 03d6c805',
      '24:56@0 23:456@8 22:34@0 17:235@14 16:24@22 15:24@23 14:246@… cdd0bf20',
    ]);
  });

  test('find the same for a seed', () => {
    const found = models.map((model) => {
      const stays = searchAssignment(model, keepSoonest(model).claims, fewestChanges(model), 2);
      return stays === null ? '' : short(`${changesOf(stays)} ${written(stays)}`);
    });
    expect(found).toEqual([
      '5 1:124@0 0:12@2 2:14@5 4:34@2 3:23@4',
      '6 1:1234@5 0:123@4 2:1@0 3:2@0 3:4@0 4:3@0',
      '3 0:123@0 2:34@4 1:12@3',
      '4 2:234@0 1:124@5 0:13@4 3:234@3',
      '4 0:1234@0 2:123@2 1:134@5 3:2@4',
      '7 1:134@0 0:1234@3 2:13@6 3:123@8 5:4@6 4:2@9 6:4@8',
      '8 2:1234@0 4:23@6 3:1@6 1:12@3 5:3@3 6:4@3 0:1@4 7:4@6',
      '9 2:123@0 6:23@3 3:24@6 4:24@7 7:4@8 0:1@3 1:1@6 5:2@8 8:4@0',
      '8 1:134@0 2:123@2 3:23@6 4:24@4 5:234@10 6:4@6 0:12@9 7:4@9',
      '8 5:24@0 3:14@3 2:12@6 4:24@10 0:12@9 1:1@0 6:3@6 7:34@9',
      '8 4:02@0 0:1234@2 1:124@6 6:234@8 3:12@9 7:23@11 2:1@8 5:2@12 8:4@9',
      '10 0:01@0 2:1@2 2:4@0 5:24@6 6:23@0 4:12@11 3:14@9 7:34@3 9:4@11 1:12@13 8:3@4',
      '9 7:03@0 0:01@2 3:124@6 5:124@3 1:14@9 2:12@11 4:14@15 6:2@13 8:3@2 9:3@11 10:4@0',
      '8 0:012@0 5:0234@4 7:034@3 2:124@11 4:123@13 3:1@6 3:34@6 6:2@6 9:4@0 1:1@9 8:3@15',
      '7 2:014@3 1:013@2 3:134@6 4:14@11 5:123@4 6:24@9 7:3@14 0:012@0 0:4@14 8:3@0',
      '6 0:012345@0 7:04@1 5:145@3 1:134@2 4:134@5 2:13@6 3:123@7 6:23@8',
      '7 8:04@0 0:01@1 1:125@3 2:1234@2 4:14@5 7:235@1 3:12@6 5:12@7 6:23@8',
      '7 3:024@1 0:01@0 2:123@2 4:24@0 7:24@3 6:23@5 8:45@2 1:1@3 5:2@6',
      '7 3:0235@0 4:024@1 1:134@2 6:245@3 2:123@5 5:234@8 0:12@6 7:45@5 8:5@1',
      '8 6:0245@1 8:035@0 1:1@2 1:5@2 2:125@3 3:145@5 5:125@6 4:1234@7 7:24@2 0:12@8',
      '24 10:02356@0 21:3456@2 1:013@4 1:6@4 2:1235@9 7:12346@11 0:… 3d8c046d',
      '33 9:0235@2 18:035@0 11:024@6 23:456@8 19:346@11 24:56@6 10:… e86337bb',
    ]);
  });
});

describe('assignSlots()', () => {
  test('proposes the same places', () => {
    const proposed = [
      ...seeds.map(smallCase),
      ...seeds.map((seed) => questionBy(seed, two)),
      questionBy(1, larger),
    ].map((question) => {
      const answer = assignSlots(question);
      if (!answer.ok) return answer.error.code;
      const { jobs, changes, lowest, isProven } = answer.value;
      const places = jobs.map(
        (job) => `${job.changes} ${job.slots.map(({ slot, part }) => `${part}@${slot}`).join(' ')}`,
      );
      return short(`${changes}/${lowest}${isProven ? '!' : ''} ${places.join(', ')}`);
    });
    expect(proposed).toEqual([
      '5/5! 3 P-10@M1-F-001 P-09@M1-F-004 P-08@M1-F-003, 2 P-06@M1-F-001 P-03@M1-F-002 P-09@M1-F-004',
      '3/3! 0 P-09@M1-F-007 P-06@M1-F-008 P-08@M1-F-004 P-05@M2-F-0… 079141ca',
      '1/1! 0 P-05@M1-F-002 P-09@M2-F-001 P-07@M1-F-001 P-02@M2-F-0… f0a51140',
      '8/8! 3 P-03@M1-F-002 P-06@M1-F-006 P-02@M1-F-001 P-12@M1-F-0… 489a56ee',
      '2/2! 1 P-06@M1-F-001 P-09@M2-F-003 P-04@M2-F-008 P-07@M1-F-0… 38f0a103',
      '7/7! 4 P0@M1-F-004 P2@M1-F-001 P3@M1-R-001 P4@M1-R-003, 1 P0… 71842783',
      '8/8! 4 P1@M1-F-005 P3@M1-F-004 P4@M1-F-001 P5@M1-R-001, 1 P2… 686a6a8c',
      '9/9! 3 P0@M1-F-004 P5@M1-R-001 P7@M1-F-001, 4 P1@M1-R-001 P3… c6633e67',
      '8/8! 3 P3@M1-R-004 P4@M1-F-001 P6@M1-F-003, 3 P0@M1-R-001 P1… 8dcdeca4',
      '8/8! 4 P2@M1-R-004 P3@M1-F-001 P5@M1-R-001 P6@M1-F-004, 2 P1… 1e13a2e5',
      '24/23 8 P1@M1-F-003 P2@M1-F-005 P10@M1-R-002 P11@M2-F-010 P1… e60a55b0',
    ]);
  });
});
