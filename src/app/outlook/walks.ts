// Plans the walks of an outlook after what is shown has been drawn; several changes in a row make one plan.

import type { Signal } from '@preact/signals';
import type { WalkAnswer } from '../../../shared/forecast/walks.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import { toWalkPlan, type WalkPlan, walkQuestion } from '../../../shared/outlook/walks.ts';
import type { App } from '../app.ts';
import { unlessAwaited } from '../device/awaited.ts';
import { startPlanner } from './planner.ts';

/** Splices are shared anew among several people no more often than this. */
const SHARE_EVERY_MS = 60_000;

/** The state of planning. */
export interface Walker {
  readonly app: App;
  readonly outlook: Signal<Outlook | null>;
  readonly walks: Signal<WalkPlan | null>;
  readonly planner: ReturnType<typeof startPlanner>;
  /** What the last plan was asked for. */
  planned: { readonly run: string; readonly operators: number } | null;
  isWaiting: boolean;
  /** When splices were last shared among people. */
  sharedMs: number;
}

/** Makes ready for plans. */
export function createWalker(of: Pick<Walker, 'app' | 'outlook' | 'walks'>): Walker {
  const planner = startPlanner();
  return { ...of, planner, planned: null, isWaiting: false, sharedMs: Number.NEGATIVE_INFINITY };
}

/** Has a plan made soon. */
export function planSoon(walker: Walker): void {
  if (walker.isWaiting) return;
  walker.isWaiting = true;
  setTimeout(() => {
    walker.isWaiting = false;
    plan(walker);
  }, 0);
}

function plan(walker: Walker): void {
  const { app, walks, planner } = walker;
  const now = walker.outlook.peek();
  if (!now) {
    walks.value = null;
    walker.planned = null;
    return;
  }
  const operators = app.store.floor().crews.get(now.line) ?? 1;
  const isSame = walker.planned?.run === now.run.run && walker.planned.operators === operators;
  const known = isSame ? walks.peek()?.known : undefined;
  if (!isSame) walker.planned = { run: now.run.run, operators };
  const keepShares = known !== undefined && Math.abs(now.pace.nowMs - walker.sharedMs) < SHARE_EVERY_MS;
  if (!keepShares) walker.sharedMs = now.pace.nowMs;
  const { question, slots } = walkQuestion(now, {
    operators,
    remedies: true,
    keepShares,
    ...(known === undefined ? {} : { known }),
  });
  const asked = walker.planned;
  const take = (answer: WalkAnswer) => {
    // Another run, another crew or none by now: this plan is nobody's. Another line may have come into hand since, which asks in a moment.
    const run = walker.outlook.peek()?.run.run;
    if (walker.planned === asked && run === asked?.run) walks.value = toWalkPlan(answer, slots);
  };
  planner(question, (answer) => unlessAwaited(() => take(answer)));
}
