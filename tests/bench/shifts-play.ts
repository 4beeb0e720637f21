// One simulated shift under a rule of whom to send when, with what was foreseen on the way. The app's own rule looks through the
// app's own code (lineOutlook, needWarning within it, walkQuestion); the naive rule is a label's count over usage times nominal cycle.

import type { SplicePolicy } from '../../demo/policy.ts';
import { lineId } from '../../demo/setups.ts';
import { panelSeconds, type SimulatedShift, simulateShift } from '../../demo/simulate.ts';
import { compareSlots } from '../../shared/floor/address.ts';
import { applyEntry } from '../../shared/floor/fold.ts';
import { usedPlacements } from '../../shared/floor/remaining.ts';
import { emptyState, type FloorState, needKey } from '../../shared/floor/state.ts';
import { wantedOn } from '../../shared/floor/wanted.ts';
import { lineCalendar } from '../../shared/forecast/line-calendar.ts';
import type { LinePace, SlotLoad } from '../../shared/forecast/run-out.ts';
import type { KnownWalk } from '../../shared/forecast/walk-schedule.ts';
import type { WarningState } from '../../shared/forecast/warnings.ts';
import { type WorkingTime, workingSeconds } from '../../shared/forecast/working-time.ts';
import { beginsShort } from '../../shared/outlook/begin.ts';
import { lineOutlook, type Outlook } from '../../shared/outlook/line.ts';
import { planWalks } from '../shared/outlook/compute.ts';

/** 2026-03-02T06:00:00Z, a Monday. */
const startMs = 1_772_431_200_000;
const hours = 8;
/** Panels between two looks while nothing is near. */
const LOOK_PANELS = 4;
/** A walk that begins within this time makes every panel count. */
const NEAR_MS = 150_000;

/** A forecast as it was made, for comparison with what came. Seconds are of working time from then on. */
export interface Foreseen {
  readonly slot: string;
  readonly reel: string;
  readonly run: string;
  readonly atMs: number;
  readonly early: number;
  readonly expected: number;
  readonly late: number;
  readonly clockEarlyMs: number;
  readonly clockExpectedMs: number;
  readonly clockLateMs: number;
  readonly opensMs: number;
  readonly risk: number;
  readonly level: WarningState['level'];
  readonly reason: WarningState['reason'];
  readonly parts: number;
  readonly sd: number;
  readonly tapes: number;
  readonly panelsLeft: number;
  readonly feeder: string;
  /** What the forecast was made from. */
  readonly pace: LinePace;
  readonly load: SlotLoad;
}

/** When a slot and its newest reel were first spoken of. */
export interface FirstWarning {
  readonly slot: string;
  readonly reel: string;
  readonly atMs: number;
  /** When the reel before it was known to need a successor: the slot was first seen with this reel as its newest. */
  readonly seenMs: number;
}

/** A played shift. */
export interface Played {
  readonly shift: SimulatedShift;
  readonly foreseen: readonly Foreseen[];
  readonly warned: ReadonlyMap<string, FirstWarning>;
  readonly lookMs: readonly number[];
  /** By run: slots and reels (`slot/reel`) that were said to begin short before it began. */
  readonly toldBefore: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Plays a shift by the app's rule. */
export function playByApp(seed: number): Played {
  const foreseen: Foreseen[] = [];
  const remembered = new Map<string, WarningState>();
  const warned = new Map<string, FirstWarning & { atMs: number }>();
  const lookMs: number[] = [];
  let known: readonly (readonly KnownWalk[])[] | undefined;
  let calendar: { day: number; time: WorkingTime } | null = null;
  let lookedAt = -LOOK_PANELS;
  let lookedRun = '';
  let material = -1;
  let nextMs = Number.NEGATIVE_INFINITY;

  const policy: SplicePolicy = (view) => {
    const run = view.state.runs.get(view.run);
    if (!run) return [];
    const day = Math.floor(view.nowMs / 86_400_000);
    if (calendar?.day !== day) calendar = { day, time: lineCalendar(view.state, lineId, view.nowMs) };
    const changed = materialMark(view.state);
    const isDue = run.done - lookedAt >= LOOK_PANELS || view.run !== lookedRun || changed !== material;
    if (!isDue && nextMs - view.nowMs > NEAR_MS) return [];
    if (view.run !== lookedRun) known = undefined;
    lookedAt = run.done;
    lookedRun = view.run;
    material = changed;
    const began = performance.now();
    const outlook = lineOutlook(view.state, lineId, {
      nowMs: view.nowMs,
      calendar: calendar.time,
      remembered,
    });
    if (!outlook) return [];
    remember(outlook, { foreseen, remembered, warned });
    const how = { without: view.inHand, ...(known === undefined ? {} : { known }) };
    const plan = planWalks(outlook, { ...how, operators: 2 });
    lookMs.push(performance.now() - began);
    known = plan.known;
    nextMs = plan.walks[0]?.startMs ?? Number.POSITIVE_INFINITY;
    const gone = plan.walks.filter((walk) => walk.startMs <= view.nowMs + (panelSeconds * 1000) / 2);
    return gone.map((walk) => walk.splices.map((splice) => splice.slot.slot));
  };
  const shift = simulateShift({ seed, hours, startMs, policy });
  return { shift, foreseen, warned, lookMs, toldBefore: toldBeforeRuns(shift) };
}

/** What the line's screen says between two runs: looked at after the last act of the changeover, while the first panel is looked over. */
function toldBeforeRuns({ entries }: SimulatedShift): ReadonlyMap<string, ReadonlySet<string>> {
  const state = emptyState();
  const told = new Map<string, ReadonlySet<string>>();
  let nowMs = startMs;
  for (const entry of entries) {
    if (entry.kind === 'run.started') {
      const planned = {
        panelsWanted: Number(entry.payload['panelsWanted']),
        panelSeconds: Number(entry.payload['panelSeconds']),
      };
      const short = beginsShort(state, lineId, {
        nowMs,
        planned,
        calendar: lineCalendar(state, lineId, nowMs),
      });
      told.set(
        String(entry.payload['run']),
        new Set(short.map(({ slot, loaded }) => `${slot}/${loaded.tapes.at(-1)?.reel ?? ''}`)),
      );
    }
    applyEntry(state, entry);
    nowMs = entry.hlc.ms;
  }
  return told;
}

function materialMark(state: FloorState): number {
  let newest = 0;
  for (const slot of state.slots.values()) newest = Math.max(newest, slot.atMs);
  return newest;
}

function remember(
  outlook: Outlook,
  into: {
    readonly foreseen: Foreseen[];
    readonly remembered: Map<string, WarningState>;
    readonly warned: Map<string, FirstWarning & { atMs: number }>;
  },
): void {
  const { nowMs } = outlook.pace;
  for (const slot of outlook.slots) {
    into.remembered.set(needKey(outlook.line, slot.slot, slot.need), slot.warning);
    const reel = slot.loaded.tapes.at(-1)?.reel ?? '';
    const key = `${slot.slot}/${reel}`;
    const there = into.warned.get(key);
    const isLoud = slot.warning.level !== 'quiet';
    if (!there) {
      const atMs = isLoud ? nowMs : Number.POSITIVE_INFINITY;
      into.warned.set(key, { slot: slot.slot, reel, atMs, seenMs: nowMs });
    } else if (isLoud && there.atMs === Number.POSITIVE_INFINITY) there.atMs = nowMs;
    const { runOutMs } = slot.forecast;
    into.foreseen.push({
      slot: slot.slot,
      reel,
      run: outlook.run.run,
      atMs: nowMs,
      early: workingSeconds(outlook.calendar, nowMs, runOutMs.early),
      expected: slot.forecast.workSeconds,
      late: workingSeconds(outlook.calendar, nowMs, runOutMs.late),
      clockEarlyMs: runOutMs.early,
      clockExpectedMs: runOutMs.expected,
      clockLateMs: runOutMs.late,
      opensMs: slot.forecast.windowMs?.opens ?? runOutMs.early,
      risk: slot.forecast.risk,
      level: slot.warning.level,
      reason: slot.warning.reason,
      parts: slot.estimate.parts ?? 0,
      sd: slot.estimate.sd,
      tapes: slot.loaded.tapes.length,
      panelsLeft: outlook.panelsLeft,
      feeder: slot.loaded.feeder ?? '',
      pace: outlook.pace,
      load: slot.load,
    });
  }
}

/** What a naive list would do: walk to a slot as soon as its label count over usage times nominal cycle falls below a threshold. */
export function naiveRule(thresholdSeconds: number, seen: Map<string, number> = new Map()): SplicePolicy {
  return (view) => {
    const called: string[] = [];
    for (const loaded of view.state.slots.values()) {
      if (loaded.line !== view.line || view.inHand.has(loaded.slot)) continue;
      const wanted = wantedOn(view.state, view.setup, loaded.slot);
      if (!wanted || wanted.perPanel === 0) continue;
      const printed = loaded.tapes.reduce<number | null>(
        (sum, tape) => (sum === null || tape.count === null ? null : sum + tape.count),
        0,
      );
      if (printed === null) continue;
      const left = printed - usedPlacements(view.state, loaded);
      const seconds = (left / wanted.perPanel) * panelSeconds;
      const run = view.state.runs.get(view.run);
      if (!run || left / wanted.perPanel > run.panelsWanted - run.done) continue;
      if (seconds > thresholdSeconds) continue;
      const key = `${loaded.slot}/${loaded.tapes.at(-1)?.reel ?? ''}`;
      if (!seen.has(key)) seen.set(key, view.nowMs);
      called.push(loaded.slot);
    }
    return called.length === 0 ? [] : [called.sort(compareSlots)];
  };
}

/** Plays a shift by the naive rule. */
export function playNaively(seed: number, thresholdSeconds: number): SimulatedShift {
  return simulateShift({ seed, hours, startMs, policy: naiveRule(thresholdSeconds) });
}

/** Seconds that the line truly worked between two moments: without breaks and without stops of any kind. */
export function workedSeconds(shift: SimulatedShift, fromMs: number, toMs: number): number {
  let stopped = 0;
  for (const stop of shift.truth.stops)
    stopped += Math.max(0, Math.min(stop.toMs, toMs) - Math.max(stop.fromMs, fromMs));
  return (toMs - fromMs - stopped) / 1000;
}
