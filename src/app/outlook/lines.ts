// Looks at all lines of the plant, one after the other: a line is looked at anew when something on it changed, and else every so often. The line
// in hand is not looked at twice: its watch has it. Refused: a look at every line every second, which costs a core and shows nothing newer, as an
// outlook stands still on the clock until something is counted.

import { effect, type ReadonlySignal, signal } from '@preact/signals';
import { needKey } from '../../../shared/floor/state.ts';
import type { WarningState } from '../../../shared/forecast/warnings.ts';
import type { Entry } from '../../../shared/log/entry.ts';
import { type HeardOf, hear, nothingHeard } from '../../../shared/outlook/heard.ts';
import type { Outlook } from '../../../shared/outlook/line.ts';
import { toWalkPlan, type WalkPlan, walkQuestion } from '../../../shared/outlook/walks.ts';
import type { App } from '../app.ts';
import { createLooker, type Looker, look } from './look.ts';
import { startPlanner } from './planner.ts';
import type { Watch } from './watch.ts';

/** A line on which nothing changes is looked at anew after this long. */
export const LOOK_AGAIN_MS = 15_000;
/** Between two looks, so that lines with much to say leave room for everything else. */
const PAUSE_MS = 60;
/** Entries read for what was heard before this view was opened. */
const READ_BACK = 4000;

/** What is known of a line. */
export interface LineLook {
  readonly outlook: Outlook | null;
  readonly walks: WalkPlan | null;
  /** When it was looked at, ms since 1970; null before the first look. */
  readonly lookedMs: number | null;
}

/** The watch over all lines. */
export interface Lines {
  /** Grows with each look and each thing heard. */
  readonly tick: ReadonlySignal<number>;
  readonly lookOf: (line: string) => LineLook;
  readonly heard: HeardOf;
  /** Since when everything was heard, ms since 1970; null while the log is read. */
  readonly sinceMs: () => number | null;
  readonly stop: () => void;
}

/** One for all times that the view is opened: its worker stays. */
const planWalks = startPlanner();

const nothing: LineLook = { outlook: null, walks: null, lookedMs: null };

interface LinesView {
  readonly app: App;
  readonly watch: Watch;
  readonly looks: Map<string, LineLook>;
  readonly lookers: Map<string, Looker>;
  readonly remembered: Map<string, WarningState>;
  /** Lines on which something changed since they were looked at. */
  readonly changed: Set<string>;
  readonly told: () => void;
  isOver: boolean;
  timer: ReturnType<typeof setTimeout> | undefined;
}

/** Starts looking at all lines. */
export function startLines(app: App, watch: Watch): Lines {
  const tick = signal(0);
  const heard = nothingHeard();
  const view: LinesView = {
    app,
    watch,
    looks: new Map(),
    lookers: new Map(),
    remembered: new Map(),
    changed: new Set(app.store.floor().lines.keys()),
    told: () => {
      tick.value = tick.peek() + 1; // not read: an effect that tells must not follow it
    },
    isOver: false,
    timer: undefined,
  };
  let sinceMs: number | null = null;
  const stopChange = app.store.onChange((entries) => {
    for (const entry of entries) hear(heard, entry);
    noteChanged(view, entries);
    view.told();
  });
  const stopOwn = effect(() => {
    watch.outlook.value;
    watch.walks.value;
    view.told();
  });
  app.store.newest(READ_BACK).then(
    (entries) => {
      for (const entry of entries) hear(heard, entry);
      sinceMs = entries.at(-1)?.hlc.ms ?? app.clock.nowMs();
      view.told();
    },
    () => undefined, // a closed database is told by the fault screen
  );
  next(view);
  return {
    tick,
    heard,
    sinceMs: () => sinceMs,
    lookOf: (line) =>
      line === app.line.peek()
        ? { outlook: watch.outlook.peek(), walks: watch.walks.peek(), lookedMs: app.clock.nowMs() }
        : (view.looks.get(line) ?? nothing),
    stop: () => {
      view.isOver = true;
      clearTimeout(view.timer);
      stopChange();
      stopOwn();
    },
  };
}

/** Notes on which lines something changed; what names none may be of any. */
function noteChanged({ app, changed }: LinesView, entries: readonly Entry[]): void {
  const { lines } = app.store.floor();
  for (const { payload } of entries) {
    const line = payload['line'];
    for (const each of typeof line === 'string' ? [line] : lines.keys()) changed.add(each);
  }
}

/** The line to be looked at next; null where none is due. */
function dueLine({ app, looks, changed }: LinesView): string | null {
  const nowMs = app.clock.nowMs();
  const others = [...app.store.floor().lines.keys()].filter((line) => line !== app.line.peek());
  const age = (line: string) => nowMs - (looks.get(line)?.lookedMs ?? Number.NEGATIVE_INFINITY);
  const oldestFirst = others.sort((a, b) => age(b) - age(a));
  return (
    oldestFirst.find((line) => changed.has(line)) ??
    oldestFirst.find((line) => Math.abs(age(line)) >= LOOK_AGAIN_MS) ??
    null
  );
}

function next(view: LinesView): void {
  if (view.isOver) return;
  const line = document.visibilityState === 'visible' ? dueLine(view) : null;
  if (line === null) {
    view.timer = setTimeout(() => next(view), 500);
    return;
  }
  view.changed.delete(line);
  look(lookerOf(view, line));
}

function lookerOf(view: LinesView, line: string): Looker {
  const { app, looks, lookers, remembered } = view;
  let looker = lookers.get(line);
  if (!looker) {
    const take = (outlook: Outlook | null, nowMs: number) => {
      if (view.isOver) return; // its question would take the place of one that somebody waits for
      for (const slot of outlook?.slots ?? [])
        remembered.set(needKey(line, slot.slot, slot.need), slot.warning);
      const before = looks.get(line)?.walks ?? null;
      if (outlook === null) {
        finish(view, line, { outlook, walks: null, lookedMs: nowMs });
        return;
      }
      const operators = app.store.floor().crews.get(line) ?? 1;
      const isSame =
        looks.get(line)?.outlook?.run.run === outlook.run.run && before?.known.length === operators;
      const { question, slots } = walkQuestion(outlook, {
        operators,
        keepShares: isSame,
        ...(isSame && before !== null ? { known: before.known } : {}),
      });
      planWalks(question, (answer) => {
        finish(view, line, { outlook, walks: toWalkPlan(answer, slots), lookedMs: nowMs });
      });
    };
    looker = createLooker({ app, line: () => line, remembered, take });
    lookers.set(line, looker);
  }
  return looker;
}

function finish(view: LinesView, line: string, is: LineLook): void {
  view.looks.set(line, is);
  view.told();
  clearTimeout(view.timer);
  view.timer = setTimeout(() => next(view), PAUSE_MS);
}
