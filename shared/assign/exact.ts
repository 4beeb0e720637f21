// Is there an assignment with fewer changes?
// Method: a change is a gap between two uses of a feeder over which it does not stay. Sets of such gaps are tried by their number, fewest first; a
// set that needs more room in some job than the line has is dropped at once, the others are packed exactly. The first that fits is best.
// Refused: a mixed-integer model, whose solver is larger than the whole app.

import { MOST_BITS, packBlocks } from './pack.ts';
import type { AssignModel } from './problem.ts';
import { type Stay, usesOf } from './stays.ts';

const mostSteps = 1_500_000;
const stepsOfOne = 40_000;
const mostGaps = 60;

/** A gap between two uses of a feeder that follow one another. */
interface Gap {
  readonly feeder: number;
  /** Index of the use before it. */
  readonly at: number;
  readonly width: number;
  /** Jobs in which the feeder would stand idle, first and last; none where first > last. */
  readonly first: number;
  readonly last: number;
}

/** What the exact search found: the least number of gaps given up that works, or as far as it came. */
export interface ExactAssignment {
  /** Null where nothing better than what was known exists or was found. */
  readonly stays: readonly Stay[] | null;
  readonly isProven: boolean;
}

function gapsOf(model: AssignModel): readonly Gap[] {
  return model.feeders.flatMap((feeder, index) => {
    const uses = usesOf(feeder);
    return uses.slice(1).map((use, at) => ({
      feeder: index,
      at,
      width: feeder.width,
      first: (uses[at] ?? 0) + 1,
      last: use - 1,
    }));
  });
}

/** Room left in each job beside what it needs itself. */
function slackOf(model: AssignModel): Int32Array {
  const slack = new Int32Array(model.jobs + 1).fill(model.capacity);
  for (const { uses, width } of model.feeders) for (const job of uses) slack[job]! -= width;
  return slack;
}

/** Changes that no assignment can avoid: feeders that are not loaded, once each, and idle feeders that do not all fit beside a job's own. */
export function fewestChanges(model: AssignModel): number {
  const never = model.feeders.filter(({ loadedAt }) => loadedAt.length === 0).length;
  const slack = slackOf(model);
  let given = 0;
  for (let job = 1; job <= model.jobs; job++) {
    const idle = gapsOf(model)
      .filter(({ first, last }) => first <= job && job <= last)
      .map(({ width }) => width)
      .sort((a, b) => b - a);
    let over = idle.reduce((sum, width) => sum + width, 0) - slack[job]!;
    let count = 0;
    for (const width of idle) {
      if (over <= 0) break;
      over -= width;
      count++;
    }
    given = Math.max(given, count);
  }
  return never + given;
}

interface Hunt {
  readonly model: AssignModel;
  readonly gaps: readonly Gap[];
  readonly slack: Int32Array;
  readonly isGiven: Uint8Array;
  stepsLeft: number;
  hasUnknown: boolean;
  found: readonly Stay[] | null;
}

/** Blocks that are left when the gaps given up cut the feeders' uses. */
function blocksOf(hunt: Hunt) {
  const cuts = new Map<number, Set<number>>();
  for (const [index, gap] of hunt.gaps.entries()) {
    if (hunt.isGiven[index] === 0) continue;
    cuts.set(gap.feeder, (cuts.get(gap.feeder) ?? new Set<number>()).add(gap.at));
  }
  return hunt.model.feeders.flatMap((feeder, index) => {
    const uses = usesOf(feeder);
    const blocks: { feeder: number; uses: number[] }[] = [];
    for (const [at, use] of uses.entries()) {
      if (at === 0 || cuts.get(index)?.has(at - 1)) blocks.push({ feeder: index, uses: [use] });
      else blocks.at(-1)?.uses.push(use);
    }
    return blocks.filter((block) => block.uses.some((use) => use > 0));
  });
}

function tryPack(hunt: Hunt): boolean {
  const blocks = blocksOf(hunt);
  const steps = Math.min(stepsOfOne, hunt.stepsLeft);
  const packing = packBlocks(hunt.model, blocks, steps);
  hunt.stepsLeft -= packing === 'unknown' ? steps : 200;
  if (packing === 'unknown') hunt.hasUnknown = true;
  if (packing === 'none' || packing === 'unknown') return false;
  hunt.found = blocks.map((block, index) => ({ ...block, start: packing[index]! })); // a place a block
  return true;
}

/** Whether the gaps that are kept need more room somewhere than giving `left` of the gaps from `from` on can free. */
function isHopeless(hunt: Hunt, from: number, left: number): boolean {
  for (let job = 1; job <= hunt.model.jobs; job++) {
    let over = -hunt.slack[job]!;
    const open: number[] = [];
    for (const [index, gap] of hunt.gaps.entries()) {
      if (hunt.isGiven[index] === 1 || gap.first > job || gap.last < job) continue;
      over += gap.width;
      if (index >= from) open.push(gap.width);
    }
    if (over <= 0) continue;
    open.sort((a, b) => b - a);
    for (const width of open.slice(0, left)) over -= width;
    if (over > 0) return true;
  }
  return false;
}

function choose(hunt: Hunt, from: number, left: number): boolean {
  if (hunt.stepsLeft <= 0) return false;
  hunt.stepsLeft--;
  if (isHopeless(hunt, from, left)) return false;
  if (left === 0) return tryPack(hunt);
  for (let index = from; index + left <= hunt.gaps.length; index++) {
    hunt.isGiven[index] = 1;
    if (choose(hunt, index + 1, left - 1)) return true;
    hunt.isGiven[index] = 0;
    if (hunt.stepsLeft <= 0) break;
  }
  return false;
}

/** Whether the exact search applies: few gaps, short banks. */
export function isSmallEnough(model: AssignModel): boolean {
  return gapsOf(model).length <= mostGaps && model.banks.every(({ positions }) => positions <= MOST_BITS);
}

/**
 * Looks for an assignment with fewer than `below` changes, from the bound upward. Proven where all sets with fewer were shown not to fit.
 * `steps`: the most to be tried.
 */
export function proveAssignment(model: AssignModel, below: number, steps = mostSteps): ExactAssignment {
  const never = model.feeders.filter(({ loadedAt }) => loadedAt.length === 0).length;
  // What is most worth giving up is tried first: wide feeders that stand idle long.
  const gaps = [...gapsOf(model)].sort(
    (a, b) => b.width * (b.last - b.first + 1) - a.width * (a.last - a.first + 1) || b.width - a.width,
  );
  const hunt: Hunt = {
    model,
    gaps,
    slack: slackOf(model),
    isGiven: new Uint8Array(gaps.length),
    stepsLeft: steps,
    hasUnknown: false,
    found: null,
  };
  for (let given = fewestChanges(model) - never; given < below - never; given++) {
    hunt.isGiven.fill(0);
    if (choose(hunt, 0, given)) return { stays: hunt.found, isProven: !hunt.hasUnknown };
    if (hunt.stepsLeft <= 0) return { stays: null, isProven: false };
  }
  return { stays: null, isProven: !hunt.hasUnknown };
}
