// What happened on a line between two moments: verdicts, splices, stops, changeovers, lost parts. Counted from entries alone; what nobody
// entered is not in it, and the report does not pretend to know it.

import type { FloorEntry } from '../floor/kinds.ts';
import { linesFeeding, sharesSlots } from '../floor/lanes.ts';
import { assumedLoss, type LossEvidence, type LossLearnt, shownOn, updateLoss } from '../floor/remaining.ts';
import type { FloorState } from '../floor/state.ts';
import { isDropped } from '../floor/state-change.ts';
import type { StopReason, Verdict } from '../floor/vocabulary.ts';
import { entryId } from '../log/entry.ts';
import { compareText } from '../log/order.ts';
import { type Came, cameInTime, JUST_AFTER_MS } from './in-time.ts';

const HOUR_MS = 3_600_000;
/** Splices of one person no further apart than this are one walk. Common practice; no standard has a figure. */
const SAME_WALK_MS = 300_000;
/** A feeder must have shown this many picks in the time before its share says anything. Made up: no source has a figure. */
const FEWEST_PICKS = 200;

/** From when (included) until when (not), ms since 1970. */
export interface TimeSpan {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Verdicts of one outcome for one reason. */
export interface ReasonCount {
  readonly verdict: Exclude<Verdict, 'accepted'>;
  readonly code: string;
  readonly times: number;
}

/** One hour of splices; the first and last may be cut by the span. */
export interface SpliceHour {
  readonly fromMs: number;
  readonly splices: number;
}

/** A stop within the span. */
export interface StopSeen extends TimeSpan {
  /** Null where it began before the log's entries that were read, and goes on no more. */
  readonly reason: StopReason | null;
  /** True where it still goes on at the end of the span. */
  readonly isOpen: boolean;
}

/** A changeover that lay within the span, at least in part. */
export interface ChangeSeen {
  readonly setup: string;
  readonly beganMs: number;
  /** Null where it was not released by the end of the span. */
  readonly releasedMs: number | null;
}

/** What a feeder's reels that came off in the span have shown. */
export interface FeederSeen {
  readonly feeder: string;
  readonly picks: number;
  readonly lost: number;
  /** One deviation of `lost`, parts. */
  readonly sd: number;
  /** The share that its reels before the span had lost; null where there is too little to say. */
  readonly before: number | null;
}

/** Lost parts of one part number. */
export interface PartSeen {
  readonly part: string;
  readonly lost: number;
  /** One deviation of `lost`, parts. */
  readonly sd: number;
  readonly picks: number;
}

/** The figures of a span. */
export interface ShiftReport extends TimeSpan {
  readonly line: string;
  readonly verdicts: Readonly<Record<Verdict, number>>;
  /** Most frequent first. */
  readonly reasons: readonly ReasonCount[];
  readonly hours: readonly SpliceHour[];
  readonly splices: number;
  readonly walks: number;
  readonly stops: readonly StopSeen[];
  /** Stops because a slot ran dry. */
  readonly dry: readonly StopSeen[];
  /** What came onto slots that had too few parts left, oldest first: what `in-time.ts` calls prevented, too late, or not sure. */
  readonly came: readonly Came[];
  readonly changes: readonly ChangeSeen[];
  /** Most lost first. */
  readonly feeders: readonly FeederSeen[];
  readonly parts: readonly PartSeen[];
}

/**
 * The figures of a line between two moments. `entries`: those of the span at least, in any order; others do no harm. `floor`: as it is now, for
 * runs, changeovers and finished reels. An entry that was taken back counts no more.
 */
export function shiftReport(
  floor: FloorState,
  entries: readonly FloorEntry[],
  ask: TimeSpan & { readonly line: string },
): ShiftReport {
  const { line, fromMs, toMs } = ask;
  const within = entries
    .filter(
      (entry) =>
        entry.hlc.ms >= fromMs &&
        entry.hlc.ms < toMs &&
        'line' in entry.payload &&
        entry.payload.line === line &&
        !floor.corrected.has(entryId(entry)),
    )
    .sort((a, b) => a.hlc.ms - b.hlc.ms);
  const stops = stopsOf(floor, entries, ask);
  const around = { fromMs, toMs: toMs + JUST_AFTER_MS };
  const besides = linesFeeding(floor, line).flatMap((lane) =>
    stopsOf(floor, entries, { ...around, line: lane }),
  );
  return {
    line,
    fromMs,
    toMs,
    ...verdictsOf(within),
    ...splicesOf(splicesIn(floor, within, entries), ask),
    stops,
    dry: stops.filter(({ reason }) => reason === 'run-out'),
    came: cameInTime(floor, entries, { ...ask, stops: besides }),
    changes: [...floor.changeovers.values()]
      .filter(
        (each) =>
          each.line === line &&
          !isDropped(each) &&
          each.beganMs < toMs &&
          (each.releasedMs === null || each.releasedMs >= fromMs),
      )
      .map(({ setup, beganMs, releasedMs }) => ({
        setup,
        beganMs,
        releasedMs: releasedMs !== null && releasedMs < toMs ? releasedMs : null,
      }))
      .sort((a, b) => a.beganMs - b.beganMs),
    ...lossesOf(floor, ask),
  };
}

function verdictsOf(within: readonly FloorEntry[]): Pick<ShiftReport, 'verdicts' | 'reasons'> {
  const verdicts = { accepted: 0, refused: 0, held: 0 };
  const reasons = new Map<string, ReasonCount>();
  for (const entry of within) {
    if (entry.kind !== 'reel.verified') continue;
    const { verdict, reasons: told } = entry.payload;
    verdicts[verdict] += 1;
    if (verdict === 'accepted') continue;
    const code = told[0]?.code ?? '';
    const key = `${verdict} ${code}`;
    reasons.set(key, { verdict, code, times: (reasons.get(key)?.times ?? 0) + 1 });
  }
  return {
    verdicts,
    reasons: [...reasons.values()].sort((a, b) => b.times - a.times || compareText(a.code, b.code)),
  };
}

/** Entries by which a tape was joined: accepted at once, or held, maybe before the span, and cleared by a lead. */
function splicesIn(
  floor: FloorState,
  within: readonly FloorEntry[],
  entries: readonly FloorEntry[],
): readonly FloorEntry[] {
  const held = new Set(entries.filter((entry) => isSplice(entry, 'held')).map(entryId));
  return within.filter((entry) => {
    if (isSplice(entry, 'accepted')) return true;
    if (entry.kind !== 'hold.cleared' || floor.corrected.has(entry.payload.of)) return false;
    return held.delete(entry.payload.of); // a second lead's word changes nothing
  });
}

function isSplice(entry: FloorEntry, verdict: Verdict): boolean {
  return (
    entry.kind === 'reel.verified' && entry.payload.act === 'splice' && entry.payload.verdict === verdict
  );
}

function splicesOf(
  splices: readonly FloorEntry[],
  span: TimeSpan,
): Pick<ShiftReport, 'hours' | 'splices' | 'walks'> {
  const last = new Map<string, number>();
  let walks = 0;
  for (const { who, tablet, hlc } of splices) {
    const by = who ?? `~${tablet}`;
    if (hlc.ms - (last.get(by) ?? Number.NEGATIVE_INFINITY) > SAME_WALK_MS) walks += 1;
    last.set(by, hlc.ms);
  }
  const first = Math.floor(span.fromMs / HOUR_MS);
  const hours = Array.from({ length: Math.ceil(span.toMs / HOUR_MS) - first }, (_, at) => {
    const fromMs = (first + at) * HOUR_MS;
    const count = splices.filter(({ hlc }) => hlc.ms >= fromMs && hlc.ms < fromMs + HOUR_MS).length;
    return { fromMs, splices: count };
  });
  return { hours, splices: splices.length, walks };
}

/**
 * What a reel is believed to have lost, parts: as counted where the count is certain; else as the law of losses has it, since a splice bounds
 * a count within its window only, and the middle of a window is no loss.
 */
function believed(reel: LossEvidence, prior: LossLearnt): { readonly lost: number; readonly sd: number } {
  if ((reel.sd ?? 0) === 0) return { lost: reel.lost, sd: 0 };
  const { alpha, beta } = updateLoss(prior, reel);
  const all = alpha + beta;
  const mean = alpha / all;
  return { lost: mean * reel.picks, sd: Math.sqrt((mean * (1 - mean)) / (all + 1)) * reel.picks };
}

/** The stops of a line's runs, cut to the span; why each was is told by its entry, and by the run where that lies further back. */
function stopsOf(
  floor: FloorState,
  entries: readonly FloorEntry[],
  { line, fromMs, toMs }: TimeSpan & { readonly line: string },
): readonly StopSeen[] {
  const told = entries.flatMap((entry) =>
    entry.kind === 'run.stopped' && entry.payload.line === line
      ? [{ run: entry.payload.run, atMs: entry.hlc.ms, reason: entry.payload.reason }]
      : [],
  );
  const found: StopSeen[] = [];
  for (const run of floor.runs.values()) {
    if (run.line !== line) continue;
    for (const [beganMs, endedMs] of run.stops) {
      const endMs = endedMs ?? Number.POSITIVE_INFINITY;
      if (beganMs >= toMs || endMs <= fromMs) continue;
      // It may have been entered after it began: the entry within it is the one.
      const entry = told.find((each) => each.run === run.run && each.atMs >= beganMs && each.atMs <= endMs);
      const reason = entry?.reason ?? (endedMs === null ? run.stopReason : null);
      found.push({
        fromMs: Math.max(fromMs, beganMs),
        toMs: Math.min(toMs, endMs),
        reason,
        isOpen: endMs > toMs,
      });
    }
  }
  return found.sort((a, b) => a.fromMs - b.fromMs);
}

function lossesOf(
  floor: FloorState,
  { line, fromMs, toMs }: TimeSpan & { readonly line: string },
): Pick<ShiftReport, 'feeders' | 'parts'> {
  const feeders = new Map<
    string,
    { picks: number; lost: number; variance: number; wasPicks: number; wasLost: number }
  >();
  const parts = new Map<string, { picks: number; lost: number; variance: number }>();
  const prior = assumedLoss(floor, line);
  for (const reels of floor.finished.values()) {
    for (const reel of reels) {
      const shown = sharesSlots(reel.line, line) && reel.atMs < toMs ? shownOn(floor, reel) : null;
      if (!shown) continue;
      const isNow = reel.atMs >= fromMs;
      const { lost, sd } = believed(shown, prior);
      const feeder = feeders.get(shown.feeder) ?? { picks: 0, lost: 0, variance: 0, wasPicks: 0, wasLost: 0 };
      feeders.set(shown.feeder, feeder);
      if (!isNow) {
        feeder.wasPicks += shown.picks;
        feeder.wasLost += lost;
        continue;
      }
      feeder.picks += shown.picks;
      feeder.lost += lost;
      feeder.variance += sd ** 2;
      const part = parts.get(shown.part) ?? { picks: 0, lost: 0, variance: 0 };
      parts.set(shown.part, part);
      part.picks += shown.picks;
      part.lost += lost;
      part.variance += sd ** 2;
    }
  }
  return {
    feeders: [...feeders]
      .filter(([name, { picks }]) => name !== '' && picks > 0)
      .map(([feeder, { picks, lost, variance, wasPicks, wasLost }]) => ({
        feeder,
        picks,
        lost,
        sd: Math.sqrt(variance),
        before: wasPicks >= FEWEST_PICKS ? wasLost / wasPicks : null,
      }))
      .sort((a, b) => b.lost - a.lost || compareText(a.feeder, b.feeder)),
    parts: [...parts]
      .map(([part, { picks, lost, variance }]) => ({ part, picks, lost, sd: Math.sqrt(variance) }))
      .sort((a, b) => b.lost - a.lost || compareText(a.part, b.part)),
  };
}
