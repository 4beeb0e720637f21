// A machine asks whether materials are right where they are: what do the last verdicts say?
// Method: one answer a place, from what stands on the slot by the log and from whether it is right for the chosen setup. Where the log cannot
// know, that is said, and the plant has chosen what a machine hears then; so it is where only an unproven word of a lead let a reel on. Floor life and expiry are as at the last verdict.
// Refused: a guess, and "right" for a slot whose reel the machine does not name and nobody verified.

import { placeKey } from './address.ts';
import { isCalled, slotsOf } from './believed.ts';
import { isReelKnown } from './gone-reels.ts';
import type { PayloadOf } from './kinds.ts';
import { sharesSlots } from './lanes.ts';
import { type SlotAnswer, slotLooker, slotRight } from './slot-right.ts';
import { type FloorState, type SlotState, slotKey } from './state.ts';
import type { BelievedPlace } from './station-state.ts';
import type { InterlockResult, InterlockWhy, UnsureResult } from './vocabulary.ts';
import { lanesWanting } from './wanted.ts';

/** An answer for one place. */
export interface Answer {
  readonly slot: string | null;
  readonly result: InterlockResult;
  readonly why: InterlockWhy;
}

/** An answer as the log has it. */
export type AnsweredRow = PayloadOf<'station.answered'>['results'][number];

/** True where a row is of a slot; false where nobody could tell at which one the reel is. */
export const isOfSlot = ({ slot }: AnsweredRow): boolean => slot !== null && slot !== '?';

/** The place that a row is of: a slot with all its lanes; of places that are no slot each reel has its own. */
export const answeredKey = (row: AnsweredRow): string =>
  isOfSlot(row) ? `\t${row.slot}` : elsewhereKey(row);

/** The place of a row's reel where no slot is known of it: what was said there is over once the reel is answered of at a slot. */
export const elsewhereKey = ({ reel, part }: AnsweredRow): string => `?\t${reel}\t${part}`;

const surely = {
  verified: 'Success',
  refused: 'Failed',
  held: 'Failed',
  'other-reel': 'Failed',
  'other-part': 'Failed',
  'wrong-feeder': 'Failed',
  blocked: 'Failed',
} as const satisfies Partial<Record<InterlockWhy, InterlockResult>>;

/** The result that goes with a reason. `unsure`: for what nobody can know. */
export function resultOf(why: InterlockWhy, unsure: UnsureResult): InterlockResult {
  return Object.hasOwn(surely, why) ? surely[why as keyof typeof surely] : unsure;
}

/**
 * Answers a machine of a line for each place that it names, in their order. `slot` of a place: the line's slot as the link maps it. Never throws.
 */
export function answerPlaces(
  state: FloorState,
  line: string,
  places: readonly BelievedPlace[],
  unsure: UnsureResult,
): readonly Answer[] {
  const known = slotsOf(state, line);
  return places.map((place) => {
    const slot = known.get(placeKey(place.slot)) ?? null;
    const why = slot === null ? ('unknown-slot' as const) : whyOf(state, { line, slot, place });
    return { slot: slot ?? place.slot, result: resultOf(why, unsure), why };
  });
}

interface Asked {
  readonly line: string;
  readonly slot: string;
  readonly place: BelievedPlace;
}

function whyOf(state: FloorState, { line, slot, place }: Asked): InterlockWhy {
  const setup = state.chosen.get(line) ?? '';
  const right = rightForLanes(state, line, setup, slot);
  if (right === null && !state.setups.has(setup)) return 'no-setup';
  const there = state.slots.get(slotKey(line, slot));
  const refused = state.refused.get(slotKey(line, slot));
  const isHere = there?.tapes.some(({ reel }) => reel === place.reel) ?? false;
  if (refused !== undefined && !isHere && (place.reel === null || refused === place.reel)) return 'refused';
  // Two tablets contradict each other: only a person can say which of them is right.
  for (const { slots, lines } of state.conflicts.values())
    if (slots.some((each, at) => each === slot && sharesSlots(lines[at] ?? '', line))) return 'in-conflict';
  switch (right) {
    case null:
      return 'not-in-setup';
    case 'empty':
      return 'not-verified';
    case 'held':
      return 'held';
    case 'other-part':
      return 'other-part';
    case 'wrong-feeder':
      return 'wrong-feeder';
    case 'blocked':
      return 'blocked';
    case 'right':
      return there === undefined ? 'not-verified' : whyRight(state, line, there, place);
  }
}

/**
 * How a slot stands against the setup of the line that asks; where that wants nothing there, against what the other lanes of its conveyor take. A line
 * that builds nothing yet has no say on what a lane that builds takes from the slot. Null where no lane wants anything there.
 */
function rightForLanes(state: FloorState, line: string, setup: string, slot: string): SlotAnswer | null {
  const own = slotRight(state, line, setup, slot);
  const isOthers = own === null || own === 'other-part' || own === 'wrong-feeder';
  if (!isOthers || (own !== null && state.current.has(line))) return own;
  const lanes = lanesWanting(state, line, slot);
  if (lanes.length === 0) return own;
  const building = lanes.filter((lane) => state.current.has(lane.line));
  if (own !== null && building.length === 0) return own;
  const answers = (building.length > 0 ? building : lanes).map(
    (lane) => slotLooker(state, lane.line, lane.setup)(lane.wanted).is,
  );
  // What one of them builds with must be right for each that builds; what they are only loaded for, for one of them.
  if (building.length === 0 && answers.includes('right')) return 'right';
  return answers.find((answer) => answer !== 'right') ?? 'right';
}

/** The slot is right by the last verdict: is what the machine names that reel? */
function whyRight(
  state: FloorState,
  line: string,
  there: SlotState,
  { reel, part }: BelievedPlace,
): InterlockWhy {
  if (reel === null) {
    if (part === null) return 'no-reel-told';
    return isCalled(state, line, there, part) ? 'no-reel-told' : 'other-part';
  }
  const named = there.tapes.find((tape) => tape.reel === reel);
  if (named) return isUnproven(state, named.entry) ? 'unproven' : 'verified';
  return isReelKnown(state, reel) ? 'other-reel' : 'unknown-reel';
}

/** True where an entry takes a right that nothing proves, and no lead confirmed it. */
function isUnproven({ unproven }: FloorState, entry: string): boolean {
  const mark = unproven.get(entry);
  return mark !== undefined && mark.settled?.as !== 'confirmed';
}

/**
 * What an engineer said of answering a station's machine, as far as it is proven: an unproven word turns nothing on. Null where its link is to
 * say nothing.
 */
export function answersAs(state: FloorState, station: string): UnsureResult | null {
  const ruled = state.interlocks.get(station);
  if (ruled?.on !== true || (ruled.ruled !== null && isUnproven(state, ruled.ruled))) return null;
  return ruled.unsure;
}
