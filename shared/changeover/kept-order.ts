// What of a kept order of jobs is still to come? Method: each run that began on the line since the order was kept takes the first job of
// its setup off, as nobody ties a run to a job. Refused: counting panels against jobs; a run that is ended early is not begun again by
// the order, but by a person.

import type { FloorState, KeptPlan } from '../floor/state.ts';

type Job = KeptPlan['jobs'][number];

/** The kept jobs that were not begun, in their order; none where nobody kept an order for the line. */
export function jobsToCome(state: FloorState, line: string): readonly Job[] {
  const begun = begunJobs(state, line);
  return (state.plans.get(line)?.jobs ?? []).filter(({ id }) => !begun.has(id));
}

/** Ids of the kept jobs of a line that were begun since the order was kept. */
export function begunJobs(state: FloorState, line: string): ReadonlySet<string> {
  const plan = state.plans.get(line);
  const begun = new Set<string>();
  if (!plan) return begun;
  const runs = [...state.runs.values()]
    .filter((run) => run.line === line && run.startedMs >= plan.atMs)
    .sort((a, b) => a.startedMs - b.startedMs);
  for (const run of runs) {
    const job = plan.jobs.find(({ id, setup }) => setup === run.setup && !begun.has(id));
    if (job) begun.add(job.id);
  }
  return begun;
}
