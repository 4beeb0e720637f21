// How many panels may lie between a slot's machine and the place where panels are counted? When something changes on a slot, so many
// panels more than are counted have passed it already; less than none where panels are counted before they reach it.
// Method: a range per machine, as the plant has entered it; what scans at both places showed beyond it widens it. Where nobody has
// entered one, the widest that a line of so many machines can mean, and it is said that this is a guess. Refused: a single figure, since a belt is never filled evenly.

import { seenInLine } from './fold-seen.ts';
import { placeOnLine } from './place.ts';
import type { FloorState } from './state.ts';

/** Panels that have passed a machine beyond those counted, at least and at most. */
export interface InLine {
  readonly least: number;
  readonly most: number;
  /** The most of all panels that pass the place of counting uncounted, as a share. */
  readonly missed: number;
  /** True where nobody entered the range. */
  readonly isGuess: boolean;
}

/** Panels at work in a machine and waiting before it, at most. Common practice: one or two; no source kept. */
export const MOST_A_MACHINE = 3;
/** Panels from behind the last machine to the end of the line, the oven among it, at most. Common practice; no source kept. */
export const MOST_BEHIND = 15;
/** The share of panels that pass uncounted, where nobody entered it: our guess. */
export const MISSED_GUESS = 0.002;

/** The range of a slot's machine. */
export function panelsInLine(
  state: Pick<FloorState, 'lines' | 'inLines' | 'passed'>,
  line: string,
  slot: string,
): InLine {
  const ruled = state.inLines.get(line);
  const known = state.lines.get(line);
  const machine = known ? placeOnLine(known, slot).machine : null;
  const missed = ruled?.missed ?? MISSED_GUESS;
  const entered = ruled?.machines.find((each) => each.machine === machine);
  const seen = machine === null ? null : seenInLine(state, line, machine);
  // A line that fills or empties holds none, whatever it holds when it is full.
  const widened = (least: number, most: number) => ({
    least: Math.min(0, least, seen?.least ?? 0),
    most: Math.max(0, most, seen?.most ?? 0),
  });
  if (entered) return { ...widened(entered.least, entered.most), missed, isGuess: false };
  const machines = known?.machines ?? [];
  const at = machines.findIndex((each) => each.machine === machine);
  const all = Math.max(1, machines.length);
  const [before, behind] = at < 0 ? [all, all] : [at + 1, all - at];
  const most = MOST_A_MACHINE * behind + MOST_BEHIND;
  return { ...widened(-MOST_A_MACHINE * before, most), missed, isGuess: true };
}

/** The most panels that a line holds, as entered for its machines or as widely as it can be meant: so many may come out after a run's end. */
export function mostInLine(state: Pick<FloorState, 'lines' | 'inLines'>, line: string): number {
  const entered = state.inLines.get(line)?.machines ?? [];
  if (entered.length > 0) return Math.max(0, ...entered.map(({ most }) => most));
  return MOST_A_MACHINE * Math.max(1, state.lines.get(line)?.machines.length ?? 0) + MOST_BEHIND;
}
