// Is an order proven best? Exact search for few jobs whose feeders all take the same room.
// Method: branch and bound from the first job on. A prefix costs what keep-needed-soonest counts for it; still to come are
// at least the parts never seen yet, and at least the cheapest path through the jobs left, where j right after i costs
// what their parts together exceed the machine by (Laporte, Salazar-Gonzalez and Semet 2004, IIE Transactions 36, 37,
// use the spanning tree; with few jobs the path itself is at hand). Two prefixes of the same jobs with the same last one
// differ only in how many free units each part could still use; one that is at least as good even after paying for every
// part where it is worse rules the other out.
// Refused: a search for orders with due times or mixed widths; there the annealing's best stands with its gap.

import { bitCount } from './bits.ts';
import type { OrderModel } from './problem.ts';

/** Most jobs (the load before included) for which the exact search is tried. */
export const MOST_EXACT_JOBS = 16;
const MOST_KEPT_STATES = 48;
const YIELD_EVERY = 500;

/** What the exact search found. */
export interface ExactAnswer {
  /** A better sequence than the one given, or null where none exists. */
  readonly sequence: Uint16Array | null;
  readonly changes: number;
  /** Nodes visited in all: the measure of work done. */
  readonly nodes: number;
}

/** True where the exact search applies to this model. */
export function canProve(model: OrderModel): boolean {
  return model.isUnit && !model.isTimed && model.jobCount <= MOST_EXACT_JOBS && !isLocked(model);
}

function isLocked(model: OrderModel): boolean {
  return model.boundTo.some((place, job) => place >= 0 && !(model.hasLoad && job === 0));
}

/** Least feeders put in right at j when it follows i: `cost[i * n + j]`. */
export function stepCosts(model: OrderModel): Int32Array {
  const n = model.jobCount;
  const cost = new Int32Array(n * n);
  for (let i = 0; i < n; i++) {
    const set = new Set(model.parts.subarray(model.starts[i]!, model.starts[i + 1]!));
    for (let j = 0; j < n; j++) {
      let both = set.size;
      for (let x = model.starts[j]!; x < model.starts[j + 1]!; x++) if (!set.has(model.parts[x]!)) both++;
      cost[i * n + j] = Math.max(0, both - model.room);
    }
  }
  return cost;
}

/** Cheapest path from each job through each set of jobs left: `path[set * n + from]`. */
function cheapestPaths(model: OrderModel): Uint16Array {
  const n = model.jobCount;
  const cost = stepCosts(model);
  const path = new Uint16Array((1 << n) * n);
  for (let set = 1; set < 1 << n; set++) {
    for (let from = 0; from < n; from++) {
      if ((set >> from) & 1) continue;
      let least = 0xffff;
      for (let rest = set; rest !== 0; rest &= rest - 1) {
        const next = 31 - Math.clz32(rest & -rest);
        const through = cost[from * n + next]! + path[(set & ~(1 << next)) * n + next]!;
        if (through < least) least = through;
      }
      path[set * n + from] = least;
    }
  }
  return path;
}

interface SeenState {
  readonly cost: number;
  readonly reach: Uint8Array;
}

/** State before the next place: last use of each part, free units by place since which they are free. */
interface State {
  readonly lastUse: Int16Array;
  readonly since: Uint8Array;
  readonly cost: number;
  readonly unseen: number;
}

/** One exact search. */
interface Proof {
  readonly model: OrderModel;
  readonly path: Uint16Array;
  /** States by the set of jobs placed and the last of them. */
  readonly seen: Map<number, SeenState[]>;
  /** Parts of each job. */
  readonly lists: readonly Uint16Array[];
  /** Which jobs use each part, a bit each. */
  readonly usedBy: Int32Array;
  /** A sequence and its reverse cost the same where nothing is loaded: job 0 may be held to the places before this one. */
  readonly halfway: number;
  readonly sequence: Uint16Array;
  best: number;
  bestSequence: Uint16Array | null;
  nodes: number;
}

/**
 * Looks for an order with fewer than `below` feeders put in. Yields the nodes visited now and then, so that the caller can
 * stop it; a finished run proves its answer. Only for models that `canProve`.
 */
export function* proveOrder(model: OrderModel, below: number): Generator<number, ExactAnswer> {
  const n = model.jobCount;
  const lists = Array.from({ length: n }, (_, job) =>
    model.parts.subarray(model.starts[job]!, model.starts[job + 1]!),
  );
  const usedBy = new Int32Array(model.partCount);
  lists.forEach((list, job) => {
    for (const part of list) usedBy[part]! |= 1 << job;
  });
  const proof: Proof = {
    model,
    path: cheapestPaths(model),
    seen: new Map(),
    lists,
    usedBy,
    halfway: model.hasLoad ? n : (n + 1) >> 1,
    sequence: new Uint16Array(n),
    best: below,
    bestSequence: null,
    nodes: 0,
  };
  const start: State = {
    lastUse: new Int16Array(model.partCount).fill(-1),
    since: new Uint8Array(n + 1),
    cost: 0,
    unseen: model.partCount,
  };
  yield* extend(proof, start, 0);
  return { sequence: proof.bestSequence, changes: proof.best, nodes: proof.nodes };
}

/** The state after `job` stands at place `at`. */
function placeJob({ model, lists }: Proof, state: State, job: number, at: number): State {
  const lastUse = state.lastUse.slice();
  const since = state.since.slice();
  let { cost, unseen } = state;
  for (const part of lists[job]!) {
    const from = lastUse[part]!;
    lastUse[part] = at;
    if (from === at - 1 && at > 0) continue;
    if (from < 0) {
      unseen--;
      if (!(model.hasLoad && at === 0)) cost++;
      continue;
    }
    let q = from + 1;
    while (q >= 0 && since[q] === 0) q--;
    if (q < 0) cost++;
    else since[q]!--;
  }
  let free = 0;
  for (let q = 0; q < at; q++) free += since[q]!;
  const beside = model.freeBeside[job]!;
  since[at] = Math.max(0, beside - free);
  for (let q = at - 1; free > beside; q--) {
    const cut = Math.min(since[q]!, free - beside);
    since[q]! -= cut;
    free -= cut;
  }
  return { lastUse, since, cost, unseen };
}

/** How many free units each part still to come could use if it is not in the last job. */
function reachOf({ model, usedBy }: Proof, state: State, mask: number, at: number): Uint8Array {
  const upTo = new Uint8Array(at + 2);
  let sum = 0;
  for (let q = 0; q <= at; q++) {
    sum += state.since[q]!;
    upTo[q] = sum;
  }
  const reach = new Uint8Array(model.partCount);
  for (let part = 0; part < model.partCount; part++) {
    const from = state.lastUse[part]!;
    if (from >= 0 && (usedBy[part]! & ~mask) !== 0) reach[part] = from === at ? 255 : upTo[from + 1]!;
  }
  return reach;
}

function isRuledOut(proof: Proof, state: State, mask: number, last: number, at: number): boolean {
  const key = mask * proof.model.jobCount + last;
  const others = proof.seen.get(key);
  const reach = reachOf(proof, state, mask, at);
  if (others === undefined) {
    proof.seen.set(key, [{ cost: state.cost, reach }]);
    return false;
  }
  for (const other of others) {
    let pays = other.cost;
    for (let part = 0; part < reach.length && pays <= state.cost; part++)
      if (other.reach[part]! < reach[part]!) pays++;
    if (pays <= state.cost) return true;
  }
  if (others.length < MOST_KEPT_STATES) others.push({ cost: state.cost, reach });
  return false;
}

interface Child {
  readonly job: number;
  readonly state: State;
  /** Feeders that any sequence that goes on so puts in. */
  readonly bound: number;
}

/** The jobs that may stand next, most promising first. */
function childrenOf(proof: Proof, state: State, mask: number, at: number): readonly Child[] {
  const { model, path } = proof;
  const n = model.jobCount;
  const full = (1 << n) - 1;
  const children: Child[] = [];
  for (let job = 0; job < n; job++) {
    if ((mask >> job) & 1) continue;
    if (model.hasLoad && at === 0 && job !== 0) continue;
    if (at + 1 >= proof.halfway && (mask & 1) === 0 && job !== 0) continue;
    const next = placeJob(proof, state, job, at);
    const left = full & ~mask & ~(1 << job);
    const bound = next.cost + Math.max(next.unseen, path[left * n + job]!);
    children.push({ job, state: next, bound });
  }
  return children.sort((x, y) => x.bound - y.bound || x.state.cost - y.state.cost || x.job - y.job);
}

/** Goes on from a state in which the jobs of `mask` are placed. */
function* extend(proof: Proof, state: State, mask: number): Generator<number, void> {
  const full = (1 << proof.model.jobCount) - 1;
  const at = bitCount(mask);
  if (mask === full) {
    if (state.cost < proof.best) {
      proof.best = state.cost;
      proof.bestSequence = proof.sequence.slice();
    }
    return;
  }
  for (const child of childrenOf(proof, state, mask, at)) {
    if (child.bound >= proof.best) break;
    const nextMask = mask | (1 << child.job);
    if (++proof.nodes % YIELD_EVERY === 0) yield proof.nodes;
    if (nextMask !== full && isRuledOut(proof, child.state, nextMask, child.job, at)) continue;
    proof.sequence[at] = child.job;
    yield* extend(proof, child.state, nextMask);
  }
}

/** Feeders that any order must put in: first times, or the cheapest way from job to job, whichever is more. */
export function lowestChanges(model: OrderModel): number {
  if (!model.isUnit || model.jobCount === 0) return model.firstTimes;
  const n = model.jobCount;
  const cost = stepCosts(model);
  let tree = 0;
  const reached = new Uint8Array(n);
  const nearest = new Int32Array(n).fill(0xffff);
  nearest[0] = 0;
  for (let round = 0; round < n; round++) {
    let next = -1;
    for (let job = 0; job < n; job++)
      if (reached[job] === 0 && (next < 0 || nearest[job]! < nearest[next]!)) next = job;
    reached[next] = 1;
    tree += nearest[next]!;
    for (let job = 0; job < n; job++) {
      nearest[job] = Math.min(nearest[job]!, cost[next * n + job]!, cost[job * n + next]!);
    }
  }
  // Whatever the first job is, its own load comes on top unless something was loaded before.
  let first = 0xffff;
  for (let job = 0; job < n; job++) first = Math.min(first, model.starts[job + 1]! - model.starts[job]!);
  return Math.max(model.firstTimes, tree + (model.hasLoad ? 0 : first));
}
