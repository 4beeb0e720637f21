// What the search for an order of jobs works on: jobs and parts by number, sets as bits, places that may move.
// Method: a part that no job needs plays no role; what is loaded before the first job is a fixed job at place 0 that
// costs nothing; feeders that all take the same room are counted in feeders, not in positions; a job whose parts are
// all in another job's list rides right after it and is not searched (Yanasse 2009), unless due times or locks forbid it.
// Refused: keeping names in the inner loops; a lookup by name costs more than the whole arithmetic of one step.

import { fail, ok, type Result } from '../kit/result.ts';

/** One job of the list. */
export interface OrderJob {
  readonly id: string;
  /** Parts that must be on the machine while the job runs; a part listed twice counts once. */
  readonly parts: readonly string[];
  /** Running time in minutes without the changeover before it (>= 0); 0 where absent. */
  readonly runMinutes?: number;
  /** Latest end in minutes after the start of the first changeover; below 0 where it is due before that. */
  readonly dueMinutes?: number;
}

/** What one handling takes, in minutes, as learnt on this line. */
export interface HandlingMinutes {
  /** Putting one feeder in. */
  readonly putIn: number;
  /** Taking one feeder out. */
  readonly takeOut: number;
  /** Every changeover, however small. */
  readonly perChange: number;
}

/** The whole question: which order of the jobs needs the fewest feeders put in? */
export interface OrderQuestion {
  /** Positions of the machine, whole, >= 1. */
  readonly capacity: number;
  readonly jobs: readonly OrderJob[];
  /** Positions that a part's feeder takes, whole, >= 1; 1 where absent. */
  readonly widths?: Readonly<Record<string, number>>;
  /** Parts on the machine before the first job. */
  readonly loaded?: readonly string[];
  readonly handling?: HandlingMinutes;
  /** Jobs that must run at a given place, counted from 0. */
  readonly locks?: readonly { readonly job: string; readonly place: number }[];
}

/** Why a question cannot be answered. */
export const orderProblemCodes = [
  'job-too-wide',
  'loaded-too-wide',
  'job-twice',
  'lock-unknown-job',
  'lock-place',
  'lock-twice',
] as const;
/** One reason, with its facts. */
export interface OrderProblem {
  readonly code: (typeof orderProblemCodes)[number];
  /** The job that it concerns, where it concerns one. */
  readonly job?: string;
  /** Positions over the capacity. */
  readonly over?: number;
  /** The feeders concerned, widest first. */
  readonly parts?: readonly string[];
  readonly place?: number;
}

/** The question in numbers. Searched jobs are 0 … jobCount - 1; with a load before, job 0 is that load at place 0. */
export interface OrderModel {
  readonly question: OrderQuestion;
  /** Searched jobs, the load before included. */
  readonly jobCount: number;
  readonly partCount: number;
  readonly partNames: readonly string[];
  /** Room in units: feeders where all take the same, positions else. */
  readonly room: number;
  readonly widthOf: Uint16Array;
  /** All feeders take one unit. */
  readonly isUnit: boolean;
  /** Parts of job j: `parts[starts[j] … starts[j + 1] - 1]`. */
  readonly starts: Int32Array;
  readonly parts: Uint16Array;
  /** Units left beside job j's own feeders. */
  readonly freeBeside: Int32Array;
  /** Place 0 is the load before. */
  readonly hasLoad: boolean;
  /** Place that a searched job is bound to, -1 where free. */
  readonly boundTo: Int32Array;
  /** Index into `question.jobs` of each searched job; -1 for the load before. */
  readonly jobAt: Int32Array;
  /** Jobs that ride right after a searched job. */
  readonly riders: readonly (readonly number[])[];
  /** Feeders that every order must put in: parts needed and not loaded. */
  readonly firstTimes: number;
  /** Sum of all searched jobs' parts, the load before left out. */
  readonly partTotal: number;
  /** Due times or handling times bind: minutes matter. */
  readonly isTimed: boolean;
}

/** Reads the question into numbers, or says every reason why it cannot be answered. */
export function modelOrder(question: OrderQuestion): Result<OrderModel, readonly OrderProblem[]> {
  const widths = question.widths ?? {};
  const widthByName = (part: string): number => (Object.hasOwn(widths, part) ? (widths[part] ?? 1) : 1);
  const problems = [...fitProblems(question, widthByName), ...lockProblems(question)];
  if (problems.length > 0) return fail(problems);

  const numbers = new Map<string, number>();
  const sets = question.jobs.map(
    (job) =>
      new Set(
        job.parts.map((part) => {
          const known = numbers.get(part);
          if (known !== undefined) return known;
          numbers.set(part, numbers.size);
          return numbers.size - 1;
        }),
      ),
  );
  const partNames = [...numbers.keys()];
  const load = new Set((question.loaded ?? []).flatMap((part) => numbers.get(part) ?? []));
  const isTimed = question.jobs.some((job) => job.dueMinutes !== undefined);
  const mayMerge = !isTimed && (question.locks ?? []).length === 0;
  const { kept, riders } = mayMerge ? mergeJobs(sets) : { kept: sets.map((_, job) => job), riders: [] };
  const hasLoad = load.size > 0;
  const searched = [...(hasLoad ? [load] : []), ...kept.map((job) => sets[job] ?? new Set<number>())];
  return ok({
    ...countRoom(question.capacity, partNames.map(widthByName), searched),
    question,
    jobCount: searched.length,
    partCount: partNames.length,
    partNames,
    hasLoad,
    boundTo: boundPlaces(question, kept, hasLoad),
    jobAt: Int32Array.from([...(hasLoad ? [-1] : []), ...kept]),
    riders: [...(hasLoad ? [[]] : []), ...kept.map((job) => riders[job] ?? [])],
    firstTimes: partNames.length - load.size,
    partTotal: kept.reduce((sum, job) => sum + (sets[job]?.size ?? 0), 0),
    isTimed,
  });
}

function fitProblems(question: OrderQuestion, widthOf: (part: string) => number): OrderProblem[] {
  const problems: OrderProblem[] = [];
  const over = (parts: readonly string[]): { over: number; parts: string[] } | null => {
    const unique = [...new Set(parts)];
    const taken = unique.reduce((sum, part) => sum + widthOf(part), 0);
    if (taken <= question.capacity) return null;
    unique.sort((x, y) => widthOf(y) - widthOf(x));
    return { over: taken - question.capacity, parts: unique };
  };
  const seen = new Set<string>();
  for (const job of question.jobs) {
    if (seen.has(job.id)) problems.push({ code: 'job-twice', job: job.id });
    seen.add(job.id);
    const much = over(job.parts);
    if (much !== null) problems.push({ code: 'job-too-wide', job: job.id, ...much });
  }
  const much = over(question.loaded ?? []);
  if (much !== null) problems.push({ code: 'loaded-too-wide', ...much });
  return problems;
}

function lockProblems(question: OrderQuestion): OrderProblem[] {
  const problems: OrderProblem[] = [];
  const ids = new Set(question.jobs.map((job) => job.id));
  const takenPlaces = new Set<number>();
  const lockedJobs = new Set<string>();
  for (const lock of question.locks ?? []) {
    const facts = { job: lock.job, place: lock.place };
    if (!ids.has(lock.job)) problems.push({ code: 'lock-unknown-job', ...facts });
    else if (!Number.isInteger(lock.place) || lock.place < 0 || lock.place >= question.jobs.length) {
      problems.push({ code: 'lock-place', ...facts });
    } else if (takenPlaces.has(lock.place) || lockedJobs.has(lock.job)) {
      problems.push({ code: 'lock-twice', ...facts });
    }
    takenPlaces.add(lock.place);
    lockedJobs.add(lock.job);
  }
  return problems;
}

function isWithin(small: ReadonlySet<number>, large: ReadonlySet<number>): boolean {
  if (small.size > large.size) return false;
  for (const part of small) if (!large.has(part)) return false;
  return true;
}

function mergeJobs(sets: readonly ReadonlySet<number>[]): { kept: number[]; riders: number[][] } {
  const order = sets
    .map((_, job) => job)
    .sort((x, y) => (sets[y]?.size ?? 0) - (sets[x]?.size ?? 0) || x - y);
  const kept: number[] = [];
  const riders: number[][] = sets.map(() => []);
  for (const job of order) {
    const host = kept.find((other) => isWithin(sets[job] ?? new Set(), sets[other] ?? new Set()));
    if (host === undefined) kept.push(job);
    else riders[host]?.push(job);
  }
  kept.sort((x, y) => x - y);
  return { kept, riders };
}

function countRoom(capacity: number, widths: readonly number[], searched: readonly ReadonlySet<number>[]) {
  const first = widths[0] ?? 1;
  const isUnit = widths.every((width) => width === first);
  const room = isUnit ? Math.floor(capacity / first) : capacity;
  const widthOf = Uint16Array.from(widths, (width) => (isUnit ? 1 : width));
  const starts = new Int32Array(searched.length + 1);
  const flat: number[] = [];
  const freeBeside = new Int32Array(searched.length);
  searched.forEach((set, job) => {
    let taken = 0;
    for (const part of [...set].sort((x, y) => x - y)) {
      flat.push(part);
      taken += widthOf[part] ?? 1;
    }
    freeBeside[job] = room - taken;
    starts[job + 1] = flat.length;
  });
  return { isUnit, room, widthOf, starts, parts: Uint16Array.from(flat), freeBeside };
}

function boundPlaces(question: OrderQuestion, kept: readonly number[], hasLoad: boolean): Int32Array {
  const shift = hasLoad ? 1 : 0;
  const bound = new Int32Array(kept.length + shift).fill(-1);
  if (hasLoad) bound[0] = 0;
  const placeOf = new Map((question.locks ?? []).map((lock) => [lock.job, lock.place]));
  kept.forEach((job, at) => {
    const place = placeOf.get(question.jobs[job]?.id ?? '');
    if (place !== undefined) bound[at + shift] = place + shift;
  });
  return bound;
}

/** Writes a searched sequence as indices into `question.jobs`, riders right after their hosts. */
export function toJobOrder(model: OrderModel, sequence: ArrayLike<number>): number[] {
  const order: number[] = [];
  for (let at = 0; at < sequence.length; at++) {
    const searched = sequence[at] ?? 0;
    const job = model.jobAt[searched] ?? -1;
    if (job >= 0) order.push(job, ...(model.riders[searched] ?? []));
  }
  return order;
}
