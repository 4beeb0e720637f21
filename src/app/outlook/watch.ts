// Watches the line: a new outlook with every change and every few seconds; raises warnings once, in the log, so that neither a
// reload nor another tablet forgets or repeats them; calls until somebody takes note.

import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { lifeOnShelf } from '../../../shared/desk/floor-life.ts';
import { needKey } from '../../../shared/floor/state.ts';
import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import type { LawMemory } from '../../../shared/forecast/run-out.ts';
import type { WarningState } from '../../../shared/forecast/warnings.ts';
import type { WorkingTime } from '../../../shared/forecast/working-time.ts';
import { formatMoment } from '../../../shared/kit/moment.ts';
import { type Outlook, openWarnings, outlookSteps, type SlotOutlook } from '../../../shared/outlook/line.ts';
import { type Supply, supplyQuestion, toSupply } from '../../../shared/outlook/supply.ts';
import { toWalkPlan, type WalkPlan, walkQuestion } from '../../../shared/outlook/walks.ts';
import type { App } from '../app.ts';
import type { Alarm } from '../device/alarm.ts';
import { startPlanner, startSupplier } from './planner.ts';

/** A look goes on for this long at a time: well below what a person notices. */
const SLICE_MS = 8;
/** This often a look may begin anew because something changed. */
const RESTARTS = 3;
/** A new look at the clock after this long. */
const LOOK_EVERY_MS = 5000;
/** Splices are shared anew among several people no more often than this. */
const SHARE_EVERY_MS = 60_000;
/** An unacknowledged warning calls again after this long. */
const CALL_EVERY_MS: Readonly<Record<'soon' | 'due' | 'late', number>> = {
  soon: 120_000,
  due: 45_000,
  late: 15_000,
};
const DAY_MS = 86_400_000;

/** The watch over the line in hand. */
export interface Watch {
  /** Null where nothing is being built. */
  readonly outlook: ReadonlySignal<Outlook | null>;
  /** Warnings that nobody has taken note of at their present level. */
  readonly warnings: ReadonlySignal<readonly SlotOutlook[]>;
  /** The walks that serve the coming splices; null where nothing is being built. */
  readonly walks: ReadonlySignal<WalkPlan | null>;
  /** Has the line's supply reckoned for an outlook; the answer comes by `take`, unless a newer question took its place. */
  readonly askSupply: (of: Outlook, take: (supply: Supply) => void) => void;
  /** A person took note of a warning. Resolves when that is durable. */
  readonly acknowledge: (slot: SlotOutlook) => Promise<void>;
}

/** A look under way. */
interface Looking {
  readonly nowMs: number;
  /** Entries in the log when it began. */
  readonly seen: number;
  readonly steps: Generator<undefined, Outlook | null>;
}

/** Starts the watch. */
export function startWatch(app: App, alarm: Alarm): Watch {
  const outlook = signal<Outlook | null>(null);
  const walks = signal<WalkPlan | null>(null);
  let planned: { run: string; operators: number } | null = null;
  let planWaits = false;
  const planner = startPlanner();
  const supplier = startSupplier();
  let sharedMs = Number.NEGATIVE_INFINITY;
  const remembered = new Map<string, WarningState>();
  const laws: LawMemory = new Map();
  const calledAt = new Map<string, number>();
  let calendar: { line: string; day: number; by: readonly unknown[]; time: WorkingTime } | null = null;
  const raising = new Set<string>();
  let looking: Looking | null = null;
  let restarts = 0;
  let slice: ReturnType<typeof setTimeout> | undefined;

  function calendarOf(line: string, nowMs: number): WorkingTime {
    const floor = app.store.floor();
    const by = [floor.rules.get(line), floor.calendars.get(line), floor.lines.get(line)];
    const day = Math.floor(nowMs / DAY_MS);
    if (calendar?.line !== line || calendar.day !== day || by.some((each, at) => each !== calendar?.by[at])) {
      calendar = { line, day, by, time: lineCalendar(floor, line, nowMs) };
    }
    return calendar.time;
  }

  function stepsNow(): Looking | null {
    const line = app.line.peek();
    const nowMs = app.clock.nowMs();
    if (line === null) return null;
    const at = { nowMs, calendar: calendarOf(line, nowMs), remembered, laws };
    return { nowMs, seen: app.store.count(), steps: outlookSteps(app.store.floor(), line, at) };
  }

  /** Looks in slices, so that a scan in between need not wait; what changed meanwhile is looked at anew. */
  function look(): void {
    clearTimeout(slice);
    if (looking !== null) restarts += 1;
    looking = stepsNow();
    if (looking === null) take(null, app.clock.nowMs());
    else lookOn();
  }

  function lookOn(): void {
    if (looking !== null && looking.seen !== app.store.count()) {
      restarts += 1;
      looking = stepsNow();
    }
    if (looking === null) return;
    // Where entries come faster than a look takes, it is made in one go, else there would never be one.
    const until = restarts > RESTARTS ? Number.POSITIVE_INFINITY : performance.now() + SLICE_MS;
    for (;;) {
      const step = looking.steps.next();
      if (step.done) {
        take(step.value, looking.nowMs);
        return;
      }
      if (performance.now() < until) continue;
      slice = setTimeout(lookOn, 0);
      return;
    }
  }

  function take(next: Outlook | null, nowMs: number): void {
    looking = null;
    restarts = 0;
    outlook.value = next;
    planSoon();
    if (!next) return;
    for (const slot of next.slots) {
      const key = needKey(next.line, slot.slot, slot.need);
      remembered.set(key, slot.warning);
      if (slot.warning.announce && slot.warning.level !== 'quiet') void raise(next, slot);
    }
    for (const slot of openWarnings(next)) callFor(next, slot, nowMs);
  }

  /** Plans after what is shown has been drawn; several changes in a row make one plan. */
  function planSoon(): void {
    if (planWaits) return;
    planWaits = true;
    setTimeout(() => {
      planWaits = false;
      plan();
    }, 0);
  }

  function plan(): void {
    const now = outlook.peek();
    if (!now) {
      walks.value = null;
      planned = null;
      return;
    }
    const operators = app.store.floor().crews.get(now.line) ?? 1;
    const isSame = planned?.run === now.run.run && planned.operators === operators;
    const known = isSame ? walks.peek()?.known : undefined;
    if (!isSame) planned = { run: now.run.run, operators };
    const keepShares = known !== undefined && Math.abs(now.pace.nowMs - sharedMs) < SHARE_EVERY_MS;
    if (!keepShares) sharedMs = now.pace.nowMs;
    const { question, slots } = walkQuestion(now, {
      operators,
      cures: true,
      keepShares,
      ...(known === undefined ? {} : { known }),
    });
    const asked = planned;
    planner(question, (answer) => {
      // Another run, another crew or none by now: this plan is nobody's.
      if (planned === asked) walks.value = toWalkPlan(answer, slots);
    });
  }

  /** Writes a warning down once a level; two tablets may both do so, which says the same thing twice. */
  async function raise(next: Outlook, slot: SlotOutlook): Promise<void> {
    const { level } = slot.warning;
    const key = `${needKey(next.line, slot.slot, slot.need)}#${level}`;
    if (raising.has(key)) return;
    raising.add(key);
    const due = formatMoment(Math.round(slot.forecast.windowMs?.closes ?? slot.forecast.runOutMs.expected));
    const payload = { line: next.line, slot: slot.slot, need: slot.need, level, due };
    await app.store.append([{ kind: 'warning.raised', payload }], null).catch(() => raising.delete(key)); // tried again at the next look
  }

  function callFor(next: Outlook, slot: SlotOutlook, nowMs: number): void {
    const { level } = slot.warning;
    if (level === 'quiet') return;
    const key = `${needKey(next.line, slot.slot, slot.need)}#${level}`;
    // A clock that the server set back makes nobody wait until it is as late as at the last call.
    if (Math.abs(nowMs - (calledAt.get(key) ?? Number.NEGATIVE_INFINITY)) < CALL_EVERY_MS[level]) return;
    calledAt.set(key, nowMs);
    alarm.call(level);
  }

  effect(() => {
    app.tick.value;
    app.line.value;
    look();
  });
  setInterval(look, LOOK_EVERY_MS);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') look();
  });
  return {
    outlook,
    warnings: computed(() => (outlook.value ? openWarnings(outlook.value) : [])),
    walks,
    askSupply: (of, answered) => {
      const floor = app.store.floor();
      const lifeOf = lifeOnShelf(floor, of.line, app.clock.nowMs());
      const { question, slots } = supplyQuestion(floor, of, lifeOf);
      supplier(question, (answer) => answered(toSupply(app.store.floor(), of, { answer, slots }, lifeOf)));
    },
    acknowledge: async (slot) => {
      const { line, need, slot: address } = { line: slot.loaded.line, need: slot.need, slot: slot.slot };
      await app.write([
        { kind: 'warning.acknowledged', payload: { line, slot: address, need, level: slot.warning.level } },
      ]);
    },
  };
}
