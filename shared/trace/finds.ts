// Where may a reel have stood that was found where it did not belong? Anywhere since its slot was last seen to be right.

import type { Finding } from '../floor/fold-contain.ts';
import { idSince } from '../floor/fold-print.ts';
import { linesFeeding, sharesSlots } from '../floor/lanes.ts';
import { materialNow } from '../floor/made-of.ts';
import { hasOwnId, nameByEntry, ownIdOf } from '../floor/reel-id.ts';
import type { FloorState, Run } from '../floor/state.ts';
import { tallyAt, tallyOf } from '../floor/tally.ts';
import { perPanelOf } from '../floor/wanted.ts';
import { reachOf, runBefore } from './line.ts';
import { earliest, latest, latestTo, type Span, span } from './order.ts';
import type { Stretch } from './stretches.ts';

/** The runs of a line, oldest first. */
export function runsOf(state: Pick<FloorState, 'runs'>, line: string): readonly Run[] {
  return [...state.runs.values()]
    .filter((run) => run.line === line)
    .sort((a, b) => a.startedMs - b.startedMs);
}

/**
 * Places of panels in a run that a found reel may be on; null where none. Panels still in the line are among them, so that the last may
 * lie beyond what is counted.
 */
export function findIn(state: FloorState, finding: Finding, run: Run): Span | null {
  const { line, slot, since, until } = finding;
  if (!isOfLane(state, finding, run.line)) return findBeside(state, finding, run);
  if (run.line !== line || perPanelOf(state, run.setup, slot) <= 0) return null;
  const { reach } = reachOf(state, line, slot);
  const tally = tallyOf(run);
  const sinceRun = since?.run ? state.runs.get(since.run) : undefined;
  if (since && sinceRun && run.startedMs < sinceRun.startedMs) {
    // Panels counted in the run before, which went on into that one, may not have reached the machine.
    const next = runsOf(state, line).find((each) => each.startedMs > run.startedMs);
    const isOn = next === sinceRun && next.setup === run.setup;
    return isOn ? span(Math.max(1, tally + since.tally + reach.low + 1), tally) : null;
  }
  const first =
    since && sinceRun === run ? Math.max(1, earliest(run, since.tally + reach.low, reach.low) + 1) : 1;
  const untilRun = until?.run ? state.runs.get(until.run) : undefined;
  const inLine = run.phase === 'ended' ? tally : tally + reach.high;
  if (!until || !untilRun) return span(first, inLine);
  const end = latest(untilRun, until.tally + reach.high, until.tally);
  if (untilRun === run) return span(first, end);
  if (run.startedMs < untilRun.startedMs) return span(first, tally);
  // A run that went on from the one in which it was taken off, the line not emptied between.
  const next = runsOf(state, line).find((each) => each.startedMs > untilRun.startedMs);
  return next === run && run.setup === untilRun.setup ? span(1, end - tallyOf(untilRun)) : null;
}

/** False where a reel was found, or its slot seen to be right, for another lane that feeds from there: in that one's count. */
function isOfLane(state: FloorState, { line, since, until }: Finding, lane: string): boolean {
  if (!sharesSlots(line, lane)) return true;
  const told = [since?.run, until?.run].map((run) => state.runs.get(run ?? '')?.line ?? lane);
  return [line, ...told].every((each) => each === lane);
}

/** The same in the run of another lane of the conveyor, whose count nobody looked at then: by the moments of its own counts. */
function findBeside(state: FloorState, { slot, since, until }: Finding, run: Run): Span | null {
  if (perPanelOf(state, run.setup, slot) <= 0) return null;
  const isOver = run.phase === 'ended' && since !== null && run.sinceMs < since.atMs;
  const { reach } = reachOf(state, run.line, slot);
  const tally = tallyOf(run);
  // Panels that were still in the line may have come by after the run's end.
  if (isOver && reach.low >= 0) return null;
  const first =
    since === null ? 1 : Math.max(1, earliest(run, tallyAt(run, since.atMs).low + reach.low, reach.low) + 1);
  const inLine = run.phase === 'ended' ? tally : tally + reach.high;
  if (until === null) return span(first, inLine);
  if (run.startedMs > until.atMs) {
    // What passed before that, in a run from which this one went on, may be counted in this one.
    const before = runBefore(state, run);
    return before?.setup === run.setup ? span(1, Math.min(inLine, latest(run, reach.high, 0))) : null;
  }
  const kept = tallyAt(run, until.atMs).high;
  return span(first, Math.min(inLine, latest(run, kept + reach.high, kept)));
}

/** The larger part of a span that lies outside another; null where nothing does. */
export function outside(of: Span | null, taken: Span): Span | null {
  if (of === null || taken.last < of.first || taken.first > of.last) return of;
  const before = span(of.first, taken.first - 1);
  const after = span(taken.last + 1, of.last);
  if (!before || !after) return before ?? after;
  return before.last - before.first >= after.last - after.first ? before : after;
}

/**
 * The places that a stretch surely and perhaps covers, of those counted so far. Where another reel was found on the slot, nothing is sure
 * from the last check on.
 */
export function placesOf(
  state: FloorState,
  run: Run,
  stretch: Stretch,
): { readonly sure: Span | null; readonly possible: Span | null } {
  const tally = tallyOf(run);
  const { from, to, reach } = stretch;
  // Panels counted before they reach the machine may still get another reel.
  const done = run.phase === 'ended' ? tally : tally + Math.min(0, reach.low);
  const sureLast = to === null ? done : Math.min(earliest(run, to.sure, reach.low), done);
  const possibleLast = to === null ? tally : Math.min(latestTo(run, to), tally);
  let sure = span(Math.max(1, latest(run, from.sure, from.at)), sureLast);
  for (const finding of state.findings.values()) {
    if (!sharesSlots(finding.line, stretch.line) || finding.slot !== stretch.slot) continue;
    const taken = findIn(state, finding, run);
    if (taken) sure = outside(sure, taken);
  }
  return { sure, possible: span(Math.max(1, earliest(run, from.possible, reach.low)), possibleLast) };
}

/** The runs of every lane that feeds from a line's slots. */
export function runsFeeding(state: FloorState, line: string): readonly Run[] {
  return linesFeeding(state, line).flatMap((each) => runsOf(state, each));
}

/** Reels that were found where they did not belong, as stretches of which nothing is sure. */
export function foundStretches(state: FloorState): readonly Stretch[] {
  return [...state.findings.values()].flatMap((finding) =>
    runsFeeding(state, finding.line).flatMap((run): Stretch[] => {
      const places = findIn(state, finding, run);
      if (places === null) return [];
      const { slot, supplierPart, lot, dateCode, who, entry } = finding;
      const { line } = run;
      const name = finding.reel ?? nameByEntry(entry);
      // What is joined with it while it may stand there may come on panels; what is joined later may not.
      const made = finding.until === null ? materialNow(state, idSince(state, name)) : finding.made;
      const { reach, isGuess } = reachOf(state, line, slot);
      return [
        {
          line,
          slot,
          reel: ownIdOf(name),
          ...(hasOwnId(name) ? {} : { unnamed: name }),
          ...(made ? { made } : {}),
          supplierPart,
          lot,
          dateCode,
          who,
          entry,
          reach,
          run: run.run,
          product: run.product,
          setup: run.setup,
          feeder: null,
          part: finding.part ?? '',
          from: { possible: places.first, sure: Number.POSITIVE_INFINITY, at: null },
          to: { sure: 0, possible: places.last, at: null },
          there: finding.until === null,
          joined: null,
          early: 0,
          guessed: isGuess ? ['in-line'] : [],
          at: new Date(finding.found.atMs).toISOString(),
        },
      ];
    }),
  );
}
