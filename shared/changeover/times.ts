// How long did a changeover take, whose hands and which steps took it, and what could have been done while the line still ran?
// Method: every answer and every handling is a mark; the time up to a mark since the same person's mark before is that mark's, less
// breaks and planned stops. External and internal setup as in SMED (Shingo 1985, from memory).
// Refused: asking people to start and stop a clock for each step.

import type { ChecklistStep } from '../floor/checklist.ts';
import type { FloorEntry } from '../floor/kinds.ts';
import type { Changeover, FloorState } from '../floor/state.ts';
import { median } from '../kit/median.ts';

/** A span that is nobody's changeover: a break, a planned stop. Moments in ms. */
export interface Pause {
  readonly fromMs: number;
  readonly toMs: number;
}

/** What a mark was. */
export const markKinds = ['step', 'skip', 'load', 'unload', 'measure', 'look'] as const;
export type MarkKind = (typeof markKinds)[number];

/** One thing done in a changeover. */
export interface TimeMark {
  readonly kind: MarkKind;
  /** The step's id, or the slot. */
  readonly what: string;
  readonly who: string | null;
  /** The same person's mark before, or the beginning of the changeover. */
  readonly fromMs: number;
  readonly atMs: number;
  /** Working seconds from `fromMs` to `atMs`. */
  readonly seconds: number;
  /** Those of them in which the line stood. */
  readonly standingSeconds: number;
  /** Done while the line stood. */
  readonly wasStanding: boolean;
}

/** A changeover in figures; seconds of working time. */
export interface ChangeTimes {
  /** The last good panel; null while the old product still runs. */
  readonly stoodMs: number | null;
  readonly endMs: number;
  /** Made ready beside the running line. */
  readonly externalSeconds: number;
  /** From the last good panel to the release, breaks and planned stops left out. */
  readonly standingSeconds: number;
  /** Breaks and planned stops in that time. */
  readonly pausedSeconds: number;
  readonly marks: readonly TimeMark[];
  readonly persons: readonly {
    readonly who: string | null;
    readonly seconds: number;
    /** Those of them in which the line stood; the rest was made ready before. */
    readonly standingSeconds: number;
    readonly marks: number;
  }[];
}

/** Seconds from one moment to another that no pause covers. */
export function unpausedSeconds(fromMs: number, toMs: number, pauses: readonly Pause[]): number {
  if (toMs <= fromMs) return 0;
  let covered = 0;
  let reachedMs = fromMs;
  for (const pause of [...pauses].sort((a, b) => a.fromMs - b.fromMs)) {
    const start = Math.max(reachedMs, pause.fromMs);
    const end = Math.min(toMs, pause.toMs);
    if (end <= start) continue;
    covered += end - start;
    reachedMs = end;
  }
  return (toMs - fromMs - covered) / 1000;
}

/** A line that ended its run longer than this before the changeover began waited for something else, ms. Chosen here. */
const SAME_STANDSTILL_MS = 30 * 60_000;

/**
 * Since when the line stands for this changeover: since the old product's run stood, where a person said when that was, else since its
 * last counted panel, else since its end. That run is the one that was going as the changeover was planned, or that ended not more than
 * half an hour before; where there is none, the line stands since the beginning itself. Null while that run is not ended.
 */
export function lastGoodPanelMs(state: FloorState, changeover: Changeover): number | null {
  const before = [...state.runs.values()].filter(
    (run) =>
      run.line === changeover.line &&
      run.startedMs <= changeover.beganMs &&
      (run.phase !== 'ended' || run.sinceMs >= changeover.beganMs - SAME_STANDSTILL_MS),
  );
  const run = before.at(-1);
  if (!run) return changeover.beganMs;
  if (run.phase !== 'ended') return null;
  const [fromMs, toMs, isSaid] = run.stops.at(-1) ?? [];
  if (fromMs !== undefined && toMs === run.sinceMs && isSaid) return fromMs;
  const lastCount = run.counts.filter(([, , add]) => add > 0).at(-1);
  return lastCount?.[1] ?? run.sinceMs;
}

/** The marks of a changeover out of the log's entries (any order, others are left alone). */
function marksOf(changeover: Changeover, entries: readonly FloorEntry[], lists: ReadonlySet<string>) {
  const marks: { kind: MarkKind; what: string; who: string | null; atMs: number }[] = [];
  const endMs = changeover.releasedMs ?? Number.POSITIVE_INFINITY;
  for (const entry of entries) {
    const atMs = entry.hlc.ms;
    if (atMs < changeover.beganMs || atMs > endMs) continue;
    const add = (kind: MarkKind, what: string) => marks.push({ kind, what, who: entry.who, atMs });
    switch (entry.kind) {
      case 'step.answered':
        if (lists.has(entry.payload.checklist)) add('step', entry.payload.step);
        break;
      case 'step.skipped':
        if (lists.has(entry.payload.checklist)) add('skip', entry.payload.step);
        break;
      case 'reel.verified': {
        const { act, verdict, line, setup, slot } = entry.payload;
        const isLoad = act === 'load' && verdict === 'accepted' && setup === changeover.setup;
        if (isLoad && line === changeover.line && slot !== null) add('load', slot);
        break;
      }
      case 'reel.unloaded':
        // What went off as a cart docked is the cart's handling, marked once.
        if (entry.payload.line === changeover.line && entry.payload.cart === undefined)
          add('unload', entry.payload.slot);
        break;
      case 'cart.docked':
        if (entry.payload.setup === changeover.setup) add('load', entry.payload.cart);
        break;
      case 'panel.measured':
        if (entry.payload.changeover === changeover.changeover) add('measure', entry.payload.slot);
        break;
      case 'panel.looked':
        if (entry.payload.changeover === changeover.changeover) add('look', entry.payload.slot);
        break;
      default:
        break;
    }
  }
  return marks.sort((a, b) => a.atMs - b.atMs);
}

/** A changeover's times so far. `entries`: the log since it began; `nowMs` ends what is not released. */
export function changeTimes(
  state: FloorState,
  changeover: Changeover,
  more: {
    readonly entries: readonly FloorEntry[];
    readonly pauses: readonly Pause[];
    readonly nowMs: number;
  },
): ChangeTimes {
  const { entries, pauses, nowMs } = more;
  const stoodMs = lastGoodPanelMs(state, changeover);
  const endMs = changeover.releasedMs ?? nowMs;
  const lists = new Set(
    [...state.checklists.values()]
      .filter((list) => list.changeover === changeover.changeover)
      .map((list) => list.checklist),
  );
  const lastOf = new Map<string | null, number>();
  const marks = marksOf(changeover, entries, lists).map((mark): TimeMark => {
    const fromMs = lastOf.get(mark.who) ?? changeover.beganMs;
    lastOf.set(mark.who, mark.atMs);
    return {
      ...mark,
      fromMs,
      seconds: unpausedSeconds(fromMs, mark.atMs, pauses),
      standingSeconds: stoodMs === null ? 0 : unpausedSeconds(Math.max(stoodMs, fromMs), mark.atMs, pauses),
      wasStanding: stoodMs !== null && mark.atMs >= stoodMs,
    };
  });
  const persons = new Map<string | null, { seconds: number; standingSeconds: number; marks: number }>();
  for (const mark of marks) {
    const known = persons.get(mark.who) ?? { seconds: 0, standingSeconds: 0, marks: 0 };
    persons.set(mark.who, {
      seconds: known.seconds + mark.seconds,
      standingSeconds: known.standingSeconds + mark.standingSeconds,
      marks: known.marks + 1,
    });
  }
  const standingSeconds = stoodMs === null ? 0 : unpausedSeconds(stoodMs, endMs, pauses);
  return {
    stoodMs,
    endMs,
    marks,
    standingSeconds,
    externalSeconds: unpausedSeconds(changeover.beganMs, stoodMs ?? endMs, pauses),
    pausedSeconds: stoodMs === null ? 0 : Math.max(0, (endMs - stoodMs) / 1000 - standingSeconds),
    persons: [...persons].map(([who, sums]) => ({ who, ...sums })).sort((a, b) => b.seconds - a.seconds),
  };
}

/** A step that cost standing time and need not have. */
export interface Outside {
  readonly step: string;
  /** Working seconds that it took while the line stood. */
  readonly seconds: number;
  /** `late` = it can be done beside the running line and was not; `candidate` = it waits for the line to stand, but no hand goes in. */
  readonly why: 'late' | 'candidate';
}

/**
 * Which internal steps (done while the line stood) could be external (done before), longest first; a step answered again counts
 * once, with all its time. Common practice after SMED, to be judged by people.
 */
export function couldBeOutside(times: ChangeTimes, steps: readonly ChecklistStep[]): readonly Outside[] {
  return [...outsideMarks(times, steps)]
    .map(([step, { why, marks }]) => ({
      step,
      why,
      seconds: marks.reduce((sum, mark) => sum + mark.standingSeconds, 0),
    }))
    .sort((a, b) => b.seconds - a.seconds);
}

/**
 * Seconds that the line would at most have stood less, had those steps been done before: working time in which at least one of
 * them was in hand. People who work side by side save it once. At most, since somebody else may have needed that time anyhow.
 */
export function savedAtMost(
  times: ChangeTimes,
  steps: readonly ChecklistStep[],
  pauses: readonly Pause[],
): number {
  const { stoodMs, endMs } = times;
  if (stoodMs === null) return 0;
  const spans = [...outsideMarks(times, steps).values()].flatMap(({ marks }) =>
    marks.map((mark) => ({ fromMs: Math.max(stoodMs, mark.fromMs), toMs: mark.atMs })),
  );
  return unpausedSeconds(stoodMs, endMs, pauses) - unpausedSeconds(stoodMs, endMs, [...pauses, ...spans]);
}

/** The standing marks of each step that need not have waited. */
function outsideMarks(times: ChangeTimes, steps: readonly ChecklistStep[]) {
  const byId = new Map(steps.map((step) => [step.step, step]));
  const found = new Map<string, { why: Outside['why']; marks: TimeMark[] }>();
  for (const mark of times.marks) {
    const step = mark.kind === 'step' && mark.wasStanding ? byId.get(mark.what) : undefined;
    if (!step) continue;
    const needsNoHand = step.caution === null && ['tick', 'note', 'scan', 'photo'].includes(step.kind);
    if (step.time !== 'running' && !needsNoHand) continue;
    const why = step.time === 'running' ? 'late' : 'candidate';
    found.set(mark.what, { why, marks: [...(found.get(mark.what)?.marks ?? []), mark] });
  }
  return found;
}

/** Earlier changeovers of the same line between the same product sides, newest first, released ones only. */
export function earlierOfPair(state: FloorState, changeover: Changeover): readonly Changeover[] {
  const side = (setup: string | null) => {
    const taken = state.setups.get(setup ?? '');
    return taken ? `${taken.product}/${taken.side}` : (setup ?? '');
  };
  const pair = (each: Changeover) => `${each.line}|${side(each.from)}|${side(each.setup)}`;
  return [...state.changeovers.values()]
    .filter((each) => each.changeover !== changeover.changeover && each.releasedMs !== null)
    .filter((each) => pair(each) === pair(changeover) && each.beganMs < changeover.beganMs)
    .sort((a, b) => b.beganMs - a.beganMs);
}

/** A handling time learnt from the floor. */
export interface Learnt {
  /** The median, working minutes. */
  readonly minutes: number;
  readonly handlings: number;
  /** Changeovers in which those handlings were seen, at least 1. */
  readonly changeovers: number;
}

/** Handlings that must have been seen before their median is believed. Chosen here: the median then bears two that went wrong. */
const LEAST_HANDLINGS = 5;

/**
 * Handling times learnt from the marks of changeovers (one list each): the median time of a load and of an unload; null where
 * fewer than five were seen. Only work while the line stood counts: beside a running line nobody hurries.
 */
export function learnHandling(changeovers: readonly (readonly TimeMark[])[]): {
  readonly putIn: Learnt | null;
  readonly takeOut: Learnt | null;
} {
  const learn = (kind: MarkKind): Learnt | null => {
    const each = changeovers
      .map((marks) => marks.filter((mark) => mark.kind === kind && mark.wasStanding))
      .filter((marks) => marks.length > 0);
    const all = each.flatMap((marks) => marks.map((mark) => mark.standingSeconds));
    const middle = median(all);
    if (all.length < LEAST_HANDLINGS || middle === null) return null;
    return { minutes: middle / 60, handlings: all.length, changeovers: each.length };
  };
  return { putIn: learn('load'), takeOut: learn('unload') };
}
