// Which slots does a line feed from? A conveyor of two lanes is two lines that share one line's slots: each lane has a run, a setup, a count and
// a changeover of its own, as lines have; what stands on slots is told of the line that has the machines.
// Method: the lane's id says whose lane it is, so that a slot has one key whoever asks. Refused: a second run on one line, since every
// question about a line's run would have two answers; a second line with slots of its own, since a reel would then stand twice.

import type { FloorState, Line, Run, SkipsSeen, SlotState } from './state.ts';

const LANE = /^(.+)~lane[2-9]$/;

/** The line whose slots a line feeds from: its own, or for a further lane of a conveyor those of the lane's line. */
export function feedersOf(line: string): string {
  return LANE.exec(line)?.[1] ?? line;
}

/** The id of a further lane of a line's conveyor; `lane`: 2..9. */
export function laneLine(line: string, lane: number): string {
  return `${feedersOf(line)}~lane${lane}`;
}

/** A line as it is told, or as it was where it is a lane that was taken away: for what tells of the past. Undefined where no line was told so. */
export function lineEver(state: Pick<FloorState, 'lines' | 'lanesGone'>, line: string): Line | undefined {
  return state.lines.get(line) ?? state.lanesGone.get(line);
}

/** Every line as it is told, then the lanes that were taken away: of those `hasBuilt` says whether a run was begun there. For what tells of the past. */
export function linesEver(
  state: Pick<FloorState, 'lines' | 'lanesGone'>,
): readonly (Line & { readonly hasBuilt?: boolean })[] {
  return [...state.lines.values(), ...state.lanesGone.values()];
}

/** True where both lines feed from the same slots. */
export function sharesSlots(one: string, other: string): boolean {
  return feedersOf(one) === feedersOf(other);
}

/** What stands on the slots that a line feeds from, in no order that says anything. Cost: linear in all slots of the plant. */
export function standingAt(state: Pick<FloorState, 'slots'>, line: string): readonly SlotState[] {
  const host = feedersOf(line);
  return [...state.slots.values()].filter((slot) => slot.line === host);
}

/** The runs that are being built from a line's slots: of the line that has the machines first, then of its lanes by id. */
export function runsBuilding(state: Pick<FloorState, 'current' | 'runs'>, line: string): readonly Run[] {
  const own = feedersOf(line);
  const lanes = [...state.current.keys()].filter((other) => other !== own && sharesSlots(other, own));
  return [own, ...lanes.sort()].flatMap((each) => state.runs.get(state.current.get(each) ?? '') ?? []);
}

/** The setup by which a line takes from its slots: that of its run, else the one that it is loaded for; null where it has none. */
export function setupTaking(
  state: Pick<FloorState, 'chosen' | 'current' | 'runs'>,
  line: string,
): string | null {
  return state.runs.get(state.current.get(line) ?? '')?.setup ?? state.chosen.get(line) ?? null;
}

/**
 * Every line that feeds from the same slots, or built from them as a lane that was taken away since, the one that has the machines first; the line asked for is
 * among them, known or not.
 */
export function linesFeeding(
  state: Pick<FloorState, 'lines' | 'lanesGone'>,
  line: string,
): readonly string[] {
  const own = feedersOf(line);
  // Where nothing was ever built nothing was taken from the slots.
  const gone = [...state.lanesGone].flatMap(([lane, { hasBuilt }]) => (hasBuilt ? [lane] : []));
  const lanes = new Set([line, ...state.lines.keys(), ...gone].filter((other) => sharesSlots(other, own)));
  lanes.delete(own);
  return [own, ...[...lanes].sort()];
}

/** Where the count of another lane's run stood when a slot's figures were set. */
export interface LaneMark {
  readonly run: string;
  readonly done: number;
  readonly skips: SkipsSeen;
}

/** What another lane builds, or is loaded for while it builds nothing. */
export interface LaneSetup {
  readonly line: string;
  readonly setup: string;
}

/** The other lanes that feed from a line's slots, by id, each with what it takes from them; lanes without a setup take nothing. */
export function lanesTaking(
  state: Pick<FloorState, 'chosen' | 'current' | 'runs'>,
  line: string,
): readonly LaneSetup[] {
  const own = feedersOf(line);
  const known = [...state.current.keys(), ...state.chosen.keys()];
  const others = new Set(known.filter((other) => other !== line && feedersOf(other) === own));
  return [...others].sort().flatMap((other) => {
    const setup = setupTaking(state, other);
    return setup === null ? [] : [{ line: other, setup }];
  });
}
