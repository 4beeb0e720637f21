// What the lanes of one conveyor have in common: its machines and their zone, and the rules that were entered, whichever lane was in hand when
// they were. Method: what is told of one lane is put to all, and a lane that is told later takes what is there, so that whoever asks a line for its rules
// asks no further. Panels on their way between machine and count are a lane's own: each lane is filled and emptied by itself.

import { laneHeld } from './lane-held.ts';
import { feedersOf, linesFeeding } from './lanes.ts';
import type { FloorState, Line } from './state.ts';

/** Puts a line where it is told, its machines to the other lanes of its conveyor too; a lane told for the first time goes by their rules. */
export function defineLine(state: FloorState, line: Line): void {
  const isNew = !state.lines.has(line.line);
  state.lines.set(line.line, line);
  state.lanesGone.delete(line.line);
  const { zone, machines } = line;
  for (const other of linesFeeding(state, line.line)) {
    const known = state.lines.get(other);
    if (known && other !== line.line) state.lines.set(other, { ...known, zone, machines });
  }
  if (isNew) takeRules(state, line.line);
}

/**
 * Takes a further lane of a conveyor away, with the setup chosen for it. One that builds or answers for something stays, as another tablet may have
 * begun there unheard, and so does a line that is no further lane.
 */
export function withdrawLane(state: FloorState, line: string): void {
  const told = state.lines.get(line);
  const isFurther = feedersOf(line) !== line && state.lines.has(feedersOf(line));
  if (!told || !isFurther || laneHeld(state, line) !== null) return;
  state.lines.delete(line);
  state.chosen.delete(line);
  const hasBuilt = [...state.runs.values()].some((run) => run.line === line);
  state.lanesGone.set(line, { ...told, hasBuilt });
  // What is ruled from now on is not put to it: told again, it takes the rules of then.
  if (!hasBuilt) for (const rules of rulesOf(state)) rules.delete(line);
}

/** A lane that builds or is to build is a lane, also where the entry that tells of it has not come, or another tablet took it away. */
export function defineLane(state: FloorState, line: string): void {
  const host = state.lines.get(feedersOf(line));
  if (!state.lines.has(line) && host && host.line !== line)
    defineLine(state, { ...host, line, name: state.lanesGone.get(line)?.name ?? line });
}

function takeRules(state: FloorState, line: string): void {
  const host = feedersOf(line);
  if (host === line) return;
  for (const rules of rulesOf(state)) {
    const there = rules.get(host);
    if (there === undefined || rules.has(line)) continue;
    const isNamed = typeof there === 'object' && there !== null && 'line' in there;
    rules.set(line, isNamed ? { ...there, line } : there);
  }
}

/** The rules that all lanes of a conveyor share. */
function rulesOf(state: FloorState): readonly Map<string, unknown>[] {
  return [
    state.rules,
    state.calendars,
    state.climates,
    state.idles,
    state.ageLimits,
    state.valueRules,
    state.pictureRules,
    state.crews,
    state.spliceCosts,
    state.tapeRules,
  ];
}
