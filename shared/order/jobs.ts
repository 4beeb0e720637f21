// Which order of the jobs, with what loads, and how good is it? The whole answer in steps that the caller drives.
// Method: a first order at once; a short annealing; for few jobs the exact search; then annealing with what is
// left of the budget, in rounds from mixed starts. The best so far is at hand after every step; the caller stops by not
// asking for the next.
// Refused: a clock in here; the budget is work, so that a seed gives the same answer on every machine.

import { seededChance } from '../kit/chance.ts';
import { fail, ok, type Result } from '../kit/result.ts';
import { canTryEach, tryEachOrder } from './each.ts';
import { canProve, lowestChanges, proveOrder } from './exact.ts';
import { areaCounter } from './keep-by-area.ts';
import { type OrderPlan, planOrder } from './plan.ts';
import { modelOrder, type OrderModel, type OrderProblem, type OrderQuestion, toJobOrder } from './problem.ts';
import { type AnnealOptions, annealOrder, greedySequence, judgeFor, mixSequence } from './search.ts';

/** How long and from which seed to search. */
export interface OrderSearch {
  /** Any whole number; the same seed gives the same answer. */
  readonly seed: number;
  /** Work to spend, in places evaluated; `workOfSeconds` turns time into it. */
  readonly budget: number;
}

/** The best order found so far. */
export interface OrderState {
  /** Indices into `question.jobs`. */
  readonly order: readonly number[];
  readonly changes: number;
  /** Part of the budget used, 0 … 1. */
  readonly share: number;
  /** No order puts in fewer feeders. */
  readonly isProven: boolean;
  /** No order puts in fewer than this. */
  readonly lowest: number;
}

/** The final answer. */
export interface OrderAnswer extends OrderState {
  readonly plan: OrderPlan;
  /** (changes - lowest) ÷ lowest; 0 where proven. */
  readonly gap: number;
  /** Jobs that end after their due time, with how much. */
  readonly late: readonly { readonly job: string; readonly minutes: number }[];
}

/**
 * Places that a core evaluates in a second, set so that an answer keeps within it: on a two-core virtual machine the published sets of
 * 30 and 40 jobs take 0.8 to 1.0 s of processor time.
 */
const WORK_PER_SECOND = 13_000_000;
/** Work of one node of the exact search, of one evaluation by area per part. */
const NODE_WORK = 60;

/** Work that a present-day core does in this many seconds. */
export function workOfSeconds(seconds: number): number {
  return Math.max(1, Math.round(seconds * WORK_PER_SECOND));
}

type AnnealHow = Pick<AnnealOptions, 'hot' | 'cold' | 'slack'>;

/** The rounds of a search, each from another start. Two ways of giving up find different orders. */
const PLAIN_ROUNDS: readonly AnnealHow[] = [{ slack: 0 }, {}];
/** The same with due times or wide feeders. */
const OTHER_ROUNDS: readonly AnnealHow[] = Array.from({ length: 4 }, () => ({ hot: 1.5, cold: 0.2 }));

interface Best {
  sequence: Uint16Array;
  late: number;
  changes: number;
}

/**
 * Searches step by step: every `next()` does a few milliseconds of work and gives the best so far; the value returned at
 * the end is the answer. The first step comes at once. Problems that no order can mend come as a failure.
 */
export function startOrder(
  question: OrderQuestion,
  search: OrderSearch,
): Result<Generator<OrderState, OrderState>, readonly OrderProblem[]> {
  const modelled = modelOrder(question);
  if (!modelled.ok) return fail(modelled.error);
  return ok(searchModel(modelled.value, search));
}

/** A search on its way. */
interface Way {
  readonly model: OrderModel;
  readonly search: OrderSearch;
  readonly best: Best;
  /** No order puts in fewer feeders. */
  lowest: number;
  /** Work done. */
  spent: number;
}

function stateOf({ model, best, lowest, search }: Way, work: number): OrderState {
  return {
    order: toJobOrder(model, best.sequence),
    changes: best.changes,
    share: work >= search.budget ? 1 : work / search.budget,
    isProven: best.changes <= lowest && best.late === 0,
    lowest: Math.min(lowest, best.changes),
  };
}

const isDone = ({ best, lowest }: Way) => best.changes <= lowest && best.late === 0;

function* searchModel(model: OrderModel, search: OrderSearch): Generator<OrderState, OrderState> {
  const judge = judgeFor(model);
  const start = greedySequence(model);
  judge.rebase(start, 0);
  const best: Best = { sequence: start, late: judge.late(), changes: judge.changes() };
  const way: Way = { model, search, best, lowest: lowestChanges(model), spent: 0 };
  yield stateOf(way, 0);
  if (isDone(way)) return stateOf(way, search.budget);
  if (canProve(model)) {
    const budget = Math.min(search.budget * 0.1, model.jobCount * 30_000);
    yield* anneal(way, budget, search.seed, best.sequence, {});
    if (best.changes > way.lowest) yield* prove(way);
  }
  const isTried = canTryEach(model) && (yield* tryEach(way));
  if (!isTried && !isDone(way)) yield* annealInRounds(way);
  if (!model.isUnit && !isTried) refineWide(model, best);
  return stateOf(way, search.budget);
}

/** Anneals once and keeps what is better. */
function* anneal(way: Way, budget: number, seed: number, start: Uint16Array, how: AnnealHow) {
  const { model, best } = way;
  const run = annealOrder(model, { seed, budget, floor: way.lowest, start, ...how });
  for (let step = run.next(); ; step = run.next()) {
    const { sequence, lateMinutes, changes, share } = step.value;
    if (lateMinutes < best.late || (lateMinutes === best.late && changes < best.changes)) {
      best.sequence = sequence.slice();
      best.late = lateMinutes;
      best.changes = changes;
    }
    if (step.done === true) break;
    yield stateOf(way, way.spent + share * budget);
  }
  way.spent += budget;
}

/** Spends the rest of the work on annealing, each round from another start. */
function* annealInRounds(way: Way) {
  const { model, search, best } = way;
  const rest = Math.max(0, search.budget - way.spent);
  const rounds = model.isUnit && !model.isTimed ? PLAIN_ROUNDS : OTHER_ROUNDS;
  const chance = seededChance(search.seed);
  for (const [round, how] of rounds.entries()) {
    if (isDone(way)) return;
    const from = round === 0 ? best.sequence : mixSequence(model, best.sequence, chance);
    yield* anneal(way, rest / rounds.length, search.seed + 1 + round, from, how);
  }
}

/** Looks for the proof of the best with half of the work at most. */
function* prove(way: Way) {
  const { model, search, best } = way;
  const proof = proveOrder(model, best.changes);
  const most = search.budget * 0.5;
  for (let step = proof.next(); ; step = proof.next()) {
    if (step.done === true) {
      if (step.value.sequence !== null) {
        best.sequence = step.value.sequence;
        best.changes = step.value.changes;
      }
      way.lowest = best.changes;
      return;
    }
    const work = step.value * NODE_WORK;
    if (work > most) {
      way.spent += most;
      return;
    }
    yield stateOf(way, way.spent + work);
  }
}

/** Tries each order of few jobs; true where all were tried within the work at hand. */
function* tryEach(way: Way): Generator<OrderState, boolean> {
  const { model, search, best } = way;
  const trial = tryEachOrder(model, best.sequence, best.changes);
  for (let step = trial.next(); ; step = trial.next()) {
    if (step.done === true) {
      best.sequence = step.value.sequence;
      best.changes = step.value.changes;
      way.lowest = Math.max(way.lowest, step.value.lowest);
      return true;
    }
    if (step.value > search.budget) return false;
    yield stateOf(way, step.value);
  }
}

/** With mixed widths the area rule's count may be bettered by exchanges once the order stands. */
function refineWide(model: OrderModel, best: Best): void {
  best.changes = Math.min(best.changes, areaCounter(model).refine(best.sequence).changes);
}

/** Turns a state into the full answer: loads, gap, what is late. */
export function finishOrder(question: OrderQuestion, state: OrderState): OrderAnswer {
  const planned = planOrder(question, state.order);
  if (!planned.ok)
    throw new Error(`Cannot finish order as its jobs must fit: ${JSON.stringify(planned.error)}`);
  const plan = planned.value;
  const lowest = Math.min(state.lowest, plan.changes);
  return {
    ...state,
    changes: plan.changes,
    lowest,
    isProven: plan.changes <= lowest && (state.isProven || plan.lateMinutes === 0),
    plan,
    gap: plan.changes <= lowest ? 0 : lowest === 0 ? 1 : (plan.changes - lowest) / lowest,
    late: plan.loads
      .filter((load) => load.lateMinutes > 0)
      .map((load) => ({ job: load.job, minutes: load.lateMinutes })),
  };
}

/** Searches to the end, or until `shouldStop` says so (asked every few milliseconds); then the full answer. */
export function orderJobs(
  question: OrderQuestion,
  search: OrderSearch,
  shouldStop: (state: OrderState) => boolean = () => false,
): Result<OrderAnswer, readonly OrderProblem[]> {
  const started = startOrder(question, search);
  if (!started.ok) return fail(started.error);
  let step = started.value.next();
  while (step.done !== true && !shouldStop(step.value)) step = started.value.next();
  return ok(finishOrder(question, step.value));
}
