// What is to come on a line: joins the setup's state with the forecast's arithmetic. Pure: floor and moment in, outlook out.

import { compareSlots } from '../floor/address.ts';
import { buildingOn, panelsToGo } from '../floor/building.ts';
import { type WindowLengths, windowLengthsOf } from '../floor/feeder-types.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { kindOnSlot } from '../floor/packs.ts';
import { type SlotEstimate, slotEstimate, usageOf } from '../floor/remaining.ts';
import {
  type FloorState,
  type LineRules,
  needKey,
  type Run,
  type Setup,
  type SlotState,
  slotKey,
} from '../floor/state.ts';
import { type LineTold, lineTold } from '../floor/told-states.ts';
import { turnGroup } from '../floor/turns.ts';
import { compareLevels, type PackageKind, type WarningLevel } from '../floor/vocabulary.ts';
import { panelsUntil, type SlotUse } from '../forecast/beside.ts';
import { type Counting, countingOf } from '../forecast/counting.ts';
import {
  forecastSlot,
  type LawMemory,
  type LinePace,
  type SlotForecast,
  type SlotLoad,
} from '../forecast/run-out.ts';
import { loadInTurn } from '../forecast/turns.ts';
import { needWarning, type WarningState } from '../forecast/warnings.ts';
import { type WorkingTime, workingMoment } from '../forecast/working-time.ts';
import { besideOf, lanesRunning, laneUses, type ToUse } from './lanes.ts';
import { lastCountMs, measuringTime, runPace } from './run-pace.ts';

/** One loaded slot that the run uses. */
export interface SlotOutlook {
  readonly slot: string;
  readonly wanted: SetupSlot;
  readonly loaded: SlotState;
  /** What is left, with its spread. */
  readonly estimate: SlotEstimate;
  /** The loss it is computed with, and what that rests on. */
  readonly loss: { readonly mean: number; readonly strength: number; readonly reels: number };
  /** What the forecast was made from. */
  readonly load: SlotLoad;
  readonly forecast: SlotForecast;
  /** Names the coming splice: the newest tape on the slot. */
  readonly need: string;
  readonly warning: WarningState & { readonly announce: boolean };
  readonly acknowledged: WarningLevel | null;
  /** What feeds: a tape is spliced; a tray or tube gone stops the machine until it is exchanged. */
  readonly feeds: PackageKind;
  /** Where slots of the part are used in turn: which feeds before this one, and which takes over after it; null where none with parts does. */
  readonly turn: { readonly after: string | null; readonly backup: string | null } | null;
}

/** A line's outlook. Moments in ms since 1970. */
export interface Outlook {
  readonly line: string;
  readonly run: Run;
  readonly rules: LineRules;
  readonly calendar: WorkingTime;
  /** The pace from now on. */
  readonly pace: LinePace;
  /** The pace from the last count on, without the run's own stops: what the forecasts are computed from. */
  readonly basis: LinePace;
  /** Whether panels are still counted. */
  readonly counting: Counting;
  /** Where the panel's time comes from. */
  readonly paceFrom: 'seen' | 'nominal';
  /** What a machine says of when the line stood; null where none speaks for it. */
  readonly told: LineTold | null;
  /** True where a person entered a stop that lasts, or a machine tells one: moments hold if the line starts again now. */
  readonly stands: boolean;
  /** In order of need: expected run-out. */
  readonly slots: readonly SlotOutlook[];
  /** Slots whose count nobody knows: no run-out can be told. */
  readonly unknown: readonly string[];
  /** Slots that the setup uses and that carry nothing. */
  readonly empty: readonly string[];
  readonly panelsLeft: number;
  /** Expected end of the run. */
  readonly runEndMs: number;
}

/** When a line is looked at, and at which run. */
export interface LookAt {
  readonly nowMs: number;
  /** From `lineCalendar`. */
  readonly calendar: WorkingTime;
  /** The run looked at; absent: what the line builds now. A run that is only planned is foretold as if it began now. */
  readonly run?: Run;
  readonly remembered?: ReadonlyMap<string, WarningState>;
  /** Kept by whoever looks again and again. */
  readonly laws?: LawMemory;
}

/** The outlook of a line's run at a moment; null where nothing is being built. */
export function lineOutlook(floor: FloorState, line: string, at: LookAt): Outlook | null {
  const steps = outlookSteps(floor, line, at);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** `lineOutlook` slot by slot, so that a slow tablet can do something else in between. The floor must not change meanwhile. */
export function* outlookSteps(
  floor: FloorState,
  line: string,
  at: LookAt,
): Generator<undefined, Outlook | null> {
  const run = at.run ?? buildingOn(floor, line);
  const rules = floor.rules.get(line);
  const setup = run && floor.setups.get(run.setup);
  if (!run || !rules || !setup) return null;
  const { nowMs, calendar } = at;
  const told = lineTold(floor, run, nowMs);
  const measuring = measuringTime(calendar, run, { nowMs, told });
  const seen = runPace(run, measuring);
  const panelsLeft = panelsToGo(run);
  const pace: LinePace = {
    nowMs,
    panelsLeft,
    calendar,
    panelSeconds: seen.seconds ?? run.panelSeconds,
    panelSd: seen.seconds === null ? run.panelSd : seen.sd,
    ...(seen.seconds === null ? {} : { panelMeanSd: seen.meanSd }),
  };
  const { panelSeconds } = pace;
  const stands = run.phase !== 'running' || told?.stops.at(-1)?.toMs === null;
  const seenCounts = { nowMs, lastMs: lastCountMs(run), panelSeconds, calendar: measuring };
  const counting = countingOf(seenCounts, !stands && panelsLeft > 0);
  const basis: LinePace = { ...pace, nowMs: counting.lastMs, calendar: measuring };
  const estimateOf = estimatesOnce(floor);
  const lanes = lanesRunning(floor, line, { nowMs, calendar });
  const toUse: ToUse = ({ slot, perPanel }) => ({
    usage: usageOf(floor, run.setup, perPanel),
    panelsLeft,
    panelSeconds,
    lanes: laneUses(floor, lanes, slot),
  });
  const slots: SlotOutlook[] = [];
  const unknown: string[] = [];
  const empty: string[] = [];
  for (const wanted of setup.slots) {
    yield;
    const loaded = floor.slots.get(slotKey(line, wanted.slot));
    if (!loaded) empty.push(wanted.slot);
    else if (wanted.perPanel > 0) {
      const estimate = estimateOf(loaded);
      const { parts } = estimate;
      const turn = turnsOf(floor, { line, setup, estimateOf, toUse }, wanted);
      // What feeds after a slot whose count nobody knows has no run-out to tell either.
      if (parts === null || turn === 'unknown') unknown.push(wanted.slot);
      else
        slots.push(
          slotOutlook(floor, { rules, basis, at, toUse }, { wanted, loaded, estimate, parts, turn }),
        );
    }
  }
  slots.sort(
    (a, b) => a.forecast.runOutMs.expected - b.forecast.runOutMs.expected || compareSlots(a.slot, b.slot),
  );
  return {
    line,
    run,
    rules,
    calendar,
    pace,
    basis,
    counting,
    slots,
    panelsLeft,
    paceFrom: seen.seconds === null ? 'nominal' : 'seen',
    told,
    stands,
    unknown: unknown.sort(compareSlots),
    empty: empty.sort(compareSlots),
    runEndMs: workingMoment(measuring, counting.lastMs, panelsLeft * panelSeconds),
  };
}

/** Estimates each slot once in a look: of slots in turn every one is asked for by all of its group. */
function estimatesOnce(floor: FloorState): (loaded: SlotState) => SlotEstimate {
  const known = new Map<SlotState, SlotEstimate>();
  return (loaded) => {
    let estimate = known.get(loaded);
    if (estimate === undefined) {
      estimate = slotEstimate(floor, loaded);
      known.set(loaded, estimate);
    }
    return estimate;
  };
}

interface Turns {
  readonly before: readonly SlotLoad[];
  readonly after: string | null;
  readonly backup: string | null;
}

/** What feeds before a slot and what takes over from it; null where it is not used in turn. */
function turnsOf(
  floor: FloorState,
  on: {
    readonly line: string;
    readonly setup: Setup;
    readonly estimateOf: (loaded: SlotState) => SlotEstimate;
    readonly toUse: ToUse;
  },
  wanted: SetupSlot,
): Turns | 'unknown' | null {
  const group = turnGroup(on.setup, wanted.slot);
  if (group.length === 0) return null;
  const before: SlotLoad[] = [];
  let isPast = false;
  let backup: string | null = null;
  for (const each of group) {
    const loaded = floor.slots.get(slotKey(on.line, each.slot));
    if (each.slot === wanted.slot) isPast = true;
    else if (loaded) {
      const estimate = on.estimateOf(loaded);
      const { parts } = estimate;
      if (isPast && (parts === null || parts >= each.perPanel)) backup ??= each.slot;
      else if (!isPast && parts === null) return 'unknown';
      else if (!isPast && parts !== null && parts > 0)
        before.push(
          loadOf(null, { wanted: each, estimate, parts, loss: lossOf(estimate), ...on.toUse(each) }),
        );
    }
  }
  return { before, after: before.at(-1)?.slot ?? null, backup };
}

function lossOf({ loss: { alpha, beta, reels } }: SlotEstimate): SlotOutlook['loss'] {
  return { mean: alpha / (alpha + beta), strength: alpha + beta, reels };
}

interface SlotFacts {
  readonly wanted: SetupSlot;
  readonly loaded: SlotState;
  readonly estimate: SlotEstimate;
  readonly parts: number;
  readonly turn: Turns | null;
}

function slotOutlook(
  floor: FloorState,
  within: {
    readonly rules: LineRules;
    readonly basis: LinePace;
    readonly at: LookAt;
    readonly toUse: ToUse;
  },
  facts: SlotFacts,
): SlotOutlook {
  const { wanted, loaded, estimate, parts, turn } = facts;
  const { rules, basis, at } = within;
  const loss = lossOf(estimate);
  const feeds = kindOnSlot(loaded);
  const lengths = feeds === 'tape' ? windowLengthsOf(floor, loaded.line, loaded.feeder) : null;
  const load = loadInTurn(
    loadOf(lengths, { wanted, estimate, parts, loss, ...within.toUse(wanted) }),
    turn?.before ?? [],
  );
  const forecast = forecastSlot(basis, load, at.laws);
  const need = needOf(loaded);
  const key = needKey(loaded.line, wanted.slot, need);
  const raised = floor.raised.get(key);
  const previous: WarningState | null =
    at.remembered?.get(key) ??
    (raised === undefined
      ? null
      : {
          need: key,
          level: raised.level,
          reason: 'held-level',
          sinceMs: raised.atMs,
          announced: raised.level,
        });
  const warning = needWarning({
    nowMs: at.nowMs,
    need: key,
    opensMs: forecast.windowMs?.opens ?? forecast.runOutMs.early,
    closesMs: forecast.windowMs?.closes ?? forecast.runOutMs.expected,
    risk: forecast.risk,
    leadSeconds: rules.leadSeconds,
    // Without feeder lengths the early run-out stands for the opening: its spread is in it.
    earlySeconds:
      forecast.windowMs === null
        ? 0
        : Math.max(0, forecast.runOutMs.expected - forecast.runOutMs.early) / 1000,
    previous,
  });
  return {
    slot: wanted.slot,
    wanted,
    loaded,
    estimate,
    loss,
    load,
    forecast,
    need,
    warning,
    feeds,
    turn: turn && { after: turn.after, backup: turn.backup },
    acknowledged: floor.acknowledged.get(key)?.level ?? null,
  };
}

/** A slot as the forecast's arithmetic wants it. */
function loadOf(
  lengths: WindowLengths | null,
  {
    wanted,
    estimate,
    parts,
    loss,
    usage,
    panelsLeft,
    panelSeconds,
    lanes,
  }: ReturnType<ToUse> & {
    readonly wanted: SetupSlot;
    readonly estimate: SlotEstimate;
    readonly parts: number;
    readonly loss: { readonly mean: number; readonly strength: number };
  },
): SlotLoad {
  const { pitchMm } = wanted;
  const kept = 1 - loss.mean;
  const { perPanel } = usage;
  const use: SlotUse = { perPanel, beside: besideOf(lanes, panelSeconds) };
  // What skipped boards leave open of the panels to come is a doubt of how many parts those take.
  const panels = Math.min(panelsLeft, panelsUntil(use, parts * kept));
  const sd = Math.hypot(estimate.countSd, usage.sdOf(panels) / kept);
  return {
    slot: wanted.slot,
    ...use,
    left: parts,
    sd,
    taken: estimate.computed,
    loss: loss.mean,
    lossStrength: loss.strength,
    ...(pitchMm === null || lengths === null ? {} : { pitchMm, ...lengths }),
  };
}

/** Slots that somebody must go to before the run ends, in order of need. */
export function dueSlots(outlook: Outlook): readonly SlotOutlook[] {
  return outlook.slots.filter((slot) => !slot.forecast.outlasts);
}

/** Warnings that nobody has taken note of at their present level. */
export function openWarnings(outlook: Outlook): readonly SlotOutlook[] {
  return outlook.slots.filter(
    ({ warning, acknowledged }) =>
      warning.level !== 'quiet' && (acknowledged === null || compareLevels(acknowledged, warning.level) < 0),
  );
}

/** The warning that is said first; null where none is open. */
export function loudestOf(warnings: readonly SlotOutlook[]): SlotOutlook | null {
  const [loudest] = [...warnings].sort((a, b) => compareLevels(b.warning.level, a.warning.level));
  return loudest && loudest.warning.level !== 'quiet' ? loudest : null;
}

/** Names the coming splice of a slot as it is loaded now, its newest tape: a splice or an unload makes another need, and the old warning is past. */
export function needOf(loaded: SlotState): string {
  return loaded.tapes.at(-1)?.entry ?? loaded.entry;
}

/** What the line's present job still takes. */
export interface RunLeft {
  readonly run: Run;
  readonly panels: number;
  /** Working seconds, at the pace seen in this run, else at its nominal one. */
  readonly seconds: number;
}

/** What is left of the job in hand, its slots not looked at; null where nothing is being built. */
export function runLeft(
  floor: FloorState,
  line: string,
  at: Pick<LookAt, 'nowMs' | 'calendar'>,
): RunLeft | null {
  const run = floor.runs.get(floor.current.get(line) ?? '');
  if (!run) return null;
  const panels = panelsToGo(run);
  const { nowMs } = at;
  const seen = runPace(run, measuringTime(at.calendar, run, { nowMs, told: lineTold(floor, run, nowMs) }));
  return { run, panels, seconds: panels * (seen.seconds ?? run.panelSeconds) };
}
