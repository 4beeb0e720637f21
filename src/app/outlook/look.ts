// Looks at the line in slices, so that a scan in between need not wait, and none while its verdict is awaited; what changed meanwhile is looked
// at anew.

import { lineCalendar } from '../../../shared/forecast/line-calendar.ts';
import type { LawMemory } from '../../../shared/forecast/run-out.ts';
import type { WarningState } from '../../../shared/forecast/warnings.ts';
import type { WorkingTime } from '../../../shared/forecast/working-time.ts';
import { DAY_MS } from '../../../shared/kit/moment.ts';
import { type Outlook, outlookSteps } from '../../../shared/outlook/line.ts';
import type { App } from '../app.ts';
import { LATEST_MS, unlessAwaited } from '../device/awaited.ts';

/** A look goes on for this long at a time: well below what a person notices. */
const SLICE_MS = 8;
/** This often a look may begin anew because something changed. */
const RESTARTS = 3;

/** A look under way. */
interface Looking {
  readonly nowMs: number;
  /** Entries in the log when it began. */
  readonly seen: number;
  /** From here on, on the page's clock, it holds still for nobody. */
  readonly dueMs: number;
  hasBegun: boolean;
  readonly steps: Generator<undefined, Outlook | null>;
}

/** The working time of a line on a day, and what it was made of. */
interface KnownCalendar {
  readonly line: string;
  readonly day: number;
  readonly by: readonly unknown[];
  readonly time: WorkingTime;
}

/** The state of looking. */
export interface Looker {
  readonly app: App;
  /** The line that is looked at; null where none is. */
  readonly line: () => string | null;
  /** What earlier looks said of each need; whoever takes an outlook writes its warnings here. */
  readonly remembered: Map<string, WarningState>;
  /** Told what a look came to; null where nothing is being built. */
  readonly take: (next: Outlook | null, nowMs: number) => void;
  readonly laws: LawMemory;
  calendar: KnownCalendar | null;
  looking: Looking | null;
  restarts: number;
  slice: ReturnType<typeof setTimeout> | undefined;
}

/** Makes ready for looks. */
export function createLooker(of: Pick<Looker, 'app' | 'line' | 'remembered' | 'take'>): Looker {
  return { ...of, laws: new Map(), calendar: null, looking: null, restarts: 0, slice: undefined };
}

/** Begins a look; one under way is given up. */
export function look(looker: Looker): void {
  clearTimeout(looker.slice);
  beginAnew(looker);
  if (looker.looking === null) end(looker, null, looker.app.clock.nowMs());
  else goOn(looker);
}

/** A look that had not begun loses nothing; whatever takes its place is due when it was. */
function beginAnew(looker: Looker): void {
  if (looker.looking?.hasBegun) looker.restarts += 1;
  looker.looking = stepsNow(looker);
}

/** The next slice, unless another look has begun by then. */
function goOn(looker: Looker): void {
  const { looking } = looker;
  if (looking === null) return;
  const stillMs = Math.max(0, looking.dueMs - performance.now());
  unlessAwaited(() => {
    if (looker.looking === looking) lookOn(looker);
  }, stillMs);
}

function lookOn(looker: Looker): void {
  if (looker.looking !== null && looker.looking.seen !== looker.app.store.count()) beginAnew(looker);
  const { looking } = looker;
  if (looking === null) return;
  looking.hasBegun = true;
  // Where entries come faster than a look takes, it is made in one go, else there would never be one.
  const until = looker.restarts > RESTARTS ? Number.POSITIVE_INFINITY : performance.now() + SLICE_MS;
  for (;;) {
    const step = looking.steps.next();
    if (step.done) {
      end(looker, step.value, looking.nowMs);
      return;
    }
    if (performance.now() < until) continue;
    looker.slice = setTimeout(() => goOn(looker), 0);
    return;
  }
}

function end(looker: Looker, next: Outlook | null, nowMs: number): void {
  looker.looking = null;
  looker.restarts = 0;
  looker.take(next, nowMs);
}

function stepsNow(looker: Looker): Looking | null {
  const { app, remembered, laws } = looker;
  const line = looker.line();
  const nowMs = app.clock.nowMs();
  if (line === null) return null;
  const at = { nowMs, calendar: calendarOf(looker, line, nowMs), remembered, laws };
  return {
    nowMs,
    seen: app.store.count(),
    dueMs: looker.looking?.dueMs ?? performance.now() + LATEST_MS,
    hasBegun: false,
    steps: outlookSteps(app.store.floor(), line, at),
  };
}

function calendarOf(looker: Looker, line: string, nowMs: number): WorkingTime {
  const floor = looker.app.store.floor();
  const by = [floor.rules.get(line), floor.calendars.get(line), floor.lines.get(line)];
  const day = Math.floor(nowMs / DAY_MS);
  const known = looker.calendar;
  if (known?.line === line && known.day === day && by.every((each, at) => each === known.by[at]))
    return known.time;
  const time = lineCalendar(floor, line, nowMs);
  looker.calendar = { line, day, by, time };
  return time;
}
