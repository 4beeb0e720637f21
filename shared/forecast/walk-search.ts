// Which walks, each with how many splices, miss fewest splices, then are fewest, then start latest?
// Method: a layered search (one layer a walk) that builds the plan from its last walk back to its first, every walk as late as
// what follows allows. Splices all take the same time, so for given places in time it is enough to serve, of those that may stand there, the one
// that opens last (Glover 1967, matching in convex graphs): a plan is its walks' starts and sizes. Two half-plans that leave the same
// splices to do are compared and one is dropped. While a layer's work stays within `effort` nothing else is dropped and the answer is proven;
// beyond that the least promising go. Plain "earliest closing first" was refused: it splits walks that a later start would join.

import { begins, isHandled, openJobs, SAME_MS } from './walk-begins.ts';

/** A splice as the search sees it: window in ms on one axis. */
export interface SearchSplice {
  readonly opensMs: number;
  readonly closesMs: number;
}

/** Times in ms on the same axis. */
export interface SearchRules {
  readonly nowMs: number;
  readonly walkMs: number;
  readonly eachMs: number;
  /** Places tried for one layer before half-plans are dropped; Infinity proves every answer. */
  readonly effort: number;
}

/** A walk as the search leaves it: when it starts and how many splices it holds. */
export interface WalkShape {
  readonly startMs: number;
  readonly size: number;
}

/** The walks in order of time, how many splices they miss, and whether no better plan exists for certain. */
export interface SearchAnswer {
  readonly shapes: readonly WalkShape[];
  readonly missed: number;
  readonly proven: boolean;
}

/**
 * The search's axis runs backwards from the last closing: `ready` = where a splice may first stand (its closing), `due` = where its work
 * may last begin. Splices stand sorted by `due`.
 */
interface Axis {
  readonly originMs: number;
  readonly ready: Float64Array;
  readonly due: Float64Array;
}

/** A half-plan: the walks chosen so far, from the last one back. */
interface HalfPlan {
  /** Where the next walk's work may begin on the backward axis. */
  readonly free: number;
  readonly missed: number;
  readonly handled: Uint32Array;
  /** `keyOf(handled)`. */
  readonly key: number;
  /** All splices before this place are handled. */
  readonly first: number;
  readonly from: HalfPlan | null;
  readonly begin: number;
  readonly size: number;
}

function makeAxis(splices: readonly SearchSplice[], rules: SearchRules): Axis {
  const earliest = rules.nowMs + rules.walkMs;
  const doable = splices
    .map((splice) => ({ opens: Math.max(splice.opensMs, earliest), closes: splice.closesMs }))
    .filter((splice) => splice.closes - splice.opens >= rules.eachMs - SAME_MS);
  const originMs = doable.reduce((latest, splice) => Math.max(latest, splice.closes), earliest);
  const jobs = doable
    .map((splice) => ({ ready: originMs - splice.closes, due: originMs - splice.opens - rules.eachMs }))
    .sort((a, b) => a.due - b.due || a.ready - b.ready);
  const ready = Float64Array.from(jobs, (job) => job.ready);
  return { originMs, ready, due: Float64Array.from(jobs, (job) => job.due) };
}

function markHandled(handled: Uint32Array, job: number): void {
  handled[job >>> 5]! |= 1 << (job & 31);
}

/** The latest begin of the next walk that does not miss more than `spare` further splices. */
function lastBegin(axis: Axis, plan: HalfPlan, spare: number): number {
  let left = spare;
  for (let job = plan.first; job < axis.due.length; job++) {
    if (isHandled(plan.handled, job)) continue;
    if (left === 0) return axis.due[job]!;
    left -= 1;
  }
  return axis.due[axis.due.length - 1]!;
}

/** Whether half-plan `a` starts later than `b`: first walk first, then the second, and so on. */
function startsLater(a: HalfPlan, b: HalfPlan): boolean {
  let x: HalfPlan | null = a;
  let y: HalfPlan | null = b;
  while (x !== null && y !== null && x !== y) {
    if (Math.abs(x.free - y.free) > SAME_MS) return x.free < y.free;
    x = x.from;
    y = y.from;
  }
  return false;
}

/** Fewest half-plans kept in a layer, whatever the effort. */
const LEAST_WIDTH = 4;
/** In one wait no more than this many splices are let go, unless the effort is without bound. */
const MOST_LET_GO = 1;

/** One search with at most `mostMissed` splices missed. */
interface Search {
  readonly axis: Axis;
  readonly rules: SearchRules;
  readonly mostMissed: number;
  /** False once something was dropped that might have held a better plan. */
  whole: boolean;
  /** Places tried so far. */
  tried: number;
  /** Best half-plans by what they leave to do; several where one misses fewer and another is further along. */
  readonly seen: Map<number, HalfPlan[]>;
}

/** One word over `handled` (the FNV-1a steps on whole words); equal half-plans have equal keys, others are told apart below. */
function keyOf(handled: Uint32Array): number {
  let key = 0x811c9dc5;
  for (const word of handled)
    key = Math.imul(Math.imul(key ^ (word & 0xffff), 0x01000193) ^ (word >>> 16), 0x01000193);
  return key;
}

function leavesSame(a: HalfPlan, b: HalfPlan): boolean {
  for (let i = 0; i < a.handled.length; i++) if (a.handled[i] !== b.handled[i]) return false;
  return true;
}

/** Enters a half-plan unless a known one is as good; true where it is new. */
function enter(search: Search, plan: HalfPlan): boolean {
  const known = search.seen.get(plan.key);
  if (known === undefined) {
    search.seen.set(plan.key, [plan]);
    return true;
  }
  for (const other of known) {
    if (!leavesSame(other, plan)) continue;
    if (other.missed <= plan.missed && (other.free < plan.free - SAME_MS || !startsLater(plan, other))) {
      if (other.free <= plan.free + SAME_MS) return false;
    }
  }
  const kept = known.filter(
    (other) => !(plan.missed <= other.missed && plan.free <= other.free + SAME_MS && leavesSame(other, plan)),
  );
  kept.push(plan);
  search.seen.set(plan.key, kept);
  return true;
}

/** The half-plan after a walk is closed; null where that would miss too many. */
function close(
  search: Search,
  plan: HalfPlan,
  walk: { begin: number; end: number; served: readonly number[] },
): HalfPlan | null {
  const { axis, rules } = search;
  const free = walk.end + rules.walkMs;
  const handled = plan.handled.slice();
  for (const job of walk.served) markHandled(handled, job);
  let missed = plan.missed;
  let first = plan.first;
  for (let job = plan.first; job < axis.due.length && axis.due[job]! < free - SAME_MS; job++) {
    if (isHandled(handled, job)) continue;
    missed += 1;
    if (missed > search.mostMissed) return null;
    markHandled(handled, job);
  }
  while (first < axis.due.length && isHandled(handled, first)) first += 1;
  return {
    free,
    missed,
    handled,
    key: keyOf(handled),
    first,
    from: plan,
    begin: walk.begin,
    size: walk.served.length,
  };
}

/** All half-plans with one walk more. */
function extend(search: Search, plan: HalfPlan, emit: (next: HalfPlan) => void): void {
  const { axis, rules } = search;
  const spare = search.mostMissed - plan.missed;
  const letGo = rules.effort === Infinity ? spare : Math.min(spare, MOST_LET_GO);
  if (letGo < spare) search.whole = false;
  const open = openJobs(axis, plan);
  const { jobs, ready, due, readyFrom } = open;
  const limits = { free: plan.free, eachMs: rules.eachMs, last: lastBegin(axis, plan, letGo) };
  // Which try served a splice last: cheaper than a fresh list for each.
  const servedIn = new Int32Array(jobs.length).fill(-1);
  begins(open, limits).forEach(({ begin, places }, tryNumber) => {
    const served: number[] = [];
    let tight = begin <= plan.free + SAME_MS;
    let from = 0;
    let lost = 0;
    for (let at = begin; tight || served.length <= places; at += rules.eachMs) {
      let chosen = -1;
      search.tried += 1;
      // What is lost now stays lost: it is stepped over for good.
      while (from < jobs.length && (servedIn[from] === tryNumber || due[from]! < at - SAME_MS)) {
        if (servedIn[from] !== tryNumber) lost += 1;
        from += 1;
      }
      for (let i = from; i < jobs.length && readyFrom[i]! <= at + SAME_MS; i++) {
        if (servedIn[i] !== tryNumber && ready[i]! <= at + SAME_MS) {
          chosen = i;
          break;
        }
      }
      if (chosen < 0 || lost > spare) break;
      servedIn[chosen] = tryNumber;
      served.push(jobs[chosen]!);
      if (ready[chosen]! >= at - SAME_MS) tight = true;
      if (!tight) continue;
      const next = close(search, plan, { begin, end: at + rules.eachMs, served });
      if (next !== null) emit(next);
    }
  });
}

/** Keeps the most promising: those whose next splice to be missed lies furthest off, then with fewest left to do before it. */
function narrow(search: Search, layer: readonly HalfPlan[], width: number): HalfPlan[] {
  const { axis } = search;
  const judged = layer.map((plan) => {
    const frontier = axis.due[plan.first] ?? Infinity;
    let waiting = 0;
    for (let job = plan.first; job < axis.due.length; job++) {
      if (!isHandled(plan.handled, job) && axis.ready[job]! <= frontier) waiting += 1;
    }
    return { plan, frontier, waiting };
  });
  judged.sort(
    (a, b) =>
      a.plan.missed - b.plan.missed ||
      b.frontier - a.frontier ||
      a.waiting - b.waiting ||
      a.plan.free - b.plan.free,
  );
  search.whole = false;
  // What is dropped must not bar the way to what comes later.
  for (const { plan } of judged.slice(width)) {
    const known = search.seen.get(plan.key);
    if (known !== undefined) {
      search.seen.set(
        plan.key,
        known.filter((other) => other !== plan),
      );
    }
  }
  return judged.slice(0, width).map((entry) => entry.plan);
}

function isDone(axis: Axis, plan: HalfPlan): boolean {
  return plan.first >= axis.due.length;
}

/** Whether `seen` still holds this half-plan (a better one may have taken its place after it was entered). */
function isCurrent(search: Search, plan: HalfPlan): boolean {
  return search.seen.get(plan.key)?.includes(plan) ?? false;
}

/** One layer more: the best finished plan in it, if any, and the half-plans to go on from. */
function nextLayer(
  search: Search,
  layer: readonly HalfPlan[],
): { readonly done: HalfPlan | null; readonly next: readonly HalfPlan[] } {
  const next: HalfPlan[] = [];
  const finished: HalfPlan[] = [];
  for (const plan of layer) {
    extend(search, plan, (candidate) => {
      if (isDone(search.axis, candidate)) finished.push(candidate);
      else if (enter(search, candidate)) next.push(candidate);
    });
  }
  let done: HalfPlan | null = null;
  for (const plan of finished) {
    const isBetter =
      done === null || plan.missed < done.missed || (plan.missed === done.missed && startsLater(plan, done));
    if (isBetter) done = plan;
  }
  return { done, next: next.filter((plan) => isCurrent(search, plan)) };
}

/** The best plan that misses at most `mostMissed`; null where there is none (for certain, where `whole`). */
function searchWithin(
  axis: Axis,
  rules: SearchRules,
  mostMissed: number,
): { readonly plan: HalfPlan | null; readonly whole: boolean } {
  const search: Search = { axis, rules, mostMissed, whole: true, tried: 0, seen: new Map() };
  const handled = new Uint32Array(Math.ceil(axis.due.length / 32));
  const key = keyOf(handled);
  let layer: readonly HalfPlan[] = [
    { free: 0, missed: 0, handled, key, first: 0, from: null, begin: 0, size: 0 },
  ];
  while (layer.length > 0) {
    const triedBefore = search.tried;
    const { done, next } = nextLayer(search, layer);
    if (done !== null) return { plan: done, whole: search.whole };
    const perPlan = (search.tried - triedBefore) / layer.length;
    const width = Math.max(LEAST_WIDTH, Math.floor(rules.effort / Math.max(1, perPlan)));
    layer = next.length > width ? narrow(search, next, width) : next;
  }
  return { plan: null, whole: search.whole };
}

function toShapes(axis: Axis, rules: SearchRules, last: HalfPlan): WalkShape[] {
  const shapes: WalkShape[] = [];
  for (let plan: HalfPlan | null = last; plan !== null && plan.size > 0; plan = plan.from) {
    const end = plan.begin + plan.size * rules.eachMs;
    shapes.push({ startMs: axis.originMs - end - rules.walkMs, size: plan.size });
  }
  return shapes;
}

/**
 * How many missed splices to allow next. A proof doubles the number, then halves the gap: each step more costs far more. A bounded
 * search, once none will not do, asks for any plan and then betters it one by one: it comes close at once.
 */
function nextAllowed(
  most: number,
  known: { readonly tooFew: number; readonly found: number | null; readonly effort: number },
): number {
  const { tooFew, found, effort } = known;
  if (tooFew < 0) return 0;
  if (effort !== Infinity) return found === null ? most : found - 1;
  return found === null ? Math.min(most, tooFew < 1 ? tooFew + 1 : tooFew * 2) : (tooFew + found) >> 1;
}

/**
 * Finds the walks. "Latest starts": the first walk starts as late as it can, then the second as late as it can, and so on.
 * Cost grows with how many windows overlap rather than with their number; `effort` bounds it.
 */
export function searchWalks(splices: readonly SearchSplice[], rules: SearchRules): SearchAnswer {
  const axis = makeAxis(splices, rules);
  const hopeless = splices.length - axis.due.length;
  if (axis.due.length === 0) return { shapes: [], missed: hopeless, proven: true };
  let proven = true;
  let tooFew = -1;
  let best: HalfPlan | null = null;
  while (best === null || best.missed > tooFew + 1) {
    const allowed = nextAllowed(axis.due.length, {
      tooFew,
      found: best?.missed ?? null,
      effort: rules.effort,
    });
    const { plan, whole } = searchWithin(axis, rules, allowed);
    if (plan === null && allowed === axis.due.length) {
      throw new Error(
        `Cannot plan walks as some plan must miss no more than all: current value is ${allowed}`,
      );
    }
    if (plan === null) tooFew = allowed;
    else best = plan;
    proven &&= whole;
  }
  return { shapes: toShapes(axis, rules, best), missed: hopeless + best.missed, proven };
}
