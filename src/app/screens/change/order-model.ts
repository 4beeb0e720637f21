// A list of jobs as the question that the search answers: parts of a product side, positions of the line, working minutes to the due time.

import { loadedFeeders } from '../../../../shared/changeover/loaded.ts';
import type { Learnt, learnHandling } from '../../../../shared/changeover/times.ts';
import type { PayloadOf } from '../../../../shared/floor/kinds.ts';
import type { FloorState, KeptPlan } from '../../../../shared/floor/state.ts';
import { type WorkingTime, workingSeconds } from '../../../../shared/forecast/working-time.ts';
import type { OrderQuestion } from '../../../../shared/order/problem.ts';
import { bankSizes } from './model.ts';

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
  /** Minutes that the lead set by hand; they go before what was learnt. */
  readonly byHand?: Partial<Record<HandlingName, number>>;
}

export const emptyList: OrderList = { jobs: [] };

/** A list that was changed on this tablet and is not kept; `sinceMs`: the kept order that it was changed from, null where none. */
export interface OrderDraft extends OrderList {
  readonly sinceMs: number | null;
}

/** The kept order as a list; empty where nobody kept one. */
export function keptList(plan: KeptPlan | undefined): OrderList {
  return plan ? { jobs: plan.jobs, byHand: definedOnly(plan.byHand) } : emptyList;
}

/** A list without the jobs that were begun; the list itself where none was. */
export function withoutBegun<L extends OrderList>(list: L, begun: ReadonlySet<string>): L {
  const jobs = list.jobs.filter(({ id }) => !begun.has(id));
  return jobs.length === list.jobs.length ? list : { ...list, jobs };
}

/** The list as the log keeps it. */
export function keptPayload(line: string, list: OrderList): PayloadOf<'plan.kept'> {
  const jobs = list.jobs.map(({ id, setup, panels, panelSeconds, dueMs, isHeld }) => ({
    id,
    setup,
    panels,
    panelSeconds,
    dueMs,
    isHeld,
  }));
  return { line, jobs, byHand: definedOnly(list.byHand ?? {}) };
}

/** True where two lists say the same: jobs, their order, places held, minutes set by hand. */
export function isSameList(one: OrderList, other: OrderList): boolean {
  const textOf = (list: OrderList) => JSON.stringify(keptPayload('', list));
  return textOf(one) === textOf(other);
}

/** Minutes set by hand, those that are set, always in the same order. */
function definedOnly(byHand: { readonly [name in HandlingName]?: number | undefined }) {
  const set: { [name in HandlingName]?: number } = {};
  for (const name of handlingNames) {
    const minutes = byHand[name];
    if (minutes !== undefined) set[name] = minutes;
  }
  return set;
}

/** Minutes that a changeover is computed with. */
export const handlingNames = ['putIn', 'takeOut', 'perChange'] as const;
export type HandlingName = (typeof handlingNames)[number];

/** Common practice until the floor has shown its own: minutes to put a feeder in, to take one out, for every changeover. */
export const usualMinutes: Readonly<Record<HandlingName, number>> = { putIn: 2, takeOut: 1, perChange: 15 };

/** What the floor has shown; nothing is learnt for `perChange`. */
export type LearntHandling = ReturnType<typeof learnHandling>;

/** Minutes with where they come from. */
export interface HandlingMinutes {
  readonly minutes: number;
  readonly from: 'hand' | 'learnt' | 'usual';
  /** The evidence, where learnt. */
  readonly learnt: Learnt | null;
}

/** The minutes to compute with: set by hand, else learnt, else common practice. */
export function handlingOf(
  list: OrderList,
  learnt: LearntHandling | null,
): Readonly<Record<HandlingName, HandlingMinutes>> {
  const one = (name: HandlingName): HandlingMinutes => {
    const hand = list.byHand?.[name];
    if (hand !== undefined) return { minutes: hand, from: 'hand', learnt: null };
    const seen = name === 'perChange' ? null : (learnt?.[name] ?? null);
    if (seen) return { minutes: seen.minutes, from: 'learnt', learnt: seen };
    return { minutes: usualMinutes[name], from: 'usual', learnt: null };
  };
  return { putIn: one('putIn'), takeOut: one('takeOut'), perChange: one('perChange') };
}

/** The list with minutes set by hand; null takes them back to what is learnt or usual. */
export function setByHand(list: OrderList, name: HandlingName, minutes: number | null): OrderList {
  const { [name]: _, ...others } = list.byHand ?? {};
  return { ...list, byHand: minutes === null ? others : { ...others, [name]: minutes } };
}

/** Positions of a whole line. */
export function linePositions(floor: FloorState, line: string): number {
  return Object.values(bankSizes(floor, line)).reduce((sum, positions) => sum + positions, 0);
}

/**
 * The list as a question, which begins when the job in hand is done. A due time that is past is taken as now; what is due before the
 * first job can begin has minutes below 0.
 */
export function toQuestion(
  floor: FloorState,
  line: string,
  more: {
    readonly list: OrderList;
    readonly calendar: WorkingTime;
    readonly nowMs: number;
    readonly learnt?: LearntHandling | null;
    /** Working seconds that the job in hand still takes; 0 where absent. */
    readonly beforeSeconds?: number;
  },
): OrderQuestion {
  const { list, calendar, nowMs, beforeSeconds = 0 } = more;
  const dueMinutes = (dueMs: number) =>
    (workingSeconds(calendar, nowMs, Math.max(nowMs, dueMs)) - beforeSeconds) / 60;
  const { putIn, takeOut, perChange } = handlingOf(list, more.learnt ?? null);
  const widths: Record<string, number> = {};
  const jobs = list.jobs.map((job) => {
    const slots = (floor.setups.get(job.setup)?.slots ?? []).filter((slot) => slot.perPanel > 0);
    for (const slot of slots) widths[slot.part] = Math.max(widths[slot.part] ?? 1, slot.positions);
    return {
      id: job.id,
      parts: [...new Set(slots.map((slot) => slot.part))],
      runMinutes: (job.panels * job.panelSeconds) / 60,
      ...(job.dueMs === null ? {} : { dueMinutes: dueMinutes(job.dueMs) }),
    };
  });
  const loaded = loadedFeeders(floor, line).filter((feeder) => feeder.part !== '');
  for (const feeder of loaded) widths[feeder.part] = Math.max(widths[feeder.part] ?? 1, feeder.width);
  return {
    capacity: Math.max(1, linePositions(floor, line)),
    jobs,
    widths,
    loaded: [...new Set(loaded.map((feeder) => feeder.part))],
    handling: { putIn: putIn.minutes, takeOut: takeOut.minutes, perChange: perChange.minutes },
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

/** Moves a job by one place, by its id; where it is not in the list, nothing changes. */
export function moveById(list: OrderList, id: string, step: -1 | 1): OrderList {
  return moveJob(
    list,
    list.jobs.findIndex((job) => job.id === id),
    step,
  );
}

/** The list with one job changed; null takes it off. */
export function changeJob(
  list: OrderList,
  id: string,
  edit: (job: ListedJob) => ListedJob | null,
): OrderList {
  return { ...list, jobs: list.jobs.flatMap((job) => (job.id === id ? (edit(job) ?? []) : job)) };
}

/** The jobs in the order that the search found (`order`: their places before). */
export function inOrder(list: OrderList, order: readonly number[]): OrderList {
  return { ...list, jobs: order.flatMap((place) => list.jobs[place] ?? []) };
}
