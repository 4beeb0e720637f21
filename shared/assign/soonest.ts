// Which feeders should stay while they stand idle, if free positions always lay side by side?
// Method: from job to job, of the idle feeders those stay that are needed soonest, as far as there is room (keep needed soonest: Tang and Denardo
// 1988, Operations Research 36(5) 767). For feeders of one width that is the best there is, so its count is a bound; for several widths it is a good
// start. Where each one stands is asked afterwards.

import type { AssignModel } from './problem.ts';
import { type Claim, usesOf } from './stays.ts';

/** Uses cut into the runs over which each feeder stays. */
export interface Soonest {
  readonly claims: readonly Claim[];
  /** Feeders put in. */
  readonly changes: number;
  /** Whether all feeders are equally wide, so that no assignment has fewer changes. */
  readonly isBound: boolean;
}

/** Cuts the feeders' uses by need and room alone. */
export function keepSoonest(model: AssignModel): Soonest {
  const width = (feeder: number) => model.feeders[feeder]!.width; // feeders of the model
  const usesBy = model.feeders.map(usesOf);
  const open = new Map<number, number[]>();
  const claims: Claim[] = [];
  for (const [feeder, uses] of usesBy.entries()) if (uses[0] === 0) open.set(feeder, [0]);
  const close = (feeder: number) => {
    const uses = open.get(feeder) ?? [];
    open.delete(feeder);
    if (uses.some((use) => use > 0)) claims.push({ feeder, uses });
  };
  const nextOf = (feeder: number, job: number) =>
    usesBy[feeder]?.find((use) => use > job) ?? Number.POSITIVE_INFINITY;
  for (let job = 1; job <= model.jobs; job++) {
    let room = model.capacity;
    const idle: number[] = [];
    for (const [feeder, uses] of usesBy.entries()) {
      if (uses.includes(job)) {
        room -= width(feeder);
        open.set(feeder, [...(open.get(feeder) ?? []), job]);
      } else if (open.has(feeder)) idle.push(feeder);
    }
    idle.sort((a, b) => nextOf(a, job) - nextOf(b, job) || width(a) - width(b) || a - b);
    for (const feeder of idle) {
      const stays = width(feeder) <= room && Number.isFinite(nextOf(feeder, job));
      if (stays) room -= width(feeder);
      else close(feeder);
    }
  }
  for (const feeder of [...open.keys()]) close(feeder);
  return {
    claims,
    changes: claims.filter(({ uses }) => uses[0] !== 0).length,
    isBound: new Set(model.feeders.map((feeder) => feeder.width)).size <= 1,
  };
}
