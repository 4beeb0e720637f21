// May this reel go on this slot? Every rule is asked, so that the operator hears all that is wrong at once; the first reason
// is the one to act on. Method: a list of small rules over one question; no rule guesses, a fact that is missing is a reason.

import { compareSlots, isLaneBeside } from '../floor/address.ts';
import { dateCodeReasons, olderInStore } from '../floor/age-limit.ts';
import { feederFits } from '../floor/feeder-fits.ts';
import { typeOf } from '../floor/feeder-types.ts';
import { ageReasons, blockReasons, type FitLife, partFits } from '../floor/fits.ts';
import { careAfter, placedBy } from '../floor/fold-feeders.ts';
import { reelOf } from '../floor/gone-reels.ts';
import type { SetupSlot } from '../floor/kinds.ts';
import { sharesSlots, standingAt } from '../floor/lanes.ts';
import { isOnLinePlace } from '../floor/place.ts';
import { plantDay } from '../floor/plant-day.ts';
import { hasOwnId, ownIdOf } from '../floor/reel-id.ts';
import { type CartPlace, type FloorState, type Reel, slotKey } from '../floor/state.ts';
import { judgedAnew, type MeasuredPart, valueCheckOf } from '../floor/value-check.ts';
import { joins, type Verdict, type VerifyAct } from '../floor/vocabulary.ts';
import { wantedOn } from '../floor/wanted.ts';
import { keptReason, laneReasons } from './lanes.ts';
import { type Reason, verdictOf } from './reasons.ts';

export { slotsWanting } from '../floor/fits.ts';

/** What the reel's label says, as far as the verdict needs it. */
export interface ReelFacts {
  /** The reel's own id, null where the label has none. */
  readonly reel: string | null;
  /** The site's part number. */
  readonly part: string | null;
  readonly supplierPart: string | null;
  /** Parts on it as far as anybody knows: counted, typed, or from the label. */
  readonly quantity: number | null;
  /** What the label itself says, null where it says nothing; absent where only one figure is known. */
  readonly labelQuantity?: number | null;
  readonly lot: string | null;
  /** As printed; null or absent where the label has none. */
  readonly dateCode?: string | null;
  /** `YYYY-MM-DD` after which the parts must not be used, null where the label says none. */
  readonly expires?: string | null;
  /** True where a person said that it is a second reel, though its label reads like that of the reel that runs there. */
  readonly isSecond?: boolean;
  /** True where a person said that it comes new, though a reel without an id of its part and lot was on the line before. */
  readonly isFresh?: boolean;
  /** One part off it under the meter; null or absent where nobody measured. */
  readonly measured?: MeasuredPart | null;
}

/** What is asked. */
export interface VerifyQuestion {
  readonly act: VerifyAct;
  readonly line: string;
  readonly setup: string;
  readonly slot: string;
  /** The feeder's id, null where none was scanned. */
  readonly feeder: string | null;
  readonly reel: ReelFacts;
  /** Today in the plant, `YYYY-MM-DD`, for expiry. */
  readonly today: string;
  /** Null or absent where the reel's time out of the bag is not known or not limited. */
  readonly floorLife?: FitLife | null;
}

/** The answer, the reasons in order of importance, and the site part that the reel is taken for. */
export interface VerifyAnswer {
  readonly verdict: Verdict;
  readonly reasons: readonly Reason[];
  readonly part: string | null;
}

/** Answers the question from the floor's state. Pure; cost: a few look-ups, and one walk over the setup for a wrong part. */
export function verifyReel(state: FloorState, question: VerifyQuestion): VerifyAnswer {
  const reasons: Reason[] = [];
  const wanted = wantedOn(state, question.setup, question.slot);
  reasons.push(...slotReasons(state, question, wanted));
  let part = question.reel.part;
  if (wanted) {
    const judged = partFits(state, { line: question.line, setup: question.setup, wanted }, question.reel);
    part = judged.part;
    // A reel that is seen where another lane keeps it is no wrong reel.
    if (!reasons.some(({ code }) => code === 'kept-for-lane') || question.act !== 'sweep')
      reasons.push(...judged.reasons);
    if (question.act !== 'sweep') reasons.push(...laneReasons(state, question, reasons));
    reasons.push(...feederReasons(state, question, wanted), ...careReasons(state, question));
  }
  reasons.push(...reelReasons(state, question, part));
  if (part !== null && wanted) reasons.push(...dateReasons(state, question, part));
  if (part !== null && question.act !== 'sweep' && verdictOf(reasons) !== 'refused') {
    reasons.push(...olderReasons(state, question.reel, part));
    if (wanted) reasons.push(...valueReasons(state, question, { wanted, part }));
  }
  const order: Readonly<Record<Verdict, number>> = { refused: 0, held: 1, accepted: 2 };
  const ranked = reasons
    .map((reason, index) => ({ reason, index, rank: order[verdictOf([reason])] }))
    .sort((a, b) => a.rank - b.rank || a.index - b.index)
    .map(({ reason }) => reason);
  return { verdict: verdictOf(ranked), reasons: ranked, part };
}

function slotReasons(state: FloorState, question: VerifyQuestion, wanted: SetupSlot | null): Reason[] {
  const { act, line, slot } = question;
  const there = state.slots.get(slotKey(line, slot));
  if (!wanted && !isOnLinePlace(state, line, slot)) return [{ code: 'unknown-slot', slot }];
  if (!wanted) return [{ code: 'slot-not-in-setup', slot }];
  const kept = keptReason(state, question);
  // In a sweep another reel than the one that is kept is a wrong one.
  if (kept && (act !== 'sweep' || there?.tapes.some((tape) => sameReel(tape, question.reel)))) return [kept];
  if (act === 'load' && there) {
    const reel = there.tapes.at(-1);
    return [{ code: 'slot-loaded', slot, part: reel?.part ?? null, reel: shownReel(reel?.reel) }];
  }
  if (act !== 'load' && !there) return [{ code: 'slot-empty', slot }];
  return [];
}

function feederReasons(state: FloorState, question: VerifyQuestion, wanted: SetupSlot): Reason[] {
  const { feeder, line, slot, act } = question;
  if (feeder === null || joins(act)) return [];
  const reasons: Reason[] = [];
  const isListed = state.feeders.has(feeder);
  const { reasons: misfits } = feederFits(state, feeder, wanted, { isThere: act === 'sweep' });
  reasons.push(...misfits.map((misfit): Reason => ({ ...misfit, feeder })));
  if (!isListed && state.rules.get(line)?.feedersKnown) reasons.push({ code: 'feeder-unknown', feeder });
  for (const other of state.slots.values()) {
    if (other.feeder === feeder && !isSameFeederPlace(other, question)) {
      reasons.push({ code: 'feeder-elsewhere', feeder, slot: other.slot, line: other.line });
    }
  }
  const taken = lanesTaken(state, question, feeder);
  const lanes = typeOf(state, feeder)?.lanes ?? null;
  // Each reel stands on its own lane: one more than the feeder has cannot be.
  if (lanes !== null && taken.length >= lanes)
    reasons.push({ code: 'feeder-lanes', feeder, lanes, slots: taken });
  if (act !== 'sweep') {
    const carried = onOtherPlaces(state, line, slot).filter(
      ({ place }) => place.feeder === feeder && !isSameFeederPlace(place, question),
    );
    reasons.push(
      ...carried.map(
        ({ cart, place }): Reason => ({ code: 'feeder-on-cart', feeder, cart, slot: place.slot }),
      ),
    );
  }
  return reasons;
}

/** A word, no more, while the feeder is in hand: it has placed as much as the plant lets one place between two cares. */
function careReasons(state: FloorState, { feeder, act }: VerifyQuestion): Reason[] {
  if (feeder === null || joins(act) || act === 'sweep') return [];
  const after = careAfter(state, feeder);
  if (after === null) return [];
  const placed = placedBy(state, feeder);
  return placed < after ? [] : [{ code: 'feeder-care', feeder, placed, after }];
}

/** A feeder with several lanes stands on the slots of all of them at once. */
function isSameFeederPlace(
  there: { readonly line: string; readonly slot: string },
  asked: Pick<VerifyQuestion, 'line' | 'slot'>,
): boolean {
  return (
    sharesSlots(there.line, asked.line) && (there.slot === asked.slot || isLaneBeside(there.slot, asked.slot))
  );
}

/** The other lanes beside the slot asked for that the feeder serves, on the line or ready on a cart, in walking order. */
function lanesTaken(state: FloorState, question: VerifyQuestion, feeder: string): readonly string[] {
  const { line, slot, act } = question;
  const carried =
    act === 'load' || act === 'exchange' ? onOtherPlaces(state, line, slot).map(({ place }) => place) : [];
  const there = [...standingAt(state, line), ...carried.filter((place) => sharesSlots(place.line, line))];
  const beside = there.filter((each) => each.feeder === feeder && isLaneBeside(each.slot, slot));
  return [...new Set(beside.map((each) => each.slot))].sort(compareSlots);
}

/** What carts carry for other slots than the one asked for; a place for that slot is the cart's load done by hand. */
function onOtherPlaces(state: FloorState, line: string, slot: string): { cart: string; place: CartPlace }[] {
  const asked = slotKey(line, slot);
  return [...state.carts].flatMap(([cart, places]) =>
    [...places.values()]
      .filter((place) => slotKey(place.line, place.slot) !== asked)
      .map((place) => ({ cart, place })),
  );
}

function reelReasons(state: FloorState, question: VerifyQuestion, part: string | null): Reason[] {
  const { reel, line, slot, act } = question;
  const reasons: Reason[] = [...blockReasons(state, reel, part)];
  const known = reel.reel === null ? undefined : reelOf(state, reel.reel);
  const there = state.slots.get(slotKey(line, slot));
  const loaded = there?.tapes.find((tape) => sameReel(tape, reel));
  if (act === 'sweep') {
    if (there && !loaded) {
      reasons.push({
        code: 'not-the-loaded-reel',
        slot,
        reel: reel.reel,
        loaded: shownReel(there.tapes.at(-1)?.reel),
      });
    }
  } else {
    // What stands on its slot was let there.
    if (known?.gone) reasons.push({ code: 'reel-gone', reel: known.reel });
    if (known?.at) {
      const here = sharesSlots(known.at.line, line) && known.at.slot === slot;
      if (here) reasons.push({ code: 'reel-here', reel: known.reel, slot });
      else
        reasons.push({ code: 'reel-elsewhere', reel: known.reel, slot: known.at.slot, line: known.at.line });
    }
    if ((act === 'load' || act === 'exchange') && reel.reel !== null) {
      const carried = onOtherPlaces(state, line, slot).filter(({ place }) => place.reel === reel.reel);
      reasons.push(
        ...carried.map(
          ({ cart, place }): Reason => ({ code: 'reel-on-cart', reel: reel.reel, cart, slot: place.slot }),
        ),
      );
    }
    const earlier = unnamedBefore(state, question, part);
    if (earlier !== null) reasons.push(earlier);
    if (reel.quantity === null && (known?.count ?? null) === null) reasons.push({ code: 'no-quantity' });
    const { quantity, labelQuantity } = reel;
    if (quantity !== null && labelQuantity !== undefined && quantity !== labelQuantity)
      reasons.push({ code: 'quantity-corrected', label: labelQuantity, quantity });
    if (act === 'splice' && reel.isSecond) reasons.push({ code: 'same-label', slot });
    const last = there?.tapes.at(-1);
    if (joins(act) && last?.lot && reel.lot && last.lot !== reel.lot) {
      reasons.push({ code: 'mixed-lots', from: last.lot, to: reel.lot });
    }
  }
  const since = loaded === undefined ? null : plantDay(state, line, loaded.atMs);
  const standing = act === 'sweep' ? { standsSince: since } : {};
  const { today, floorLife = null } = question;
  reasons.push(...ageReasons(reel, { today, floorLife, ...standing }));
  return reasons;
}

/**
 * A reel without an id that may be one that was on the line before: part and lot are those of a reel without an id that came off with parts
 * on it. It cannot begin afresh: held where its floor life is limited, or where only the label tells its count and the earlier reel's was
 * another. `isFresh`: a person said that it comes new; its count is believed then, not its floor life.
 */
function unnamedBefore(state: FloorState, question: VerifyQuestion, part: string | null): Reason | null {
  const { reel, floorLife = null } = question;
  if (reel.reel !== null) return null;
  const earlier = earlierUnnamed(state, reel, part);
  if (earlier === null) return null;
  const byLabel = reel.labelQuantity === undefined || reel.quantity === reel.labelQuantity;
  const countMatters = !reel.isFresh && byLabel && earlier.count !== reel.quantity;
  if (floorLife === null && !countMatters) return null;
  return { code: 'reel-unnamed', lot: earlier.lot, left: earlier.count, floorLife: floorLife !== null };
}

/** The reel without an id of this part and lot that came off the line with parts on it, the newest; null where there is none. */
export function earlierUnnamed(
  state: FloorState,
  reel: Pick<ReelFacts, 'part' | 'supplierPart' | 'lot'>,
  part: string | null = reel.part,
): Reel | null {
  let newest: Reel | null = null;
  for (const each of state.reels.values()) {
    if (!isUnnamedAndUsed(state, each) || each.at !== null || each.count === 0) continue;
    const samePart = part === null ? each.supplierPart === reel.supplierPart : each.part === part;
    if (samePart && (each.lot === null || reel.lot === null || each.lot === reel.lot)) newest = each;
  }
  return newest;
}

/** True where its maker's label names it by no id, and to begin afresh would lose a count or time out of the bag. */
function isUnnamedAndUsed(state: FloorState, { reel, basis }: Reel): boolean {
  if (!hasOwnId(reel)) return true;
  return state.named.has(reel) && (basis !== 'label' || state.exposures.has(reel));
}

/** The age by the date code, where the line limits it. */
function dateReasons(state: FloorState, question: VerifyQuestion, part: string): readonly Reason[] {
  const { act, line, slot, reel, today } = question;
  if (act !== 'sweep') return dateCodeReasons(state, { line, part }, reel, { today });
  const loaded = state.slots.get(slotKey(line, slot))?.tapes.find((tape) => sameReel(tape, reel));
  const standsSince = loaded === undefined ? null : plantDay(state, line, loaded.atMs);
  return dateCodeReasons(state, { line, part }, reel, { today, standsSince });
}

/** What a measurement says, by its verdict. */
export const valueCodes = {
  accepted: 'value-within',
  held: 'value-unsure',
  refused: 'value-outside',
} as const satisfies Readonly<Record<Verdict, string>>;

/** What a part off the reel measures, where the line wants that known before it feeds. A note is about the slot's own part, not an alternate. */
function valueReasons(
  state: FloorState,
  { line, reel }: VerifyQuestion,
  { wanted, part }: { readonly wanted: SetupSlot; readonly part: string },
): Reason[] {
  const check = valueCheckOf(state, line, { part, note: part === wanted.part ? wanted.note : undefined });
  if (check === null) return [];
  if (check.lack !== null) return [{ code: 'value-unknown', part, lack: check.lack }];
  const { measured = null } = reel;
  // What was measured as another part, or between other limits, says nothing of this one.
  const judged = measured === null ? null : judgedAnew(check, measured);
  if (judged === null) return [{ code: 'value-unmeasured', part }];
  const { nominal, unit, least, most, quantity, uncertainty, guard, verdict } = judged;
  return [{ code: valueCodes[verdict], nominal, unit, least, most, quantity, uncertainty, guard }];
}

/** A hint, no more: another reel of the part should go first. */
function olderReasons(state: FloorState, reel: ReelFacts, part: string): Reason[] {
  const isBlocked = (other: Reel) => blockReasons(state, other).length > 0;
  const { dateCode = null, expires = null } = reel;
  const older = olderInStore(state, part, { reel: reel.reel, dateCode, expires, isBlocked });
  if (older === null) return [];
  const { reel: first, why } = older;
  const until = state.expiries.get(first.reel) ?? null;
  const facts = { reel: first.reel, place: first.place ?? null, dateCode: first.dateCode, expires: until };
  return [{ code: 'older-in-store', ...facts, by: why }];
}

/** A reel without an id of its own is the same where part and lot are. */
function sameReel(
  tape: {
    readonly reel: string;
    readonly part: string;
    readonly supplierPart: string | null;
    readonly lot: string | null;
  },
  reel: ReelFacts,
): boolean {
  if (reel.reel !== null && hasOwnId(tape.reel)) return tape.reel === reel.reel;
  // A label that names no part is no reel's.
  const samePart =
    reel.part === null
      ? reel.supplierPart !== null && tape.supplierPart === reel.supplierPart
      : tape.part === reel.part;
  return samePart && (reel.lot === null || tape.lot === null || tape.lot === reel.lot);
}

function shownReel(reel: string | undefined): string | null {
  return ownIdOf(reel);
}
