// Which panels may carry a reel that should not have been there, and which surely do? Asked when it is found late: by a sweep, after a
// hold was cleared in error, from a block, or when its floor life turns out to have ended.
// Method: a reel that the log has on its slot is where its stretches say; one that the log never had there may have come at any moment
// since the slot was last seen to be right. Panels that are still in the line are held too, before they are counted.

import type { PayloadOf } from '../floor/kinds.ts';
import type { Run } from '../floor/state.ts';
import { tallyOf } from '../floor/tally.ts';
import type { ContainCause } from '../floor/vocabulary.ts';
import { serialsBetween } from './ask.ts';
import { stretchesBeside } from './beside.ts';
import { guessedOf } from './boards.ts';
import { findIn, placesOf, runsFeeding } from './finds.ts';
import { type Carried, carriedBy } from './material.ts';
import { earliest, latestTo, span } from './order.ts';
import type { TraceQuestion } from './question.ts';
import type { Guess, Stretch, TraceIndex } from './stretches.ts';

/** Panels of one run that may carry it, by their places in the run's order of counting. */
export type SuspectRun = PayloadOf<'panels.contained'>['runs'][number];

/** What is asked for: the find that a verdict told, or material that the log has on slots. */
export interface SuspectQuestion {
  readonly cause: ContainCause;
  /** The verdict that found a wrong reel. */
  readonly finding?: string;
  readonly material?: Pick<TraceQuestion, 'reel' | 'lot' | 'part'>;
  /** The entry that put it on a slot, where one stay alone is meant. */
  readonly entry?: string;
  /**
   * Only what was placed after this moment, ms since 1970: when a floor life ended. Where it hangs on the reel: for each of its stays, null
   * for one that is not meant.
   */
  readonly afterMs?: number | ((stretch: Stretch) => number | null);
}

/** The answer: panels run by run, their codes, and what the bounds rest on that nobody has entered. */
export interface Suspects {
  readonly runs: readonly SuspectRun[];
  readonly codes: readonly string[];
  readonly guessed: readonly Guess[];
  /** True while the material stands on a slot and the run goes on: panels to come will carry it too. */
  readonly goesOn: boolean;
}

/** All panels in question. Cost: linear in stretches. */
export function suspectPanels(index: TraceIndex, question: SuspectQuestion): Suspects {
  const finding = question.finding === undefined ? undefined : index.state.findings.get(question.finding);
  const runs = finding ? foundRuns(index, finding.entry) : stretchRuns(index, question);
  const codes = new Set<string>();
  for (const { run, possible } of runs) {
    const counted = index.state.runs.get(run);
    if (counted) for (const code of serialsBetween(index, counted, possible)) codes.add(code);
  }
  const meant = finding ? [] : stretchesOf(index, question).map(([stretch]) => stretch);
  const isOn = (stretch: Stretch) => stretch.there && index.state.runs.get(stretch.run)?.phase !== 'ended';
  const asked = finding ? [finding.line, ...runs.map(({ line }) => line)] : [];
  const inLine: readonly Guess[] = asked.some((line) => !index.state.inLines.has(line)) ? ['in-line'] : [];
  return {
    runs,
    codes: [...codes],
    guessed: [...new Set([...inLine, ...meant.flatMap((stretch) => guessedOf(index.state, stretch))])].sort(),
    goesOn: finding ? finding.until === null : meant.some(isOn),
  };
}

function foundRuns(index: TraceIndex, entry: string): readonly SuspectRun[] {
  const finding = index.state.findings.get(entry);
  if (!finding) return [];
  return runsFeeding(index.state, finding.line).flatMap((run): SuspectRun[] => {
    const possible = findIn(index.state, finding, run);
    return possible === null
      ? []
      : [{ run: run.run, line: run.line, slot: finding.slot, sure: null, possible }];
  });
}

/** The moment from which a stay counts; undefined where all of it does, null where none. */
function afterOf({ afterMs }: SuspectQuestion, stretch: Stretch): number | null | undefined {
  return typeof afterMs === 'function' ? afterMs(stretch) : afterMs;
}

function meantBy({ state }: TraceIndex, question: SuspectQuestion): (stretch: Stretch) => Carried | null {
  const { material = {}, entry } = question;
  const carried = carriedBy(state, material);
  const isNamed = Object.keys(material).length > 0 || entry !== undefined;
  return (stretch) =>
    isNamed && (entry === undefined || stretch.entry === entry) && afterOf(question, stretch) !== null
      ? carried(stretch)
      : null;
}

/** The stretches that are meant, each with how it carries what is asked for. */
function stretchesOf(index: TraceIndex, question: SuspectQuestion): readonly (readonly [Stretch, Carried])[] {
  const meant = meantBy(index, question);
  return [...index.stretches, ...stretchesBeside(index.state)].flatMap((stretch) => {
    const how = meant(stretch);
    return how === null ? [] : [[stretch, how] as const];
  });
}

function stretchRuns(index: TraceIndex, question: SuspectQuestion): readonly SuspectRun[] {
  const found: SuspectRun[] = [];
  for (const [stretch, how] of stretchesOf(index, question)) {
    const run = index.state.runs.get(stretch.run);
    if (!run) continue;
    const after = afterOf(question, stretch);
    const from =
      after === undefined || after === null ? { possible: 1, sure: 1 } : placesAfter(run, stretch, after);
    const came = earliest(run, stretch.from.possible, stretch.reach.low);
    const { sure } = placesOf(index.state, run, stretch);
    const possible = span(Math.max(1, came, from.possible), lastOf(run, stretch));
    if (possible === null) continue;
    const surely =
      sure === null || how === 'perhaps' ? null : span(Math.max(sure.first, from.sure), sure.last);
    found.push({ run: run.run, line: run.line, slot: stretch.slot, sure: surely, possible });
  }
  return found.sort((a, b) => startOf(index, a) - startOf(index, b));
}

const startOf = (index: TraceIndex, { run }: SuspectRun): number => index.state.runs.get(run)?.startedMs ?? 0;

/** The last place that a stretch may reach, panels still in the line among them. */
function lastOf(run: Run, stretch: Stretch): number {
  const tally = tallyOf(run);
  const inLine = run.phase === 'ended' ? tally : tally + stretch.reach.high;
  return stretch.to === null ? inLine : Math.min(latestTo(run, stretch.to), inLine);
}

/** The first places that were placed after a moment, as far as the counts of the run still tell. */
function placesAfter(
  run: Run,
  { reach }: Stretch,
  afterMs: number,
): { readonly possible: number; readonly sure: number } {
  const tally = tallyOf(run);
  if (run.startedMs > afterMs) return { possible: 1, sure: 1 };
  if (run.phase === 'ended' && run.sinceMs < afterMs) return { possible: tally + 1, sure: tally + 1 };
  const before = run.counts.filter(([, ms]) => ms <= afterMs).at(-1);
  const after = run.counts.find(([, ms]) => ms > afterMs);
  const [first] = run.counts;
  const isAll = first !== undefined && first[3] <= first[2];
  if (!before && !isAll) return { possible: 1, sure: Number.POSITIVE_INFINITY };
  const [low, high] = [before?.[3] ?? 0, after?.[3] ?? tally];
  return { possible: Math.max(1, low + reach.low + 1), sure: high + reach.high + 1 };
}
