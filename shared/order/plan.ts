// For a given order of jobs: what goes in and what comes out before each job, and what drives it?
// Method: the machine is played job by job. A feeder comes out only where its room is needed: first what no later job
// needs, then what is not worth keeping, latest need first (keep needed soonest); with feeders of different widths the
// kept set of the area rule is spared as well, and the better of the two plays counts.
// Refused: taking out whatever the next job does not need; it costs hands twice.

import { fail, ok, type Result } from '../kit/result.ts';
import { areaCounter } from './keep-by-area.ts';
import { modelOrder, type OrderProblem, type OrderQuestion } from './problem.ts';

/** Why a feeder goes in: its first time, or back again since room was short in between. */
export interface InReason {
  readonly part: string;
  readonly why: 'first' | 'back';
  /** Where `back`: the job before which it came out. */
  readonly outBefore?: string;
}

/** One changeover of the plan. */
export interface JobLoad {
  readonly job: string;
  readonly in: readonly string[];
  readonly out: readonly string[];
  /** Positions taken once the job's feeders are in. */
  readonly taken: number;
  /** Minutes of handling by the learnt times; 0 where none are given. */
  readonly minutes: number;
  /** Minutes after the start at which the job ends. */
  readonly endMinutes: number;
  /** Minutes after its due time at which it ends; 0 where in time or without due time. */
  readonly lateMinutes: number;
}

/** What an order costs. */
export interface OrderPlan {
  readonly loads: readonly JobLoad[];
  /** Feeders put in over all jobs, the first included. */
  readonly changes: number;
  readonly minutes: number;
  readonly lateMinutes: number;
}

/** Plays the jobs in the order given (`order`: indices into `question.jobs`, each once). */
export function planOrder(
  question: OrderQuestion,
  order: readonly number[],
): Result<OrderPlan, readonly OrderProblem[]> {
  // Bound to its place, no job is merged into another: the model's places are the order's places.
  const locks = order.map((job, place) => ({ job: question.jobs[job]?.id ?? '', place }));
  const modelled = modelOrder({ ...question, locks });
  if (!modelled.ok) return fail(modelled.error);
  const model = modelled.value;
  const soonest = play(question, order, () => false);
  if (model.isUnit) return ok(soonest);
  const shift = model.hasLoad ? 1 : 0;
  const placed = Uint16Array.from([...(shift === 1 ? [0] : []), ...order.map((job) => job + shift)]);
  const kept = areaCounter(model).refine(placed).keptFrom;
  const numbers = new Map(model.partNames.map((part, number) => [part, number]));
  const byArea = play(question, order, (part, lastPlace) =>
    kept.has((numbers.get(part) ?? 0) * model.jobCount + lastPlace + shift),
  );
  return ok(byArea.changes <= soonest.changes ? byArea : soonest);
}

interface Candidate {
  readonly part: string;
  readonly width: number;
  readonly isSpared: boolean;
  /** Place of the next use; Infinity where there is none. */
  readonly nextUse: number;
}

function play(
  question: OrderQuestion,
  order: readonly number[],
  isSpared: (part: string, lastPlace: number) => boolean,
): OrderPlan {
  const widths = question.widths ?? {};
  const widthOf = (part: string) => (Object.hasOwn(widths, part) ? (widths[part] ?? 1) : 1);
  const uses = usesByPart(question, order);
  const lastUse = new Map<string, number>((question.loaded ?? []).map((part) => [part, -1]));
  const on = new Set(question.loaded ?? []);
  let taken = [...on].reduce((sum, part) => sum + widthOf(part), 0);
  const handling = question.handling ?? { putIn: 0, takeOut: 0, perChange: 0 };
  const loads: JobLoad[] = [];
  let clock = 0;
  order.forEach((index, place) => {
    const job = question.jobs[index];
    if (job === undefined)
      throw new RangeError(`Cannot plan order as job numbers must exist: current value is ${index}`);
    const needs = new Set(job.parts);
    const putIn = [...needs].filter((part) => !on.has(part));
    const over = taken + putIn.reduce((sum, part) => sum + widthOf(part), 0) - question.capacity;
    const candidates: Candidate[] = [];
    if (over > 0) {
      for (const part of on) {
        if (needs.has(part)) continue;
        const nextUse = uses.get(part)?.find((at) => at > place) ?? Number.POSITIVE_INFINITY;
        candidates.push({
          part,
          width: widthOf(part),
          nextUse,
          isSpared: isSpared(part, lastUse.get(part) ?? -1),
        });
      }
    }
    const takeOut = chooseOut(candidates, over);
    for (const part of takeOut) on.delete(part);
    for (const part of putIn) on.add(part);
    for (const part of needs) lastUse.set(part, place);
    taken = [...on].reduce((sum, part) => sum + widthOf(part), 0);
    const minutes =
      putIn.length * handling.putIn +
      takeOut.length * handling.takeOut +
      (putIn.length + takeOut.length > 0 ? handling.perChange : 0);
    clock += minutes + (job.runMinutes ?? 0);
    const lateMinutes = job.dueMinutes === undefined ? 0 : Math.max(0, clock - job.dueMinutes);
    loads.push({ job: job.id, in: putIn, out: takeOut, taken, minutes, endMinutes: clock, lateMinutes });
  });
  return {
    loads,
    changes: loads.reduce((sum, load) => sum + load.in.length, 0),
    minutes: loads.reduce((sum, load) => sum + load.minutes, 0),
    lateMinutes: loads.reduce((sum, load) => sum + load.lateMinutes, 0),
  };
}

function usesByPart(question: OrderQuestion, order: readonly number[]): Map<string, number[]> {
  const uses = new Map<string, number[]>();
  order.forEach((index, place) => {
    for (const part of new Set(question.jobs[index]?.parts ?? [])) {
      const places = uses.get(part);
      if (places === undefined) uses.set(part, [place]);
      else places.push(place);
    }
  });
  return uses;
}

/** Least wanted first until `over` positions are free; then back whatever need not have gone. */
function chooseOut(candidates: Candidate[], over: number): string[] {
  candidates.sort(
    (x, y) =>
      Number(x.isSpared) - Number(y.isSpared) ||
      (x.nextUse === y.nextUse ? 0 : y.nextUse - x.nextUse) ||
      y.width - x.width ||
      (x.part < y.part ? -1 : 1),
  );
  const chosen: Candidate[] = [];
  let left = over;
  for (const candidate of candidates) {
    if (left <= 0) break;
    chosen.push(candidate);
    left -= candidate.width;
  }
  const out: string[] = [];
  for (let i = chosen.length - 1; i >= 0; i--) {
    const candidate = chosen[i];
    if (candidate === undefined) continue;
    if (left + candidate.width <= 0) left += candidate.width;
    else out.push(candidate.part);
  }
  return out.reverse();
}

/** Says for each feeder put in before the job at `place` whether it is new or comes back, and since when it was off. */
export function explainChange(plan: OrderPlan, place: number): readonly InReason[] {
  const load = plan.loads[place];
  if (load === undefined) return [];
  return load.in.map((part): InReason => {
    for (let before = place - 1; before >= 0; before--) {
      const earlier = plan.loads[before];
      if (earlier?.out.includes(part)) return { part, why: 'back', outBefore: earlier.job };
    }
    return { part, why: 'first' };
  });
}
