// Which order of the jobs needs the fewest feeders put in? The search by improvement.
// Method: simulated annealing over sequences. A step moves a block of jobs (turned round or not) next to a job with much
// in common, or turns a stretch round. Before a step is counted in full, the change in parts shared by neighbours is
// looked at, and then that in parts shared a few places apart: steps that lose much are counted only seldom, since nearly all of
// them would be refused.
// Work is measured in places evaluated, never in time, so that the same seed and budget give the same answer anywhere.
// Refused: one long cooling (two shorter ones, the second from a mixed start, miss less); leaving out steps that change
// many places (more steps a second, worse orders); genetic search (needs many times the time).

import { type Chance, chanceBelow, seededChance } from '../kit/chance.ts';
import { areaCounter } from './keep-by-area.ts';
import { unitCounter } from './keep-soonest.ts';
import {
  applyBound,
  applyStraight,
  drawStep,
  movablePlaces,
  nearLoss,
  searchRow,
  sharedChange,
  sharedTable,
} from './moves.ts';
import type { OrderModel } from './problem.ts';

/** The best found so far, while the search runs. */
export interface OrderProgress {
  /** Searched jobs in order; copy before keeping. */
  readonly sequence: Uint16Array;
  /** Minutes late summed over jobs with due times; 0 where none. */
  readonly lateMinutes: number;
  readonly changes: number;
  /** Part of the budget used, 0 … 1. */
  readonly share: number;
}

/** How a sequence is judged. */
interface Judge {
  readonly rebase: (sequence: Uint16Array, from: number, to?: number) => number;
  readonly count: (sequence: Uint16Array, from: number, to: number, limit: number, slack: number) => number;
  readonly work: () => number;
  /** Lateness of the last sequence taken by `rebase`. */
  readonly late: () => number;
  /** Feeders put in by the last sequence taken by `rebase`. */
  readonly changes: () => number;
}

/** One minute late weighs as many feeders in the search; orders are compared by lateness first in the end. */
const LATE_MINUTE = 0.5;
const LATE_JOB = 4;

/** Makes the judge that fits the model: units, widths, due times. */
export function judgeFor(model: OrderModel): Judge {
  if (model.isUnit && !model.isTimed) {
    const counter = unitCounter(model);
    let changes = 0;
    return {
      ...counter,
      rebase: (sequence, from, to) => {
        changes = counter.rebase(sequence, from, to);
        return changes;
      },
      late: () => 0,
      changes: () => changes,
    };
  }
  const unit = model.isUnit ? unitCounter(model) : null;
  const area = areaCounter(model);
  const inAt = new Int32Array(model.jobCount);
  let late = 0;
  let changes = 0;
  const judge = (sequence: Uint16Array): number => {
    if (unit === null) changes = area.count(sequence, inAt);
    else {
      changes = unit.rebase(sequence, 0);
      unit.writeIn(sequence, inAt);
    }
    if (!model.isTimed) return changes;
    const lateness = latenessOf(model, sequence, inAt);
    late = lateness.minutes;
    return changes + LATE_MINUTE * lateness.minutes + LATE_JOB * lateness.jobs;
  };
  return {
    rebase: judge,
    count: judge,
    work: () => area.work() + 3 * (unit?.work() ?? 0),
    late: () => late,
    changes: () => changes,
  };
}

/** Minutes and jobs late, as estimated in the search: every feeder put in after the first load pushes one out. */
function latenessOf(model: OrderModel, sequence: Uint16Array, inAt: Int32Array) {
  const handling = model.question.handling ?? { putIn: 0, takeOut: 0, perChange: 0 };
  let clock = 0;
  let minutes = 0;
  let jobs = 0;
  for (let place = 0; place < sequence.length; place++) {
    const job = model.question.jobs[model.jobAt[sequence[place]!]!];
    if (job === undefined) continue;
    const fresh = inAt[place]!;
    if (fresh > 0)
      clock += handling.perChange + fresh * (handling.putIn + (place > 0 ? handling.takeOut : 0));
    clock += job.runMinutes ?? 0;
    if (job.dueMinutes !== undefined && clock > job.dueMinutes) {
      minutes += clock - job.dueMinutes;
      jobs++;
    }
  }
  return { minutes, jobs };
}

/** A first order in no time: from each possible start the job that shares most comes next; bound jobs stand where bound. */
export function greedySequence(model: OrderModel): Uint16Array {
  const n = model.jobCount;
  const shared = sharedTable(model);
  const judge = judgeFor(model);
  const bound = new Map<number, number>();
  for (let job = 0; job < n; job++) if (model.boundTo[job]! >= 0) bound.set(model.boundTo[job]!, job);
  let best = new Uint16Array(n);
  let least = Number.POSITIVE_INFINITY;
  const free = Array.from({ length: n }, (_, job) => job).filter((job) => model.boundTo[job] === -1);
  const due = (job: number) => model.question.jobs[model.jobAt[job]!]?.dueMinutes ?? Number.POSITIVE_INFINITY;
  const starts: (number | 'due')[] = model.isTimed ? ['due', ...free] : free.length === 0 ? [-1] : free;
  for (const start of starts.slice(0, 64)) {
    const left = new Set(free);
    const sequence = new Uint16Array(n);
    let previous = -1;
    for (let place = 0; place < n; place++) {
      let next = bound.get(place) ?? -1;
      if (next < 0) {
        if (left.size === free.length && typeof start === 'number') next = start;
        else {
          for (const job of left) {
            if (next < 0) next = job;
            else if (
              start === 'due'
                ? due(job) < due(next)
                : shared[previous * n + job]! > shared[previous * n + next]!
            )
              next = job;
          }
        }
        left.delete(next);
      }
      sequence[place] = next;
      previous = next;
    }
    const cost = judge.rebase(sequence, 0);
    if (cost < least) {
      least = cost;
      best = sequence;
    }
  }
  return best;
}

/** The sequence with its movable jobs mixed: another place to start from. */
export function mixSequence(model: OrderModel, sequence: Uint16Array, chance: Chance): Uint16Array {
  const mixed = sequence.slice();
  const places = movablePlaces(model);
  for (let at = places.length - 1; at > 0; at--) {
    const other = chanceBelow(chance, at + 1);
    const x = places[at]!;
    const y = places[other]!;
    [mixed[x], mixed[y]] = [mixed[y]!, mixed[x]!];
  }
  return mixed;
}

/** How the search cools and steps; set by measurement on published instances. */
export interface AnnealOptions {
  readonly seed: number;
  /** Places to evaluate in all. */
  readonly budget: number;
  /** Temperatures in feeders; absent: those that suit the room. */
  readonly hot?: number;
  readonly cold?: number;
  /** Loss of shared parts at which a step is looked at with probability 1 / e only. */
  readonly glance?: number;
  /** With much room: feeders that a step may be behind before its counting is given up; what is behind there mostly stays behind. */
  readonly slack?: number;
  /** Stop as soon as this many feeders are reached without lateness: it cannot be bettered. */
  readonly floor?: number;
  /** Where it starts. */
  readonly start: Uint16Array;
}

/**
 * Temperatures, in feeders, where the machine holds up to half of all parts, and where it holds more: there an order needs few feeders
 * and most steps change nothing, so that a cooler search gets further (published sets of 30 jobs with
 * room for 25 of 40 parts: short rounds on the eight hard ones reached the best known 22 times in 96 against 11 in 88; whole answers of a
 * second, three seeds, were 7 feeders over it against 11 in one set and 7 against 6 in the other).
 */
const TIGHT = { hot: 0.4, cold: 0.15 } as const;
const ROOMY = { hot: 0.3, cold: 0.12 } as const;
/** Loss of shared parts that a step may have before it is looked at with probability 1 / e only. */
const GLANCE = 4;
/** Feeders that a step may lose by a look at the jobs near its seams; each further one makes it e times less likely to be counted. */
const HOPELESS = 5;
/** Feeders that a step may be behind at a place after it before its counting is given up. */
const SLACK = 2;
/** A step that is refused at a glance, or after a closer look, costs about as much as so many places. */
const GLANCE_WORK = 1.5;
const CHUNK = 14_000;

/** Anneals; yields the best so far every so often and whenever it got better. */
export function* annealOrder(
  model: OrderModel,
  options: AnnealOptions,
): Generator<OrderProgress, OrderProgress> {
  const chance = seededChance(options.seed);
  const judge = judgeFor(model);
  const places = movablePlaces(model);
  let current = options.start.slice();
  let trial = current.slice();
  const row = searchRow(model, current);
  const { m, first, isStraight, placeOf } = row;
  let energy = judge.rebase(current, 0);
  let best = { sequence: current.slice(), lateMinutes: judge.late(), changes: judge.changes() };
  const isWhole = model.isUnit && !model.isTimed;
  // With much room feeders stay for long, and jobs a few places apart tell little.
  const isTight = isWhole && 2 * model.room <= model.partCount;
  const slack = isTight ? SLACK : (options.slack ?? SLACK);
  const glance = options.glance ?? GLANCE;
  const heat = isWhole && !isTight ? ROOMY : TIGHT;
  const hot = options.hot ?? heat.hot;
  const cold = options.cold ?? heat.cold;
  let glances = 0;
  let looks = 0;
  let nextYield = CHUNK;
  let share = 0;
  let temperature = hot;
  let sinceCooled = 0;
  const progress = (): OrderProgress => ({ ...best, share });
  if (m < 2) return { ...best, share: 1 };

  for (;;) {
    if (--sinceCooled < 0) {
      sinceCooled = 64;
      const done = judge.work() + (glances + looks) * GLANCE_WORK;
      share = Math.min(1, done / options.budget);
      if (share >= 1 || (best.lateMinutes === 0 && best.changes <= (options.floor ?? -1))) return progress();
      temperature = hot * (cold / hot) ** share;
      if (done > nextYield) {
        nextYield = done + CHUNK;
        yield progress();
      }
    }
    glances++;
    const step = drawStep(chance, row);
    if (step === null) continue;
    let isHopeless = false;
    if (isStraight) {
      const change = sharedChange(row, step);
      if (change < 0 && chance() > Math.exp(change / glance)) continue;
      applyStraight(step, first, { current, trial });
      if (isTight) {
        looks++;
        const over = nearLoss(row, step, trial) - HOPELESS;
        isHopeless = over > 0 && chance() > Math.exp(-over);
      }
    } else applyBound(step, places, { current, trial });
    const from = isStraight ? first + step.from : places[step.from]!;
    const to = isStraight ? first + step.to : places[step.to]!;
    const limit = isHopeless ? 0 : energy - temperature * Math.log(chance() + 1e-12);
    if (isHopeless || judge.count(trial, from, to, isWhole ? Math.floor(limit) : limit, slack) > limit) {
      for (let place = from; place <= to; place++) trial[place] = current[place]!;
      continue;
    }
    [current, trial] = [trial, current];
    row.current = current;
    energy = judge.rebase(current, from, to);
    for (let place = from; place <= to; place++) {
      trial[place] = current[place]!;
      placeOf[current[place]!] = place;
    }
    const late = judge.late();
    const changes = judge.changes();
    if (late < best.lateMinutes || (late === best.lateMinutes && changes < best.changes)) {
      best = { sequence: current.slice(), lateMinutes: late, changes };
    }
  }
}
