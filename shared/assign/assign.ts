// Where does each part of each job stand, so that the fewest feeders are put in over all jobs in their order?
// Method: a search that builds and mends (search.ts); for small questions an exact one beside it (exact.ts). It proposes places for feeders; which
// head places what, and when, is another question.

import { fail, ok, type Result } from '../kit/result.ts';
import { spreadLoad } from './balance.ts';
import { joinStays, packJob } from './build.ts';
import { fewestChanges, isSmallEnough, proveAssignment } from './exact.ts';
import { type AssignFault, type AssignModel, type AssignQuestion, modelOf } from './problem.ts';
import { searchAssignment } from './search.ts';
import { keepSoonest } from './soonest.ts';
import { changesOf, type Stay } from './stays.ts';

/** A place for each part of one job. */
export interface AssignedJob {
  readonly id: string;
  /** In the order of the job's parts. */
  readonly slots: readonly { readonly slot: string; readonly part: string }[];
  /** Feeders put in before this job, moved ones too. */
  readonly changes: number;
}

/** The proposal. */
export interface Assignment {
  readonly jobs: readonly AssignedJob[];
  readonly changes: number;
  /** No assignment has fewer changes than this. */
  readonly lowest: number;
  readonly isProven: boolean;
}

/** Why there is none: a contradiction in the question, or a job that does not fit the line. */
export type AssignFailure =
  | { readonly code: 'fault'; readonly fault: AssignFault }
  | {
      readonly code: 'no-room';
      readonly job: string;
      /** Positions that the job needs and the line has. */
      readonly needed: number;
      readonly capacity: number;
      /** Its parts, widest first. */
      readonly parts: readonly { readonly part: string; readonly width: number }[];
    };

/** The first job whose parts do not all fit on the line, as a failure. */
function noRoom(question: AssignQuestion, model: AssignModel): AssignFailure | null {
  for (const [at, { id, parts }] of question.jobs.entries()) {
    const feeders = model.feeders.flatMap(({ uses }, feeder) => (uses.includes(at + 1) ? [feeder] : []));
    if (packJob(model, feeders) !== null) continue;
    return {
      code: 'no-room',
      job: id,
      needed: parts.reduce((sum, { width }) => sum + width, 0),
      capacity: model.capacity,
      parts: parts.map(({ part, width }) => ({ part, width })).sort((a, b) => b.width - a.width),
    };
  }
  return null;
}

function answer(
  question: AssignQuestion,
  model: AssignModel,
  stays: readonly Stay[],
): readonly AssignedJob[] {
  const byJob = question.jobs.map(() => new Map<string, string>());
  const changes = new Int32Array(question.jobs.length + 1);
  for (const { feeder, uses, start } of stays) {
    const first = uses[0] ?? 0;
    if (first > 0) changes[first]!++;
    // Stays name feeders of the model; their uses are jobs.
    for (const use of uses)
      if (use > 0) byJob[use - 1]!.set(model.feeders[feeder]!.part, model.slotAt(start));
  }
  return question.jobs.map(({ id, parts }, at) => ({
    id,
    slots: parts.map(({ part }) => ({ slot: byJob[at]?.get(part) ?? '', part })),
    changes: changes[at + 1]!,
  }));
}

/**
 * Proposes a place for each part of each job. Deterministic. Exact where the question is small (about a dozen parts and three jobs), else as good as a fixed amount of
 * search finds; `isProven` says which. Fails where the question contradicts itself or a job does not fit.
 */
export function assignSlots(question: AssignQuestion): Result<Assignment, AssignFailure> {
  const made = modelOf(question);
  if (!made.ok) return fail({ code: 'fault', fault: made.error });
  const model = made.value;
  const failure = noRoom(question, model);
  if (failure !== null) return fail(failure);
  const soonest = keepSoonest(model);
  const lowest = Math.max(fewestChanges(model), soonest.isBound ? soonest.changes : 0);
  let stays = searchAssignment(model, soonest.claims, lowest) ?? [];
  let isProven = changesOf(stays) === lowest;
  if (!isProven && isSmallEnough(model)) {
    const exact = proveAssignment(model, changesOf(stays));
    if (exact.stays !== null) stays = joinStays(model, exact.stays);
    isProven = exact.isProven;
  }
  const spread = spreadLoad(model, stays);
  const changes = changesOf(spread);
  return ok({
    jobs: answer(question, model, spread),
    changes,
    lowest: isProven ? changes : lowest,
    isProven,
  });
}
