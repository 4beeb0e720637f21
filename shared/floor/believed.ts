// Does a machine believe what the scans say? Its newest report of what is loaded, slot by slot, against what stands there by the log.
// Method: a report comes in pages and counts when all are here; with it is kept what the scans said at that moment, so that a slot which was
// changed since is not held against a machine that could not know. Reels decide where the machine has ids that the log knows; where it has
// a register of its own the part does, by the scans' name for it or by its program's: an alternate that was taken for what the setup
// wants is called by either. Refused: to change a slot by a machine's word, and moments of two clocks against each other.

import { compareSlots, parseSlot, placeKey } from './address.ts';
import { isSamePart } from './fits.ts';
import { reelsOn } from './fold-believed.ts';
import { isReelKnown } from './gone-reels.ts';
import { lanesTaking, standingAt } from './lanes.ts';
import { ownIdOf } from './reel-id.ts';
import { countsAsWanted } from './slot-right.ts';
import { type FloorState, type SlotState, slotKey } from './state.ts';
import type { Believed, BelievedPlace } from './station-state.ts';
import { wantedOn } from './wanted.ts';

/** One side's word of a slot; null where it has nothing there. */
export interface SaidOfSlot {
  /** The reel's own id; null where it has none. */
  readonly reel: string | null;
  readonly part: string | null;
}

/** A slot of which machine and scans say different things. */
export interface Differs {
  /** The line's slot. */
  readonly slot: string;
  readonly machine: SaidOfSlot | null;
  readonly here: SaidOfSlot | null;
  /** What cures it: looking at the slot, since one side is wrong; or scanning what is there. */
  readonly cure: 'look' | 'scan';
}

/** What came of comparing a machine's report with the scans. */
export interface Compared {
  /** When the machine last said so, ms since 1970. */
  readonly atMs: number;
  /** Slots of which both say the same. */
  readonly same: number;
  /** In the order of the line. */
  readonly differs: readonly Differs[];
  /** Slots that were scanned after the machine last said so, and differ: it may not know yet. */
  readonly later: readonly string[];
  /** Slots of which the machine says too little: a reel that the log does not know, and no part. */
  readonly open: readonly string[];
  /** Places that are no slot of the line, as the machine names them. */
  readonly unknown: readonly string[];
}

/**
 * Compares what a station's machine believes to be loaded with what the scans say, now. Null where it never said. Changes nothing; what was
 * cured is not in it any more. Slots that the machine does not name count as empty there only where its report was whole, the station's
 * machine is known and it names at least one slot of the line.
 */
export function compareBelieved(state: FloorState, station: string): Compared | null {
  const believed = state.believed.get(station);
  if (!believed) return null;
  const { line, atMs } = believed;
  const known = slotsOf(state, line);
  const seen = new Map(believed.seen);
  const told = new Map<string, BelievedPlace[]>();
  const unknown: string[] = [];
  for (const place of believed.places) {
    const slot = known.get(placeKey(place.slot));
    if (slot === undefined) unknown.push(place.slot);
    else told.set(slot, [...(told.get(slot) ?? []), place]);
  }
  for (const slot of unnamed(state, station, { believed, told })) told.set(slot, []);
  const isOneRegister = believed.places.some(({ reel }) => reel !== null && isReelKnown(state, reel));
  const found = { same: 0, differs: [] as Differs[], later: [] as string[], open: [] as string[] };
  for (const slot of [...told.keys()].sort(compareSlots)) {
    const places = told.get(slot) ?? [];
    const there = state.slots.get(slotKey(line, slot));
    const answer = compareSlot(state, { line, places, there, isOneRegister });
    if (answer === 'same') found.same += 1;
    else if (seen.get(placeKey(slot)) !== reelsOn(there)) found.later.push(slot);
    else if (answer === 'open') found.open.push(slot);
    else found.differs.push({ slot, ...answer });
  }
  return { atMs, ...found, unknown };
}

/** The setups that feed from a line's slots now: its own, and those of its conveyor's other lanes. */
function setupsOf(state: FloorState, line: string): readonly string[] {
  return [state.chosen.get(line) ?? '', ...lanesTaking(state, line).map(({ setup }) => setup)];
}

/** The line's slots by the text of their place (`placeKey`): those of its setup and of its conveyor's other lanes, and those on which something stands. */
export function slotsOf(state: FloorState, line: string): ReadonlyMap<string, string> {
  const wanted = setupsOf(state, line).flatMap(
    (setup) => state.setups.get(setup)?.slots.map(({ slot }) => slot) ?? [],
  );
  const loaded = standingAt(state, line).map(({ slot }) => slot);
  return new Map([...wanted, ...loaded].map((slot) => [placeKey(slot), slot]));
}

/** Loaded slots of the station's machine that its report leaves out. */
function unnamed(
  state: FloorState,
  station: string,
  { believed, told }: { readonly believed: Believed; readonly told: ReadonlyMap<string, unknown> },
): readonly string[] {
  const machine = state.stations.get(station)?.machine ?? null;
  if (!believed.whole || machine === null || told.size === 0) return [];
  return standingAt(state, believed.line).flatMap(({ slot }) =>
    !told.has(slot) && parseSlot(slot).machine === parseSlot(`${machine}-F-1`).machine ? [slot] : [],
  );
}

interface OfSlot {
  readonly line: string;
  readonly places: readonly BelievedPlace[];
  readonly there: SlotState | undefined;
  readonly isOneRegister: boolean;
}

function compareSlot(state: FloorState, at: OfSlot): 'same' | 'open' | Omit<Differs, 'slot'> {
  const { places, there } = at;
  const named = places.filter(({ reel, part }) => reel !== null || part !== null);
  const [first] = named;
  const machine = first === undefined ? null : { reel: first.reel, part: first.part };
  const running = there?.tapes[0];
  const here = running === undefined ? null : { reel: ownIdOf(running.reel), part: textOrNull(running.part) };
  if (machine === null && here === null) return 'same';
  if (machine === null) return { machine, here, cure: 'look' };
  if (here === null) return { machine, here, cure: 'scan' };
  if (named.some(({ reel }) => there?.tapes.some((tape) => tape.reel === reel))) return 'same';
  if (at.isOneRegister && machine.reel !== null && here.reel !== null) return { machine, here, cure: 'look' };
  if (machine.part === null || here.part === null) return 'open';
  const isSame =
    there !== undefined && named.some(({ part }) => part !== null && isCalled(state, at.line, there, part));
  return isSame ? 'same' : { machine, here, cure: 'look' };
}

/** True where a machine rightly calls what stands on a slot by a part: its own, or the one of the program that it was taken for. */
export function isCalled(state: FloorState, line: string, there: SlotState, part: string): boolean {
  const { slot, tapes } = there;
  const wants = setupsOf(state, line).flatMap((setup) => {
    const wanted = wantedOn(state, setup, slot);
    return wanted === null ? [] : [{ setup, wanted }];
  });
  const names = tapes.flatMap((tape) => [
    tape.part,
    ...wants.filter((want) => countsAsWanted(state, line, tape, want)).map(({ wanted }) => wanted.part),
  ]);
  return names.some((name) => isSamePart(state, line, name, part));
}

const textOrNull = (text: string): string | null => (text === '' ? null : text);
