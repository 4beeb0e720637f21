// A list of jobs as the question that the search answers: parts of a product side, positions of the line, working minutes to the due time.

import type { OrderQuestion } from '../../../../shared/changeover/order-problem.ts';
import { type WorkingTime, workingSeconds } from '../../../../shared/forecast/working-time.ts';
import type { FloorState } from '../../../../shared/setup/state.ts';
import { bankSizes, loadedFeeders } from './model.ts';

/** One job of the list, in the order shown. */
export interface ListedJob {
  readonly id: string;
  readonly setup: string;
  readonly panels: number;
  readonly panelSeconds: number;
  readonly dueMs: number | null;
  readonly isHeld: boolean;
}

/** What a lead keeps of the list. */
export interface OrderList {
  readonly jobs: readonly ListedJob[];
  readonly putIn: number;
  readonly takeOut: number;
  readonly perChange: number;
}

/** Common practice until the floor has shown its own: minutes to put a feeder in, to take one out, for every changeover. */
export const emptyList: OrderList = { jobs: [], putIn: 2, takeOut: 1, perChange: 15 };

/** Positions of a whole line. */
export function linePositions(floor: FloorState, line: string): number {
  return Object.values(bankSizes(floor, line)).reduce((sum, positions) => sum + positions, 0);
}

/** The list as a question. A due time that is past is 0 minutes away, and the job is late by all it takes. */
export function toQuestion(
  floor: FloorState,
  line: string,
  more: { readonly list: OrderList; readonly calendar: WorkingTime; readonly nowMs: number },
): OrderQuestion {
  const { list, calendar, nowMs } = more;
  const widths: Record<string, number> = {};
  const jobs = list.jobs.map((job) => {
    const slots = (floor.setups.get(job.setup)?.slots ?? []).filter((slot) => slot.perPanel > 0);
    for (const slot of slots) widths[slot.part] = Math.max(widths[slot.part] ?? 1, slot.positions);
    return {
      ...{ id: job.id, parts: [...new Set(slots.map((slot) => slot.part))] },
      runMinutes: (job.panels * job.panelSeconds) / 60,
      ...(job.dueMs === null
        ? {}
        : { dueMinutes: workingSeconds(calendar, nowMs, Math.max(nowMs, job.dueMs)) / 60 }),
    };
  });
  const loaded = loadedFeeders(floor, line).filter((feeder) => feeder.part !== '');
  for (const feeder of loaded) widths[feeder.part] = Math.max(widths[feeder.part] ?? 1, feeder.width);
  return {
    ...{ capacity: Math.max(1, linePositions(floor, line)), jobs, widths },
    loaded: [...new Set(loaded.map((feeder) => feeder.part))],
    handling: { putIn: list.putIn, takeOut: list.takeOut, perChange: list.perChange },
    locks: list.jobs.flatMap((job, place) => (job.isHeld ? [{ job: job.id, place }] : [])),
  };
}

/** Swaps a job with its neighbour; at either end nothing changes. */
export function moveJob(list: OrderList, at: number, step: -1 | 1): OrderList {
  const one = list.jobs[at];
  const other = list.jobs[at + step];
  if (!one || !other) return list;
  const jobs = [...list.jobs];
  jobs[at] = other;
  jobs[at + step] = one;
  return { ...list, jobs };
}

/** The jobs in the order that the search found (`order`: their places before). */
export function inOrder(list: OrderList, order: readonly number[]): OrderList {
  return { ...list, jobs: order.flatMap((place) => list.jobs[place] ?? []) };
}
