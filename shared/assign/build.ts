// One assignment for a given order of preference.
// Method: claims are placed one after the other, each with the longest run of its uses that fits; what is left of it is a new claim. A single
// use that fits nowhere makes room: feeders that stand idle there are cut, and where that is not enough the whole job is packed anew.

import type { AssignModel } from './problem.ts';
import {
  addStay,
  bestRun,
  type Chart,
  type Claim,
  emptyChart,
  isFree,
  removeStay,
  type Stay,
} from './stays.ts';

/** A whole assignment, and the feeders that did not get one stay for all their uses, in the order in which that was seen. */
export interface Built {
  readonly stays: readonly Stay[];
  readonly split: readonly number[];
}

/** Places of feeders in one job: widest first, each in the first bank that it fits, with a search where that fails. Null where they do not fit. */
export function packJob(model: AssignModel, feeders: readonly number[]): ReadonlyMap<number, number> | null {
  const width = (feeder: number) => model.feeders[feeder]!.width; // feeders of the model
  const sorted = [...feeders].sort((a, b) => width(b) - width(a) || a - b);
  const left = model.banks.map(({ positions }) => positions);
  const bankOf: number[] = [];
  const total = sorted.reduce((sum, feeder) => sum + width(feeder), 0);
  if (total > model.capacity) return null;
  let steps = 0;
  const place = (at: number): boolean => {
    const feeder = sorted[at];
    if (feeder === undefined) return true;
    if (++steps > 200_000) return false;
    const tried = new Set<number>();
    const order = left.map((_, bank) => bank).sort((a, b) => left[a]! - left[b]! || a - b);
    for (const bank of order) {
      const room = left[bank]!; // a bank of the model
      if (room < width(feeder) || tried.has(room)) continue;
      tried.add(room);
      left[bank] = room - width(feeder);
      bankOf[at] = bank;
      if (place(at + 1)) return true;
      left[bank] = room;
    }
    return false;
  };
  if (!place(0)) return null;
  const next = model.banks.map(({ from }) => from);
  const starts = new Map<number, number>();
  for (const [at, feeder] of sorted.entries()) {
    const bank = bankOf[at]!; // set by the search
    starts.set(feeder, next[bank]!);
    next[bank] = next[bank]! + width(feeder);
  }
  return starts;
}

/** Cuts a stay around a job: what lies before it stays, what lies behind it becomes a claim; a use in the job itself is dropped. */
function cutAround(chart: Chart, number: number, job: number): readonly Claim[] {
  const stay = removeStay(chart, number);
  const before = stay.uses.filter((use) => use < job);
  const behind = stay.uses.filter((use) => use > job);
  if (before.some((use) => use > 0)) addStay(chart, { ...stay, uses: before });
  return behind.length === 0 ? [] : [{ feeder: stay.feeder, uses: behind }];
}

/** Makes room for one use where the fewest idle feeders are cut; null where feeders in use stand in the way everywhere. */
function makeRoom(
  chart: Chart,
  claim: Claim,
  job: number,
): { readonly start: number; readonly cut: readonly number[] } | null {
  const { model } = chart;
  const { width } = model.feeders[claim.feeder]!; // a claim names a feeder of its model
  let best: { start: number; cut: readonly number[] } | null = null;
  for (let start = 0; start + width <= model.length; start++) {
    const cut = new Set<number>();
    let fits = true;
    for (let at = start; fits && at < start + width; at++) {
      const mark = chart.cells[job * model.length + at]!; // within the chart
      if (model.blocked[at] === 1) fits = false;
      else if (mark !== 0) {
        fits = chart.stays[mark - 1]?.uses.includes(job) === false;
        cut.add(mark - 1);
      }
    }
    if (fits && (best === null || cut.size < best.cut.length)) best = { start, cut: [...cut] };
  }
  return best;
}

/** Packs a job anew: every stay through it is cut, its feeders get the places of a packing of their own. False where they do not fit. */
function repack(chart: Chart, feeders: readonly number[], job: number, queue: Claim[]): boolean {
  const starts = packJob(chart.model, feeders);
  if (starts === null) return false;
  const through = new Set(chart.cells.subarray(job * chart.model.length, (job + 1) * chart.model.length));
  for (const mark of through) if (mark !== 0) queue.push(...cutAround(chart, mark - 1, job));
  for (const [feeder, start] of starts) addStay(chart, { feeder, uses: [job], start });
  for (let at = queue.length - 1; at >= 0; at--) {
    const claim = queue[at]!; // below the length
    const uses = claim.uses.filter((use) => use !== job);
    if (uses.length === claim.uses.length) continue;
    if (uses.every((use) => use === 0)) queue.splice(at, 1);
    else queue[at] = { feeder: claim.feeder, uses };
  }
  return true;
}

/** Builds an assignment; `claims`: all uses of all feeders, the most preferred first. Null where a job does not fit the line. */
export function build(model: AssignModel, claims: readonly Claim[]): Built | null {
  const chart = emptyChart(model);
  const queue: Claim[] = [...claims];
  const needs = Array.from({ length: model.jobs + 1 }, (_, job) =>
    model.feeders.flatMap(({ uses }, feeder) => (uses.includes(job) ? [feeder] : [])),
  );
  const split: number[] = [];
  for (let at = 0; at < queue.length; at++) {
    const claim = queue[at]!; // below the length
    const run = bestRun(chart, claim);
    if (run !== null) {
      addStay(chart, {
        feeder: claim.feeder,
        uses: claim.uses.slice(run.from, run.to + 1),
        start: run.start,
      });
      const rest = [claim.uses.slice(0, run.from), claim.uses.slice(run.to + 1)].filter((uses) =>
        uses.some((use) => use > 0),
      );
      if (rest.length > 0 || (run.from > 0 && claim.uses[0] === 0)) split.push(claim.feeder);
      queue.push(...rest.map((uses) => ({ feeder: claim.feeder, uses })));
      continue;
    }
    split.push(claim.feeder);
    const job = claim.uses.find((use) => use > 0);
    if (job === undefined) continue;
    const later = claim.uses.filter((use) => use > job);
    if (later.length > 0) queue.push({ feeder: claim.feeder, uses: later });
    const room = makeRoom(chart, claim, job);
    if (room !== null) {
      for (const number of room.cut) queue.push(...cutAround(chart, number, job));
      addStay(chart, { feeder: claim.feeder, uses: [job], start: room.start });
    } else {
      const ahead = queue.splice(at + 1);
      if (!repack(chart, needs[job] ?? [], job, ahead)) return null;
      queue.push(...ahead);
    }
  }
  return {
    stays: joinStays(
      model,
      chart.stays.filter((stay) => stay !== null),
    ),
    split,
  };
}

/**
 * The stays with those of one feeder joined that follow one another on one place with nothing in between: after cuts and new packings some do, and a
 * feeder that nobody touches is not put in again. A stay on the feeder's loaded place that nothing else took before begins loaded.
 */
export function joinStays(model: AssignModel, given: readonly Stay[]): readonly Stay[] {
  const chart = emptyChart(model);
  for (const stay of given) addStay(chart, stay);
  const byFeeder = new Map<number, Stay[]>();
  for (const stay of given) byFeeder.set(stay.feeder, [...(byFeeder.get(stay.feeder) ?? []), stay]);
  const result: Stay[] = [];
  for (const [feeder, stays] of byFeeder) {
    const { width, loadedAt } = model.feeders[feeder]!; // feeders of the model
    const isFreeBetween = (start: number, after: number, before: number) => {
      for (let job = after + 1; job < before; job++) if (!isFree(chart, job, start, width)) return false;
      return true;
    };
    let isLoadedUsed = false;
    let last: Stay | undefined;
    for (const stay of stays.sort((a, b) => (a.uses[0] ?? 0) - (b.uses[0] ?? 0))) {
      const first = stay.uses[0] ?? 0;
      let next = stay;
      if (first === 0) isLoadedUsed = true;
      else if (!isLoadedUsed && loadedAt.includes(stay.start) && isFreeBetween(stay.start, 0, first)) {
        next = { ...stay, uses: [0, ...stay.uses] };
        isLoadedUsed = true;
        addStay(chart, { ...next, uses: next.uses.slice(0, 2) });
      }
      const end: number = last?.uses.at(-1) ?? 0;
      if (
        last !== undefined &&
        next.uses[0] !== 0 &&
        last.start === next.start &&
        isFreeBetween(next.start, end, first)
      ) {
        last = { ...last, uses: [...last.uses, ...next.uses] };
        result[result.length - 1] = last;
        addStay(chart, last);
      } else {
        last = next;
        result.push(next);
      }
    }
  }
  return result;
}
